package command

import (
	"strings"
	"testing"
	"time"

	"barwise/colony"
)

func TestCalendar(t *testing.T) {
	today := colony.NewDate(2026, 5, 14)
	items := []colony.DueItem{
		{ID: "3/plan/2026-05-10/feed", Hive: "3", On: colony.NewDate(2026, 12, 31), What: "feed, 2 l; syrup", Why: "planned\non 10 May", Status: colony.StatusOpen, Revision: 4},
		{ID: "3/queen/2026-05-01", Hive: "3", On: colony.NewDate(2026, 5, 20), Until: colony.NewDate(2026, 5, 25), What: strings.Repeat("look for eggs ", 9), Status: colony.StatusOpen},
		{ID: "3/inspect/2026-05-01", Hive: "3", On: colony.NewDate(2026, 5, 8), What: "inspect", Status: colony.StatusDone},
		{ID: "3/inspect/2025-05-01", Hive: "3", On: colony.NewDate(2025, 5, 8), What: "inspect", Status: colony.StatusDone},
	}
	text := calendar(items, today, time.Date(2026, 5, 14, 18, 0, 0, 0, time.FixedZone("", 7200)))
	if _, err := strictRFC5545(text); err != nil {
		t.Error(err)
	}
	unfolded := strings.ReplaceAll(text, "\r\n ", "")
	for _, want := range []string{
		"METHOD:PUBLISH",
		"UID:" + items[0].UID(),
		"DTSTAMP:20260514T160000Z",
		"SEQUENCE:4",
		"DTSTART;VALUE=DATE:20261231\r\nDTEND;VALUE=DATE:20270101", // the end is not included (3.6.1)
		"DTSTART;VALUE=DATE:20260520\r\nDTEND;VALUE=DATE:20260526",
		`SUMMARY:Hive 3: feed\, 2 l\; syrup`, // escaped (3.3.11)
		"DESCRIPTION:planned on 10 May",
		"STATUS:CANCELLED",
	} {
		if !strings.Contains(unfolded, want) {
			t.Errorf("no %q in\n%s", want, unfolded)
		}
	}
	if n := strings.Count(text, "BEGIN:VEVENT"); n != 3 {
		t.Errorf("%d events; what was closed long ago is left out", n)
	}
	items[0].What = "feed syrup, thick"
	if later := calendar(items[:1], today, time.Unix(0, 0)); !strings.Contains(later, "UID:"+items[0].UID()) || !strings.Contains(text, items[0].UID()) {
		t.Error("an item whose words changed is another event; a calendar could not update it")
	}
}
