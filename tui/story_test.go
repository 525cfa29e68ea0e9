package tui

import (
	"context"
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/teatest"

	"barwise/colony"
)

// The stories run the whole program, its loop and its renderer included.

type story struct {
	t  *testing.T
	tm *teatest.TestModel
}

func tell(t *testing.T, k *fakeKeeper, r Reader, o Options) *story {
	t.Helper()
	a := newApp(k, r, o, newTheme(io.Discard, noColour, onDark))
	return &story{t, teatest.NewTestModel(t, a, teatest.WithInitialTermSize(100, 30))}
}

// waits until the screen has shown all the parts since the last wait.
func (s *story) waits(parts ...string) *story {
	s.t.Helper()
	teatest.WaitFor(s.t, s.tm.Output(), func(out []byte) bool {
		seen := ansi.Strip(string(out))
		for _, part := range parts {
			if !strings.Contains(seen, part) {
				return false
			}
		}
		return true
	}, teatest.WithDuration(time.Minute), teatest.WithCheckInterval(2*time.Millisecond))
	return s
}

func (s *story) press(names ...string) *story {
	for _, msg := range keysOf(names...) {
		s.tm.Send(msg)
	}
	return s
}

func (s *story) leaves() {
	s.t.Helper()
	s.press("ctrl+c")
	s.tm.WaitFinished(s.t, teatest.WithFinalTimeout(time.Minute))
}

func TestStoryBarNumberIsCorrected(t *testing.T) {
	k := take(t, "Hive 3. Bar 14 maybe eggs. Bar 5 larvae.")
	s := tell(t, k, fakeReader{}, options(k)).waits("1 inspection waits")
	s.press("enter").waits("bar 14 eggs: yes").press("4").waits("eggs is on bar 4").press("enter").waits("Nothing left to check")
	s.press("enter").waits("Nothing waits").leaves()
	if got := leaf(t, k, "r001", "bars.4.eggs"); got != "yes" {
		t.Errorf("bar 4: %q", got)
	}
	if got := state(t, k, "r001"); got != colony.Confirmed {
		t.Errorf("state %q", got)
	}
}

func TestStoryValueIsChangedAndUndoneAfterARestart(t *testing.T) {
	k := take(t, sampleNotes...)
	s := tell(t, k, fakeReader{}, options(k)).waits("5 inspections wait")
	s.press("down", "enter").waits("bar 3 eggs: yes").press("no", "enter").waits("To check: 1").leaves()
	if got := leaf(t, k, second, "bars.3.eggs"); got != "no" {
		t.Fatalf("bar 3: %q", got)
	}
	s = tell(t, k, fakeReader{}, options(k)).waits("5 inspections wait")
	s.press("down", "enter").waits("bar 5 capped brood").press("ctrl+z").waits("undone: bar 3 eggs: no").leaves()
	if got := leaf(t, k, second, "bars.3.eggs"); got != "yes" {
		t.Errorf("bar 3 after undo: %q", got)
	}
}

func TestStoryLeafIsMadeFromWords(t *testing.T) {
	k := take(t, "Hive 3. Bar 4 eggs. Bar 7 hunny and nectar.")
	s := tell(t, k, fakeReader{}, options(k)).waits("1 inspection waits")
	s.press("enter").waits("Nothing left to check").press("ctrl+w", "home", "right", "right", "right", "right", "right", "right", "right")
	s.waits("“hunny”", "no rule used these words").press("+").waits("add: hunny")
	s.press("backspace", "backspace", "backspace", "backspace", "backspace", "bar 7 honey").waits("bar 7 honey yes").press("enter")
	s.waits("bar 7 honey: yes").leaves()
	if got := leaf(t, k, "r001", "bars.7.honey"); got != "yes" {
		t.Errorf("bar 7: %q", got)
	}
	r, _ := k.Record("r001")
	ins := r.Inspection()
	if spans := ins.Evidence.Of("bars.7.honey"); len(spans) != 1 || spans[0] != (colony.Span{26, 31}) {
		t.Errorf("the words behind it: %v", spans)
	}
}

