package tui

import (
	"context"
	"errors"
	"fmt"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"barwise/colony"
)

// screen is what fills the terminal.
type screen int

const (
	onList screen = iota
	onSheet
	onPage // typing or editing a note
	onPast // inspections that were found or looked up
)

// place is a screen to come back to; id is the record of a sheet.
type place struct {
	screen screen
	id     string
}

// Below these the screen says what it lacks instead of drawing.
const (
	narrowest = 60
	lowest    = 16
)

// app is the root of the screen.
type app struct {
	desk    *desk
	keys    keyMap
	theme   theme
	waiting func() ([]colony.Record, error) // what waits as the review begins

	width, height int

	screen  screen
	back    []place // where Back leads, the nearest last
	list    list
	sheet   *sheet // nil until a record is opened
	page    *writing
	past    past
	batch   *batch          // while the clean ones are looked through
	line    *line           // the line of typing at the bottom; nil for none
	slip    slip            // the last mishearing that was corrected, until it is offered
	met     map[string]bool // hives of which it was asked whether they are known
	hive    bool            // the hive instead of the note, where there is no room for both
	helping bool
	helpTop int

	queue    queue
	opening  bool // a record is on its way: keys would fall on what is not seen
	message  string
	trouble  bool // the message is bad news
	leaving  bool // left once with steps unsaved
	finished bool
}

// Messages that jobs bring back.
type (
	waitingMsg struct{ records []colony.Record }
	openedMsg  struct{ opened *opened }
	takenMsg   struct{ records []colony.Record }
	rereadMsg  struct {
		opened      *opened
		text        string
		heard, said string // the words that were replaced, where they are few
	}
	pastMsg    struct{ past past }
	effectsMsg struct {
		heard, said string
		effects     []Effect
	}
	savedMsg struct{ text string } // text is said, when there is one
)

func newApp(k Keeper, r Reader, o Options, th theme) *app {
	a := &app{met: map[string]bool{}, desk: &desk{keeper: k, reader: r, opts: o}, keys: newKeyMap(), theme: th, waiting: o.Waiting, width: 80, height: 24}
	if a.waiting == nil {
		a.waiting = k.Waiting
	}
	a.switchKeys()
	return a
}

// framesPerSecond is how often the screen may be drawn: a frame waits for the
// next beat, so a quick beat is what makes a key feel immediate.
const framesPerSecond = 120

// runScreen runs the full screen until the person leaves.
func runScreen(ctx context.Context, k Keeper, r Reader, o Options) error {
	opts := []tea.ProgramOption{tea.WithContext(ctx), tea.WithAltScreen(), tea.WithFPS(framesPerSecond)}
	if o.In != nil {
		opts = append(opts, tea.WithInput(o.In))
	}
	if o.Mouse {
		opts = append(opts, tea.WithMouseCellMotion())
	}
	out := outOf(o)
	opts = append(opts, tea.WithOutput(out))
	a := newApp(k, r, o, newTheme(out, autoColour, autoBackground))
	_, err := tea.NewProgram(a, opts...).Run()
	if o.Player != nil {
		o.Player.Stop()
	}
	if ctx.Err() != nil && errors.Is(err, tea.ErrProgramKilled) {
		err = ctx.Err()
	}
	if left := a.queue.drain(); left != nil {
		left = fmt.Errorf("%s not saved: %w", plural(len(a.queue.jobs), "step was", "steps were"), left)
		err = errors.Join(err, left)
	}
	return err
}

// Init asks for what waits.
func (a *app) Init() tea.Cmd {
	if a.desk.opts.New {
		a.startPage(nil)
	}
	return a.queue.add(waitingJob(a.waiting))
}

func (a *app) loadWaiting() tea.Cmd {
	return a.queue.add(waitingJob(a.desk.keeper.Waiting))
}

func waitingJob(waiting func() ([]colony.Record, error)) job {
	return job{what: "read what waits", looked: true, run: func() (tea.Msg, error) {
		records, err := waiting()
		return waitingMsg{records}, err
	}}
}

// Update takes one message. It does no input or output of its own: that is in
// the queue's jobs.
func (a *app) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	var cmd tea.Cmd
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		a.width, a.height = msg.Width, msg.Height
	case jobDone:
		cmd = a.jobDone(msg)
	case draftMsg:
		cmd = a.draftKept(msg)
	case tea.KeyMsg:
		cmd = a.press(msg)
	case tea.MouseMsg:
		cmd = a.click(msg)
	case playMsg:
		a.fail("could not play: %v", msg.err)
	}
	a.switchKeys()
	if a.finished && (a.queue.idle() || a.queue.err != nil) {
		return a, tea.Quit
	}
	return a, cmd
}

// jobDone takes what a job brought and starts the next.
func (a *app) jobDone(d jobDone) tea.Cmd {
	what := a.queue.jobs[0].what
	next := a.queue.done(d)
	if d.err != nil {
		a.opening, a.finished = false, a.finished && a.queue.err == nil
		a.fail("could not %s: %v", what, d.err)
		return next
	}
	return tea.Batch(next, a.bring(d.msg))
}

