package parse

import "strings"

// How wide, long or deep a comb is.

// sizedBehind reports whether a comb of some size is what was built.
func (s *scan) sizedBehind(i int) bool {
	k := i + 1
	if art := s.at(k); art != nil && art.is(kArt) && art.pause == none {
		k++
	}
	it := s.at(k)
	return it != nil && it.pause == none && strings.HasPrefix(s.r.value(it, kComb), "size=")
}

// length reads the size of a comb: "six by four inches" is width by depth; a
// single measure is its named direction.
func (s *scan) length(i int) {
	it, r := s.at(i), s.r
	mm, ok := it.size.mm()
	if !ok || it.used {
		return
	}
	bars := s.combBars(i)
	if len(bars) == 0 || s.ofFixture(i) {
		return
	}
	w := r.why("comb-length", "", it)
	if it.size.amount.approx {
		w.doubts = append(w.doubts, "an estimate")
	}
	put := func(name string, v float64) { r.comb(bars, name, formatNumber(v), w) }
	if by := s.at(i - 1); by != nil && byWord(by) {
		if first := s.at(i - 2); first != nil && first.any(kNum, kMeasure) {
			wide, ok := first.size.mm()
			if first.is(kNum) {
				wide, ok = first.n.lo*millimetres[it.size.unit], true
			}
			if ok {
				first.used, by.used = true, true
				w.spans = append(w.spans, r.spanOf(first)...)
				put("width_mm", wide)
				put("depth_mm", mm)
				s.num = nil
				s.touch()
				return
			}
		}
	}
	if next := s.at(i + 1); next != nil && byWord(next) {
		if far := s.at(i + 2); far != nil && far.is(kNum) && !far.n.article { // "five inches by four"
			far.used, next.used = true, true
			w.spans = append(w.spans, r.spanOf(far)...)
			put("width_mm", mm)
			put("depth_mm", far.n.lo*millimetres[it.size.unit])
			s.touch()
			return
		}
		return // the width of "12 cm by 7 cm", read with the depth
	}
	put(s.direction(i), mm)
	s.touch()
}

// ofFixture reports whether a length is that of an entrance, floor or the like
// named before it: "closed the entrance to a gap of 8 mm", "and I reduced it to 40 mm".
func (s *scan) ofFixture(i int) bool {
	for k := i - 1; k >= 0; k-- {
		switch it := s.at(k); {
		case it.is(kFixture):
			return true
		case it.any3(kBars, kComb, kBar):
			return false
		}
	}
	return s.r.lastFixture != "" && s.c.has(kDo)
}

func byWord(it *item) bool {
	return it.text == "by" || it.text == "x" || it.text == "×"
}

// direction is the leaf of the direction named with a single measure.
func (s *scan) direction(i int) string {
	for _, k := range []int{i + 1, i + 2, i - 1, i - 2} {
		it := s.at(k)
		if it == nil || k > i && it.pause > none {
			continue
		}
		switch it.text {
		case "wide", "across", "width", "in width", "wide across":
			it.used = true
			return "width_mm"
		case "deep", "depth", "tall", "down", "high", "in depth", "built down", "drawn down":
			it.used = true
			return "depth_mm"
		case "long", "length", "in length":
			it.used = true
			return "length_mm"
		}
		if it.any(kMeasure, kContent) && k > i {
			break
		}
	}
	return "length_mm"
}
