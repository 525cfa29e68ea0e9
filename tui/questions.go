package tui

import (
	"slices"
	"strings"

	"barwise/colony"
)

// question is a leaf that a person should look at and that nobody has
// answered yet.
type question struct {
	path  string
	value string // what stands there; empty where nothing does
	why   []string
	alt   string // the other value that is offered; empty for none
}

// questions lists what is left to check, in the order of the record; what is
// asked about a leaf that is not there comes last. The inspection is the
// record's own, passed in because making it is work.
func questions(r *colony.Record, ins *colony.Inspection) []question {
	asked := map[string]*question{}
	ask := func(path, why, alt string) {
		q := asked[path]
		if q == nil {
			q = &question{path: path}
			asked[path] = q
		}
		if q.alt == "" {
			q.alt = alt
		}
		q.why = append(q.why, why)
	}
	for _, c := range ins.Check {
		ask(c.Path, c.Why, c.Alt)
	}
	for _, c := range latest(r.Corrections) {
		if _, read, conflict := disputed(r, c.Path); conflict {
			ask(c.Path, "you wrote "+orNothing(said(c))+", the newer reading has "+orNothing(read), read)
		}
	}
	var out []question
	for _, l := range colony.Leaves(ins) {
		if q := asked[l.Path]; q != nil {
			q.value = l.Value
			out = append(out, *q)
			delete(asked, l.Path)
		}
	}
	missing := make([]string, 0, len(asked))
	for path := range asked {
		if !covered(r, path) {
			missing = append(missing, path)
		}
	}
	slices.Sort(missing)
	for _, path := range missing {
		out = append(out, *asked[path])
	}
	return out
}

// openCount is how many questions the record has, without making its
// inspection: cheap enough for a long list, exact but for rare disputes.
func openCount(r *colony.Record) int {
	answered := map[string]bool{}
	for _, path := range r.Accepted {
		answered[path] = true
	}
	for _, c := range r.Corrections {
		answered[c.Path] = true
	}
	n := 0
	for _, c := range r.Read.Check {
		if !answered[c.Path] && !covered(r, c.Path) {
			answered[c.Path] = true
			n++
		}
	}
	for _, c := range latest(r.Corrections) {
		if _, _, conflict := disputed(r, c.Path); conflict {
			n++
		}
	}
	return n
}

// covered reports whether the leaf went away with the item it was said of.
func covered(r *colony.Record, path string) bool {
	for _, c := range r.Corrections {
		if c.Deleted && (c.Path == path || strings.HasPrefix(path, c.Path+".")) {
			return true
		}
	}
	return false
}

// disputed tells whether a reading made after the correction says something
// else than both the correction and what it corrected. It returns the
// correction that stands and what the reading has, empty for nothing.
func disputed(r *colony.Record, path string) (colony.Correction, string, bool) {
	var last colony.Correction
	read, _ := colony.Get(&r.Read, path)
	known := true
	for _, c := range r.Corrections {
		if c.Path != path || path == noteText {
			continue
		}
		if last.Path == "" {
			known = false
		}
		last = c
		known = known || c.Was == read || said(c) == read
	}
	return last, read, last.Path != "" && !known
}

func said(c colony.Correction) string {
	if c.Deleted {
		return ""
	}
	return c.Value
}

func orNothing(value string) string {
	if value == "" {
		return "nothing"
	}
	return value
}

// latest are the corrections that stand: the last of each path.
func latest(all []colony.Correction) []colony.Correction {
	var out []colony.Correction
	seen := map[string]bool{}
	for _, c := range slices.Backward(all) {
		if !seen[c.Path] {
			seen[c.Path] = true
			out = append(out, c)
		}
	}
	slices.Reverse(out)
	return out
}

// headline is what a list shows of a record, found without making its
// inspection.
func headline(r *colony.Record) (hive string, on colony.Date) {
	hive, at := r.Read.Hive, r.Read.At
	for _, c := range r.Corrections {
		switch c.Path {
		case "hive":
			hive = said(c)
		case "at":
			var probe colony.Inspection
			if c.Deleted || colony.Set(&probe, "at", c.Value) == nil {
				at = probe.At
			}
		}
	}
	if at.IsZero() {
		return hive, colony.Date{}
	}
	return hive, colony.DateOf(at)
}
