package index

import (
	"encoding/hex"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/analysis"
	"github.com/blevesearch/bleve/v2/analysis/analyzer/custom"
	"github.com/blevesearch/bleve/v2/analysis/analyzer/keyword"
	"github.com/blevesearch/bleve/v2/analysis/lang/en"
	"github.com/blevesearch/bleve/v2/analysis/token/lowercase"
	"github.com/blevesearch/bleve/v2/analysis/token/porter"
	"github.com/blevesearch/bleve/v2/analysis/token/stop"
	"github.com/blevesearch/bleve/v2/analysis/tokenizer/unicode"
	"github.com/blevesearch/bleve/v2/analysis/tokenmap"
	"github.com/blevesearch/bleve/v2/mapping"

	"barwise/colony"
)

// mappingVersion moves whenever an index made before would answer otherwise
// than one made now: a change in the mapping below, or in entriesOf.
const mappingVersion = "3"

// The fields of the index. Nothing is stored in it but what it needs to find
// and to sort: hits are read from the store.
const (
	fieldKind    = "kind"    // inspection or bar
	fieldHive    = "hive"    // name
	fieldState   = "state"   // of the record
	fieldDay     = "day"     // civil day of the inspection, yyyy-mm-dd, and its month and year
	fieldBar     = "bar"     // number of a bar entry; see barTerm
	fieldPresent = "present" // paths of the leaves that say yes
	fieldDenied  = "denied"  // paths of the leaves that say no
	fieldValue   = "value"   // path=value of all other leaves
	fieldText    = "text"    // the keeper's words, of inspection entries
	fieldOrder   = "order"   // sorts by time and names the record; see orderKey
)

const (
	kindInspection = "inspection"
	kindBar        = "bar"
)

// entry is one document of the index: an inspection, or one of its bars. A
// bar's leaves have their paths from the bar on (capped_brood.cover=0.8). In
// an inspection's entry, which has all leaves, a bar's stand twice, by number
// and for any bar (bars.4.eggs and bars.*.eggs).
type entry struct {
	Kind    string   `json:"kind"`
	Hive    string   `json:"hive"`
	State   string   `json:"state"`
	Day     []string `json:"day"`
	Bar     string   `json:"bar"`
	Present []string `json:"present"`
	Denied  []string `json:"denied"`
	Value   []string `json:"value"`
	Text    []string `json:"text"`
	Order   string   `json:"order"`
}

// newMapping describes the index: every field by name, nothing guessed.
func newMapping() mapping.IndexMapping {
	doc := bleve.NewDocumentStaticMapping()
	for _, name := range []string{fieldKind, fieldHive, fieldState, fieldDay, fieldPresent, fieldDenied, fieldValue} {
		doc.AddFieldMappingsAt(name, exactField())
	}
	for _, name := range []string{fieldOrder, fieldBar} {
		sorted := exactField()
		sorted.DocValues = true
		doc.AddFieldMappingsAt(name, sorted)
	}
	text := exactField()
	text.Analyzer = noteAnalyzer
	doc.AddFieldMappingsAt(fieldText, text)

	m := bleve.NewIndexMapping()
	addNoteAnalyzer(m)
	m.DefaultMapping = doc
	m.DefaultAnalyzer = keyword.Name
	m.IndexDynamic, m.StoreDynamic, m.DocValuesDynamic = false, false, false
	return m
}

// noteAnalyzer makes the terms of a note's words: English, by their stems.
const noteAnalyzer = "note"

// particles are words that English searches commonly pass over, and that tell
// at the hive: thymol is in or out, a feeder on or off.
var particles = strings.Fields("out off up down over under again before after few more same")

func addNoteAnalyzer(m *mapping.IndexMappingImpl) {
	common := analysis.NewTokenMap()
	err := common.LoadBytes(en.EnglishStopWords)
	for _, word := range particles {
		delete(common, word)
	}
	tokens := []any{}
	for _, word := range slices.Sorted(maps.Keys(common)) {
		tokens = append(tokens, word)
	}
	const commonWords = "common words"
	err = errors.Join(err,
		m.AddCustomTokenMap(commonWords, map[string]any{"type": tokenmap.Name, "tokens": tokens}),
		m.AddCustomTokenFilter(commonWords, map[string]any{"type": stop.Name, "stop_token_map": commonWords}),
		m.AddCustomAnalyzer(noteAnalyzer, map[string]any{"type": custom.Name, "tokenizer": unicode.Name,
			"token_filters": []any{en.PossessiveName, lowercase.Name, commonWords, porter.Name}}))
	if err != nil {
		panic("index: the analyzer of notes is always sound: " + err.Error())
	}
}

