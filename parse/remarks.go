package parse

import "strings"

// remark keeps every stretch that no rule used, in the speaker's words. Words
// that only hold others together make no remark by themselves.
func (r *reader) remark(items []item) {
	from, last := -1, -1
	flush := func() {
		if from >= 0 {
			r.keep(items[from].start, items[last].end, items[from:last+1])
		}
		from, last = -1, -1
	}
	for i := range items {
		it := &items[i]
		if i > 0 && it.pause >= stop {
			flush()
		}
		switch {
		case it.used:
			flush()
		case from < 0 && glue(it):
		default:
			if from < 0 {
				from = i
			}
			last = i
		}
	}
	flush()
}

// telling are the kinds of words that mean something alone.
var telling = setOf(kWord, kContent, kCell, kSign, kQueen, kDo, kSubstance, kPlant, kName, kBars, kTemper, kComb, kMite, kMeasure, kIf, kAsk, kSay, kUnsure, kTheirs, kPast, kDate, kStrength)

// glue is a word that means nothing alone.
func glue(it *item) bool { return !it.anyOf(telling) }

func (r *reader) keep(start, end int32, items []item) {
	some := false
	for i := range items {
		some = some || !glue(&items[i])
	}
	for i := range items { // a repair may have moved later words forward
		start, end = min(start, items[i].start), max(end, items[i].end)
	}
	text := strings.TrimSpace(r.text[start:end])
	if some && text != "" {
		r.cur.remarks = append(r.cur.remarks, text)
	}
}
