package command

import (
	"testing"
	"time"
)

func TestParseWhen(t *testing.T) {
	zone := time.FixedZone("", 2*3600)
	for text, want := range map[string]string{
		"2026-05-14T16:00:00Z":      "2026-05-14T16:00:00Z",
		"2026-05-14T16:00:00-05:00": "2026-05-14T16:00:00-05:00",
		"2026-05-14 16:00":          "2026-05-14T16:00:00+02:00",
		"2026-05-14T16:00":          "2026-05-14T16:00:00+02:00",
		"2026-05-14 16:00:30":       "2026-05-14T16:00:30+02:00",
		" 2026-05-14 ":              "2026-05-14T12:00:00+02:00",
		"2028-02-29":                "2028-02-29T12:00:00+02:00",
	} {
		got, err := parseWhen(text, zone)
		if err != nil || got.Format(time.RFC3339) != want {
			t.Errorf("%q: %v, %v; want %s", text, got.Format(time.RFC3339), err, want)
		}
	}
	for _, text := range []string{"", "yesterday", "2026-02-29", "2026-13-01", "14/05/2026", "2026-05-14 25:00", "16:00"} {
		if got, err := parseWhen(text, zone); err == nil {
			t.Errorf("%q was read as %v", text, got)
		}
	}
}

func TestWhenNamed(t *testing.T) {
	for name, want := range map[string]string{
		"2026-05-14-1603-orchard.txt":   "2026-05-14 16:03:00",
		"20260514_160312.m4a":           "2026-05-14 16:03:12",
		"Note 2026-05-14 16.03.txt":     "2026-05-14 16:03:00",
		"2026-05-14.txt":                "2026-05-14 12:00:00",
		"rec-20260514.txt":              "2026-05-14 12:00:00",
		"2026-05-14T16:03:12.vtt":       "2026-05-14 16:03:12",
		"hive 3.txt":                    "",
		"2026-02-30.txt":                "",
		"2026-19-01.txt":                "",
		"20265.txt":                     "",
		"1202605141.txt":                "", // a longer number is no date
		"harvest 2026.txt":              "",
		"walk 2026-05-14 bars 1630.txt": "2026-05-14 12:00:00",
	} {
		got, ok := whenNamed(name, time.UTC)
		if ok != (want != "") || ok && got.Format(time.DateTime) != want {
			t.Errorf("%q: %v, %v; want %q", name, got.Format(time.DateTime), ok, want)
		}
	}
}
