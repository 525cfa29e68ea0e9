package command

import (
	"cmp"
	"fmt"
	"strings"

	"barwise/colony"
	"barwise/tui"
)

// hiveSheet prints one colony.
type hiveSheet struct{ sheet }

func (h hiveSheet) print(ap *colony.Appraisal, of *apiary, explain bool) {
	fmt.Fprintf(h.out, "%s, as of %s; last inspection %s\n", h.style.head.Render("hive "+oneLine(ap.Hive)), day(ap.Today.String()), day(ap.Last.String()))
	if n := of.waiting[ap.Hive]; n > 0 {
		fmt.Fprintf(h.out, "  %s not confirmed yet: barwise review\n", amount(n, "inspection"))
	}
	history := of.upTo(ap.Hive, ap.Today)
	h.combs(history)
	h.queen(ap)
	h.numbers(ap)
	h.mites(ap)
	for i, d := range ap.Due {
		h.entry(first(i, "due"), fmt.Sprintf("%s  %s (%s)", d.On, oneLine(d.What), oneLine(d.Why)))
	}
	for i, c := range ap.Cautions {
		h.entry(first(i, "take care"), oneLine(c.Says))
	}
	h.lastOnes(history)
	if explain {
		for _, e := range ap.Explanations() {
			fmt.Fprintf(h.out, "\n%s\n", clean(e.String()))
		}
	}
}

// first is the topic of the first line of several.
func first(i int, topic string) string {
	if i > 0 {
		return ""
	}
	return topic
}

// combs draws the last inspection that spoke of bars, with what changed since
// the one before it.
func (h hiveSheet) combs(history []colony.Inspection) {
	var now, before *colony.Inspection
	for i := len(history) - 1; i >= 0 && before == nil; i-- {
		switch {
		case len(history[i].Bars) == 0:
		case now == nil:
			now = &history[i]
		default:
			before = &history[i]
		}
	}
	if now == nil {
		return
	}
	fmt.Fprintf(h.out, "\n  combs as found on %s\n", now.At.Format("Mon 2 January 2006"))
	width := 80
	if h.wide > 0 {
		width = min(h.wide, 120)
	}
	picture := tui.RenderHive(now, before, width-2, tui.HiveStyle{Rows: 4, Legend: true})
	for line := range strings.SplitSeq(picture, "\n") {
		fmt.Fprintln(h.out, strings.TrimRight("  "+line, " "))
	}
	fmt.Fprintln(h.out)
}

func (h hiveSheet) queen(ap *colony.Appraisal) {
	h.entry("queen", fmt.Sprintf("%s (%s)", oneLine(string(ap.Queen.State)), ap.Queen.Sureness))
	for _, text := range append([]string{ap.Queen.Says}, ap.Queen.Notes...) {
		if text != "" {
			h.entry("", oneLine(text))
		}
	}
	if ap.Colour != nil && ap.Colour.Says != "" {
		h.entry("mark", oneLine(ap.Colour.Says))
	}
}

// numbers prints what can be worked out, and nothing of what cannot.
func (h hiveSheet) numbers(ap *colony.Appraisal) {
	last := ""
	show := func(topic, text string) {
		if text != "" {
			if topic == last {
				h.entry("", oneLine(text))
			} else {
				h.entry(topic, oneLine(text))
			}
			last = topic
		}
	}
	estimate := func(topic, what string, e colony.Estimate) {
		if e.Known() {
			show(topic, what+" "+e.Range.String())
		}
	}
	estimate("brood", "capped", ap.Brood.Capped)
	estimate("brood", "open", ap.Brood.Open)
	estimate("laying", "", ap.Laying)
	estimate("bees", "", ap.Adults)
	estimate("comb", "", ap.Comb)
	estimate("room", "in use", ap.Space.Used)
	estimate("room", "free before the follower", ap.Space.Free)
	for _, note := range ap.Space.Notes {
		show("room", note)
	}
	if ap.Food.Word != "" {
		show("food", "stores "+ap.Food.Word+" on "+ap.Food.AsOf.String())
	}
	estimate("food", "honey and nectar", ap.Food.Honey)
	estimate("food", "missing to the winter target", ap.Gap)
}

func (h hiveSheet) mites(ap *colony.Appraisal) {
	if ap.Mites == nil {
		return
	}
	h.entry("mites", fmt.Sprintf("%s on %s, by %s", ap.Mites.Rate.Range, ap.Mites.On, ap.Mites.Method))
	for _, v := range ap.Verdicts {
		h.entry("", oneLine(v.Says))
	}
	if ap.Growth != nil && ap.Growth.Says != "" {
		h.entry("", oneLine(ap.Growth.Says))
	}
}

// lastOnes prints the last five inspections in a line each, without the combs,
// which are drawn above, and the weather.
func (h hiveSheet) lastOnes(history []colony.Inspection) {
	for i := range min(5, len(history)) {
		ins := &history[len(history)-1-i]
		h.entry(ins.At.Format("2006-01-02"), cmp.Or(summary(ins), "combs only"))
	}
}

// summary says an inspection in a line: its topics, each with what was said.
func summary(ins *colony.Inspection) string {
	var parts []string
	last := ""
	for _, p := range phrases(ins) {
		switch {
		case strings.HasPrefix(p.topic, "bar ") || p.topic == "weather":
			continue
		case p.topic == last:
			parts[len(parts)-1] += ", " + p.text
		default:
			parts = append(parts, p.topic+": "+p.text)
		}
		last = p.topic
	}
	return oneLine(strings.Join(parts, "; "))
}
