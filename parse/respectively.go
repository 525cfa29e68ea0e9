package parse

import "slices"

// respectively gives each of several bars its own of as many values: "bars 4 and 5 had 70
// and 80 per cent sealed brood respectively" is read as two phrases, one of each bar.
func (r *reader) respectively(items []item) []item {
	for end := len(items) - 1; end > 0; end-- {
		if !items[end].lists.has(inOrder) {
			continue
		}
		bars := end - 1
		for bars > 0 && items[bars].pause < stop && len(items[bars].bars) < 2 {
			bars--
		}
		if values := valuesBehind(items[:end], bars); len(values) > 0 {
			items = r.dealt(items, bars, values, end)
		}
	}
	return items
}

// valuesBehind are the items behind several bars, as many in a row as there are bars,
// that tell of one bar each: numbers or contents. It is nil where there are not so many.
func valuesBehind(items []item, bars int) []int {
	var values []int
	for _, of := range []kind{kNum, kContent} {
		for k := bars + 1; k < len(items) && len(values) < len(items[bars].bars); k++ {
			switch it := &items[k]; {
			case it.is(of) && !(of == kNum && it.n.article):
				values = append(values, k)
			case !it.is(kAnd):
				values = nil
			}
		}
		if n := len(values); n > 1 && n == len(items[bars].bars) {
			return values
		}
		values = nil
	}
	return nil
}

// dealt repeats what stands around the values for each bar with its own value; what is
// found there too, where it was named before the bars: "sealed brood on bars 4 and 5 at
// 70 and 80 per cent respectively".
func (r *reader) dealt(items []item, bars int, values []int, end int) []item {
	first, last := values[0], values[len(values)-1]
	from := bars
	for !hasAnyOf(items[bars:end], dealtOut) && from > 0 && items[from].pause < comma {
		from--
	}
	out := slices.Clone(items[:from])
	for i, v := range values {
		bar, value := items[bars], items[v]
		bar.bars = bar.bars[i : i+1]
		if items[last].n.share && !value.n.share { // "70, 80 and 90 per cent"
			value.n.lo, value.n.share = value.n.lo/100, true
		}
		value.pause = none
		phrase := slices.Concat(items[from:bars], []item{bar}, items[bars+1:first], []item{value}, items[last+1:end])
		for k := range phrase { // words that say nothing are one remark
			phrase[k].used = phrase[k].used || i > 0 && phrase[k].is(kWord)
		}
		if i > 0 {
			phrase[0].pause = comma
		}
		out = append(out, phrase...)
	}
	return append(out, items[end+1:]...)
}

// dealtOut are the kinds of what values are told of.
var dealtOut = setOf(kContent, kComb)
