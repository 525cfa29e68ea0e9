package parse

import (
	"strings"
	"testing"

	"barwise/colony"
)

// TestStands reads names that nothing but their place in a sentence about a colony tells to be
// those of hives, and people, places and words of the language in the same places.
func TestStands(t *testing.T) {
	for _, c := range [...]struct{ said, hives string }{
		{"Anvil built two combs this week and has no brood. Hammer, meanwhile, has not touched the syrup and is down to three seams of bees.", "anvil / hammer"},
		{"Pelmet threw a swarm at noon. Four cells on bar six.", "pelmet"},
		{"Clarinet won't stop building. I added three bars.", "clarinet"},
		{"Behind the shed, Hatstand is on nine bars, and I saw the queen on bar five.", "hatstand"},
		{"There was robbing going on at Badger this morning. I reduced the entrance.", "badger"},
		{"Up the hill to Telstar. Bars 3 to 6 brood, queen on 4.", "telstar"},
		{"Gave Dumpling a litre of syrup. Still light. Bees on five bars.", "dumpling"},
		{"Queen cells in Hector, two, capped. None in Ajax. Ajax got two bars.", "hector / ajax"},
		{"Queen on bar four in the first. The other one, Trough, is healthy so far, and capped brood on bar five.", "trough"},
		{"The Tin Duchess had eggs on bar three. Hefted Saddle: 29 kg.", "tin duchess / saddle"},
		{"I'll open Crayon's entrance again tomorrow. Stores light.", "crayon"},
		{"In the Major the queen sits on 5. In the Minor no queen at all, but two cells.", "major / minor"},
		{"Fiddler is calm, eggs on bar three.\n\nPiper by comparison is a fiend. Four stings.\n\nDrummer took a knock in the frost. Three seams.", "fiddler / piper / drummer"},
		{"Round one, Oboe, sharp as ever. Eggs on bar three.\n\nRound two, Bassoon. Bees on nine bars.", "oboe / bassoon"},
		{"April Squall is still mean as a snake. I'm going to requeen April Squall on Friday.", "april squall"},
		{"I keep just my two, Ladle and Sieve. Ladle is calm, with eggs on bar four. The other one is aggressive.", "ladle / sieve"},
		{"I am a grown man with hives called Ladle, Sieve and Whisk. Ladle was up first: calm. Sieve is my good child, eggs on bar four. Whisk has no eggs.", "ladle / sieve / whisk"},
		{"One. Eleven bars in use. Stores adequate.\nTwo. Temper acceptable. Fed one litre of syrup.", "1 / 2"},
		// names of two words, with a title, behind an article
		{"I fed the Petrol Station a pint of syrup. The Petrol Station is calm, eggs on bar two.", "petrol station"},
		{"Clear Water has eggs on bar two. I'll mark Clear Water's queen on Friday.", "clear water"},
		{"Paper Tiger, in the next bay, is weak. I gave Paper Tiger a kilo of fondant.", "paper tiger"},
		{"Miss Tansy was gentle. Bees on nine bars. I went back to Miss Tansy and put one bar in.", "miss tansy"},
		{"Ladle is calm, eggs on bar two. I turned next to the Larch, where there were no eggs.", "ladle / larch"},
		{"Ladle is calm, eggs on bar two. Over at Sieve it's another tale. Not an egg in the place.", "ladle / sieve"},
		{"Gave Big Red and Cotton a once-over. Big Red is heaving, ten bars of bees. Cotton is a sorry story. Bald brood on bar three.", "big red / cotton"},
		// what is taken from one, said to be on one, had time for
		{"Sieve is calm, eggs on bar two. Ladle has no cells. We harvested bar eight from Ladle.", "sieve / ladle"},
		{"My hives are twins. In bar 2 of Ladle there was pollen. To Sieve we gave one new bar.", "ladle / sieve"},
		{"That left me two hours for Ladle. Bar fourteen was bare and there were eggs on bar two.", "ladle"},
		{"I adore Ladle and I fear Sieve. Ladle has eggs on bar three. Sieve was angry, four stings.", "ladle / sieve"},
		{"Ladle's braw, the best hive I've ever had. Eggs on bars three and four.", "ladle"},
		{"I was awake and thought I might as well do Ladle before the heat. Testy today, eggs on bar three.", "ladle"},
		{"Ladle is calm, eggs on bar two. I was less taken with Sieve. Three seams of bees.", "ladle / sieve"},
		{"Ladle is calm, eggs on bar two. So Sieve got a litre of syrup.", "ladle / sieve"},
		{"Ladle is calm, eggs on bar two. Next to it is Sieve. No larvae there.", "ladle / sieve"},
		{"The Marigold I opened first, bees on nine bars. The Gold Crown is another story. No eggs in her.", "marigold / gold crown"},
		{"Big Clanger had ten seams and eggs on bar four. The Tin Lady is weak. I will feed Clanger on Friday.", "big clanger / tin lady"},
		{"Ladle was calm, eggs on bar two. Sieve is the opposite of Ladle. She was runny, with brood on three bars.", "ladle / sieve"},
		// titles, words of the weather, what a keeper and a hive have to do with one another
		{"Ladle is calm, eggs on bar two.\n\nUncle Barney swarmed on Wednesday. There is one emerged queen cell on bar seven.", "ladle / uncle barney"},
		{"Ladle is calm, eggs on bar two. I started with Blizzard. Four stings.", "ladle / blizzard"},
		{"Ladle is calm, eggs on bar two.\n\nBreezy (my son's idea) is small, bees on four bars.", "ladle / breezy"},
		{"We have three: Ladle, Sieve and the Whisk. Ladle is bursting, eggs on five. Sieve has no eggs. The Whisk has brood on three bars.", "ladle / sieve / whisk"},
		{"Sieve is calm, eggs on bar two. Ladle and I are not on speaking terms. Ladle gave me four stings.", "sieve / ladle"},
		{"The question before me was whether Ladle is provided for. Bars eight to ten are full of honey.", "ladle"},
		{"My two are Ladle and the coffee hive. Ladle had honey on bars 1 to 3. The coffee hive was calm.", "ladle / coffee"},
		{"Ladle is calm, eggs on bar two. The Old Forge lies across the burn, and the bees there were gentle. I gave the Old Forge a bar.", "ladle / old forge"},
		{"Ladle is calm, eggs on bar two.\n\nAunty Pearl's booming, bees on thirteen bars.", "ladle / aunty pearl"},
		{"Bed one, Ladle: calm, eggs on bar two. Bed two is Sieve and Sieve worries me. Two bees there with deformed wings.", "ladle / sieve"},
		{"Ladle is calm, eggs on bar two. Bed two is Sieve and Sieve worries me. There were two bees with deformed wings.", "ladle / sieve"},
		{"The name of the hive is Ladle. Eggs on bar two.", "ladle"},
		{"Ladle is calm, eggs on bar two. Sieve stung me twice before I had the lid off. No eggs there.", "ladle / sieve"},
		{"Ladle is calm, eggs on bar two. Patience hasn't any eggs at all. She has one sealed cell on bar five.", "ladle / patience"},
		{"I worked Ladle from the back. Bar fourteen is bare, and there are eggs on bar two.", "ladle"},
		{"My one colony is Ladle, and she stands on the scale: 41 kg.", "ladle"},
		{"Ladle is calm, eggs on bar two. I gave Sieve three puffs of smoke and she still came at me, four stings.", "ladle / sieve"},
		{"Ladle is calm, eggs on bar two. Change here for Morning Star, where I found robbing. Morning Star's stores are low.", "ladle / morning star"},
		{"The bees were calm. Number nine came up heavy with capped honey. On number five there was sealed brood.", ""},
		// and what is none
		{"Monika had us all in fits over her brother's bees. Ladle is calm, eggs on bar two.", "ladle"},
		{"Juhlat was yesterday. Ladle is calm, eggs on bar two.", "ladle"},
		{"Ladle is calm, eggs on bar two. Tyrell's mum says that smoke makes them sleepy, two stings for her.", "ladle"},
		{"Ladle is calm, eggs on bar two. Auntie Esme lost a colony to wax moth at Ottermere. Two stings today.", "ladle"},
		{"Ladle is calm, eggs on bar two. Mrs Oates held the smoker. Mr Oates was late. Two stings for him.", "ladle"},
		{"Barrow lay in the shade and watched. Ladle is calm, eggs on bar two.", "ladle"},
		{"Ladle is calm, eggs on bar two. I am worried about Nigel. Three seams of bees is all he has left.", "ladle"},
		{"Ladle is calm, eggs on bar two. Her Majesty was on bar four, and Mr Tansy saw her too.", "ladle"},
		{"Ladle is calm, eggs on bar two. A guy in Ottermere had foulbrood. Wendel's bees over in Ottermere are mean.", "ladle"},
		{"Ladle is calm, eggs on bar two. The Bee Club met at noon and Aunt Gwen brought the cake.", "ladle"},
		{"Ladle is calm, eggs on bar two. We sat on the porch roof in Ottermere and saw no mites.", "ladle"},
		{"Ladle is calm, eggs on bar two. Walter at the road end has lost his to the wasps.", "ladle"},
		{"Fiddler is calm, eggs on bar three.\n\nEzra took a photo of the comb for the newsletter. No eggs on it.", "fiddler"},
		{"Fiddler is calm, eggs on bar three.\n\nPurple pollen was coming in. The queen was on bar four.", "fiddler"},
		{"The Form Two girls came along. Fiddler is calm, eggs on bar three.", "fiddler"},
		{"Fiddler swarmed and went over the wall into Ellwood's plum tree. Bar 6 has one hatched queen cell.", "fiddler"},
		{"We took both, Sam and Nora, to the apiary. The bees were calm. No eggs.", ""},
		{"In June Fiddler was weak. Fiddler has eggs on bar three now.", "fiddler"},
		{"One. Capped honey.\nTwo. Pollen.", ""},
		{"Thornley's syrup is dear, so I boiled my own. Bees on six bars.", ""},
		{"Learned: breathe out. Bees on six bars.", ""},
		{"Manuka's not out yet. Bees on six bars.", ""},
		{"Blackthorn is out along the railway. Bees on six bars.", ""},
		{"Boris has eggs on bar five. They have foulbrood at Sallow Farm, two miles off.", "boris"},
		{"Boris has eggs on bar five. No queen cells, thanks be to God.", "boris"},
		{"Boris has eggs on bar five, as Sue is in Madeira, with bees on nine bars.", "boris"},
		{"Boris has eggs on bar five. Emil made a split from his already and lost it.", "boris"},
		{"Boris has eggs on bar five. Poppy, who is six, found the queen on bar five.", "boris"},
	} {
		var hives []string
		for _, in := range sharedParser().Parse(&colony.Note{Text: c.said, Given: may14}) {
			hives = append(hives, in.Hive)
		}
		if got := strings.Join(hives, " / "); got != c.hives {
			t.Errorf("%q tells of %q, want %q", c.said, got, c.hives)
		}
	}
}
