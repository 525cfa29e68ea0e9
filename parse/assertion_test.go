package parse

import (
	"strings"
	"testing"

	"barwise/colony"
)

// leavesOf lists the leaves of a note, without the day, joined by spaces; a
// flagged leaf ends in "?", and "/" parts inspections.
func leavesOf(text string) string {
	return leavesWith(text, func(l colony.Leaf) bool { return l.Path != "at" })
}

// leavesWith is leavesOf for the leaves that are asked for.
func leavesWith(text string, asked func(colony.Leaf) bool) string {
	var all []string
	for _, ins := range sharedParser().Parse(&colony.Note{Text: text, Given: may14}) {
		flagged := map[string]bool{}
		for _, c := range ins.Check {
			flagged[c.Path] = true
		}
		var out []string
		for _, l := range colony.Leaves(&ins) {
			if !asked(l) {
				continue
			}
			s := l.Path + "=" + l.Value
			if flagged[l.Path] {
				s += "?"
			}
			out = append(out, s)
		}
		all = append(all, strings.Join(out, " "))
	}
	return strings.Join(all, " / ")
}

// The sentence types below are those of published programs that judge whether
// a clinical finding is asserted; the nouns are ours.
//
//	negex: chapmanbe/negex, wiki NegExAlgorithmDescription, negex_triggers.txt and the annotated kit (Apache-2.0)
//	negspacy: jenojp/negspacy, tests/test_negation.py (MIT)
//	medspacy: medspacy/medspacy, tests/context (MIT)
//	recognizers: microsoft/Recognizers-Text, Specs/Choice/English/BooleanModel.json (MIT)
const (
	negex    = "negex"
	negspacy = "negspacy"
	medspacy = "medspacy"
)

