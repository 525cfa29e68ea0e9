package command

import (
	"cmp"
	"fmt"
	"strings"

	"barwise/colony"
	"barwise/tui"
)

// hiveSheet prints one colony.
type hiveSheet struct {
	sheet
	shared bool // for others to read: without the codes that due takes
}

func (h hiveSheet) print(ap *colony.Appraisal, of *apiary, explain bool) {
	fmt.Fprintf(h.out, "%s, as of %s; last inspection %s\n", h.style.head.Render("hive "+oneLine(ap.Hive)), fullDate(ap.Today), fullDate(ap.Last))
	if n := of.waiting[ap.Hive]; n > 0 {
		fmt.Fprintf(h.out, "  %s not confirmed yet: barwise review\n", amount(n, "inspection"))
	}
	history := of.upTo(ap.Hive, ap.Today)
	h.combs(history)
	h.known(ap)
	h.lastOnes(history)
	if explain {
		for _, e := range ap.Explanations() {
			fmt.Fprintf(h.out, "\n%s\n", explained(e, h.wide))
		}
	}
}

// known prints what the inspections come to.
func (h hiveSheet) known(ap *colony.Appraisal) {
	h.queen(ap)
	h.numbers(ap)
	h.mites(ap)
	for i, d := range ap.Due {
		text := longDate(d.On) + ": " + oneLine(d.What)
		if !h.shared {
			text = shortCode(d) + "  " + longDate(d.On) + "  " + oneLine(d.What)
		}
		if isOverdue(d, ap.Today) {
			text += ", " + h.style.flag.Render("overdue")
		}
		h.entry(first(i, "due"), text)
		h.entry("", oneLine(d.Why))
	}
	h.cautions(ap)
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
	picture := tui.RenderHive(now, before, width-2, 4)
	for line := range strings.SplitSeq(picture, "\n") {
		fmt.Fprintln(h.out, strings.TrimRight("  "+line, " "))
	}
	fmt.Fprintln(h.out)
}

// queen prints the state with the day it is of: what was seen weeks ago is not
// what is there today.
func (h hiveSheet) queen(ap *colony.Appraisal) {
	q := &ap.Queen
	state := fmt.Sprintf("%s (%s)", oneLine(string(q.State)), q.Sureness)
	if !q.AsOf.IsZero() && q.AsOf != ap.Today {
		state += fmt.Sprintf(", as of %s, %s ago", longDay(q.AsOf), amount(ap.Today.Sub(q.AsOf), "day"))
	}
	h.entry("queen", state)
	for _, text := range append([]string{q.Says}, q.Notes...) {
		if text != "" {
			h.entry("", oneLine(text))
		}
	}
	if ap.Colour != nil && ap.Colour.Says != "" {
		h.entry("mark", oneLine(ap.Colour.Says))
	}
}

// numbers prints what can be worked out of queen cells, brood, room and food,
// and nothing of what cannot.
func (h hiveSheet) numbers(ap *colony.Appraisal) {
	h.calendar(&ap.Queen, ap.Today)
	h.brood(ap)
	h.comb(ap)
	h.room(ap)
	h.food(ap)
}

// calendar prints what is still to come of the queen being raised or put in.
// Swarm and casts are left out where no old queen can lead one.
func (h hiveSheet) calendar(q *colony.QueenEvidence, today colony.Date) {
	if q.Calendar == nil || q.State == colony.WasLaying {
		return
	}
	n := 0
	for _, m := range q.Calendar.Milestones {
		swarming := m.Name == colony.MilestoneSwarm || m.Name == colony.MilestoneCasts
		if m.When.Usual.To.Compare(today) < 0 || swarming && !q.SwarmRisk {
			continue
		}
		text := m.Name + " " + m.When.Usual.String()
		if m.Note != "" {
			text += " (" + m.Note + ")"
		}
		h.entry(first(n, "calendar"), oneLine(text))
		n++
	}
}

// under prints lines under one topic, which is named once.
type under struct {
	hiveSheet
	name string
	said bool
}

func (t *under) say(format string, args ...any) {
	name := t.name
	if t.said {
		name = ""
	}
	t.entry(name, oneLine(fmt.Sprintf(format, args...)))
	t.said = true
}

// brood prints brood and bees: what can be worked out with some use, and
// of the rest that too little was said.
func (h hiveSheet) brood(ap *colony.Appraisal) {
	if ap.Today.Sub(ap.BroodOn) > broodDays {
		return
	}
	brood := under{hiveSheet: h, name: "brood"}
	var vague []string
	for _, b := range []struct {
		what  string
		cells colony.Estimate
	}{{"eggs", ap.Brood.Eggs}, {"open brood", ap.Brood.Open}, {"capped brood", ap.Brood.Capped}, {"brood, stage not said", ap.Brood.Mixed}, {"drone brood", ap.Brood.Drone}} {
		switch {
		case !b.cells.Known():
		case b.cells.Vague():
			vague = append(vague, b.what)
		default:
			brood.say("%s on %s: %s", b.what, longDay(ap.BroodOn), b.cells.Range)
		}
	}
	if len(vague) > 0 {
		brood.say("%s on %s: %s", strings.Join(vague, "; "), longDay(ap.BroodOn), tooLittle)
	}
	if telling(ap.Laying) {
		brood.say("laying, by the capped brood: %s", ap.Laying.Range)
	}
	bees := under{hiveSheet: h, name: "bees"}
	if telling(ap.Adults) {
		bees.say("%s on %s", ap.Adults.Range, longDay(ap.BroodOn))
	}
	if out := ap.BroodOn.AddDays(colony.EmergingDays); telling(ap.Emerging) && out.Compare(ap.Today) >= 0 {
		bees.say("to emerge by %s: %s", longDay(out), ap.Emerging.Range)
	}
	if f := ap.Forecast; f != nil {
		if end := f.Weeks[len(f.Weeks)-1]; !end.Adults.Vague() && end.On.Compare(ap.Today) >= 0 {
			bees.say("by %s, if all goes on as it is: %s", longDay(end.On), end.Adults)
		}
	}
}

