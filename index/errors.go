package index

import (
	"errors"
	"fmt"
	"runtime"
	"runtime/debug"
	"strings"
	"syscall"
)

// Errors of opening, to be told apart with [errors.Is].
var (
	ErrLocked  = errors.New("the store is in use by another process")
	ErrNewer   = errors.New("the store was written by a newer barwise")
	ErrDamaged = errors.New("the store is damaged")
)

// Errors of single operations.
var (
	ErrTaken    = errors.New("the note was taken in before")
	ErrUnknown  = errors.New("not in the store")
	ErrFull     = errors.New("no room left to write")
	ErrReadOnly = errors.New("the store is open for reading only")
)

// damaged says which file cannot be used and what to do about it.
func damaged(path string, why any) error {
	return fmt.Errorf("%s: %w (%v); nothing was changed in it: move it aside and restore a backup or import an export", path, ErrDamaged, why)
}

func unknown(kind, name string) error { return fmt.Errorf("%s %q: %w", kind, name, ErrUnknown) }

// explain gives the errors of a write the words a person needs.
func explain(path string, err error) error {
	for _, full := range []error{syscall.ENOSPC, syscall.EFBIG, syscall.EDQUOT} {
		// bbolt passes some errors on in words only.
		if err != nil && (errors.Is(err, full) || strings.Contains(err.Error(), full.Error())) {
			return fmt.Errorf("%s: %w (%v); this change was not stored, all earlier ones are safe: free some space and try again", path, ErrFull, err)
		}
	}
	return err
}

// guarded runs f and turns what a damaged file does to bbolt into ErrDamaged:
// a fault where the file ends before the pages it promises, or a panic where a
// page makes no sense. Panics that come from elsewhere pass.
func guarded(path string, f func() error) error {
	return guardedBy(func(p any) error {
		if _, fault := p.(interface{ Addr() uintptr }); !fault && !raisedInStore() {
			panic(p)
		}
		return damaged(path, p)
	}, f)
}

// guardedBy runs f with faults turned into panics, and panics into the error
// that explain makes of them.
func guardedBy(explain func(any) error, f func() error) (err error) {
	before := debug.SetPanicOnFault(true)
	defer debug.SetPanicOnFault(before)
	defer func() {
		if p := recover(); p != nil {
			err = explain(p)
		}
	}()
	return f()
}

// raisedInStore reports whether the panic being recovered started in bbolt.
func raisedInStore() bool {
	callers := make([]uintptr, 64)
	frames := runtime.CallersFrames(callers[:runtime.Callers(0, callers)])
	raised := false
	for {
		frame, more := frames.Next()
		switch {
		case strings.HasPrefix(frame.Function, "runtime.gopanic"), strings.HasPrefix(frame.Function, "runtime.panic"),
			strings.HasPrefix(frame.Function, "runtime.goPanic"), strings.HasPrefix(frame.Function, "runtime.sigpanic"):
			raised = true
		case raised && !strings.HasPrefix(frame.Function, "runtime."):
			return strings.HasPrefix(frame.Function, "go.etcd.io/bbolt")
		}
		if !more {
			return false
		}
	}
}
