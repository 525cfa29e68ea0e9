package tui

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"barwise/colony"
)

// tradeWords are other words for a value, by the last part of the path. They
// are the words of the record's contract; typing the start of one offers the
// value.
var tradeWords = map[string]map[string]string{
	"pattern":       patternWords,
	"brood_pattern": patternWords,
	"amount":        {"little": "few bit patch handful tiny", "much": "lots plenty loads heavy mostly packed"},
	"side":          {"both": "each", "one": "single this that", "front": "entrance", "back": "rear"},
	"place":         {"edge": "edges sides outside around arc band", "top": "upper", "bottom": "lower", "middle": "centre center"},
	"size":          {"bare": "none nothing", "started": "beginning", "small": "hand-sized", "large": "big"},
	"attached":      {"no": "free", "wall": "side", "bar": "comb neighbour"},
	"score":         {"4": "gentle calm quiet sweet docile", "3": "acceptable fine okay steady busy", "2": "touchy nervous edgy testy grumpy flighty", "1": "stinging hot mean aggressive nasty angry"},
	"word":          {"weak": "small dwindling", "moderate": "medium average", "strong": "booming packed bursting populous", "light": "low short", "fair": "okay adequate enough", "heavy": "plenty lots"},
	"method":        {"drop": "board tray", "wash": "alcohol soapy", "sugar": "roll shake", "brood": "drone cells", "seen": "noticed"},
	"sky":           {"sunny": "clear bright", "cloudy": "clouds", "overcast": "grey gray", "rain": "drizzle showers wet"},
	"wind":          {"calm": "still none", "breezy": "breeze light", "windy": "strong gusty"},
	"entrance":      {"reduced": "narrowed small", "closed": "shut"},
	"floor":         {"closed": "shut"},
	"kind":          {"supersedure": "replacement", "emergency": "rescue"},
	"direction":     {"back": "room", "forward": "tight"},
}

var patternWords = map[string]string{"solid": "tight compact good wall-to-wall full", "patchy": "spotty scattered shotgun pepperpot poor"}

// kindWords are other words for a thing of a list.
var kindWords = map[string]string{
	"capped_brood": "sealed", "open_brood": "larvae grubs uncapped", "emerging_brood": "hatching", "pollen": "beebread",
	"honey": "stores", "capped_honey": "sealed", "empty": "drawn", "add_bar": "bar", "feed": "fed syrup fondant",
	"cup": "play", "charged": "open larva", "capped": "sealed", "small_hive_beetle": "shb", "deformed_wings": "dwv",
}

// wordsFor lists the allowed values that the typed text starts, by their own
// name first, then by a word of the trade for them. With no list of values the
// trade's words alone decide.
func wordsFor(field string, values []string, typed string) []offered {
	also := tradeWords[field]
	if values == nil {
		for v := range also {
			values = append(values, v)
		}
		slices.Sort(values)
		slices.Reverse(values)
	}
	var byName, byWord []offered
	for _, v := range values {
		synonyms := strings.Fields(also[v])
		if startsLike(v, typed) {
			byName = append(byName, offered{v, strings.Join(synonyms[:min(3, len(synonyms))], ", ")})
			continue
		}
		if i := slices.IndexFunc(synonyms, func(s string) bool { return startsLike(s, typed) }); i >= 0 {
			byWord = append(byWord, offered{v, synonyms[i]})
		}
	}
	return append(byName, byWord...)
}

func anyStarts(names []string, typed string) bool {
	return slices.ContainsFunc(names, func(n string) bool { return startsLike(n, typed) })
}

// startsLike reports whether some word of the name begins with what was typed.
func startsLike(name, typed string) bool {
	name, typed = strings.ToLower(name), strings.ToLower(typed)
	if strings.HasPrefix(name, typed) {
		return true
	}
	for i := range name {
		if i > 0 && (name[i-1] == ' ' || name[i-1] == '-') && strings.HasPrefix(name[i:], typed) {
			return true
		}
	}
	return false
}

var numberWords = strings.Fields("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty")

