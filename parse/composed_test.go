package parse

import (
	"maps"
	"os"
	"strings"
	"testing"
	"time"

	"barwise/colony"
)

// What is said in one sentence is no other when a second is joined to it. The phrases of
// testdata/phrases.txt are joined two by two, and each pair must give the leaves of the two
// alone. Some pairs have two honest readings ("last week they had eggs on bar 4, no
// drones"), so a floor holds the share of those that do, as for the notes.

// waysToJoin are ways of joining two phrases, with the share of pairs that must be read as
// the phrases are alone.
var waysToJoin = []struct {
	name  string
	join  func(a, b string) string
	floor float64
}{
	{"full stop", func(a, b string) string { return "Hive 2. " + capitalised(a) + ". " + capitalised(b) + "." }, 0.999},
	{"lines", func(a, b string) string { return "Hive 2\n" + capitalised(a) + "\n" + capitalised(b) + "\n" }, 1},
	{"semicolon", func(a, b string) string { return "Hive 2. " + capitalised(a) + "; " + b + "." }, 0.962},
	{"comma", func(a, b string) string { return "Hive 2. " + capitalised(a) + ", " + b + "." }, 0.956},
	{"and", func(a, b string) string { return "Hive 2. " + capitalised(a) + " and " + b + "." }, 0.869},
	{"nothing, dictated", func(a, b string) string {
		return "hive two " + strings.ToLower(strings.ReplaceAll(a+" "+b, ",", ""))
	}, 0.929},
}

func TestComposed(t *testing.T) {
	leftOutOfShortRuns(t)
	data, err := os.ReadFile("../testdata/phrases.txt")
	if err != nil {
		t.Fatal(err)
	}
	phrases := strings.Split(strings.TrimSpace(string(data)), "\n")
	p := mustNew(t)
	alone := map[string]map[string]string{}
	for _, phrase := range phrases {
		alone[phrase] = toldOfOne(p, "Hive 2. "+capitalised(phrase)+".")
	}
	for _, j := range waysToJoin {
		right, all := 0, 0
		for _, a := range phrases {
			for _, b := range phrases {
				if a == b || entangled(alone[a], alone[b]) {
					continue
				}
				want := maps.Clone(alone[a])
				maps.Copy(want, alone[b])
				all++
				if got := toldOfOne(p, j.join(a, b)); maps.Equal(got, want) {
					right++
				} else if *differing == j.name {
					t.Logf("%s: %v, alone %v", j.join(a, b), got, want)
				}
			}
		}
		share := float64(right) / float64(all)
		t.Logf("%-18s %5d of %5d pairs read as each alone, %.3f", j.name, right, all, share)
		if share < j.floor {
			t.Errorf("%s: %.4f of the pairs are read as each alone, below the floor of %g", j.name, share, j.floor)
		}
	}
}

// toldOfOne are the leaves of a note about one hive; those of a second hive, which no phrase
// names, count as one leaf more.
func toldOfOne(p *Parser, text string) map[string]string {
	given := time.Date(2026, time.May, 20, 16, 0, 0, 0, time.UTC)
	out := map[string]string{}
	for n, ins := range p.Parse(&colony.Note{Text: text, Given: given}) {
		if n > 0 {
			out["second hive"] = ins.Hive
		}
		for _, leaf := range colony.Leaves(&ins) {
			if leaf.Path != "at" && leaf.Path != "hive" {
				out[leaf.Path] = leaf.Value
			}
		}
	}
	return out
}

// entangled reports whether two phrases tell of the same bar, or both of one thing that a
// hive has once, so that one may tell more of what the other said.
func entangled(a, b map[string]string) bool {
	for x := range a {
		for y := range b {
			if x == y || sharedHead(x) == sharedHead(y) && sharedHead(x) != "" {
				return true
			}
		}
	}
	return false
}

// sharedHead is what two leaves must not have in common to be told apart: their bar, their
// deeds, their queen; "" for leaves that stand by themselves.
func sharedHead(path string) string {
	parts := strings.Split(path, ".")
	switch parts[0] {
	case "bars":
		return strings.Join(parts[:2], ".")
	case "actions", "plans", "earlier", "queen", "mites", "temper", "queenright", "strength", "feeder", "entrance":
		return parts[0]
	}
	return ""
}

func capitalised(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
