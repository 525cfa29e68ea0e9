package colony

import (
	"fmt"
	"slices"
	"strings"
)

// Caution is a word of care that what was recorded calls for.
type Caution struct {
	Kind string `json:"kind"` // disease, treatment, stings, lifting or fire
	On   Date   `json:"on"`
	Says string `json:"says"`
	Why  string `json:"why"`
}

// CautionDays is for how long a sign calls for its caution after it was seen,
// unless a later inspection denies it.
const CautionDays = 60

// notifiable are the signs that can belong to a disease that must be reported
// in many countries. They are signs: none of them is a diagnosis.
var notifiable = []string{"foulbrood", "ropy_larva", "sunken_caps", "perforated_caps", "foul_smell", "small_hive_beetle"}

// cautionsFor lists, each kind once, what one hive's records call for as of a
// day. The latest occasion of a kind is named.
func cautionsFor(history []Inspection, today Date, season Season) []Caution {
	var out []Caution
	add := func(c Caution, ok bool) {
		if ok {
			out = append(out, c)
		}
	}
	recent := within(history, today, CautionDays)
	add(diseaseCaution(recent))
	add(treatmentCaution(recent))
	add(stingCaution(within(history, today, 14)))
	add(liftingCaution(within(history, today, 14)))
	add(fireCaution(within(history, today, 14), season))
	return out
}

// within returns the inspections of the last days up to today.
func within(history []Inspection, today Date, days int) []Inspection {
	var out []Inspection
	for i := range history {
		if ago := today.Sub(dayOf(&history[i])); ago >= 0 && ago <= days {
			out = append(out, history[i])
		}
	}
	return out
}

// diseaseSigns lists the signs of a possibly notifiable disease that were seen
// and not denied by a later inspection.
func diseaseSigns(history []Inspection) []Finding {
	seen := map[string]Finding{}
	for i := range history {
		for _, s := range history[i].Signs {
			if s.Present {
				seen[s.Sign] = Finding{dayOf(&history[i]), "signs." + s.Sign, strings.ReplaceAll(s.Sign, "_", " ")}
			} else {
				delete(seen, s.Sign)
			}
		}
	}
	var out []Finding
	for _, sign := range notifiable {
		if f, ok := seen[sign]; ok {
			out = append(out, f)
		}
	}
	return out
}

func diseaseCaution(recent []Inspection) (Caution, bool) {
	signs := diseaseSigns(recent)
	if len(signs) == 0 {
		return Caution{}, false
	}
	var names []string
	on := signs[0].On
	for _, s := range signs {
		names = append(names, s.Says)
		on = laterOf(on, s.On)
	}
	return Caution{"disease", on,
		"these signs can be those of a disease that must be reported: close the hive, move no bees, combs or tools away from it, clean tools and hands, and call the apiary inspector, who alone can tell",
		strings.Join(names, ", ") + " seen"}, true
}

func treatmentCaution(recent []Inspection) (Caution, bool) {
	for i := len(recent) - 1; i >= 0; i-- {
		ins := &recent[i]
		for _, t := range slices.Concat(ins.Actions, ins.Plans) {
			if t.Do != "treat" {
				continue
			}
			c := Caution{"treatment", dayOf(ins), "follow the product's label and the local rules, on dose, temperature, protection and waiting time", strings.TrimSpace("treatment " + plain(t.What))}
			if honeyOn(ins) {
				c.Says += "; there is honey on the hive: most treatments are not allowed then, or the honey is not for people"
			}
			return c, true
		}
	}
	return Caution{}, false
}

// honeyOn reports whether honey was seen on the hive.
func honeyOn(ins *Inspection) bool {
	return saidAnywhere(ins, "honey") == shown || saidAnywhere(ins, "capped_honey") == shown
}

func stingCaution(recent []Inspection) (Caution, bool) {
	for i := len(recent) - 1; i >= 0; i-- {
		t := recent[i].Temper
		if t == nil || t.Stings == nil || *t.Stings == 0 {
			continue
		}
		return Caution{"stings", dayOf(&recent[i]),
			"take stings out at once; trouble breathing, swelling of face or mouth, a rash all over, dizziness, or very many stings: call the emergency number. Keepers can become allergic after years",
			fmt.Sprintf("%d stings", *t.Stings)}, true
	}
	return Caution{}, false
}

// heavyKg is a weight that one person does not lift with care for the back;
// common practice.
const heavyKg = 25

func liftingCaution(recent []Inspection) (Caution, bool) {
	for i := len(recent) - 1; i >= 0; i-- {
		ins := &recent[i]
		if ins.WeightKg != nil && *ins.WeightKg >= heavyKg {
			return Caution{"lifting", dayOf(ins), "do not lift or move the hive alone", fmt.Sprintf("the hive weighs %s kg", amount(*ins.WeightKg))}, true
		}
	}
	return Caution{}, false
}

func fireCaution(recent []Inspection, season Season) (Caution, bool) {
	for i := len(recent) - 1; i >= 0; i-- {
		ins := &recent[i]
		dry := season.Dry(dayOf(ins)) && (ins.Weather == nil || ins.Weather.Sky != "rain")
		for _, t := range ins.Actions {
			if t.Do == "smoke" && dry {
				return Caution{"fire", dayOf(ins), "set the smoker on bare ground or in a bucket, put it out with its plug, and heed fire bans", "smoke used in the dry months"}, true
			}
		}
	}
	return Caution{}, false
}
