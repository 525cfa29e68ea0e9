package command

import (
	"os"
	"path/filepath"
	"time"

	ics "github.com/arran4/golang-ical"

	"barwise/colony"
)

// closedDays is for how long a calendar goes on taking an item back.
const closedDays = 90

// calendar is the items as an RFC 5545 calendar of all-day events. An item
// keeps its UID, and its SEQUENCE grows with what was recorded since, so that a
// calendar program that reads the file again updates what it has; what was
// closed lately is marked cancelled.
func calendar(items []colony.DueItem, today colony.Date, stamp time.Time) string {
	cal := ics.NewCalendarFor("barwise")
	cal.SetMethod(ics.MethodPublish)
	cal.SetXWRCalName("Bees")
	for _, d := range items {
		closed := d.Status != colony.StatusOpen
		if closed && today.Sub(d.On) > closedDays {
			continue
		}
		e := cal.AddEvent(d.UID())
		e.SetDtStampTime(stamp.UTC())
		e.SetSequence(d.Revision)
		e.SetAllDayStartAt(d.On.Time())
		e.SetAllDayEndAt(lastDay(d).AddDays(1).Time()) // the end is not included
		e.SetSummary(oneLine("Hive " + d.Hive + ": " + d.What))
		e.SetDescription(oneLine(d.Why))
		e.SetTimeTransparency(ics.TransparencyTransparent)
		e.SetStatus(ics.ObjectStatusConfirmed)
		if closed {
			e.SetStatus(ics.ObjectStatusCancelled)
		}
	}
	return cal.Serialize(ics.WithNewLineWindows)
}

// lastDay is the last day of an item: of its span, where it has one.
func lastDay(d colony.DueItem) colony.Date {
	if d.Until.Compare(d.On) > 0 {
		return d.Until
	}
	return d.On
}

// replaceFile writes a file whole: whoever reads it at the same time sees the
// old or the new, and what cannot be written leaves the old.
func replaceFile(name, text string) error {
	f, err := os.CreateTemp(filepath.Dir(name), ".barwise-*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name())
	_, err = f.WriteString(text)
	if err == nil {
		err = f.Chmod(0o644)
	}
	if closeErr := f.Close(); err == nil {
		err = closeErr
	}
	if err != nil {
		return err
	}
	return os.Rename(f.Name(), name)
}
