package command

import (
	"context"
	"runtime/debug"
	"sync"

	"github.com/spf13/cobra"

	"barwise/index"
	"barwise/tui"
)

type reviewOptions struct{ plain, blank, mouse bool }

func (a *app) review() *cobra.Command {
	var o reviewOptions
	cmd := &cobra.Command{
		Use:   "review",
		Short: "Confirm or correct what was read",
		Long: `Review opens a screen on the inspections that wait: the note with the words
behind each value, and what should be looked at first. Everything is kept as it
is done; leaving at any moment loses nothing. --plain asks and answers line by
line instead, for a screen reader or a terminal without a screen.`,
		Example: `  barwise review
  barwise review --plain`,
		Args: wants(0, 0, ""),
		RunE: func(*cobra.Command, []string) error {
			return heeding(func(ctx context.Context) error { return a.runReview(ctx, o) })
		},
	}
	cmd.Flags().BoolVar(&o.plain, "plain", false, "questions and answers line by line")
	cmd.Flags().BoolVar(&o.blank, "new", false, "begin with an empty note, to type an inspection")
	cmd.Flags().BoolVar(&o.mouse, "mouse", false, "select with the mouse too; marking text in the terminal then wants shift")
	return cmd
}

func (a *app) runReview(ctx context.Context, o reviewOptions) error {
	if !o.plain && !a.onTerminal() {
		return wrongUse("review wants a terminal; without one, say: barwise review --plain")
	}
	return a.withStore(func(s *index.Store) error {
		n, err := s.Counts()
		if err != nil {
			return err
		}
		if n.Notes == 0 && !o.blank {
			return undone("nothing has been taken in yet; begin with: barwise take FILE, or type an inspection with: barwise review --new")
		}
		if err := a.reviewOf(ctx, s, s, o); err != nil {
			return err
		}
		return a.dueAfterReview(s)
	})
}

// reviewOf runs the review of a store's records, whose steps go to the keeper.
func (a *app) reviewOf(ctx context.Context, s *index.Store, keeper tui.Keeper, o reviewOptions) error {
	// The first frame comes before what loading leaves behind is worth cleaning up.
	defer debug.SetGCPercent(debug.SetGCPercent(400))
	waiting := sync.OnceValues(keeper.Waiting)
	go waiting() // while the parser is made and the terminal asked what it can do
	parser, err := parserFor(s)
	if err != nil {
		return err
	}
	desk := &desk{store: s, parser: parser, now: a.now}
	return tui.Review(ctx, keeper, desk, tui.Options{
		In: a.in, Out: a.out, Now: a.now, Plain: o.plain, New: o.blank, Mouse: o.mouse, Waiting: waiting,
		Past: desk.past, Find: desk.find, Teacher: desk, Drafts: desk, Player: &player{dataDir: a.dataDir()},
	})
}
