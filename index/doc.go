// Package index keeps what was taken in and finds it again.
//
// Two things lie in the data directory:
//
//	store.db  a bbolt file, the truth: notes, records, their history, settings
//	index/    a bleve index, derived from the store; it may be deleted
//
// The nouns:
//
//	Store    the open data directory
//	Filter   which records to list
//	Query    what to find: words, and conditions on the leaves of a record
//	Hit      an inspection or a bar that a query found, with the words that say so
//	Report   whether store and index agree
//
// Promises. A note is kept byte for byte, also where it is no valid UTF-8, and
// so is every later edit of it. A note and its inspections enter in one
// transaction, which is on the disk before success is returned; so does every
// change, and the version before it stays in the record's history. A store
// that is newer than this program or damaged is refused and left as it is.
// The store's file has mode 0600, and directories made here have mode 0700.
//
// The index follows the store by a log of changes. Each change has a number
// and a random token, and the index holds those of the last change it has
// seen; so one that is missing, damaged, made by another version, left behind
// by a crash, or that belongs to another copy of the store is noticed when the
// store is opened, and mended or built anew. Changes are handed to the index
// in batches: at the latest when something is looked for and at Close.
//
// A leaf stands in the index under what it says: present (a yes), denied (a
// no) or a value. Words find a denial as they find anything that was said; a
// condition on a present thing never does.
//
// Caveats. One process at a time may write; any number may read while none
// writes. Quotes are the keeper's text as it was given: whoever prints them
// takes out control and escape sequences. On a file system without locks, or
// with locks that do not hold between machines, the store is not protected
// from a second writer.
package index
