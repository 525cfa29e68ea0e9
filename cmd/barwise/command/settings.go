package command

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"barwise/colony"
	"barwise/index"
)

// The keeper's choices that the arithmetic needs are kept with the own words,
// and set by subcommands of words.

// box sets the inside measures of the hives.
func (a *app) box() *cobra.Command {
	box := colony.DefaultBox
	var angle float64
	cmd := &cobra.Command{
		Use:   "box",
		Short: "The inside measures of your hives, in millimetres",
		Long: `Box sets the measures from which comb areas are worked out: the width at the
bars, the width at the floor or the angle of the walls, the depth from the bars
to the floor, the width of a bar, and how many bars the hive takes.`,
		Example: `  barwise words box --top 430 --bottom 180 --depth 290 --bar 35 --bars 24
  barwise words box --top 430 --depth 290 --angle 30`,
		Args: wants(0, 0, ""),
		RunE: func(cmd *cobra.Command, _ []string) error {
			changed := cmd.Flags().Changed
			if changed("angle") && changed("bottom") {
				return wrongUse("--angle and --bottom say the same twice; choose one")
			}
			if changed("angle") {
				box.Bottom = colony.BoxFromAngle(box.Top, box.Depth, angle).Bottom
			}
			box.Name = "your hive"
			if err := box.Check(); err != nil {
				return wrongUse("%w", err)
			}
			return a.changeSettings(func(set *colony.Settings) error { set.Box = box; return nil })
		},
	}
	f := cmd.Flags()
	f.Float64Var(&box.Top, "top", box.Top, "inside width at the bars, in `MM`")
	f.Float64Var(&box.Bottom, "bottom", box.Bottom, "inside width at the floor, in `MM`")
	f.Float64Var(&box.Depth, "depth", box.Depth, "depth from the bars to the floor, in `MM`")
	f.Float64Var(&box.Bar, "bar", box.Bar, "width of a bar, in `MM`")
	f.IntVar(&box.Bars, "bars", box.Bars, "bars that the hive takes")
	f.Float64Var(&angle, "angle", 0, "`DEGREES` of the walls from the vertical, instead of --bottom")
	return cmd
}

// winter chooses how much food is to be there before winter.
func (a *app) winter() *cobra.Command {
	var names []string
	for _, t := range colony.WinterTargets {
		names = append(names, t.Name)
	}
	return &cobra.Command{
		Use:       "winter CLIMATE|KG",
		Short:     "How much food your hives are to have before winter",
		Long:      "Winter sets the target that stores are compared with: a climate, or a number of\nkilograms of your own. The climates: " + strings.Join(names, ", ") + ".",
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
		Long: "Mites chooses the published limits that counts are shown beside. None of them is\nlaw, and they disagree. The sets: " +
			strings.Join(sets, ", ") + ".",
		Example:   "  barwise words mites ontario\n  barwise words mites all",
		Args:      wants(1, 1, "SET"),
		ValidArgs: sets,
		RunE: func(_ *cobra.Command, args []string) error {
			name := strings.ToLower(args[0])
			if !slices.Contains(sets, name) {
				return wrongUse("no set of limits %q: there are %s", clean(args[0]), strings.Join(sets, ", "))
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
	b := set.Box
	fmt.Fprintf(a.out, "box    %s: %g mm at the bars, %g mm at the floor, %g mm deep, bars of %g mm, %d of them\n",
		oneLine(b.Name), b.Top, b.Bottom, b.Depth, b.Bar, b.Bars)
	fmt.Fprintf(a.out, "winter %s: %s\n", oneLine(set.Target.Name), set.Target.Need.Value)
	fmt.Fprintf(a.out, "mites  %s\n", cmp.Or(oneLine(set.MiteSet), "all"))
	half := "north"
	if set.Season.South {
		half = "south"
	}
	fmt.Fprintf(a.out, "half   %s\n", half)
}
