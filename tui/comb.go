package tui

import (
	"math"
	"slices"

	"barwise/colony"
)

// combRows is how many of the given rows the bar's comb takes. A share that
// was said decides, else a word; comb of no said size is drawn whole, because
// most combs that one speaks of are.
func combRows(bar *colony.Bar, rows int) int {
	if bar == nil {
		return 0
	}
	if c := bar.Comb; c != nil {
		switch {
		case c.Drawn != nil:
			if *c.Drawn <= 0 {
				return 0
			}
			return max(1, int(math.Round(clamp01(*c.Drawn)*float64(rows))))
		case c.Size == "bare":
			return 0
		case c.Size == "started":
			return 1
		case c.Size == "small":
			return max(1, rows/3)
		}
		return rows
	}
	if len(bar.Contents) > 0 || len(bar.QueenCells) > 0 {
		return rows
	}
	return 0
}

// faces are what the front and the back of a comb hold. Where a side was only
// called "one", the first thing said so is drawn in front and the next behind.
func faces(contents []colony.Content) (front, back []colony.Content, differ bool) {
	next := 0
	for _, c := range contents {
		if !c.Present {
			continue
		}
		side := c.Side
		if side == "one" {
			side = [2]string{"front", "back"}[next%2]
			next++
		}
		if side != "back" {
			front = append(front, c)
		}
		if side != "front" {
			back = append(back, c)
		}
		differ = differ || side == "front" || side == "back"
	}
	return front, back, differ
}

// fill spreads what a face holds over a number of cells, from the top bar
// down. Shares that were said are drawn as said; what was named without a
// share divides the rest, "little" counting a third and "much" double. Cells
// of which nothing was said stay "".
func fill(contents []colony.Content, cells int) []string {
	shares := sharesOf(contents)
	var upper, lower []string
	left := cells
	for i, c := range inCombOrder(contents) {
		n := min(left, max(1, int(math.Round(shares[c.What]*float64(cells)))))
		if i == len(contents)-1 && total(shares) > 0.999 {
			n = left
		}
		left -= n
		part := slices.Repeat([]string{c.What}, n)
		switch c.Place {
		case "edge", "corners":
			upper = append(upper, part[:(n+1)/2]...)
			lower = append(part[(n+1)/2:], lower...)
		case "bottom":
			lower = append(lower, part...)
		default:
			upper = append(upper, part...)
		}
	}
	upper = append(upper, make([]string, left)...)
	return append(upper, lower...)
}

func sharesOf(contents []colony.Content) map[string]float64 {
	shares := map[string]float64{}
	said, weight := 0.0, 0.0
	weightOf := func(c colony.Content) float64 {
		return map[string]float64{"little": 1, "": 3, "much": 6}[c.Amount]
	}
	for _, c := range contents {
		if c.Cover != nil {
			shares[c.What] = clamp01(*c.Cover)
			said += shares[c.What]
		} else {
			weight += weightOf(c)
		}
	}
	rest := 1 - said
	if weight > 0 {
		rest = max(rest, 0.25) // what was named is drawn, however full the comb is
	}
	for _, c := range contents {
		if c.Cover == nil {
			shares[c.What] = rest * weightOf(c) / weight
		}
	}
	if sum := total(shares); sum > 1 {
		for what := range shares {
			shares[what] /= sum
		}
	}
	return shares
}

func total(shares map[string]float64) float64 {
	sum := 0.0
	for _, s := range shares {
		sum += s
	}
	return sum
}

// inCombOrder sorts by the place that was said, else as combs are mostly laid
// out.
func inCombOrder(contents []colony.Content) []colony.Content {
	rank := func(c colony.Content) int {
		at := slices.IndexFunc(marks, func(m mark) bool { return m.what == c.What })
		switch c.Place {
		case "top":
			return at - 100
		case "bottom":
			return at + 100
		}
		return at
	}
	sorted := slices.Clone(contents)
	slices.SortStableFunc(sorted, func(a, b colony.Content) int { return rank(a) - rank(b) })
	return sorted
}

func clamp01(x float64) float64 { return min(max(x, 0), 1) }
