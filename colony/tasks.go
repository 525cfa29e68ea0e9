package colony

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// DueItem is one thing that falls due at a hive.
type DueItem struct {
	ID       string `json:"id"` // stable: hive, kind and what it is anchored to
	Hive     string `json:"hive"`
	Kind     string `json:"kind"` // plan, inspect, queen, swarm, space, feeding, treatment, mites, stores, winter, disease
	On       Date   `json:"on"`
	Until    Date   `json:"until,omitzero"` // last day, where it is a span
	What     string `json:"what"`
	Why      string `json:"why"`
	Status   Status `json:"status"`
	Closed   string `json:"closed,omitempty"` // how it was closed
	Revision int    `json:"revision"`         // grows with every inspection and answer: a calendar's SEQUENCE
}

// Status is where a due item stands.
type Status string

// The statuses. Only open items fall due; the others are kept so that a
// calendar can take them back.
const (
	StatusOpen    Status = "open"
	StatusDone    Status = "done"    // answered, or shown done by a later inspection
	StatusDropped Status = "dropped" // answered
	StatusLapsed  Status = "lapsed"  // a plan without a day, long past, or overtaken by what was seen since
)

// Answer is what a person said to a due item.
type Answer struct {
	ID    string `json:"id"`
	Say   string `json:"say"` // done, later or drop
	On    Date   `json:"on"`
	Until Date   `json:"until,omitzero"` // the new day of a later
}

// UID is a calendar's identifier of the item: the same for the same item on
// every machine, and telling nothing of the hive.
func (d DueItem) UID() string {
	h := sha256.Sum256([]byte(d.ID))
	return hex.EncodeToString(h[:12]) + "@barwise"
}

// String is one line for a person: day, hive, what, why.
func (d DueItem) String() string {
	return fmt.Sprintf("%s  hive %s  %s (%s)", d.On, d.Hive, d.What, d.Why)
}

// Due works out everything that falls due at one hive as of a day, answers
// applied, sorted by day. Items that are closed are there too, with how.
func Due(history []Inspection, today Date, set Settings, answers []Answer) []DueItem {
	known := upTo(history, today)
	if len(known) == 0 {
		return nil
	}
	set = set.forHive(known[len(known)-1].Hive)
	return dueWith(judgeLast(known, today, recentVisits), known, today, set, answers)
}

// dueWith is Due for a history that ends with the day and settings of the hive,
// with the queens as judged before each of the recent visits, after the last
// one, and today.
func dueWith(queens []QueenEvidence, known []Inspection, today Date, set Settings, answers []Answer) []DueItem {
	l := &dueList{hive: known[len(known)-1].Hive}
	l.plans(known, today)
	l.followUps(known, today)
	l.judged(known, today, set, queens[len(queens)-1])
	items := append(l.items, overtaken(known, l.items, set, queens)...)
	for i := range items {
		items[i].Revision = len(known)
		if items[i].Status == StatusLapsed {
			items[i].Revision++ // by the day alone: no visit has come since
		}
		items[i].answer(answers, today)
	}
	SortDue(items)
	return items
}

// SortDue sorts items, of any number of hives, by day, then by hive.
func SortDue(items []DueItem) {
	slices.SortStableFunc(items, func(a, b DueItem) int {
		return cmp.Or(a.On.Compare(b.On), strings.Compare(a.Hive, b.Hive), strings.Compare(a.ID, b.ID))
	})
}

// OpenItems keeps the items that still fall due.
func OpenItems(items []DueItem) []DueItem {
	return slices.DeleteFunc(slices.Clone(items), func(d DueItem) bool { return d.Status != StatusOpen })
}

// upTo is the part of a history, sorted by time, up to a day. Inspections whose
// time is not known sort first; they are of no use for reckoning and left out.
func upTo(history []Inspection, today Date) []Inspection {
	for len(history) > 0 && history[0].At.IsZero() {
		history = history[1:]
	}
	for len(history) > 0 && dayOf(&history[len(history)-1]).Compare(today) > 0 {
		history = history[:len(history)-1]
	}
	return history
}

// answer applies what a person said; the last answer counts. An item put off
// comes back on its new day.
func (d *DueItem) answer(answers []Answer, today Date) {
	for _, a := range answers {
		if a.ID != d.ID {
			continue
		}
		d.Revision++
		switch a.Say {
		case "done":
			d.Status, d.Closed = StatusDone, "answered on "+longDay(a.On)
		case "drop":
			d.Status, d.Closed = StatusDropped, "answered on "+longDay(a.On)
		case "later":
			if d.Status == StatusOpen && !a.Until.IsZero() {
				d.On = a.Until
				d.Until = laterOf(d.Until, a.Until)
			}
		}
	}
}

// recentVisits is how many of the last visits are asked for what was due
// before them, so that a calendar can take it back.
const recentVisits = 12

// overtaken lists what was due before one of the last visits and, without
// having been answered, no longer is. Plans, feeds and treatments are not
// among it: those stay in the list when they are closed. What was due on the
// day of the last visit and is not today has lapsed. The queens are as judged
// before each of these visits, after the last one, and today.
func overtaken(known []Inspection, now []DueItem, set Settings, queens []QueenEvidence) []DueItem {
	have := map[string]bool{}
	for _, d := range now {
		have[d.ID] = true
	}
	var out []DueItem
	first := len(known) - len(queens) + 2
	for i := len(known); i >= max(first, 1); i-- {
		was := &dueList{hive: known[0].Hive}
		visit := dayOf(&known[min(i, len(known)-1)])
		was.judged(known[:i], visit, set, queens[i-first])
		for _, d := range was.items {
			if d.Status != StatusOpen || have[d.ID] {
				continue
			}
			have[d.ID] = true
			if i == len(known) {
				d.Status, d.Closed = StatusLapsed, "its time has passed"
			} else {
				d.Status, d.Closed = StatusDone, "seen to, or overtaken, on "+longDay(visit)
			}
			out = append(out, d)
		}
	}
	return out
}

// dueList collects items and keeps their ids apart.
type dueList struct {
	hive  string
	items []DueItem
	ids   map[string]bool
}

// add appends an open item. The pointer it returns holds until the next add.
func (l *dueList) add(kind string, anchor Date, detail string, on Date, what, why string) *DueItem {
	id := plain(fmt.Sprintf("%s/%s/%s", l.hive, kind, anchor))
	if detail != "" {
		id += "/" + plain(detail)
	}
	for n, base := 2, id; l.ids[id]; n++ {
		id = fmt.Sprintf("%s#%d", base, n)
	}
	if l.ids == nil {
		l.ids = map[string]bool{}
	}
	l.ids[id] = true
	l.items = append(l.items, DueItem{ID: id, Hive: plain(l.hive), Kind: kind, On: on, What: plain(what), Why: plain(why), Status: StatusOpen})
	return &l.items[len(l.items)-1]
}

// plain takes out what is no printable character: words of a note are not to
// reach a terminal with anything but letters in them.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return -1
		}
		return r
	}, s)
}

// judged lists what follows from the state of the colony and the season.
func (l *dueList) judged(known []Inspection, today Date, set Settings, queen QueenEvidence) {
	l.queen(queen)
	l.swarm(queen)
	l.nextInspection(known, today, queen, set)
	l.space(known, today, queen, set)
	l.mites(known, today, queen, set)
	l.winter(known, today, set)
	l.disease(known, today)
}
