package command

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"barwise/colony"
	"barwise/index"
	"barwise/parse"
)

// A question may ask how long it was from one thing to the next: "how many days
// from the swarm to the first eggs".

var spanWords = words(`(?:how (?:many days|long)|number of days|days|time)(?: (?:was|is|did) it(?: take)?)?(?: there)? (?:from|between) (.+?) (?:to|and|until|till) (.+)`)

// cutSpan divides a question for the days from one thing to another.
func cutSpan(question string) (from, to string, ok bool) {
	m := spanWords.FindStringSubmatch(question)
	if m == nil {
		return "", "", false
	}
	from, _ = cutPick(pointing.ReplaceAllString(m[1], ""))
	to, _ = cutPick(pointing.ReplaceAllString(m[2], ""))
	return from, to, true
}

// understandEnd reads what days are counted from or up to.
func understandEnd(thing string, parser *parse.Parser, today colony.Date) asked {
	return understand(thing, parser, nil, today)
}

// asks reports whether there is anything to look for.
func (q *asked) asks() bool { return len(q.Where) > 0 || q.Words != "" }

var pointing = regexp.MustCompile(`(?i)^(?:(?:the|a|an|next|following|new|very) )+`)

// pair is a beginning and the end that followed it in the same hive.
type pair struct{ from, to index.Reading }

// spans answers for each hive how many days passed from what began to what
// followed it first. Of several beginnings before one end the first counts.
func (q *asked) spans(s *index.Store) (reply, error) {
	begin, end := q.Query, q.until.Query
	begin.Sort, begin.Limit, begin.Pick = index.Oldest, 0, index.All
	end.Sort, end.Limit, end.Pick, end.Hive, end.From = index.Oldest, 0, index.All, q.Hive, q.From
	begins, errBegin := s.Readings(begin, "")
	ends, errEnd := s.Readings(end, "")
	if err := errors.Join(errBegin, errEnd); err != nil {
		return reply{}, err
	}
	pairs := pairUp(begins, ends)
	if len(pairs) == 0 {
		return reply{}, nil
	}
	slices.Reverse(pairs)
	var parts []string
	r := reply{all: 2 * len(pairs)}
	for _, p := range pairs {
		if len(parts) < 5 {
			parts = append(parts, fmt.Sprintf("%s, %s to %s, %s", amount(p.to.Day.Sub(p.from.Day), "day"), longDate(p.from.Day), longDate(p.to.Day), hiveOrNone(p.from.Hive)))
		}
		if q.shown > 0 && len(r.hits.Hits) >= q.shown {
			continue
		}
		for _, side := range []struct {
			asked index.Query
			at    index.Reading
		}{{end, p.to}, {begin, p.from}} {
			side.asked.Hive, side.asked.From, side.asked.To = side.at.Hive, side.at.Day, side.at.Day
			hits, err := s.Find(side.asked)
			if err != nil {
				return reply{}, err
			}
			r.hits.Hits = append(r.hits.Hits, hits.Hits...)
		}
	}
	r.line = strings.Join(parts, "; ")
	if more := len(pairs) - len(parts); more > 0 {
		r.line += fmt.Sprintf("; and %d before", more)
	}
	return r, nil
}

// pairUp finds for each beginning, the oldest first, the first end after it.
func pairUp(begins, ends []index.Reading) (list []pair) {
	of := map[string][]index.Reading{}
	for _, to := range ends {
		of[to.Hive] = append(of[to.Hive], to)
	}
	ended := map[string]colony.Date{} // by hive, where its last pair ended
	for _, from := range begins {
		if from.Day.Compare(ended[from.Hive]) < 0 {
			continue
		}
		i := slices.IndexFunc(of[from.Hive], func(to index.Reading) bool { return to.Day.Compare(from.Day) > 0 })
		if i < 0 {
			continue
		}
		to := of[from.Hive][i]
		ended[from.Hive] = to.Day
		list = append(list, pair{from, to})
	}
	return list
}
