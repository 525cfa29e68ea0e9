package tui

import (
	"slices"

	"barwise/colony"
)

// rowKind is what a line of the sheet is.
type rowKind int

const (
	rowQuestion rowKind = iota // one leaf that is left to check, and why
	rowItem                    // what is said of one thing, as chips
	rowRemark                  // words that no rule used
	rowEnd                     // the end of the sheet: confirm, or add a leaf
)

// row is one line of the sheet. Chips are reached with the left and right
// arrows, rows with up and down.
type row struct {
	kind  rowKind
	group string // "bar 4", "queen"
	item  string // path of the thing
	label string
	chips []chip
	ask   question // of a rowQuestion
	text  string   // of a rowRemark
}

// chip is one leaf within its row.
type chip struct {
	path  string
	value string
	label string // "" for the item's own presence
	open  bool   // a question is left
	own   bool   // a person wrote it
}

// sheetRows lays a record out: first what is left to check, then everything
// that was said, by bar and topic, then what no rule used, then the end.
func sheetRows(r *colony.Record, ins *colony.Inspection, asked []question) []row {
	var rows []row
	open := map[string]bool{}
	for _, q := range asked {
		open[q.path] = true
		rows = append(rows, row{kind: rowQuestion, group: groupOf(q.path), item: itemOf(q.path), ask: q,
			chips: []chip{{path: q.path, value: q.value, open: true}}})
	}
	own := map[string]bool{}
	for _, c := range r.Corrections {
		own[c.Path] = !c.Deleted
	}
	var last *row
	for _, l := range withHead(ins) {
		item := itemOf(l.Path)
		if last == nil || last.item != item {
			rows = append(rows, row{kind: rowItem, group: groupOf(l.Path), item: item, label: itemName(item)})
			last = &rows[len(rows)-1]
		}
		last.chips = append(last.chips, chip{path: l.Path, value: l.Value, label: fieldName(l.Path), open: open[l.Path], own: own[l.Path]})
	}
	for _, text := range ins.Remarks {
		rows = append(rows, row{kind: rowRemark, group: "remarks", text: text})
	}
	return append(rows, row{kind: rowEnd})
}

// withHead lists the leaves, the hive and the time always among them so that
// they can be set.
func withHead(ins *colony.Inspection) []colony.Leaf {
	leaves := colony.Leaves(ins)
	if ins.At.IsZero() {
		leaves = slices.Insert(leaves, min(btoi(ins.Hive != ""), len(leaves)), colony.Leaf{Path: "at"})
	}
	if ins.Hive == "" {
		leaves = slices.Insert(leaves, 0, colony.Leaf{Path: "hive"})
	}
	return leaves
}

// rowOfPath finds the item row and chip that show the leaf.
func rowOfPath(rows []row, path string) (at, chip int, ok bool) {
	for i, r := range rows {
		if r.kind != rowItem {
			continue
		}
		for j, c := range r.chips {
			if c.path == path {
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// firstQuestion is the row of the first question at or after the given row,
// going round; -1 when nothing is left to check.
func firstQuestion(rows []row, from int) int {
	n := slices.IndexFunc(rows, func(r row) bool { return r.kind != rowQuestion })
	if n <= 0 {
		return -1
	}
	if from < 0 || from >= n {
		return 0
	}
	return from
}
