package tui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"barwise/colony"
)

// change is one difference between two inspections of a hive. Silence is no
// change: what only one of the two speaks of is compared no further than its
// bar's contents, and those only where both times some were named.
type change struct {
	bar  int // 0: the whole colony
	way  int // +1 grew or came, -1 shrank or went, 0 the same or moved
	text string
}

// compare lists what grew, what shrank and what moved from one inspection to
// the next, the whole colony first, then bar by bar.
func compare(prev, ins *colony.Inspection) []change {
	var out []change
	out = append(out, nestChange(prev, ins)...)
	if a, b := queenBar(prev), queenBar(ins); a > 0 && b > 0 && a != b {
		out = append(out, change{text: fmt.Sprintf("queen on bar %d, was on %d", b, a)})
	}
	if a, b := followerBar(prev), followerBar(ins); a > 0 && b > 0 && a != b {
		out = append(out, change{way: cmp.Compare(b, a), text: fmt.Sprintf("follower board behind bar %d, was behind %d", b, a)})
	}
	for _, b := range ins.Bars {
		if was := prev.Bar(b.Bar); was != nil {
			out = append(out, barChanges(was, &b)...)
		}
	}
	return append(out, moves(prev, ins)...)
}

func barChanges(was, is *colony.Bar) []change {
	var out []change
	note := func(way int, format string, args ...any) {
		out = append(out, change{is.Bar, way, fmt.Sprintf(format, args...)})
	}
	const scale = 100
	if a, b := combRows(was, scale), combRows(is, scale); was.Comb != nil && is.Comb != nil {
		if a != b {
			note(cmp.Compare(b, a), "comb %d %%, was %d %%", b, a)
		} else {
			note(0, "comb as before")
		}
	}
	if len(was.Contents) == 0 || len(is.Contents) == 0 {
		return out
	}
	for _, what := range colony.Keys("contents") {
		a, b := was.Content(what), is.Content(what)
		switch had, has := a != nil && a.Present, b != nil && b.Present; {
		case has && !had:
			note(1, "%s now", plainWord(what))
		case had && !has && b == nil:
			note(-1, "%s not named now", plainWord(what))
		case had && !has:
			note(-1, "no %s now", plainWord(what))
		case had && a.Cover != nil && b.Cover != nil && *a.Cover != *b.Cover:
			note(cmp.Compare(*b.Cover, *a.Cover), "%s %.0f %%, was %.0f %%", plainWord(what), *b.Cover*100, *a.Cover*100)
		}
	}
	if len(out) == 0 {
		note(0, "as before")
	}
	return out
}

// nestChange compares how many bars hold brood of any stage, and where.
func nestChange(prev, ins *colony.Inspection) []change {
	a, b := broodBars(prev), broodBars(ins)
	if len(a) == 0 || len(b) == 0 || slices.Equal(a, b) {
		return nil
	}
	return []change{{way: cmp.Compare(len(b), len(a)),
		text: fmt.Sprintf("brood on %s, was on %s", barList(b), barList(a))}}
}

// moves are combs that hold what another bar held before, where no other comb
// of either day could be meant.
func moves(prev, ins *colony.Inspection) []change {
	was, is := signatures(prev), signatures(ins)
	var out []change
	for sig, from := range was {
		to := is[sig]
		if len(from) == 1 && len(to) == 1 && from[0] != to[0] {
			out = append(out, change{bar: to[0], text: fmt.Sprintf("looks like bar %d of last time", from[0])})
		}
	}
	slices.SortFunc(out, func(a, b change) int { return a.bar - b.bar })
	return out
}

// signatures maps what a bar holds, where that is three things or more, to the
// bars that hold it.
func signatures(ins *colony.Inspection) map[string][]int {
	out := map[string][]int{}
	for i := range ins.Bars {
		b := &ins.Bars[i]
		var parts []string
		for _, c := range b.Contents {
			if c.Present {
				parts = append(parts, c.What+c.Side+c.Pattern+c.Place)
			}
		}
		if len(parts) >= 3 {
			slices.Sort(parts)
			sig := strings.Join(parts, " ")
			out[sig] = append(out[sig], b.Bar)
		}
	}
	return out
}

// signOf sums up a bar's changes in one sign.
func signOf(changes []change, bar int) string {
	grew, shrank, known := false, false, false
	for _, c := range changes {
		if c.bar == bar {
			known = true
			grew, shrank = grew || c.way > 0, shrank || c.way < 0
		}
	}
	switch {
	case grew && shrank:
		return "±"
	case grew:
		return "+"
	case shrank:
		return "-"
	case known:
		return "="
	}
	return ""
}

// changeLines writes the changes of one bar for a person, or for bar 0 those
// of the colony as a whole.
func changeLines(changes []change, bar int) []string {
	var out []string
	for _, c := range changes {
		if c.bar == bar {
			out = append(out, c.text)
		}
	}
	if bar > 0 && len(out) > 0 {
		out[0] = fmt.Sprintf("bar %d: %s", bar, out[0])
	}
	return out
}

func broodBars(ins *colony.Inspection) []int {
	var out []int
	for i := range ins.Bars {
		for _, what := range []string{"eggs", "open_brood", "capped_brood", "emerging_brood", "brood"} {
			if c := ins.Bars[i].Content(what); c != nil && c.Present {
				out = append(out, ins.Bars[i].Bar)
				break
			}
		}
	}
	return out
}

// barList writes 3, 4, 5, 8 as "bars 3-5, 8".
func barList(bars []int) string {
	var parts []string
	for i := 0; i < len(bars); {
		j := i
		for j+1 < len(bars) && bars[j+1] == bars[j]+1 {
			j++
		}
		if i == j {
			parts = append(parts, fmt.Sprint(bars[i]))
		} else {
			parts = append(parts, fmt.Sprintf("%d-%d", bars[i], bars[j]))
		}
		i = j + 1
	}
	noun := "bars "
	if len(bars) == 1 {
		noun = "bar "
	}
	return noun + strings.Join(parts, ", ")
}

func queenBar(ins *colony.Inspection) int {
	if ins.Queen == nil || ins.Queen.Bar == nil {
		return 0
	}
	return *ins.Queen.Bar
}

func followerBar(ins *colony.Inspection) int {
	if ins.Follower == nil || ins.Follower.Bar == nil {
		return 0
	}
	return *ins.Follower.Bar
}
