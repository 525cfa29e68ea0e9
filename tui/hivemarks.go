package tui

// mark is how one content is drawn: a letter that looks like it in the cell,
// and the colour of the cell behind it.
type mark struct {
	what string // of the contents list
	sign rune
	wax  tone
}

func same(full, sixteen string) tone { return tone{ink{full, sixteen}, ink{full, sixteen}} }

// onWax is the colour of every letter in a cell.
var onWax = same("#201800", "0")

// marks are in the order in which a comb is filled from the top bar down:
// honey over the nest, pollen between, brood below, which is how combs are
// mostly laid out. A place that was said overrules it. Beside each stands why it
// has its sign.
var marks = []mark{
	{"capped_honey", '=', same("#f3e3b5", "7")},   // flat white lids in rows
	{"honey", '-', same("#f2a31c", "3")},          // a level, open surface
	{"nectar", '~', same("#ffe27a", "11")},        // wet and shining
	{"pollen", '%', same("#f39a4a", "11")},        // pellets packed in
	{"capped_brood", 'n', same("#cf9a57", "3")},   // a domed lid
	{"brood", 'b', same("#d9ad72", "3")},          // brood, stage not said
	{"emerging_brood", 'u', same("#bf8f5c", "3")}, // the lid is open and someone looks out
	{"open_brood", 'c', same("#f3ead0", "15")},    // a curled larva
	{"eggs", '\'', same("#d2e2ee", "7")},          // an egg stands on end
	{"drone_brood", 'O', same("#cdb25c", "3")},    // the big round lid of a drone
	{"empty", '.', same("#d8cda8", "7")},          // drawn cells with nothing in them
}

// cellSigns are how queen cells hang below the comb, by stage, those that
// matter most first.
var cellSigns = []struct {
	stage, name string
	sign        rune
}{
	{"capped", "capped queen cell", 'V'},   // sealed, coming to a point
	{"charged", "charged queen cell", 'U'}, // open below, someone in it
	{"any", "queen cell", 'Y'},             // stage not said
	{"cup", "queen cup", 'w'},              // an empty cup
	{"emerged", "emerged queen cell", 'A'}, // the tip stands open
	{"torn", "torn queen cell", 'X'},       // torn down
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
