package parse

import "testing"

// TestKnownNames reads hives that are called by words that the rules know, or by two or three words, and
// does not take for hives what has a capital for another reason.
func TestKnownNames(t *testing.T) {
	for _, c := range [...]struct{ said, hives string }{
		// words of any kind, with a capital amid a sentence
		{"We opened Propolis first. Eggs on bar three.", "propolis"},
		{"I fed Breeze a litre of syrup. Breeze is light on stores.", "breeze"},
		{"I fed Captain a litre of syrup. Eggs on bar three.", "captain"},
		{"Professor gave up two bars. Eggs on bar three, calm.", "professor"},
		{"I went through Seventeen this morning. Eggs on bar three.", "17"},
		{"I fed Jo a litre of syrup. Jo is light on stores.", "jo"},
		{"Sunny has eggs on bar three. I went into Sunny after lunch.", "sunny"},
		{"I opened Kit. Eggs on bar three.", "kit"},
		// two and three words
		{"Night Watch had eggs on bar three. I fed Slow Coach.", "night watch / slow coach"},
		{"Lost Property is thriving, bees on nine bars.", "lost property"},
		{"Warm Welcome is queenless. No eggs.", "warm welcome"},
		{"Calm day, 18 degrees.\nTall Story: BIAS on five bars, calm.", "tall story"},
		{"Rose of Quern is calm. Eggs on bar three.", "rose of quern"},
		{"I fed the Duke of Quern and put two bars in. Slow Coach is queenless.", "duke of quern / slow coach"},
		// before the word for a hive and behind it
		{"Night Shift hive. Eggs on bar three.", "night shift"},
		{"I opened the Second Wind hive. No eggs. The Wild Bunch hive is calm.", "second wind / wild bunch"},
		{"Saw Morning Glory hive. Calm.", "morning glory"},
		{"Hive Night Shift. Eggs on bar three.", "night shift"},
		{"Hive: Old Forge\nEggs on bar three.", "old forge"},
		{"Hive: The Water Tower\nEggs on bar three.", "water tower"},
		{"Hive: Snow White\nEggs on bar three.", "snow white"},
		{"The Duke of Quern hive is calm.", "duke of quern"},
		{"Hive Fig Queen seen on bar three.", "fig"},
		{"Top Bar Hive inspection. Calm.", ""},
		// on a line behind others
		{"A dry day, 18 degrees, no wind.\nLadle was calm, eggs on bar two.\nThe Other Ladle was fed. I fed the Other Ladle a pint of syrup.", "ladle / other ladle"},
		{"A dry day, 18 degrees, no wind.\nOn Monday Juniper hive was calm. No eggs.", "juniper"},
		// no hives
		{"I read Latin first. Eggs on bar three.", ""},
		{"Calm lot. Then Overcast, 18 degrees. Eggs on bar three.", ""},
		{"The Form Two girls came. Juniper has eggs on bar three.", "juniper"},
		{"Juniper, the Night Shift and Tansy were calm. The Night Shift has eggs on bar three.", "juniper / night shift / tansy"},
		{"Calm lot. Then Wasps, two or three.", ""},
		{"I rang Captain Bell. Eggs on bar three.", ""},
		{"The roof of Juniper was wet. Eggs on bar three.", "juniper"},
		{"Lost Juniper to wasps. No bees.", "juniper"},
		{"Bar Seven was full of honey. Eggs on Bar Three.", ""},
		{"INSPECTION OF HIVE SEVEN. I FED THEM AND PUT THE ROOF ON BELOW THE OAK.", "7"},
		{"Hive: Tin\nEggs: yes\nAgenda: unite with Iron next week", "tin"},
		{"Then Her Ladyship was seen on bar three.", ""},
		{"Juniper has eggs on bar three. Jo at number 9 has lost two.", "juniper"},
	} {
		if got := hivesIn(c.said); got != c.hives {
			t.Errorf("%q tells of %q, want %q", c.said, got, c.hives)
		}
	}
}
