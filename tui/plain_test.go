package tui

import (
	"bufio"
	"context"
	"errors"
	"io"
	"strings"
	"testing"

	"barwise/colony"
)

// answers runs the plain review with the lines as answers.
func answers(t *testing.T, k *fakeKeeper, lines ...string) string {
	t.Helper()
	var out strings.Builder
	o := options(k)
	o.Plain, o.Out, o.In = true, &out, strings.NewReader(strings.Join(lines, "\n")+"\n")
	if err := Review(context.Background(), k, fakeReader{}, o); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestPlainReviewTakesTheSameSteps(t *testing.T) {
	k := take(t, sampleNotes...)
	out := answers(t, k,
		"",                                                        // confirms the first
		"", "other", "bar 10 honey both", "1", "undo", "redo", "", // the second
		"leave")
	for _, want := range []string{"5 inspections wait", "Why: said with “maybe”", "Words: “eggs”.", "Right, or other: no?",
		"Saved: bar 3 eggs is right", "undone: bar 10 honey: yes and 1 more", "Saved: confirmed."} {
		if !strings.Contains(out, want) {
			t.Errorf("missing %q in\n%s", want, out)
		}
	}
	if got := state(t, k, second); got != colony.Confirmed {
		t.Errorf("state is %q", got)
	}
	for path, want := range map[string]string{"bars.3.eggs": "yes", "bars.5.capped_brood": "no", "bars.10.honey.side": "both"} {
		if got := leaf(t, k, second, path); got != want {
			t.Errorf("%s = %q, want %q", path, got, want)
		}
	}
	if strings.Contains(out, "\x1b") {
		t.Error("an escape sequence was written")
	}
}

func TestPlainReviewAsksWhichIsMeant(t *testing.T) {
	k := take(t, sampleNotes[4])
	out := answers(t, k, "7", "2", "", "all", "note", "help", "skip")
	for _, want := range []string{"1: eggs is on bar 7", "2: all of bar 2 is bar 7", "Which number?", "maybe eggs but no larvae", "set aside", "Nothing more waits."} {
		if !strings.Contains(out, want) {
			t.Errorf("missing %q in\n%s", want, out)
		}
	}
	if got := leaf(t, k, "r001", "bars.7.eggs"); got != "yes" {
		t.Errorf("bar 7: %q", got)
	}
	if got := state(t, k, "r001"); got != colony.Waiting {
		t.Errorf("state is %q", got)
	}
}

func TestPlainReviewOfNoHiveAndNoDay(t *testing.T) {
	k := newFakeKeeper()
	if _, err := k.Take(colony.Note{Hash: "1"}, []colony.Inspection{{}}); err != nil {
		t.Fatal(err)
	}
	if out := answers(t, k, "leave"); !strings.Contains(out, "hive not said, no date. Inspection 1 of 1.") {
		t.Errorf("it begins with\n%s", out)
	}
}

func TestPlainReviewLooksUpListensAndLearns(t *testing.T) {
	k := newFakeKeeper()
	n := newNote("Hive 3. Bar 4 maybe eggs. Bar 7 hunny.", evening)
	n.Recording = &colony.Recording{}
	n.Words = []colony.TimedWord{{Span: colony.Span{20, 24}, From: 5, To: 5.5}}
	if _, err := k.Take(n, fakeReader{}.Parse(&n)); err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	player, teacher := &fakePlayer{}, &fakeTeacher{}
	o := options(k)
	o.Plain, o.Out, o.Player, o.Teacher = true, &out, player, teacher
	o.Find = func(words string) (Answer, error) {
		return Answer{Hits: []Found{{ID: "r001", Hive: "3", On: colony.DateOf(evening), Bar: 4, Quote: words}}, All: 1}, nil
	}
	o.In = strings.NewReader("past\nfind larvae, eggs\nplay\nplay slower\nalias hunny\nalias hunny = honey\nn\nalias hunny = honey\ny\nall\nleave\n")
	if err := Review(context.Background(), k, teacher, o); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Inspections of hive 3: 1 found.\n  Thu 14 May 2026, hive 3: waiting 1 bar",
		"larvae, eggs: 1 found.\n  Thu 14 May 2026, hive 3: bar 4: “larvae, eggs”", "alias bear tree = bar three",
		"hive 7, Thu 14 May 2026: bar 2 honey: yes, was nothing", "1 waiting value changes", "Not remembered.", "Remembered.", "bar 7 honey: yes"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("missing %q in\n%s", want, out.String())
		}
	}
	if player.tempo != 0.7 || player.from != 5-playMargin || !player.stopped {
		t.Errorf("played %+v", player)
	}
}

func TestPlainReviewEndsWithItsInput(t *testing.T) {
	k := take(t, sampleNotes[4])
	answers(t, k, "remove")
	if got := leaf(t, k, "r001", "bars.2.eggs"); got != "" {
		t.Errorf("the answer before the end is lost: %q", got)
	}
}

func TestPlainReviewTakesANewNote(t *testing.T) {
	k := take(t)
	var out strings.Builder
	o := options(k)
	o.Plain, o.New, o.Out, o.In = true, true, &out, strings.NewReader("Hive 9. Bar 1 honey.\nBar 2 eggs.\n\n\n")
	if err := Review(context.Background(), k, fakeReader{}, o); err != nil {
		t.Fatal(err)
	}
	if got := leaf(t, k, "r001", "bars.2.eggs"); got != "yes" || state(t, k, "r001") != colony.Confirmed {
		t.Errorf("bar 2 %q, %s\n%s", got, state(t, k, "r001"), out.String())
	}
}

// A review that waits for an answer ends with its context, as by ctrl+c.
func TestPlainReviewEndsWhileItWaits(t *testing.T) {
	k := take(t, sampleNotes...)
	ctx, stop := context.WithCancel(t.Context())
	in, held := io.Pipe()
	defer held.Close()
	asked := make(chan struct{})
	o := options(k)
	o.Plain, o.In, o.Out = true, in, promptedBy(func(text string) {
		if strings.Contains(text, "Enter confirms") {
			close(asked)
		}
	})
	ended := make(chan error)
	go func() { ended <- Review(ctx, k, fakeReader{}, o) }()
	<-asked
	stop()
	if err := <-ended; !errors.Is(err, context.Canceled) {
		t.Errorf("err = %v", err)
	}
}

// promptedBy hands on what is written.
type promptedBy func(text string)

func (p promptedBy) Write(b []byte) (int, error) {
	p(string(b))
	return len(b), nil
}

// An answer that is too long to be read is an error, and no silent end.
func TestPlainReviewTellsOfAnAnswerItCannotRead(t *testing.T) {
	k := take(t, sampleNotes...)
	o := options(k)
	o.Plain, o.Out, o.In = true, io.Discard, strings.NewReader(strings.Repeat("x", longestEdit+1))
	if err := Review(t.Context(), k, fakeReader{}, o); !errors.Is(err, bufio.ErrTooLong) {
		t.Errorf("err = %v", err)
	}
}
