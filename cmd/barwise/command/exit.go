package command

import (
	"errors"
	"fmt"
)

// The exit codes, as every command's help states them.
const (
	exitDone   = 0 // done
	exitUndone = 1 // nothing was found, or something was left undone
	exitUsage  = 2 // wrong use
	exitData   = 3 // the data cannot be used
)

// exitError is an error that names the exit code it leads to. One without a
// cause has been told already and prints nothing.
type exitError struct {
	code  int
	cause error
}

func (e *exitError) Error() string {
	if e.cause == nil {
		return ""
	}
	return e.cause.Error()
}

func (e *exitError) Unwrap() error { return e.cause }

func undone(format string, args ...any) error {
	return &exitError{exitUndone, fmt.Errorf(format, args...)}
}

func wrongUse(format string, args ...any) error {
	return &exitError{exitUsage, fmt.Errorf(format, args...)}
}

// toldAlready ends a command with the code and no further word.
func toldAlready(code int) error { return &exitError{code: code} }

// codeOf is the exit code of a command's error. What names no code of its own
// is data that could not be used.
func codeOf(err error) int {
	var e *exitError
	switch {
	case err == nil:
		return exitDone
	case errors.As(err, &e):
		return e.code
	default:
		return exitData
	}
}
