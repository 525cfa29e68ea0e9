// Package tui is the evening review: a screen on which a person confirms or
// corrects what was read from a note, with the keyboard and in little time.
//
// The nouns:
//
//	question   a leaf that was flagged and that nobody has answered yet
//	step       one change to a record: accept, correct, remove, move, confirm
//	timeline   the versions of a record, for undo and redo
//	row        one line of the sheet: what is said of one thing, as chips
//	option     one way to go on with what was typed
//	mark       the letter and colour that stand for a content on the hive map
//
// The promises:
//
//   - Every step is handed to the [Keeper] as it happens, in order. What the
//     screen shows can be made again from the Keeper alone, so a closed
//     terminal costs at most the letters of a word not yet finished.
//   - Undo and redo come from the Keeper's history, so they work after a
//     restart.
//   - Letters and digits are never commands on the review screen: typing
//     starts a correction. Commands are the space bar, Tab, Enter, Delete, the
//     arrows and control keys; [KeyTable] lists them, from the same bindings
//     that act.
//   - Nothing from a note, a name or a reason reaches the terminal before
//     control characters, escape sequences and text-direction marks are gone.
//     Spans keep pointing into the note as it was handed in.
//   - View is pure: no clock, no input or output, any width.
//   - Colour is never the only sign. Each content has a letter, each flag a
//     mark, each selection a pointer.
//
// The package declares the small interfaces that it needs and knows neither
// the store nor the parser.
package tui
