package voice

import (
	"bytes"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
)

// someAcoustics is a small model of made-up phones.
func someAcoustics(rnd *rand.Rand) *acoustics {
	const books, densities = 6, 8
	g := func(value func() float32) *gaussians {
		out := &gaussians{books: books, streams: 3, densities: densities}
		for range books * 3 * densities * dims {
			out.data = append(out.data, value())
		}
		return out
	}
	a := &acoustics{
		phones:  map[string]int{"A": 0, "B": 1, "C": 2, "D": 3, "E": 4, "F": 5},
		means:   g(func() float32 { return float32(4 * rnd.NormFloat64()) }),
		inverse: g(func() float32 { return 4 }),
	}
	a.norms = make([]float64, a.means.count())
	return a
}

// voiceOf is a voice that says everything a little apart from the model: each
// component is moved and mixed with its neighbour.
func voiceOf(mean []float32, j int) float32 {
	return 1.1*mean[j] + 0.2*mean[(j+1)%dims] - 0.5
}

// A voice that differs by a linear transform is learned from words it says: the
// means come to lie where that voice has them, those of unheard phones too.
func TestVoiceIsLearned(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 3))
	a := someAcoustics(rnd)
	s := newSpeech(a)
	for range 400 {
		var frames []feature
		for _, book := range []int{0, 1, 2, 3} {
			for range 4 {
				var f feature
				for stream := range f {
					mean := a.means.vector(a.means.index(book, stream, rnd.IntN(8)))
					for j := range dims {
						f[stream][j] = voiceOf(mean, j) + float32(0.5*rnd.NormFloat64())
					}
				}
				frames = append(frames, f)
			}
		}
		s.add(a, frames, []string{"A B C D", "D C B A"})
	}
	moved := a.adapted(s)
	before, after, n := 0.0, 0.0, 0.0
	for stream := range 3 {
		for d := range 8 {
			i := a.means.index(4, stream, d) // of E, which was never said
			for j := range dims {
				want := voiceOf(a.means.vector(i), j)
				before += math.Pow(float64(a.means.vector(i)[j]-want), 2)
				after += math.Pow(float64(moved.vector(i)[j]-want), 2)
				n++
			}
		}
	}
	if before, after = math.Sqrt(before/n), math.Sqrt(after/n); after > before/3 {
		t.Errorf("an unheard phone lies %.2f from the voice, %.2f before", after, before)
	}
}

// What one phone does by itself, no transform of all explains: a mean heard often
// comes to lie where it was heard, one heard once hardly moves on its own.
func TestPhoneOfItsOwn(t *testing.T) {
	a := someAcoustics(rand.New(rand.NewPCG(6, 6)))
	s := newSpeech(a)
	for i := range s.Frames { // all others are as the model has them
		s.Frames[i] = 50
		for j, m := range a.means.vector(i) {
			s.Sums[i*dims+j] = 50 * m
		}
	}
	const odd, once = 7, 99
	for i, n := range map[int]float32{odd: 500, once: 1} {
		s.Frames[i] = n
		for j, m := range a.means.vector(i) {
			s.Sums[i*dims+j] = n * (m + 3)
		}
	}
	got := a.adapted(s)
	for j, m := range a.means.vector(odd) {
		if d := got.vector(odd)[j] - m; d < 2.7 || d > 3 {
			t.Errorf("component %d moved by %.2f of 3", j, d)
		}
	}
	for j, m := range a.means.vector(once) {
		if d := math.Abs(float64(got.vector(once)[j] - m)); d > 1.5 {
			t.Errorf("component %d of a phone heard once moved by %.2f", j, d)
		}
	}
}

