package parse

import (
	"flag"
	"fmt"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
)

var (
	differing = flag.String("differing", "", "print what this way of TestVariants or TestComposed reads otherwise")
	onlyGold  = flag.String("gold", "", "vary the notes with answers of the files of this pattern, without floors")
)

// What a note says does not hang on how it is put. Each variant rewrites the notes with
// answers that are read right, and the answers must stay. A variant may take away what a
// reader needs (the stops of a write-up, the capitals of names), so a floor holds the number
// of notes that it must leave right: a number, since a note that is newly read right should
// not bring a share down.

// variant rewrites a note so that its answers hold still.
type variant struct {
	name    string
	floor   int // notes that must be read as before
	rewrite func(note string) string
}

func replacing(pairs ...string) func(string) string {
	type change struct {
		from *regexp.Regexp
		to   string
	}
	var all []change
	for i := 0; i < len(pairs); i += 2 {
		all = append(all, change{regexp.MustCompile(pairs[i]), pairs[i+1]})
	}
	return func(note string) string {
		for _, c := range all {
			note = c.from.ReplaceAllString(note, c.to)
		}
		return note
	}
}

// unless leaves alone the notes that match a pattern.
func unless(pattern string, rewrite func(string) string) func(string) string {
	matched := regexp.MustCompile(pattern)
	return func(note string) string {
		if matched.MatchString(note) {
			return note
		}
		return rewrite(note)
	}
}

var variants = []variant{
	{"sealed for capped", 856, replacing(`\bcapped\b`, "sealed", `\bCapped\b`, "Sealed", `\buncapped\b`, "unsealed")},
	{"capped for sealed", 619, replacing(`\bsealed\b`, "capped", `\bSealed\b`, "Capped", `\bunsealed\b`, "uncapped")},
	{"grubs for larvae", 412, replacing(`\blarvae\b`, "grubs", `\bLarvae\b`, "Grubs")},
	{"larvae for grubs", 80, replacing(`\bgrubs\b`, "larvae")},
	{"lower case", 980, strings.ToLower},
	{"upper case", 1817, strings.ToUpper},
	{"commas away", 1093, replacing(`,(\D|$)`, "$1")},
	{"stops away", 711, replacing(`[.;] `, " ", `[.;]\n`, "\n")},
	{"semicolons are stops", 198, replacing(`; `, ". ")},
	{"stops are semicolons", 809, stopsAs("; ")},
	{"stops are lines", 947, stopsAs(".\n")},
	{"stops are commas", 689, stopsAs(", ")},
	{"dashes are commas", 65, replacing(` [-–—] `, ", ")},
	{"commas are dashes", 1280, replacing(`, `, " – ")},
	{"lines are stops", 1950, replacing(`([^\s.,;:!?])[ \t]*\n+`, "$1. ", `\n+`, " ")},
	{"lines are spaces", 1620, replacing(`\n`, " ")},
	{"full forms", 536, replacing(`n't\b`, " not", `\bca not\b`, "cannot", `I've`, "I have", `I'll`, "I will", `I'm`, "I am", `\b(it|that|there|she|he)'s a\b`, "$1 is a")},
	{"short forms", 380, replacing(` (did|does|do|is|are|was|were|has|have) not\b`, " ${1}n't", `\bI have\b`, "I've", `\bI will\b`, "I'll")},
	{"dictated", 1175, spoken(dictated)},
	{"dictated in words", 1172, spoken(func(n string) string { return dictated(inWords(n)) })},
	{"a two misheard", 399, misheardOnce("two", "to")},
	{"a too misheard", 430, misheardOnce("two", "too")},
	{"a four misheard", 358, misheardOnce("four", "for")},
	{"an eight misheard", 261, misheardOnce("eight", "ate")},
	{"a one misheard", 453, misheardOnce("one", "won")},
	{"um", 1294, replacing(`, `, ", um, ")},
	{"so", 971, stopsAs(". So")},
	{"and at stops", 972, stopsAs(". And")},
	{"also", 890, stopsAs(". Also")},
	{"then", 914, stopsAs(". Then")},
	{"oh and", 920, stopsAs(". Oh and")},
	{"I saw", 77, replacing(`\b(I|i|we|We) found\b`, "$1 saw")},
	{"we", 779, replacing(`\bI('m| am)\b`, "we are", `\bI was\b`, "we were", `\bI\b`, "we", `(^|\n|[.!?:] )we\b`, "${1}We")},
	{"en dash ranges", 151, ranges("–")},
	{"to ranges", 151, ranges(" to ")},
	{"dash ranges", 157, rising("-")},
	{"through ranges", 157, rising(" through ")},
	{"ampersands", 1591, replacing(` and `, " & ")},
	{"and for ampersands", 23, replacing(` ?& ?`, " and ")},
	{"digits", 1467, inDigits},
	{"words", 1060, inWords},
	{"no. before numbers", 786, replacing(`\b([Bb]ar|[Hh]ive) (\d+([^.\w]|\.\s))`, "$1 no. $2")},
	{"hash before numbers", 786, replacing(`\b([Bb]ar|[Hh]ive) (\d+([^.\w]|\.\s))`, "$1 #$2")},
	{"combs for bars", 1446, unless(`(?i)\bcombs? (of|on|at) bar|\bno bar`, replacing(`\bbar(s?) (\d|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen)`, "comb$1 $2", `\bBar(s?) (\d|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen)`, "Comb$1 $2"))},
	{"colony for hive", 529, replacing(`\bhive (\d|one|two|three|four|five|six|seven|eight|nine|ten)`, "colony $1", `\bHive (\d|one|two|three|four|five|six|seven|eight|nine|ten)`, "Colony $1")},
	{"her majesty", 709, replacing(`\bthe queen\b`, "her majesty", `\bThe queen\b`, "Her majesty")},
	{"bullets", 2011, unless(`[|\t]|  |(?mi)^(hive|bar)[,;]`, replacing(`(?m)^([A-Za-z])`, "- $1"))},
	{"bold bars", 762, replacing(`\b([Bb]ars? \d+)`, "**$1**")},
	{"bold heads", 235, replacing(`(?m)^([A-Z][a-z]+( \d+)?:)`, "**$1**")},
	{"bold hives", 163, replacing(`\b(Hive (\d+|[A-Z])\b)`, "**$1**")},
	{"asides in brackets", 925, replacing(`([a-z]{3})\. `, "$1 (the dog barked). ")},
	{"tabs behind labels", 201, replacing(`(?m)^([A-Z][a-z]+( \d+)?): `, "$1:\t")},
	{"tab indented", 2061, replacing(`(?m)^`, "\t")},
	{"left and right for both sides", 269, replacing(`\bboth sides\b`, "left and right sides")},
	{"stars", 20, replacing(`(?m)^- `, "* ")},
	{"crlf", 2067, replacing(`\n`, "\r\n")},
	{"two spaces", 2055, spacing("  ")},
	{"no-break spaces", 2054, spacing("\u00a0")},
	{"indented", 2065, replacing(`(?m)^`, "    ")},
	{"curly quotes", 1000, replacing(`'`, "’")},
	{"exclaimed", 1079, replacing(`([a-z]{3})\.(\s+[A-Z]|\n)`, "$1!$2")},
}

