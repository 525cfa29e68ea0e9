package tui

// mark is how one content is drawn: a letter that looks like it in the cell,
// and the colour of the cell behind it.
type mark struct {
	what  string // of the contents list
	sign  rune
	looks string // why this sign
	ink   tone
	wax   tone
}

func same(full, sixteen string) tone { return tone{ink{full, sixteen}, ink{full, sixteen}} }

var dark = same("#201800", "0")

// marks are in the order in which a comb is filled from the top bar down:
// honey over the nest, pollen between, brood below, which is how combs are
// mostly laid out. A place that was said overrules it.
var marks = []mark{
	{"capped_honey", '=', "flat white lids in rows", dark, same("#f3e3b5", "7")},
	{"honey", '-', "a level, open surface", dark, same("#f2a31c", "3")},
	{"nectar", '~', "wet and shining", dark, same("#ffe27a", "11")},
	{"pollen", '%', "pellets packed in", dark, same("#f39a4a", "11")},
	{"capped_brood", 'n', "a domed lid", dark, same("#cf9a57", "3")},
	{"brood", 'b', "brood, stage not said", dark, same("#d9ad72", "3")},
	{"emerging_brood", 'u', "the lid is open and someone looks out", dark, same("#bf8f5c", "3")},
	{"open_brood", 'c', "a curled larva", dark, same("#f3ead0", "15")},
	{"eggs", '\'', "an egg stands on end", dark, same("#d2e2ee", "7")},
	{"drone_brood", 'O', "the big round lid of a drone", dark, same("#cdb25c", "3")},
	{"empty", '.', "drawn cells with nothing in them", dark, same("#d8cda8", "7")},
}

// cellSigns are how queen cells hang below the comb, by stage, those that
// matter most first.
var cellSigns = []struct {
	stage, name string
	sign        rune
	looks       string
}{
	{"capped", "capped queen cell", 'V', "sealed, coming to a point"},
	{"charged", "charged queen cell", 'U', "open below, someone in it"},
	{"any", "queen cell", 'Y', "stage not said"},
	{"cup", "queen cup", 'w', "an empty cup"},
	{"emerged", "emerged queen cell", 'A', "the tip stands open"},
	{"torn", "torn queen cell", 'X', "torn down"},
}

// unsaid is comb of which nothing was said to be in it.
const unsaid = ':'

func markOf(what string) mark {
	for _, m := range marks {
		if m.what == what {
			return m
		}
	}
	return mark{what: what, sign: unsaid}
}