// The days, months and years of inspections are the terms of one field; a
// stretch of time is then a few of them.
const (
	dayForm   = "2006-01-02"
	monthForm = "2006-01"
	yearForm  = "2006"
)

// exactField is indexed as it is, and only to tell whether a term is there.
func exactField() *mapping.FieldMapping {
	f := bleve.NewTextFieldMapping()
	f.Analyzer = keyword.Name
	f.Store, f.IncludeInAll, f.IncludeTermVectors, f.DocValues = false, false, false, false
	f.SkipFreqNorm = true
	return f
}

// orderKey sorts as the time of inspection does, then by number, and carries
// what a list of hits needs without a look into the store: instant, civil day,
// number and hive. It is text, since the index takes the byte 0xff for the end
// of a value.
func orderKey(at time.Time, n number, hive string) string {
	return hex.EncodeToString(timeKey(at)) + colony.DateOf(at).String() + fmt.Sprintf("%08x", uint64(n)) + hive
}

// The places in an orderKey.
const (
	orderDay    = 2 * timeKeyLen
	orderNumber = orderDay + len(time.DateOnly)
	orderHive   = orderNumber + 8
)

// order is an orderKey as the index gives it back.
type order string

func (o order) day() string  { return string(o[orderDay:orderNumber]) }
func (o order) hive() string { return string(o[orderHive:]) }

func (o order) number() number {
	n, _ := strconv.ParseUint(string(o[orderNumber:orderHive]), 16, 64)
	return number(n)
}

// entriesOf makes the index entries of a record, by their document IDs. The
// text is the stretches of the note that are about this inspection.
func entriesOf(r *colony.Record, n number, text []string) map[string]*entry {
	ins := current(r)
	day := colony.DateOf(ins.At).String()
	base := entry{Hive: ins.Hive, State: string(r.State), Day: []string{day, day[:len(monthForm)], day[:len(yearForm)]},
		Order: orderKey(ins.At, n, ins.Hive)}
	whole := base
	whole.Kind, whole.Text = kindInspection, text
	entries := map[string]*entry{entryID(n, ""): &whole}
	anyBar := map[string]bool{}
	for _, leaf := range colony.Leaves(&ins) {
		path := plainPath(leaf.Path)
		if path == "hive" || path == "at" {
			continue
		}
		whole.add(path, leaf.Value)
		barNumber, rest, ok := barPath(path)
		if !ok {
			continue
		}
		if all := "bars.*." + rest; !anyBar[all+"="+leaf.Value] {
			anyBar[all+"="+leaf.Value] = true
			whole.add(all, leaf.Value)
		}
		bar := entries[entryID(n, barNumber)]
		if bar == nil {
			copied := base
			bar = &copied
			bar.Kind, bar.Bar = kindBar, barTerm(barNumber)
			entries[entryID(n, barNumber)] = bar
		}
		bar.add(rest, leaf.Value)
	}
	return entries
}

func (e *entry) add(path, value string) {
	switch value {
	case "yes":
		e.Present = append(e.Present, path)
	case "no":
		e.Denied = append(e.Denied, path)
	default:
		e.Value = append(e.Value, path+"="+value)
	}
}

// plainPath drops the number of a second deed of one kind: actions.feed#2.what
// is found as actions.feed.what.
func plainPath(path string) string {
	at := strings.IndexByte(path, '#')
	if at < 0 {
		return path
	}
	end := at + 1
	for end < len(path) && path[end] != '.' {
		end++
	}
	return path[:at] + path[end:]
}

// barPath splits bars.4.eggs into the bar and the rest.
func barPath(path string) (number, rest string, ok bool) {
	after, ok := strings.CutPrefix(path, "bars.")
	if !ok {
		return "", "", false
	}
	return strings.Cut(after, ".")
}

// entryID names an entry: a record's number, and the bar's or "".
func entryID(n number, bar string) string {
	id := strconv.FormatUint(uint64(n), 36)
	if bar == "" {
		return id
	}
	return id + "/" + bar
}

// barTerm is the number of a bar as it stands in the index, where it sorts.
func barTerm(number string) string { return fmt.Sprintf("%04s", number) }
