package command

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// dayForms are the forms of --at without a zone, which are local time.
var dayForms = []string{"2006-01-02 15:04:05", "2006-01-02 15:04", "2006-01-02T15:04:05", "2006-01-02T15:04"}

// parseWhen reads the value of --at: RFC 3339, or a local date with or without
// a time of day. A date alone means its noon, which stays on the same day in
// every neighbouring time zone.
func parseWhen(text string, zone *time.Location) (time.Time, error) {
	text = strings.TrimSpace(text)
	if t, err := time.Parse(time.RFC3339, text); err == nil {
		return t, nil
	}
	for _, form := range dayForms {
		if t, err := time.ParseInLocation(form, text, zone); err == nil {
			return t, nil
		}
	}
	if t, err := time.ParseInLocation(time.DateOnly, text, zone); err == nil {
		return t.Add(12 * time.Hour), nil
	}
	return time.Time{}, fmt.Errorf("%q is no time: write 2026-05-14, \"2026-05-14 16:00\" or 2026-05-14T16:00:00Z", clean(text))
}

// nameTime finds the day, and the time of day where there is one, that phones
// and recorders write into a file's name: 2026-05-14-1603, 20260514_160312,
// "2026-05-14 16.03".
var nameTime = regexp.MustCompile(`(?:^|\D)(20\d\d)-?([01]\d)-?([0-3]\d)(?:[-_ T]+([0-2]\d)[.:h-]?([0-5]\d)(?:[.:-]?([0-5]\d))?)?(?:\D|$)`)

// whenNamed is the time that a file's name carries, if it carries one.
func whenNamed(name string, zone *time.Location) (time.Time, bool) {
	m := nameTime.FindStringSubmatch(name)
	if m == nil {
		return time.Time{}, false
	}
	n := make([]int, len(m))
	for i, digits := range m[1:] {
		n[i+1], _ = strconv.Atoi(digits)
	}
	if m[4] == "" {
		n[4] = 12
	}
	t := time.Date(n[1], time.Month(n[2]), n[3], n[4], n[5], n[6], 0, zone)
	// A day or hour that does not exist would have been carried over.
	return t, t.Month() == time.Month(n[2]) && t.Day() == n[3]
}
