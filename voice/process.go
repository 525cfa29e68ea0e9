package voice

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os/exec"
	"strings"
	"time"
)

// ErrTimeLimit says that a program was stopped because it took too long.
var ErrTimeLimit = errors.New("stopped after the time limit")

// ProcessError says how a program that was run for us failed, with the end of
// what it wrote to stderr.
type ProcessError struct {
	Program string
	Stderr  string
	Err     error
}

func (e *ProcessError) Error() string {
	msg := fmt.Sprintf("%s: %v", e.Program, e.Err)
	if last := lastLine(e.Stderr); last != "" {
		msg += ": " + last
	}
	return msg
}

func (e *ProcessError) Unwrap() error { return e.Err }

// lastLine is the last line with something on it, without what could steer a
// terminal, at most 200 bytes.
func lastLine(s string) string {
	s = strings.TrimSpace(s)
	s = strings.Join(strings.Fields(cleanText(s[strings.LastIndexByte(s, '\n')+1:])), " ")
	if len(s) > 200 {
		s = s[:200] + "…"
	}
	return strings.ToValidUTF8(s, "")
}

// command is a program to be run with its arguments.
type command struct {
	path  string
	args  []string
	limit time.Duration // 0 for none
}

// graceToDie is how long the pipes of a killed program may stay open.
const graceToDie = 2 * time.Second

// run runs a program to its end and sends its output to stdout. It is killed
// when the context ends (the context's error) or the limit passes
// (ErrTimeLimit).
func (c command) run(ctx context.Context, stdout io.Writer) error {
	if c.limit > 0 {
		var cancel context.CancelFunc
		ctx, cancel = context.WithTimeoutCause(ctx, c.limit, ErrTimeLimit)
		defer cancel()
	}
	var stderr tail
	cmd := exec.CommandContext(ctx, c.path, c.args...)
	cmd.Stdout, cmd.Stderr = stdout, &stderr
	cmd.WaitDelay = graceToDie
	err := cmd.Run()
	if err == nil {
		return nil
	}
	if cause := context.Cause(ctx); cause != nil {
		err = cause
		if errors.Is(cause, ErrTimeLimit) {
			err = fmt.Errorf("%w of %s", ErrTimeLimit, c.limit)
		}
	}
	return &ProcessError{Program: c.path, Stderr: stderr.String(), Err: err}
}

// tail keeps the end of what is written to it.
type tail struct{ buf bytes.Buffer }

const tailSize = 16 << 10

func (t *tail) Write(p []byte) (int, error) {
	t.buf.Write(p)
	if extra := t.buf.Len() - tailSize; extra > 0 {
		t.buf.Next(extra)
	}
	return len(p), nil
}

func (t *tail) String() string { return t.buf.String() }