// stopsAs puts something else between sentences than a full stop. Stops behind what is
// short for a word stay, and so do all of a note that is full of them. What ends in a word
// stands before the next sentence, unless that begins with such a word already.
func stopsAs(with string) func(string) string {
	worded := isASCIILetter(with[len(with)-1])
	return func(note string) string {
		if sentenceBegins.MatchString(note) && smallBegins.MatchString(note) {
			return note
		}
		var out strings.Builder
		from := 0
		for _, at := range fullStop.FindAllStringSubmatchIndex(note, -1) {
			if shortened.MatchString(note[at[2]:at[3]]) || worded && joinedAlready.MatchString(note[at[1]:]) {
				continue
			}
			out.WriteString(note[from:at[3]] + with)
			from = at[1]
			if worded {
				out.WriteByte(' ')
				if common := commonWord.FindString(note[from:]); common != "" {
					out.WriteString(strings.ToLower(common))
					from += len(common)
				}
			}
		}
		return out.String() + note[from:]
	}
}

var (
	fullStop       = regexp.MustCompile(`([^\s.,:;]+)\. +`)
	sentenceBegins = regexp.MustCompile(`\. +[A-Z]`)
	smallBegins    = regexp.MustCompile(`[a-z]\. +[a-z]`)
	shortened      = regexp.MustCompile(`^(?i)(no|nos|mr|mrs|ms|dr|st|hv|hvs|in|ca|approx|alc|insp|qty|temp|b|q|h|wt|cap|br|fr|frs|m|\d)$`)
	joinedAlready  = regexp.MustCompile(`^(?i)(and|but|so|then|or|also|anyway|okay|right|well|sorry|wait|no|yes|none|nil|nothing|not|still|now)\b`)
	commonWord     = regexp.MustCompile(`^(The|An?|It|We|He|She|They|There|This|That|These|Those|My|Our|His|Her|Their|Its|Is|Are|Was|Were|Do|Does|Did|Has|Have|Had|If|When|Where|What|How|In|On|At|By|From|To|For|With|As|Of|Some|Any|All|Both|Each|One|Two|Three|Four|Five|Six|Seven|Eight|Nine|Ten|Eleven|Twelve|Bars?|Combs?|Frames?|Queen|Eggs|Larvae|Brood|Capped|Sealed|Honey|Nectar|Pollen|Stores|Bees|Temper|Very|Only|Never|Didn't|Saw|Found|Looked|Put|Took|Gave|Added|Removed|Moved|Fed|Treated|Harvested|Left|Cut|Must|Need|Will|Should|Shall)\b`)
)

