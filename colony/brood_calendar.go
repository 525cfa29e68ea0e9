package colony

// Days of development are counted from day 0, the day on which the egg is
// laid. Many handbooks call that day 1, so their "day 9" is this calendar's
// day 8. Calendar days are coarser than the development itself: the low and
// high ends include a day of slack for that.

// Development is how long one caste takes, in days since the egg was laid.
type Development struct {
	Caste  string
	Hatch  Constant // the egg becomes a larva
	Cap    Constant // the cell is sealed
	Emerge Constant // the adult leaves the cell
}

// The castes' development in a brood nest at its usual temperature.
var (
	Worker = Development{"worker",
		Constant{"egg stage", Between(2, 3, 4, unitDays), "best read, ends are slack", from("UCANR87", "PRACTICE")},
		Constant{"worker cell sealed", Between(8, 9, 10, unitDays), "8 and 9 both stand in print; ends", from("NEMNBA", "AMBEE", "WINSTON87")},
		Constant{"worker emerges", Between(19, 21, 24, unitDays), "19 to 22 read, up to 24 in cool nests", from("UCANR87", "SEVEN", "AMBEE", "WINSTON87")},
	}
	QueenBee = Development{"queen",
		Constant{"egg stage", Between(2, 3, 4, unitDays), "best read, ends are slack", from("UCANR87", "PRACTICE")},
		Constant{"queen cell sealed", Between(7, 8, 9, unitDays), "8 or 9 read, 7.5 in the textbook", from("TRIBES", "AMBEE", "WINSTON87")},
		Constant{"queen emerges", Between(14, 16, 17, unitDays), "15 to 17 read, 14 in the textbook", from("UCANR87", "AMBEE", "WINSTON87")},
	}
	Drone = Development{"drone",
		Constant{"egg stage", Between(2, 3, 4, unitDays), "best read, ends are slack", from("UCANR87", "PRACTICE")},
		Constant{"drone cell sealed", Between(9, 10, 11, unitDays), "", from("AMBEE", "WINSTON87")},
		Constant{"drone emerges", Between(22, 24, 28, unitDays), "24 to 25 read, 28 in the textbook", from("UCANR87", "AMBEE", "WINSTON87")},
	}
)

// broodAge is the age, in days since laying, of what a keeper sees: usual from
// the 3/9/21-day model, outer with the ends of the development and with drone
// brood taken for worker brood.
type broodAge struct{ usual, outer Range }

var broodAges = map[string]broodAge{
	"eggs":           {Between(0, 1, 3, unitDays), Between(0, 1, 4, unitDays)},
	"open_brood":     {Between(3, 6, 9, unitDays), Between(2, 6, 11, unitDays)},
	"capped_brood":   {Between(9, 15, 21, unitDays), Between(8, 15, 24, unitDays)},
	"emerging_brood": {Between(20, 21, 21, unitDays), Between(19, 21, 24, unitDays)},
	"brood":          {Between(0, 12, 21, unitDays), Between(0, 12, 24, unitDays)},
	"drone_brood":    {Between(0, 12, 24, unitDays), Between(0, 12, 28, unitDays)},
}

// laidWindow says when the brood that was seen on a day was laid. What is one
// of the contents that are brood; anything else is false.
//
// Eggs seen on 20 May were laid on 17 to 20 May; open larvae on 11 to 17 May;
// sealed worker brood on 29 April to 11 May.
func laidWindow(what string, seen Date) (Window, bool) {
	age, ok := broodAges[what]
	if !ok {
		return Window{}, false
	}
	return age.laidBefore(seen), true
}

// laidBefore is when what is of that age on the day was laid.
func (a broodAge) laidBefore(seen Date) Window {
	return onDay(seen).After(a.usual.Scale(-1), a.outer.Scale(-1))
}

// laidUntil is the last day on which an egg can have been laid if, on the day
// seen, the named stages were looked for and not there. Eggs denied: the egg
// stage ago; eggs and larvae denied: the day of sealing ago; all worker brood
// denied: the whole development ago. With eggs not denied nothing follows.
func laidUntil(seen Date, noEggs, noOpen, noCapped bool) Date {
	switch {
	case noEggs && noOpen && noCapped:
		return seen.AddDays(-int(Worker.Emerge.Value.Best))
	case noEggs && noOpen:
		return seen.AddDays(-int(Worker.Cap.Value.Best))
	case noEggs:
		return seen.AddDays(-int(Worker.Hatch.Value.Best))
	}
	return seen
}

// EmergeWindow is when a bee of the caste leaves its cell, for an egg that was
// laid in the window.
func (d Development) EmergeWindow(laid Window) Window { return laid.follow(d.Emerge) }

// CapWindow is when the cell is sealed.
func (d Development) CapWindow(laid Window) Window { return laid.follow(d.Cap) }

// follow is the window of what comes the constant's days later: usually after
// its best value, at the outermost after its ends.
func (w Window) follow(c Constant) Window {
	best := c.Value.Best
	return w.After(Exactly(best, unitDays), c.Value)
}
