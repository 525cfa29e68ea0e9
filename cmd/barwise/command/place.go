package command

import (
	"cmp"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
	"unicode"

	"github.com/adrg/xdg"
	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"

	"barwise/colony"
	"barwise/index"
	"barwise/parse"
)

// dataDir is the folder that holds the records: --data, else BARWISE_DATA,
// else the system's place for the data of a program.
func (a *app) dataDir() string {
	return cmp.Or(a.data, os.Getenv("BARWISE_DATA"), filepath.Join(xdg.DataHome, "barwise"))
}

// suggest is a command line that works here as it stands: with --data where it
// was given, and by go run where the program was not installed.
func (a *app) suggest(verb, rest string) string {
	line := "barwise " + verb
	if self, err := os.Executable(); err == nil && strings.Contains(self, "go-build") {
		line = "go run ./cmd/barwise " + verb
	}
	if a.data != "" {
		line += " --data " + quoted(a.data)
	}
	return strings.TrimSpace(line + " " + rest)
}

// withStore opens the store for one command and closes it after. An error of
// closing counts: it may be a write that did not happen.
func (a *app) withStore(do func(*index.Store) error, opts ...index.Option) (err error) {
	store, err := index.Open(a.dataDir(), opts...)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, store.Close()) }()
	return do(store)
}

// withRecords is withStore for a command that only looks. Where nothing was ever
// taken in it says so, and makes no store.
func (a *app) withRecords(do func(*index.Store) error, opts ...index.Option) error {
	if !a.hasStore() {
		return undone("nothing has been taken in yet in %s; begin with: barwise take FILE", clean(a.dataDir()))
	}
	return a.withStore(do, append(opts, index.ReadOnly())...)
}

// hasStore reports whether the data folder holds a store, without making one.
// One that cannot be looked at is there: opening it says what is wrong.
func (a *app) hasStore() bool {
	_, err := os.Stat(filepath.Join(a.dataDir(), index.StoreFile))
	return !errors.Is(err, fs.ErrNotExist)
}

// parserFor makes a parser that knows the keeper's own words and hives.
func parserFor(store *index.Store) (*parse.Parser, error) {
	own, err := wordsOf(store)
	if err != nil {
		return nil, err
	}
	return parse.New(own)
}

// wordsOf are the keeper's own words, with the hives that a confirmed record is about beside those that were
// taught.
func wordsOf(store *index.Store) (own colony.OwnWords, err error) {
	if own, err = store.OwnWords(); err != nil {
		return own, err
	}
	known, err := store.KnownHives()
	return withHives(own, known), err
}

// withHives are own words with more names of hives.
func withHives(own colony.OwnWords, names []string) colony.OwnWords {
	own.Hives = append(slices.Clone(own.Hives), names...)
	return own
}

// hiveNames completes the name of a hive from those in the store. A person who
// presses Tab is not kept waiting for a store in use.
func (a *app) hiveNames(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	var names []string
	if err := a.withRecords(func(s *index.Store) (err error) {
		names, err = s.Hives()
		return err
	}, index.LockWait(50*time.Millisecond)); err != nil {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	for i, name := range names {
		names[i] = oneLine(name)
	}
	return names, cobra.ShellCompDirectiveNoFileComp
}

// quoted is a file name as it can be pasted into a shell.
func quoted(name string) string {
	if strings.IndexFunc(name, func(r rune) bool {
		return !strings.ContainsRune("/._-+:@%", r) && !unicode.IsLetter(r) && !unicode.IsDigit(r)
	}) < 0 {
		return name
	}
	return "'" + strings.ReplaceAll(name, "'", `'\''`) + "'"
}

// onTerminal reports whether a person sits at both ends.
func (a *app) onTerminal() bool {
	in, ok := a.in.(*os.File)
	return ok && term.IsTerminal(in.Fd()) && a.width() > 0
}
