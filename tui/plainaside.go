package tui

import (
	"strings"

	"barwise/colony"
)

// aside does what is asked for between two answers: to look up, to listen, to
// teach. It reports whether the answer was of that kind.
func (p *plain) aside(o *opened, answer string) (next *opened, done bool, err error) {
	verb, rest, _ := strings.Cut(answer, " ")
	rest = strings.TrimSpace(rest)
	opts := p.desk.opts
	switch {
	case answer == "past" && opts.Past != nil:
		return o, true, p.sayPast(p.desk.lookUp(o.ins.Hive))
	case verb == "find" && rest != "" && opts.Find != nil:
		return o, true, p.sayPast(p.desk.find(rest))
	case (answer == "play" || answer == "play slower") && opts.Player != nil && o.note.Recording != nil:
		p.play(o, rest == "slower")
		return o, true, nil
	case verb == "alias" && rest != "" && opts.Teacher != nil:
		next, err = p.teach(o, rest)
		return next, true, err
	}
	return o, false, nil
}

// sayPast reads out what was looked up. What cannot be found is no reason to
// end the review.
func (p *plain) sayPast(found past, err error) error {
	if err != nil {
		p.say("%s.", clean(err.Error()))
		return nil
	}
	p.say("%s: %s.", clean(found.title), found.count())
	if found.answer != "" {
		p.say("%s.", clean(found.answer))
	}
	for _, item := range found.items {
		p.say("  %s, %s: %s", showDay(item.on), hiveName(item.hive), strings.Join(strings.Fields(item.text), " "))
	}
	return nil
}

// play plays the words that are asked about.
func (p *plain) play(o *opened, slower bool) {
	var words []colony.Span
	if len(o.asked) > 0 {
		words = o.ins.Evidence.Of(o.asked[0].path)
	}
	from, to, ok := o.seconds(words)
	if !ok {
		p.say("These words have no place in the recording.")
		return
	}
	p.pace = min((p.pace+1)*btoi(slower), len(tempos)-1)
	if err := p.desk.opts.Player.Play(*o.note.Recording, from, to, tempos[p.pace]); err != nil {
		p.say("It could not be played: %s.", clean(err.Error()))
	}
}

// teach remembers HEARD = SAID, once what else it would change was read out.
func (p *plain) teach(o *opened, alias string) (*opened, error) {
	heard, said, _ := strings.Cut(alias, "=")
	heard, said = strings.TrimSpace(heard), strings.TrimSpace(said)
	if heard == "" || said == "" {
		p.say("Write alias, what was heard, =, what was said: alias bear tree = bar three")
		return o, nil
	}
	effects, err := p.desk.opts.Teacher.Preview(heard, said)
	if err != nil {
		p.say("%s.", clean(err.Error()))
		return o, nil
	}
	for _, e := range effects {
		p.say("  %s", e.where()+": "+e.what())
	}
	answer, ok := p.ask("“" + heard + "” is “" + said + "” from now on: " +
		plural(len(effects), "waiting value changes", "waiting values change") + ". Remember it, y or n?")
	if !ok || answer == "" || !startsLike("yes", answer) {
		p.say("Not remembered.")
		return o, nil
	}
	if err := p.desk.teach(heard, said, nil); err != nil {
		return o, err
	}
	p.say("Remembered.")
	return p.desk.open(o.rec.ID)
}
