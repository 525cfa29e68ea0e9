package command

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/charmbracelet/x/ansi"
	"github.com/spf13/cobra"

	"barwise/colony"
	"barwise/index"
)

// The keeper's choices that the arithmetic needs are kept with the own words,
// and set by subcommands of words.

// boxOptions are the measures of a box, and whose they are.
type boxOptions struct {
	colony.Box
	angle  float64
	hive   string
	forget bool
}

// box sets the inside measures of the hives, or of one of them.
func (a *app) box() *cobra.Command {
	o := boxOptions{Box: colony.DefaultBox}
	cmd := &cobra.Command{
		Use:   "box",
		Short: "The inside measures of your hives, in millimetres",
		Long: `Box sets the measures from which comb areas are worked out: the width at the
bars, the width at the floor or the angle of the walls, the depth from the bars
to the floor, the width of a bar, and how many bars the hive takes. They hold
for every hive that has none of its own; --hive gives one hive its own. --forget
goes back to what holds for the others.`,
		Example: `  barwise words box --top 430 --bottom 180 --depth 290 --bar 35 --bars 24
  barwise words box --top 430 --depth 290 --angle 30
  barwise words box --hive pond --top 380 --bottom 150 --depth 250
  barwise words box --hive pond --forget`,
		Args: wants(0, 0, ""),
		RunE: func(cmd *cobra.Command, _ []string) error { return a.runBox(o, cmd.Flags().Changed) },
	}
	a.hiveFlag(cmd, &o.hive, "only hive `NAME`")
	f := cmd.Flags()
	f.Float64Var(&o.Top, "top", o.Top, "inside width at the bars, in `MM`")
	f.Float64Var(&o.Bottom, "bottom", o.Bottom, "inside width at the floor, in `MM`")
	f.Float64Var(&o.Depth, "depth", o.Depth, "depth from the bars to the floor, in `MM`")
	f.Float64Var(&o.Bar, "bar", o.Bar, "width of a bar, in `MM`")
	f.IntVar(&o.Bars, "bars", o.Bars, "bars that the hive takes")
	f.Float64Var(&o.angle, "angle", 0, "`DEGREES` of the walls from the vertical, instead of --bottom")
	f.BoolVar(&o.forget, "forget", false, "go back to the measures that hold for the others")
	return cmd
}

func (a *app) runBox(o boxOptions, changed func(string) bool) error {
	if o.forget {
		for _, flag := range []string{"top", "bottom", "depth", "bar", "bars", "angle"} {
			if changed(flag) {
				return wrongUse("--forget goes back to other measures; --%s gives new ones", flag)
			}
		}
	}
	if changed("angle") && changed("bottom") {
		return wrongUse("--angle and --bottom say the same twice; choose one")
	}
	if changed("angle") {
		o.Bottom = colony.BoxFromAngle(o.Top, o.Depth, o.angle).Bottom
	}
	hive := hiveNamed(o.hive)
	if changed("hive") && hive == "" {
		return wrongUse("--hive takes the name of a hive")
	}
	if o.Name = "your hive"; hive != "" {
		o.Name = "hive " + hive
	}
	if err := o.Check(); err != nil {
		return wrongUse("%w", err)
	}
	return a.changeSettings(func(set *colony.Settings) error {
		switch {
		case o.forget && hive == "":
			set.Box = colony.DefaultBox
		case o.forget:
			if _, ok := set.Boxes[hive]; !ok {
				return undone("hive %q has no measures of its own", clean(hive))
			}
			delete(set.Boxes, hive)
		case hive == "":
			set.Box = o.Box
		default:
			if set.Boxes == nil {
				set.Boxes = map[string]colony.Box{}
			}
			set.Boxes[hive] = o.Box
		}
		return nil
	})
}

