package index

import (
	"encoding/binary"
	"errors"
	"fmt"
	"hash/fnv"
	"io"
	"os"
	"strconv"

	bolt "go.etcd.io/bbolt"
)

// storeVersion is the layout of the buckets that this program writes.
const storeVersion = 1

// migrations bring a store from a version to the next one. Each runs in the
// transaction that writes the new version.
var migrations = map[int]func(*bolt.Tx) error{}

// The layout of a bbolt meta page (bbolt, internal/common: Page, Meta). The
// file's two first pages are meta pages, of which the newer valid one counts.
const (
	metaMagic    = 0xED0CDAED
	metaOffset   = 16 // of the meta within its page
	metaPageSize = metaOffset + 8
	metaPages    = metaOffset + 40 // pages in use, the high water mark
	metaTx       = metaOffset + 48
	metaSum      = metaOffset + 56 // FNV-1a of the meta before it
	metaEnd      = metaSum + 8
)

// inspect looks at the store's file before bbolt does, since bbolt begins an
// empty file anew and maps a shortened one into memory as if it were whole. It
// returns os.ErrNotExist where there is no file, or an empty one that nothing
// was ever stored in, as a first start that was interrupted leaves behind.
func inspect(path, indexDir string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return err
	}
	if !info.Mode().IsRegular() {
		return fmt.Errorf("%s is no file: move it away, or name another data directory", path)
	}
	if info.Size() == 0 {
		if _, err := os.Stat(indexDir); errors.Is(err, os.ErrNotExist) {
			return os.ErrNotExist
		}
		return damaged(path, "the file is empty")
	}
	needed, err := promisedSize(f)
	if err != nil {
		return damaged(path, err)
	}
	if info.Size() < needed {
		return damaged(path, fmt.Sprintf("the file ends after %d of %d bytes", info.Size(), needed))
	}
	return nil
}

// promisedSize is the number of bytes that the newest valid meta page says are
// in use.
func promisedSize(f io.ReaderAt) (int64, error) {
	var newest, size uint64
	found := false
	// The second meta page begins where the first ends, at the page size.
	for _, at := range []int64{0, 1 << 9, 1 << 10, 1 << 11, 1 << 12, 1 << 13, 1 << 14, 1 << 15, 1 << 16} {
		page := make([]byte, metaEnd)
		if n, err := f.ReadAt(page, at); n < metaEnd {
			if err != nil && !errors.Is(err, io.EOF) {
				return 0, err
			}
			continue
		}
		if !validMeta(page) {
			continue
		}
		if tx := binary.NativeEndian.Uint64(page[metaTx:]); !found || tx > newest {
			newest, found = tx, true
			size = binary.NativeEndian.Uint64(page[metaPages:]) * uint64(binary.NativeEndian.Uint32(page[metaPageSize:]))
		}
	}
	if !found || size > 1<<62 {
		return 0, errors.New("this is no store, or its first pages are lost")
	}
	return int64(size), nil
}

func validMeta(page []byte) bool {
	sum := fnv.New64a()
	sum.Write(page[metaOffset:metaSum])
	return binary.NativeEndian.Uint32(page[metaOffset:]) == metaMagic &&
		binary.NativeEndian.Uint64(page[metaSum:]) == sum.Sum64()
}

// prepare makes the buckets of a new store, as of one whose first start was
// interrupted, and checks the version of one that is there.
func (s *Store) prepare() error {
	var version int
	var fresh bool
	err := s.view(func(tx *bolt.Tx) (err error) {
		if fresh = tx.Bucket(bucketMeta) == nil; fresh {
			if k, _ := tx.Cursor().First(); k != nil {
				return damaged(s.path, "the file holds something else")
			}
			return nil
		}
		version, err = readVersion(tx)
		return err
	})
	switch {
	case err != nil:
		return err
	case version > storeVersion:
		return fmt.Errorf("%s: %w (version %d, this one knows %d): update barwise; nothing was changed", s.path, ErrNewer, version, storeVersion)
	case version == storeVersion:
		return s.complete()
	case s.opts.readOnly:
		if err := s.db.Close(); err != nil {
			return err
		}
		s.opts.readOnly = false
		if err := s.openFile(); err != nil {
			return err
		}
	}
	if fresh {
		return s.update(create)
	}
	return s.update(func(tx *bolt.Tx) error { return migrate(tx, version, storeVersion, migrations) })
}

// complete reports a store that lacks a bucket.
func (s *Store) complete() error {
	return s.view(func(tx *bolt.Tx) error {
		for _, name := range buckets {
			if tx.Bucket(name) == nil {
				return damaged(s.path, fmt.Sprintf("%q is missing", name))
			}
		}
		return nil
	})
}

func create(tx *bolt.Tx) error {
	for _, name := range buckets {
		if _, err := tx.CreateBucketIfNotExists(name); err != nil {
			return err
		}
	}
	return writeVersion(tx, storeVersion)
}

// migrate runs the steps from one version to another.
func migrate(tx *bolt.Tx, from, to int, steps map[int]func(*bolt.Tx) error) error {
	for v := from; v < to; v++ {
		step, ok := steps[v]
		if !ok {
			return damaged(tx.DB().Path(), fmt.Sprintf("version %d was never released", v))
		}
		if err := step(tx); err != nil {
			return fmt.Errorf("%s: from version %d to %d: %w", tx.DB().Path(), v, v+1, err)
		}
	}
	return writeVersion(tx, to)
}

func readVersion(tx *bolt.Tx) (int, error) {
	version, err := strconv.Atoi(string(tx.Bucket(bucketMeta).Get([]byte("version"))))
	if err != nil {
		return 0, damaged(tx.DB().Path(), "its version cannot be read")
	}
	return version, nil
}

func writeVersion(tx *bolt.Tx, version int) error {
	return tx.Bucket(bucketMeta).Put([]byte("version"), []byte(strconv.Itoa(version)))
}
