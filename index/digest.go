package index

import (
	"encoding/binary"
	"hash/fnv"
	"maps"
	"slices"

	bleveindex "github.com/blevesearch/bleve_index_api"
)

// digest sums the hashes of an entry's terms, so that it can be taken from an
// entry as well as from the index, where terms come in another order.
type digest uint64

func termDigest(field, term string) digest {
	h := fnv.New64a()
	h.Write([]byte(field))
	h.Write([]byte{0})
	h.Write([]byte(term))
	return digest(h.Sum64())
}

// digest is what the index should hold of the entry.
func (e *entry) digest() (sum digest) {
	add := func(field string, terms ...string) {
		slices.Sort(terms)
		for _, term := range slices.Compact(terms) {
			sum += termDigest(field, term)
		}
	}
	add(fieldKind, e.Kind)
	add(fieldHive, e.Hive)
	add(fieldState, e.State)
	add(fieldDay, slices.Clone(e.Day)...)
	add(fieldBar, e.Bar)
	add(fieldOrder, e.Order)
	add(fieldPresent, slices.Clone(e.Present)...)
	add(fieldDenied, slices.Clone(e.Denied)...)
	add(fieldValue, slices.Clone(e.Value)...)
	stems := map[string]bool{}
	for _, text := range e.Text {
		for _, token := range english.Analyze([]byte(text)) {
			stems[string(token.Term)] = true
		}
	}
	add(fieldText, slices.Collect(maps.Keys(stems))...)
	return sum
}

// digests takes the digest of every entry from the index.
func digests(reader bleveindex.IndexReader) (map[string]digest, error) {
	names, sums, err := entryNames(reader)
	if err != nil {
		return nil, err
	}
	for _, field := range []string{fieldKind, fieldHive, fieldState, fieldDay, fieldBar, fieldOrder,
		fieldPresent, fieldDenied, fieldValue, fieldText} {
		if err := addTerms(reader, field, sums); err != nil {
			return nil, err
		}
	}
	byName := make(map[string]digest, len(sums))
	for doc, name := range names {
		byName[name] = sums[doc]
	}
	return byName, nil
}

// entryNames lists all entries by the index's own numbers.
func entryNames(reader bleveindex.IndexReader) (map[uint64]string, map[uint64]digest, error) {
	all, err := reader.DocIDReaderAll()
	if err != nil {
		return nil, nil, err
	}
	defer all.Close()
	names, sums := map[uint64]string{}, map[uint64]digest{}
	for {
		id, err := all.Next()
		if err != nil || id == nil {
			return names, sums, err
		}
		name, err := reader.ExternalID(id)
		if err != nil {
			return nil, nil, err
		}
		names[binary.BigEndian.Uint64(id)] = name
	}
}

// addTerms adds a field's terms to the sums of the entries that have them.
func addTerms(reader bleveindex.IndexReader, field string, sums map[uint64]digest) error {
	dict, err := reader.FieldDict(field)
	if err != nil {
		return err
	}
	return eachOf(dict, func(e *bleveindex.DictEntry) error {
		d := termDigest(field, e.Term)
		return eachPosting(reader, field, e.Term, func(doc uint64) { sums[doc] += d })
	})
}
