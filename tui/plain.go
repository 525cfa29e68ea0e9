package tui

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"barwise/colony"
)

// plain is the review as questions and answers, line by line: for a screen
// reader, a teletype or a script. It takes the same steps as the screen.
type plain struct {
	desk  *desk
	ctx   context.Context
	lines <-chan typed
	out   io.Writer
	err   error // of the input or output; the first one ends the review
	pace  int   // at which of the tempos was played last
}

// typed is a line of the input, or why there is none.
type typed struct {
	text string
	err  error
}

// linesOf reads the input beside the review, so that the review can be stopped
// while it waits for an answer.
func linesOf(ctx context.Context, in io.Reader) <-chan typed {
	lines := make(chan typed)
	hand := func(t typed) bool {
		select {
		case lines <- t:
			return true
		case <-ctx.Done():
			return false
		}
	}
	go func() {
		defer close(lines)
		scanner := bufio.NewScanner(in)
		scanner.Buffer(nil, longestEdit)
		for scanner.Scan() {
			if !hand(typed{text: scanner.Text()}) {
				return
			}
		}
		if err := scanner.Err(); err != nil {
			hand(typed{err: fmt.Errorf("the answer cannot be read: %w", err)})
		}
	}()
	return lines
}

const plainHelp = `At a question: enter: it is right. other: take the other value. remove: take it away.
A value, or the start of one, corrects it. bar 5 moves it to bar 5.
At the end: enter confirms. Anything else is read as words to add, such as: bar 4 eggs both sides.
Anywhere: undo, redo, note (the note's words), all (what was said), set aside, skip (next inspection), leave, help,
past (the hive's inspections), find WORDS, alias HEARD = SAID; of a recording: play the words asked about, play slower.
`

