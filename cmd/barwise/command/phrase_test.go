package command

import (
	"strings"
	"testing"

	"barwise/colony"
)

func inspectionOf(t *testing.T, leaves ...string) *colony.Inspection {
	t.Helper()
	var ins colony.Inspection
	for _, leaf := range leaves {
		path, value, _ := strings.Cut(leaf, "=")
		if err := colony.Set(&ins, path, value); err != nil {
			t.Fatal(err)
		}
	}
	return &ins
}

func TestPhrases(t *testing.T) {
	ins := inspectionOf(t, "hive=3", "at=2026-05-14T16:00:00Z",
		"bars.4.capped_brood=yes", "bars.4.capped_brood.cover=0.8", "bars.4.capped_brood.side=both", "bars.4.eggs=no",
		"bars.4.comb.drawn=0.33", "bars.4.placed=2026-05-06", "bars.4.queen_cells.capped=yes", "bars.4.queen_cells.capped.count=2",
		"contents.eggs=yes", "contents.eggs.bars=3", "contents.eggs.bars_max=4", "contents.pollen=yes", "contents.pollen.amount=much",
		"queen.seen=no", "queen.colour=white", "queen_cells.any=no", "temper.score=4", "temper.stings=1", "temper.stings=0",
		"mites.method=drop", "mites.count=1", "mites.days=3", "signs.chalkbrood=yes", "signs.chalkbrood.bars=3,4", "signs.wax_moth=no",
		"incoming.pollen=yes", "incoming.pollen.colour=orange", "follower.bar=12", "floor=open",
		"weather.temp_c=17.8", "weather.wind=calm",
		"actions.feed=yes", "actions.feed.amount=2", "actions.feed.unit=l", "actions.feed.what=syrup",
		"actions.feed#2=yes", "actions.add_bar=yes", "actions.add_bar.count=2", "actions.add_bar.to=8",
		"plans.inspect=yes", "plans.inspect.due=2026-05-17", "earlier.queen_seen=no", "earlier.queen_seen.on=2026-05-09")
	var got []string
	for _, p := range phrases(ins) {
		got = append(got, p.topic+": "+p.text)
	}
	want := `bar 4: 33 % drawn
bar 4: put in Wed 6 May 2026
bar 4: capped queen cells × 2
bar 4: capped brood 80 %, both sides
bar 4: no eggs
colony: eggs on 3 bars, at most 4
colony: pollen, much
queen: not seen
queen: white
queen cells: no queen cells
temper: gentle (4 of 4)
temper: 0 stings
mites: drop board
mites: 1 mite
mites: in 3 days
signs: chalkbrood, bars 3,4
signs: no wax moth
incoming: pollen, orange
follower: behind bar 12
floor: open
weather: 17.8 °C
weather: no wind
done: fed, 2 l syrup
done: fed
done: bars added × 2, after bar 8
to do: inspect, by Sun 17 May 2026
earlier: queen not seen, Sat 9 May 2026`
	if joined := strings.Join(got, "\n"); joined != want {
		t.Errorf("got:\n%s\nwant:\n%s", joined, want)
	}
}

// TestEveryKeyHasWords: no key of the record reaches a person as it is spelled
// in the record, and none is silent.
func TestEveryKeyHasWords(t *testing.T) {
	for _, list := range []string{"contents", "queen_cells", "signs", "incoming", "actions", "plans", "earlier"} {
		keys := colony.Keys(list)
		if len(keys) == 0 {
			t.Errorf("no keys of %s", list)
		}
		for _, key := range keys {
			said := phrases(inspectionOf(t, list+"."+key+"=yes"))
			if len(said) != 1 || said[0].text == "" || strings.ContainsAny(said[0].text, "_%") {
				t.Errorf("%s.%s is said as %+v", list, key, said)
			}
		}
	}
}

// TestEveryWordingNamesALeaf: a wording for a leaf that the record does not
// have would never be used.
func TestEveryWordingNamesALeaf(t *testing.T) {
	for name := range wordings {
		group, item, detail := cutName(name)
		found := false
		for _, path := range []string{name, "bars.4." + name, "bars.4." + item} {
			_, err := colony.FieldOf(path)
			found = found || err == nil
		}
		if detail != "" {
			found = detailExists(group, detail)
		}
		if !found {
			t.Errorf("%q names no leaf", name)
		}
	}
}

func cutName(name string) (group, item, detail string) {
	parts := strings.SplitN(name, ".", 3)
	if strings.HasPrefix(name, "*.") {
		return "", "", parts[1]
	}
	if len(parts) == 3 {
		return parts[0], parts[1], parts[2]
	}
	return parts[0], parts[len(parts)-1], ""
}

func detailExists(group, detail string) bool {
	for _, list := range []string{"contents", "queen_cells", "signs", "incoming", "actions", "plans", "earlier"} {
		if group != "" && group != list {
			continue
		}
		if _, err := colony.FieldOf(list + "." + colony.Keys(list)[0] + "." + detail); err == nil {
			return true
		}
	}
	return false
}

func TestSheetShowsFlagsWithTheReason(t *testing.T) {
	ins := inspectionOf(t, "hive=3", "at=2026-05-14T16:00:00Z", "bars.4.nectar=yes", "queen.seen=yes")
	ins.Check = []colony.Check{{Path: "hive", Why: "inferred"}, {Path: "bars.4.nectar", Why: "possibly misheard", Alt: "no"},
		{Path: "mites.count", Why: "contradicted"}}
	ins.Remarks = []string{"the dog\nsat \x1b[31mby"}
	var out strings.Builder
	sheet{out: &out, style: stylesFor(&out)}.inspection(ins)
	want := `hive 3, Thu 14 May 2026, 16:00
                 ? hive: inferred
  bar 4          nectar ?
                 ? bars.4.nectar: possibly misheard (or no)
  queen          seen
                 ? mites.count: contradicted
  remarks        “the dog sat ·[31mby”
`
	if out.String() != want {
		t.Errorf("got:\n%s\nwant:\n%s", out.String(), want)
	}
}
