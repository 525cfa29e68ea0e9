package tui

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"barwise/colony"
)

func (a *app) pressSheet(msg tea.KeyMsg) tea.Cmd {
	s, k := a.sheet, a.keys
	if s.words != nil {
		return a.pressWords(msg)
	}
	if !key.Matches(msg, k.Confirm) && !key.Matches(msg, k.ConfirmNow) {
		s.sure = false
	}
	if a.movedOnSheet(msg) {
		return nil
	}
	r, path := s.current()
	switch {
	case key.Matches(msg, k.Yes):
		return a.accept(path)
	case key.Matches(msg, k.Other):
		return a.takeOther(path)
	case key.Matches(msg, k.Confirm) && r.kind == rowEnd, key.Matches(msg, k.ConfirmNow):
		return a.confirm()
	case key.Matches(msg, k.Remove) && path != "":
		if _, there := colony.Get(&s.ins, path); there {
			return a.step(s.removed(path, a.desk.now()))
		}
	case key.Matches(msg, k.Change) && r.kind == rowRemark:
		a.startAdd(clean(r.text), firstOf(s.remarkSpan(r.text)))
	case key.Matches(msg, k.Change) && path != "":
		a.startValue(path, "")
	case key.Matches(msg, k.Add):
		a.startAdd("", nil)
	case key.Matches(msg, k.Find):
		a.startFind()
	case typedText(msg) != "":
		if path == "" {
			a.startAdd(typedText(msg), nil)
		} else {
			a.startValue(path, typedText(msg))
		}
	default:
		return a.pressSheetMore(msg)
	}
	return nil
}

// movedOnSheet handles the keys that select another leaf.
func (a *app) movedOnSheet(msg tea.KeyMsg) bool {
	s, k := a.sheet, a.keys
	r, _ := s.current()
	switch {
	case key.Matches(msg, k.Left):
		s.chip = max(s.chip-1, 0)
	case key.Matches(msg, k.Right):
		s.chip = max(min(s.chip+1, len(r.chips)-1), 0)
	case key.Matches(msg, k.BarBefore):
		s.goToBar(-1)
	case key.Matches(msg, k.BarAfter):
		s.goToBar(+1)
	case moved(&s.row, len(s.rows), max(a.height/3, 1), msg, k):
		s.chip = 0
	default:
		return false
	}
	return true
}

// pressSheetMore handles the keys that lead away from the leaves.
func (a *app) pressSheetMore(msg tea.KeyMsg) tea.Cmd {
	s, k := a.sheet, a.keys
	switch {
	case key.Matches(msg, k.Undo):
		return a.walk(true)
	case key.Matches(msg, k.Redo):
		return a.walk(false)
	case key.Matches(msg, k.Skip):
		return a.skip()
	case key.Matches(msg, k.Edit):
		a.startPage(s.opened)
	case key.Matches(msg, k.Words):
		a.startWords()
	case key.Matches(msg, k.Hive):
		a.hive = !a.hive
	case key.Matches(msg, k.SheetAside):
		cmd := a.step(stand(s.rec, colony.SetAside, a.desk.now()), "")
		a.say("%s is set aside", hiveName(s.ins.Hive))
		return tea.Batch(cmd, a.goOn())
	case key.Matches(msg, k.SheetOlder):
		return a.lookUp(s.ins.Hive, s.rec.ID)
	case key.Matches(msg, k.Teach):
		return a.startTeach()
	case key.Matches(msg, k.Play):
		return a.play(0)
	case key.Matches(msg, k.Slower):
		return a.play(s.pace + 1)
	case key.Matches(msg, k.Back):
		return a.goBack()
	}
	return nil
}

// typedText is what a key types, or "" for a key that is no text. What is
// pasted counts as typed.
func typedText(msg tea.KeyMsg) string {
	if msg.Type != tea.KeyRunes || msg.Alt {
		return ""
	}
	return clean(string(msg.Runes))
}

// accept lets a flagged leaf stand.
func (a *app) accept(path string) tea.Cmd {
	s := a.sheet
	if s.questionOf(path) != nil {
		return a.step(s.accepted(path, a.desk.now()))
	}
	if at := firstQuestion(s.rows, 0); at >= 0 {
		s.row, s.chip = at, 0
		return nil
	}
	s.row, s.chip = len(s.rows)-1, 0
	a.say("nothing is left to check here")
	return nil
}

// takeOther takes the alternative that a question offers.
func (a *app) takeOther(path string) tea.Cmd {
	q := a.sheet.questionOf(path)
	switch {
	case q == nil:
		return nil
	case q.alt == "":
		a.say("no other value is offered: type one")
		return nil
	}
	next, text, err := a.sheet.otherTaken(q, a.desk.now())
	if err != nil {
		a.fail("%v", err)
		return nil
	}
	return a.step(next, text)
}

// confirm vouches for the inspection; with questions left it asks once more.
func (a *app) confirm() tea.Cmd {
	s := a.sheet
	if n := len(s.asked); n > 0 && !s.sure {
		s.sure = true
		s.row, s.chip = len(s.rows)-1, 0
		a.say("%s left to check. %s again confirms all the same.", plural(n, "leaf is", "leaves are"), a.keys.Confirm.Help().Key)
		return nil
	}
	switch {
	case a.batch != nil:
		return a.lookedRight()
	case s.rec.State == colony.Confirmed:
		a.say("it is confirmed already")
		return nil
	}
	cmd := a.step(stand(s.rec, colony.Confirmed, a.desk.now()), "")
	a.say("%s is confirmed; %s brings it back", hiveName(s.ins.Hive), a.keys.Undo.Help().Key)
	return tea.Batch(cmd, a.meet(s.ins.Hive), a.goOn())
}

// goOn opens the next inspection that waits, of the clean ones while those are
// looked through, or the list when none does.
func (a *app) goOn() tea.Cmd {
	if a.batch != nil {
		return a.lookedOver()
	}
	id := a.sheet.rec.ID
	if next := a.list.next(id); next != nil {
		return a.open(next.ID)
	}
	a.screen, a.back = onList, nil
	return nil
}

// skip goes on without confirming.
func (a *app) skip() tea.Cmd {
	if a.batch != nil {
		return a.lookedOver()
	}
	if next := a.list.next(a.sheet.rec.ID); next != nil {
		return a.open(next.ID)
	}
	a.say("no other inspection waits")
	return nil
}

// switchSheetKeys names what the keys of the sheet do at the cursor.
func (a *app) switchSheetKeys() {
	s := a.sheet
	r, path := s.current()
	q := s.questionOf(path)
	a.keys.Other.SetEnabled(q != nil && q.alt != "")
	a.keys.Other.SetHelp("tab", "take the other")
	if a.keys.Other.Enabled() {
		a.keys.Other.SetHelp("tab", "take “"+showValue(path, q.alt)+"”")
	}
	a.keys.Yes.SetHelp("space", "it is right")
	if q == nil {
		a.keys.Yes.SetHelp("space", "to what is left")
	}
	a.keys.Confirm.SetHelp("enter", "confirm")
	if a.batch != nil {
		a.keys.Confirm.SetHelp("enter", "looks right")
	}
	a.keys.Confirm.SetEnabled(r.kind == rowEnd)
	a.keys.Change.SetEnabled(path != "" || r.kind == rowRemark)
	a.keys.Change.SetHelp("enter", "change")
	if r.kind == rowRemark {
		a.keys.Change.SetHelp("enter", "make a leaf of it")
	}
	a.keys.Remove.SetEnabled(path != "")
}