func runPlain(ctx context.Context, k Keeper, r Reader, o Options) error {
	in := o.In
	if in == nil {
		in = os.Stdin
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	p := &plain{desk: &desk{keeper: k, reader: r, opts: o}, ctx: ctx, lines: linesOf(ctx, in), out: outOf(o)}
	if o.New {
		if err := p.newNote(); err != nil {
			return err
		}
	}
	if o.Player != nil {
		defer o.Player.Stop()
	}
	waiting, err := k.Waiting()
	if err != nil {
		return err
	}
	p.say("%s. help lists what can be answered; every answer is saved at once.", plural(len(waiting), "inspection waits", "inspections wait"))
	for i := range waiting {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		more, err := p.review(waiting[i].ID, i+1, len(waiting))
		if err != nil || !more {
			return err
		}
	}
	p.say("Nothing more waits.")
	return p.err
}

func (p *plain) say(format string, args ...any) {
	if _, err := fmt.Fprintf(p.out, format+"\n", args...); err != nil && p.err == nil {
		p.err = err
	}
}

// ask prints a prompt and reads the answer; false at the end of the input, and
// where the review is stopped.
func (p *plain) ask(prompt string) (string, bool) {
	if _, err := fmt.Fprint(p.out, prompt+" "); err != nil && p.err == nil {
		p.err = err
	}
	if p.err != nil {
		return "", false
	}
	select {
	case <-p.ctx.Done():
		p.say("")
		p.err = p.ctx.Err()
		return "", false
	case line, ok := <-p.lines:
		if p.err = line.err; p.err != nil || !ok {
			return "", false
		}
		return strings.TrimSpace(clean(line.text)), true
	}
}

// newNote takes in a note that is typed line by line, up to an empty line.
func (p *plain) newNote() error {
	p.say("Type the note; an empty line ends it.")
	var lines []string
	for {
		line, ok := p.ask(">")
		if !ok || line == "" {
			break
		}
		lines = append(lines, line)
	}
	if len(lines) == 0 {
		return p.err
	}
	records, err := p.desk.take(strings.Join(lines, "\n") + "\n")
	if err != nil {
		return err
	}
	p.say("Kept: %s.", plural(len(records), "inspection", "inspections"))
	return p.err
}

// review goes through one inspection. It reports whether to go on to another.
func (p *plain) review(id string, n, of int) (more bool, err error) {
	o, err := p.desk.open(id)
	if err != nil {
		return false, err
	}
	p.say("\n%s, %s. Inspection %d of %d.", hiveName(o.ins.Hive), showTime(o.ins.At), n, of)
	p.sayAll(o)
	if len(o.asked) > 0 {
		p.say("%d to check.", len(o.asked))
	}
	for o.rec.State == colony.Waiting {
		var answer string
		var ok bool
		if len(o.asked) > 0 {
			answer, ok = p.question(o)
		} else {
			answer, ok = p.ask("Nothing left to check. Enter confirms.")
		}
		if !ok || answer == "leave" {
			return false, p.err
		}
		if answer == "skip" {
			return true, nil
		}
		if o, err = p.answer(o, answer); err != nil {
			return false, err
		}
	}
	return true, p.err
}

// question asks about the first leaf that is left to check.
func (p *plain) question(o *opened) (string, bool) {
	q := o.asked[0]
	p.say("Question: %s: %s. Why: %s.", fullName(q.path), showValue(q.path, orNothing(q.value)), clean(strings.Join(q.why, "; ")))
	if words := o.quote(o.ins.Evidence.Of(q.path)); words != "" {
		p.say("Words: “%s”.", words)
	}
	prompt := "Right?"
	if q.alt != "" {
		prompt = "Right, or other: " + showValue(q.path, q.alt) + "?"
	}
	return p.ask(prompt)
}

// answer takes one answer and returns the record as it stands after it.
func (p *plain) answer(o *opened, answer string) (*opened, error) {
	switch answer {
	case "help", "?":
		p.say("%s", strings.TrimSpace(plainHelp))
	case "note":
		p.sayNote(o)
	case "all":
		p.sayAll(o)
	case "undo", "redo":
		return p.walk(o, answer == "undo")
	case "set aside":
		return o, p.keep(o, stand(o.rec, colony.SetAside, p.desk.now()), "set aside")
	default:
		if next, done, err := p.aside(o, answer); done {
			return next, err
		}
		if len(o.asked) > 0 {
			return o, p.answerQuestion(o, answer)
		}
		return o, p.answerEnd(o, answer)
	}
	return o, nil
}

func (p *plain) walk(o *opened, back bool) (*opened, error) {
	next, what, err := p.desk.walk(o, back)
	if err != nil {
		return o, err
	}
	if what == "" {
		p.say("There is nothing to go to.")
	} else {
		p.say("%s.", walked(back)+what)
	}
	return next, nil
}

func (p *plain) answerQuestion(o *opened, answer string) error {
	q, now := o.asked[0], p.desk.now()
	switch answer {
	case "":
		rec, what := o.accepted(q.path, now)
		return p.keep(o, rec, what)
	case "remove":
		rec, what := o.removed(q.path, now)
		return p.keep(o, rec, what)
	case "other":
		if q.alt == "" {
			p.say("No other value is offered: type one.")
			return nil
		}
		rec, what, err := o.otherTaken(&q, now)
		if err != nil {
			p.say("%v.", err)
			return nil
		}
		return p.keep(o, rec, what)
	}
	return p.choose(o, choicesFor(o, q.path, answer, now), "that cannot stand here")
}

func (p *plain) answerEnd(o *opened, answer string) error {
	if answer == "" {
		if err := p.keep(o, stand(o.rec, colony.Confirmed, p.desk.now()), "confirmed"); err != nil {
			return err
		}
		return p.meet(o.ins.Hive)
	}
	return p.choose(o, p.desk.addChoices(o, answer, nil), "no leaf can be made of that")
}

// meet makes the hive of an inspection that was confirmed known.
func (p *plain) meet(hive string) error {
	if p.desk.opts.Teacher == nil {
		return nil
	}
	news, again, err := p.desk.meet([]string{hive}, nil)
	if again > 0 {
		p.say("%s.", knownNow(news, again))
	}
	return err
}

// choose takes the only meaning of what was typed, or asks which is meant.
func (p *plain) choose(o *opened, choices []choice, none string) error {
	if len(choices) == 0 {
		p.say("%s; help tells what can be answered.", none)
		return nil
	}
	c := choices[0]
	if len(choices) > 1 {
		for i, c := range choices {
			p.say("%d: %s %s", i+1, c.show, c.hint)
		}
		answer, ok := p.ask("Which number? Enter for none.")
		n, err := strconv.Atoi(answer)
		if !ok || err != nil || n < 1 || n > len(choices) {
			return nil
		}
		c = choices[n-1]
	}
	if c.ask != "" {
		answer, ok := p.ask(c.show + ": which value?")
		if !ok || answer == "" {
			return nil
		}
		return p.choose(o, choicesFor(o, c.ask, answer, p.desk.now()), "that cannot stand there")
	}
	rec, err := c.do(p.desk.now())
	if err != nil {
		p.say("%v.", err)
		return nil
	}
	return p.keep(o, rec, describe(&o.rec, &rec))
}

// keep saves a step and says what it was.
func (p *plain) keep(o *opened, rec colony.Record, what string) error {
	if err := p.desk.keeper.Save(rec); err != nil {
		return err
	}
	o.become(rec)
	p.say("Saved: %s.", what)
	return nil
}

// sayAll reads the record out, a line a thing.
func (p *plain) sayAll(o *opened) {
	for _, r := range o.rows {
		if r.kind == rowRemark {
			p.say("  words that no rule used: %s", clean(r.text))
		}
		if r.kind != rowItem {
			continue
		}
		var parts []string
		for _, c := range r.chips {
			part := strings.TrimSpace(c.label + " " + showValue(c.path, orNothing(c.value)))
			if c.open {
				part += " (to check)"
			}
			parts = append(parts, part)
		}
		p.say("  %s: %s", strings.TrimSpace(r.group+" "+r.label), strings.Join(parts, ", "))
	}
}

func (p *plain) sayNote(o *opened) {
	page := layOut(o.note.Text, 76)
	for _, line := range page.lines {
		p.say("  %s", paintLine(line, func(colony.Span) brush { return brush{} }))
	}
}
