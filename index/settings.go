package index

import (
	"encoding/json"
	"errors"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

var ownWordsKey = []byte("own")

// OwnWords returns the keeper's own words; none where none were set.
func (s *Store) OwnWords() (own colony.OwnWords, err error) {
	err = s.view(func(tx *bolt.Tx) (err error) {
		own, err = getOwnWords(tx)
		return err
	})
	return own, err
}

func getOwnWords(tx *bolt.Tx) (own colony.OwnWords, err error) {
	if data := tx.Bucket(bucketWords).Get(ownWordsKey); data != nil {
		err = decode(tx, "own words", data, &own)
	}
	return own, err
}

// SetOwnWords replaces the keeper's own words.
func (s *Store) SetOwnWords(own colony.OwnWords) error {
	return s.update(func(tx *bolt.Tx) error { return putJSON(tx.Bucket(bucketWords), ownWordsKey, &own) })
}

// Setting reads the named setting into v and reports whether it was set; where
// it was not, v is left alone.
func (s *Store) Setting(name string, v any) (set bool, err error) {
	err = s.view(func(tx *bolt.Tx) error {
		data := tx.Bucket(bucketSettings).Get([]byte(name))
		if set = data != nil; !set {
			return nil
		}
		return json.Unmarshal(data, v)
	})
	return set, err
}

// SetSetting keeps v under the name, in its JSON form; nil removes it.
func (s *Store) SetSetting(name string, v any) error {
	if name == "" {
		return errors.New("a setting needs a name")
	}
	return s.update(func(tx *bolt.Tx) error {
		if v == nil {
			return tx.Bucket(bucketSettings).Delete([]byte(name))
		}
		return putJSON(tx.Bucket(bucketSettings), []byte(name), &v)
	})
}
