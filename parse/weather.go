package parse

import "strings"

// celsius converts from Fahrenheit by the definition of the scales, to a tenth.
func celsius(f float64) float64 { return float64(int((f-32)/1.8*10+1000.5)-1000) / 10 }

// below: "minus two", "-2", "two below" lie under the freezing point.
func (r *reader) below(c *clause, i int) bool {
	it := &c.items[i]
	if strings.HasPrefix(it.text, "minus") || i > 0 && c.items[i-1].text == "minus" {
		return true
	}
	before := strings.TrimRight(r.text[:it.start], "-−")
	if len(before) < int(it.start) && (before == "" || strings.ContainsRune(" \t\n,:;", rune(before[len(before)-1]))) {
		return true // "-2 C"
	}
	return i+1 < len(c.items) && c.items[i+1].pause == none && c.items[i+1].text == "below"
}

// weatherNear: "calm" beside sky or degrees is wind.
func (r *reader) weatherNear(c *clause, i int) bool {
	for k := range c.items {
		it := &c.items[k]
		if k > 0 && c.items[k-1].is(kStores) {
			continue // "stores fair" is no sky
		}
		if it.any(kSky, kWind) && k != i || it.is(kLeaf) && strings.HasPrefix(r.rule(it, kLeaf).ID, "temperature") {
			return true
		}
	}
	return false
}

// bareDegrees: "84 and clear" at the head of a sentence begins with degrees Fahrenheit,
// and "it was 24 and cloudy" has degrees Celsius.
func (r *reader) bareDegrees(c *clause) {
	at := 0
	if c.items[0].text == "it" && c.next(0).is(kBe) {
		at = 2
	}
	if at >= len(c.items) {
		return
	}
	it, k := &c.items[at], at
	for c.next(k).isWord2("out", "outside") || c.next(k).is(kAnd) {
		k++
	}
	sky := c.next(k)
	if !it.is(kNum) || it.n.article || !it.n.whole() || it.n.hi > 0 || at == 0 && it.pause < stop || sky.pause > comma || !sky.is(kSky) && !(at > 0 && sky.is(kWind)) {
		return
	}
	switch {
	case it.n.lo > 45 && it.n.lo < 120:
		r.leaf("weather.temp_c", formatNumber(celsius(it.n.lo)), "temperature", "", c.doubt, it)
	case at > 0 && it.n.lo <= 45:
		r.leaf("weather.temp_c", formatNumber(it.n.lo), "temperature", "", c.doubt, it)
	}
}

// degreesAnd: "Arvo look, 29 and sunny", "Hive 4, 18 and cloudy" have degrees behind a comma, before
// "and" and the sky.
func (r *reader) degreesAnd(c *clause) {
	for k := range c.items {
		it, sky := &c.items[k], c.next(k+1)
		if !it.is(kNum) || it.used || it.pause < comma || !it.n.bare || !it.n.whole() || it.n.hi > 0 || it.n.lo > 45 || c.next(k).text != "and" || c.next(k).pause > none || !sky.is(kSky) || sky.pause > none || r.inList(ambiguousSkies, sky.text) {
			continue
		}
		r.leaf("weather.temp_c", formatNumber(it.n.lo), "temperature", "", c.doubt, it)
		it.used = true
		return
	}
}

// degreesAmid: "Overcast, 16, no wind" has degrees between the sky and the wind.
func (r *reader) degreesAmid(c *clause) {
	for k := 1; k < len(c.items); k++ {
		it := &c.items[k]
		if !it.is(kNum) || !it.n.bare || it.n.hi > 0 || it.pause != comma || !c.items[k-1].any(kSky, kWind) || c.next(k).pause == none && k+1 < len(c.items) {
			continue
		}
		if behind := c.next(k); k+1 < len(c.items) && !behind.any(kSky, kWind) && !c.next(k+1).any(kSky, kWind) {
			continue
		}
		degrees := it.n.lo
		if degrees > 45 {
			degrees = celsius(degrees)
		}
		r.leaf("weather.temp_c", formatNumber(degrees), "temperature", "", c.doubt, it)
	}
}

// weather reads sky and wind; degrees that are called so are plain leaves.
func (r *reader) weather(c *clause) {
	r.bareDegrees(c)
	r.degreesAmid(c)
	r.degreesAnd(c)
	for i := range c.items {
		it := &c.items[i]
		if it.used || it.any(kSky, kWind) && ofOtherDay(c, i) {
			continue
		}
		if it.is(kSky) && r.skyHere(c, i) {
			r.leaf("weather.sky", r.rule(it, kSky).Value, r.rule(it, kSky).ID, "", c.doubt, it)
		}
		if it.is(kWind) && !it.used {
			rule := r.rule(it, kWind)
			if it.text == "still" && lasts(c, i) {
				continue
			}
			if rule.Form == "sky" && (!r.weatherNear(c, i) || c.has(kDot) && !r.besideSky(c, i)) {
				continue
			}
			if rule.Form == "sky" && r.beesBefore(c, i) && !r.besideSky(c, i) {
				continue
			}
			r.leaf("weather.wind", rule.Value, rule.ID, "", c.doubt, it)
		}
	}
}

