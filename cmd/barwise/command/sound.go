package command

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/adrg/xdg"
	"github.com/charmbracelet/x/term"

	"barwise/colony"
	"barwise/index"
	"barwise/parse"
	"barwise/voice"
)

// recordingsDir is the folder of the data directory that keeps recordings.
const recordingsDir = "recordings"

// ears turn recordings into text. The recogniser is made when the first
// recording comes: it takes a second or more, and most notes are typed.
type ears struct {
	*app
	command string                 // a recogniser of the keeper's choice, see voice.Template
	knows   func() (keeper, error) // asked once; nil where nothing is known
	partial bool                   // take a recording of which parts could not be heard
	rec     voice.Recogniser
	keeper  keeper
}

// earsFor are ears that know the keeper from what lies in the store, if any.
func (a *app) earsFor(command string) *ears {
	e := &ears{app: a, command: command}
	if a.hasStore() {
		e.knows = func() (k keeper, err error) {
			err = a.withRecords(func(s *index.Store) (err error) {
				k, err = talk(s)
				return err
			})
			return k, err
		}
	}
	return e
}

// keeper is what earlier notes tell of the person who speaks.
type keeper struct {
	phrases    voice.Texts       // how they talk: confirmed notes and own words
	sounds     map[string]string // how own words sound
	recordings []string          // hashes of those that confirmed notes come from, the newest last
}

// voicesUsed is how many earlier recordings tell what the keeper sounds like:
// an hour of speech or less, after which more changes nothing.
const voicesUsed = 20

// voiceFile keeps what was learned of the voice in a recording. Like all in the
// cache it can be deleted; it is learned again when the recording is heard again.
func voiceFile(hash string) string {
	return filepath.Join(xdg.CacheHome, "barwise", "voices", hash)
}

// voices are the files of the earlier recordings.
func (k *keeper) voices() []string {
	var files []string
	for _, hash := range k.recordings[max(0, len(k.recordings)-voicesUsed):] {
		files = append(files, voiceFile(hash))
	}
	return files
}

// recogniserEnv names a command line for another recogniser.
const recogniserEnv = "BARWISE_RECOGNISER"

// hear recognises one recording. What was heard of one that failed midway stays
// in the cache, so that the next try takes up there.
func (e *ears) hear(ctx context.Context, file, hash string) (*voice.Heard, error) {
	if err := e.wake(ctx); err != nil {
		return nil, fmt.Errorf("%s: %w", shown(file), err)
	}
	meter := e.progress(file)
	heard, err := voice.Recognise(ctx, file, e.rec, voice.Options{
		Cache:    filepath.Join(xdg.CacheHome, "barwise", "parts"),
		Voice:    voiceFile(hash),
		Known:    slices.DeleteFunc(e.keeper.voices(), func(f string) bool { return f == voiceFile(hash) }),
		Progress: meter.show,
	})
	meter.clear()
	switch {
	case ctx.Err() != nil:
		return nil, ctx.Err()
	case errors.Is(err, voice.ErrIncomplete) && e.partial:
		heard.Warnings = append(heard.Warnings, fmt.Errorf("%s: %w", shown(file), err))
		return heard, nil
	case errors.Is(err, voice.ErrIncomplete):
		return nil, fmt.Errorf("%s: %w; say it again to try those parts once more, or with --partial to take what was heard", shown(file), err)
	case err != nil && !strings.Contains(err.Error(), file):
		return nil, fmt.Errorf("%s: %w", shown(file), err)
	}
	return heard, err
}

// wake makes the recogniser, once.
func (e *ears) wake(ctx context.Context) (err error) {
	if e.rec != nil {
		return nil
	}
	if e.knows != nil {
		if e.keeper, err = e.knows(); err != nil {
			return err
		}
	}
	rec, err := e.recogniser(ctx)
	if err == nil {
		e.rec = rec
	}
	return err
}

// recogniser is the keeper's own choice, else the one that is built in, with a
// language model of the trade and of how this keeper talks.
func (e *ears) recogniser(ctx context.Context) (voice.Recogniser, error) {
	if e.command != "" {
		return voice.NewTemplate(e.command, "hive, bar, brood, queen cells, nectar, follower board", "en")
	}
	stock, err := voice.StockModel("")
	if err != nil {
		return nil, missing(err)
	}
	rec, err := voice.NewSphinx(stock)
	if err != nil {
		return nil, missing(err)
	}
	sayings, err := parse.Sayings()
	if err != nil {
		return nil, err
	}
	rec.Model, err = voice.BuildModel(ctx, stock, voice.ModelOptions{
		Dir:     filepath.Join(xdg.CacheHome, "barwise", "model"),
		Phrases: voice.TradePhrases(sayings),
		Spoken:  []voice.Phrases{voice.SpokenNotes(), e.keeper.phrases},
		Sounds:  e.keeper.sounds,
	})
	return rec, err
}

