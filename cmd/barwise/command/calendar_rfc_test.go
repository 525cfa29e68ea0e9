package command

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode"
	"unicode/utf8"

	"pgregory.net/rapid"

	"barwise/colony"
)

// rfcEvent is an event's properties by name, as strictRFC5545 reads them.
type rfcEvent map[string]string

// contentLine is the grammar of RFC 5545, 3.1: name, parameters, value.
var contentLine = regexp.MustCompile(`^([A-Z][A-Z0-9-]*)((?:;[A-Z-]+=[^";:,]+)*):(.*)$`)

// strictRFC5545 reads a calendar by the letter of RFC 5545 and refuses what
// that does not allow. It shares nothing with the library that writes.
func strictRFC5545(text string) ([]rfcEvent, error) {
	if !strings.HasSuffix(text, "\r\n") || strings.Count(text, "\n") != strings.Count(text, "\r\n") || strings.Count(text, "\r") != strings.Count(text, "\r\n") {
		return nil, fmt.Errorf("3.1: lines end in CR LF")
	}
	for line := range strings.SplitSeq(strings.TrimSuffix(text, "\r\n"), "\r\n") {
		if len(line) > 75 || line == "" || !utf8.ValidString(line) {
			return nil, fmt.Errorf("3.1: not 1 to 75 octets of UTF-8: %q", line)
		}
	}
	var calendar, event rfcEvent
	var events []rfcEvent
	for line := range strings.SplitSeq(strings.TrimSuffix(strings.ReplaceAll(text, "\r\n ", ""), "\r\n"), "\r\n") {
		m := contentLine.FindStringSubmatch(line)
		if m == nil || strings.ContainsFunc(line, unicode.IsControl) {
			return nil, fmt.Errorf("3.1: no content line: %q", line)
		}
		name, params, value := m[1], m[2], m[3]
		switch {
		case line == "BEGIN:VCALENDAR" && calendar == nil:
			calendar = rfcEvent{}
		case line == "BEGIN:VEVENT" && calendar != nil && event == nil:
			event = rfcEvent{}
		case line == "END:VEVENT" && event != nil:
			events, event = append(events, event), nil
		case line == "END:VCALENDAR" && event == nil:
		case calendar == nil:
			return nil, fmt.Errorf("3.4: %q outside the calendar", line)
		default:
			into := calendar
			if event != nil {
				into = event
			}
			if _, twice := into[name]; twice {
				return nil, fmt.Errorf("3.6: %s twice", name)
			}
			into[name] = strings.TrimPrefix(params+":"+value, ":")
		}
	}
	if calendar["VERSION"] != "2.0" || calendar["PRODID"] == "" || !strings.HasSuffix(text, "END:VCALENDAR\r\n") {
		return nil, fmt.Errorf("3.6: no VERSION, PRODID or end: %v", calendar)
	}
	return events, checkEvents(events)
}

var (
	rfcStamp = regexp.MustCompile(`^\d{8}T\d{6}Z$`)
	rfcDate  = regexp.MustCompile(`^;VALUE=DATE:(\d{8})$`)
	rfcText  = regexp.MustCompile(`^(?:[^\\;,]|\\[\\;,nN])*$`)
)

// checkEvents checks what 3.6.1 and 3.8 ask of an all-day event.
func checkEvents(events []rfcEvent) error {
	seen := map[string]bool{}
	for _, e := range events {
		start, end := rfcDate.FindStringSubmatch(e["DTSTART"]), rfcDate.FindStringSubmatch(e["DTEND"])
		switch {
		case e["UID"] == "" || seen[e["UID"]]:
			return fmt.Errorf("3.8.4.7: UID %q missing or twice", e["UID"])
		case !rfcStamp.MatchString(e["DTSTAMP"]):
			return fmt.Errorf("3.8.7.2: DTSTAMP %q is not in UTC", e["DTSTAMP"])
		case start == nil || end == nil:
			return fmt.Errorf("3.8.2: %q to %q are no days", e["DTSTART"], e["DTEND"])
		case end[1] <= start[1]:
			return fmt.Errorf("3.6.1: the end %s is not after the start %s", end[1], start[1])
		case !slices.Contains([]string{"CONFIRMED", "CANCELLED"}, e["STATUS"]):
			return fmt.Errorf("3.8.1.11: STATUS %q", e["STATUS"])
		case !regexp.MustCompile(`^\d+$`).MatchString(e["SEQUENCE"]):
			return fmt.Errorf("3.8.7.4: SEQUENCE %q", e["SEQUENCE"])
		case !rfcText.MatchString(e["SUMMARY"]) || !rfcText.MatchString(e["DESCRIPTION"]):
			return fmt.Errorf("3.3.11: text %q, %q", e["SUMMARY"], e["DESCRIPTION"])
		}
		for _, day := range []string{start[1], end[1]} {
			if _, err := time.Parse("20060102", day); err != nil {
				return fmt.Errorf("3.3.4: %w", err)
			}
		}
		seen[e["UID"]] = true
	}
	return nil
}

