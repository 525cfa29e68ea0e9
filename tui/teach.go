package tui

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
)

// slip is a mishearing that was corrected: what was heard and what was meant.
type slip struct{ heard, said string }

// slipMsg is a slip with how often it was corrected on all evenings.
type slipMsg struct {
	slip
	times int
}

// noteSlip counts a correction of words that may be worth remembering: of a few
// words, to others.
func (a *app) noteSlip(heard, said string) tea.Cmd {
	s := slip{strings.ToLower(strings.TrimSpace(heard)), strings.ToLower(strings.TrimSpace(said))}
	const few = 3
	teacher := a.desk.opts.Teacher
	if teacher == nil || s.heard == "" || s.said == "" || s.heard == s.said || len(strings.Fields(s.heard)) > few || len(strings.Fields(s.said)) > few {
		return nil
	}
	a.slip = s
	return a.queue.add(job{what: "count the mishearing", looked: true, run: func() (tea.Msg, error) {
		times, err := teacher.Slip(s.heard, s.said)
		return slipMsg{s, times}, err
	}})
}

// offerSlip offers to remember a correction.
func (a *app) offerSlip(m slipMsg) {
	times := ""
	if m.times > 1 {
		times = fmt.Sprintf("%d times now ", m.times)
	}
	a.say("%s“%s” was “%s”: %s remembers it", times, m.heard, m.said, a.keys.Teach.Help().Key)
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
	if last := a.slip; last != (slip{}) { // it is offered once
		a.slip = slip{}
		return a.preview(last.heard, last.said)
	}
	words := s.chosen()
	heard := strings.ToLower(s.quote(words[:min(len(words), 1)]))
	if heard == "" {
		a.say("choose a value that has words behind it")
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
	l := a.startLine(fmt.Sprintf("“%s” is “%s” from now on, y or n", clean(m.heard), clean(m.said)), "y")
	l.head = plural(len(m.effects), "waiting value changes", "waiting values change")
	for _, e := range m.effects[:min(len(m.effects), mostChoices)] {
		l.choices = append(l.choices, choice{show: e.where(), hint: e.what()})
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

// where names the leaf that would change.
func (e *Effect) where() string {
	return fmt.Sprintf("%s, %s: %s", hiveName(e.Hive), showDay(e.On), fullName(e.Path))
}

// what tells what it would become.
func (e *Effect) what() string {
	return showValue(e.Path, orNothing(e.Will)) + ", was " + showValue(e.Path, orNothing(e.Was))
}

// teach remembers the alias, reads the waiting notes that have the words again,
// and loads the sheet anew.
func (a *app) teach(heard, said string) tea.Cmd {
	id, notes := a.sheet.rec.ID, a.list.notes()
	a.opening = true
	return a.queue.add(job{what: "remember the word", run: func() (tea.Msg, error) {
		if err := a.desk.teach(heard, said, notes); err != nil {
			return nil, err
		}
		again, err := a.desk.open(id)
		return rereadMsg{opened: again, text: "remembered: “" + heard + "” is “" + said + "”"}, err
	}})
}

// teach remembers the alias and reads what waits again, where the words occur.
func (d *desk) teach(heard, said string, notes []string) error {
	if err := d.opts.Teacher.Teach(heard, said); err != nil {
		return err
	}
	_, err := d.readAgain([]string{heard}, notes)
	return err
}

// meet makes the hives of inspections that were confirmed known, and reads what
// waits again where one of them is named that was not.
func (a *app) meet(hives ...string) tea.Cmd {
	hives = slices.DeleteFunc(hives, func(hive string) bool { return a.met[hive] })
	if a.desk.opts.Teacher == nil || len(hives) == 0 {
		return nil
	}
	for _, hive := range hives {
		a.met[hive] = true // asked for once in an evening
	}
	notes := a.list.notes()
	return a.queue.add(job{what: "remember the hive", looked: true, run: func() (tea.Msg, error) {
		news, again, err := a.desk.meet(hives, notes)
		return metMsg{news, again}, err
	}})
}

// metMsg tells which hives are known from now on, and how many notes that wait
// were read again for it.
type metMsg struct {
	news  []string
	again int
}

// showMet says what was read again, and loads the list anew.
func (a *app) showMet(m metMsg) tea.Cmd {
	if m.again == 0 {
		return nil
	}
	a.say("%s", knownNow(m.news, m.again))
	return a.loadWaiting()
}

// knownNow says that hives are known, and how many notes were read again for it.
func knownNow(hives []string, again int) string {
	names := make([]string, len(hives))
	for i, hive := range hives {
		names[i] = clean(hive)
	}
	return fmt.Sprintf("known from now on: %s; %s again", strings.Join(names, ", "), plural(again, "note that waits is read", "notes that wait are read"))
}

// meet tells the teacher of hives that were confirmed, and returns those that are
// news and how many notes were read again.
func (d *desk) meet(hives, notes []string) (news []string, again int, err error) {
	if news, err = d.opts.Teacher.Meet(hives); err != nil || len(news) == 0 {
		return nil, 0, err
	}
	again, err = d.readAgain(news, notes)
	return news, again, err
}

// readAgain reads those of the notes that wait once more where some words occur,
// and returns how many there are. The notes are told by their hashes; nil are all
// for which the keeper has to be asked.
func (d *desk) readAgain(words, notes []string) (n int, err error) {
	if notes == nil {
		waiting, err := d.keeper.Waiting()
		if err != nil {
			return 0, err
		}
		var l list
		l.load(waiting)
		notes = l.notes()
	}
	for _, hash := range notes {
		note, err := d.keeper.Note(hash)
		if err != nil {
			return n, err
		}
		text := strings.ToLower(note.Text)
		if !slices.ContainsFunc(words, func(w string) bool { return strings.Contains(text, strings.ToLower(w)) }) {
			continue
		}
		if err := d.keeper.EditAndSave(hash, note.Text, d.reader.Parse(&note), nil, nil); err != nil {
			return n, err
		}
		n++
	}
	return n, nil
}
