package command

import (
	"context"
	"errors"
	"fmt"
	"os"
	"strings"
	"time"

	"barwise/index"
)

// watchEvery is the time between two looks. A phone syncs in bursts, and a look
// at a folder costs little; notices from the system differ by platform and do
// not come from network folders at all.
const watchEvery = 2 * time.Second

// watch takes in what is there and what appears, until the context ends. The
// store is open only while something is taken, so that review works beside it.
func (a *app) watch(ctx context.Context, names []string, l *loader, asJSON bool) error {
	for _, name := range names {
		if info, err := os.Stat(name); err != nil || !info.IsDir() {
			return wrongUse("--watch: %s is not a folder", shown(name))
		}
	}
	fmt.Fprintf(a.err, "Watching %s; stop with Ctrl-C.\n", shown(strings.Join(names, ", ")))
	look := time.NewTicker(a.every)
	defer look.Stop()
	w := watched{seen: map[string]stamp{}, done: map[string]stamp{}}
	waiting, told := false, map[string]bool{}
	for {
		files, bad := notesUnder(names)
		for _, err := range bad {
			if text := clean(err.Error()); !told[text] {
				fmt.Fprintln(a.err, "barwise: "+text)
				told[text] = true
			}
		}
		if fresh := w.fresh(files); len(fresh) > 0 {
			l.now = a.now()
			t := taker{app: a, load: l, json: asJSON}
			err := a.withStore(func(s *index.Store) error { return t.all(ctx, s, fresh) })
			switch {
			case ctx.Err() != nil:
				return nil
			case errors.Is(err, index.ErrLocked):
				if !waiting {
					fmt.Fprintln(a.err, "The store is in use; trying again until it is free.")
				}
				waiting = true
			case err != nil:
				return err
			default:
				waiting = false
				w.settle(fresh)
			}
		}
		select {
		case <-ctx.Done():
			return nil
		case <-look.C:
		}
	}
}

// stamp tells one state of a file from another.
type stamp struct {
	size    int64
	changed time.Time
}

// watched remembers the files of a watched folder: as they stood at the last
// look, and as they stood when they were dealt with.
type watched struct{ seen, done map[string]stamp }

// fresh lists the files that are new or changed, and that stood still since the
// last look, so that none is taken while it is still being written.
func (w *watched) fresh(files []string) []string {
	var out []string
	for _, file := range files {
		info, err := os.Stat(file)
		if err != nil {
			continue
		}
		now := stamp{info.Size(), info.ModTime()}
		if w.done[file] != now && w.seen[file] == now && now.size > 0 {
			out = append(out, file)
		}
		w.seen[file] = now
	}
	return out
}

// settle marks the files as dealt with.
func (w *watched) settle(files []string) {
	for _, file := range files {
		w.done[file] = w.seen[file]
	}
}
