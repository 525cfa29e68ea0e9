package command

import (
	"fmt"

	"github.com/spf13/cobra"

	"barwise/index"
	"barwise/parse"
	"barwise/voice"
)

func (a *app) doctor() *cobra.Command {
	var rebuild bool
	cmd := &cobra.Command{
		Use:   "doctor",
		Short: "Say where the data lies and whether it is sound",
		Long: `Doctor says where the records lie, how many there are, what is installed for
recordings, and whether the search index agrees with the store. The store is the
truth; the index is made from it and can be made again with --rebuild at any
time.`,
		Example: `  barwise doctor
  barwise doctor --rebuild`,
		Args: wants(0, 0, ""),
		RunE: func(*cobra.Command, []string) error { return a.runDoctor(rebuild) },
	}
	cmd.Flags().BoolVar(&rebuild, "rebuild", false, "make the search index anew from the store")
	return cmd
}

func (a *app) runDoctor(rebuild bool) error {
	fmt.Fprintf(a.out, "data     %s\n", clean(a.dataDir()))
	fmt.Fprintf(a.out, "rules    %s\n", parse.Version())
	a.tools()
	if !a.hasStore() {
		fmt.Fprintln(a.out, "store    none yet; barwise take makes it")
		return nil
	}
	mended := func(word string) { fmt.Fprintln(a.err, "barwise: "+clean(word)) }
	return a.withStore(func(s *index.Store) error {
		if rebuild {
			if err := a.rebuild(s); err != nil {
				return err
			}
		}
		return a.examine(s)
	}, index.Log(mended))
}

// tools prints what is there for recordings, and the one command that installs
// the rest.
func (a *app) tools() {
	tools := voice.Probe()
	for i, t := range tools {
		found := t.Found
		if found == "" {
			found = "not there"
		}
		fmt.Fprintf(a.out, "%-8s %s: %s\n", first(i, "sound"), t.Does, clean(found))
	}
	if install := voice.InstallCommand(tools); install != "" {
		fmt.Fprintf(a.out, "%-8s %s\n", "", install)
	}
}

func (a *app) rebuild(s *index.Store) error {
	last := -1
	err := s.Rebuild(func(done, total int) {
		if percent := 100 * done / max(total, 1); percent/10 != last {
			last = percent / 10
			fmt.Fprintf(a.err, "rebuilding the index: %d of %d\n", done, total)
		}
	})
	if err != nil {
		return fmt.Errorf("the index could not be rebuilt: %w", err)
	}
	return nil
}

// examine prints the state of store and index; the exit code is 1 where they
// disagree, and 3 where the store itself is damaged.
func (a *app) examine(s *index.Store) error {
	r, err := s.Check()
	if err != nil {
		return err
	}
	n := r.Counts
	fmt.Fprintf(a.out, "store    version %d, %s, %s: %d waiting, %d confirmed, %d set aside\n", r.Version, amount(n.Notes, "note"),
		amount(n.Waiting+n.Confirmed+n.SetAside, "inspection"), n.Waiting, n.Confirmed, n.SetAside)
	fmt.Fprintf(a.out, "hives    %d\n", r.Hives)
	for _, problem := range r.Problems {
		fmt.Fprintf(a.out, "problem  %s\n", oneLine(problem))
	}
	switch {
	case r.Damaged:
		return fmt.Errorf("the store in %s is damaged; export what can be read, move it aside and import the export or a backup", clean(a.dataDir()))
	case len(r.Problems) > 0:
		return undone("store and index disagree; mend it with: barwise doctor --rebuild")
	}
	fmt.Fprintf(a.out, "index    %d entries, agrees with the store\n", r.Entries)
	return nil
}
