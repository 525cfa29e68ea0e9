package parse

import (
	"slices"
	"strings"
)

// splitLeaves reads "marked=yes worn=yes".
func splitLeaves(s string) [][2]string {
	var out [][2]string
	for part := range strings.FieldsSeq(s) {
		name, value, _ := strings.Cut(part, "=")
		out = append(out, [2]string{name, value})
	}
	return out
}

// colony reads what a clause says of the colony as a whole.
func (r *reader) colony(c *clause) {
	r.incoming(c)
	r.fixtures(c)
	r.stores(c)
	r.plainLeaves(c)
	r.temper(c)
	r.strength(c)
}

// plainLeaves writes the leaves of rules that say all themselves.
func (r *reader) plainLeaves(c *clause) {
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kLeaf) || it.used {
			continue
		}
		rule := r.rule(it, kLeaf)
		if rule.ID == "bars-total" && i > 0 && c.items[i-1].any(kContent, kStage, kPattern, kAnd) && it.pause == none && hasKind(c.items[:i], kContent) {
			continue // of what stands before: "brood on five bars"
		}
		for _, set := range rule.Set {
			path, value, _ := strings.Cut(set, "=")
			if v, ok := r.filled(it, value); ok {
				r.writePlain(c, i, path, v, rule)
			}
		}
	}
}

// filled puts the number that the words carried in place of $n and the like.
func (r *reader) filled(it *item, value string) (string, bool) {
	switch value {
	case "$n":
		return formatNumber(it.n.lo), !it.n.article && !it.n.share
	case "$kg":
		kg, ok := it.size.kg()
		return formatNumber(round2(kg)), ok
	case "$t":
		if it.n.lo > 45 {
			return formatNumber(celsius(it.n.lo)), true
		}
		return formatNumber(it.n.lo), true
	case "$c":
		return formatNumber(it.n.lo), true
	case "$f":
		return formatNumber(celsius(it.n.lo)), true
	}
	return value, true
}

// celsius converts from Fahrenheit by the definition of the scales, to a tenth.
func celsius(f float64) float64 { return float64(int((f-32)/1.8*10+1000.5)-1000) / 10 }

func round2(v float64) float64 { return float64(int(v*100+0.5)) / 100 }

func (r *reader) writePlain(c *clause, i int, path, value string, rule *rule) {
	it := &c.items[i]
	if path == "weather.temp_c" && i > 0 && r.below(c, i) {
		value = "-" + value
	}
	if i > 0 && c.items[i-1].is(kNo) && !c.items[i-1].used && (value == "yes" || value == "no") {
		value = map[string]string{"yes": "no", "no": "yes"}[value]
		c.items[i-1].used = true
	}
	if path == "drones" && r.dronesAreBrood(c, i) {
		return
	}
	if path == "temper.stings" && r.stingsBefore(value) {
		it.used = true
		return
	}
	r.leaf(path, value, rule.ID, "", c.doubt, it)
	if it.n.hi > it.n.lo {
		r.cur.flag(path, "a range was said", formatNumber(it.n.hi))
	} else if it.n.approx {
		r.cur.flag(path, "an estimate", "")
	}
}

func (r *reader) below(c *clause, i int) bool {
	text := c.items[i-1].text
	return text == "minus" || text == "below"
}

func (r *reader) dronesAreBrood(c *clause, i int) bool {
	return i+1 < len(c.items) && c.items[i+1].pause == none && c.items[i+1].any(kContent, kCell)
}

// stingsBefore keeps the larger of two counts: stings are counted as they
// come.
func (r *reader) stingsBefore(value string) bool {
	old, ok := r.cur.get("temper.stings")
	if !ok {
		return false
	}
	if old == value {
		return true
	}
	if len(old) > len(value) || len(old) == len(value) && old > value {
		return true
	}
	r.cur.drop("temper.stings")
	return false
}

// ambiguousTempers speak of the bees only where the bees are spoken of: "hot",
// "fine", "quiet" are said of days and roads as well.
var ambiguousTempers = map[string]bool{}

func init() {
	for w := range strings.FieldsSeq(`hot quiet calm fine okay ok busy fair lively bad average normal reasonable steady soft kind mild
		lambs kittens angels pets sweet wild mad ugly awful horrible sharp decent upset nervous tense cross happy unhappy friendly
		polite relaxed easy good wicked mental rotten savage brutal chill mean gentle annoyed restless boiling
		attacked attacking present bothered contented`) {
		ambiguousTempers[w] = true
	}
	ambiguousTempers["all right"] = true
	ambiguousTempers["so so"] = true
	ambiguousTempers["as usual"] = true
	ambiguousTempers["not bad"] = true
	ambiguousTempers["a little busy"] = true
}

