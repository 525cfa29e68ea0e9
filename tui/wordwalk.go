package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"barwise/colony"
)

// wordWalk is the cursor on the words of the note: from the word at from to
// the one at to, both included, either way round.
type wordWalk struct {
	from, to int
	leaf     int // which of the leaves Enter went to last; -1 for none yet
}

func (w *wordWalk) span(p *page) colony.Span {
	if len(p.words) == 0 {
		return colony.Span{}
	}
	a, b := min(w.from, w.to), max(w.from, w.to)
	return colony.Span{p.words[min(a, len(p.words)-1)][0], p.words[min(b, len(p.words)-1)][1]}
}

// startWords puts the cursor on the words of the selected leaf.
func (a *app) startWords() {
	s := a.sheet
	p := s.pageOf(a.leftWidth())
	at := 0
	if spans := s.evidence(); len(spans) > 0 {
		at = p.wordAt(spans[0][0])
	}
	s.words, a.hive = &wordWalk{from: at, to: at, leaf: -1}, false
}

func (a *app) pressWords(msg tea.KeyMsg) tea.Cmd {
	s, k := a.sheet, a.keys
	p := s.pageOf(a.leftWidth())
	w := s.words
	to := func(word int) {
		word = max(min(word, len(p.words)-1), 0)
		w.from, w.to, w.leaf = word, word, -1
	}
	switch {
	case key.Matches(msg, k.Back), key.Matches(msg, k.Words):
		s.words = nil
	case key.Matches(msg, k.WordLeft):
		to(w.to - 1)
	case key.Matches(msg, k.WordRight):
		to(w.to + 1)
	case key.Matches(msg, k.Up):
		to(p.wordBeside(w.to, -1))
	case key.Matches(msg, k.Down):
		to(p.wordBeside(w.to, +1))
	case key.Matches(msg, k.First):
		to(0)
	case key.Matches(msg, k.Last):
		to(len(p.words) - 1)
	case key.Matches(msg, k.Grow):
		w.to = min(w.to+1, len(p.words)-1)
	case key.Matches(msg, k.Shrink):
		w.to = max(w.to-1, 0)
	case key.Matches(msg, k.Play):
		return a.play(0)
	case key.Matches(msg, k.Slower):
		return a.play(s.pace + 1)
	case key.Matches(msg, k.ToLeaf):
		a.toLeaf(p)
	case key.Matches(msg, k.FromWords):
		span := w.span(p)
		text := clean(s.note.Text[span[0]:span[1]])
		s.words = nil
		a.startAdd(text, &span)
	}
	return nil
}

// toLeaf selects what the words became; more of them with every press.
func (a *app) toLeaf(p *page) {
	s := a.sheet
	leaves := s.leavesAt(s.words.span(p))
	if len(leaves) == 0 {
		a.say("no rule used these words; %s makes a leaf of them", a.keys.FromWords.Help().Key)
		return
	}
	s.words.leaf = (s.words.leaf + 1) % len(leaves)
	s.goToPath(leaves[s.words.leaf].Path)
}

// wordBeside is the word a line above or below, as near as can be.
func (p *page) wordBeside(word, way int) int {
	if len(p.words) == 0 {
		return 0
	}
	here := p.words[word][0]
	line := p.lineOf(here)
	target := line + way
	for target >= 0 && target < len(p.lines) && len(p.lines[target]) == 0 {
		target += way
	}
	if target < 0 || target >= len(p.lines) {
		return word
	}
	column := here - p.lines[line][0].span[0]
	cells := p.lines[target]
	return p.wordAt(cells[min(column, len(cells)-1)].span[0])
}

// wordDetails tells what the words under the cursor became.
func (a *app) wordDetails() []string {
	s := a.sheet
	p := s.pageOf(a.leftWidth())
	span := s.words.span(p)
	leaves := s.leavesAt(span)
	text := "no rule used these words"
	if len(leaves) > 0 {
		var parts []string
		for _, l := range leaves {
			parts = append(parts, fullName(l.Path)+" "+showValue(l.Path, l.Value))
		}
		text = "became: " + strings.Join(parts, " · ")
	}
	quote := "“" + s.quote([]colony.Span{span}) + "”"
	return []string{a.rule("Words"), ansi.Truncate(a.theme.bold.paint(quote)+" "+text, a.width, "…")}
}
