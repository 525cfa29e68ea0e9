package colony

import (
	"cmp"
	"math"
	"strings"
)

// CompareHives orders the names of hives: numbers by their value, then names by
// their letters. It is negative where a comes first, as [strings.Compare] is.
func CompareHives(a, b string) int {
	rank := func(name string) int {
		if strings.Trim(name, "0123456789") == "" {
			return len(name)
		}
		return math.MaxInt
	}
	return cmp.Or(cmp.Compare(rank(a), rank(b)), strings.Compare(a, b))
}