// A voice may change its vowels one way and its hisses another: an unheard phone
// goes with its kind.
func TestKindsOfPhonesMoveApart(t *testing.T) {
	a := someAcoustics(rand.New(rand.NewPCG(7, 7)))
	a.phones = map[string]int{"AA": 0, "IY": 1, "M": 2, "S": 3, "T": 4, "K": 5}
	s := newSpeech(a)
	shift := []float32{2, 2, 2, -2, -2, -2} // by book
	for book, by := range shift {
		if book == a.phones["M"] || book == a.phones["K"] {
			continue // never said
		}
		for stream := range 3 {
			for d := range a.means.densities {
				i := a.means.index(book, stream, d)
				s.Frames[i] = 2000
				for j, m := range a.means.vector(i) {
					s.Sums[i*dims+j] = 2000 * (m + by)
				}
			}
		}
	}
	moved := a.adapted(s)
	for _, book := range []int{a.phones["M"], a.phones["K"]} {
		sum, n := 0.0, 0.0
		for stream := range 3 {
			for d := range a.means.densities {
				i := a.means.index(book, stream, d)
				for j, m := range a.means.vector(i) {
					sum += float64(moved.vector(i)[j] - m)
					n++
				}
			}
		}
		if got, want := sum/n, float64(shift[book]); math.Abs(got-want) > 0.7 {
			t.Errorf("unheard book %d moved by %.2f, its kind by %.0f", book, got, want)
		}
	}
}

func TestNothingHeardChangesNothing(t *testing.T) {
	a := someAcoustics(rand.New(rand.NewPCG(4, 4)))
	got := a.adapted(newSpeech(a))
	for i, x := range got.data {
		if x != a.means.data[i] {
			t.Fatalf("component %d became %g, was %g", i, x, a.means.data[i])
		}
	}
}

func TestAlignment(t *testing.T) {
	// Frames 0-3 are likely in book 7, 4-8 in book 2.
	scores := map[int][]float64{}
	for frame := range 9 {
		for _, book := range []int{7, 2} {
			score := -5.0
			if (frame < 4) == (book == 7) {
				score = -1
			}
			scores[book] = append(scores[book], score)
		}
	}
	at, score := align([]int{7, 2}, scores, 9)
	if score != -9 {
		t.Errorf("score %g", score)
	}
	for frame, book := range at {
		if (frame < 4) != (book == 7) {
			t.Errorf("frame %d in book %d", frame, book)
		}
	}
	if at, _ := align([]int{7, 2, 7, 2}, scores, 9); at != nil {
		t.Errorf("four phones in nine frames: %v", at)
	}
}

// The recogniser's own file, read and written, is the same but for its header.
func TestGaussiansAreWrittenAsTheyAreRead(t *testing.T) {
	path := filepath.Join(stockModel(t).Acoustic, "means")
	g, err := readGaussians(path)
	if err != nil {
		t.Fatal(err)
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var got bytes.Buffer
	if err := g.write(&got); err != nil {
		t.Fatal(err)
	}
	body := func(b []byte) []byte { return b[bytes.Index(b, []byte("endhdr\n")):] }
	if !bytes.Equal(body(got.Bytes()), body(want)) {
		t.Error("the file changed")
	}
	if _, err := readAcoustics(stockModel(t).Acoustic); err != nil {
		t.Error(err)
	}
}

func TestDamagedAcousticsAreRefused(t *testing.T) {
	dir := t.TempDir()
	for _, text := range []string{"", "s3\n", "s3\nendhdr\n", "s3\nversion 1.0\nendhdr\n\x44\x33\x22\x11\xff\xff\xff\x7f", "BMDF\x01\x00\x00\x00\xff\xff\xff\x7f"} {
		path := filepath.Join(dir, "x")
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := readGaussians(path); err == nil {
			t.Errorf("%q: read as Gaussians", text)
		}
		if _, err := readPhones(path); err == nil {
			t.Errorf("%q: read as phones", text)
		}
		if _, err := readSpeech(path); err == nil {
			t.Errorf("%q: read as a voice", text)
		}
		if _, err := readCepstra(path); err == nil {
			t.Errorf("%q: read as cepstra", text)
		}
	}
}

func TestVoiceIsKept(t *testing.T) {
	file := filepath.Join(t.TempDir(), "voices", "a")
	s := newSpeech(someAcoustics(rand.New(rand.NewPCG(5, 5))))
	s.Frames[3], s.Sums[3*dims+2] = 2, -1.5
	if err := s.keep(file); err != nil {
		t.Fatal(err)
	}
	got, err := readSpeech(file)
	if err != nil {
		t.Fatal(err)
	}
	got.join(s)
	if got.Frames[3] != 4 || got.Sums[3*dims+2] != -3 || len(got.Sums) != len(s.Sums) {
		t.Errorf("%v frames, %v", got.Frames[3], got.Sums[3*dims+2])
	}
}
