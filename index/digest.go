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

// digests calls f with the name and the digest of every entry of the index.
func digests(reader bleveindex.IndexReader, f func(name string, d digest)) error {
	var sums []digest // by the index's own numbers
	for _, field := range []string{fieldKind, fieldHive, fieldState, fieldDay, fieldBar, fieldOrder,
		fieldPresent, fieldDenied, fieldValue, fieldText} {
		if err := addTerms(reader, field, &sums); err != nil {
			return err
		}
	}
	all, err := reader.DocIDReaderAll()
	if err != nil {
		return err
	}
	defer all.Close()
	for {
		id, err := all.Next()
		if err != nil || id == nil {
			return err
		}
		name, err := reader.ExternalID(id)
		if err != nil {
			return err
		}
		sum := digest(0)
		if doc := binary.BigEndian.Uint64(id); doc < uint64(len(sums)) {
			sum = sums[doc]
		}
		f(name, sum)
	}
}

// addTerms adds a field's terms to the sums of the entries that have them.
func addTerms(reader bleveindex.IndexReader, field string, sums *[]digest) error {
	dict, err := reader.FieldDict(field)
	if err != nil {
		return err
	}
	return eachOf(dict, func(e *bleveindex.DictEntry) error {
		d := termDigest(field, e.Term)
		return eachPosting(reader, field, e.Term, func(doc uint64) {
			for uint64(len(*sums)) <= doc {
				*sums = append(*sums, 0)
			}
			(*sums)[doc] += d
		})
	})
}
