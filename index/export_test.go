package index_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"barwise/colony"
	"barwise/index"
	"barwise/index/indextest"
)

// rich is a store with everything that an export has to carry.
func rich(t *testing.T) *index.Store {
	t.Helper()
	s := indextest.MustOpen(t)
	v := twoHives()
	v.Note.Recording = &colony.Recording{Hash: "ab", File: "recordings/ab.wav", Seconds: 12}
	v.Note.Private = true
	records := mustTake(t, s, v)
	records[0].Corrections = []colony.Correction{{Path: "temper.score", Value: "4", Span: &colony.Span{0, 7}}}
	records[0].State = colony.Confirmed
	save(t, s, records[0])
	if err := s.Edit(v.Note.Hash, v.Note.Text+" <b>& done</b>\u2028", v.Read); err != nil {
		t.Fatal(err)
	}
	mustTake(t, s, write("käfer\xff", noon(2026, 5, 20), says("bytes \xff\xfe\x00 that are no text")))
	if err := s.SetSetting("form", map[string]any{"width": 480, "note": "a<b"}); err != nil {
		t.Fatal(err)
	}
	if err := s.SetOwnWords(colony.OwnWords{Aliases: map[string]string{"bear": "bar"}, Plants: []string{"lime"}}); err != nil {
		t.Fatal(err)
	}
	return s
}

func mustImport(t *testing.T, s *index.Store, text string) index.Imported {
	t.Helper()
	done, err := s.Import(strings.NewReader(text))
	if err != nil {
		t.Fatalf("import: %v", err)
	}
	return done
}

func TestExportIsLossless(t *testing.T) {
	s := rich(t)
	text := mustExport(t, s)
	other := indextest.MustOpen(t)
	if done := mustImport(t, other, text); done.Notes != 2 || done.Records != 3 || done.Settings != 1 || !done.Words || done.BadLines != 0 {
		t.Errorf("%+v", done)
	}
	if back := mustExport(t, other); back != text {
		t.Errorf("not the same:\n%s\n%s", text, back)
	}
	for n, line := range strings.Split(strings.TrimSpace(text), "\n") {
		if n == 0 && line != `{"kind":"barwise","version":1}` {
			t.Errorf("first line: %s", line)
		}
	}
	for r := range other.Records(index.Filter{}) {
		a, _ := s.Original(r.NoteHash)
		b, err := other.Original(r.NoteHash)
		if err != nil || a.Text != b.Text {
			t.Errorf("the note came back as %q, was %q", b.Text, a.Text)
		}
		x, _ := s.History(r.ID)
		y, _ := other.History(r.ID)
		if len(x) != len(y) {
			t.Errorf("%d earlier versions came back as %d", len(x), len(y))
		}
	}
	if got, want := brief(mustFind(t, other, index.Query{Words: "grumpy"})), brief(mustFind(t, s, index.Query{Words: "grumpy"})); got != want || got == "" {
		t.Errorf("found %q, was %q", got, want)
	}
}

func TestImportSkipsWhatIsHere(t *testing.T) {
	s := rich(t)
	text := mustExport(t, s)
	if done := mustImport(t, s, text); done.Notes+done.Records+done.Settings+done.Differ != 0 || done.Skipped != 7 || done.Words {
		t.Errorf("%+v", done)
	}
	for r := range s.Records(index.Filter{Hive: "3"}) {
		r.State = colony.SetAside
		save(t, s, r)
	}
	if err := s.SetSetting("form", 1); err != nil {
		t.Fatal(err)
	}
	before := mustExport(t, s)
	if done := mustImport(t, s, text); done.Differ != 2 || done.Skipped != 5 {
		t.Errorf("%+v", done)
	}
	if mustExport(t, s) != before {
		t.Error("what was here was changed")
	}
}

// The same note taken in on two machines has other IDs on each.
func TestImportOfTheSameNoteTakenElsewhere(t *testing.T) {
	one, two := indextest.MustOpen(t), indextest.MustOpen(t)
	v := twoHives()
	mustTake(t, one, v)
	mustTake(t, two, v)
	if done := mustImport(t, two, mustExport(t, one)); done.Records != 0 || done.Skipped != 1 || done.Differ != 2 {
		t.Errorf("%+v", done)
	}
}

func TestImportJoinsOwnWords(t *testing.T) {
	s := indextest.MustOpen(t)
	if err := s.SetOwnWords(colony.OwnWords{Aliases: map[string]string{"a": "mine"}, Sounds: map[string]string{"c": "see"}, Plants: []string{"lime"}}); err != nil {
		t.Fatal(err)
	}
	done := mustImport(t, s, `{"kind":"words","words":{"aliases":{"a":"theirs","b":"both"},"sounds":{"c":"sea","d":"dee"},"plants":["lime","clover"],"hives":["x"]}}`)
	own, _ := s.OwnWords()
	if got := fmt.Sprint(own); !done.Words || got != "{map[a:mine b:both] map[c:see d:dee] [lime clover] [x]}" {
		t.Errorf("%s, %+v", got, done)
	}
}