var (
	unpunctuated = regexp.MustCompile(`[.,;:!?()\n"]+(\s|$)`)
	countedDigit = regexp.MustCompile(`(^|[ (])(1?\d|20)([ ,.;:)]\D)`)
)

var numbersInWords = strings.Fields("zero one two three four five six seven eight nine ten eleven twelve thirteen " +
	"fourteen fifteen sixteen seventeen eighteen nineteen twenty")

// spacing puts others for the spaces between words, but leaves alone what spaces align.
func spacing(by string) func(string) string {
	return func(note string) string {
		if strings.Contains(note, "  ") {
			return note
		}
		return strings.ReplaceAll(note, " ", by)
	}
}

var hyphened = regexp.MustCompile(`[\db-]+`)

// ranges puts another word for the hyphen between two numbers, but not in a date.
func ranges(by string) func(string) string {
	return func(note string) string {
		return hyphened.ReplaceAllStringFunc(note, func(numbers string) string {
			lo, hi, ok := strings.Cut(numbers, "-")
			if !ok || lo == "" || hi == "" || strings.Contains(hi, "-") {
				return numbers
			}
			return lo + by + hi
		})
	}
}

var toHigher = regexp.MustCompile(`\b(\d+) to (\d+)`)

// rising puts another word for "to" between two numbers that rise: bars are moved from the
// higher to the lower.
func rising(by string) func(string) string {
	return func(note string) string {
		return toHigher.ReplaceAllStringFunc(note, func(said string) string {
			part := toHigher.FindStringSubmatch(said)
			lo, _ := strconv.Atoi(part[1])
			hi, _ := strconv.Atoi(part[2])
			if lo >= hi {
				return said
			}
			return part[1] + by + part[2]
		})
	}
}

// spoken leaves alone what is laid out in columns or numbered lines, which nobody says.
func spoken(rewrite func(string) string) func(string) string {
	return func(note string) string {
		if laidOutNote.MatchString(note) {
			return note
		}
		return rewrite(note)
	}
}

// misheardOnce puts what a recogniser may write for a word, once in a dictated note: in its middle.
func misheardOnce(word, heard string) func(string) string {
	alone := regexp.MustCompile(`\b` + word + `\b`)
	return func(note string) string {
		at := alone.FindAllStringIndex(note, -1)
		if len(at) == 0 || note != strings.ToLower(note) {
			return note
		}
		place := at[len(at)/2]
		return note[:place[0]] + heard + note[place[1]:]
	}
}

// dictated takes capitals and stops away.
func dictated(note string) string {
	return unpunctuated.ReplaceAllString(brackets.Replace(strings.ToLower(note)), " ")
}

var (
	laidOutNote = regexp.MustCompile(`[|\t]|(?m)^\d+[.)] |^\[.?\]`)
	brackets    = strings.NewReplacer("(", "", ")", "", "[", "", "]", "")
)

func inWords(note string) string {
	return countedDigit.ReplaceAllStringFunc(note, func(digits string) string {
		part := countedDigit.FindStringSubmatch(digits)
		n, _ := strconv.Atoi(part[2])
		return part[1] + numbersInWords[n] + part[3]
	})
}