// needBees are words of assent as well.
var needBees = map[string]bool{"alright": true, "all right": true, "fine": true, "okay": true, "ok": true}

// temper reads the temper score; the last word said wins.
func (r *reader) temper(c *clause) {
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kTemper) || it.used {
			continue
		}
		text := it.text
		if i > 0 && r.isWord(&c.items[i-1], "to") {
			continue // "not to chill them"
		}
		if text == "not happy" && i+1 < len(c.items) && r.isWord(&c.items[i+1], "about", "with") {
			continue
		}
		if text == "hot" && r.dayBefore(c, i) {
			continue
		}
		if text == "mean" && i > 0 && c.items[i-1].any(kNo, kPron, kUndone, kWill) {
			continue // "I don't mean the weather"
		}
		if needBees[text] && !hasKind(c.items, kBees) && !(r.subject == kBees && r.sameStatement(c, i)) {
			continue
		}
		if ambiguousTempers[text] && !r.ofBees(c, i) {
			continue
		}
		rule := r.rule(it, kTemper)
		score := rule.Value
		if i > 0 && c.items[i-1].is(kNo) && !c.items[i-1].used {
			score = r.deniedTemper(score)
			c.items[i-1].used = true
		}
		if text == "no problem" && i+1 < len(c.items) && c.items[i+1].pause == none && c.items[i+1].any(kSeen, kWord, kDo) {
			continue
		}
		w := r.why(rule.ID, "", it)
		if c.doubt != "" {
			w.doubts = append(w.doubts, "hedged: "+c.doubt)
		}
		if old, ok := r.cur.get("temper.score"); ok && old != score && r.milder(old, score, c, i) {
			it.used = true
			continue
		}
		r.cur.put("temper.score", score, w)
	}
}

// dayBefore: "before the day became too hot".
func (r *reader) dayBefore(c *clause, i int) bool {
	for k := 0; k < i; k++ {
		if r.isWord(&c.items[k], "day", "weather", "afternoon", "morning", "sun", "it", "i") {
			return true
		}
	}
	return false
}

// milder: "calm enough, no bother" names one temper in two words; within one
// sentence the plainer one stands.
func (r *reader) milder(old, score string, c *clause, i int) bool {
	return r.temperSentence == r.sentenceNo && (old == "1" && score == "2" || old == "4" && score == "3")
}

func (r *reader) deniedTemper(score string) string {
	switch score {
	case "4", "3":
		return "2"
	}
	return "4"
}

// ofBees reports whether an ambiguous word is said of the bees: they stand in
// the clause, or the clause holds nothing else.
func (r *reader) ofBees(c *clause, i int) bool {
	if next := i + 1; next < len(c.items) && c.items[next].pause == none && c.items[next].any(kWord, kContent, kComb, kBar, kQueen, kSky, kFixture, kHive, kCell, kDo) &&
		!c.items[next].any(kBees) && !r.hiveOrBees(c, next) {
		if !c.items[next].is(kWord) || !r.lightWord(&c.items[next]) {
			return false
		}
	}
	if c.items[i].is(kWind) && r.besideSky(c, i) {
		return false
	}
	if next := i + 1; next < len(c.items) && r.isWord(&c.items[next], "as") {
		return true // "gentle as puppies"
	}
	for k := range c.items {
		it := &c.items[k]
		if it.is(kName) && k < i && r.onlyAdverbs(c, k, i) {
			return true
		}
		if it.any(kBees) && (k < i || k == i+1 || k == i+2) {
			return true
		}
		if it.any(kName, kShe) && k < i && k+3 >= i-3 && r.beBetween(c, k, i) {
			return true
		}
	}
	if r.subject == kBees && r.sameStatement(c, i) {
		return true
	}
	alone := true
	for k := range c.items {
		it := &c.items[k]
		if it.is(kPron) && k < i && !r.isWord(it, "they", "it", "all of them", "some of them") {
			return false // "somebody's been busy"
		}
		if it.any(kWord, kContent, kComb, kQueen, kSky, kWind, kStores, kFixture, kCell, kMite, kPlan, kDo, kSeen) && !it.any(kTemper) && !r.lightWord(it) && k != i {
			alone = false
		}
		if it.is(kLeaf) && k != i && !strings.HasPrefix(r.rule(it, kLeaf).ID, "st") && !strings.HasPrefix(r.rule(it, kLeaf).ID, "no-") {
			alone = false
		}
	}
	return alone && !r.weatherNear(c, i)
}

