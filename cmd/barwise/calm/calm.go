// Package calm keeps the terminal unasked: importing it stops a library from
// writing a query for the background colour to every terminal that any command
// is started on, and from waiting for the answer.
//
// The screen library asks when it is initialised, so that has to be settled
// before. It is: packages are initialised in the order of their import paths as
// soon as what they import is (Go specification, "Program initialization"), and
// this one needs nothing but the library that holds the answer. The review,
// which does want to know, asks for itself.
package calm

import "github.com/charmbracelet/lipgloss"

func init() { lipgloss.SetHasDarkBackground(true) }
