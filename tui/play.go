package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"barwise/colony"
)

// tempos are how fast words are played: as they were said, then slower with
// every press.
var tempos = [...]float64{1, 0.7, 0.5}

// play plays the seconds of the recording that the selected words took, at the
// given one of the tempos or the slowest.
func (a *app) play(pace int) tea.Cmd {
	s := a.sheet
	s.pace = min(pace, len(tempos)-1)
	from, to, ok := s.seconds(s.chosen())
	if !ok {
		a.say("choose a value with words behind it: those are played")
		return nil
	}
	player, recording, tempo := a.desk.opts.Player, *s.note.Recording, tempos[s.pace]
	a.say("playing “%s”%s", s.quote(s.chosen()), [...]string{"", ", slower", ", slower still"}[s.pace])
	return func() tea.Msg {
		if err := player.Play(recording, from, to, tempo); err != nil {
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

// seconds is where the words are in the recording.
func (o *opened) seconds(spans []colony.Span) (from, to float64, ok bool) {
	for _, w := range o.note.Words {
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
