package command

import (
	"testing"

	"barwise/colony"
	"barwise/index/indextest"
	"barwise/tui"
)

func TestMishearingsAreCountedUntilTaught(t *testing.T) {
	s := indextest.MustOpen(t)
	corrected := func(want int) {
		t.Helper()
		evening := &desk{store: s}
		if n, err := evening.Slip("hunny", "honey"); n != want || err != nil {
			t.Errorf("corrected %d times, %v; want %d", n, err, want)
		}
	}
	corrected(1)
	corrected(2)
	if err := (&desk{store: s}).Teach("hunny", "honey"); err != nil {
		t.Fatal(err)
	}
	corrected(1)
}

func TestDifferencesBetweenTwoReadings(t *testing.T) {
	at := []string{"hive=3", "at=2026-05-14T16:00:00Z"}
	was := []colony.Inspection{*inspectionOf(t, append(at, "bars.4.eggs=yes", "temper.score=2")...)}
	will := []colony.Inspection{*inspectionOf(t, append(at, "bars.4.eggs=no", "bars.5.nectar=yes")...)}
	on := colony.NewDate(2026, 5, 14)
	want := []tui.Effect{
		{Hive: "3", On: on, Path: "bars.4.eggs", Was: "yes", Will: "no"},
		{Hive: "3", On: on, Path: "temper.score", Was: "2"},
		{Hive: "3", On: on, Path: "bars.5.nectar", Will: "yes"},
	}
	got := differences(was, will)
	if len(got) != len(want) {
		t.Fatalf("%+v", got)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("%d: %+v, want %+v", i, got[i], want[i])
		}
	}
	if got := differences(was, was); len(got) != 0 {
		t.Errorf("the same reading twice: %+v", got)
	}
}
