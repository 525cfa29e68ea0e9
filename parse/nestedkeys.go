package parse

import "strings"

// Keys below a key, as files of settings have them: "queen:" and below it, set in, "seen: yes" and
// "bar: 6" are "queen seen: yes" and "queen bar: 6", where a form has such labels.

// respelling is what is read for some bytes of a note.
type respelling struct {
	at, size int
	by       string
}

// nestedKeys are the respellings of keys that stand below others, or are joined to them: "queen.seen".
func (l *lexicon) nestedKeys(note string) (out []respelling) {
	if strings.IndexByte(note, ':') < 0 {
		return nil
	}
	above, from, size := "", 0, 0 // the key in hand, and its line, which goes
	eachLine(note, func(at, to int) {
		line := note[at:to]
		in := len(line) - len(strings.TrimLeft(line, " \t-"))
		key, value, keyed := strings.Cut(strings.TrimRight(line[in:], " \r"), ":")
		switch {
		case in > 0 && above != "" && keyed && value != "" && l.nests(above, key):
			if size > 0 {
				out = append(out, respelling{from, size, ""})
				size = 0
			}
			out = append(out, respelling{at, in, above + " "})
		case in == 0 && value == "" && key != "" && len(key) <= l.columns.longest:
			if above, from, size = strings.ToLower(key), at, to+1-at; above == "mites" {
				above = "mite" // as labels have it
			}
		case in == 0:
			above = ""
			if k := strings.IndexAny(key, "._"); keyed && value != "" && k > 0 && l.hasColumn(key[:k]+" "+key[k+1:]) {
				out = append(out, respelling{at + k, 1, " "})
			}
		default:
			size = 0 // what else is below it needs its line
		}
	})
	return out
}

// nests reports whether a key below another is a label with it: "queen", "mark"; "brood", "bars".
func (l *lexicon) nests(above, key string) bool {
	key = strings.ToLower(strings.TrimSpace(key))
	return l.hasColumn(above+" "+key) || (key == "bars" || key == "bar") && l.hasColumn(above)
}

// hasColumn reports whether a form has a label.
func (l *lexicon) hasColumn(label string) bool {
	cols, _ := l.columns.find(strings.ToLower(label))
	return cols != nil
}
