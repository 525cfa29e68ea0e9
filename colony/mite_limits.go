package colony

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

// MiteLimit is a published threshold: when a rate by a method in a season is
// called too high. None is law, and they disagree; the keeper chooses a set.
type MiteLimit struct {
	Set    string     `json:"set"`
	Method string     `json:"method"` // drop, wash or sugar
	First  time.Month `json:"first"`  // first month it holds for, as the northern hemisphere counts
	Last   time.Month `json:"last"`
	Limit  float64    `json:"limit"` // mites a day, or per cent
	Level  string     `json:"level"` // what the source says of a rate over it
	From   Reference  `json:"from"`
}

// MiteLimits is the table of thresholds by set.
var MiteLimits = []MiteLimit{
	{"germany", "drop", time.July, time.July, 10, "treat production colonies", library["HANN"]},
	{"germany, young colonies", "drop", time.July, time.July, 5, "treat young colonies", library["HANN"]},
	{"weser-ems", "drop", time.July, time.July, 5, "critical, watch", library["BUCKWE"]},
	{"weser-ems", "drop", time.July, time.July, 10, "treat", library["BUCKWE"]},
	{"weser-ems", "drop", time.July, time.July, 30, "beyond saving, as the source says", library["BUCKWE"]},
	{"weser-ems", "drop", time.November, time.November, 1, "treat", library["BUCKWE"]},
	{"switzerland", "drop", time.June, time.June, 10, "treat at once", library["BGD"]},
	{"ontario", "drop", time.May, time.May, 9, "treatment advised", library["OMAFRA16"]},
	{"ontario", "drop", time.August, time.August, 12, "treatment advised", library["OMAFRA16"]},
	{"ontario", "wash", time.May, time.May, 2, "treatment advised", library["OMAFRA16"]},
	{"ontario", "wash", time.August, time.August, 3, "treatment advised", library["OMAFRA16"]},
	{"mississippi", "wash", time.February, time.February, 1, "not research-based, as the source says", library["MSST"]},
	{"tucson", "wash", time.January, time.December, 3, "treat", library["TUCSON"]},
	{"tucson", "drop", time.January, time.December, 30, "treat", library["TUCSON"]},
	{"florida", "wash", time.January, time.December, 3, "treat", library["UFCAL"]},
	{"virginia", "drop", time.January, time.December, 40, "treatment advised", library["VCE"]},
	{"britain 2005", "drop", time.January, time.December, 9, "severe risk", library["DEFRA05"]},
}

// MiteLimitSets lists the sets that can be chosen, in the table's order.
func MiteLimitSets() []string {
	var out []string
	for _, l := range MiteLimits {
		if len(out) == 0 || out[len(out)-1] != l.Set {
			out = append(out, l.Set)
		}
	}
	return out
}

// MiteVerdict is a rate beside a threshold.
type MiteVerdict struct {
	Limit MiteLimit `json:"limit"`
	Over  string    `json:"over"` // over, under, or "perhaps over" where the interval holds the limit
	Says  string    `json:"says"`
}

// againstLimits compares a rate with the thresholds of a set that hold in its
// month and for its method; the empty set asks all. A roll is read against the
// limits of a wash, which usually finds more mites.
func againstLimits(r MiteRate, set string, season Season) []MiteVerdict {
	var out []MiteVerdict
	method := r.Method
	if method == "sugar" {
		method = "wash"
	}
	month := season.month(r.On)
	for _, l := range MiteLimits {
		if set != "" && l.Set != set || l.Method != method || month < l.First || month > l.Last {
			continue
		}
		v := MiteVerdict{Limit: l, Over: "perhaps over"}
		switch {
		case r.Rate.Low > l.Limit:
			v.Over = "over"
		case r.Rate.High <= l.Limit:
			v.Over = "under"
		}
		v.Says = fmt.Sprintf("%s the limit of %s for %s (%s)", v.Over, l.amount(r.Rate.Unit), l.Set, l.Level)
		out = append(out, v)
	}
	return out
}

// amount is the limit with its unit: "3%", "9 mites a day".
func (l MiteLimit) amount(unit string) string { return Exactly(l.Limit, unit).String() }

// limitsInWords tells in one line where a rate stands. Where a set was chosen
// it is that set's limits; else the published ones, which disagree, are named
// shortest: by their number and set.
func limitsInWords(verdicts []MiteVerdict, set string) string {
	var chosen []string
	for _, v := range verdicts {
		chosen = append(chosen, v.Says)
	}
	switch {
	case len(verdicts) == 0 && set == "":
		return "no published limit is known for this method and month"
	case len(verdicts) == 0:
		return "no limit for " + set + " is known for this method and month"
	case set != "":
		return strings.Join(chosen, "; ")
	}
	var parts []string
	for _, over := range []string{"over", "perhaps over", "under"} {
		if limits := limitsThat(verdicts, over); len(limits) > 0 {
			parts = append(parts, over+" "+strings.Join(limits, ", "))
		}
	}
	return "beside the published limits, which disagree: " + strings.Join(parts, "; ")
}

// limitsThat names the limits of one verdict, those of one height together:
// "3 (ontario, tucson)".
func limitsThat(verdicts []MiteVerdict, over string) []string {
	sets := map[float64][]string{}
	var heights []float64
	for _, v := range verdicts {
		if v.Over != over {
			continue
		}
		if sets[v.Limit.Limit] == nil {
			heights = append(heights, v.Limit.Limit)
		}
		sets[v.Limit.Limit] = append(sets[v.Limit.Limit], v.Limit.Set)
	}
	slices.Sort(heights)
	var out []string
	for _, h := range heights {
		out = append(out, fmt.Sprintf("%s (%s)", amount(h), strings.Join(sets[h], ", ")))
	}
	return out
}

// explainLimits lists every published limit for the method and month beside
// the rate, whichever set was chosen.
func explainLimits(r MiteRate, season Season) Explanation {
	all := againstLimits(r, "", season)
	if len(all) == 0 {
		return Explanation{}
	}
	e := Explanation{What: "mites beside published limits", Result: r.Rate.Range.String(),
		Formula: "over: the whole interval lies over the limit; perhaps over: it holds the limit; under: all of it lies at or under the limit",
		Caveats: []string{"none of them is law, and they disagree; a set is chosen with: barwise words mites SET"}}
	for _, v := range all {
		e.Inputs = append(e.Inputs, Input{v.Limit.Set, v.Limit.amount(r.Rate.Unit) + ", " + v.Over, v.Limit.Level})
		e.From = withReferences(e.From, v.Limit.From)
	}
	return e
}

// MiteMeans names the kinds of means there are against mites, in no order of
// worth. barwise names no product and no dose.
var MiteMeans = []string{
	"biotechnical (drone brood removal, a break in the brood)",
	"organic acids",
	"thymol",
	"synthetic",
}

// meansNote is said wherever the kinds are named.
const meansNote = "Which of them is allowed and fits, the local rules and the product's label say: follow the label"

// miteNote names the kinds of means where a rate is, or may be, over a limit,
// and warns of honey on the hive; else it is empty.
func miteNote(verdicts []MiteVerdict, honey bool) string {
	for _, v := range verdicts {
		if v.Over == "under" {
			continue
		}
		note := "kinds of means against mites: " + strings.Join(MiteMeans, "; ") + ". " + meansNote
		if honey {
			note += ". There is honey on the hive: most of them are not allowed then, or the honey is not for people"
		}
		return note
	}
	return ""
}
