package parse

import "slices"

// oneOfTwo reads "the latter" and "the former" as the bars that they stand for: the last or the
// first of two that were named before.
func (r *reader) oneOfTwo(items []item) []item {
	for i := 1; i < len(items); i++ {
		if !items[i].lists.has(ofTwo) || !items[i-1].is(kArt) || items[i].pause > none || i+1 < len(items) && items[i+1].is(kNum) && items[i+1].pause == none {
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
