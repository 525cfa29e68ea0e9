package parse

import (
	"slices"
)

// oneOfTwo reads "the latter" and "the former" as the bars that they stand for: the last or the
// first of two that were named before. "The last of them" may be one of more.
func (r *reader) oneOfTwo(items []item) []item {
	for i := 1; i < len(items); i++ {
		if !items[i].lists.has(ofTwo) || !items[i-1].is(kArt) || items[i].pause > none || i+1 < len(items) && items[i+1].is(kNum) && items[i+1].pause == none && items[i+1].text != "one" {
			continue
		}
		if items[i].text == "last" {
			items = r.nthOfThem(items, i-1, i, -1)
			continue
		}
		two := twoNamed(items[:i-1])
		if two == nil {
			continue
		}
		bar := two[0]
		if items[i].text == "latter" {
			bar = two[1]
		}
		items[i-1] = *r.merged(items, i-1, i+1, []int{bar})
		items = slices.Delete(items, i, i+1)
	}
	return items
}

// nthOfMany reads "the second of these" as the bar in that place among those that were named
// before.
func (r *reader) nthOfMany(items []item) []item {
	for i := 1; i+2 < len(items); i++ {
		it := &items[i]
		if it.any(kNum, kDate) && it.n.ordinal && it.n.lo >= 1 && it.n.lo <= 9 && items[i+1].is(kOf) && items[i+1].pause == none {
			from := i
			if it.pause == none && items[i-1].text == "the" {
				from--
			}
			items = r.nthOfThem(items, from, i, int(it.n.lo)-1)
		}
	}
	return items
}

// nthOfThem makes a reference of the words from item from to item i, and of "of them" behind
// these, to the bar at a place among those named last; -1 is the last place. Where it stands
// behind no word for a place, what it is must follow: "the last of them is half drawn".
func (r *reader) nthOfThem(items []item, from, i, place int) []item {
	end := i + 1
	switch {
	case end+1 < len(items) && items[end].is(kOf) && items[end].pause == none && items[end+1].pause == none && items[end+1].isWord4("them", "these", "those", "the"):
		end += 2
		if end < len(items) && items[end].pause == none && items[end].any(kBar, kNum) {
			end++ // "the last of the three", "the first of these bars"
		} else if items[end-1].text == "the" {
			return items
		}
	case place >= 0:
		return items
	case end < len(items) && items[end].text == "one" && items[end].pause == none:
		end++
	case end < len(items) && items[end].pause == none && !items[end].any(kBe, kHave) || from == 0 || !items[from-1].is(kOn):
		return items
	}
	located := from > 0 && items[from].pause == none && items[from-1].any3(kOn, kOf, kFrom)
	told := end < len(items) && items[end].pause == none && items[end].any3(kBe, kHave, kFull) && (from == 0 || items[from].pause >= comma || items[from-1].any3(kAnd, kBut, kThen))
	if end < len(items) && items[end].pause == none && items[end].any(kNum, kBar) || !located && !told {
		return items
	}
	bars := severalNamed(items[:from])
	if place < 0 {
		place = len(bars) - 1
	}
	if len(bars) < 2 || place >= len(bars) {
		return items
	}
	items[from] = *r.merged(items, from, end, []int{bars[place]})
	return slices.Delete(items, from+1, end)
}

// severalNamed are the bars that were named together last, in the order said; nil where
// something else was named since that may be one of several.
func severalNamed(items []item) []int {
	for k := len(items) - 1; k >= 0; k-- {
		switch it := &items[k]; {
		case it.is(kBars):
			return it.bars
		case it.anyOf(notBarsOfTwo) || it.any3(kCell, kSign, kSubstance):
			return nil
		}
	}
	return nil
}

// twoNamed are the two bars that were named last, together or each by itself; nil where there
// are more or fewer.
func twoNamed(items []item) []int {
	var bars []int
	for k := len(items) - 1; k >= 0; k-- {
		it := &items[k]
		if it.anyOf(notBarsOfTwo) {
			return nil
		}
		if it.is(kBars) && it.text != "the former" && it.text != "the latter" {
			if bars = append(slices.Clone(it.bars), bars...); len(bars) >= 2 {
				break
			}
		}
	}
	if len(bars) != 2 {
		return nil
	}
	return bars
}

// notBarsOfTwo are the kinds of what may be one of two as well.
var notBarsOfTwo = setOf(kName, kHive, kHives)