// sameStatement: the clause goes on about the bees of the one before: it
// names nothing else.
func (r *reader) sameStatement(c *clause, i int) bool {
	if !c.items[0].any(kAnd, kThen, kBut) && r.sentenceNo != r.beesSentence {
		return false
	}
	for k := range c.items {
		if c.items[k].any(kContent, kQueen, kShe, kComb, kCell, kFixture, kSky, kStores, kDo) && !c.items[k].is(kTemper) {
			return false
		}
	}
	return r.sentenceNo == r.beesSentence
}

func (r *reader) hiveOrBees(c *clause, k int) bool {
	return c.items[k].is(kHive)
}

func (r *reader) onlyAdverbs(c *clause, k, i int) bool {
	for j := k + 1; j < i; j++ {
		if !c.items[j].any(kAdv, kBe) {
			return false
		}
	}
	return true
}

func (r *reader) beBetween(c *clause, k, i int) bool {
	for j := k + 1; j < i; j++ {
		if c.items[j].is(kBe) {
			return true
		}
	}
	return false
}

// lightWord is a word that leaves "calm" about the bees: "calm today", "calm
// the whole time", "calm with me".
func (r *reader) lightWord(it *item) bool {
	switch it.text {
	case "today", "whole", "time", "me", "day", "considering", "me.", "them", "lot", "ever", "usual", "about", "to", "how", "what", "minute", "morning", "afternoon", "visit", "throughout", "whole time", "from", "start", "till", "handle", "girls", "lovely", "enough", "mood", "bit", "little", "touch", "that", "until", "lid", "roof", "off", "came", "it", "temperament", "nature", "whole visit", "always", "turned", "plain", "got", "started", "sort", "kind", "mostly", "today's", "again", "real", "right", "downright", "a":
		return true
	}
	return false
}

// weatherNear: "calm" beside sky or degrees is wind.
func (r *reader) weatherNear(c *clause, i int) bool {
	for k := range c.items {
		it := &c.items[k]
		if it.any(kSky, kWind) && k != i || it.is(kLeaf) && strings.HasPrefix(r.rule(it, kLeaf).ID, "temperature") {
			return true
		}
	}
	return false
}

// ambiguousStrengths need the bees or the colony beside them.
var ambiguousStrengths = map[string]bool{"strong": true, "small": true, "tiny": true, "wee": true, "poor": true, "thin": true, "big": true,
	"huge": true, "massive": true, "flying": true, "packed": true, "average": true, "medium": true, "moderate": true, "fair": true, "middling": true,
	"sparse": true, "decent": true, "reasonable": true, "monster": true, "enormous": true, "crowded": true, "heaving": true, "weak": true, "so so": true,
	"bouncing": true, "roaring": true, "struggling": true, "bustling": true, "powerful": true, "mighty": true, "teeming": true, "bursting": true, "full to bursting": true, "overflowing": true, "rammed": true, "bulging": true, "feeble": true, "puny": true}

// strength reads the size of the colony in a word.
func (r *reader) strength(c *clause) {
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kStrength) || it.used {
			continue
		}
		text := it.text
		rule := r.rule(it, kStrength)
		if ambiguousStrengths[text] && !r.ofColony(c, i) {
			continue
		}
		if rule.Value == "moderate" && it.any(kTemper, kStored, kFull) && !r.strengthNamed(c, it) && (it.is(kTemper) || hasKind(c.items, kStores) || !hasKind(c.items, kBees)) {
			continue
		}
		if i > 0 && c.items[i-1].is(kNo) {
			continue
		}
		r.leaf("strength.word", rule.Value, rule.ID, "", c.doubt, it)
	}
}

func (r *reader) strengthNamed(c *clause, it *item) bool {
	for k := range c.items {
		text := c.items[k].text
		if strings.Contains(text, "strength") || strings.Contains(text, "numbers") || strings.Contains(text, "population") || strings.Contains(text, "sized") {
			return true
		}
	}
	return false
}

