package parse

import "testing"

// TestNamesToldInSpeech reads running speech, without capitals, that tells of hives by names that no rule knows,
// and takes for hives no other words that the rules do not know.
func TestNamesToldInSpeech(t *testing.T) {
	for _, c := range [...]struct{ said, hives string }{
		{"wombat first wombat's on six bars eggs on bar three righto pudding pudding's booming bees on nine bars and wombat was a bit testy", "wombat / pudding"},
		{"okay noodle is so mean today three stings and we're going to treat noodle on monday dumpling though dumpling was gentle eggs on bar seven", "noodle / dumpling"},
		{"i begin with odette odette has three capped queen cells on bar five now corinne corinne has eggs on bar two i look again at odette in three weeks", "odette / corinne"},
		{"second one dziadek um dziadek is weak only three seams of bees i united dziadek into wanda wanda is strong", "dziadek / wanda"},
		{"biscuit's on five bars eggs on bar four gave biscuit a litre of syrup and nell is weak i fed nell too", "biscuit / nell"},
		{"teasel oh dear teasel's got dead bees and then sorrel sorrel has eggs on bar four i fed teasel a litre of syrup", "teasel / sorrel"},
		{"doreen eggs on bar four doreen's calm i never did look for the queen must give doreen a bar", "doreen"},
		{"quince um bar won honey bar to honey and a bit of pollen\nthat's quince closed up", "quince"},
		{"okay dolores um it's been a long winter but she's made it five seams of bees\nso then i opened up winnie and winnie's heaving bees on nine bars", "dolores / winnie"},
		{"right lid on um winnie now no sign of the queen but eggs on bar six\nand that leaves dora and dora's lot went for me two stings", "winnie / dora"},
		{"barnaby um they're calm and there's eggs on four", "barnaby"},
		{"gertrude gertrude gertrude last look before winter\nthey are calm", "gertrude"},
		{"rosalind again\nbar four eggs", "rosalind"},
		{"cleopatra um requeened her on monday", "cleopatra"},
		{"badger this evening getting them ready for winter\nbar four eggs", "badger"},
		{"kestrel first proper look of the year eleven degrees\nlight on bees", "kestrel"},
		{"willow tonight after work\nbar four eggs", "willow"},
		{"the paddock tonight seventy two degrees\nbars two to four eggs", "paddock"},
		{"agnes was my last one tonight\nbar six eggs", "agnes"},
		{"sunny and fourteen degrees\ndid the orchard first bees on eight bars\nthen the gatehouse which is slower only four bars of bees", "orchard / gatehouse"},
		{"did the smithy first they're heaving\nthen down to the millpond bar two eggs", "smithy / millpond"},
		// no hives
		{"muggy this evening\nbar four eggs", ""},
		{"mary today helped me\nbar four eggs", ""},
		{"the weather today was fine\nbar four eggs", ""},
		{"did the washing first\nbar four eggs", ""},
		{"bar four eggs\nthen the bucket is full of honey", ""},
		{"then back to the car for a box\nbar four eggs", ""},
		{"gordon um he rang about his bees\nbar four eggs", ""},
		{"crikey um they are cross", ""},
		{"down at the boatyard three to look at\nbosun um bosun's quiet queen on bar seven\nanchor has me worried no eggs anywhere\nand anchor's been robbed", "bosun / anchor"},
		{"gorse is going over now\nbog hive eggs on bar three", "bog"},
		{"hive four shake shake shake the jar six mites eggs on bar three", "4"},
		{"eggs on bar three roll roll roll and tip it out seven mites", ""},
		{"anyhow eggs on bar three the trough was dry and a bit of grass in the door calm bees", ""},
		{"hive four eggs on bar three my friend in croyley has robbing every day he calls me crying", "4"},
		{"hive four eggs on bar three bronwen came to help and bronwen says they are calm", "4"},
		{"the willow's out and the willow's covered in bees eggs on bar three", ""},
	} {
		if got := hivesIn(c.said); got != c.hives {
			t.Errorf("%q tells of %q, want %q", c.said, got, c.hives)
		}
	}
}