func TestStoryTenInspectionsAreConfirmed(t *testing.T) {
	notes := make([]string, 10)
	for i := range notes {
		notes[i] = "Hive " + strconv.Itoa(i+1) + ". Bar 1 honey. Bar 2 maybe eggs."
	}
	k := take(t, notes...)
	s := tell(t, k, fakeReader{}, options(k)).waits("10 inspections wait")
	s.press("enter")
	for i := range notes {
		s.waits("hive "+strconv.Itoa(i+1)+" ", "bar 2 eggs: yes").press("space").waits("Nothing left to check").press("enter")
	}
	s.waits("Nothing waits").leaves()
	if waiting, _ := k.Waiting(); len(waiting) > 0 {
		t.Errorf("%d still wait", len(waiting))
	}
}

// fakeTeacher is a reader that learns: it reads a note with what it was taught
// put in the place of what was heard.
type fakeTeacher struct {
	fakeReader
	heard, said string
	slips       int
	met         []string
}

func (f *fakeTeacher) Slip(string, string) (int, error) {
	f.slips++
	return f.slips, nil
}

func (f *fakeTeacher) Parse(note *colony.Note) []colony.Inspection {
	as := *note
	if f.heard != "" {
		as.Text = strings.ReplaceAll(as.Text, f.heard, f.said)
	}
	for _, hive := range f.met {
		if strings.HasPrefix(as.Text, hive) {
			as.Hive = hive
		}
	}
	return f.fakeReader.Parse(&as)
}

// Meet knows the numbers of all hives, and of names those that it has met.
func (f *fakeTeacher) Meet(hives []string) (news []string, err error) {
	for _, hive := range hives {
		if hive != "" && hive[0] > '9' && !slices.Contains(f.met, hive) {
			f.met, news = append(f.met, hive), append(news, hive)
		}
	}
	return news, nil
}

func (f *fakeTeacher) Preview(heard, said string) ([]Effect, error) {
	return []Effect{{Hive: "7", On: colony.DateOf(evening), Path: "bars.2.honey", Will: "yes"}}, nil
}

func (f *fakeTeacher) Teach(heard, said string) error {
	f.heard, f.said = heard, said
	return nil
}

func TestStoryMishearingIsRemembered(t *testing.T) {
	k := take(t, "Hive 3. Bar 7 hunny.", "Hive 7. Bar 2 hunny.")
	o := options(k)
	teacher := &fakeTeacher{}
	o.Teacher = teacher
	s := tell(t, k, teacher, o).waits("2 inspections wait")
	s.press("enter").waits("Nothing left to check").press("ctrl+e").waits("The note of hive 3")
	for range len("hunny.") {
		s.press("backspace")
	}
	s.press("honey.").waits("+ bar 7 honey yes").press("ctrl+s").waits("“hunny” was “honey”: ctrl+t remembers it")
	s.press("ctrl+t").waits("1 waiting value changes", "hive 7", "bar 2 honey")
	s.press("enter").waits("remembered: “hunny” is “honey”").leaves()
	if got := leaf(t, k, "r002", "bars.2.honey"); got != "yes" {
		t.Errorf("the other note that waits has %q", got)
	}
}

func TestStoryHiveThatIsConfirmedIsKnown(t *testing.T) {
	k := take(t, "Hive grumpy. Bar 7 honey.", "grumpy. Bar 2 honey.", "Hive 7. Bar 3 honey.")
	o := options(k)
	teacher := &fakeTeacher{}
	o.Teacher = teacher
	s := tell(t, k, teacher, o).waits("3 inspections wait")
	s.press("enter").waits("Nothing left to check").press("enter").waits("known from now on: grumpy; 1 note that waits is read again")
	s.leaves()
	if got := leaf(t, k, "r002", "hive"); got != "grumpy" {
		t.Errorf("the note that waits is of the hive %q, want grumpy", got)
	}
}

