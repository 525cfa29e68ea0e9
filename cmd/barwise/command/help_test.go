package command

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/spf13/cobra"
)

// TestEveryCommandHasAnExample: what help says of each command, but those that
// the library adds, ends in one, and fits a terminal of the usual width.
func TestEveryCommandHasAnExample(t *testing.T) {
	seen := 0
	var visit func(*cobra.Command)
	visit = func(cmd *cobra.Command) {
		if seen++; cmd.Short == "" || cmd.Example == "" {
			t.Errorf("%s: short %q, example %q", cmd.CommandPath(), cmd.Short, cmd.Example)
		}
		var help strings.Builder
		cmd.SetOut(&help)
		if err := cmd.Help(); err != nil {
			t.Error(err)
		}
		for line := range strings.Lines(help.String()) {
			if wide := ansi.StringWidth(strings.TrimSpace(line)); wide > 80 {
				t.Errorf("%s: a line of its help has %d columns: %s", cmd.CommandPath(), wide, line)
			}
		}
		for _, below := range cmd.Commands() {
			visit(below)
		}
	}
	visit((&app{}).root())
	if seen < 15 {
		t.Errorf("only %d commands", seen)
	}
}
