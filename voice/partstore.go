package voice

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
)

// partStore keeps the words of each part by a hash of its sound and of the
// recogniser's key, so that the same sound is never recognised twice by the same
// recogniser, and hands parts to recognisers as files.
type partStore struct {
	dir string // of the results, "" for none
	key string
	tmp string // of the sound files
}

// storeError says that a result could not be kept. The result itself stands.
type storeError struct{ err error }

func (e *storeError) Error() string {
	return "the words of a part could not be kept for another run: " + e.err.Error()
}
func (e *storeError) Unwrap() error { return e.err }

func newPartStore(dir, key string) (*partStore, error) {
	tmp, err := os.MkdirTemp("", "barwise-sound-")
	if err != nil {
		return nil, fmt.Errorf("no room for the parts of a recording: %w", err)
	}
	return &partStore{dir: dir, key: key, tmp: tmp}, nil
}

func (s *partStore) close() { os.RemoveAll(s.tmp) }

// recognise gives the words of a part in seconds of the recording, and whether
// they were kept from before.
func (s *partStore) recognise(ctx context.Context, r Recogniser, p *soundPart) ([]Word, bool, error) {
	wav := wavBytes(p.levelled())
	h := sha256.New()
	fmt.Fprintf(h, "%s\x00", s.key)
	h.Write(wav)
	name := hex.EncodeToString(h.Sum(nil))[:32]
	words, kept := s.load(name)
	var storing error
	if !kept {
		file, err := s.write(name, wav)
		if err != nil {
			return nil, false, err
		}
		defer os.Remove(file)
		words, err = r.Recognise(ctx, p.in(file))
		if err != nil {
			return nil, false, err
		}
		storing = s.save(name, words)
	}
	for i := range words {
		words[i].From += p.from
		words[i].To += p.from
	}
	return words, kept, storing
}

// write puts the sound of a part into a file for a recogniser.
func (s *partStore) write(name string, wav []byte) (string, error) {
	file := filepath.Join(s.tmp, name+".wav")
	if err := os.WriteFile(file, wav, 0o600); err != nil {
		return "", fmt.Errorf("a part of the recording could not be written: %w", err)
	}
	return file, nil
}

// in is the part for a recogniser, its sound being in a file.
func (p *soundPart) in(file string) Part {
	return Part{File: file, Seconds: p.to() - p.from}
}

func (s *partStore) load(name string) ([]Word, bool) {
	if s.dir == "" {
		return nil, false
	}
	text, err := os.ReadFile(filepath.Join(s.dir, name+".json"))
	if err != nil {
		return nil, false
	}
	var words []Word
	return words, json.Unmarshal(text, &words) == nil
}

// save writes a result whole or not at all.
func (s *partStore) save(name string, words []Word) error {
	if s.dir == "" {
		return nil
	}
	text, err := json.Marshal(words)
	if err != nil {
		return &storeError{err}
	}
	if err := os.MkdirAll(s.dir, 0o700); err != nil {
		return &storeError{err}
	}
	tmp := filepath.Join(s.dir, name+".tmp")
	if err := os.WriteFile(tmp, text, 0o600); err != nil {
		os.Remove(tmp)
		return &storeError{err}
	}
	if err := os.Rename(tmp, filepath.Join(s.dir, name+".json")); err != nil {
		return &storeError{err}
	}
	return nil
}
