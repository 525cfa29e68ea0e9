package command

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"

	"github.com/emersion/go-ical"
	"pgregory.net/rapid"

	"barwise/colony"
)

// TestCalendarByASecondLibrary reads calendars with another library than the
// one that wrote them: it finds the same events on the same days, and writes
// them again, which it refuses where a property is missing or stands too often.
func TestCalendarByASecondLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		today := colony.NewDate(2028, 2, 28) // before a leap day
		var items []colony.DueItem
		for range rapid.IntRange(1, 5).Draw(t, "items") {
			on := today.AddDays(rapid.IntRange(-80, 400).Draw(t, "on"))
			items = append(items, colony.DueItem{ID: rapid.String().Draw(t, "id"), Hive: "3", On: on, Until: on.AddDays(rapid.IntRange(-1, 3).Draw(t, "span")),
				What: rapid.StringMatching(`[a-z ,;\\:"é]{1,90}`).Draw(t, "what"), Why: "planned", Revision: rapid.IntRange(0, 99).Draw(t, "revision"),
				Status: rapid.SampledFrom([]colony.Status{colony.StatusOpen, colony.StatusDone}).Draw(t, "status")})
		}
		read, err := ical.NewDecoder(strings.NewReader(calendar(items, today, time.Unix(0, 0)))).Decode()
		if err != nil {
			t.Fatal(err)
		}
		if err := ical.NewEncoder(io.Discard).Encode(read); err != nil {
			t.Fatal(err)
		}
		events := read.Events()
		if len(events) != len(items) {
			t.Fatalf("%d events of %d items", len(events), len(items))
		}
		for i, d := range items {
			checkSecond(t, events[i], d)
		}
	})
}

func checkSecond(t *rapid.T, e ical.Event, d colony.DueItem) {
	start, err := e.DateTimeStart(time.UTC)
	if err != nil || colony.DateOf(start) != d.On || e.Props.Get(ical.PropDateTimeStart).ValueType() != ical.ValueDate {
		t.Fatalf("begins %s (%v), want the day %s", start, err, d.On)
	}
	end, err := e.DateTimeEnd(time.UTC)
	if err != nil || colony.DateOf(end) != lastDay(d).AddDays(1) {
		t.Fatalf("ends before %s (%v), want the day after %s", end, err, lastDay(d))
	}
	status := ical.EventConfirmed
	if d.Status != colony.StatusOpen {
		status = ical.EventCancelled
	}
	if got, err := e.Status(); err != nil || got != status {
		t.Fatalf("status %s (%v), want %s", got, err, status)
	}
	for name, want := range map[string]string{ical.PropUID: d.UID(), ical.PropSummary: oneLine("Hive 3: " + d.What)} {
		if got, err := e.Props.Text(name); err != nil || got != want {
			t.Fatalf("%s %q (%v), want %q", name, got, err, want)
		}
	}
	if got, err := e.Props.Get(ical.PropSequence).Int(); err != nil || got != d.Revision {
		t.Fatalf("sequence %d (%v), want %d", got, err, d.Revision)
	}
}

// The second library refuses a calendar that lacks what the standard asks for.
func TestSecondLibraryRefuses(t *testing.T) {
	good := calendar([]colony.DueItem{{ID: "1", Hive: "3", On: colony.NewDate(2026, 5, 20), What: "inspect", Status: colony.StatusOpen}}, colony.NewDate(2026, 5, 14), time.Unix(0, 0))
	bad := strings.Replace(good, "UID:", "X-ID:", 1)
	read, err := ical.NewDecoder(strings.NewReader(bad)).Decode()
	if err == nil {
		err = ical.NewEncoder(new(bytes.Buffer)).Encode(read)
	}
	if err == nil {
		t.Error("an event without UID was let pass")
	}
}
