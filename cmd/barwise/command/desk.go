package command

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"barwise/colony"
	"barwise/index"
	"barwise/parse"
	"barwise/tui"
)

// desk is what the review screen has at hand beside the store: a parser that
// learns, the past, and drafts.
type desk struct {
	store  *index.Store
	parser *parse.Parser
	now    func() time.Time
}

// Parse reads with the words as they are known now.
func (d *desk) Parse(note *colony.Note) []colony.Inspection { return readNote(d.parser, note) }

func (d *desk) past(hive string) ([]colony.Record, error) {
	var out []colony.Record
	for r, err := range d.store.Records(index.Filter{Hive: hive}) {
		if err != nil {
			return nil, err
		}
		out = append(out, r)
	}
	return out, nil
}

// Draft is the unfinished text kept under the name.
func (d *desk) Draft(name string) (text string, err error) {
	_, err = d.store.Setting("draft "+name, &text)
	return text, err
}

// KeepDraft keeps an unfinished text; the empty text removes it.
func (d *desk) KeepDraft(name, text string) error {
	if text == "" {
		return d.store.SetSetting("draft "+name, nil)
	}
	return d.store.SetSetting("draft "+name, text)
}

// Teach remembers that heard stands for said.
func (d *desk) Teach(heard, said string) error {
	own, parser, err := d.with(heard, said)
	if err != nil {
		return err
	}
	if err := d.store.SetOwnWords(own); err != nil {
		return err
	}
	d.parser = parser
	slips, err := d.slips()
	if err != nil {
		return err
	}
	delete(slips, slipOf(heard, said))
	return d.store.SetSetting(slipsSetting, slips)
}

// Meet makes a parser that knows the hives, where one of them is news. Of those that no confirmed
// record is about it knows nothing, and does not say so.
func (d *desk) Meet(hives []string) (news []string, err error) {
	unknown := slices.DeleteFunc(slices.Clone(hives), d.parser.Knows)
	if len(unknown) == 0 {
		return nil, nil
	}
	parser, err := parserFor(d.store)
	if err != nil {
		return nil, err
	}
	d.parser = parser
	return slices.DeleteFunc(unknown, func(hive string) bool { return !d.parser.Knows(hive) }), nil
}

// slipsSetting holds how often which mishearing was corrected.
const slipsSetting = "slips"

func slipOf(heard, said string) string { return heard + " = " + said }

func (d *desk) slips() (map[string]int, error) {
	slips := map[string]int{}
	_, err := d.store.Setting(slipsSetting, &slips)
	return slips, err
}

// Slip counts a mishearing that was corrected.
func (d *desk) Slip(heard, said string) (int, error) {
	slips, err := d.slips()
	if err != nil {
		return 0, err
	}
	slips[slipOf(heard, said)]++
	return slips[slipOf(heard, said)], d.store.SetSetting(slipsSetting, slips)
}

// with is what the keeper's own words, and a parser, would be with one alias
// more.
func (d *desk) with(heard, said string) (colony.OwnWords, *parse.Parser, error) {
	own, err := d.store.OwnWords()
	if err != nil {
		return own, nil, err
	}
	aliases := map[string]string{heard: said}
	for h, s := range own.Aliases {
		if h != heard {
			aliases[h] = s
		}
	}
	own.Aliases = aliases
	known, err := d.store.KnownHives()
	if err != nil {
		return own, nil, err
	}
	parser, err := parse.New(withHives(own, known))
	if err != nil {
		return own, nil, fmt.Errorf("%q cannot be remembered for %q: %w", clean(said), clean(heard), err)
	}
	return own, parser, nil
}

// Preview lists the leaves of waiting notes that the alias would change. It
// parses a note twice, as it is read now and as it would be, so that changes
// of the rules since it was taken in do not show.
func (d *desk) Preview(heard, said string) ([]tui.Effect, error) {
	_, parser, err := d.with(heard, said)
	if err != nil {
		return nil, err
	}
	waiting, err := d.store.Waiting()
	if err != nil {
		return nil, err
	}
	var out []tui.Effect
	seen := map[string]bool{}
	for _, r := range waiting {
		if seen[r.NoteHash] {
			continue
		}
		seen[r.NoteHash] = true
		note, err := d.store.Note(r.NoteHash)
		if err != nil {
			return nil, err
		}
		out = append(out, differences(readNote(d.parser, &note), readNote(parser, &note))...)
	}
	return out, nil
}

// differences lists the leaves that two readings of a note do not share.
func differences(was, will []colony.Inspection) []tui.Effect {
	var out []tui.Effect
	for i := range max(len(was), len(will)) {
		before, after := nth(was, i), nth(will, i)
		of := after
		if i >= len(will) {
			of = before
		}
		for _, leaf := range colony.Leaves(before) {
			if now, _ := colony.Get(after, leaf.Path); now != leaf.Value {
				out = append(out, tui.Effect{Hive: of.Hive, On: colony.DateOf(of.At), Path: leaf.Path, Was: leaf.Value, Will: now})
			}
		}
		for _, leaf := range colony.Leaves(after) {
			if _, there := colony.Get(before, leaf.Path); !there {
				out = append(out, tui.Effect{Hive: of.Hive, On: colony.DateOf(of.At), Path: leaf.Path, Will: leaf.Value})
			}
		}
	}
	return out
}

// nth is the inspection of that number, an empty one beyond the last.
func nth(read []colony.Inspection, i int) *colony.Inspection {
	if i >= len(read) {
		return &colony.Inspection{}
	}
	return &read[i]
}

// mostFound is how many hits the review lists.
const mostFound = 200

// find asks the history as the command find does.
func (d *desk) find(words string) (tui.Answer, error) {
	hives, err := d.store.Hives()
	if err != nil {
		return tui.Answer{}, err
	}
	today := colony.DateOf(d.now())
	q := understand(words, d.parser, hives, today)
	q.narrow("", period{}, mostFound)
	r, err := q.reply(d.store, today)
	out := tui.Answer{Understood: q.String(), Line: r.line, All: r.all}
	for _, h := range r.hits.Hits {
		out.Hits = append(out.Hits, tui.Found{ID: h.ID, Hive: h.Hive, On: h.Day, Bar: h.Bar, Quote: quoteOf(h)})
	}
	return out, err
}

// quoteOf joins the words that made the hit, each from shortly before the first
// of them on: a line of the review has room for little more.
func quoteOf(h index.Hit) string {
	const before = 16 // bytes
	var texts []string
	for _, q := range h.Quotes {
		text := q.Text
		if len(q.Marks) > 0 && q.Marks[0][0] > before && q.Marks[0][0] <= len(text) {
			from := q.Marks[0][0] - before
			if space := strings.IndexByte(text[from:q.Marks[0][0]], ' '); space >= 0 {
				text = "… " + text[from+space+1:]
			}
		}
		texts = append(texts, text)
	}
	return strings.Join(texts, " … ")
}