func TestImportGoesOnAfterABadLine(t *testing.T) {
	lines := strings.SplitAfter(mustExport(t, rich(t)), "\n")
	good := len(lines) - 1
	bad := map[string]string{
		"no JSON":                        "line 3: this is no JSON",
		`{"kind":"record"}`:              `line 3: a line of kind "record"`,
		`{"kind":"bee"}`:                 `line 3: a line of kind "bee"`,
		`[1]`:                            "line 3: this is no JSON object",
		`{"kind":"note","note":{}}`:      "line 3: the note has no hash",
		`{"kind":"barwise","version":9}`: "line 3: the export has version 9",
		`{"kind":"record","record":{"id":"x","seq":1,"note_hash":"none","state":"waiting"}}`:                               `line 3: record x: its note "none"`,
		`{"kind":"record","record":{"id":"x","seq":0,"state":"waiting"}}`:                                                  "line 3: record x: its place",
		`{"kind":"record","record":{"id":"x","seq":1,"state":"bored"}}`:                                                    `line 3: record x: there is no state "bored"`,
		`{"kind":"record","record":{"seq":1}}`:                                                                             "line 3: the record has no ID",
		`{"kind":"record","record":{"id":"x","seq":1,"state":"waiting"},"history":[{"id":"y","seq":1,"state":"waiting"}]}`: "line 3: history: it is of another",
		"\x00\xff\x1b": "line 3: this is no JSON",
	}
	for line, want := range bad {
		s := indextest.MustOpen(t)
		done := mustImport(t, s, "\ufeff"+strings.Join(lines[:2], "")+line+"\r\n\n"+strings.Join(lines[2:], ""))
		if done.BadLines != 1 || len(done.Bad) != 1 || !strings.Contains(done.Bad[0].Error(), want) {
			t.Errorf("%s: %v, want %s", line, done.Bad, want)
		}
		if n := done.Notes + done.Records + done.Settings + 2; n != good {
			t.Errorf("%s: %d of %d lines were read", line, n, good)
		}
	}
}

func TestImportOfSomethingElse(t *testing.T) {
	s := indextest.MustOpen(t)
	done, err := s.Import(strings.NewReader(strings.Repeat("\x7fELF\n", 5000)))
	if err == nil || !strings.Contains(err.Error(), "no export") || done.BadLines > 1000 {
		t.Errorf("%d bad lines, %v", done.BadLines, err)
	}
}

func TestImportTellsWhatItStoredBeforeAnError(t *testing.T) {
	text := mustExport(t, rich(t))
	s := indextest.MustOpen(t)
	broken := errors.New("the cable came out")
	done, err := s.Import(io.MultiReader(strings.NewReader(text), iotest.ErrReader(broken)))
	if !errors.Is(err, broken) || done.Records != 3 {
		t.Errorf("%+v, %v", done, err)
	}
	if n, _ := s.Counts(); n.Notes != 2 {
		t.Errorf("%+v", n)
	}
}

func TestExportSaysWhenItCannotWrite(t *testing.T) {
	s := rich(t)
	for _, export := range []func(io.Writer) error{s.Export, s.ExportBarsCSV, s.ExportInspectionsCSV} {
		if err := export(failing{}); err == nil {
			t.Error("no error")
		}
	}
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, errors.New("no") }

func readCSV(t *testing.T, text string) (header []string, rows []map[string]string) {
	t.Helper()
	if strings.Count(text, "\n") != strings.Count(text, "\r\n") {
		t.Error("lines do not end in CRLF")
	}
	all, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, cells := range all[1:] {
		row := map[string]string{}
		for i, name := range all[0] {
			if cells[i] != "" {
				row[name] = cells[i]
			}
		}
		rows = append(rows, row)
	}
	return all[0], rows
}

func csvStore(t *testing.T) *index.Store {
	t.Helper()
	s := indextest.MustOpen(t)
	v := write("=cmd|'/c calc'!a1", noon(2026, 5, 14),
		says("Lots.", "bars.4.eggs=yes", "bars.4.eggs.amount=much", "bars.4.queen_cells.capped=yes", "bars.4.queen_cells.capped.count=2",
			"bars.5.honey=no", "bars.5.comb.drawn=0.5", "queen.seen=no", "signs.wasps=yes", "signs.wasps.count=3", "signs.mice=no",
			"actions.feed=yes", "actions.feed.what=syrup", "weather.temp_c=-3", "contents.eggs=yes", "contents.eggs.bars=5"))
	v.Read[0].Remarks = []string{"a \"quoted\" remark,\nof two lines", "@home"}
	v.Read[0].Check = []colony.Check{{Path: "queen.seen", Why: "hedged"}}
	mustTake(t, s, v)
	aside := mustTake(t, s, write("2", noon(2026, 5, 13), says("aside", "bars.1.eggs=yes")))[0]
	aside.State = colony.SetAside
	save(t, s, aside)
	mustTake(t, s, write("1", noon(2026, 5, 10)))
	return s
}

