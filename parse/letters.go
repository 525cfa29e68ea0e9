package parse

import "strings"

// letterNames are the letters by which the note names hives, "hive M", after which a
// capital alone is the hive; never "I".
func (r *reader) letterNames(toks []token) (names []string) {
	if !r.onFront(r.hiveID, r.colonyID) {
		return nil
	}
	for i := 1; i < len(toks); i++ {
		t := &toks[i]
		if t.end-t.start != 1 || !t.has(capital) || t.has(glued) || t.pause > none || toks[i-1].id != r.hiveID && toks[i-1].id != r.colonyID {
			continue
		}
		if name := strings.ToLower(r.text[t.start:t.end]); name != "i" && (name != "a" || i+1 == len(toks) || toks[i+1].pause > none || toks[i+1].lists.has(being)) {
			names = append(names, name)
		}
	}
	return names
}

// letterAlone reports whether a capital at item i, by which a hive is named elsewhere, stands
// for the hive: not in "hive M" itself, nor where "A" is a word.
func (r *reader) letterAlone(items []item, i int) bool {
	it := &items[i]
	if i > 0 && it.pause == none && items[i-1].any(kHive, kBar) {
		return false
	}
	if i+1 < len(items) && items[i+1].is(kNum) && items[i+1].start == it.end {
		return false // "B4" is a bar
	}
	return it.has(capital) && (it.text != "a" || it.colon || i+1 < len(items) && items[i+1].pause == none && items[i+1].any(kBe, kHave))
}
