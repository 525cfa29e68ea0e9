package index

import (
	"encoding/hex"
	"fmt"
	"strings"
	"time"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/analysis/analyzer/keyword"
	"github.com/blevesearch/bleve/v2/analysis/lang/en"
	"github.com/blevesearch/bleve/v2/mapping"

	"barwise/colony"
)

// mappingVersion moves whenever an index made before would answer otherwise
// than one made now: a change in the mapping below, or in entriesOf.
const mappingVersion = "1"

// The fields of the index. Nothing is stored in it but what it needs to find
// and to sort: hits are read from the store.
const (
	fieldKind    = "kind"    // inspection or bar
	fieldHive    = "hive"    // name
	fieldState   = "state"   // of the record
	fieldDay     = "day"     // civil day of the inspection, yyyy-mm-dd
	fieldBar     = "bar"     // number of a bar entry; see barTerm
	fieldPresent = "present" // paths of the leaves that say yes
	fieldDenied  = "denied"  // paths of the leaves that say no
	fieldValue   = "value"   // path=value of all other leaves
	fieldText    = "text"    // the keeper's words, of inspection entries
	fieldOrder   = "order"   // sorts by time, and names the record; see orderKey
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
	Day     string   `json:"day"`
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
	text.Analyzer = en.AnalyzerName
	doc.AddFieldMappingsAt(fieldText, text)

	m := bleve.NewIndexMapping()
	m.DefaultMapping = doc
	m.DefaultAnalyzer = keyword.Name
	m.IndexDynamic, m.StoreDynamic, m.DocValuesDynamic = false, false, false
	return m
}

// exactField is indexed as it is, and only to tell whether a term is there.
func exactField() *mapping.FieldMapping {
	f := bleve.NewTextFieldMapping()
	f.Analyzer = keyword.Name
	f.Store, f.IncludeInAll, f.IncludeTermVectors, f.DocValues = false, false, false, false
	f.SkipFreqNorm = true
	return f
}

// orderKey sorts as the time of inspection does, and carries what a list of
// hits needs without a look into the store: instant, civil day, ID and hive.
// It is text, since the index takes the byte 0xff for the end of a value.
func orderKey(at time.Time, hive, id string) string {
	return hex.EncodeToString(timeKey(at)) + colony.DateOf(at).String() + "\x00" + id + "\x00" + hive
}

// order is an orderKey taken apart.
type order struct {
	key      string
	day      string
	id, hive string
}

func orderOf(key string) order {
	rest := key[2*timeKeyLen:]
	day, rest, _ := strings.Cut(rest, "\x00")
	id, hive, _ := strings.Cut(rest, "\x00")
	return order{key: key, day: day, id: id, hive: hive}
}

// entriesOf makes the index entries of a record, by their document IDs. The
// text is the stretches of the note that are about this inspection.
func entriesOf(r *colony.Record, text []string) map[string]*entry {
	ins := current(r)
	base := entry{Hive: ins.Hive, State: string(r.State), Day: colony.DateOf(ins.At).String(),
		Order: orderKey(ins.At, ins.Hive, r.ID)}
	whole := base
	whole.Kind, whole.Text = kindInspection, text
	entries := map[string]*entry{r.ID: &whole}
	anyBar := map[string]bool{}
	for _, leaf := range colony.Leaves(&ins) {
		path := plainPath(leaf.Path)
		if path == "hive" || path == "at" {
			continue
		}
		whole.add(path, leaf.Value)
		number, rest, ok := barPath(path)
		if !ok {
			continue
		}
		if all := "bars.*." + rest; !anyBar[all+"="+leaf.Value] {
			anyBar[all+"="+leaf.Value] = true
			whole.add(all, leaf.Value)
		}
		bar := entries[barEntryID(r.ID, number)]
		if bar == nil {
			copied := base
			bar = &copied
			bar.Kind, bar.Bar = kindBar, barTerm(number)
			entries[barEntryID(r.ID, number)] = bar
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

func barEntryID(id, number string) string { return id + "/" + number }

// barTerm is the number of a bar as it stands in the index, where it sorts.
func barTerm(number string) string { return fmt.Sprintf("%04s", number) }
