package index

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"os"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/index/scorch"
	"github.com/blevesearch/bleve/v2/index/scorch/mergeplan"
	bleveindex "github.com/blevesearch/bleve_index_api"
)

// What the index remembers of itself.
var (
	internalSeen    = []byte("barwise seen")    // mark of the last change in it
	internalMapping = []byte("barwise mapping") // how it was made
)

// searcher is the bleve index. It is opened for reading, and reopened for
// writing only when there is something to write, which is dearer.
type searcher struct {
	dir      string
	idx      bleve.Index // nil where there is none yet
	writable bool
	seen     mark
}

func (w *searcher) exists() bool {
	_, err := os.Stat(w.dir)
	return !errors.Is(err, os.ErrNotExist)
}

// open opens the index, and learns which change it has seen last. An index
// made with another mapping is refused.
func (w *searcher) open(writable bool) error {
	if err := w.close(); err != nil {
		return err
	}
	return sheltered(func() error {
		idx, err := bleve.OpenUsing(w.dir, map[string]any{"read_only": !writable, "bolt_timeout": "1s"})
		if err != nil {
			return err
		}
		w.idx, w.writable = idx, writable
		if err := w.remember(); err != nil {
			return errors.Join(err, w.close())
		}
		return nil
	})
}

// remember reads what the index says of itself.
func (w *searcher) remember() error {
	made, err := w.idx.GetInternal(internalMapping)
	if err != nil {
		return err
	}
	if string(made) != mappingID() {
		return errors.New("it was made by another version")
	}
	data, err := w.idx.GetInternal(internalSeen)
	if err != nil {
		return err
	}
	var ok bool
	if w.seen, ok = markOf(data); !ok {
		return errors.New("it does not say what it has seen")
	}
	return nil
}

// mappingID names the mapping and what entries are made of.
func mappingID() string {
	data, err := json.Marshal(newMapping())
	if err != nil {
		panic("index: the mapping always has a JSON form: " + err.Error())
	}
	sum := sha256.Sum256(data)
	return mappingVersion + " " + hex.EncodeToString(sum[:8])
}

// create makes an empty index that has seen nothing.
func (w *searcher) create() error {
	if err := os.RemoveAll(w.dir); err != nil {
		return err
	}
	return sheltered(func() error {
		idx, err := bleve.New(w.dir, newMapping())
		if err != nil {
			return err
		}
		w.idx, w.writable, w.seen = idx, true, mark{}
		if err := os.Chmod(w.dir, 0o700); err != nil {
			return err
		}
		return w.claim(mark{})
	})
}

// claim writes down what the index has seen, and how it was made.
func (w *searcher) claim(seen mark) error {
	b := w.idx.NewBatch()
	b.SetInternal(internalMapping, []byte(mappingID()))
	b.SetInternal(internalSeen, seen.bytes())
	if err := w.idx.Batch(b); err != nil {
		return err
	}
	w.seen = seen
	return nil
}

func (w *searcher) close() error {
	if w.idx == nil {
		return nil
	}
	idx := w.idx
	w.idx = nil
	return sheltered(idx.Close)
}

// tidy merges small segments as the index itself plans to in its background,
// so that many short runs do not leave many segments behind.
func (w *searcher) tidy() error {
	inner, err := w.idx.Advanced()
	if err != nil {
		return err
	}
	s, ok := inner.(*scorch.Scorch)
	if !ok {
		return nil
	}
	plan := mergeplan.DefaultMergePlanOptions
	return s.ForceMerge(context.Background(), &plan)
}

// read runs f on a snapshot of the index.
func (w *searcher) read(f func(bleveindex.IndexReader) error) error {
	return sheltered(func() error {
		inner, err := w.idx.Advanced()
		if err != nil {
			return err
		}
		reader, err := inner.Reader()
		if err != nil {
			return err
		}
		return errors.Join(f(reader), reader.Close())
	})
}

// errIndex marks an index that broke in use, as a damaged one does.
var errIndex = errors.New("the search index is damaged")

// sheltered runs f on the index and turns panics and faults, which is how a
// damaged index shows, into errIndex.
func sheltered(f func() error) (err error) {
	return guardedBy(func(p any) error { return fmt.Errorf("%w (%v)", errIndex, p) }, f)
}
