package tui

import (
	"slices"
	"sync"

	tea "github.com/charmbracelet/bubbletea"
)

// job is one piece of work on the Keeper: a save, or a reading that must see
// the saves before it.
type job struct {
	what   string // for the message when it fails: "save hive 3"
	run    func() (tea.Msg, error)
	looked bool // it only looks: when it fails, nothing is lost
}

// jobDone says how the job at the head of the queue ended.
type jobDone struct {
	msg tea.Msg
	err error
}

// queue runs jobs one after another, in the order they were asked for, so that
// a later step is never kept before an earlier one. A step that fails stays at
// the head and stops the queue: nothing is dropped, and it can be tried again.
// What only looks is dropped when it fails.
type queue struct {
	jobs    []job
	running func() (tea.Msg, error) // the head, once under way; nil for none
	err     error
}

// add puts a job at the end.
func (q *queue) add(j job) tea.Cmd {
	q.jobs = append(q.jobs, j)
	return q.next()
}

// next starts the head of the queue, unless it is running or has failed.
func (q *queue) next() tea.Cmd {
	if q.running != nil || q.err != nil || len(q.jobs) == 0 {
		return nil
	}
	run := sync.OnceValues(q.jobs[0].run)
	q.running = run
	return func() tea.Msg {
		msg, err := run()
		return jobDone{msg, err}
	}
}

// done takes the head off, or stops there.
func (q *queue) done(d jobDone) tea.Cmd {
	q.running = nil
	if d.err != nil && !q.jobs[0].looked {
		q.err = d.err
		return nil
	}
	q.jobs = q.jobs[1:]
	return q.next()
}

// again tries the job that failed once more.
func (q *queue) again() tea.Cmd {
	q.err = nil
	return q.next()
}

// drop gives up the job that failed.
func (q *queue) drop() tea.Cmd {
	if q.err != nil && len(q.jobs) > 0 {
		q.jobs = q.jobs[1:]
	}
	return q.again()
}

// drain does what is left, after the program was ended from outside: it waits
// for the job under way and runs the others. The first error ends it.
func (q *queue) drain() error {
	for q.err == nil && !q.idle() {
		_, err := q.running() // the head is under way from when it is the head
		q.done(jobDone{err: err})
	}
	return q.err
}

// keeps reports whether a step waits to be kept.
func (q *queue) keeps() bool {
	return slices.ContainsFunc(q.jobs, func(j job) bool { return !j.looked })
}

func (q *queue) idle() bool { return len(q.jobs) == 0 }
