// Package colony holds the record of a top-bar hive: what one inspection
// found, what was done and what is to be done, each value reachable by a path
// such as bars.4.capped_brood.cover.
//
// The nouns:
//
//	Note        the keeper's words as they were handed in, verbatim and for good
//	Inspection  one visit to one colony, as read from a note
//	Leaf        one value of an inspection, named by its path
//	Span        a half-open byte range into the note: the evidence of a leaf
//	Check       a leaf that a person should look at, and why
//	Correction  what a person changed, kept as a layer over what was read
//	Record      an inspection as it is kept: read, corrected, waiting or confirmed
//
// Silence, zero and denial are three different things: a leaf that was not
// mentioned is absent (a nil pointer or an empty string), "no eggs" is present
// as false, and "no stings" is a count of zero.
//
// Lengths are millimetres, areas square decimetres, temperatures degrees
// Celsius and masses kilograms, except where an amount carries the unit that
// the keeper named. Shares run from 0 to 1.
//
// The package knows no clock, no files and no other package of this module.
package colony
