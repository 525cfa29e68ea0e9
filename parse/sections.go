package parse

import "strings"

// Sections of a write-up: a heading on a line of its own, "Brood", "Done", and below it
// sentences that do without what it names. Boxes to tick say the same of one line.

// under tells what a heading or a box makes of the deeds below or behind it.
type under uint8

const (
	noHeading under = iota
	wereDone        // they were done today, as found in no other mood
	areToDo         // they are still to be done
)

// underOf are those that a column of the rule files can be.
var underOf = map[string]under{"": noHeading, "done": wereDone, "to do": areToDo}

// sections gives the sentences below a heading the word that they do without: "Brood" and
// below it "Eggs on 4. Sealed on 6" is "Eggs on 4. Brood: sealed on 6". The heading's own
// row goes.
func (r *reader) sections() {
	var in *heading // the section in hand
	var above pause // before its heading, which goes
	var toks []token
	var rows []row
	for i := range r.rows {
		of := r.rows[i]
		if of.first == blank || in != nil && r.endsSection(of) {
			in = nil
		}
		if h := r.sectionHead(i); h != nil {
			if rows == nil {
				rows, toks = append(make([]row, 0, len(r.rows)), r.rows[:i]...), append(make([]token, 0, 2*len(r.toks)), r.toks[:of.from]...)
			}
			in, above = h, of.first
			continue
		}
		first := above > none
		if first {
			of.first, r.toks[of.from].pause, above = above, above, none
		}
		if rows == nil {
			continue
		}
		from := len(toks)
		if in != nil && in.under == noHeading {
			toks = r.underLabel(toks, r.toks[of.from:of.to], in, first)
		} else {
			toks = append(toks, r.toks[of.from:of.to]...)
		}
		if in != nil && of.under == noHeading {
			of.under = in.under
		}
		of.from, of.to = from, len(toks)
		rows = append(rows, of)
	}
	if rows != nil {
		r.toks, r.rows = toks, rows
	}
}

// leastHeading is the number of letters of the shortest heading of a section: shorter ones
// head columns alone.
const leastHeading = 4

// sectionHead is what row i heads, if it is the heading of a section and no more.
func (r *reader) sectionHead(i int) *heading {
	if i+1 == len(r.rows) || r.rows[i+1].first != line || !r.toks[r.rows[i].from].has(capital) || !r.aloneOnLine(r.rows[i]) || r.aloneOnLine(r.rows[i+1]) {
		return nil
	}
	text := r.rowText(r.rows[i])
	for _, col := range r.columns.byHead[text] {
		if col.Beside == "" && (col.Under != "" || strings.HasSuffix(col.Say, ": *") && col.Key == "") && len(text) >= leastHeading {
			h := r.headingOf(text, nil)
			return &h
		}
	}
	return nil
}

// aloneOnLine reports whether a row is the heading of a column or section, and no more.
func (r *reader) aloneOnLine(of row) bool {
	first, last := &r.toks[of.from], &r.toks[of.to-1]
	if of.to-of.from > 3 || of.first < line || first.end == first.start || last.has(asked) {
		return false
	}
	for _, t := range r.toks[of.from+1 : of.to] {
		if t.pause > none {
			return false
		}
	}
	rest, _, _ := strings.Cut(r.text[last.end:], "\n")
	return strings.Trim(rest, ": \r") == "" && r.columns.byHead[r.rowText(of)] != nil
}

// rowText is what a row says, in lower case.
func (r *reader) rowText(of row) string {
	return r.strings.lower(r.text[r.toks[of.from].start:r.toks[of.to-1].end])
}

// endsSection reports whether a row leads away from the section in hand: a heading, a hive.
func (r *reader) endsSection(of row) bool {
	return r.aloneOnLine(of) || r.lex.matcher.longest(r.toks[of.from:of.to], 0, nil).kinds.has(kHive) || r.names[strings.TrimSuffix(r.rowText(of), ":")]
}

// ownSubjects are the kinds of words with which a sentence tells by itself what it is of.
var ownSubjects = setOf(kContent, kCell, kQueen, kSign, kFixture, kMite, kMethod, kStores, kLeaf, kHive, kSubstance, kForage, kSame, kPron)

// saidAgain are the kinds of headings that sentences further down do without as well.
var saidAgain = setOf(kContent, kCell, kFixture, kStores)

// underLabel appends the tokens of a row to out, with the heading in front of each sentence
// that names nothing itself.
func (r *reader) underLabel(out, row []token, h *heading, first bool) []token {
	says := r.lex.matcher.longest(h.say.before, 0, nil).kinds
	again, ofQueen := says.meet(saidAgain), says.has(kQueen)
	for from := 0; from < len(row); {
		end := from + 1
		for end < len(row) && row[end].pause < stop {
			end++
		}
		if (from == 0 && first || again) && r.lacksSubject(row[from:end]) && (!ofQueen || r.tellsSeen(row[from:end])) {
			at := len(out)
			out = appendAt(out, h.say.before, int(row[from].start))
			out[at].pause = row[from].pause
			out[at].flags |= row[from].flags & bullet
			out[len(out)-1].flags |= coloned
			row[from].pause = colon
			row[from].flags &^= bullet
		}
		out = append(out, row[from:end]...)
		from = end
	}
	return out
}

// tellsSeen reports whether a sentence tells that something was found or not, or where.
func (r *reader) tellsSeen(sentence []token) bool {
	for i := range sentence {
		if r.lex.matcher.longest(sentence, i, nil).kinds.meet(seeing) {
			return true
		}
	}
	return false
}

// seeing are the kinds of words that tell whether the queen was seen.
var seeing = setOf(kSeen, kUnseen, kNot, kNo, kUndone, kOn)

// lacksSubject reports whether a sentence names nothing that it could be of, and is no
// label with its value either.
func (r *reader) lacksSubject(sentence []token) bool {
	for i := range sentence {
		if sentence[i].has(coloned|asked) || r.lex.matcher.longest(sentence, i, nil).kinds.meet(ownSubjects) {
			return false
		}
	}
	return true
}

// boxed is what the box at the head of a line says, and how many bytes of the line it
// takes: "[ ]" and "☐" before what is to be done, "[x]" before what was.
func boxed(text string) (under, int) {
	if c := text[0]; lowered[c] != 0 || isDigit(c) {
		return noHeading, 0 // as most lines begin
	}
	head := len(text) - len(strings.TrimLeft(text, " \t-*•"))
	for _, b := range boxes {
		if rest, ok := strings.CutPrefix(text[head:], b.drawn); ok && strings.HasPrefix(rest, " ") && strings.TrimSpace(rest) != "" {
			return b.says, head + len(b.drawn)
		}
	}
	return noHeading, 0
}

// boxes are as people draw them.
var boxes = []struct {
	drawn string
	says  under
}{{"[ ]", areToDo}, {"[]", areToDo}, {"[_]", areToDo}, {"☐", areToDo}, {"□", areToDo}, {"[x]", wereDone}, {"[X]", wereDone}, {"[✓]", wereDone}, {"[✔]", wereDone}, {"[*]", wereDone}}
