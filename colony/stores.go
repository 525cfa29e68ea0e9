package colony

import (
	"fmt"
	"strings"
)

// What a dm² of comb face holds, one side.
var (
	sealedHoney = Constant{"sealed honey on a dm², one side", Between(110, 125, 200, "g/dm²"), "125 read; thick honey comb holds up to 190 or more", from("BOA20", "MUEGG", "HONEYCOMB")}
	someHoney   = Constant{"honey on a dm², one side, not said to be sealed", Between(60, 115, 200, "g/dm²"), "", from("BOA20", "HONEYCOMB", "PRACTICE")}
	openNectar  = Constant{"nectar on a dm², one side", Between(15, 60, 125, "g/dm²"), "cells part full and thin", from("PRACTICE")}
	beeBread    = Constant{"bee bread on a dm², one side", Between(80, 100, 120, "g/dm²"), "", from("AUMEIER")}
)

// Food is what a colony has in its combs.
type Food struct {
	AsOf   Date     `json:"as_of,omitzero"`
	Honey  Estimate `json:"honey"`  // kg, with nectar
	Pollen Estimate `json:"pollen"` // kg
	Word   string   `json:"word,omitempty"`
}

// countFood works honey and pollen out from the comb areas of one inspection.
// Combs that were not spoken of are not in it, so it is rather too low.
func countFood(ins *Inspection, box Box) Food {
	f := Food{AsOf: dayOf(ins)}
	if ins.Stores != nil {
		f.Word = ins.Stores.Word
	}
	f.Honey = foodIn(ins, box, "honey and nectar", []string{"capped_honey", "honey", "nectar"}, sealedHoney, someHoney, openNectar)
	f.Pollen = foodIn(ins, box, "bee bread", []string{"pollen"}, beeBread)
	return f
}

func foodIn(ins *Inspection, box Box, name string, kinds []string, per ...Constant) Estimate {
	total := Exactly(0, unitKg)
	var inputs []Input
	var used []Constant
	var refs []Reference
	for i, what := range kinds {
		area := box.CombTotal(ins, what)
		if !area.Known() {
			continue
		}
		total = total.Plus(area.Range.Times(per[i].Value, unitKg).Scale(1e-3))
		inputs = append(inputs, Input{broodName(what), area.Range.String(), shortDay(dayOf(ins))})
		used = append(used, per[i])
		refs = withReferences(refs, area.Why.From...)
	}
	if len(inputs) == 0 {
		return Estimate{}
	}
	e := because(name, total, "comb area of both sides × mass per dm²", inputs, used...)
	e.Why.Result = fmt.Sprintf("%s, %s", total, total.InPounds())
	e.Why.From = withReferences(e.Why.From, refs...)
	e.Why.Caveats = []string{"combs that were not spoken of are not counted"}
	e.askForShare()
	return e
}

// WinterTarget is how much food colonies are to have before winter. The values
// differ by climate and by author, so one is chosen by name, or the keeper
// gives another.
type WinterTarget struct {
	Name string   `json:"name"`
	Need Constant `json:"need"`
}

// WinterTargets are the known targets; the first is used until one is chosen.
var WinterTargets = []WinterTarget{
	{"central europe", Constant{"winter food", Between(10, 15, 17, unitKg), "10 for young, 15 for strong colonies, 12 to 17 fed", from("PGS", "GOLD", "MYBEE")}},
	{"britain", Constant{"winter food", Between(18, 20, 23, unitKg), "20 as routine, 40 to 50 lb", from("UKFORUM", "COTS")}},
	{"northern usa", Constant{"winter food", Between(36, 40.8, 45, unitKg), "90 lb in October; ends are a tenth either way", from("USDA-OW4", "PRACTICE")}},
	{"usa, outdoors", Constant{"winter food", Between(18, 20.4, 23, unitKg), "45 lb from season to season; ends are a tenth either way", from("PHILDEM", "PRACTICE")}},
	{"usa, cellar", Constant{"winter food", Between(6.8, 7.9, 9.1, unitKg), "15 to 20 lb", from("PHILDEM")}},
}

// WinterTargetNamed finds a target, or says which there are.
func WinterTargetNamed(name string) (WinterTarget, error) {
	for _, t := range WinterTargets {
		if t.Name == name {
			return t, nil
		}
	}
	return WinterTarget{}, fmt.Errorf("no winter target %q: there are %s", name, namesOf(WinterTargets, func(t WinterTarget) string { return t.Name }))
}

// OwnWinterTarget is a target that the keeper sets, in kg.
func OwnWinterTarget(kg float64) WinterTarget {
	return WinterTarget{"own", Constant{"winter food", Exactly(kg, unitKg), "set by the keeper", nil}}
}

// WinterUse is what a wintering colony eats.
var WinterUse = Constant{"food eaten in winter", Between(0.23, 0.29, 0.35, "kg a week"), "December to February, 1 to 1.5 kg a month; more from March on", from("HYM18", "QUARRY18")}

// storesGap is how much food is wanting to the target: positive is missing,
// negative is to spare.
func storesGap(f Food, target WinterTarget) Estimate {
	if !f.Honey.Known() {
		return Estimate{}
	}
	gap := target.Need.Value.Minus(f.Honey.Range)
	e := because("food wanting to the winter target", gap, "target − honey in the combs", []Input{
		{"honey", f.Honey.Range.String(), shortDay(f.AsOf)}, {"target", target.Name, "setting"}}, target.Need)
	e.Why.From = withReferences(e.Why.From, f.Honey.Why.From...)
	e.Why.Result = fmt.Sprintf("%s, %s", gap, gap.InPounds())
	return e
}

// weeksOfFood is how long the food lasts at a rate of use in kg a week.
func weeksOfFood(f Food, use Constant) Estimate {
	if !f.Honey.Known() {
		return Estimate{}
	}
	return because("weeks the food lasts", f.Honey.Range.Per(use.Value, "weeks"), "honey ÷ use a week",
		[]Input{{"honey", f.Honey.Range.String(), shortDay(f.AsOf)}}, use)
}

// namesOf lists the names, with semicolons since some hold a comma.
func namesOf[T any](list []T, name func(T) string) string {
	var names []string
	for _, v := range list {
		names = append(names, name(v))
	}
	return strings.Join(names, "; ")
}
