package tui

import (
	"context"
	"io"
	"time"

	"barwise/colony"
)

// Keeper is where records and notes are kept.
type Keeper interface {
	// Waiting lists the records that wait for a person, oldest first.
	Waiting() ([]colony.Record, error)
	// Record returns the record as it is kept now.
	Record(id string) (colony.Record, error)
	// Note returns the note, with its words as last edited.
	Note(hash string) (colony.Note, error)
	// Save keeps the record and its earlier version, or changes nothing.
	Save(r colony.Record) error
	// History lists the record's earlier versions, oldest first.
	History(id string) ([]colony.Record, error)
	// EditAndSave keeps new words for the note beside the old ones, with what
	// was read from them, and what a person did on a record, or changes nothing:
	// the corrections, answers and state of first before the words change, so
	// that their spans move with the words; those of last after. Either may be
	// nil. Corrections of other records of the note stay.
	EditAndSave(hash, text string, read []colony.Inspection, first, last *colony.Record) error
	// Take keeps a new note and what was read from it.
	Take(note colony.Note, read []colony.Inspection) ([]colony.Record, error)
}

// Reader makes inspections of a note, in the order spoken.
type Reader interface {
	Parse(note *colony.Note) []colony.Inspection
}

// Player plays a stretch of a note's recording.
type Player interface {
	// Play plays from and to these seconds at a tempo: 1 as it was said, less for
	// slower. It returns when the sound has ended. A new call, from another
	// goroutine, stops the one before.
	Play(rec colony.Recording, from, to, tempo float64) error
	// Stop ends what is playing; the review calls it as the person leaves.
	Stop()
}

// Effect is one leaf that would change in a waiting note.
type Effect struct {
	Hive string
	On   colony.Date
	Path string
	Was  string // empty: nothing stood there
	Will string // empty: nothing will stand there
}

// Teacher remembers what a recogniser or a typist writes for a word, and the
// names of hives.
type Teacher interface {
	// Preview tells what the alias would change, and changes nothing.
	Preview(heard, said string) ([]Effect, error)
	// Slip counts that heard was corrected to said, and tells how often it has
	// been, this time included, since it was last taught.
	Slip(heard, said string) (times int, err error)
	// Teach remembers the alias; from then on the Reader knows it. Notes that
	// wait are read again by the review.
	Teach(heard, said string) error
	// Meet tells that a person confirmed inspections of these hives, and reports
	// which of them the Reader did not know by name; it does from then on. Notes
	// that wait are read again by the review.
	Meet(hives []string) (news []string, err error)
}

// Drafts keeps unfinished text, so that closing the terminal loses none. An
// empty text removes the draft.
type Drafts interface {
	Draft(name string) (string, error)
	KeepDraft(name, text string) error
}

// Answer is what the history answers to a question.
type Answer struct {
	Understood string // the question as it was understood; empty: word for word
	Line       string // the answer in a line; empty where the hits say it all
	Hits       []Found
	All        int // hits that there are, listed or not
}

// Found is one hit of a search.
type Found struct {
	ID    string // of the record
	Hive  string
	On    colony.Date
	Bar   int    // 0: the whole colony
	Quote string // the words of the note
}

// Options say how and with what to review. The zero value is usable: the
// optional parts are nil and their keys are off.
type Options struct {
	In    io.Reader        // nil: the terminal
	Out   io.Writer        // nil: standard output
	Now   func() time.Time // nil: time.Now
	Plain bool             // questions and answers line by line, no screen
	New   bool             // begin with an empty note
	Mouse bool             // take the mouse: the terminal's own selecting then wants shift

	// Waiting is what waits as the review begins, for who asks early; nil: the
	// Keeper is asked.
	Waiting func() ([]colony.Record, error)

	Past    func(hive string) ([]colony.Record, error) // any state, newest first; "" for every hive
	Find    func(words string) (Answer, error)
	Player  Player
	Teacher Teacher
	Drafts  Drafts
}

// Review runs the review until the person leaves. What was not confirmed goes
// on waiting; that is no error.
func Review(ctx context.Context, k Keeper, r Reader, o Options) error {
	if o.Now == nil {
		o.Now = time.Now
	}
	if o.Plain {
		return runPlain(ctx, k, r, o)
	}
	return runScreen(ctx, k, r, o)
}