// winter chooses how much food is to be there before winter.
func (a *app) winter() *cobra.Command {
	var names []string
	for _, t := range colony.WinterTargets {
		names = append(names, t.Name)
	}
	return &cobra.Command{
		Use:   "winter CLIMATE|KG",
		Short: "How much food your hives are to have before winter",
		Long: ansi.Wordwrap("Winter sets the target that stores are compared with: a climate, or a number of kilograms of your own. The climates: "+
			strings.Join(names, "; ")+".", 80, ""),
		Example:   "  barwise words winter britain\n  barwise words winter 18",
		Args:      wants(1, 1, "CLIMATE or number of KG"),
		ValidArgs: names,
		RunE: func(_ *cobra.Command, args []string) error {
			return a.changeSettings(func(set *colony.Settings) error {
				if kg, err := strconv.ParseFloat(strings.TrimSuffix(args[0], "kg"), 64); err == nil {
					if kg <= 0 || kg > 200 {
						return wrongUse("%s: a winter target lies between 0 and 200 kg", clean(args[0]))
					}
					set.Target = colony.OwnWinterTarget(kg)
					return nil
				}
				target, err := colony.WinterTargetNamed(strings.ToLower(args[0]))
				if err != nil {
					return wrongUse("%w", err)
				}
				set.Target = target
				return nil
			})
		},
	}
}

// miteSet chooses whose limits mite counts are compared with.
func (a *app) miteSet() *cobra.Command {
	sets := append(colony.MiteLimitSets(), "all")
	return &cobra.Command{
		Use:   "mites SET",
		Short: "Whose limits mite counts are compared with",
		Long: ansi.Wordwrap("Mites chooses the published limits that counts are shown beside. None of them is law, and they disagree. The sets: "+
			strings.Join(sets, "; ")+".", 80, ""),
		Example:   "  barwise words mites ontario\n  barwise words mites all",
		Args:      wants(1, 1, "SET"),
		ValidArgs: sets,
		RunE: func(_ *cobra.Command, args []string) error {
			name := strings.ToLower(args[0])
			if !slices.Contains(sets, name) {
				return wrongUse("no set of limits %q: there are %s", clean(args[0]), strings.Join(sets, "; "))
			}
			return a.changeSettings(func(set *colony.Settings) error {
				set.MiteSet = strings.TrimSuffix(name, "all")
				return nil
			})
		},
	}
}

// hemisphere turns the seasons round.
func (a *app) hemisphere() *cobra.Command {
	halves := []string{"north", "south"}
	return &cobra.Command{
		Use:       "half north|south",
		Short:     "Which half of the earth your seasons are of",
		Example:   "  barwise words half south",
		Args:      wants(1, 1, "north or south"),
		ValidArgs: halves,
		RunE: func(_ *cobra.Command, args []string) error {
			if !slices.Contains(halves, args[0]) {
				return wrongUse("the halves are north and south, not %q", clean(args[0]))
			}
			return a.changeSettings(func(set *colony.Settings) error {
				set.Season.South = args[0] == "south"
				return nil
			})
		},
	}
}

func (a *app) changeSettings(change func(*colony.Settings) error) error {
	return a.withStore(func(s *index.Store) error {
		set := colony.DefaultSettings()
		if _, err := s.Setting(settingBees, &set); err != nil {
			return err
		}
		if err := change(&set); err != nil {
			return err
		}
		return s.SetSetting(settingBees, set)
	})
}

// printSettings lists the choices as they stand.
func (a *app) printSettings(set colony.Settings) {
	a.printBox(set.Box)
	for _, hive := range slices.Sorted(maps.Keys(set.Boxes)) {
		a.printBox(set.Boxes[hive])
	}
	fmt.Fprintf(a.out, "winter %s: %s\n", oneLine(set.Target.Name), set.Target.Need.Value)
	fmt.Fprintf(a.out, "mites  %s\n", cmp.Or(oneLine(set.MiteSet), "all"))
	half := "north"
	if set.Season.South {
		half = "south"
	}
	fmt.Fprintf(a.out, "half   %s\n", half)
}

func (a *app) printBox(b colony.Box) {
	fmt.Fprintf(a.out, "box    %s: %.4g mm at the bars, %.4g mm at the floor, %.4g mm deep, bars of %g mm, %d of them\n",
		oneLine(b.Name), b.Top, b.Bottom, b.Depth, b.Bar, b.Bars)
}
