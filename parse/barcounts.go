package parse

import (
	"strconv"
	"strings"
)

// A number among bars may count them, or what is on them, instead of naming one.

// neverBare are the kinds of words that a number before them counts whatever else is told.
var neverBare = setOf(kCell, kCellKind, kMite, kSign, kUnit, kQueen, kOf)

// countsNext reports whether the number at the head of a line counts what
// follows: "5 frames of bees", "2 stings".
func countsNext(items []item) bool {
	if len(items) < 2 || items[0].colon {
		return false
	}
	next := &items[1]
	return next.pause == none && (next.anyOf(neverBare) || next.is(kBar) && (next.plural || len(items) == 2 || items[2].is(kOf)))
}

// countsBars reports whether the number counts bars: "four new bars in".
func countsBars(items []item, i int) bool {
	k := i + 1
	for k < len(items) && items[k].pause == none && items[k].any(kComb, kAdv) && !items[k].is(kBar) {
		k++
	}
	named := k+1 < len(items) && barNumber(&items[k+1]) && items[k+1].pause == none      // "honey on three bars nine and ten"
	undergoes := k > i+1 && k+2 < len(items) && items[k+1].is(kBe) && items[k+2].is(kDo) // "one new bar was added"
	one := k > i+1 && items[i].n.lo == 1                                                 // "1 new bar in after 6"
	named = named && !(items[k].plural && namesSoMany(items, k+1, int(items[i].n.lo)))   // but "brood on five bars four to eight"
	return k < len(items) && items[k].pause == none && items[k].is(kBar) && (items[k].plural || undergoes || one) && !named
}

// namesSoMany reports whether the numbers of just so many bars stand at item k: "four to eight" are
// five.
func namesSoMany(items []item, k, count int) bool {
	end, many := risingNumbers(items, k)
	if n := &items[k].n; n.hi > n.lo && !n.or {
		end, many = k+1, int(n.hi-n.lo)+1
	}
	if end < len(items) && items[end].pause == none && items[end].any4(kBe, kHave, kContent, kComb) {
		return false // "honey on two bars three and four are brood"
	}
	return many > 1 && many == count
}

// countsOnly reports whether so far bars of the hive in hand were counted and none was
// named: "bees on nine bars. BIAS on five".
func (r *reader) countsOnly() bool { return r.barsCounted && r.last == 0 }

// pastTheBees reports whether the number is greater than that of the bars that the bees
// cover, so that it cannot count those with brood: "six bars of bees. Brood on 8".
func (n *bareNumber) pastTheBees() bool {
	said, _ := n.cur.get("strength.bars_of_bees")
	bees, err := strconv.ParseFloat(said, 64)
	return err == nil && n.items[n.i].n.lo > bees
}

// countedBefore reports whether the sentence counts bars instead of naming
// them.
func countedBefore(r *reader, before []item) bool {
	for k := len(before) - 1; k >= 0 && (k+1 == len(before) || before[k+1].pause < stop); k-- {
		if rule := r.rule(&before[k], kLeaf); rule != nil && (rule.ID == "bars-total" || rule.ID == "bars-of-bees" && strings.Contains(before[k].text, "bars")) {
			return true
		}
		if before[k].is(kBars) {
			return false
		}
	}
	return false
}

// barsCountedBehind puts how many bars there are of something before them where it stands
// behind: "bars of brood five bars of honey four".
func barsCountedBehind(items []item) {
	for i, behind := 0, false; i+3 < len(items); i++ {
		if !items[i].is(kBar) || !items[i].plural || i > 0 && items[i].pause == none && (items[i-1].any6(kNum, kDo, kArt, kAmount, kWord, kAdv) && !behind || items[i-1].is(kOf)) {
			continue
		}
		n := i + 2
		for n < len(items) && items[n].pause == none && items[n].any3(kContent, kStage, kAnd) {
			n++
		}
		behind = false
		if n == i+2 || n == len(items) || !items[i+1].is(kOf) || items[i+1].pause > none || !items[n-1].is(kContent) || !barNumber(&items[n]) || items[n].pause > none || items[n].n.lo >= manyBars {
			continue
		}
		if next := n + 1; next < len(items) && items[next].pause < comma && !items[next].any3(kEnd, kName, kQueen) && items[next].text != "end" && !(items[next].is(kBar) && items[next].plural && next+1 < len(items) && items[next+1].is(kOf)) {
			continue
		}
		count := items[n]
		copy(items[i+1:n+1], items[i:n])
		count.pause, items[i+1].pause = max(items[i+1].pause, comma), none
		items[i] = count
		i, behind = n, true
	}
}

// measuredBehind reports whether the bars that the bees cover are counted right behind the size at
// item i, and nothing but the colony is called that: "it is weak, three seams, brood but no
// eggs", "heaving, with bees on nine bars and lots of honey".
func (r *reader) measuredBehind(c *clause, i int) bool {
	for k := range c.items[:i] {
		if it := &c.items[k]; !it.anyOf(leadsToSize) || it.any3(kQueen, kContent, kCell) {
			return false
		}
	}
	words := 0
	for k := range r.told {
		it := &r.told[k]
		switch {
		case it.start <= c.items[i].start:
		case r.barsOfBees(it):
			return true
		case words == 4 || it.pause > colon || !it.anyOf(leadsToCount) || it.any4(kContent, kCell, kQueen, kSign):
			return false
		default:
			words++
		}
	}
	return false
}

var (
	// leadsToSize are the kinds of words between the colony and its size: "the colony is still very".
	leadsToSize = setOf(kArt, kBe, kAdv, kAnd, kBut, kThen, kMaybe, kBees, kName, kHive, kPron, kShe, kNow)
	// leadsToCount are those between its size and the bars that it covers: "still, with only".
	leadsToCount = setOf(kAdv, kMaybe, kWithX, kHave, kBe, kThere, kPron, kArt, kThen, kAnd, kNow, kBees)
)
