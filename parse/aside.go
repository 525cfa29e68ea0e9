package parse

// An aside between commas, "bars 12 and 13, which I had meant to take, are half full",
// tells of another day, a wish or somebody else; behind it the statement goes on.

// relatives begin an aside.
var relatives = []string{"which", "who", "whom", "where"}

// behindAside reports whether the verb at item i goes on with what an aside parts from
// it.
func (r *reader) behindAside(items []item, i int) bool {
	if items[i].pause != comma || !items[i].any(kBe, kHave) && !nowThere(items[i:]) {
		return false
	}
	told := false
	for k := i - 1; k > 0 && items[k].pause < stop; k-- {
		if r.isWord(&items[k], relatives...) {
			return told
		}
		if items[k].pause >= comma {
			return false
		}
		told = told || items[k].any6(kDo, kPlan, kDate, kPast, kWill, kTheirs)
	}
	return false
}

// endsAside reports whether clause i goes on behind an aside, which keeps its mood to
// itself.
func (r *reader) endsAside(list []clause, i int) bool {
	if i == 0 || list[i].items[0].pause != comma {
		return false
	}
	first, aside := &list[i].items[0], r.isWord(&list[i-1].items[0], relatives...)
	switch {
	case !aside:
		return false
	case first.any(kBe, kHave), nowThere(list[i].items):
		return true
	}
	return first.is(kAnd) && r.weWill(list[i].items, 1)
}

// feederBehindAside reads "the feeder, which I filled on Monday, was empty".
func (r *reader) feederBehindAside(c *clause) {
	if c.items[0].pause != comma || !c.items[0].is(kBe) || r.lastFixture != "feeder" {
		return
	}
	for k := 1; k < len(c.items) && k <= 3; k++ {
		if value := r.stateValue(&c.items[k], "feeder"); c.items[k].is(kState) && value != "" {
			r.leaf("feeder", value, "fixture", "", c.doubt, &c.items[k])
			return
		}
		if !c.items[k].any(kAdv, kNow) && !r.isWord(&c.items[k], "found") {
			return
		}
	}
}