// missing adds the one command that installs what is needed to hear.
func missing(err error) error {
	if install := voice.InstallCommand(voice.Probe()); install != "" {
		return fmt.Errorf("%w; on Debian: %s", err, install)
	}
	return err
}

// talk collects how the keeper talks: the text of confirmed notes, and own
// words.
func talk(s *index.Store) (k keeper, err error) {
	own, err := s.OwnWords()
	if err != nil {
		return k, err
	}
	texts := voice.Texts(append(append([]string{}, own.Plants...), own.Hives...))
	for _, said := range own.Aliases {
		texts = append(texts, said)
	}
	for word := range own.Sounds {
		texts = append(texts, word)
	}
	slices.Sort(texts) // of a map they come in any order, and the model is kept by what it was made of
	k.sounds = own.Sounds
	seen := map[string]bool{}
	for r, err := range s.Records(index.Filter{States: []colony.State{colony.Confirmed}}) {
		if err != nil {
			return k, err
		}
		if seen[r.NoteHash] {
			continue
		}
		seen[r.NoteHash] = true
		note, err := s.Note(r.NoteHash)
		if err != nil {
			return k, err
		}
		texts = append(texts, note.Text)
		if note.Recording != nil {
			k.recordings = append(k.recordings, note.Recording.Hash)
		}
	}
	slices.Reverse(k.recordings) // the newest inspection came first
	k.phrases = texts
	return k, nil
}

// meter shows how far recognition has come, on a terminal only.
type meter struct {
	out   io.Writer // nil shows nothing
	name  string
	begin time.Time
	now   func() time.Time
}

func (e *ears) progress(file string) *meter {
	m := &meter{name: shown(filepath.Base(file)), begin: e.now(), now: e.now}
	if f, ok := e.err.(*os.File); ok && term.IsTerminal(f.Fd()) {
		m.out = f
	}
	return m
}

func (m *meter) show(p voice.Progress) {
	if m.out == nil {
		return
	}
	line := fmt.Sprintf("%s: %s heard", m.name, clock(p.Done))
	if p.Total > 0 {
		line = fmt.Sprintf("%s: %s of %s heard", m.name, clock(p.Done), clock(p.Total))
		if spent := m.now().Sub(m.begin); p.Done > 0 {
			line += ", about " + clock(spent.Seconds()*(p.Total-p.Done)/p.Done) + " left"
		}
	}
	fmt.Fprintf(m.out, "\r%-70s", line)
}

func (m *meter) clear() {
	if m.out != nil {
		fmt.Fprintf(m.out, "\r%70s\r", "")
	}
}

// clock is a number of seconds as minutes and seconds.
func clock(seconds float64) string {
	s := int(seconds + 0.5)
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

// hashFile is the SHA-256 of a file's bytes, in hex.
func hashFile(name string) (string, error) {
	f, err := os.Open(name)
	if err != nil {
		return "", readable(err)
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return "", readable(err)
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}

// keepRecording keeps a recording with the data, or, with link, where it lies.
func (a *app) keepRecording(name, hash string, link bool) (colony.Recording, error) {
	if link {
		path, err := filepath.Abs(name)
		return colony.Recording{Hash: hash, File: path, Linked: true}, err
	}
	file, err := copyRecording(a.dataDir(), name, hash)
	return colony.Recording{Hash: hash, File: file}, err
}

// copyRecording copies a recording into the data folder under its hash, and
// returns the name of the copy relative to the folder. The copy appears whole
// or not at all, and is on the disk when the name is returned.
func copyRecording(dataDir, name, hash string) (string, error) {
	kept := filepath.Join(recordingsDir, hash+strings.ToLower(filepath.Ext(name)))
	target := filepath.Join(dataDir, kept)
	if _, err := os.Stat(target); err == nil {
		return kept, nil
	}
	in, err := os.Open(name)
	if err != nil {
		return "", readable(err)
	}
	defer in.Close()
	if err := os.MkdirAll(filepath.Dir(target), 0o700); err != nil {
		return "", err
	}
	out, err := os.CreateTemp(filepath.Dir(target), ".copy-*")
	if err != nil {
		return "", err
	}
	defer os.Remove(out.Name())
	_, err = io.Copy(out, in)
	if err = errors.Join(err, out.Sync(), out.Close()); err != nil {
		return "", fmt.Errorf("the recording could not be kept: %w; free some space and try again", err)
	}
	return kept, os.Rename(out.Name(), target)
}
