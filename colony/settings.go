package colony

import "fmt"

// Settings are the choices of a keeper that the arithmetic needs. The zero
// value is not usable; begin with [DefaultSettings].
type Settings struct {
	Box     Box          `json:"box"`
	Season  Season       `json:"season"`
	Target  WinterTarget `json:"winter_target"`
	MiteSet string       `json:"mite_set,omitempty"` // one of [MiteLimitSets]; empty compares with all
}

// DefaultSettings are the named defaults, each to be replaced by the keeper's
// own.
func DefaultSettings() Settings {
	return Settings{Box: DefaultBox, Target: WinterTargets[0]}
}

func (t WinterTarget) words() string {
	return fmt.Sprintf("winter target %s, %s", t.Name, t.Need.Value)
}
