package tui

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"barwise/colony"
)

// choice is one way to go on with what was typed.
type choice struct {
	show string // what it will say
	hint string // why it is offered, or what is odd about it
	do   func(now time.Time) (colony.Record, error)
	ask  string // instead of do: the path whose value is asked for next
	said string // the word that was meant, where the choice mends a mishearing
}

// mostChoices is how many are offered at once.
const mostChoices = 8

// choicesFor offers what the typed text can mean for the leaf: a value that is
// allowed there, another bar to move it to, another thing that it was.
func choicesFor(o *opened, path, typed string, now time.Time) []choice {
	field, err := colony.FieldOf(path)
	if err != nil {
		return nil
	}
	typed = strings.TrimSpace(typed)
	out := valueChoices(o, field, typed, now)
	if typed != "" {
		out = append(out, barChoices(o, field, typed)...)
		out = append(out, detailChoices(o, path, typed)...)
		out = append(out, kindChoices(o, path, typed)...)
	}
	return out[:min(len(out), mostChoices)]
}

// valueChoices are the values that fit, the offered alternative first.
func valueChoices(o *opened, field colony.Field, typed string, now time.Time) []choice {
	var out []choice
	for _, v := range valuesFor(field, typed, &o.ins, now) {
		c := choice{show: showValue(field.Path, v.value), hint: v.hint}
		if !field.Plausible(v.value) {
			c.hint = fmt.Sprintf("unusual: %g to %g is", field.Min, field.Max)
		}
		c.do = func(now time.Time) (colony.Record, error) {
			return o.corrected(field.Path, v.value, now)
		}
		out = append(out, c)
	}
	if q := o.questionOf(field.Path); q != nil && q.alt != "" {
		alt := showValue(q.path, q.alt)
		slices.SortStableFunc(out, func(a, b choice) int { return btoi(b.show == alt) - btoi(a.show == alt) })
	}
	return out
}

// barChoices offer to move the leaf's thing, or all of its bar.
func barChoices(o *opened, field colony.Field, typed string) []choice {
	from, _, ok := splitBar(field.Path)
	if !ok {
		return nil
	}
	to, named := barTyped(typed)
	if to == 0 || to == from || !named && (field.Kind == colony.Int || field.Kind == colony.Number || field.Kind == colony.Day) {
		return nil
	}
	hint := ""
	if o.ins.Bar(to) != nil {
		hint = fmt.Sprintf("bar %d holds something: both are kept, this wins", to)
	}
	whole := choice{show: fmt.Sprintf("all of bar %d is bar %d", from, to), hint: hint,
		do: func(now time.Time) (colony.Record, error) { return moveBar(o.rec, from, to, now) }}
	item := itemOf(field.Path)
	_, rest, _ := splitBar(item)
	if rest == "" {
		return []choice{whole}
	}
	return []choice{{show: fmt.Sprintf("%s is on bar %d", words(rest), to),
		do: func(now time.Time) (colony.Record, error) { return moveItem(o.rec, item, to, now) }}, whole}
}

// barTyped reads 5, b5, bar 5 or bar five; named tells whether "bar" was said.
func barTyped(typed string) (bar int, named bool) {
	text := strings.ToLower(typed)
	for _, word := range []string{"bar ", "bar", "b"} {
		if after, ok := strings.CutPrefix(text, word); ok {
			text, named = after, true
			break
		}
	}
	n, ok := numberTyped(text)
	if !ok || n < 1 || n > 60 || n != float64(int(n)) {
		return 0, named
	}
	return int(n), named
}

// itemDetails are the fields of a listed thing that a word or a number can
// fill without naming the field.
var itemDetails = map[string][]string{
	"contents":    {"pattern", "side", "amount", "place", "cover"},
	"queen_cells": {"kind", "count"},
	"signs":       {"count"},
	"actions":     {"count", "direction", "unit"},
	"plans":       {"count", "direction", "unit"},
}

// detailChoices offer what can be said of the thing: spotty, both sides, half.
func detailChoices(o *opened, path, typed string) []choice {
	if !isItem(path) {
		return nil
	}
	list := listOf(path)
	var out []choice
	for _, name := range itemDetails[list] {
		field, err := colony.FieldOf(join(path, name))
		if err != nil {
			continue
		}
		if field.Kind == colony.Int && !isDigit(typed[0]) || field.Kind == colony.Number && !isShare(typed) {
			continue
		}
		for _, v := range valuesFor(field, typed, &o.ins, time.Time{}) {
			out = append(out, choice{show: plainWord(name) + " " + showValue(field.Path, v.value), hint: v.hint,
				do: func(now time.Time) (colony.Record, error) {
					return o.corrected(field.Path, v.value, now)
				}})
		}
	}
	return out
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }

// isShare reports whether the text is a share and not a bare number, which
// would be a bar.
func isShare(typed string) bool {
	_, word := shareWords[strings.ToLower(typed)]
	return word || strings.ContainsAny(typed, "%/.")
}

// listOf names the keyed list that an item is of; for what a bar holds it is
// contents.
func listOf(item string) string {
	list, _, _ := strings.Cut(item, ".")
	if list != "bars" {
		return list
	}
	if strings.HasSuffix(parent(item), ".queen_cells") {
		return "queen_cells"
	}
	return "contents"
}

// kindChoices offer to make the thing another of its list: honey, not nectar.
func kindChoices(o *opened, path, typed string) []choice {
	if !isItem(path) {
		return nil
	}
	up := parent(path)
	var out []choice
	for _, key := range colony.Keys(listOf(path)) {
		to := join(up, key)
		if to == path || !startsLike(plainWord(key), typed) && !anyStarts(strings.Fields(kindWords[key]), typed) {
			continue
		}
		out = append(out, choice{show: plainWord(key), hint: "not " + itemName(path), said: plainWord(key),
			do: func(now time.Time) (colony.Record, error) { return moveUnder(o.rec, path, to, now) }})
	}
	starts := func(c choice) int { return btoi(strings.HasPrefix(c.show, strings.ToLower(typed))) }
	slices.SortStableFunc(out, func(a, b choice) int { return starts(b) - starts(a) })
	return out
}

func join(up, name string) string {
	if up == "" {
		return name
	}
	return up + "." + name
}

// offered is a value that fits what was typed.
type offered struct{ value, hint string }

// valuesFor lists the values of the field that the typed text can mean; all of
// them, where they can be listed, for no text.
func valuesFor(field colony.Field, typed string, ins *colony.Inspection, now time.Time) []offered {
	last := field.Path[strings.LastIndexByte(field.Path, '.')+1:]
	switch field.Kind {
	case colony.Bool, colony.Word:
		return wordsFor(last, field.Values, typed)
	case colony.Int, colony.Number:
		if out := wordsFor(last, nil, typed); len(out) > 0 && typed != "" {
			return out
		}
		if n, ok := numberTyped(typed); ok && (field.Kind == colony.Number || n == float64(int(n))) {
			return []offered{{strconv.FormatFloat(n, 'f', -1, 64), ""}}
		}
		if typed == "" {
			return wordsFor(last, nil, typed)
		}
	case colony.Day:
		if d, ok := dayTyped(typed, ins.At, now); ok {
			return []offered{{d.String(), ""}}
		}
	case colony.Time:
		if t, ok := timeTyped(typed, ins.At, now); ok {
			return []offered{{t.Format(time.RFC3339), ""}}
		}
	case colony.Text:
		if typed != "" {
			return []offered{{textTyped(last, typed), ""}}
		}
	}
	return nil
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}
