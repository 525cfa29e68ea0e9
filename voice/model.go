package voice

import (
	"bufio"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Model is what the recogniser works with: acoustics, a language model, and
// the pronunciations of its words.
type Model struct {
	Acoustic   string // folder
	Language   string // file
	Dictionary string // file
	British    string // file: a dictionary with British ways to say the words beside the others; none where empty
	Key        string // changes with what it was built from
}

// modelVersion is raised when the same inputs give another model.
const modelVersion = "7"

// Shares of the mixture; general English has the rest. Chosen by the perplexity
// of 40 dictated notes by other hands (recited.gold of the parser's notes seen),
// for which fitting by expectation and maximisation gives 0.20, 0.71 and 0.09:
// 47, where templates and sayings alone had 102. Of 15 notes held out it is 40,
// and was 79. General English is given more than is best for notes, for what is
// said beside them.
const (
	phrasesShare = 0.25
	spokenShare  = 0.60
)

// ErrNoModel says that the recogniser's own model is not installed.
var ErrNoModel = errors.New("the recogniser's English model is not installed (Debian package pocketsphinx-en-us)")

// modelHomes are where packages put the English model.
var modelHomes = []string{
	"/usr/share/pocketsphinx/model/en-us",
	"/usr/local/share/pocketsphinx/model/en-us",
	"/opt/homebrew/share/pocketsphinx/model/en-us",
}

// StockModel finds the model as it was installed: in dir, or with an empty dir
// where POCKETSPHINX_PATH says or packages put it.
func StockModel(dir string) (Model, error) {
	homes := modelHomes
	if dir != "" {
		homes = []string{dir}
	} else if p := os.Getenv("POCKETSPHINX_PATH"); p != "" {
		homes = append([]string{filepath.Join(p, "en-us"), p}, homes...)
	}
	for _, home := range homes {
		m := Model{
			Acoustic:   filepath.Join(home, "en-us"),
			Language:   filepath.Join(home, "en-us.lm.bin"),
			Dictionary: filepath.Join(home, "cmudict-en-us.dict"),
			Key:        "stock",
		}
		if isFile(filepath.Join(m.Acoustic, "mdef")) && isFile(m.Language) && isFile(m.Dictionary) {
			return m, nil
		}
	}
	return Model{}, fmt.Errorf("%w: looked in %s", ErrNoModel, strings.Join(homes, ", "))
}

func isFile(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.Mode().IsRegular()
}

// ModelOptions say what a model is built from and where it is kept.
type ModelOptions struct {
	Dir     string            // the cache folder; made when missing
	Phrases []Phrases         // what the keeper may say
	Spoken  []Phrases         // what keepers did say, this one or others: whole notes
	Sounds  map[string]string // the keeper's own words, each spelt as it sounds: "phacelia" as "fuh seal yuh"
	General int               // words of general English; 0 takes the default of 5000
}

// BuildModel makes the keeper's model out of the stock one: a trigram model of
// the phrases mixed with general English, and a dictionary of all its words.
// A model of the same inputs that is kept in Dir is taken as it is; otherwise
// it takes some seconds. Older models in Dir are removed.
func BuildModel(ctx context.Context, stock Model, o ModelOptions) (Model, error) {
	if o.General == 0 {
		o.General = 5000
	}
	key, err := o.key(stock)
	if err != nil {
		return Model{}, err
	}
	dir := filepath.Join(o.Dir, "model-"+key[:16])
	m := Model{Acoustic: stock.Acoustic, Language: filepath.Join(dir, "language.arpa"), Dictionary: filepath.Join(dir, "words.dict"),
		British: filepath.Join(dir, "british.dict"), Key: key}
	if isFile(m.Language) && isFile(m.Dictionary) && isFile(m.British) {
		return m, nil
	}
	if err := o.build(ctx, stock, dir); err != nil {
		return Model{}, fmt.Errorf("language model: %w", err)
	}
	return m, removeOthers(o.Dir, filepath.Base(dir))
}

// key is a hash of everything that goes into the model.
func (o *ModelOptions) key(stock Model) (string, error) {
	h := sha256.New()
	fmt.Fprintln(h, modelVersion, phrasesShare, spokenShare, o.General, stock.Acoustic)
	for _, path := range []string{stock.Language, stock.Dictionary} {
		info, err := os.Stat(path)
		if err != nil {
			return "", err
		}
		fmt.Fprintln(h, path, info.Size(), info.ModTime().UnixNano())
	}
	for _, name := range []string{"data/classes.txt", "data/pronunciations.dict"} {
		text, err := fs.ReadFile(data, name)
		if err != nil {
			return "", err
		}
		h.Write(text)
	}
	for _, phrases := range [][]Phrases{o.Phrases, o.Spoken} {
		for _, p := range phrases {
			for s, w := range p.Sentences() {
				fmt.Fprintln(h, w, s)
			}
		}
		fmt.Fprintln(h)
	}
	for _, w := range slices.Sorted(maps.Keys(o.Sounds)) {
		fmt.Fprintln(h, w, o.Sounds[w])
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}

// build writes the model's files into a new folder, which appears whole or not
// at all.
func (o *ModelOptions) build(ctx context.Context, stock Model, dir string) error {
	dict, err := readDictionary(stock.Dictionary)
	if err != nil {
		return err
	}
	for w, phones := range builtinPronunciations() {
		for _, p := range phones {
			dict.add(w, p)
		}
	}
	sounds := map[string]string{}
	for w, sound := range o.Sounds {
		sounds[strings.ToLower(w)] = dict.sound(sound)
	}
	for w, phones := range sounds {
		if phones != "" {
			dict.add(w, phones)
		}
	}
	general, err := readTrieLM(stock.Language)
	if err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	tokens, classes := newTokenTable(), builtinClasses()
	trade := o.sources(tokens, classes)
	words := vocabulary(tokens, classes, general, o.General, dict)
	mix := newMixture(words, tokens, classes, trade, general)
	if err := ctx.Err(); err != nil {
		return err
	}
	lm := mix.explicit(modelSizes{expand: 1000, threshold: 2e-7}, spellOut(tokens, classes, mix.ids))
	if err := ctx.Err(); err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(dir), 0o700); err != nil {
		return err
	}
	tmp, err := os.MkdirTemp(filepath.Dir(dir), "building-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(tmp)
	if err := writeFile(filepath.Join(tmp, "language.arpa"), lm.write); err != nil {
		return err
	}
	for name, d := range map[string]dictionary{"words.dict": dict, "british.dict": dict.british(words[2:])} {
		if err := writeFile(filepath.Join(tmp, name), func(w io.Writer) error { return writeDictionary(w, words, d) }); err != nil {
			return err
		}
	}
	return os.Rename(tmp, dir)
}

// sources counts what the keeper may say and what keepers did say. The share of
// one that is empty goes to the other.
func (o *ModelOptions) sources(tokens tokenTable, classes classSet) []source {
	phrases, spoken := newCounts(), newCounts()
	tokens.count(phrases, classes, o.Phrases)
	tokens.count(spoken, classes, o.Spoken)
	switch {
	case spoken.uni.total == 0:
		return []source{{phrases, phrasesShare + spokenShare}}
	case phrases.uni.total == 0:
		return []source{{spoken, phrasesShare + spokenShare}}
	}
	return []source{{phrases, phrasesShare}, {spoken, spokenShare}}
}

// vocabulary is every word of the phrases that can be pronounced, and the n
// most common of general English that the dictionary holds.
func vocabulary(tokens tokenTable, classes classSet, general *trieLM, n int, dict dictionary) []string {
	set := map[string]bool{}
	for t := range tokens {
		class := strings.Trim(t, "<>")
		switch {
		case t == "<s>" || t == "</s>":
		case classes.has(class) && t != class:
			for _, m := range classes.members[class] {
				set[m.word] = true
			}
		case strings.ContainsAny(t, "aeiouy") && len(dict.pronounce(t)) > 0: // the rules hold abbreviations, too
			set[t] = true
		}
	}
	for _, w := range general.commonWords(n, func(w string) bool { return len(dict[w]) > 0 }) {
		set[w] = true
	}
	return append([]string{"<s>", "</s>"}, slices.Sorted(maps.Keys(set))...)
}

// spellOut gives the words that each token may be.
func spellOut(tokens tokenTable, classes classSet, ids map[string]int32) tokenClasses {
	out := make(tokenClasses, len(tokens))
	for t, n := range tokens {
		if id, ok := ids[t]; ok {
			out[n] = []int32{id}
			continue
		}
		for _, m := range classes.members[strings.Trim(t, "<>")] {
			out[n] = append(out[n], ids[m.word])
		}
	}
	return out
}

func writeDictionary(w io.Writer, words []string, dict dictionary) error {
	out := bufio.NewWriter(w)
	for _, word := range words[2:] {
		for i, phones := range dict.pronounce(word) {
			if i == 0 {
				fmt.Fprintf(out, "%s %s\n", word, phones)
			} else {
				fmt.Fprintf(out, "%s(%d) %s\n", word, i+1, phones)
			}
		}
	}
	return out.Flush()
}

// writeFile writes a new file and syncs it.
func writeFile(path string, write func(io.Writer) error) (err error) {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_TRUNC, 0o600)
	if err != nil {
		return err
	}
	defer func() {
		if e := f.Close(); err == nil {
			err = e
		}
	}()
	if err := write(f); err != nil {
		return err
	}
	return f.Sync()
}

// removeOthers removes models but the one named.
func removeOthers(dir, keep string) error {
	old, err := filepath.Glob(filepath.Join(dir, "model-*"))
	if err != nil {
		return err
	}
	for _, path := range old {
		if filepath.Base(path) != keep {
			if err := os.RemoveAll(path); err != nil {
				return err
			}
		}
	}
	return nil
}
