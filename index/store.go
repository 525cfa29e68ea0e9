package index

import (
	"bytes"
	"crypto/rand"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sync"
	"time"

	"github.com/oklog/ulid/v2"
	bolt "go.etcd.io/bbolt"
	bolterrors "go.etcd.io/bbolt/errors"

	"barwise/colony"
)

// The names within a data directory.
const (
	StoreFile = "store.db"
	IndexDir  = "index"
)

// Store is an open data directory. Its methods may be called from several
// goroutines.
type Store struct {
	dir  string
	path string // of the bbolt file
	opts options
	db   *bolt.DB
	ids  io.Reader // entropy of new IDs, rising within a millisecond; used inside write transactions only

	mu     sync.Mutex // guards what follows
	words  searcher
	asked  error // why the index cannot be used, or nil
	closed bool
	built  mark // the last change that an index held which was built since Open
}

type options struct {
	readOnly bool
	lockWait time.Duration
	log      func(string)
	clock    func() time.Time
}

// Option changes how a store is opened.
type Option func(*options)

// ReadOnly opens without the right to change anything, so that several
// processes can read at once. Where there is no store yet, or the index has to
// be mended first, the store is opened for writing all the same.
func ReadOnly() Option { return func(o *options) { o.readOnly = true } }

// LockWait is how long Open waits for another process to let go; the default
// is one second.
func LockWait(d time.Duration) Option { return func(o *options) { o.lockWait = d } }

// Log receives a sentence where something was mended or could not be; the
// default is silence.
func Log(log func(string)) Option { return func(o *options) { o.log = log } }

// Open opens the data directory, and makes it where there is none. It fails
// with ErrLocked, ErrNewer or ErrDamaged, and then has changed nothing. An
// index that does not follow the store is mended; if that fails, Open
// succeeds and says so through Log, and Find returns the reason.
func Open(dir string, opts ...Option) (*Store, error) {
	o := options{lockWait: time.Second, log: func(string) {}, clock: time.Now}
	for _, opt := range opts {
		opt(&o)
	}
	s, err := open(dir, o)
	if err != nil || !o.readOnly || s.asked == nil {
		return s, err
	}
	if err := s.closeAll(); err != nil {
		return nil, err
	}
	writing := o
	writing.readOnly = false
	if s, err = open(dir, writing); err == nil {
		return s, nil
	}
	o.log(fmt.Sprintf("the search index needs mending, which has to wait (%v)", err))
	return open(dir, o)
}

// open opens store and index once, as the options say. A read-only store whose
// index needs mending comes back with the reason in asked.
func open(dir string, o options) (*Store, error) {
	path := filepath.Join(dir, StoreFile)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return nil, fmt.Errorf("the data directory cannot be made: %w", err)
	}
	if err := inspect(path, filepath.Join(dir, IndexDir)); errors.Is(err, os.ErrNotExist) {
		o.readOnly = false
	} else if err != nil {
		return nil, err
	}
	s := &Store{dir: dir, path: path, opts: o, ids: ulid.Monotonic(rand.Reader, 0)}
	if err := s.openFile(); err != nil {
		return nil, err
	}
	if err := s.prepare(); err != nil {
		s.db.Close()
		return nil, err
	}
	s.words.dir = filepath.Join(dir, IndexDir)
	s.asked = s.follow()
	if s.asked != nil && !o.readOnly {
		o.log(s.asked.Error())
	}
	return s, nil
}

// openFile opens the bbolt file and takes its lock.
func (s *Store) openFile() error {
	err := guarded(s.path, func() error {
		db, err := bolt.Open(s.path, 0o600, &bolt.Options{Timeout: s.opts.lockWait, ReadOnly: s.opts.readOnly,
			FreelistType: bolt.FreelistMapType, NoStatistics: true})
		if err == nil { // else the one before stays, to be closed
			s.db = db
		}
		return err
	})
	switch {
	case err == nil || errors.Is(err, ErrDamaged):
		return err
	case errors.Is(err, bolterrors.ErrTimeout):
		return fmt.Errorf("%s: %w, which holds the lock on this file: close the other barwise (a review or take that is still open) and try again", s.path, ErrLocked)
	case errors.Is(err, bolterrors.ErrInvalid), errors.Is(err, bolterrors.ErrVersionMismatch), errors.Is(err, bolterrors.ErrChecksum):
		return damaged(s.path, err)
	}
	return explain(s.path, err)
}

// Close brings the index up to date and lets go of the directory. What the
// index cannot take now it gets at the next Open. A second Close does nothing,
// and all else fails from then on.
func (s *Store) Close() error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.closed {
		return nil
	}
	if !s.opts.readOnly && s.asked == nil {
		if err := s.catchUp(); err != nil {
			s.opts.log(behind(err))
		}
	}
	return s.closeAll()
}

func (s *Store) closeAll() error {
	s.closed = true
	return errors.Join(s.words.close(), s.db.Close())
}

// Dir is the data directory.
func (s *Store) Dir() string { return s.dir }

// view runs a read transaction.
func (s *Store) view(f func(*bolt.Tx) error) error {
	return guarded(s.path, func() error { return s.db.View(f) })
}

// update runs a write transaction; it is on the disk when update returns nil.
func (s *Store) update(f func(*bolt.Tx) error) error {
	if s.opts.readOnly {
		return ErrReadOnly
	}
	return explain(s.path, guarded(s.path, func() error { return s.db.Update(f) }))
}

// newID makes an ID that sorts by t.
func (s *Store) newID(t time.Time) (string, error) {
	ms := t.UnixMilli()
	if ms < 0 || uint64(ms) > ulid.MaxTime() {
		ms = s.opts.clock().UnixMilli()
	}
	id, err := ulid.New(uint64(ms), s.ids)
	return id.String(), err
}

func getRecord(tx *bolt.Tx, id string) (colony.Record, error) {
	var r colony.Record
	data := tx.Bucket(bucketRecords).Get([]byte(id))
	if data == nil {
		return r, unknown("record", id)
	}
	return r, decode(tx, "record "+id, data, &r)
}

// decode reads a stored JSON value; one that cannot be read is damage.
func decode(tx *bolt.Tx, what string, data []byte, into any) error {
	if err := json.Unmarshal(data, into); err != nil {
		return damaged(tx.DB().Path(), fmt.Sprintf("%s: %v", what, err))
	}
	return nil
}

// stored is the JSON form in which a value is kept. JSON has no way to say
// bytes that are no UTF-8; where the value holds such, it becomes what can be
// said, so that its keys are those of what is stored.
func stored[T any](value *T) ([]byte, error) {
	data, err := json.Marshal(value)
	if err != nil || !bytes.Contains(data, []byte(`\ufffd`)) {
		return data, err
	}
	var said T
	if err := json.Unmarshal(data, &said); err != nil {
		return nil, err
	}
	*value = said
	return json.Marshal(value)
}

func putJSON[T any](b *bolt.Bucket, key []byte, value *T) error {
	data, err := stored(value)
	if err != nil {
		return err
	}
	return b.Put(key, data)
}
