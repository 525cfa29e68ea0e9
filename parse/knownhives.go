package parse

import (
	"maps"
	"slices"
	"strings"
)

// Hives that the keeper has: their names are known before a note is read, and what is weighed is not
// whether a word is a name but whether it is meant as one where it stands.

// knownHives are the names of the keeper's hives, in lower case and without an article. Numbers and letters are
// not among them, "7", "b", "b2": bars are told so too.
type knownHives struct {
	byHead   map[string][]string // by the letters that they begin with; longer ones first
	initials letters
}

// newKnownHives makes ready the names of a keeper's hives.
func newKnownHives(names []string) (known knownHives) {
	for _, name := range names {
		if name = knowable(name); name == "" || known.has(name) {
			continue
		}
		if known.byHead == nil {
			known.byHead = map[string][]string{}
		}
		head := headOf(name)
		known.byHead[head] = append(known.byHead[head], name)
		known.initials |= 1 << (name[0] & 31)
	}
	for _, alike := range known.byHead {
		slices.SortFunc(alike, func(a, b string) int { return len(b) - len(a) })
	}
	return known
}

// with are the known hives and those of more names.
func (k knownHives) with(names []string) knownHives {
	if len(names) == 0 {
		return k
	}
	for _, alike := range k.byHead {
		names = append(names, alike...)
	}
	return newKnownHives(names)
}

// has reports whether a name is one of those.
func (k *knownHives) has(name string) bool { return slices.Contains(k.byHead[headOf(name)], name) }

// headOf are the letters with which a name begins, up to its first space or sign.
func headOf(name string) string {
	if end := strings.IndexFunc(name, func(c rune) bool { return !isLetter(c) }); end >= 0 {
		return name[:end]
	}
	return name
}

// knowable is the name of a hive as it is known; "" for one that is not.
func knowable(name string) string {
	name = strings.TrimPrefix(strings.Join(strings.Fields(strings.ToLower(name)), " "), "the ")
	if len(name) < 2 || name[0] < 'a' || !strings.Contains(name, " ") && strings.ContainsAny(name, "0123456789") {
		return ""
	}
	return name
}

// Knows reports whether a hive's name is among those that the parser was made with, or none that it can be
// made with: a number, a letter.
func (p *Parser) Knows(hive string) bool {
	name := knowable(hive)
	return name == "" || p.lexicon.known.has(name)
}

// seekKnown finds where the page tells of known hives.
func (r *reader) seekKnown(toks []token) {
	clear(r.knownHere)
	if r.hives.byHead == nil {
		return
	}
	var doubtful []int
	inCapitals := false
	for i := 0; i < len(toks); i++ {
		name, end := r.knownAt(toks, i)
		switch {
		case end == 0:
		case !r.meantAsHive(toks, i, end):
			doubtful = append(doubtful, i)
		default:
			if r.knownHere == nil {
				r.knownHere = map[int32]string{}
			}
			r.knownHere[toks[i].start] = name
			inCapitals = inCapitals || toks[i].has(capital) && i > 0 && toks[i].pause == none && !r.manner.shouted
			i = end - 1
		}
	}
	r.byOtherMentions(toks, doubtful, inCapitals)
}

// byOtherMentions settles mentions of known hives by those that are sure: a name that begins a sentence with a
// capital is the hive's if it is one elsewhere, and who writes one name with a capital writes all so: "It takes
// patience, but Mercy is coming on".
func (r *reader) byOtherMentions(toks []token, doubtful []int, inCapitals bool) {
	sure := map[string]bool{}
	for _, name := range r.knownHere {
		sure[name] = true
	}
	for _, i := range doubtful {
		if name, end := r.knownAt(toks, i); sure[name] && toks[i].has(capital) && (i == 0 || toks[i].pause >= stop) && !r.titledRun(toks, i) && !r.isPerson(toks, i, end) && !r.meantAsWord(toks, i, end) {
			r.knownHere[toks[i].start] = name
		}
	}
	if inCapitals {
		maps.DeleteFunc(r.knownHere, func(at int32, _ string) bool { return r.text[at] >= 'a' && r.text[at] <= 'z' })
	}
}

// addKnown adds the known hives of the page to those that the note names.
func (r *reader) addKnown() {
	for _, name := range r.knownHere {
		if r.names[name] {
			continue
		}
		if r.names == nil {
			r.names = map[string]bool{}
		}
		if r.onlyKnown == nil {
			r.onlyKnown = map[string]bool{}
		}
		r.names[name], r.onlyKnown[name] = true, true
	}
	r.initials = initialsOf(r.names)
}

// knownBefore is the name of a known hive that ends right before the word "hive", and of how many items it is:
// "quick jetty hive" tells of the jetty. 0 where there is none.
func (r *reader) knownBefore(before []item) (string, int) {
	if r.hives.byHead == nil {
		return "", 0
	}
	end := before[len(before)-1].end
	for back := min(4, len(before)); back > 0; back-- {
		first := &before[len(before)-back]
		text := r.strings.lower(r.text[r.nameStart(first):end])
		if r.hives.has(text) {
			return text, back
		}
	}
	return "", 0
}

// knownAt is the name of a known hive that stands at token i and the token behind it; 0 where there is none.
func (r *reader) knownAt(toks []token, i int) (string, int) {
	if !r.hives.initials.has(r.text[toks[i].start]) {
		return "", 0
	}
	for _, name := range r.hives.byHead[r.strings.lower(headOf(r.text[toks[i].start:toks[i].end]))] {
		to := int(toks[i].start) + len(name)
		if to > len(r.text) || !strings.EqualFold(r.text[toks[i].start:to], name) {
			continue
		}
		for end := i + 1; end <= len(toks) && int(toks[end-1].end) <= to; end++ {
			if int(toks[end-1].end) == to {
				return name, end
			}
		}
	}
	return "", 0
}
