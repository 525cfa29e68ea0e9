package command

import (
	"slices"
	"strings"

	"barwise/colony"
	"barwise/index"
)

// The names of settings in the store.
const (
	settingBees    = "bees"    // colony.Settings, for every hive
	settingAnswers = "answers" // []colony.Answer
)

// apiary is everything that the arithmetic works on: each hive's inspections
// in the order of time, waiting ones too, the keeper's settings, and what was
// answered to due items.
type apiary struct {
	hives    map[string][]colony.Inspection
	waiting  map[string]int // inspections that nobody has confirmed yet
	settings colony.Settings
	answers  []colony.Answer
}

// loadApiary reads the history of one hive, or of all for "".
func loadApiary(s *index.Store, hive string) (*apiary, error) {
	return loadSome(s, hive, func(*colony.Record) (bool, error) { return true, nil })
}

// loadSome is loadApiary with only those records that count.
func loadSome(s *index.Store, hive string, counts func(*colony.Record) (bool, error)) (*apiary, error) {
	ap := &apiary{hives: map[string][]colony.Inspection{}, waiting: map[string]int{}, settings: colony.DefaultSettings()}
	for r, err := range s.Records(index.Filter{Hive: hive, States: []colony.State{colony.Confirmed, colony.Waiting}}) {
		if err != nil {
			return nil, err
		}
		if ok, err := counts(&r); err != nil {
			return nil, err
		} else if !ok {
			continue
		}
		ins := r.Inspection()
		if ins.Hive == "" || ins.At.IsZero() {
			continue // belongs to no history until a person says whose it is
		}
		ap.hives[ins.Hive] = append(ap.hives[ins.Hive], ins)
		if r.State == colony.Waiting {
			ap.waiting[ins.Hive]++
		}
	}
	for _, history := range ap.hives {
		slices.SortStableFunc(history, func(a, b colony.Inspection) int { return a.At.Compare(b.At) })
	}
	if _, err := s.Setting(settingBees, &ap.settings); err != nil {
		return nil, err
	}
	_, err := s.Setting(settingAnswers, &ap.answers)
	return ap, err
}

// names lists the hives in order.
func (ap *apiary) names() []string {
	var names []string
	for name := range ap.hives {
		names = append(names, name)
	}
	slices.SortFunc(names, colony.CompareHives)
	return names
}

// isNumber reports whether a hive is called by a number.
func isNumber(name string) bool { return strings.Trim(name, "0123456789") == "" }

// upTo is the hive's history as it stood at the end of a day.
func (ap *apiary) upTo(hive string, day colony.Date) []colony.Inspection {
	history := ap.hives[hive]
	n := len(history)
	for n > 0 && colony.DateOf(history[n-1].At).Compare(day) > 0 {
		n--
	}
	return history[:n]
}
