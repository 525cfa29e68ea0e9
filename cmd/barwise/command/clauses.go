package command

import (
	"slices"
	"strings"

	"barwise/colony"
	"barwise/index"
)

// This file says where in the records stands what a leaf of a question asks for.

// clauseOf is what a leaf of a question asks for; nil where it asks for
// nothing. What is said of the colony may be recorded of a bar, and what was
// seen "last" is asked of the day it was seen on.
func clauseOf(leaf colony.Leaf) index.Clause {
	parts := strings.Split(leaf.Path, ".")
	switch {
	case leaf.Path == "hive" || leaf.Path == "at" || leaf.Path == "mites.method" && leaf.Value == "seen":
		return nil
	case parts[0] == "bars":
		return barClause(leaf, parts)
	case parts[0] == "contents":
		return contentClause(parts[1], parts[2:], leaf.Value)
	case parts[0] == "queen_cells":
		return cellsClause(parts[1], parts[2:], leaf.Value)
	case parts[0] == "earlier" && len(parts) == 2:
		return earlierClause(parts[1], leaf.Value)
	case leaf.Path == "brood_pattern":
		return contentClause("brood", []string{"pattern"}, leaf.Value)
	case parts[0] == "incoming" || leaf.Path == "actions.move_follower.direction" || len(parts) == 3 && parts[2] == "what":
		return index.Clause{is(leaf.Path, leaf.Value)}
	case len(parts) > 2 || parts[0] == "earlier":
		return nil
	}
	return stateClause(leaf)
}

// madeBy reports whether the leaf only tells the outcome of a deed that is asked
// for: a queen that was marked is marked.
func madeBy(leaf colony.Leaf, leaves []colony.Leaf) bool {
	deed := map[string]string{"queen.marked": "actions.mark_queen", "queen.clipped": "actions.clip_queen"}[leaf.Path]
	return deed != "" && slices.Contains(leaves, colony.Leaf{Path: deed, Value: "yes"})
}

// touchy is the temper below which bees only sting.
const touchy = "2"

// stateClause asks for what was found so or was made so.
func stateClause(leaf colony.Leaf) index.Clause {
	made := map[string]string{
		"floor=closed": "close_floor", "floor=open": "open_floor", "entrance=reduced": "reduce_entrance",
		"entrance=open": "open_entrance", "entrance=closed": "close_entrance",
	}
	clause := index.Clause{is(leaf.Path, leaf.Value)}
	if leaf.Path == "temper.score" && leaf.Value == touchy {
		clause[0].Op = index.AtMost // who asks for bad temper wants the worst too
	}
	if deed, ok := made[leaf.Path+"="+leaf.Value]; ok {
		clause = append(clause, is("actions."+deed, "yes"))
	}
	return clause
}

// stages are what a content that is named broadly may be recorded as.
var stages = map[string][]string{
	"brood": {"brood", "capped_brood", "open_brood", "emerging_brood"},
	"honey": {"honey", "capped_honey"},
}

// contentClause asks for a content of any bar or of the colony, or for a detail
// of it.
func contentClause(what string, detail []string, value string) index.Clause {
	if len(detail) == 1 && (detail[0] == "amount" || detail[0] == "bars" || detail[0] == "bars_max") {
		return nil
	}
	kinds := stages[what]
	if kinds == nil {
		kinds = []string{what}
	}
	var clause index.Clause
	for _, kind := range kinds {
		path := strings.Join(append([]string{kind}, detail...), ".")
		clause = append(clause, is("contents."+path, value), is("bars.*."+path, value))
	}
	switch {
	case what == "brood" && len(detail) == 1 && detail[0] == "pattern":
		clause = append(clause, is("brood_pattern", value))
	case (what == "pollen" || what == "nectar") && len(detail) == 0:
		clause = append(clause, is("incoming."+what, value))
	}
	return clause
}

// cellsClause asks for queen cells, at any place. An empty cup is none, unless
// asked for.
func cellsClause(stage string, detail []string, value string) index.Clause {
	if len(detail) > 0 && detail[0] != "kind" {
		return nil
	}
	stagesOf := []string{stage}
	switch {
	case stage == "any" && len(detail) > 0:
		stagesOf = []string{"*"}
	case stage == "any" && value != "no":
		stagesOf = []string{"any", "charged", "capped", "emerged", "torn"}
	}
	var clause index.Clause
	for _, s := range stagesOf {
		path := strings.Join(append([]string{"queen_cells", s}, detail...), ".")
		clause = append(clause, is(path, value), is("bars.*."+path, value))
	}
	return clause
}

// presence is what must not be recorded where a leaf is denied of the whole
// colony: "no eggs" on one bar does not say it of a hive with eggs on the next.
func presence(leaf colony.Leaf) []index.Clause {
	parts := strings.Split(leaf.Path, ".")
	if leaf.Value != "no" || len(parts) != 2 || parts[0] != "contents" && parts[0] != "queen_cells" {
		return nil
	}
	return []index.Clause{clauseOf(colony.Leaf{Path: leaf.Path, Value: "yes"})}
}

// barClause asks for what is said of one numbered bar.
func barClause(leaf colony.Leaf, parts []string) index.Clause {
	bar := "bars." + parts[1] + "."
	switch {
	case len(parts) >= 4 && parts[2] == "queen_cells" && parts[3] == "any":
		var clause index.Clause
		for _, c := range cellsClause("any", parts[4:], leaf.Value) {
			if path, ok := strings.CutPrefix(c.Path, "bars.*."); ok {
				clause = append(clause, is(bar+path, leaf.Value))
			}
		}
		return clause
	case len(parts) == 3 && stages[parts[2]] != nil && leaf.Value == "yes":
		var clause index.Clause
		for _, kind := range stages[parts[2]] {
			clause = append(clause, is(bar+kind, "yes"))
		}
		return clause
	}
	return index.Clause{is(leaf.Path, leaf.Value)}
}

// earlierClause asks for an event as it was recorded on its day, or was spoken
// of later.
func earlierClause(event, value string) index.Clause {
	on := map[string][]string{
		"queen_seen": {"queen.seen"},
		"eggs_seen":  {"contents.eggs", "bars.*.eggs"},
		"fed":        {"actions.feed"},
		"treated":    {"actions.treat"},
		"bar_added":  {"actions.add_bar"},
		"split":      {"actions.split"},
		"requeened":  {"actions.requeen"},
		"swarmed":    {"earlier.swarmed"},
	}[event]
	if value == "no" && event != "queen_seen" && event != "eggs_seen" {
		return index.Clause{is("earlier."+event, "no")}
	}
	var clause index.Clause
	for _, path := range on {
		clause = append(clause, index.Condition{Path: path, Op: index.Is, Value: value})
	}
	return clause
}

// aboutBars leaves in each clause only what is recorded of bars, where there is
// such a thing.
func aboutBars(where []index.Clause) []index.Clause {
	for i, clause := range where {
		ofBars := slices.DeleteFunc(slices.Clone(clause), func(c index.Condition) bool { return !strings.HasPrefix(c.Path, "bars.") })
		if len(ofBars) > 0 {
			where[i] = ofBars
		}
	}
	return where
}
