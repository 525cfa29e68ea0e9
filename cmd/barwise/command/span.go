package command

import (
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
	q := understand(thing, parser, nil, today)
	if t := topicOf(thing, true); t != nil && !q.asks() {
		q.must(t.name, t.said())
	}
	return q
}

// asks reports whether there is anything to look for.
func (q *asked) asks() bool { return len(q.Where) > 0 || q.Words != "" }

var pointing = regexp.MustCompile(`(?i)^(?:(?:the|a|an|next|following|new|very) )+`)

// pair is a beginning and the end that followed it in the same hive.
type pair struct{ from, to index.Hit }

// spans answers for each hive how many days passed from what began to what
// followed it first. Of several beginnings before one end the first counts.
func (q *asked) spans(s *index.Store) (reply, error) {
	begins, err := s.Find(index.Query{Words: q.Words, Where: q.Where, Without: q.Without, Hive: q.Hive, From: q.From, To: q.To, Sort: index.Oldest})
	if err != nil {
		return reply{}, err
	}
	to := q.until
	ends, err := s.Find(index.Query{Words: to.Words, Where: to.Where, Without: to.Without, Hive: q.Hive, From: q.From, Sort: index.Oldest})
	if err != nil {
		return reply{}, err
	}
	byHive := map[string][]index.Hit{}
	for _, h := range ends.Hits {
		byHive[h.Hive] = append(byHive[h.Hive], h)
	}
	pairs := pairUp(begins.Hits, byHive)
	if len(pairs) == 0 {
		return reply{}, nil
	}
	slices.Reverse(pairs)
	var parts []string
	var hits index.Hits
	for _, p := range pairs {
		parts = append(parts, fmt.Sprintf("%s, %s to %s, %s", amount(p.to.Day.Sub(p.from.Day), "day"), longDate(p.from.Day), longDate(p.to.Day), hiveOrNone(p.from.Hive)))
		hits.Hits = append(hits.Hits, p.to, p.from)
	}
	if more := len(parts) - 5; more > 0 {
		parts = append(parts[:5], fmt.Sprintf("and %d before", more))
	}
	return reply{line: strings.Join(parts, "; "), hits: hits, all: len(hits.Hits)}, nil
}

// pairUp finds for each beginning, the oldest first, the first end after it.
func pairUp(begins []index.Hit, ends map[string][]index.Hit) (list []pair) {
	ended := map[string]colony.Date{} // by hive, where the last pair ended
	for _, from := range begins {
		if !ended[from.Hive].IsZero() && from.Day.Compare(ended[from.Hive]) < 0 {
			continue
		}
		of := ends[from.Hive]
		i := slices.IndexFunc(of, func(h index.Hit) bool { return h.Day.Compare(from.Day) > 0 })
		if i < 0 {
			continue
		}
		ended[from.Hive] = of[i].Day
		list = append(list, pair{from, of[i]})
	}
	return list
}