func TestHiveThatIsSetAsideIsNotMet(t *testing.T) {
	k := take(t, "Hive grumpy. Bar 7 honey.", "grumpy. Bar 2 honey.")
	o := options(k)
	teacher := &fakeTeacher{}
	o.Teacher = teacher
	d := newDriver(t, k, o, 80, 24)
	d.press("enter", "ctrl+x")
	d.sees("hive grumpy is set aside")
	if len(teacher.met) > 0 {
		t.Errorf("the teacher met %q", teacher.met)
	}
}

func TestCorrectionThatRecursIsOffered(t *testing.T) {
	k := take(t, "Hive 3. Bar 7 hunny.", "Hive 5. Bar 2 hunny.")
	o := options(k)
	o.Teacher = &fakeTeacher{}
	d := newDriver(t, k, o, 80, 24)
	for range 2 {
		d.press("enter", "ctrl+e")
		for range len("hunny.") {
			d.press("backspace")
		}
		d.press("honey.", "ctrl+s")
		d.sees("“hunny” was “honey”: ctrl+t remembers it")
		d.press("esc", "down")
	}
	d.press("enter", "ctrl+z", "ctrl+y")
	d.sees("done again")
	d.press("esc", "up", "enter", "ctrl+e", " hunny", "ctrl+s", "ctrl+e")
	for range len("hunny") {
		d.press("backspace")
	}
	d.press("honey", "ctrl+s")
	d.sees("3 times now “hunny” was “honey”: ctrl+t remembers it")
}

func TestAliasOfALeafIsOfItsFirstWords(t *testing.T) {
	k := take(t, "Hive 3. Bar 7, queen.")
	o := options(k)
	o.Teacher = &fakeTeacher{}
	d := newDriver(t, k, o, 80, 24)
	d.press("enter", "up", "right") // where she was: two stretches of words
	d.sees("from “queen … Bar”")
	d.press("ctrl+t", "worker", "enter")
	d.sees("1 waiting value changes", "“queen” is “worker” from now on, y or n: y")
}

// fakePlayer notes what it was asked to do.
type fakePlayer struct {
	from, to, tempo float64
	stopped         bool
}

func (p *fakePlayer) Play(_ colony.Recording, from, to, tempo float64) error {
	p.from, p.to, p.tempo = from, to, tempo
	return nil
}

func (p *fakePlayer) Stop() { p.stopped = true }

func TestWordsOfALeafArePlayed(t *testing.T) {
	k := newFakeKeeper()
	n := newNote("Hive 3. Bar 4 maybe eggs.", evening)
	n.Recording = &colony.Recording{}
	n.Words = []colony.TimedWord{{Span: colony.Span{14, 19}, From: 4, To: 4.4}, {Span: colony.Span{20, 24}, From: 5, To: 5.5}}
	if _, err := k.Take(n, fakeReader{}.Parse(&n)); err != nil {
		t.Fatal(err)
	}
	o := options(k)
	player := &fakePlayer{}
	o.Player = player
	d := newDriver(t, k, o, 80, 24)
	d.press("enter", "ctrl+p")
	if player.from != 5-playMargin || player.to != 5.5+playMargin {
		t.Errorf("played from %g to %g", player.from, player.to)
	}
	d.sees("playing “eggs”")
	var heard []float64
	for _, key := range []string{"ctrl+p", "ctrl+p", "ctrl+l", "ctrl+l", "ctrl+l", "ctrl+p"} {
		player.tempo = 0
		d.press(key)
		heard = append(heard, player.tempo)
	}
	if want := []float64{1, 1, 0.7, 0.5, 0.5, 1}; !slices.Equal(heard, want) {
		t.Errorf("played, repeated, slower, slower still: %v, want %v", heard, want)
	}
}

func TestReviewEndsWithItsContext(t *testing.T) {
	k := take(t, sampleNotes...)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	o := options(k)
	in, out := io.Pipe()
	defer out.Close()
	player := &fakePlayer{}
	o.In, o.Out, o.Player = in, io.Discard, player
	if err := Review(ctx, k, fakeReader{}, o); !errors.Is(err, context.Canceled) {
		t.Errorf("a cancelled review ends with %v", err)
	}
	if !player.stopped {
		t.Error("the sound plays on after the review")
	}
}
