package command

import (
	"strconv"
	"strings"

	"barwise/colony"
)

// phrase is one thing that a record says: a leaf with what is said further of
// it, as in "capped brood 80 %, solid, both sides". Paths lists the leaves that
// went into it.
type phrase struct {
	topic string // the line of the sheet that it stands on
	text  string
	paths []string
}

// phrases puts an inspection's leaves into words, in the order of the record.
// Hive and time are the heading's business and left out.
func phrases(ins *colony.Inspection) []phrase {
	var out []phrase
	var last place
	for _, leaf := range colony.Leaves(ins) {
		if leaf.Path == "hive" || leaf.Path == "at" {
			continue
		}
		here := placeOf(leaf.Path)
		text := here.wording().of(leaf.Value)
		if here.detail != "" && here.topic == last.topic && here.item == last.item {
			p := &out[len(out)-1]
			p.text += text
			p.paths = append(p.paths, leaf.Path)
			continue
		}
		last = here
		out = append(out, phrase{topic: here.topic, text: text, paths: []string{leaf.Path}})
	}
	return out
}

// place is what a path means to the sheet: the line it stands on, the list or
// group, the thing spoken of, and the detail of it, if it is one.
type place struct{ topic, group, item, detail string }

// placeOf takes a path apart: bars.4.capped_brood.cover is on line "bar 4", in
// the contents, of capped_brood, the detail cover.
func placeOf(path string) place {
	parts := strings.Split(path, ".")
	p := place{topic: parts[0]}
	if parts[0] == "bars" {
		p.topic, parts = "bar "+parts[1], parts[2:]
		if parts[0] != "queen_cells" && parts[0] != "comb" {
			parts = append([]string{"contents"}, parts...)
		}
	}
	p.group = parts[0]
	if name, ok := lineNames[p.topic]; ok {
		p.topic = name
	}
	if len(parts) > 1 {
		p.item = parts[1]
	}
	if len(parts) > 2 {
		p.detail = parts[2]
	}
	return p
}

// wording finds how the leaf is said: by its full name, else by that of the
// detail alone, else by the name of the thing.
func (p place) wording() wording {
	item, _, _ := strings.Cut(p.item, "#")
	if p.detail != "" {
		if w, ok := wordings[p.group+".*."+p.detail]; ok {
			return w
		}
		return wordings["*."+p.detail]
	}
	if w, ok := wordings[strings.TrimSuffix(p.group+"."+item, ".")]; ok {
		return w
	}
	name := strings.ReplaceAll(item, "_", " ")
	if name == "" {
		name = strings.ReplaceAll(p.group, "_", " ")
	}
	return wording{"yes": name, "no": "no " + name, "": name + " %"}
}

// of is the value in words.
func (w wording) of(value string) string {
	if text, ok := w[value]; ok {
		return text
	}
	shown := oneLine(value)
	form := w[""]
	switch {
	case form == "":
		return ", " + shown
	case strings.Contains(form, "%share"):
		return strings.ReplaceAll(form, "%share", percent(value))
	case strings.Contains(form, "%day"):
		return strings.ReplaceAll(form, "%day", day(value))
	}
	if value == "1" {
		form = strings.ReplaceAll(form, "(s)", "")
	}
	return strings.NewReplacer("%", shown, "(s)", "s").Replace(form)
}

// percent is a share as a person writes it.
func percent(share string) string {
	f, err := strconv.ParseFloat(share, 64)
	if err != nil {
		return oneLine(share)
	}
	return strconv.FormatFloat(100*f, 'f', 0, 64) + " %"
}

// day is the date of a leaf with its weekday.
func day(text string) string {
	d, err := colony.ParseDate(text)
	if err != nil {
		return oneLine(text)
	}
	return fullDate(d)
}

// fullDate is "Thu 14 May 2026", with the month written out.
func fullDate(d colony.Date) string { return d.Time().Format("Mon 2 January 2006") }