// ofOtherDay reports whether a day gone by stands before item i as whose it is: "yesterday's gale
// brought a branch down", "after last night's rain".
func ofOtherDay(c *clause, i int) bool {
	for i > 1 && c.items[i-1].any3(kAdv, kSky, kWind) {
		i--
	}
	return i > 1 && c.items[i-1].text == "'s" && c.items[i-2].is(kDate) && !c.items[i-2].day.today && !c.items[i-2].day.ahead
}

// lasts reports whether "still" at item i only tells that something goes on: "still 20 degrees",
// "it was still sunny", "the asters are still out", "snow still lying".
func lasts(c *clause, i int) bool {
	next := c.next(i)
	if next.pause == none && next.is(kWord) && strings.HasSuffix(next.text, "ing") && c.before(i).is(kWord) {
		return true
	}
	return next.pause == none && next.any4(kLeaf, kSky, kNum, kMeasure) || next.pause == none && next.any(kState, kWord) && c.before(i).is(kBe)
}

// besideSky: "sunny and calm".
func (r *reader) besideSky(c *clause, i int) bool {
	for k := i - 1; k >= 0 && k >= i-2; k-- {
		if c.items[k].is(kSky) || c.items[k].is(kLeaf) && strings.HasPrefix(r.rule(&c.items[k], kLeaf).ID, "temperature") {
			return true
		}
	}
	return false
}

// onlyWeather reports whether a sentence tells of nothing but a name, the weather and the
// day: "Allotment, 24C, sunny."
func (r *reader) onlyWeather(items []item) bool {
	for k := range items {
		it := &items[k]
		degrees := it.is(kLeaf) && strings.HasPrefix(r.rule(it, kLeaf).ID, "temperature")
		if !degrees && !it.any(kName, kSky, kWind, kDate, kAnd, kAdv, kArt, kOn, kNow) {
			return false
		}
	}
	return true
}

func (r *reader) beesBefore(c *clause, i int) bool {
	for k := 0; k < i; k++ {
		if c.items[k].is(kBees) {
			return true
		}
	}
	return false
}

// foretold: "the forecast had promised rain".
func (r *reader) foretold(c *clause, i int) bool {
	k := i
	for k > 0 && k > i-6 && c.items[k].pause == none {
		k--
	}
	return r.wordIn(c.items[k:i], "forecast", "promised", "predicted", "threatened")
}

// ofDot reports whether a word for the sky tells what the paint of the queen is like: "yellow dot
// still bright", "the blue mark is quite clear".
func (r *reader) ofDot(c *clause, i int) bool {
	for k := 0; k < i; k++ {
		if c.items[k].is(kDot) && c.items[i].pause == none && r.onlyAdverbs(c, k, i) {
			return true
		}
	}
	return false
}

// skyHere reports whether a word for the sky tells of today's.
func (r *reader) skyHere(c *clause, i int) bool {
	it := &c.items[i]
	text := it.text
	if _, said := r.cur.get("weather.sky"); said && i > 0 && c.items[i-1].isWord2("was", "were") {
		return false // "cloudy now, it was sunny when I set off"
	}
	if next := i + 1; next < len(c.items) && r.isWord(&c.items[next], r.wordsOf[foretelling]...) || i > 0 && c.items[i-1].isWord2("forecast", "bright") {
		return false // "rain forecast for Sunday"
	}
	if r.foretold(c, i) {
		return false
	}
	if c.hasAny(kDot, kColour) && r.inList(ambiguousSkies, text) && (c.has(kQueen) || r.ofDot(c, i)) {
		return false // "her dot still bright", but "queen marked white, sunny"
	}
	if !r.inList(ambiguousSkies, text) {
		if text == "rain" && i > 0 && (c.items[i-1].is(kNo) || c.items[i-1].any5(kFore, kAfter, kIf, kUndone, kPlan) || strings.HasSuffix(c.items[i-1].text, "that")) {
			return false
		}
		return true
	}
	if r.weatherNear(c, i) {
		return true
	}
	for k := range c.items {
		if k != i && c.items[k].any(kContent, kComb, kQueen, kBees, kCell, kDot, kQueenIs, kColour, kBars, kFixture, kTemper) {
			return false
		}
	}
	return len(c.items) <= 4 && text != "fair"
}