// comb prints the area of the combs and how fast they were built.
func (h hiveSheet) comb(ap *colony.Appraisal) {
	comb := under{hiveSheet: h, name: "comb"}
	if telling(ap.Comb) && ap.Comb.High <= looseComb*ap.Comb.Low {
		comb.say("%s, both sides, on the bars spoken of on %s (a dm² is 10 by 10 cm)", ap.Comb.Range, longDay(ap.Last))
	}
	for _, b := range ap.Building {
		what := "built by the colony"
		if b.Bar > 0 {
			what = fmt.Sprintf("built on bar %d", b.Bar)
		}
		if !b.Rate.Vague() {
			comb.say("%s, %s: %s", what, b.Span, b.Rate.Range)
		}
	}
}

// broodDays is for how long brood and bees are printed after they were seen:
// by then every cell that was filled is empty again, and the bees are others.
const broodDays = 42

// tooLittle stands in for a number whose range would say nothing.
const tooLittle = "how much was not said"

// looseComb is the most by which the ends of a comb area may differ to be
// printed: combs of which only the number is known are better counted in bars.
const looseComb = 4

// telling reports whether an estimate is worth a line.
func telling(e colony.Estimate) bool { return e.Known() && !e.Vague() }

func (h hiveSheet) room(ap *colony.Appraisal) {
	room := under{hiveSheet: h, name: "room"}
	if !ap.Space.AsOf.IsZero() {
		room.say("%s", ap.Space)
	}
	for _, note := range ap.Space.Notes {
		room.say("%s", note)
	}
}

func (h hiveSheet) food(ap *colony.Appraisal) {
	food := under{hiveSheet: h, name: "food"}
	f := &ap.Food
	if f.Word != "" {
		food.say("stores %s on %s", f.Word, longDay(f.AsOf))
	}
	switch {
	case !f.Honey.Known():
		return
	case f.Honey.Vague():
		food.say("honey or nectar seen on %s: %s", longDay(f.AsOf), tooLittle)
		return
	}
	food.say("honey and nectar in the combs spoken of on %s: %s; %s", longDay(f.AsOf), f.Honey.Range, f.Honey.InPounds())
	if telling(f.Pollen) {
		food.say("bee bread: %s; %s", f.Pollen.Range, f.Pollen.InPounds())
	}
	if gap := ap.Gap; gap.Known() {
		food.say("%s (%s)", againstTarget(gap.Range), oneLine(ap.Target))
	}
	if telling(ap.Weeks) {
		food.say("lasts %s in winter without brood", ap.Weeks.Range)
	}
}

// againstTarget says what is wanting to the winter target, or to spare.
func againstTarget(gap colony.Range) string {
	spare := gap.Scale(-1)
	switch {
	case gap.High <= 0:
		return fmt.Sprintf("over the winter target by %s; %s", spare, spare.InPounds())
	case gap.Low >= 0:
		return fmt.Sprintf("short of the winter target by %s; %s", gap, gap.InPounds())
	}
	most := colony.Exactly(gap.High, gap.Unit)
	return fmt.Sprintf("short of the winter target by up to %s, %s, or not at all", most, most.InPounds())
}

// methods are the ways of counting mites, in words.
var methods = map[string]string{"drop": "fallen on a board", "wash": "in a wash", "sugar": "in a sugar roll", "brood": "in opened drone cells"}

func (h hiveSheet) mites(ap *colony.Appraisal) {
	if ap.Mites == nil {
		return
	}
	mites := under{hiveSheet: h, name: "mites"}
	mites.say("%s %s on %s", ap.Mites.Rate.Range, methods[ap.Mites.Method], longDay(ap.Mites.On))
	if ap.MiteSays == "" {
		mites.say("that is %s ago, too long to go by", amount(ap.Today.Sub(ap.Mites.On), "day"))
		return
	}
	mites.say("%s", ap.MiteSays)
	if ap.Growth != nil && ap.Growth.Says != "" {
		mites.say("%s", ap.Growth.Says)
	}
	if limit := ap.MiteLimit; telling(limit) && (limit.Low > 0 || limit.Bounded()) {
		mites.say("%s in %s from the count, if they go on doubling", strings.TrimPrefix(ap.MiteLimit.Why.What, "days until "), ap.MiteLimit.Range)
	}
}

// cautions prints each word of care once. A treatment that was given or planned
// brings its own, so that the kinds of means need not be named beside it.
func (h hiveSheet) cautions(ap *colony.Appraisal) {
	care := under{hiveSheet: h, name: "take care"}
	treated := false
	for _, c := range ap.Cautions {
		treated = treated || c.Kind == "treatment"
		care.say("%s, %s: %s", c.Why, longDay(c.On), c.Says)
	}
	if ap.MiteNote != "" && !treated {
		care.say("%s", ap.MiteNote)
	}
}

// longDay is "20 May 2025".
func longDay(d colony.Date) string { return d.Time().Format("2 Jan 2006") }

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
