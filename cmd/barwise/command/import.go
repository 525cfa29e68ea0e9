package command

import (
	"fmt"

	"github.com/spf13/cobra"

	"barwise/index"
)

func (a *app) importing() *cobra.Command {
	return &cobra.Command{
		Use:   "import FILE|-",
		Short: "Read back what export wrote",
		Long: `Import reads the JSON Lines of export into the store. What is there already
stays as it is; a line that cannot be used is named, and the rest goes on.`,
		Example: `  barwise import everything.jsonl
  barwise --data old export | barwise --data new import -`,
		Args: wants(1, 1, "FILE"),
		RunE: func(_ *cobra.Command, args []string) error { return a.runImport(args[0]) },
	}
}

func (a *app) runImport(name string) error {
	in := a.in
	if name != "-" {
		f, err := openFile(name)
		if err != nil {
			return fmt.Errorf("%s: %w", shown(name), readable(err))
		}
		defer f.Close()
		in = f
	}
	return a.withStore(func(s *index.Store) error {
		got, err := s.Import(in)
		for _, bad := range got.Bad {
			fmt.Fprintf(a.err, "barwise: %s: %s\n", shown(name), clean(bad.Error()))
		}
		if err != nil {
			return fmt.Errorf("%s: %w", shown(name), err)
		}
		return a.tellImported(name, got)
	})
}

// tellImported says what became of the lines.
func (a *app) tellImported(name string, got index.Imported) error {
	fmt.Fprintf(a.out, "%s and %s imported", amount(got.Notes, "note"), amount(got.Records, "inspection"))
	if got.Skipped > 0 {
		fmt.Fprintf(a.out, "; here already: %s", amount(got.Skipped, "line"))
	}
	if got.Differ > 0 {
		fmt.Fprintf(a.out, "; otherwise here, and kept so: %s", amount(got.Differ, "line"))
	}
	fmt.Fprintln(a.out)
	switch {
	case got.BadLines > 0 && got.Notes+got.Records+got.Skipped+got.Differ == 0:
		return fmt.Errorf("%s: no line of it could be used; import reads what barwise export writes", shown(name))
	case got.BadLines > 0:
		return undone("%s: %s could not be used", shown(name), amount(got.BadLines, "line"))
	}
	return nil
}
