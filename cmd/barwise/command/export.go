package command

import (
	"bufio"
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"barwise/index"
)

func (a *app) export() *cobra.Command {
	var csv, file string
	cmd := &cobra.Command{
		Use:   "export",
		Short: "Write everything out",
		Long: `Export writes all that is kept: notes, readings, corrections with their history
and your own words, as JSON Lines that import reads back without loss. With
--csv it writes a table (RFC 4180), a row a bar or a row an inspection, for a
spreadsheet; a table leaves out what has no column.`,
		Example: `  barwise export > everything.jsonl
  barwise export --csv bars --to bars.csv`,
		Args: wants(0, 0, ""),
		RunE: func(*cobra.Command, []string) error { return a.runExport(csv, file) },
	}
	cmd.Flags().StringVar(&csv, "csv", "", "write a `TABLE` instead: bars or inspections")
	cmd.Flags().StringVar(&file, "to", "", "write to `FILE`, which must not exist, instead of standard output")
	cobra.CheckErr(cmd.RegisterFlagCompletionFunc("csv", cobra.FixedCompletions([]string{"bars", "inspections"}, cobra.ShellCompDirectiveNoFileComp)))
	return cmd
}

func (a *app) runExport(csv, file string) error {
	var write func(*index.Store, io.Writer) error
	switch csv {
	case "":
		write = (*index.Store).Export
	case "bars":
		write = (*index.Store).ExportBarsCSV
	case "inspections":
		write = (*index.Store).ExportInspectionsCSV
	default:
		return wrongUse("--csv is bars or inspections, not %q", clean(csv))
	}
	return a.withRecords(func(s *index.Store) error {
		if file == "" {
			return buffered(a.out, func(w io.Writer) error { return write(s, w) })
		}
		return newFile(file, func(w io.Writer) error { return write(s, w) })
	})
}

func buffered(out io.Writer, write func(io.Writer) error) error {
	w := bufio.NewWriterSize(out, 1<<16)
	if err := write(w); err != nil {
		return err
	}
	return w.Flush()
}

// newFile writes a file that was not there. One that could not be written to
// its end is removed again, so that half an export is never taken for a whole.
func newFile(name string, write func(io.Writer) error) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if os.IsExist(err) {
		return wrongUse("%s is there already; name another file", shown(name))
	}
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", shown(name), err)
	}
	err = buffered(f, write)
	if err == nil {
		err = f.Sync()
	}
	if closeErr := f.Close(); err == nil {
		err = closeErr
	}
	if err != nil {
		os.Remove(name)
		return fmt.Errorf("%s was not written: %w", shown(name), err)
	}
	return nil
}