func TestAssertion(t *testing.T) {
	for _, c := range []struct{ kind, said, want, source, ours string }{
		{"denied A but B", "on bar four no eggs but larvae", "bars.4.eggs=no bars.4.open_brood=yes", negspacy, ""},
		{"denied A but has B", "bar four shows no eggs but has larvae", "bars.4.eggs=no bars.4.open_brood=yes", negspacy, ""},
		{"no A, B, C or D", "bar four no eggs, larvae, capped brood or nectar", "bars.4.eggs=no bars.4.open_brood=no bars.4.capped_brood=no bars.4.nectar=no", negspacy, ""},
		{"no history of A, B, or C", "no signs of chalkbrood, sacbrood or wax moth", "signs.chalkbrood=no signs.sacbrood=no signs.wax_moth=no", negspacy, ""},
		{"no increase in A", "no change in the brood on bar four", "bars.4.brood=yes", negex, ""},
		{"no further A", "no further ado capped brood on bar four", "bars.4.capped_brood=yes", negex, ""},
		{"A free", "bar four is free of brood", "bars.4.brood=no", negex, ""},
		{"A is absent", "eggs are absent on bar four", "bars.4.eggs=no", negex, ""},
		{"A not seen", "eggs not seen on bar four", "bars.4.eggs=no", negex, ""},
		{"A was not found", "chalkbrood was not found", "signs.chalkbrood=no", negex, ""},
		{"A negative", "wax moth none", "signs.wax_moth=no", negex, ""},
		{"negative for A, positive for B", "negative for chalkbrood, positive for sacbrood", "signs.chalkbrood=no signs.sacbrood=yes", medspacy, ""},
		{"A is negative, B is positive", "chalkbrood absent, sacbrood present", "signs.chalkbrood=no signs.sacbrood=yes", medspacy, ""},
		{"A but B is ruled out", "bar four has eggs but capped brood is absent", "bars.4.eggs=yes bars.4.capped_brood=no", medspacy, ""},
		{"no evidence of A or B", "no evidence of chalkbrood or wax moth", "signs.chalkbrood=no signs.wax_moth=no", medspacy, ""},
		{"negative attitude", "negative temper aside bar four eggs", "bars.4.eggs=yes", medspacy, ""},
		{"No A. Possible B.", "No eggs on bar four. Possibly larvae on bar five.", "bars.4.eggs=no bars.5.open_brood=yes?", medspacy, ""},
		{"family history of A", "my neighbour's hive has chalkbrood", "", medspacy, ""},
		{"mother has A", "next door has foulbrood", "", medspacy, ""},
		{"history of A and history of B", "last year they had chalkbrood and last year they had wax moth", "", medspacy, ""},
		{"no A. No hx of B.", "No eggs on bar four. No larvae on bar five.", "bars.4.eggs=no bars.5.open_brood=no", medspacy, ""},
		{"return if he develops A, B or C", "come back if there is chalkbrood, sacbrood or wax moth", "", negex, ""},
		{"concerned about the possibility of A", "possibly chalkbrood", "signs.chalkbrood=yes?", negex, "affirmed there; a hedge is flagged here"},
		{"no new A", "no new queen cells", "", negex, "negated there; no new ones does not say that there are none"},
		{"without A", "bar four capped brood without larvae", "bars.4.capped_brood=yes bars.4.open_brood=no", negex, ""},
		{"not only A", "not only eggs but larvae on bar four", "bars.4.eggs=yes bars.4.open_brood=yes", negex, ""},
		{"never had A", "never saw any wax moth", "signs.wax_moth=no", negex, ""},
		{"A has resolved", "the chalkbrood is gone", "signs.chalkbrood=no", negex, ""},
		{"no longer A", "no longer any chalkbrood", "signs.chalkbrood=no", negex, ""},
		{"A: none", "Chalkbrood: none", "signs.chalkbrood=no", medspacy, ""},
		{"A: no", "Queen cells: no", "queen_cells.any=no", medspacy, ""},
		{"no A", "Eggs: no. Larvae: yes", "contents.eggs=no contents.open_brood=yes", negspacy, ""},
		{"run-on, no punctuation", "bar four no eggs bar five eggs and larvae bar six capped brood", "bars.4.eggs=no bars.5.eggs=yes bars.5.open_brood=yes bars.6.capped_brood=yes", negex, ""},
		{"run-on with a verb of its own", "bar four has no eggs there is capped brood on the back", "bars.4.eggs=no bars.4.capped_brood=yes bars.4.capped_brood.side=back", negex, ""},
		{"run-on with a count of its own", "no eggs on bar four two sealed queen cells on bar six", "bars.4.eggs=no bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=2", negex, ""},
		{"question", "are there eggs on bar four", "", ours, ""},
		{"general statement", "the books say chalkbrood clears by itself", "", ours, ""},
		{"couldn't tell", "couldn't tell if there were eggs on bar four", "", ours, ""},
		{"past", "last time there were eggs on bar four", "earlier.eggs_seen=yes earlier.eggs_seen.bar=4", ours, ""},
		{"past, with a bar at its head", "last time bar eight had eggs", "earlier.eggs_seen=yes earlier.eggs_seen.bar=8", ours, ""},
		{"past by a day", "last week bar eight had eggs", "earlier.eggs_seen=yes earlier.eggs_seen.bar=8", ours, ""},
		{"zero A", "zero eggs on bar nine", "bars.9.eggs=no", ours, ""},
		{"A nil", "bar six eggs nil", "bars.6.eggs=no", ours, ""},
		{"no current A", "no current chalkbrood", "signs.chalkbrood=no", medspacy, ""},
		{"no problem with A", "no problem with the brood on bar four", "bars.4.brood=yes", negex, ""},
		{"A can't be ruled out", "foulbrood could not be ruled out", "signs.foulbrood=yes?", negex, ""},
		{"um no A", "queen seen. um no eggs on bar six", "bars.6.eggs=no queen.seen=yes", ours, ""},
		{"A er no B", "bar four eggs er no larvae", "bars.4.eggs=yes bars.4.open_brood=no", ours, ""},
		{"a filler behind a full stop", "bar six honey. er bees calm", "bars.6.honey=yes temper.score=4", ours, ""},
		{"one temper in two words", "the bees were gentle as usual", "temper.score=4", ours, ""},
		{"condition", "if there are eggs on bar four I will add a bar", "", ours, ""},
	} {
		if got := leavesOf(c.said); got != c.want {
			t.Errorf("%s: %q\n got %s\nwant %s (%s)", c.kind, c.said, got, c.want, c.source)
		}
	}
}
