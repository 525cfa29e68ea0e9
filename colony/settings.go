package colony

import "fmt"

// Settings are the choices of a keeper that the arithmetic needs. The zero
// value is not usable; begin with [DefaultSettings].
type Settings struct {
	Box     Box            `json:"box"`             // of every hive that has none of its own
	Boxes   map[string]Box `json:"boxes,omitempty"` // by hive
	Season  Season         `json:"season"`
	Target  WinterTarget   `json:"winter_target"`
	MiteSet string         `json:"mite_set,omitempty"` // one of [MiteLimitSets]; empty compares with all
}

// DefaultSettings are the named defaults, each to be replaced by the keeper's
// own.
func DefaultSettings() Settings {
	return Settings{Box: DefaultBox, Target: WinterTargets[0]}
}

// forHive are the settings with the measures of one hive.
func (s Settings) forHive(hive string) Settings {
	if box, ok := s.Boxes[hive]; ok {
		s.Box = box
	}
	return s
}

func (t WinterTarget) words() string {
	return fmt.Sprintf("winter target (%s): %s, %s", t.Name, t.Need.Value, t.Need.Value.InPounds())
}
