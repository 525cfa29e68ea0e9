package colony_test

import (
	"slices"
	"strings"
	"testing"

	"barwise/colony"
)

func TestHivesAreInTheOrderOfTheirNumbers(t *testing.T) {
	names := []string{"pond", "10", "barn", "2", "bar 3", "100", ""}
	slices.SortFunc(names, colony.CompareHives)
	if got, want := strings.Join(names, " "), " 2 10 100 bar 3 barn pond"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
