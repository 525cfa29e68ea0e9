package command

import (
	"strings"

	"github.com/spf13/cobra"
)

// scope is how much of the records a command looks at: the flags --hive, --from
// and --to.
type scope struct{ hive, from, to string }

func (o *scope) register(a *app, cmd *cobra.Command) {
	a.hiveFlag(cmd, &o.hive, "only hive `NAME`")
	cmd.Flags().StringVar(&o.from, "from", "", "only from `DAY` on, such as 2026-04-01")
	cmd.Flags().StringVar(&o.to, "to", "", "only up to `DAY`")
}

// period is the days that --from and --to name.
func (o *scope) period() (p period, err error) {
	if p.from, err = dayFlag("--from", o.from); err != nil {
		return p, err
	}
	p.to, err = dayFlag("--to", o.to)
	return p, err
}

// hiveFlag adds --hive, which completes the names of hives that there are.
func (a *app) hiveFlag(cmd *cobra.Command, hive *string, usage string) {
	cmd.Flags().StringVar(hive, "hive", "", usage)
	cobra.CheckErr(cmd.RegisterFlagCompletionFunc("hive", a.hiveNames))
}

// hiveNamed is the name of a hive as the records spell it.
func hiveNamed(name string) string { return strings.ToLower(strings.TrimSpace(name)) }
