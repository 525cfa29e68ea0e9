package voice

import (
	"bufio"
	"context"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// Sphinx recognises with PocketSphinx, run as a process for each part. It knows
// the three programs under which PocketSphinx comes:
//
//	pocketsphinx_batch       of 5prealpha and of 5.x
//	pocketsphinx             of 5.x, with the command "single"
//	pocketsphinx_continuous  of 5prealpha
//
// The first is preferred: like the second it hears a part as a whole before it
// settles the channel's mean, which the third learns as it goes.
//
// Only the best reading of a part is taken. To choose among its twenty best by
// how much of each the parser reads was tried on 13 parts by two voices: it took
// another in one, won no leaf (118 right of 180 either way) and made up one more.
type Sphinx struct {
	Program string // path
	Model   Model
	Limit   time.Duration // for a part; 0 takes a minute and ten times its length

	means string // file of the acoustic model's means as they are for a voice, "" for the model's own
	voice string // names these
	who   speaker
}

// sphinxPrograms are the programs in the order of preference.
var sphinxPrograms = []string{"pocketsphinx_batch", "pocketsphinx", "pocketsphinx_continuous"}

// NewSphinx finds PocketSphinx. ErrNoRecogniser where there is none.
func NewSphinx(model Model) (*Sphinx, error) {
	for _, name := range sphinxPrograms {
		if path, err := exec.LookPath(name); err == nil {
			return &Sphinx{Program: path, Model: model, who: plainSpeaker}, nil
		}
	}
	return nil, ErrNoRecogniser
}

// Key names program, model and settings.
func (s *Sphinx) Key() string {
	return fmt.Sprint(filepath.Base(s.Program), " ", s.Model.Key, " densities ", densities, " voice ", s.voice, s.who)
}

// densities is how many Gaussians of a codebook are added up in a frame when what
// was said is heard for good; the recogniser's own setting, 4, does for learning a
// voice. Heard anew with the same adapted means, 20 dictated notes by other hands
// in eight synthetic voices, none of the bench's, had 181 of 1,239 words wrong
// with 4 and 173 with 8, the formant voices among them 101 and 93, for a fifth
// more time. Other weights of the language model (5 or 9 for 6.5), of new words,
// silence and fillers, and wider beams changed less than that, or cost more.
const densities = "8"

// settings are ours. Silence stays in, since the times of words are counted
// without it otherwise; noise was removed before.
func (s *Sphinx) settings() []string {
	args := []string{"-hmm", s.Model.Acoustic, "-lm", s.Model.Language, "-dict", s.dictionary(), "-remove_noise", "no"}
	if s.who.Warp > 0 && s.who.Warp != 1 {
		args = append(args, "-warp_type", "inverse_linear", "-warp_params", fmt.Sprintf("%.2f", s.who.Warp))
	}
	if s.means != "" {
		args = append(args, "-mean", s.means)
	}
	return args
}

// dictionary is the file for the speaker's accent.
func (s *Sphinx) dictionary() string {
	if s.who.British && s.Model.British != "" {
		return s.Model.British
	}
	return s.Model.Dictionary
}

// Recognise runs PocketSphinx on one part.
func (s *Sphinx) Recognise(ctx context.Context, part Part) ([]Word, error) {
	args := append(s.settings(), "-topn", densities)
	switch s.form() {
	case "pocketsphinx":
		return s.single(ctx, part, s.limit(part), args)
	case "pocketsphinx_continuous":
		return s.continuous(ctx, part, s.limit(part), append(args, "-remove_silence", "no"))
	}
	return s.batch(ctx, part, s.limit(part), args)
}

// form is the name of the program, by which its arguments are told.
func (s *Sphinx) form() string { return strings.TrimSuffix(filepath.Base(s.Program), ".exe") }

func (s *Sphinx) limit(part Part) time.Duration {
	if s.Limit > 0 {
		return s.Limit
	}
	return time.Minute + time.Duration(10*part.Seconds*float64(time.Second))
}

// batch uses the control file form, which writes word times and posteriors as
// CTM: name, channel, start, length, word, posterior.
func (s *Sphinx) batch(ctx context.Context, part Part, limit time.Duration, args []string) ([]Word, error) {
	text, err := s.written(ctx, part, limit, args, "-ctm")
	if err != nil {
		return nil, err
	}
	return parseCTM(text)
}

// written gives what the control file form writes into the file that an option
// names.
func (s *Sphinx) written(ctx context.Context, part Part, limit time.Duration, args []string, option string) (string, error) {
	dir, err := os.MkdirTemp("", "barwise-part-")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(dir)
	ctl, result := filepath.Join(dir, "ctl"), filepath.Join(dir, "result")
	name := strings.TrimSuffix(filepath.Base(part.File), ".wav")
	if err := os.WriteFile(ctl, []byte(name+"\n"), 0o600); err != nil {
		return "", err
	}
	args = append(args, "-remove_silence", "no", "-adcin", "yes", "-adchdr", "44", "-cepdir", filepath.Dir(part.File), "-cepext", ".wav",
		"-ctl", ctl, option, result, "-cmn", "batch")
	var out tail
	if err := (command{path: s.Program, args: args, limit: limit}).run(ctx, &out); err != nil {
		return "", err
	}
	text, err := os.ReadFile(result)
	if err != nil {
		return "", fmt.Errorf("%s wrote no result: %w", s.Program, err)
	}
	return string(text), nil
}

// parseCTM reads words from a CTM file.
func parseCTM(text string) ([]Word, error) {
	var words []Word
	for line := range strings.Lines(text) {
		f := strings.Fields(line)
		if len(f) < 5 || strings.HasPrefix(line, ";;") {
			continue
		}
		w, err := timedWord(f[4], f[2], f[3], append(f, "0")[5])
		if err != nil {
			return nil, fmt.Errorf("the recogniser's answer %s: %w", quoteShort(line), err)
		}
		w.To += w.From
		if w.Text != "" {
			words = append(words, w)
		}
	}
	return words, nil
}

// timedWord reads a word and its numbers. Marks of silence and noise come out
// without text; the number of a pronunciation is taken off.
func timedWord(text, from, to, confidence string) (Word, error) {
	w := Word{Text: variant.ReplaceAllString(text, "")}
	if markers.MatchString(text) {
		w.Text = ""
	}
	for _, v := range []struct {
		dst *float64
		src string
	}{{&w.From, from}, {&w.To, to}, {&w.Confidence, confidence}} {
		n, err := strconv.ParseFloat(v.src, 64)
		if err != nil || math.IsNaN(n) || n < 0 || n > 1e9 {
			return Word{}, fmt.Errorf("%s is not a number of seconds or a share", quoteShort(v.src))
		}
		*v.dst = n
	}
	w.Confidence = min(w.Confidence, 1) // they reach 1.0001
	return w, nil
}

// continuous uses the form of 5prealpha that prints each phrase on a line and
// then its words, a line each: word, start, end, posterior.
func (s *Sphinx) continuous(ctx context.Context, part Part, limit time.Duration, args []string) ([]Word, error) {
	args = append(args, "-infile", part.File, "-time", "yes")
	var out strings.Builder
	if err := (command{path: s.Program, args: args, limit: limit}).run(ctx, &out); err != nil {
		return nil, err
	}
	var words []Word
	in := bufio.NewScanner(strings.NewReader(out.String()))
	for in.Scan() {
		f := strings.Fields(in.Text())
		if len(f) != 4 {
			continue // the phrase itself
		}
		if w, err := timedWord(f[0], f[1], f[2], f[3]); err == nil && w.Text != "" {
			words = append(words, w)
		}
	}
	return words, in.Err()
}

// single uses the form of 5.x that prints a JSON object for the whole part.
func (s *Sphinx) single(ctx context.Context, part Part, limit time.Duration, args []string) ([]Word, error) {
	args = append(args, "single", part.File)
	var out strings.Builder
	if err := (command{path: s.Program, args: args, limit: limit}).run(ctx, &out); err != nil {
		return nil, err
	}
	pieces, faults := readTimedJSON(out.String())
	if len(faults) > 0 {
		return nil, fmt.Errorf("%s: %s", s.Program, faults[0].what)
	}
	return pieceWords(pieces, part.Seconds), nil
}

// pieceWords makes words of the pieces of a transcript; what has no times is
// spread over the part.
func pieceWords(pieces []piece, seconds float64) []Word {
	var words []Word
	for _, p := range pieces {
		fields := strings.Fields(cleanText(p.text))
		if len(fields) == 0 {
			continue
		}
		if !p.timed {
			p.from, p.to = 0, seconds
		}
		times := spread(fields, p.from, p.to)
		for i, f := range fields {
			words = append(words, Word{Text: f, From: times[i], To: times[i+1], Confidence: p.confidence})
		}
	}
	return words
}