// otherNames are hives' names of several kinds that no note has; a variant for each kind
// calls the hives of a note so.
var otherNames = []struct {
	kind  string
	floor int
	names []string
}{
	{"plants", 491, []string{"Teasel", "Bergamot", "Spindle", "Comfrey", "Yarrow", "Campion"}},
	{"women", 488, []string{"Philippa", "Oona", "Griselda", "Marjorie", "Wilhelmina", "Zelda"}},
	{"men", 488, []string{"Rupert", "Osbert", "Fergus", "Thaddeus", "Igor", "Barnaby"}},
	{"places", 490, []string{"Dunmore", "Saltash", "Trieste", "Wexcombe", "Ardnagreine", "Bexley"}},
	{"things", 489, []string{"Biscuit", "Trumpet", "Velvet", "Lantern", "Teapot", "Anvil"}},
	{"ranks", 483, []string{"Captain", "Professor", "Duchess", "Sergeant", "Bishop", "Admiral"}},
	{"two words", 481, []string{"Night Shift", "Copper Lantern", "Bright Side", "Slow Coach", "Cold Comfort", "Tin Drum"}},
	{"short words", 487, []string{"Jo", "Al", "Bo", "Ed", "Mo", "Zia"}},
	{"coined", 490, []string{"Zorblat", "Quendy", "Ixtil", "Wombo", "Frobish", "Tarquill"}},
}

// renamed is the case with its hives called by names, as far as each is called by one
// capitalised word; without such a hive ok is false.
func renamed(c goldCase, names []string) (out goldCase, ok bool) {
	out = goldCase{id: c.id, at: c.at, note: c.note}
	called := map[string]string{}
	for _, want := range c.want {
		old := want["hive"]
		if _, done := called[old]; done || len(old) < 4 || strings.Contains(old, " ") {
			continue
		}
		if capital := capitalised(old); strings.Contains(out.note, capital) && len(called) < len(names) {
			name := names[len(called)]
			called[old] = strings.ToLower(name)
			out.note = regexp.MustCompile(`\b(`+capital+`|`+old+`|`+strings.ToUpper(old)+`)\b`).ReplaceAllString(out.note, name)
		}
	}
	for _, want := range c.want {
		also := map[string]string{}
		for path, value := range want {
			if name, ok := called[value]; ok {
				value = name
			}
			also[path] = value
		}
		out.want = append(out.want, also)
	}
	return out, len(called) > 0
}

func TestVariants(t *testing.T) {
	leftOutOfShortRuns(t)
	p := mustNew(t)
	right := casesReadRight(t, p)
	for _, v := range slices.Concat(variants, rewordings) {
		testVariant(t, p, v.name, v.floor, right, func(c goldCase) (goldCase, bool) {
			also := c
			also.note = v.rewrite(c.note)
			return also, also.note != c.note
		})
	}
	for _, other := range otherNames {
		testVariant(t, p, "hives called as "+other.kind, other.floor, right, func(c goldCase) (goldCase, bool) {
			return renamed(c, other.names)
		})
	}
}

// casesReadRight are the notes that rules may be written from, as far as they are read
// without a fault.
func casesReadRight(t *testing.T, p *Parser) []goldCase {
	patterns := []string{"../testdata/notes/*.gold", "../testdata/notes/seen/*.gold"}
	if *onlyGold != "" {
		patterns = []string{*onlyGold}
	}
	var files []string
	for _, pattern := range patterns {
		found, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, found...)
	}
	var out []goldCase
	for _, file := range files {
		for _, c := range readGold(t, file) {
			if faults(p, c) == "" {
				out = append(out, c)
			}
		}
	}
	return out
}

func testVariant(t *testing.T, p *Parser, name string, floor int, cases []goldCase, rewrite func(goldCase) (goldCase, bool)) {
	read := make([]struct {
		goldCase
		other bool
		wrong string
	}, len(cases))
	onEachCore(len(cases), func(i int) {
		of := &read[i]
		if of.goldCase, of.other = rewrite(cases[i]); of.other {
			of.wrong = faults(p, of.goldCase)
		}
	})
	same, all := 0, 0
	for i := range read {
		switch of := &read[i]; {
		case !of.other:
			continue
		case of.wrong == "":
			same++
		case *differing == name:
			t.Logf("== %s\n%s\n%s", of.id, of.note, of.wrong)
		}
		all++
	}
	t.Logf("%-24s %5d of %5d notes read as before, %.3f", name, same, all, ratio(same, all))
	if *onlyGold == "" && same < floor {
		t.Errorf("%s: %d notes are read as before, below the floor of %d", name, same, floor)
	}
}

// onEachCore does something for each number below n, as many at once as there are cores.
func onEachCore(n int, do func(int)) {
	var next atomic.Int64
	var cores sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		cores.Go(func() {
			for i := next.Add(1); i <= int64(n); i = next.Add(1) {
				do(int(i - 1))
			}
		})
	}
	cores.Wait()
}

// faults are the leaves of a case that are missed, wrong or invented, a line each.
func faults(p *Parser, c goldCase) string {
	var b strings.Builder
	score(p, c, map[string]*tally{}, func(format string, args ...any) {
		fmt.Fprintf(&b, format+"\n", args...)
	})
	return b.String()
}
