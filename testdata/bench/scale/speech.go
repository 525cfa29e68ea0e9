package main

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"time"
)

// speakers are the ways of speaking: typed in sentences, typed in shorthand,
// dictated without a stop.
var speakers = []func(r *rand.Rand, hive int, at time.Time) string{typed, shorthand, spoken}

// visit is what there is to say.
type visit struct {
	bars   int // of comb; the nest lies in the middle
	eggs   int // bar
	queen  bool
	degree int
	seams  int
}

func visitOf(r *rand.Rand, at time.Time) visit {
	v := visit{bars: 9 + r.IntN(7), degree: 12 + r.IntN(14), seams: 4 + r.IntN(10), queen: r.IntN(3) == 0}
	v.eggs = 4 + r.IntN(v.bars-6)
	if m := at.Month(); m < time.March || m > time.October {
		v.degree -= 8
	}
	return v
}

func pick(r *rand.Rand, list ...string) string { return list[r.IntN(len(list))] }

// some returns the text one time in n.
func some(r *rand.Rand, n int, text string) string {
	if r.IntN(n) > 0 {
		return ""
	}
	return text
}

func typed(r *rand.Rand, hive int, at time.Time) string {
	v := visitOf(r, at)
	var b strings.Builder
	fmt.Fprintf(&b, "Hive %d. %d degrees, %s.\n", hive, v.degree, pick(r, "sunny", "cloudy", "overcast", "sunny, no wind"))
	for n := range v.bars {
		switch bar := n + 1; {
		case bar <= 2:
			fmt.Fprintf(&b, "Bar %d: %s.\n", bar, pick(r, "capped honey", "pollen, a little honey", "honey"))
		case bar == v.eggs:
			fmt.Fprintf(&b, "Bar %d: eggs and larvae.\n", bar)
		case bar < v.eggs+3:
			fmt.Fprintf(&b, "Bar %d: %s.\n", bar, pick(r, "solid capped brood, both sides", "capped brood, three quarters, pollen round the edge", "patchy capped brood", "drone brood along the bottom"))
		default:
			fmt.Fprintf(&b, "Bar %d: %s.\n", bar, pick(r, "nectar", "capped honey, half", "old dark comb, empty", "two thirds drawn, nectar"))
		}
	}
	if v.queen {
		fmt.Fprintf(&b, "Queen seen on bar %d, %s dot.\n", v.eggs, pick(r, "white", "yellow", "red", "green", "blue"))
	} else {
		b.WriteString(pick(r, "Queen not seen.\n", "Didn't see the queen.\n", ""))
	}
	b.WriteString(pick(r, "No queen cells.\n", "No queen cells.\n", "", fmt.Sprintf("Two capped supersedure cells on bar %d.\n", v.eggs)))
	b.WriteString(some(r, 40, "Chalkbrood on bar 4, three mummies.\n") + some(r, 30, "No chalkbrood.\n") + some(r, 60, "Deformed wings on two bees.\n"))
	b.WriteString(some(r, 12, "Drop board: 14 mites in 3 days.\n") + some(r, 15, "Fed 2 litres of syrup.\n") + some(r, 20, "Added one bar after bar 6.\n"))
	fmt.Fprintf(&b, "%s, %d seams of bees. Stores %s.\n", pick(r, "Gentle", "Calm", "Touchy, one sting", "They were nasty, three stings"), v.seams, pick(r, "fair", "heavy", "light"))
	return b.String()
}

func shorthand(r *rand.Rand, hive int, at time.Time) string {
	v := visitOf(r, at)
	var b strings.Builder
	fmt.Fprintf(&b, "H%d. %dC %s. b1 b2 honey. b3 pollen. b%d E+L. ", hive, v.degree, pick(r, "sunny", "cloudy"), v.eggs)
	for bar := v.eggs + 1; bar <= v.bars-2; bar++ {
		fmt.Fprintf(&b, "b%d %s. ", bar, pick(r, "CB both", "CB 2/3", "CB spotty", "CB solid"))
	}
	fmt.Fprintf(&b, "b%d nectar. b%d capped honey. ", v.bars-1, v.bars)
	if v.queen {
		fmt.Fprintf(&b, "Q seen b%d %s. ", v.eggs, pick(r, "wht", "red", "blu", "grn"))
	} else {
		b.WriteString(pick(r, "Q not seen. ", ""))
	}
	b.WriteString(pick(r, "No QCs. ", "QC none. ", "") + some(r, 40, "Chalkbrood b5. ") + some(r, 25, "Wash, half a cup, 5 mites. "))
	fmt.Fprintf(&b, "%d seams. %s. Stores %s.\n", v.seams, pick(r, "Sweet", "Bit edgy", "Docile"), pick(r, "fair", "heavy", "light"))
	return b.String()
}

var numbers = strings.Fields("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen")

func spoken(r *rand.Rand, hive int, at time.Time) string {
	v := visitOf(r, at)
	var b strings.Builder
	fmt.Fprintf(&b, "okay hive %d um %s\n", hive, pick(r, "sunny and warm", "bit cloudy", "hot in the suit"))
	b.WriteString("bar one honey bar two honey and pollen ")
	for bar := 3; bar <= v.bars; bar++ {
		what := pick(r, "capped brood on both sides", "capped brewed top to bottom", "brood and a bit of pollen")
		switch {
		case bar == v.eggs:
			what = "eggs and lava"
		case bar > v.eggs+3:
			what = pick(r, "neck tar", "capped honey half", "just started", "drone brood on one side")
		}
		fmt.Fprintf(&b, "bar %s %s ", numbers[bar], what)
	}
	b.WriteString("\n")
	if v.queen {
		fmt.Fprintf(&b, "and there she is queen on bar %s %s dot\n", numbers[v.eggs], pick(r, "white", "blue", "green"))
	} else {
		b.WriteString(pick(r, "didn't find the queen\n", "no sign of the queen but there are eggs so she's here\n", ""))
	}
	b.WriteString(some(r, 40, "bit of chalkbrood on bar four\n") + pick(r, "no queen cells anywhere\n", "") + some(r, 30, "swarmed last week i think the neighbour saw it\n"))
	fmt.Fprintf(&b, "%s and they're on %s bars stores %s\n", pick(r, "as sweet as anything", "they were hot two stings", "quiet"), numbers[min(v.seams, 16)], pick(r, "fair", "heavy", "light"))
	return b.String()
}
