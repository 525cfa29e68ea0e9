package parse

import (
	"strings"

	"barwise/colony"
)

// Of the names that may be a hive's, weighed, those are chosen that the words around them
// speak for.

// enough is the weight of evidence at which a proper name is a hive's.
const enough = 3

// properNames are the names that may be a hive's.
type properNames map[string]properName

type properName struct {
	weight int  // of what speaks for it
	hinted bool // it is spoken of as a hive is where another has a name

	heads bool // a part of the note begins with it and goes on as about a hive
	given bool // it is a name that people have

	beside string      // the name that it is joined to
	at     colony.Span // where it stands first
	focus  focus       // the surest of its mentions
	amid   bool        // it stands amid a sentence, where only names have capitals
	plant  bool        // it is a plant's, which has no capital there
}

// hives are the names that are those of hives.
func (p properNames) hives(byWord bool) map[string]bool {
	names := map[string]bool{}
	if len(p) == 0 {
		return names
	}
	for name, n := range p {
		if n.weight >= enough {
			names[name] = true
		}
	}
	if !byWord {
		p.inFocus(names)
	}
	if len(names) == 0 && !byWord {
		p.ofARound(names)
	}
	if len(names) == 0 && !byWord {
		if name := p.likeliest(); name != "" {
			names[name] = true
		} else if name := p.onlyPlant(); name != "" {
			names[name] = true
		}
	}
	p.besides(names)
	for name, n := range p { // "Lightning was another story", "In Marigold she found nothing", where one hive has a name
		if len(names) > 0 && n.hinted && n.weight >= 0 {
			names[name] = true
		}
	}
	return names
}

// addSure adds the names for which enough speaks to those of a note that has hives with the word for them
// too, "the Salt Box hive", and people.
func (p properNames) addSure(names map[string]bool) {
	for name, n := range p {
		if n.weight >= enough && !n.given {
			names[name] = true
		}
	}
}

// short are the names that the note uses for short, with those that they are short for, and adds both to
// those of hives: "Old Clunker had ten seams … Clunker can wait", "Upper Marsh and Lower Marsh … Upper has".
func (p properNames) short(names map[string]bool) map[string]string {
	full := map[string]string{}
	for name, n := range p {
		first, last, two := strings.Cut(name, " ")
		last = last[strings.LastIndexByte(last, ' ')+1:]
		part := last
		if two && p.twin(first, last) {
			part = first
		}
		of, told := p[part]
		if !two || !told || first == "other" || of.at[0] < n.at[0] || min(n.weight, of.weight) < 0 || !names[name] && (part == last || !names[part]) {
			continue
		}
		if full[part] != "" {
			return nil // "Top Field" and "Low Field"
		}
		full[part] = name
	}
	for part, name := range full {
		names[part], names[name] = true, true
	}
	return full
}

// twin reports whether a name has the last word of another, and another first one.
func (p properNames) twin(first, last string) bool {
	for name := range p {
		if other, end, _ := strings.Cut(name, " "); end == last && other != first {
			return true
		}
	}
	return false
}

// namedAt is the name of a hive and where it stands first.
type namedAt struct {
	name string
	at   colony.Span
}

// only is the one name of a hive that there is and for which enough speaks, nil where there are more.
func (p properNames) only(names map[string]bool) *namedAt {
	if len(names) != 1 {
		return nil
	}
	for name := range names {
		if n := p[name]; n.weight >= enough {
			return &namedAt{name, n.at}
		}
	}
	return nil
}

// unsure are those names of hives for which no more than one clue speaks.
func (p properNames) unsure(names map[string]bool) map[string]bool {
	unsure := map[string]bool{}
	for name := range names {
		unsure[name] = p[name].weight <= enough
	}
	return unsure
}

// inFocus adds the names that the talk turns to: with words that say so, or several of
// them at the heads of sentences, or one that stands amid a sentence too.
func (p properNames) inFocus(names map[string]bool) {
	turns := 0
	for name, n := range p {
		if n.weight >= 0 && n.focus > noFocus || names[name] {
			turns++
		}
	}
	for name, n := range p {
		if n.weight >= 0 && (n.focus == turnedTo || n.focus == headed && (turns > 1 || n.amid)) {
			names[name] = true
		}
	}
}

// besides adds the names with which parts of the note begin as those of hives do, where another part
// is that of a hive whose name is sure: "Alpha is calm … Bravo took losses". People who head a part
// have names that people have: such a one is taken where another hive has such a name too.
func (p properNames) besides(names map[string]bool) {
	sure, people := len(names) > 0, false
	for name := range names {
		people = people || p[name].given
	}
	for name, n := range p {
		if sure && n.heads && n.weight >= 0 && (people || !n.given) {
			names[name] = true
		}
	}
	for p.addBeside(names, people) {
	}
}

// addBeside adds the names that are joined to those of hives, "gave Juniper and Tansy a look", and reports
// whether there was one: it may be joined to another.
func (p properNames) addBeside(names map[string]bool, people bool) (added bool) {
	for name, n := range p {
		if other := n.beside; other != "" && names[name] != names[other] && min(n.weight, p[other].weight) >= 0 && (people || !n.given && !p[other].given) {
			names[name], names[other], added = true, true, true
		}
	}
	return added
}

// onlyPlant is the one name of a plant that stands as a name does and is no person's; ""
// where there are several.
func (p properNames) onlyPlant() string {
	only := ""
	for name, n := range p {
		if !n.plant || n.weight < 0 {
			continue
		}
		if only != "" {
			return ""
		}
		only = name
	}
	return only
}

// ofARound adds the names of a round of visits where there are several: "Walnut first",
// "now Damson, …".
func (p properNames) ofARound(names map[string]bool) {
	best := 0
	for name, n := range p {
		if n.hinted && n.weight > 0 {
			names[name] = true
			best = max(best, n.weight)
		}
	}
	if len(names) == 1 || best < enough-1 {
		clear(names)
	}
}

// likeliest is the one name that some words speak for, where no name is sure;
// "" where there are two as good.
func (p properNames) likeliest() string {
	best, name, tied := enough-2, "", false
	for of, n := range p {
		switch {
		case n.weight > best:
			best, name, tied = n.weight, of, false
		case n.weight == best:
			tied = true
		}
	}
	if tied {
		return ""
	}
	return name
}
