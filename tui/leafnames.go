package tui

import (
	"fmt"
	"strings"

	"barwise/colony"
)

// singleLeaves are the leaves that a record has once, in the order in which
// they are offered.
var singleLeaves = strings.Fields(`hive at queen.seen queen.bar queen.marked queen.colour queen.worn queen.clipped
	queen.virgin queen.year queenright brood_pattern drones temper.score temper.runny temper.stings strength.word
	strength.bars_of_bees stores.word mites.method mites.count mites.days mites.bees mites.cells follower.bar
	bars_total feeder floor entrance weight_kg weather.temp_c weather.sky weather.wind`)

// listLeaves are the lists whose items a keeper can name.
var listLeaves = []string{"contents", "queen_cells", "signs", "incoming", "actions", "plans", "earlier"}

// barLeaves are the leaves of a bar besides its contents and queen cells.
var barLeaves = strings.Fields("comb.drawn comb.size comb.width_mm comb.depth_mm comb.length_mm comb.new comb.old comb.straight comb.cross comb.attached comb.broken placed festooning")

// leavesNamed lists the paths whose name has, for each typed word, a word that
// begins with it.
func leavesNamed(typed string) []string {
	typed = strings.ToLower(typed)
	if after, ok := strings.CutPrefix(typed, "bar "); ok {
		number, rest, _ := strings.Cut(after, " ")
		if bar, _ := barTyped(number); bar > 0 && rest != "" {
			return barLeavesNamed(bar, rest)
		}
		return nil
	}
	var out []string
	for _, path := range singleLeaves {
		if namedLike(fullName(path), typed) {
			out = append(out, path)
		}
	}
	for _, list := range listLeaves {
		for _, key := range colony.Keys(list) {
			if path := list + "." + key; namedLike(fullName(path), typed) {
				out = append(out, path)
			}
		}
	}
	return out
}

func barLeavesNamed(bar int, typed string) []string {
	var out []string
	offer := func(rest string) {
		if path := fmt.Sprintf("bars.%d.%s", bar, rest); namedLike(words(rest), typed) {
			out = append(out, path)
		}
	}
	for _, what := range colony.Keys("contents") {
		offer(what)
	}
	for _, rest := range barLeaves {
		offer(rest)
	}
	for _, stage := range colony.Keys("queen_cells") {
		offer("queen_cells." + stage)
	}
	return out
}

// namedLike reports whether every typed word begins a word of the name.
func namedLike(name, typed string) bool {
	parts := strings.Fields(typed)
	if len(parts) == 0 {
		return false
	}
	for _, part := range parts {
		if !startsLike(name, part) {
			return false
		}
	}
	return true
}