func (r *reader) ofColony(c *clause, i int) bool {
	text := c.items[i].text
	if next := i + 1; next < len(c.items) && c.items[next].pause == none && c.items[next].any(kWord, kContent, kComb, kBar, kQueen, kCell, kPattern, kSign, kFixture, kSky, kWind, kSubstance, kStores, kDot, kDo) &&
		!r.lightWord(&c.items[next]) && !c.items[next].any(kBees, kHive) {
		return false
	}
	sized := text == "small" || text == "tiny" || text == "wee" || text == "big" || text == "huge"
	for k := range c.items {
		if c.items[k].any(kBees, kName, kHive) && k != i && !(sized && r.isWord(&c.items[k], "they", "them")) {
			return true
		}
		if c.items[k].any(kShe) && k < i && text != "small" && text != "big" && text != "large" {
			return true
		}
	}
	for k := range c.items {
		it := &c.items[k]
		if k != i && it.any(kWord, kContent, kComb, kQueen, kFixture, kCell, kMite, kDo, kBars, kBar) && !r.lightWord(it) {
			return false
		}
	}
	return text != "small" && text != "thin" && text != "poor" && text != "big" && text != "wee" && text != "average" && text != "fair" && text != "medium" && text != "decent" && text != "so so"
}

// stores reads "stores heavy", "they are light on stores".
func (r *reader) stores(c *clause) {
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kStores) || it.used || r.barHere(c, i) {
			continue
		}
		for _, k := range []int{i + 1, i + 2, i + 3, i + 4, i - 1, i - 2} {
			if k < 0 || k >= len(c.items) || !c.items[k].is(kStored) || c.items[k].used {
				continue
			}
			if !r.linked(c, i, k) {
				continue
			}
			word := &c.items[k]
			value := r.rule(word, kStored).Value
			if k > 0 && c.items[k-1].is(kNo) && k-1 != i && value == "heavy" {
				value = "light"
			}
			r.leaf("stores.word", value, r.rule(word, kStored).ID, "", c.doubt, it, word)
			break
		}
	}
}

// linked reports whether only verbs, adverbs and articles join stores to the
// word that weighs them.
func (r *reader) linked(c *clause, i, k int) bool {
	lo, hi := min(i, k), max(i, k)
	for j := lo + 1; j <= hi; j++ {
		it := &c.items[j]
		if it.pause > comma && !(c.items[lo].colon && j == lo+1) {
			return false
		}
		if j < hi && !it.any(kBe, kAdv, kArt, kHave, kOf, kNo, kNow, kAmount, kFull, kOn, kMaybe, kBut, kThere) {
			return false
		}
	}
	return k > i || c.items[i].pause == none
}

// barHere: stores "on bar nine" are that bar's honey.
func (r *reader) barHere(c *clause, i int) bool {
	for k := i + 1; k < len(c.items) && k <= i+3; k++ {
		if c.items[k].is(kBars) && c.items[k-1].is(kOn) {
			return true
		}
	}
	k := i - 1
	for k >= 0 && c.items[k].any(kHave, kAdv, kBe, kAmount, kStored, kPattern, kFull, kStage) && c.items[k+1].pause == none {
		k--
	}
	return k >= 0 && c.items[k].is(kBars) && c.items[k+1].pause <= comma
}

// fixtures reads entrance, floor, feeder and follower as they were found.
func (r *reader) fixtures(c *clause) {
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kFixture) || it.used {
			continue
		}
		what := r.value(it, kFixture)
		if what == "follower" {
			r.follower(c, i)
			continue
		}
		k := r.stateOf(c, i, what)
		if k < 0 {
			continue
		}
		state := &c.items[k]
		value := r.stateValue(state, what)
		r.leaf(what, value, "fixture", "", c.doubt, it, state)
	}
}

var fixtureStates = map[string][]string{
	"entrance": {"reduced", "open", "closed"}, "floor": {"open", "closed"}, "feeder": {"part", "full", "empty"},
}

// stateValue is the state among the word's senses that the fixture can have.
func (r *reader) stateValue(it *item, what string) string {
	for _, n := range it.rules {
		if rule := &r.rules[n]; rule.Kind == kState {
			for _, s := range fixtureStates[what] {
				if rule.Value == s {
					return s
				}
			}
		}
	}
	if it.is(kNum) && what == "feeder" {
		return "part"
	}
	return ""
}