func TestInspectionsCSV(t *testing.T) {
	var b bytes.Buffer
	if err := csvStore(t).ExportInspectionsCSV(&b); err != nil {
		t.Fatal(err)
	}
	header, rows := readCSV(t, b.String())
	if len(rows) != 2 || rows[0]["hive"] != "1" || !slices.Equal(header[:5], []string{"record", "hive", "date", "at", "state"}) {
		t.Fatalf("%q\n%v", header, rows)
	}
	row := rows[1]
	delete(row, "record")
	delete(row, "note")
	want := map[string]string{"hive": "'=cmd|'/c calc'!a1", "date": "2026-05-14", "at": "2026-05-14T12:00:00Z", "state": "waiting",
		"queen.seen": "no", "signs": "wasps=yes; wasps.count=3; mice=no", "actions": "feed=yes; feed.what=syrup", "weather.temp_c": "-3",
		"contents.eggs": "yes", "other": "contents.eggs.bars=5", "remarks": "a \"quoted\" remark,\nof two lines; @home", "check": "queen.seen: hedged"}
	if fmt.Sprint(row) != fmt.Sprint(want) {
		t.Errorf("got  %v\nwant %v", row, want)
	}
}

func TestBarsCSV(t *testing.T) {
	var b bytes.Buffer
	if err := csvStore(t).ExportBarsCSV(&b); err != nil {
		t.Fatal(err)
	}
	_, rows := readCSV(t, b.String())
	for _, row := range rows {
		delete(row, "record")
		delete(row, "hive")
	}
	want := []map[string]string{
		{"date": "2026-05-14", "state": "waiting", "bar": "4", "eggs": "yes", "other": "eggs.amount=much", "queen_cells": "capped=yes; capped.count=2"},
		{"date": "2026-05-14", "state": "waiting", "bar": "5", "honey": "no", "comb.drawn": "0.5"},
	}
	if fmt.Sprint(rows) != fmt.Sprint(want) {
		t.Errorf("got  %v\nwant %v", rows, want)
	}
}

// Every leaf of the record has a column of its own or is part of one.
func TestCSVLeavesNothingOut(t *testing.T) {
	s := indextest.MustOpen(t)
	for _, v := range indextest.Visits(3, 60, 2) {
		mustTake(t, s, v)
	}
	var inspections, bars bytes.Buffer
	if err := errors.Join(s.ExportInspectionsCSV(&inspections), s.ExportBarsCSV(&bars)); err != nil {
		t.Fatal(err)
	}
	var values int
	for r := range s.Records(index.Filter{}) {
		values += len(colony.Leaves(&r.Read)) - 2 // hive and time stand in the first columns
	}
	_, rows := readCSV(t, inspections.String())
	_, more := readCSV(t, bars.String())
	cells := 0
	for _, row := range append(rows, more...) {
		for name, cell := range row {
			switch name {
			case "record", "hive", "date", "at", "state", "bar", "remarks", "check", "note":
			default:
				cells += 1 + strings.Count(cell, "; ")
			}
		}
	}
	if cells != values {
		t.Errorf("%d values in the tables, %d leaves in the records", cells, values)
	}
}

// Whatever is imported, nothing breaks, and what was stored comes back.
func FuzzImport(f *testing.F) {
	f.Add([]byte(`{"kind":"barwise","version":1}` + "\n" + `{"kind":"note","note":{"hash":"a","text":"x","taken":"2026-05-14T12:00:00Z"}}` + "\n" +
		`{"kind":"record","record":{"id":"r","note_hash":"a","seq":1,"state":"waiting","changed":"2026-05-14T12:00:00Z","read":{"schema":"barwise/1","hive":"3","evidence":{"hive":[[0,9]],"bars.1.eggs":[[-4,2]]},"bars":[{"bar":1,"contents":[{"what":"eggs","present":true}]}]}}}`))
	f.Add([]byte("{\"kind\":\"words\",\"words\":{\"plants\":[\"\xff\"]}}"))
	dir := f.TempDir()
	n := 0
	f.Fuzz(func(t *testing.T, data []byte) {
		n++
		s := indextest.Reopen(t, fmt.Sprintf("%s/%d", dir, n))
		defer s.Close()
		if _, err := s.Import(bytes.NewReader(data)); err != nil && !strings.Contains(err.Error(), "no export") {
			t.Fatal(err)
		}
		for _, q := range []index.Query{{Words: "x"}, {Where: []index.Clause{is("bars.*.eggs", "yes")}, Per: index.Bars}, {Each: index.ByMonth}} {
			mustFind(t, s, q)
		}
		indextest.MustAgree(t, s)
		if text := mustExport(t, s); n%2 == 0 {
			other := indextest.Reopen(t, fmt.Sprintf("%s/%d-other", dir, n))
			defer other.Close()
			mustImport(t, other, text)
			if back := mustExport(t, other); back != text {
				t.Errorf("not the same:\n%s\n%s", text, back)
			}
		}
	})
}
