package index

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/blevesearch/bleve/v2/search/query"
	bleveindex "github.com/blevesearch/bleve_index_api"
)

// wordTerms analyses the words as the text itself was. Words too common to
// search for drop out. Words joined by "or" make one term.
func wordTerms(words string) []Term {
	var list []Term
	end := 0
	for _, token := range english.Analyze([]byte(words)) {
		word, stem := words[token.Start:token.End], string(token.Term)
		if between := strings.TrimSpace(words[end:token.Start]); len(list) > 0 && strings.EqualFold(between, "or") {
			last := &list[len(list)-1]
			last.Word += " or " + word
			last.Stems = append(last.Stems, stem)
		} else {
			list = append(list, Term{Word: word, Stems: []string{stem}})
		}
		end = token.End
	}
	return list
}

func textQueries(terms []Term) []query.Query {
	var parts []query.Query
	for _, t := range terms {
		var list []query.Query
		for _, stem := range t.Stems {
			list = append(list, termQuery(fieldText, stem))
		}
		parts = append(parts, anyOf(list))
	}
	return parts
}

// loosen replaces stems by those of the index that are spelt most like them:
// only the stems that the index lacks, or, with all set, every one.
func (c compiler) loosen(terms []Term, all bool) ([]Term, error) {
	fuzzy, ok := c.reader.(bleveindex.IndexReaderFuzzy)
	if !ok {
		return terms, nil
	}
	loose := make([]Term, len(terms))
	for i, t := range terms {
		loose[i] = Term{Word: t.Word}
		words := strings.Split(t.Word, " or ")
		for n, stem := range t.Stems {
			there, err := c.has(stem)
			if err != nil {
				return nil, err
			}
			if !there || all {
				similar, err := nearest(fuzzy, stem, slips(words[n]))
				if err != nil {
					return nil, err
				}
				loose[i].Stems = append(loose[i].Stems, similar...)
				loose[i].Similar = loose[i].Similar || len(similar) > 0
			}
			loose[i].Stems = append(loose[i].Stems, stem)
		}
	}
	return loose, nil
}

func (c compiler) has(stem string) (there bool, err error) {
	err = c.eachTerm(fieldText, stem, func(term string) error {
		there = there || term == stem
		return nil
	})
	return there, err
}

// slips is how many letters of a word may be wrong, none where it holds a
// digit: a rule of thumb. Of two in a short word too many others would do.
func slips(word string) int {
	letters := utf8.RuneCountInString(word)
	switch {
	case letters < 3 || strings.ContainsAny(word, "0123456789"):
		return 0
	case letters < 8:
		return 1
	}
	return 2
}

// nearest lists the index's stems that differ least from the given one, in at
// most so many letters.
func nearest(reader bleveindex.IndexReaderFuzzy, stem string, slips int) ([]string, error) {
	for n := 1; n <= slips; n++ {
		found, err := within(reader, stem, n)
		if err != nil {
			return nil, fmt.Errorf("words like %q: %w", stem, err)
		}
		if len(found) > 0 {
			return found, nil
		}
	}
	return nil, nil
}

// within lists the stems that differ from the given one in n letters or less.
func within(reader bleveindex.IndexReaderFuzzy, stem string, n int) (found []string, err error) {
	dict, err := reader.FieldDictFuzzy(fieldText, stem, n, "")
	if err != nil {
		return nil, err
	}
	err = eachOf(dict, func(e *bleveindex.DictEntry) error {
		if e.Term != stem {
			found = append(found, e.Term)
		}
		return nil
	})
	return found, err
}
