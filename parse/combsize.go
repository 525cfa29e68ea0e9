package parse

// How wide, long or deep a comb is.

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
	if name, far := s.alsoLong(i); far != nil {
		w.spans = append(w.spans, r.spanOf(far)...)
		put(name, far.n.lo*millimetres[it.size.unit])
	}
	s.touch()
}

// alsoLong is the other direction of "14 inches wide and 9 deep", where item i is the first,
// and its number; nil where there is none.
func (s *scan) alsoLong(i int) (string, *item) {
	for k := i + 2; k <= i+4; k++ {
		it, word := s.at(k), s.at(k+1)
		if it == nil || word == nil || it.pause > comma || word.pause > none {
			return "", nil
		}
		if !it.is(kNum) || it.used || it.n.article {
			continue
		}
		name, known := directions[word.text]
		if !known {
			return "", nil
		}
		it.used, word.used = true, true
		return name, it
	}
	return "", nil
}

// directions are the words behind a length that tell which it is, with its leaf.
var directions = map[string]string{
	"wide": "width_mm", "across": "width_mm", "width": "width_mm", "in width": "width_mm", "wide across": "width_mm",
	"deep": "depth_mm", "depth": "depth_mm", "tall": "depth_mm", "down": "depth_mm", "high": "depth_mm", "in depth": "depth_mm", "built down": "depth_mm", "drawn down": "depth_mm",
	"long": "length_mm", "length": "length_mm", "in length": "length_mm",
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
		if name, known := directions[it.text]; known {
			it.used = true
			return name
		}
		if it.any(kMeasure, kContent) && k > i {
			break
		}
	}
	return "length_mm"
}
