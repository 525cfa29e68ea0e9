package parse

import (
	"slices"
	"testing"
)

func TestSpelt(t *testing.T) {
	got := slices.Collect(spelt("[fresh|new] (eggs|egg) [in] <n>"))
	want := []string{"fresh eggs in <n>", "new egg <n>", "eggs in <n>"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestSayingsHoldTheWordsOfTheRules(t *testing.T) {
	all, err := Sayings()
	if err != nil {
		t.Fatal(err)
	}
	kinds := map[string]int{}
	for kind := range all {
		kinds[kind]++
	}
	for _, kind := range []string{"content", "plant", "sign", "temper", "do", Example} {
		if kinds[kind] < 50 {
			t.Errorf("%s: %d of them", kind, kinds[kind])
		}
	}
}
