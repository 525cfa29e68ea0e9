package colony

import (
	"encoding/json"
	"time"
)

// Note is a text as it was handed in: typed, pasted, or written by a
// recogniser. The text is kept byte for byte.
type Note struct {
	Hash  string    `json:"hash"`           // SHA-256 of the text (of the recording, where there is one), hex
	Name  string    `json:"name,omitempty"` // file name, for people
	Text  string    `json:"text"`
	Taken time.Time `json:"taken"`          // when it was taken in
	Given time.Time `json:"given,omitzero"` // the time of the inspection as the caller gave it, or the file's
	Hive  string    `json:"hive,omitempty"` // the hive as the caller gave it

	Words     []TimedWord `json:"words,omitempty"`     // where the text came from timed words
	Recording *Recording  `json:"recording,omitempty"` // where there is one
	Private   bool        `json:"private,omitempty"`   // left out of what is shared
}

// Recording is the sound behind a note.
type Recording struct {
	Hash    string  `json:"hash"`              // SHA-256 of the file, hex
	File    string  `json:"file"`              // kept copy, relative to the data directory; or the linked path
	Linked  bool    `json:"linked,omitempty"`  // File is where the keeper has it, not a copy
	Seconds float64 `json:"seconds,omitempty"` // length
}

// TimedWord ties a span of the note's text to the recording. Confidence is the
// recogniser's posterior, 0 to 1; zero means that it gave none.
type TimedWord struct {
	Span       Span    `json:"span"`
	From       float64 `json:"from"` // seconds from the start
	To         float64 `json:"to"`
	Confidence float64 `json:"confidence,omitempty"`
}

// OwnWords are the keeper's own additions to the vocabulary: what a recogniser
// or a typist writes for a word (Aliases, heard → said), plants, hives by names
// that no rule would take for one, and how words sound that a recogniser does
// not know (Sounds, word → spelt as it sounds).
type OwnWords struct {
	Aliases map[string]string `json:"aliases,omitempty" toml:"aliases,omitempty"`
	Sounds  map[string]string `json:"sounds,omitempty" toml:"sounds,omitempty"`
	Plants  []string          `json:"plants,omitempty" toml:"plants,omitempty"`
	Hives   []string          `json:"hives,omitempty" toml:"hives,omitempty"`
}

// State is where a record stands.
type State string

// The states of a record.
const (
	Waiting   State = "waiting"   // for a person to confirm
	Confirmed State = "confirmed" // a person vouched for it
	SetAside  State = "set aside" // kept, but not part of the history
)

// Correction is one change that a person made to what was read. Value is the
// new value; a deleted leaf has Deleted set. Was is what stood there before,
// empty where there was nothing.
type Correction struct {
	Path    string    `json:"path"`
	Value   string    `json:"value,omitempty"`
	Deleted bool      `json:"deleted,omitempty"`
	Was     string    `json:"was,omitempty"`
	Span    *Span     `json:"span,omitempty"` // the words that a person tied it to
	At      time.Time `json:"at"`
}

// Record is one inspection as it is kept: what the parser read, never changed,
// the corrections as a layer over it in the order they were made, the flags
// that a person has answered, and the state.
type Record struct {
	ID          string       `json:"id"` // ULID, sorts by time taken in
	NoteHash    string       `json:"note_hash"`
	Seq         int          `json:"seq"` // place among the note's inspections, from 1
	Read        Inspection   `json:"read"`
	Corrections []Correction `json:"corrections,omitempty"`
	Accepted    []string     `json:"accepted,omitempty"` // checked paths that a person let stand
	State       State        `json:"state"`
	Changed     time.Time    `json:"changed"` // last change of any kind
}

// Inspection is what the record says now: the reading with the corrections
// applied, and with only those checks that nobody has answered yet. The result
// shares nothing with the record.
func (r *Record) Inspection() Inspection {
	ins := clone(r.Read)
	ins.ID = r.ID
	answered := map[string]bool{}
	for _, path := range r.Accepted {
		answered[path] = true
	}
	for _, c := range r.Corrections {
		answered[c.Path] = true
		if c.Deleted {
			Delete(&ins, c.Path)
			continue
		}
		// A correction was checked when it was made; a path that a later
		// version no longer knows stays in the layer and shows in the history.
		if Set(&ins, c.Path, c.Value) == nil && c.Span != nil {
			ins.Evidence.Set(c.Path, []Span{*c.Span})
		}
	}
	open := ins.Check[:0]
	for _, c := range ins.Check {
		if !answered[c.Path] {
			open = append(open, c)
		}
	}
	ins.Check = open
	return ins
}

// clone copies an inspection deeply, through its JSON form, which is lossless.
func clone(ins Inspection) Inspection {
	data, err := json.Marshal(ins)
	if err != nil {
		panic("colony: an inspection always has a JSON form: " + err.Error())
	}
	var out Inspection
	if err := json.Unmarshal(data, &out); err != nil {
		panic("colony: an inspection reads its own JSON form: " + err.Error())
	}
	return out
}
