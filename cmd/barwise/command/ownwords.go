package command

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"barwise/colony"
	"barwise/index"
	"barwise/parse"
)

func (a *app) words() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "words",
		Short: "Your own words and measures",
		Long: `Words lists what you have taught barwise: words that a recogniser or your thumb
writes for others, plants, names of hives, and how a word sounds; and what it
reckons with: the measures of your hives, the winter target, limits for mites,
the half of the earth. Words are used whenever a note is read from now on; what
was read before stays as it is. A hive whose inspection you confirmed is known
by itself: from then on its name alone tells it, in small letters too.`,
		Example: `  barwise words
  barwise words alias "queen's ells" "queen cells"
  barwise words plant phacelia
  barwise words hive "the old lady"
  barwise words sound phacelia "fuh seal yuh"
  barwise words forget phacelia
  barwise words box --top 430 --bottom 180 --depth 290
  barwise words box --hive pond --top 380 --bottom 150 --depth 250
  barwise words winter britain`,
		Args: wants(0, 0, ""),
		RunE: func(*cobra.Command, []string) error { return a.listWords() },
	}
	cmd.AddCommand(
		a.teach("alias HEARD SAID", "When you read HEARD, I said SAID", 2, func(own *colony.OwnWords, args []string) {
			if own.Aliases == nil {
				own.Aliases = map[string]string{}
			}
			own.Aliases[strings.ToLower(args[0])] = strings.ToLower(args[1])
		}),
		a.teach("sound WORD HOW", "WORD sounds like HOW, for recordings: spell it as you say it", 2, func(own *colony.OwnWords, args []string) {
			if own.Sounds == nil {
				own.Sounds = map[string]string{}
			}
			own.Sounds[strings.ToLower(args[0])] = strings.ToLower(args[1])
		}),
		a.teach("plant NAME", "NAME is a plant", 1, func(own *colony.OwnWords, args []string) {
			own.Plants = added(own.Plants, args[0])
		}),
		a.teach("hive NAME", "NAME is a hive", 1, func(own *colony.OwnWords, args []string) {
			own.Hives = added(own.Hives, args[0])
		}),
		a.forget(), a.box(), a.winter(), a.miteSet(), a.hemisphere(),
	)
	return cmd
}

func added(list []string, word string) []string {
	list = append(slices.Clone(list), strings.ToLower(strings.TrimSpace(word)))
	slices.Sort(list)
	return slices.Compact(list)
}

// teach is a subcommand that adds to the own words.
func (a *app) teach(use, short string, n int, add func(*colony.OwnWords, []string)) *cobra.Command {
	return &cobra.Command{Use: use, Short: short, Args: wants(n, n, strings.Join(strings.Fields(use)[1:], " and ")),
		Example: "  barwise words " + strings.NewReplacer("HEARD", `"bear three"`, "SAID", `"bar three"`, "WORD", "phacelia", "HOW", `"fuh seal yuh"`, "NAME", "phacelia").Replace(use),
		RunE: func(_ *cobra.Command, args []string) error {
			return a.changeWords(func(own *colony.OwnWords) error {
				for _, word := range args {
					if strings.TrimSpace(word) == "" {
						return wrongUse("words: an empty word cannot be taught")
					}
				}
				add(own, args)
				return nil
			})
		}}
}

func (a *app) forget() *cobra.Command {
	return &cobra.Command{Use: "forget WORD", Short: "Take one of your own words back", Args: wants(1, 1, "WORD"),
		Example: "  barwise words forget phacelia",
		RunE: func(_ *cobra.Command, args []string) error {
			word := strings.ToLower(strings.TrimSpace(args[0]))
			return a.changeWords(func(own *colony.OwnWords) error {
				is := func(w string) bool { return w == word }
				_, alias := own.Aliases[word]
				_, sound := own.Sounds[word]
				if !alias && !sound && !slices.ContainsFunc(own.Plants, is) && !slices.ContainsFunc(own.Hives, is) {
					return undone("%q is none of your own words", clean(word))
				}
				delete(own.Aliases, word)
				delete(own.Sounds, word)
				own.Plants, own.Hives = slices.DeleteFunc(own.Plants, is), slices.DeleteFunc(own.Hives, is)
				return nil
			})
		}}
}

// changeWords keeps the changed words if a parser can be made with them.
func (a *app) changeWords(change func(*colony.OwnWords) error) error {
	return a.withStore(func(s *index.Store) error {
		own, err := s.OwnWords()
		if err != nil {
			return err
		}
		own.Aliases, own.Sounds = maps.Clone(own.Aliases), maps.Clone(own.Sounds)
		if err := change(&own); err != nil {
			return err
		}
		if _, err := parse.New(own); err != nil {
			return wrongUse("%w", err)
		}
		return s.SetOwnWords(own)
	})
}

func (a *app) listWords() error {
	var own colony.OwnWords
	set := colony.DefaultSettings()
	if a.hasStore() {
		if err := a.withRecords(func(s *index.Store) (err error) {
			if own, err = s.OwnWords(); err != nil {
				return err
			}
			_, err = s.Setting(settingBees, &set)
			return err
		}); err != nil {
			return err
		}
	}
	for _, heard := range slices.Sorted(maps.Keys(own.Aliases)) {
		fmt.Fprintf(a.out, "alias  %s → %s\n", oneLine(heard), oneLine(own.Aliases[heard]))
	}
	for _, word := range slices.Sorted(maps.Keys(own.Sounds)) {
		fmt.Fprintf(a.out, "sound  %s, said %s\n", oneLine(word), oneLine(own.Sounds[word]))
	}
	for _, plant := range own.Plants {
		fmt.Fprintf(a.out, "plant  %s\n", oneLine(plant))
	}
	for _, hive := range own.Hives {
		fmt.Fprintf(a.out, "hive   %s\n", oneLine(hive))
	}
	a.printSettings(set)
	return nil
}