func (r *reader) stateOf(c *clause, i int, what string) int {
	for k := i + 1; k < len(c.items) && k <= i+5; k++ {
		it := &c.items[k]
		if it.is(kState) && r.stateValue(it, what) != "" && !it.used {
			if it.is(kNo) {
				return -1
			}
			return k
		}
		if it.is(kNum) && it.n.share && what == "feeder" {
			return k
		}
		if !it.any(kBe, kAdv, kArt, kAnd, kFixture, kNow, kHave, kPron, kBees, kThere, kOn, kYes) && !r.isWord(it, "run", "gone", "ran", "licked", "now", "down", "to", "as") {
			break
		}
	}
	if i > 0 && c.items[i-1].is(kState) && !c.items[i-1].any(kDo) && c.items[i].pause == none && r.stateValue(&c.items[i-1], what) != "" {
		return i - 1
	}
	// "left the floor open" and "screened floor (open)" stand behind; "open
	// entrance" before.
	return -1
}

// follower reads the bar that the follower board stands behind, as found.
func (r *reader) follower(c *clause, i int) {
	for k := i + 1; k < len(c.items) && k <= i+6; k++ {
		it := &c.items[k]
		if it.is(kBars) && len(it.bars) == 1 {
			it.taken = true
			r.leaf("follower.bar", formatNumber(float64(it.bars[0])), "follower", "", c.doubt, &c.items[i], it)
			return
		}
		if it.is(kNum) && barNumber(it) && c.items[k-1].any(kAfter, kOn) {
			r.leaf("follower.bar", formatNumber(it.n.lo), "follower", "", c.doubt, &c.items[i], it)
			return
		}
		if !it.any(kBe, kAdv, kAfter, kArt, kOn, kNow, kBees, kWord, kThere, kBar, kFill, kTo) {
			return
		}
	}
}

// incoming reads what is carried in, with its plant and colour.
func (r *reader) incoming(c *clause) {
	bring := -1
	for i := range c.items {
		if rule := r.rule(&c.items[i], kForage); rule != nil && rule.Form == "bring" && !c.items[i].used {
			bring = i
			break
		}
		if c.items[i].is(kBring) && !c.items[i].used {
			bring = i
			break
		}
	}
	if bring < 0 {
		return
	}
	var cargo []int
	for i := range c.items {
		it := &c.items[i]
		if it.used {
			continue
		}
		switch v := r.value(it, kContent); {
		case it.is(kForage), v == "pollen", v == "nectar":
			cargo = append(cargo, i)
		case it.is(kBars) && !it.taken && len(cargo) == 0:
			return
		}
	}
	if len(cargo) == 0 {
		return
	}
	for n, i := range cargo {
		from, to := 0, len(c.items)
		if n > 0 {
			from = cargo[n-1] + 1
		}
		if n+1 < len(cargo) {
			to = cargo[n+1]
			for to > i+1 && c.items[to-1].any(kColour, kArt, kAdv, kAnd) {
				to--
			}
		}
		r.load(c, i, from, to, bring, len(cargo) == 1)
	}
	c.items[bring].used = true
}

func (r *reader) load(c *clause, i, from, to, bring int, only bool) {
	it := &c.items[i]
	what := r.value(it, kForage)
	if what == "" {
		what = r.value(it, kContent)
	}
	path := "incoming." + what
	denied := i > 0 && c.items[i-1].is(kNo) || i > 1 && c.items[i-2].is(kNo) && c.items[i-1].any(kColour, kAdv, kPlant)
	for k := i + 1; k < min(bring, len(c.items)); k++ {
		denied = denied || c.items[k].is(kNo)
	}
	if denied {
		r.leaf(path, "no", "incoming", "no", c.doubt, it)
		return
	}
	r.leaf(path, "yes", "incoming", "", c.doubt, it, &c.items[bring])
	r.lastCargo = path
	lo, hi := i, i
	for lo > from && c.items[lo-1].any(kColour, kPlant, kAnd, kAdv, kArt, kNum, kAmount) && c.items[lo].pause == none {
		lo--
	}
	for hi+1 < to && (only || hi-i < 8) {
		hi++
	}
	if only {
		lo = 0
	}
	r.described(c, path, "colour", kColour, lo, hi)
	r.described(c, path, "plant", kPlant, lo, hi)
	r.unknownPlant(c, path, i)
	if _, ok := r.cur.get(path + ".plant"); !ok && r.flowering != "" && r.flowerSentence == r.sentenceNo {
		r.leaf(path+".plant", r.flowering, "plants", "", "", it)
	}
}

// noPlants are words that stand before pollen and nectar and name no plant.
var noPlants = map[string]bool{}

func init() {
	for w := range strings.FieldsSeq(`fresh new good more first early late much heavy steady light loads lots some real proper plenty bit bags thick their
		your our my his her its what which that this these those also still again first-rate natural raw brood bee bees wet dry sticky shiny summer spring
		autumn winter morning afternoon and or the a an of no any with for from off coming going usual only extra dusty bright dull pale dark strong little`) {
		noPlants[w] = true
	}
}

