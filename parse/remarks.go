package parse

import "strings"

// remark keeps every stretch that no rule used, in the speaker's words. Words
// that only hold others together make no remark by themselves.
func (r *reader) remark(items []item) {
	for from := 0; from < len(items); {
		if items[from].used || !items[from].anyOf(telling) {
			from++
			continue
		}
		end := from + 1
		for end < len(items) && !items[end].used && items[end].pause < stop {
			end++
		}
		r.keep(items[from:end])
		from = end
	}
}

// telling are the kinds of words that mean something alone.
var telling = setOf(kWord, kContent, kCell, kSign, kQueen, kDo, kSubstance, kPlant, kName, kBars, kTemper, kComb, kMite, kMeasure, kIf, kAsk, kSay, kUnsure, kTheirs, kPast, kDate, kStrength, kStage)

func (r *reader) keep(items []item) {
	start, end := items[0].start, items[len(items)-1].end
	for i := range items { // a repair may have moved later words forward
		start, end = min(start, items[i].start), max(end, items[i].end)
	}
	text := strings.TrimSpace(r.inNote(int(start), int(end)))
	if text != "" {
		r.cur.remarks = append(r.cur.remarks, text)
	}
}
