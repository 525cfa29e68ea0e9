package voice

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
)

// acoustics are the Gaussians of the recogniser's acoustic model: for each
// phone a codebook of some in each of three streams (cepstra, their differences,
// and the differences of those), with diagonal covariances. The form of the files is that of
// CMU Sphinx ("s3" parameter files and the binary model definition:
// cmusphinx/pocketsphinx, src/ms_gauden.c and src/bin_mdef.c, read for the layout).
type acoustics struct {
	phones  map[string]int // codebook of a phone
	means   *gaussians
	inverse *gaussians // of the variances, floored
	norms   []float64  // of each Gaussian: half the logarithm of its determinant
}

// gaussians are one vector for each Gaussian, by codebook, stream and density.
type gaussians struct {
	books, streams, densities int
	data                      []float32
}

// dims is the length of a vector in each stream.
const dims = 13

func (g *gaussians) index(book, stream, density int) int {
	return (book*g.streams+stream)*g.densities + density
}

func (g *gaussians) vector(i int) []float32 { return g.data[i*dims : (i+1)*dims] }

// count is how many Gaussians there are.
func (g *gaussians) count() int { return len(g.data) / dims }

var errAcoustics = errors.New("not an acoustic model of the kind that can be adapted")

// varianceFloor keeps a Gaussian from being taken for a point: the recogniser's
// own floor.
const varianceFloor = 1e-4

// readAcoustics reads the Gaussians of a model's folder.
func readAcoustics(dir string) (*acoustics, error) {
	a := &acoustics{}
	var err error
	if a.phones, err = readPhones(filepath.Join(dir, "mdef")); err != nil {
		return nil, err
	}
	if a.means, err = readGaussians(filepath.Join(dir, "means")); err != nil {
		return nil, err
	}
	if a.inverse, err = readGaussians(filepath.Join(dir, "variances")); err != nil {
		return nil, err
	}
	if a.inverse.count() != a.means.count() || len(a.phones) != a.means.books {
		return nil, fmt.Errorf("%s: %w: its files do not fit each other", dir, errAcoustics)
	}
	a.norms = make([]float64, a.means.count())
	for i := range a.norms {
		for j, v := range a.inverse.vector(i) {
			v = max(v, varianceFloor)
			a.norms[i] += 0.5 * math.Log(float64(v))
			a.inverse.vector(i)[j] = 1 / v
		}
	}
	return a, nil
}

// readPhones reads the names of the phones that stand alone, in the order of
// their codebooks.
func readPhones(path string) (map[string]int, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	r := bytes.NewReader(data)
	var head struct {
		Magic        [4]byte
		Version, Len int32
	}
	bad := fmt.Errorf("%s: %w", path, errAcoustics)
	if binary.Read(r, binary.LittleEndian, &head) != nil || string(head.Magic[:]) != "BMDF" || head.Len < 0 || int(head.Len) > len(data) {
		return nil, bad
	}
	r.Seek(int64(head.Len), io.SeekCurrent)
	var sizes [10]int32 // the first is how many phones there are
	if binary.Read(r, binary.LittleEndian, &sizes) != nil || sizes[0] < 1 || sizes[0] > 1000 {
		return nil, bad
	}
	names := bytes.SplitN(data[len(data)-r.Len():], []byte{0}, int(sizes[0])+1)
	if len(names) != int(sizes[0])+1 {
		return nil, bad
	}
	phones := map[string]int{}
	for i, name := range names[:sizes[0]] {
		phones[string(name)] = i
	}
	return phones, nil
}

const (
	parameterHead  = "s3\nversion 1.0\nchksum0 yes\n"
	parameterOrder = 0x11223344
)

// readGaussians reads a file of means or variances.
func readGaussians(path string) (*gaussians, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	const end = "endhdr\n"
	bad := fmt.Errorf("%s: %w", path, errAcoustics)
	at := bytes.Index(data, []byte(end))
	if at < 0 || !bytes.HasPrefix(data, []byte("s3\n")) {
		return nil, bad
	}
	r := bytes.NewReader(data[at+len(end):])
	var head struct {
		Order                     uint32
		Books, Streams, Densities int32
		Dims                      [3]int32
		Floats                    int32
	}
	if binary.Read(r, binary.LittleEndian, &head) != nil || head.Order != parameterOrder || head.Streams != 3 ||
		head.Dims != [3]int32{dims, dims, dims} || head.Books < 1 || head.Densities < 1 ||
		int64(head.Floats)*4 > int64(r.Len()) || int64(head.Books)*int64(head.Densities)*3*dims != int64(head.Floats) {
		return nil, bad
	}
	g := &gaussians{books: int(head.Books), streams: 3, densities: int(head.Densities), data: make([]float32, head.Floats)}
	if err := binary.Read(r, binary.LittleEndian, g.data); err != nil {
		return nil, bad
	}
	return g, nil
}

// write writes the vectors as the recogniser reads them, with the sum by which
// it notices damage.
func (g *gaussians) write(w io.Writer) error {
	words := []uint32{uint32(g.books), uint32(g.streams), uint32(g.densities), dims, dims, dims, uint32(len(g.data))}
	for _, x := range g.data {
		words = append(words, math.Float32bits(x))
	}
	sum := uint32(0)
	for _, x := range words {
		sum = (sum<<20 | sum>>12) + x
	}
	words = append(slices.Insert(words, 0, parameterOrder), sum)
	if _, err := io.WriteString(w, parameterHead+"endhdr\n"); err != nil {
		return err
	}
	return binary.Write(w, binary.LittleEndian, words)
}