// unknownPlant takes the word right before the load, or behind "from the", for
// a plant that the list lacks; flagged.
func (r *reader) unknownPlant(c *clause, path string, i int) {
	if _, ok := r.cur.get(path + ".plant"); ok {
		return
	}
	take := func(it *item) {
		if it.used || !it.is(kWord) || noPlants[it.text] || strings.HasSuffix(it.text, "ing") || strings.HasSuffix(it.text, "ed") || len(it.text) < 4 {
			return
		}
		r.leaf(path+".plant", it.text, "plants", "", "", it)
		r.cur.flag(path+".plant", "a plant that the list lacks", "")
	}
	if i > 0 && c.items[i].pause == none && (i == 1 || c.items[i-1].pause > none || c.items[i-2].any(kOf, kThere, kBe, kHave, kAnd, kBring, kArt, kColour)) {
		take(&c.items[i-1])
		return
	}
	for k := i + 1; k+1 < len(c.items) && k <= i+5; k++ {
		if !c.items[k].is(kFrom) && !r.isWord(&c.items[k], "off") {
			continue
		}
		if k+1 < len(c.items) && c.items[k+1].is(kArt) && k+2 < len(c.items) && (k+3 >= len(c.items) || c.items[k+3].pause > none || c.items[k+3].any(kAnd, kThen, kBut)) {
			take(&c.items[k+2])
		}
		return
	}
}

func (r *reader) described(c *clause, path, name string, k kind, lo, hi int) {
	var values []string
	var items []*item
	for j := lo; j <= hi; j++ {
		it := &c.items[j]
		if it.is(k) && !it.used {
			v := r.value(it, k)
			if slices.Contains(values, v) {
				it.used = true
				continue
			}
			if it.is(kPlant) && it.is(kColour) && k == kColour {
				continue
			}
			values = append(values, v)
			items = append(items, it)
		}
	}
	if len(values) > 0 {
		if old, ok := r.cur.get(path + "." + name); ok {
			values = append([]string{old}, values...)
			r.cur.drop(path + "." + name)
		}
		r.leaf(path+"."+name, strings.Join(values, ", "), "incoming", "", "", items...)
	}
}

// weather reads sky and wind; degrees are plain leaves.
func (r *reader) weather(c *clause) {
	for i := range c.items {
		it := &c.items[i]
		if it.used {
			continue
		}
		if it.is(kSky) && r.skyHere(c, i) {
			r.leaf("weather.sky", r.rule(it, kSky).Value, r.rule(it, kSky).ID, "", c.doubt, it)
		}
		if it.is(kWind) && !it.used {
			rule := r.rule(it, kWind)
			if rule.Form == "sky" && !r.weatherNear(c, i) {
				continue
			}
			if rule.Form == "sky" && r.beesBefore(c, i) && !r.besideSky(c, i) {
				continue
			}
			r.leaf("weather.wind", rule.Value, rule.ID, "", c.doubt, it)
		}
	}
}

// besideSky: "sunny and calm".
func (r *reader) besideSky(c *clause, i int) bool {
	for k := i - 1; k >= 0 && k >= i-2; k-- {
		if c.items[k].any(kSky) || c.items[k].is(kLeaf) && strings.HasPrefix(r.rule(&c.items[k], kLeaf).ID, "temperature") {
			return true
		}
	}
	return false
}

func (r *reader) beesBefore(c *clause, i int) bool {
	for k := 0; k < i; k++ {
		if c.items[k].is(kBees) {
			return true
		}
	}
	return false
}

// skyWords that mean other things as well need weather or a bare clause.
var ambiguousSkies = map[string]bool{"clear": true, "bright": true, "dull": true, "wet": true, "sun": true, "fair": true, "clouds": true, "shower": true, "spitting": true, "cloud": true, "teeming": true, "pouring": true, "lashing": true, "gloomy": true}

func (r *reader) skyHere(c *clause, i int) bool {
	it := &c.items[i]
	text := it.text
	if _, said := r.cur.get("weather.sky"); said && i > 0 && r.isWord(&c.items[i-1], "was", "were") {
		return false // "cloudy now, it was sunny when I set off"
	}
	if !ambiguousSkies[text] {
		if text == "rain" && i > 0 && (c.items[i-1].is(kNo) || c.items[i-1].any(kFore, kAfter, kIf)) {
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
