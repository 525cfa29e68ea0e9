package voice

import (
	"context"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// clearWord is the posterior from which a word is taken as said when a voice is
// learned from what was heard: errors would teach the wrong phones. The value
// was not tuned.
const clearWord = 0.5

var errNoFeatures = errors.New("this form of the recogniser does not tell what it heard before the words")

// learn recognises a part and aligns its clear words with the sound. Only the
// form with a control file writes the cepstra that this needs.
func (s *Sphinx) learn(ctx context.Context, part Part) (*speech, error) {
	if s.form() != "pocketsphinx_batch" {
		return nil, errNoFeatures
	}
	dir, err := os.MkdirTemp("", "barwise-cepstra-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	words, err := s.batch(ctx, part, s.limit(part), append(s.settings(), "-fwdflat", "no", "-mfclogdir", dir))
	if err != nil {
		return nil, err
	}
	files, err := filepath.Glob(filepath.Join(dir, "*.mfc"))
	if err != nil || len(files) != 1 {
		return nil, errNoFeatures
	}
	cepstra, err := readCepstra(files[0])
	if err != nil {
		return nil, err
	}
	model, err := readAcoustics(s.Model.Acoustic)
	if err != nil {
		return nil, err
	}
	dict, err := readDictionary(s.dictionary())
	if err != nil {
		return nil, err
	}
	out := newSpeech(model)
	out.Speaker = s.who
	frames := features(cepstra)
	for _, w := range words {
		out.Words++
		out.Sureness += w.Confidence
		from, to := int(w.From*100+0.5), min(len(frames), int(w.To*100+0.5))
		if w.Confidence >= clearWord && from < to {
			out.add(model, frames[from:to], dict[w.Text])
		}
	}
	return out, nil
}

// as gives the recogniser for a speaker who is otherwise unknown.
func (s *Sphinx) as(who speaker) fitter {
	out := *s
	out.who = who
	return &out
}

// hasty are settings that do with a third of the time, for a likelihood that is
// only compared with others of its kind.
var hasty = []string{"-fwdflat", "no", "-bestpath", "no", "-beam", "1e-40", "-pbeam", "1e-40", "-wbeam", "1e-24"}

// likelihood gives the logarithm of the likelihood of the best reading of a part.
func (s *Sphinx) likelihood(ctx context.Context, part Part) (float64, error) {
	if s.form() != "pocketsphinx_batch" {
		return 0, errNoFeatures
	}
	text, err := s.written(ctx, part, s.limit(part), append(s.settings(), hasty...), "-hyp")
	if err != nil {
		return 0, err
	}
	// The line is the words, and in brackets the part's name and the score.
	fields := strings.Fields(text)
	if len(fields) == 0 {
		return 0, errNoFeatures
	}
	return strconv.ParseFloat(strings.TrimSuffix(fields[len(fields)-1], ")"), 64)
}

// readCepstra reads a cepstra file: the number of floats, then the floats, in
// the order of this machine, a hundred vectors of them a second.
func readCepstra(path string) ([][dims]float32, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	if len(data) < 4 || int(binary.NativeEndian.Uint32(data))*4 != len(data)-4 || (len(data)-4)%(4*dims) != 0 {
		return nil, fmt.Errorf("%s: not a file of cepstra", path)
	}
	out := make([][dims]float32, (len(data)-4)/(4*dims))
	_, err = binary.Decode(data[4:], binary.NativeEndian, out)
	return out, err
}

// fitted gives the recogniser with the means moved towards a voice.
func (s *Sphinx) fitted(file string, voice *speech) (fitter, error) {
	model, err := readAcoustics(s.Model.Acoustic)
	if err != nil {
		return nil, err
	}
	if len(voice.Frames) != model.means.count() {
		return s, nil
	}
	means := model.adapted(voice)
	hash := sha256.New()
	if err := writeFile(file, func(w io.Writer) error { return means.write(io.MultiWriter(w, hash)) }); err != nil {
		return nil, err
	}
	out := *s
	out.who, out.means, out.voice = voice.Speaker, file, hex.EncodeToString(hash.Sum(nil)[:8])
	return &out, nil
}
