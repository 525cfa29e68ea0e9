package tui

import (
	"os"
	"path/filepath"
	"testing"
)

func TestDraftDir(t *testing.T) {
	dir := DraftDir(filepath.Join(t.TempDir(), "drafts"))
	if text, err := dir.Draft("new"); text != "" || err != nil {
		t.Fatalf("%q, %v", text, err)
	}
	if err := dir.KeepDraft("../../etc/new", "bar 4"); err != nil {
		t.Fatal(err)
	}
	if text, err := dir.Draft("../../etc/new"); text != "bar 4" || err != nil {
		t.Errorf("%q, %v", text, err)
	}
	files, err := os.ReadDir(string(dir))
	if err != nil || len(files) != 1 {
		t.Fatalf("%v, %v", files, err)
	}
	if info, err := files[0].Info(); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
	for range 2 {
		if err := dir.KeepDraft("../../etc/new", ""); err != nil {
			t.Error(err)
		}
	}
	if text, _ := dir.Draft("../../etc/new"); text != "" {
		t.Errorf("left over: %q", text)
	}
}

func withDrafts(t *testing.T) (*driver, *fakeKeeper, Options) {
	t.Helper()
	k := take(t)
	o := options(k)
	o.Drafts = DraftDir(t.TempDir())
	return newDriver(t, k, o, 80, 24), k, o
}

func TestUnfinishedNoteIsTakenUpAgain(t *testing.T) {
	d, k, o := withDrafts(t)
	d.press("n", "hive 9 bar 1 hon") // and the terminal is closed
	again := newDriver(t, k, o, 80, 24)
	again.press("n")
	again.sees("hive 9 bar 1 hon", "taken up where it was left")
	again.press("ey", "ctrl+s")
	again.sees("hive 9", "bar 1", "honey")
	if text, _ := o.Drafts.Draft("new"); text != "" {
		t.Errorf("the draft is left over: %q", text)
	}
}

func TestDroppedNoteAsksOnce(t *testing.T) {
	d, _, o := withDrafts(t)
	d.press("n", "hive 9", "esc")
	d.sees("esc again drops what you typed")
	d.press("esc")
	d.sees("Nothing waits")
	if text, _ := o.Drafts.Draft("new"); text != "" {
		t.Errorf("the draft is left over: %q", text)
	}
}
