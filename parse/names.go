package parse

import "strings"

// properNames finds names that the note uses for its hives without the word
// hive.
func (r *reader) properNames() map[string]bool {
	_ = strings.ToLower
	return map[string]bool{}
}