var shareWords = map[string]float64{"half": 0.5, "third": 1. / 3, "a third": 1. / 3, "two thirds": 2. / 3, "quarter": 0.25,
	"a quarter": 0.25, "three quarters": 0.75, "full": 1, "all": 1, "none": 0}

// numberTyped reads 4, 4.5, 4,5, four, half, 80% and 3/4.
func numberTyped(typed string) (float64, bool) {
	text := strings.ToLower(strings.TrimSpace(typed))
	if n := slices.Index(numberWords, text); n >= 0 {
		return float64(n), true
	}
	if share, ok := shareWords[text]; ok {
		return round3(share), true
	}
	if percent, ok := strings.CutSuffix(text, "%"); ok {
		n, err := strconv.ParseFloat(strings.TrimSpace(percent), 64)
		return n / 100, err == nil && finite(n)
	}
	if over, under, ok := strings.Cut(text, "/"); ok {
		a, errA := strconv.ParseFloat(strings.TrimSpace(over), 64)
		b, errB := strconv.ParseFloat(strings.TrimSpace(under), 64)
		return round3(a / b), errA == nil && errB == nil && b != 0 && finite(a/b)
	}
	n, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	return n, err == nil && finite(n)
}

func finite(n float64) bool { return n < 1e9 && n > -1e9 }

func round3(n float64) float64 { return math.Round(n*1000) / 1000 }

var dayForms = []string{"2006-01-02", "2 Jan 2006", "2 January 2006", "2.1.2006", "2/1/2006"}
var dayFormsNoYear = []string{"2 Jan", "2 January", "Jan 2", "January 2", "2.1.", "2.1", "2/1"}

// dayTyped reads a day: 2026-05-14, 14 may, 14.5., today, yesterday, or a
// number of days from the inspection such as +3. A day without a year is in
// the inspection's year.
func dayTyped(typed string, about, now time.Time) (colony.Date, bool) {
	if about.IsZero() {
		about = now
	}
	text := strings.ToLower(strings.TrimSpace(typed))
	switch text {
	case "":
		return colony.Date{}, false
	case "today":
		return colony.DateOf(now), true
	case "yesterday":
		return colony.DateOf(now).AddDays(-1), true
	case "tomorrow":
		return colony.DateOf(now).AddDays(1), true
	}
	if text[0] == '+' || text[0] == '-' {
		n, err := strconv.Atoi(text)
		return colony.DateOf(about).AddDays(n), err == nil && n > -4000 && n < 4000
	}
	for _, form := range dayForms {
		if t, err := time.Parse(form, text); err == nil {
			return colony.DateOf(t), true
		}
	}
	for _, form := range dayFormsNoYear {
		if t, err := time.Parse(form, text); err == nil {
			return colony.NewDate(about.Year(), t.Month(), t.Day()), true
		}
	}
	return colony.Date{}, false
}

// timeTyped reads a moment: a day, a time of day such as 16:30, or both. What
// is not typed is taken from the moment as it stands.
func timeTyped(typed string, about, now time.Time) (time.Time, bool) {
	if about.IsZero() {
		about = now
	}
	text := strings.TrimSpace(typed)
	if t, err := time.Parse(time.RFC3339, text); err == nil {
		return t, true
	}
	clock, day := about, colony.DateOf(about)
	head, tail := text, ""
	if i := strings.LastIndexByte(text, ' '); i >= 0 {
		head, tail = text[:i], text[i+1:]
	}
	for _, part := range [][2]string{{tail, head}, {text, ""}} {
		if t, err := time.Parse("15:04", part[0]); err == nil {
			clock, text = t, strings.TrimRight(part[1], ", ")
			break
		}
	}
	if text != "" {
		var ok bool
		if day, ok = dayTyped(text, about, now); !ok {
			return time.Time{}, false
		}
	}
	return time.Date(day.Year, day.Month, day.Day, clock.Hour(), clock.Minute(), 0, 0, about.Location()), true
}

// textTyped writes free text the way the record has it: names in lower case.
func textTyped(field, typed string) string {
	text := clean(strings.TrimSpace(typed))
	if field == "hive" || field == "from_hive" || field == "to_hive" || field == "what" || field == "colour" {
		text = strings.ToLower(text)
	}
	return text
}
