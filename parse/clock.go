package parse

import (
	"strconv"
	"strings"
	"time"
)

// openingClock takes a time of day in the opening words as that of the
// inspection: "opened hive two at half past two", "14:30", "quarter to ten".
// Hours from one to six without am are afternoon: hives are opened by day.
func (r *reader) openingClock(c *clause) {
	if r.sentenceNo > 2 || c.has(kContent) {
		return
	}
	for i := range c.items {
		if it := &c.items[i]; !it.any(kNum, kWord) || it.used {
			continue
		}
		minutes, n := r.clockAt(c.items, i)
		if n == 0 {
			continue
		}
		for k := i; k < i+n; k++ {
			c.items[k].used = true
		}
		for _, b := range r.all {
			y, m, d := b.at.Date()
			b.at = time.Date(y, m, d, minutes/60, minutes%60, 0, 0, b.at.Location())
			b.atFrom = "spoken day"
		}
		return
	}
}

// clockAt reads a time of day at a number: its minutes since midnight and how
// many items say it, 0 where none does.
func (r *reader) clockAt(items []item, i int) (int, int) {
	if i+2 < len(items) && items[i+2].is(kNum) && items[i+1].isWord2("past", "to") && items[i+2].pause == none {
		return r.pastHour(items, i)
	}
	hour, minute, clear := clockFigure(r.text[items[i].start:items[i].end])
	if hour < 0 {
		return 0, 0
	}
	n, at := 1, i > 0 && items[i-1].isWord3("at", "around", "about")
	if i+1 < len(items) && items[i+1].pause == none {
		switch items[i+1].text {
		case "am":
			return hour%12*60 + minute, 2
		case "pm":
			return (hour%12+12)*60 + minute, 2
		case "o'clock", "oclock", "o clock":
			n, clear, at = 2, true, true
		}
	}
	if !clear || !at && items[i].pause < comma && i > 0 {
		return 0, 0
	}
	return byDay(hour)*60 + minute, n
}

// pastHour reads "half past two" and "quarter to ten".
func (r *reader) pastHour(items []item, i int) (int, int) {
	part, hour := items[i].n.lo, items[i+2].n.lo
	switch {
	case part > 0 && part < 1:
		part *= 60
	case part != 5 && part != 10 && part != 20 && part != 25:
		return 0, 0
	}
	if hour < 1 || hour > 12 || !items[i+2].n.whole() {
		return 0, 0
	}
	minutes := byDay(int(hour)) * 60
	if items[i+1].text == "to" {
		return minutes - int(part), 3
	}
	return minutes + int(part), 3
}

// clockFigure reads 14:30, 2.30 or a bare hour; clear says that it has
// minutes. The hour is -1 where the text is no time.
func clockFigure(text string) (hour, minute int, clear bool) {
	if text == "" || !isDigit(text[0]) {
		return -1, 0, false // as nearly every word
	}
	h, m, two := strings.Cut(strings.Replace(text, ":", ".", 1), ".")
	hour, err := strconv.Atoi(h)
	if err != nil || hour < 0 || hour > 23 {
		return -1, 0, false
	}
	if two {
		if minute, err = strconv.Atoi(m); err != nil || len(m) != 2 || minute > 59 {
			return -1, 0, false
		}
	}
	return hour, minute, two
}

func byDay(hour int) int {
	if hour >= 1 && hour <= 6 {
		return hour + 12
	}
	return hour
}
