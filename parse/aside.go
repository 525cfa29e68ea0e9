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

// whereToBehind takes the hive behind what was on the bars: "moved bar six, eggs both
// sides, to the top hive".
func (r *reader) whereToBehind(c *clause, d *deed, end int) {
	if d.do != "move_bar" || d.toHive != "" || len(d.bars) == 0 {
		return
	}
	for k := end; k < len(c.items) && !c.items[k].any(kDo, kBars); k++ {
		if it := &c.items[k]; it.is(kTo) && it.pause == comma {
			if k++; c.next(k - 1).is(kArt) {
				k++
			}
			if k < len(c.items) && c.items[k].is(kName) && c.items[k].name != r.cur.hive {
				d.toHive = c.items[k].name
				d.use(&c.items[k])
			}
			return
		}
	}
}

// whichBars takes the bars that an aside tells of: "one bar from hive two, which I added
// behind bar four".
func (f *fitting) whichBars() bool {
	if f.rule.Form != "done" || f.i == 0 || f.i > 3 || f.c.items[0].text != "which" {
		return false
	}
	k := 0
	for k < len(f.told) && f.told[k].start < f.c.items[0].start {
		k++
	}
	from := ""
	if k > 3 && f.told[k-1].is(kName) {
		from = f.told[k-1].name
		for k--; k > 0 && f.told[k-1].any(kArt, kFrom); k-- {
		}
	}
	if k < 2 || !f.told[k-1].is(kBar) || !f.told[k-2].is(kNum) || f.told[k-2].n.share {
		return false
	}
	count := f.told[k-2].n
	f.d.count, f.d.fromHive = &count, from
	return true
}