var unescapeRFC = strings.NewReplacer(`\\`, `\`, `\;`, ";", `\,`, ",", `\n`, "\n", `\N`, "\n")

// Any items, with any text, make a calendar that holds to the letter of RFC
// 5545 and gives the words back.
func TestCalendarByTheLetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		today := colony.NewDate(2026, 2, 28)
		var items []colony.DueItem
		for i := range rapid.IntRange(0, 5).Draw(t, "items") {
			on := today.AddDays(rapid.IntRange(-80, 400).Draw(t, "on"))
			d := colony.DueItem{ID: fmt.Sprint(i), Hive: rapid.String().Draw(t, "hive"), On: on, What: rapid.String().Draw(t, "what"),
				Why: rapid.String().Draw(t, "why"), Status: rapid.SampledFrom([]colony.Status{colony.StatusOpen, colony.StatusDone, colony.StatusDropped, colony.StatusLapsed}).Draw(t, "status"),
				Revision: rapid.IntRange(0, 9999).Draw(t, "revision")}
			if rapid.Bool().Draw(t, "span") {
				d.Until = on.AddDays(rapid.IntRange(-3, 30).Draw(t, "until"))
			}
			items = append(items, d)
		}
		text := calendar(items, today, time.Date(2026, 2, 28, 23, 30, 0, 0, time.FixedZone("", -3600)))
		events, err := strictRFC5545(text)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if len(events) != len(items) {
			t.Fatalf("%d events of %d items", len(events), len(items))
		}
		for i, d := range items {
			e := events[i]
			if got, want := unescapeRFC.Replace(e["SUMMARY"]), oneLine("Hive "+d.Hive+": "+d.What); got != want {
				t.Fatalf("summary %q, want %q", got, want)
			}
			if (e["STATUS"] == "CANCELLED") != (d.Status != colony.StatusOpen) || e["SEQUENCE"] != fmt.Sprint(d.Revision) || e["UID"] != d.UID() {
				t.Fatalf("%v of %+v", e, d)
			}
		}
	})
}

// The strict reader refuses what it is there to refuse.
func TestStrictReaderRefuses(t *testing.T) {
	good := calendar([]colony.DueItem{{ID: "1", Hive: "3", On: colony.NewDate(2026, 5, 20), What: "inspect, soon", Status: colony.StatusOpen}}, colony.NewDate(2026, 5, 14), time.Unix(0, 0))
	if _, err := strictRFC5545(good); err != nil {
		t.Fatal(err)
	}
	for name, bad := range map[string]string{
		"LF alone":       strings.ReplaceAll(good, "\r\n", "\n"),
		"long line":      strings.Replace(good, "SUMMARY:", "SUMMARY:"+strings.Repeat("x", 70), 1),
		"no UID":         strings.Replace(good, "UID:", "X-ID:", 1),
		"local stamp":    strings.Replace(good, "DTSTAMP:19700101T000000Z", "DTSTAMP:19700101T000000", 1),
		"bare comma":     strings.Replace(good, `\,`, ",", 1),
		"end before":     strings.Replace(good, "20260521", "20260520", 1),
		"no such day":    strings.Replace(good, "20260521", "20260631", 1),
		"event twice":    strings.Replace(good, "END:VCALENDAR", good[strings.Index(good, "BEGIN:VEVENT"):], 1),
		"no version":     strings.Replace(good, "VERSION:2.0\r\n", "", 1),
		"status unknown": strings.Replace(good, "STATUS:CONFIRMED", "STATUS:OPEN", 1),
	} {
		if _, err := strictRFC5545(bad); err == nil || bad == good {
			t.Errorf("%s was let through", name)
		}
	}
}
