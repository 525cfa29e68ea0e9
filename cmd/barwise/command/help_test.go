package command

import (
	"testing"

	"github.com/spf13/cobra"
)

// TestEveryCommandHasAnExample: what help says of each command, but those that
// the library adds, ends in one.
func TestEveryCommandHasAnExample(t *testing.T) {
	seen := 0
	var visit func(*cobra.Command)
	visit = func(cmd *cobra.Command) {
		if seen++; cmd.Short == "" || cmd.Example == "" {
			t.Errorf("%s: short %q, example %q", cmd.CommandPath(), cmd.Short, cmd.Example)
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
