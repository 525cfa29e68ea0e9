package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
)

// startTeach asks what the words behind the leaf were meant to be.
func (a *app) startTeach() {
	s := a.sheet
	heard := strings.ToLower(s.quote(s.evidence()))
	if heard == "" {
		a.say("choose a leaf that has words behind it, or walk the words with %s", a.keys.Words.Help().Key)
		return
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
}

// preview asks what else the alias would change.
func (a *app) preview(heard, said string) tea.Cmd {
	teacher := a.desk.opts.Teacher
	return a.queue.add(job{"look what else it would change", func() (tea.Msg, error) {
		effects, err := teacher.Preview(heard, said)
		return effectsMsg{heard, said, effects}, err
	}})
}

// showEffects shows what would change in waiting notes, and asks.
func (a *app) showEffects(m effectsMsg) {
	l := a.startLine(fmt.Sprintf("“%s” is “%s” from now on: %s. y or n", clean(m.heard), clean(m.said),
		plural(len(m.effects), "waiting value changes", "waiting values change")), "")
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

func (a *app) teach(heard, said string) tea.Cmd {
	teacher := a.desk.opts.Teacher
	return tea.Batch(a.queue.add(job{"remember the word", func() (tea.Msg, error) {
		return savedMsg{"remembered: " + heard + " is " + said}, teacher.Teach(heard, said)
	}}), a.loadWaiting())
}

// play plays the seconds of the recording that the selected words took.
func (a *app) play(speed float64) tea.Cmd {
	s := a.sheet
	from, to, ok := s.seconds()
	if !ok {
		a.say("these words have no place in the recording")
		return nil
	}
	player, recording := a.desk.opts.Player, *s.note.Recording
	return func() tea.Msg {
		if err := player.Play(recording, from, to, speed); err != nil {
			return playMsg{err}
		}
		return nil
	}
}

// playMsg says that playing failed.
type playMsg struct{ err error }

// Around the words that are played, in seconds: whole words are easier to
// make out. A rule of thumb: common practice, no source.
const playMargin = 0.6

// seconds is where the selected words are in the recording.
func (s *sheet) seconds() (from, to float64, ok bool) {
	spans := s.evidence()
	for _, w := range s.note.Words {
		if !overlaps(spans, w.Span) {
			continue
		}
		if !ok {
			from = w.From
		}
		to, ok = max(to, w.To), true
	}
	return max(from-playMargin, 0), to + playMargin, ok
}

// pass takes the messages that are not of the queue.
func (a *app) pass(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case playMsg:
		a.fail("could not play: %v", msg.err)
	}
	return nil
}
