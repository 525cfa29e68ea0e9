package parse

// traits are what a deed of the record is like, whatever the words that it is told in.
type traits struct {
	bars, count, amount, substance, content bool // that its words can name

	hive    otherHive
	carries bool   // something goes from one hive to another
	twice   bool   // done to two things it is two deeds
	ofQueen bool   // it is done to her and to no bar
	noun    bool   // its verb is as often a noun: "Harvest, bar 12"
	event   string // its name where it was done on an earlier day; "" where that is not kept
}

// otherHive is how a deed takes a hive that is named beside the one in hand.
type otherHive uint8

const (
	endOfWay   otherHive = iota // for where something goes or comes from
	tendedTo                    // for its object, right behind the verb: "feed hive two"
	lookedInto                  // for its object: "look at hive two"
	robbedOf                    // for what is taken from: "harvest from hive two"
	joinedTo                    // for its other half: "unite with hive two"
	openedAt                    // for what its object is a part of: "open hive two", the entrance
)

// traits are those of the deed, looked up anew only where it turned out to be another.
func (d *deed) traits() *traits {
	if d.like == nil || d.likeOf != d.do {
		d.like, d.likeOf = traitsOf(d.do), d.do
	}
	return d.like
}

func traitsOf(do string) *traits {
	if of := deedTraits[do]; of != nil {
		return of
	}
	return &noTraits
}

var noTraits traits

// deedTraits are the traits of the deeds that have any.
var deedTraits = map[string]*traits{
	"add_bar":       {bars: true, count: true, content: true, carries: true, twice: true, event: "bar_added"},
	"remove_bar":    {bars: true, count: true, content: true, carries: true, twice: true},
	"move_bar":      {bars: true, count: true, content: true, carries: true, twice: true},
	"harvest":       {bars: true, count: true, amount: true, content: true, hive: robbedOf, twice: true, noun: true},
	"cut_cells":     {bars: true, count: true, twice: true},
	"straighten":    {bars: true, twice: true},
	"trim_comb":     {bars: true, twice: true},
	"free_comb":     {bars: true, twice: true},
	"move_follower": {count: true},
	"feed":          {amount: true, substance: true, content: true, hive: tendedTo, twice: true, event: "fed"},
	"treat":         {amount: true, substance: true, hive: tendedTo, twice: true, noun: true, event: "treated"},
	"requeen":       {hive: tendedTo, ofQueen: true, noun: true, event: "requeened"},
	"split":         {count: true, hive: tendedTo, noun: true, event: "split"},
	"unite":         {content: true, hive: joinedTo, carries: true},
	"inspect":       {content: true, hive: lookedInto, event: "inspected"},
	"open":          {hive: openedAt},
	"smoke":         {content: true},
	"mark_queen":    {ofQueen: true},
	"clip_queen":    {ofQueen: true},
	"release_queen": {ofQueen: true},
}
