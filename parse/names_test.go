package parse

import (
	"strings"
	"testing"

	"barwise/colony"
)

// TestTurnsToHives reads the ways in which the talk turns to a hive that is told by its
// name alone, and away from people.
func TestTurnsToHives(t *testing.T) {
	for _, c := range []struct{ said, hives string }{
		{"Juniper got the first visit. Eggs on bar four. Marigold got the second. No eggs.", "juniper / marigold"},
		{"I began with Juniper, as always. Eggs on bar four. Marigold I kept for last. No eggs.", "juniper / marigold"},
		{"Juniper: I found eggs on bar four. Marigold: no eggs.", "juniper / marigold"},
		{"Juniper has come through well. Eggs on bar four. Marigold has not. No eggs.", "juniper / marigold"},
		{"Juniper looked promising from the entrance, and so it proved. Eggs on bar four. Marigold looked anything but. No eggs.", "juniper / marigold"},
		{"Juniper's bees were calm and there were eggs on bar four. Marigold's were not, and I took two stings.", "juniper / marigold"},
		{"My first stop was Juniper. Eggs on bar four. My second stop was Marigold. No eggs.", "juniper / marigold"},
		{"First stop Juniper, eggs on bar four. Second stop Marigold, no eggs.", "juniper / marigold"},
		{"I turned to Juniper first. Eggs on bar four. I then turned to Marigold. No eggs.", "juniper / marigold"},
		{"From there to Juniper. Eggs on bar four. Then on to Marigold. No eggs.", "juniper / marigold"},
		{"The red hive was calm. Eggs on bar four. The yellow one is weak, three seams of bees.", "red / yellow"},
		{"Hive 4 is strong, eggs on bar four. The one behind the garage has no eggs.", "4 / garage"},
		{"Hive 4 is strong, eggs on bar four. The one near the entrance has pollen.", "4"},
		{"The shed hive was calm. Eggs on bar four. The hedge one is weak, three seams of bees.", "shed / hedge"},
		{"Hornets and robbing at Juniper's front door. Eggs on bar four. Marigold was bearding.", "juniper / marigold"},
		{"Juniper next. Eggs on bar four. Marigold after that. No eggs.", "juniper / marigold"},
		{"As to Juniper, eggs on bar four. As to Marigold, no eggs.", "juniper / marigold"},
		{"Juniper, on the other hand, has eggs on bar four. Marigold, bless them, has none, and no queen seen.", "juniper / marigold"},
		{"With Juniper all is well, eggs on bar four. With Marigold it is not, no eggs.", "juniper / marigold"},
		{"Juniper delighted me. Eggs on bar four. Marigold did not. No eggs.", "juniper / marigold"},
		{"Juniper gave me a fright. Eggs on bar four. Marigold gave me two stings and no eggs.", "juniper / marigold"},
		{"Next door stands Juniper. Eggs on bar four. Beyond it stands Marigold. No eggs.", "juniper / marigold"},
		{"Today it was Juniper's turn. Eggs on bar four. Then Marigold's. No eggs.", "juniper / marigold"},
		{"We lifted the roof on Juniper at ten. Eggs on bar four. We lifted the roof on Marigold at eleven. No eggs.", "juniper / marigold"},
		{"Lifting the lid of Juniper I found eggs on bar four. Lifting the lid of Marigold I found no eggs.", "juniper / marigold"},
		{"In the afternoon I did Juniper. Eggs on bar four. I did Marigold after tea. No eggs.", "juniper / marigold"},
		{"I only had time for Juniper tonight. Eggs on bar four.", "juniper"},
		{"Juniper again tonight. Eggs on bar four.", "juniper"},
		{"A quick word on Juniper. Eggs on bar four.", "juniper"},
		{"Just Juniper today. Eggs on bar four.", "juniper"},
		{"Juniper, 14 May. Eggs on bar four.", "juniper"},
		{"Inspection of Juniper, 14 May. Eggs on bar four.", "juniper"},
		{"Notes on Juniper. Eggs on bar four.", "juniper"},
		{"This is about Juniper. Eggs on bar four.", "juniper"},
		{"Had a good rummage in Juniper after tea. Eggs on bar four.", "juniper"},
		{"Popped the top off Juniper after tea. Eggs on bar four.", "juniper"},
		{"My husband Peter held the smoker while I went through Juniper. Eggs on bar four.", "juniper"},
		{"Peter came round and we opened Juniper together. Peter was stung twice. Eggs on bar four.", "juniper"},
		{"Sarah and I spent an hour in Juniper. Eggs on bar four. Sarah saw the queen on bar five.", "juniper"},
		{"The bees in Juniper were calm. Eggs on bar four.", "juniper"},
		{"Juniper's queen was on bar five. Eggs on bar four.", "juniper"},
		{"It was hot, and Juniper was bearding. Eggs on bar four.", "juniper"},
		{"I fed Juniper a litre of syrup. Eggs on bar four.", "juniper"},
		{"I moved bar six from Juniper to Marigold. Juniper has eggs on bar four. Marigold has no eggs.", "juniper / marigold"},
		{"Both colonies were opened. Juniper had eggs on bar four; Marigold had none and no queen was seen.", "juniper / marigold"},
		{"Juniper is roaring away. Eggs on bar four. Marigold is ticking over. No eggs.", "juniper / marigold"},
		{"Juniper filled me with joy: eggs on bar four. Marigold filled me with dread: no eggs.", "juniper / marigold"},
		{"Juniper went well. Eggs on bar four. Marigold went badly. No eggs.", "juniper / marigold"},
		{"Juniper I have no worries about. Eggs on bar four. Marigold I do worry about. No eggs.", "juniper / marigold"},
		{"Juniper boasts eggs on bar four. Marigold has none at all and no queen seen.", "juniper / marigold"},
		{"Juniper shows eggs on bar four. Marigold shows no eggs.", "juniper / marigold"},
		{"Juniper swarmed on Tuesday. No eggs. Marigold did not swarm. Eggs on bar four.", "juniper / marigold"},
		{"JUNIPER - eggs on bar four. MARIGOLD - no eggs.", "juniper / marigold"},
		{"Agnes's bees are calm. Eggs on bar four. Magnus kept all of his. No eggs.", "agnes / magnus"},
		{"Agnes is a peach. Eggs on bar four. Magnus is not. No eggs.", "agnes / magnus"},
		{"The church lot are weak. No eggs.", "church"},
		{"Juniper was calm. The allotment is a different story. No eggs on bar five.", "juniper / allotment"},
		{"The sad one is Juniper. Bar four had eggs.", "juniper"},
		{"It was hot, and Juniper went for me. Bar four had eggs.", "juniper"},
		{"Eleven pupils stood round Juniper. Bees on nine bars.", "juniper"},
		{"Juniper was calm. Two stings. Pauline's lot are far away.", "juniper"},
		{"Juniper was calm. Two stings. Kevin was late again with the cake. I added two bars.", "juniper"},
		{"Juniper was calm. Tansy, by the wall, had her feeder half full. No eggs.", "juniper / tansy"},
		{"We found a snail, which the children have named Kevin. Juniper was calm.", "juniper"},
		{"Of the two, Juniper is the stronger. Bar four had eggs. Marigold has no eggs.", "juniper / marigold"},
		{"The Abbess was in a lovely mood. Bar four had eggs. The Prior was not, and I have two stings.", "abbess / prior"},
		{"Old Quarry: bar four had eggs. New Quarry: no eggs.", "old quarry / new quarry"},
		{"Great Wood has eggs. Little Wood has no eggs.", "great wood / little wood"},
		{"#3 strong, bar four had eggs. #6 weak, no eggs.", "3 / 6"},
		{"#3: bar four had eggs. #6: queen not seen, no stings.", "3 / 6"},
		{"#3 capped brood. #6 eggs.", ""},
		{"Sweet Rocket has no wish to swarm. Bar four had eggs. Solomon's Seal is weak.", "sweet rocket / solomon's seal"},
		{"Tolley, a gift of the late Mr Tolley's sister, is weak. Bar four had eggs. Juniper came from Mr Tolley. No eggs.", "tolley / juniper"},
		{"Dahlias are the best for years. Juniper was calm. Two stings.", "juniper"},
		{"My neighbour Peter held the smoker. Eggs on bar four.", ""},
		{"Peter came round with a cake. Eggs on bar four.", ""},
		{"Sarah and I had a long day. Eggs on bar four.", ""},
		{"Vernon from the next plot says no. Eggs on bar four.", ""},
		{"They will not wait for Pentecost. Eggs on bar four.", ""},
		{"Ouch. Eggs on bar four.", ""},
		{"Onions are in. Eggs on bar four.", ""},
		{"The hedge on Ascension Day was white. Eggs on bar four.", ""},
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