func (a *app) bring(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case waitingMsg:
		if a.queue.keeps() { // what was read is older than the steps that wait
			return a.loadWaiting()
		}
		a.list.load(msg.records)
	case openedMsg:
		a.opening = false
		a.show(msg.opened)
	case rereadMsg:
		a.opening = false
		a.show(msg.opened)
		a.say("%s", msg.text)
		return tea.Batch(a.loadWaiting(), a.noteSlip(msg.heard, msg.said))
	case slipMsg:
		a.offerSlip(msg)
	case takenMsg:
		a.say("kept: %s", plural(len(msg.records), "inspection", "inspections"))
		if len(msg.records) > 0 {
			return tea.Batch(a.loadWaiting(), a.open(msg.records[0].ID))
		}
		return a.loadWaiting()
	case pastMsg:
		a.past = msg.past
		a.say("%s", a.past.answer)
		a.goTo(onPast)
	case effectsMsg:
		a.showEffects(msg)
	case metMsg:
		return a.showMet(msg)
	case undoneMsg:
		a.list.put(msg.rec)
		a.say("%s", msg.what)
	case savedMsg:
		if msg.text != "" {
			a.say("%s", msg.text)
		}
	}
	return nil
}

// open asks for a record; until it is there, keys are not taken.
func (a *app) open(id string) tea.Cmd {
	a.opening = true
	return a.queue.add(job{what: "open the inspection", looked: true, run: func() (tea.Msg, error) {
		o, err := a.desk.open(id)
		return openedMsg{o}, err
	}})
}

// show puts a record on the sheet.
func (a *app) show(o *opened) {
	a.sheet = newSheet(o)
	a.line = nil
	a.list.put(o.rec)
	a.goTo(onSheet)
}

// press takes a key: what holds everywhere first, then the place it falls on.
func (a *app) press(msg tea.KeyMsg) tea.Cmd {
	a.message, a.trouble = "", false
	if !key.Matches(msg, a.keys.Leave) {
		a.leaving = false
	}
	if msg.Type == tea.KeyRunes { // what is pasted is no safer than a note, and is no key's name
		msg.Paste = len(msg.Runes) > 1
		msg.Runes = []rune(cleanLines(string(msg.Runes)))
	}
	switch {
	case key.Matches(msg, a.keys.Leave):
		return a.leave()
	case a.queue.err != nil:
		return a.pressInTrouble(msg)
	case a.opening:
		return nil
	case a.helping:
		return a.pressHelp(msg)
	case a.line != nil:
		return a.pressLine(msg)
	}
	if a.screen != onPage && key.Matches(msg, a.keys.Help) {
		a.helping, a.helpTop = true, 0
		return nil
	}
	switch a.screen {
	case onSheet:
		return a.pressSheet(msg)
	case onPage:
		return a.pressPage(msg)
	case onPast:
		return a.pressPast(msg)
	}
	return a.pressList(msg)
}

// pressInTrouble offers only the ways out of a failed save.
func (a *app) pressInTrouble(msg tea.KeyMsg) tea.Cmd {
	switch {
	case key.Matches(msg, a.keys.Again):
		return a.queue.again()
	case key.Matches(msg, a.keys.Drop):
		a.say("given up: %s", a.queue.jobs[0].what)
		return a.queue.drop()
	}
	a.fail("could not %s: %v", a.queue.jobs[0].what, a.queue.err)
	return nil
}

// leave ends the review once every step is saved.
func (a *app) leave() tea.Cmd {
	if a.queue.err != nil && !a.leaving {
		a.leaving = true
		a.fail("%s not saved (%v); the same key again leaves all the same",
			plural(len(a.queue.jobs), "step is", "steps are"), a.queue.err)
		return nil
	}
	a.finished = true
	if a.queue.idle() || a.queue.err != nil {
		return tea.Quit
	}
	return nil
}

// goTo shows a screen; Back will lead to the place before.
func (a *app) goTo(s screen) {
	if a.screen == s {
		return
	}
	a.back = append(a.back, a.here())
	a.screen = s
}

func (a *app) here() place {
	if a.screen == onSheet && a.sheet != nil {
		return place{onSheet, a.sheet.rec.ID}
	}
	return place{screen: a.screen}
}

// goBack leads to the place before this one, in the end to the list.
func (a *app) goBack() tea.Cmd {
	a.batch = nil
	to := place{screen: onList}
	if n := len(a.back); n > 0 {
		to, a.back = a.back[n-1], a.back[:n-1]
	}
	a.screen = to.screen
	if to.id != "" && to.id != a.sheet.rec.ID {
		return a.open(to.id)
	}
	return nil
}

func (a *app) say(format string, args ...any) {
	a.message, a.trouble = clean(fmt.Sprintf(format, args...)), false
}

func (a *app) fail(format string, args ...any) {
	a.message, a.trouble = clean(fmt.Sprintf(format, args...)), true
}

// switchKeys turns on the keys that do something now, and names what they do.
func (a *app) switchKeys() {
	o := a.desk.opts
	a.keys.Find.SetEnabled(o.Find != nil)
	a.keys.Older.SetEnabled(o.Past != nil)
	a.keys.SheetOlder.SetEnabled(o.Past != nil)
	a.keys.Teach.SetEnabled(o.Teacher != nil)
	heard := o.Player != nil && a.sheet != nil && a.sheet.note.Recording != nil
	a.keys.Play.SetEnabled(heard)
	a.keys.Slower.SetEnabled(heard)
	a.keys.Again.SetEnabled(a.queue.err != nil)
	a.keys.Drop.SetEnabled(a.queue.err != nil)
	a.keys.Clean.SetEnabled(a.list.clean() > 0)
	if a.sheet != nil {
		a.switchSheetKeys()
	}
}
