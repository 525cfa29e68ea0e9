package parse

import (
	"strings"
	"testing"

	"barwise/colony"
)

// TestTidy holds that a note reads as its tidy form does, and that its evidence and
// remarks are still its own words.
func TestTidy(t *testing.T) {
	p := sharedParser()
	for _, c := range []struct{ untidy, plain string }{
		{"Hive  Plum  tree.  Not  only  eggs  but  larvae  on  bar  four.", "Hive Plum tree. Not only eggs but larvae on bar four."},
		{"hive 3\r\nbar 4 eggs\r\n\r\nqueen seen\r\n", "hive 3\nbar 4 eggs\n\nqueen seen\n"},
		{"hive 3\rbar 4 eggs\rbar 5 honey", "hive 3\nbar 4 eggs\nbar 5 honey"},
		{"She\u2019s on bar 4, last year\u2019s honey on bar 2, and \u201cBess\u201d barked.", "She's on bar 4, last year's honey on bar 2, and \"Bess\" barked."},
		{"bar\u00a04 eggs,\u2009\u2009bar\u202f5 larvae\u3000\u3000bar 6 half\u2011drawn", "bar 4 eggs, bar 5 larvae bar 6 half-drawn"},
		{"\ufeffbar fo\u200bur e\u00adggs \u2714\ufe0f", "bar four eggs \u2714"},
		{"  bar 4:  eggs\n    bar 5:  honey   \n", "  bar 4: eggs\n    bar 5: honey \n"},
		{"bar   brood      stores\n2     eggs       honey\n\nQueen  cells:  two  cups.", "bar   brood      stores\n2     eggs       honey\n\nQueen cells: two cups."},
		{"**Bar 4** eggs, **bars 5, 6**: honey. **Temper:** calm\n- **Bar 7** pollen **", "Bar 4 eggs, bars 5, 6: honey. Temper: calm\n- Bar 7 pollen **"},
		{"HIVE  B\nbar  4  eggs\n", "HIVE B\nbar 4 eggs\n"},
		{"\xff  bar four\x80  eggs", "\xff bar four\x80 eggs"},
	} {
		r := newReader(p.lexicon)
		note := r.tidy(c.untidy)
		if note.text != c.plain {
			t.Errorf("%q is tidied to %q, not %q", c.untidy, note.text, c.plain)
		}
		if tidy := r.tidy(c.plain); tidy.shifts != nil {
			t.Errorf("%q is said to be untidy", c.plain)
		}
		for at := range note.text {
			if back := note.inText(note.inNote(at)); back != at {
				t.Errorf("%q: byte %d of the tidied text comes back as %d", c.untidy, at, back)
			}
		}
		checkReading(t, p, c.untidy)
		want := p.Parse(&colony.Note{Text: c.plain, Given: may14})
		got := p.Parse(&colony.Note{Text: c.untidy, Given: may14})
		if a, b := wordsOf(want, c.plain), wordsOf(got, c.untidy); a != b {
			t.Errorf("%q is read as\n%s, and untidy as\n%s", c.plain, a, b)
		}
	}
}

// wordsOf are the leaves with the words that they rest on, and the remarks, all made tidy.
func wordsOf(all []colony.Inspection, text string) string {
	var b strings.Builder
	for i := range all {
		for _, l := range colony.Leaves(&all[i]) {
			b.WriteString(l.Path + "=" + l.Value + "\n")
		}
		for _, g := range all[i].Evidence {
			b.WriteString(g.Path)
			for _, s := range g.Spans {
				b.WriteString(" " + text[s[0]:s[1]])
			}
			b.WriteString("\n")
		}
		b.WriteString(strings.Join(all[i].Remarks, "\n"))
	}
	r := newReader(sharedParser().lexicon)
	return r.tidy(b.String()).text
}
