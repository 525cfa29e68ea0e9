package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
)

// slips are the mishearings that were corrected since the review began: what
// was heard and what was meant, and how often.
type slips struct {
	count       map[[2]string]int
	heard, said string // the last one
}

// note counts a correction of words. It returns what to say of it, "" where
// it is nothing to remember: more than a few words, or the same ones.
func (s *slips) note(heard, said, key string) string {
	heard, said = strings.ToLower(strings.TrimSpace(heard)), strings.ToLower(strings.TrimSpace(said))
	const few = 3
	if heard == "" || said == "" || heard == said || len(strings.Fields(heard)) > few || len(strings.Fields(said)) > few {
		return ""
	}
	if s.count == nil {
		s.count = map[[2]string]int{}
	}
	s.heard, s.said = heard, said
	s.count[[2]string{heard, said}]++
	if n := s.count[[2]string{heard, said}]; n > 1 {
		return fmt.Sprintf("%d times now “%s” was “%s”: %s remembers it", n, heard, said, key)
	}
	return fmt.Sprintf("“%s” was “%s”: %s remembers it", heard, said, key)
}

// noteSlip offers to remember the correction, where there is one to teach.
func (a *app) noteSlip(heard, said string) {
	if offer := a.slips.note(heard, said, a.keys.Teach.Help().Key); offer != "" && a.desk.opts.Teacher != nil {
		a.say("%s", offer)
	}
}

// last is the last mishearing that was corrected; it is given once.
func (s *slips) last() (heard, said string) {
	heard, said = s.heard, s.said
	s.heard, s.said = "", ""
	return heard, said
}

// replaced is the one stretch of words that an edit replaced, in both texts.
func replaced(old, edited string) (heard, said string) {
	a, b := wordSpans(old), wordSpans(edited)
	head, tail := 0, 0
	same := func(i, j int) bool { return old[a[i][0]:a[i][1]] == edited[b[j][0]:b[j][1]] }
	for head < min(len(a), len(b)) && same(head, head) {
		head++
	}
	for tail < min(len(a), len(b))-head && same(len(a)-1-tail, len(b)-1-tail) {
		tail++
	}
	if head+tail >= len(a) || head+tail >= len(b) {
		return "", ""
	}
	trim := func(s string) string { return strings.Trim(s, ".,;:!?") }
	return trim(old[a[head][0]:a[len(a)-1-tail][1]]), trim(edited[b[head][0]:b[len(b)-1-tail][1]])
}

// startTeach remembers the mishearing that was corrected last, or asks what the
// words behind the leaf were meant to be.
func (a *app) startTeach() tea.Cmd {
	s := a.sheet
	heard, said := a.slips.last()
	if heard != "" {
		return a.preview(heard, said)
	}
	if heard = strings.ToLower(s.quote(s.evidence())); heard == "" {
		a.say("choose a leaf that has words behind it")
		return nil
	}
	l := a.startLine("heard = said", heard+" = ")
	l.take = func(typed string) tea.Cmd {
		heard, said, ok := strings.Cut(typed, "=")
		heard, said = strings.TrimSpace(heard), strings.TrimSpace(said)
		if !ok || heard == "" || said == "" {
			a.fail("write what was heard = what was said, such as “bear tree = bar three”")
			return nil
		}
		return a.preview(heard, said)
	}
	return nil
}

// preview asks what else the alias would change.
func (a *app) preview(heard, said string) tea.Cmd {
	teacher := a.desk.opts.Teacher
	return a.queue.add(job{what: "look what else it would change", looked: true, run: func() (tea.Msg, error) {
		effects, err := teacher.Preview(heard, said)
		return effectsMsg{heard, said, effects}, err
	}})
}

// showEffects shows what would change in waiting notes, and asks.
func (a *app) showEffects(m effectsMsg) {
	l := a.startLine(fmt.Sprintf("“%s” is “%s” from now on: %s. y or n", clean(m.heard), clean(m.said),
		plural(len(m.effects), "waiting value changes", "waiting values change")), "y")
	for _, e := range m.effects[:min(len(m.effects), mostChoices)] {
		l.choices = append(l.choices, choice{
			show: fmt.Sprintf("%s, %s: %s", hiveName(e.Hive), showDay(e.On), fullName(e.Path)),
			hint: showValue(e.Path, orNothing(e.Will)) + ", was " + showValue(e.Path, orNothing(e.Was))})
	}
	l.empty = "y or n"
	l.take = func(typed string) tea.Cmd {
		if !startsLike("yes", typed) {
			a.say("not remembered")
			return nil
		}
		return a.teach(m.heard, m.said)
	}
}

// teach remembers the alias, reads the waiting notes that have the words again,
// and loads the sheet anew.
func (a *app) teach(heard, said string) tea.Cmd {
	id := a.sheet.rec.ID
	a.opening = true
	return a.queue.add(job{what: "remember the word", run: func() (tea.Msg, error) {
		if err := a.desk.teach(heard, said); err != nil {
			return nil, err
		}
		again, err := a.desk.open(id)
		return rereadMsg{opened: again, text: "remembered: “" + heard + "” is “" + said + "”"}, err
	}})
}

// teach remembers the alias and reads what waits again, where the words occur.
func (d *desk) teach(heard, said string) error {
	if err := d.opts.Teacher.Teach(heard, said); err != nil {
		return err
	}
	waiting, err := d.keeper.Waiting()
	if err != nil {
		return err
	}
	done := map[string]bool{}
	for _, r := range waiting {
		if done[r.NoteHash] {
			continue
		}
		done[r.NoteHash] = true
		note, err := d.keeper.Note(r.NoteHash)
		if err != nil {
			return err
		}
		if !strings.Contains(strings.ToLower(note.Text), strings.ToLower(heard)) {
			continue
		}
		if err := d.keeper.EditAndSave(note.Hash, note.Text, d.reader.Parse(&note), nil, nil); err != nil {
			return err
		}
	}
	return nil
}
