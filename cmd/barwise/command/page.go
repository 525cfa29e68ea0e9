package command

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"html/template"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"barwise/cmd/barwise/page"
	"barwise/colony"
	"barwise/index"
	"barwise/tui"
)

type pageOptions struct {
	scope
	out            string
	private, sound bool
}

func (a *app) page() *cobra.Command {
	var o pageOptions
	cmd := &cobra.Command{
		Use:   "page --out DIR",
		Short: "A page to share: timelines, combs, trends, inspections",
		Long: `Page writes a web page of the hives into a folder: index.html, which needs no
network and nothing beside it, opens from the disk, can be searched, and prints.
For each hive it shows what is known today, or was on the day of --to, the
combs, a timeline, the trends that have values, and every inspection with its
words.

Notes taken in with take --private are left out, and what they say does not
count; recordings are left out as well. Look it through before you hand it on.`,
		Example: `  barwise page --out season
  barwise page --out for-the-inspector --hive orchard --from 2026-03-01`,
		Args: wants(0, 0, ""),
		RunE: func(*cobra.Command, []string) error { return a.runPage(o) },
	}
	o.register(a, cmd)
	f := cmd.Flags()
	f.StringVar(&o.out, "out", "", "the `DIR` to write, which must not hold a page yet")
	f.BoolVar(&o.private, "with-private", false, "private notes too")
	f.BoolVar(&o.sound, "with-recordings", false, "copies of the recordings too")
	return cmd
}

func (a *app) runPage(o pageOptions) error {
	if o.out == "" {
		return wrongUse("page: where to? --out DIR names the folder")
	}
	when, err := o.period()
	if err != nil {
		return err
	}
	return a.withRecords(func(s *index.Store) error {
		if err := knownHive(s, hiveNamed(o.hive)); err != nil {
			return err
		}
		p := pager{app: a, store: s, options: o, when: when, notes: map[string]colony.Note{}}
		made, err := p.make()
		if err != nil {
			return err
		}
		if len(made.Hives) == 0 {
			return undone("no inspection of a named hive to show")
		}
		if err := p.write(made); err != nil {
			return err
		}
		n := 0
		for _, h := range made.Hives {
			n += len(h.Inspections)
		}
		fmt.Fprintf(a.err, "%s, %s: open %s\n", amount(len(made.Hives), "hive"), amount(n, "inspection"), shown(filepath.Join(o.out, pageFile)))
		return nil
	})
}

const pageFile = "index.html"

// pager gathers what the page shows.
type pager struct {
	*app
	store   *index.Store
	options pageOptions
	when    period
	notes   map[string]colony.Note // by hash, as they are needed
	hidden  int                    // private inspections left out
	sounds  map[string]string      // files to copy, by their name beside the page
}

func (p *pager) note(hash string) (colony.Note, error) {
	n, ok := p.notes[hash]
	if !ok {
		var err error
		if n, err = p.store.Note(hash); err != nil {
			return n, err
		}
		p.notes[hash] = n
	}
	return n, nil
}

// make reads the store. What is private does not count anywhere, unless asked
// for.
func (p *pager) make() (page.Page, error) {
	today := cmp.Or(p.when.to, colony.DateOf(p.now()))
	records := map[string]colony.Record{}
	ap, err := loadSome(p.store, hiveNamed(p.options.hive), func(r *colony.Record) (bool, error) {
		n, err := p.note(r.NoteHash)
		if err != nil || n.Private && !p.options.private {
			p.hidden++
			return false, err
		}
		records[r.ID] = *r
		return true, nil
	})
	made := page.Page{Made: today, From: p.when.from, To: p.when.to}
	if err != nil {
		return made, err
	}
	p.sounds = map[string]string{}
	var span period
	for _, name := range ap.names() {
		for _, ins := range ap.upTo(name, today) {
			if d := colony.DateOf(ins.At); p.when.holds(d) {
				span.from, span.to = earlier(span.from, d), later(span.to, d)
			}
		}
	}
	for _, known := range ap.appraise(today) {
		h, err := p.hive(ap, &known, span, records)
		if err != nil {
			return made, err
		}
		if len(h.Inspections) > 0 {
			made.Hives = append(made.Hives, h)
		}
	}
	if p.hidden > 0 {
		made.Left = append(made.Left, "Private notes are left out.")
	}
	return made, nil
}

func (p *pager) hive(ap *apiary, known *colony.Appraisal, span period, records map[string]colony.Record) (page.Hive, error) {
	history := slices.DeleteFunc(ap.upTo(known.Hive, known.Today), func(ins colony.Inspection) bool { return !p.when.holds(colony.DateOf(ins.At)) })
	h := page.Hive{Name: "hive " + oneLine(known.Hive), Facts: facts(known), Timeline: page.NewTimeline(history, span.from, span.to)}
	var before *colony.Inspection
	for i := range history {
		ins := &history[i]
		r := records[ins.ID]
		note, err := p.note(r.NoteHash)
		if err != nil {
			return h, err
		}
		words, err := p.store.Words(r.ID)
		if err != nil {
			return h, err
		}
		shownAs := page.Inspection{At: ins.At, Confirmed: r.State == colony.Confirmed, Lines: sheetLines(ins), Note: quotation(words), Sound: p.soundOf(&note)}
		if len(ins.Bars) > 0 {
			shownAs.Map = pageMap(ins, before)
			h.Map, h.MapOn = shownAs.Map, ins.At
			before = ins
		}
		h.Inspections = append(h.Inspections, shownAs)
	}
	slices.Reverse(h.Inspections)
	var err error
	h.Trends, err = pageTrends(ap, known.Hive, p.when)
	return h, err
}

// quotation joins the stretches of a note that are about one hive.
func quotation(words []string) string {
	var parts []string
	for _, w := range words {
		if w = strings.TrimSpace(clean(w)); w != "" {
			parts = append(parts, w)
		}
	}
	return strings.Join(parts, " … ")
}

// pageMap draws the combs as the terminal does, in text.
func pageMap(ins, before *colony.Inspection) string {
	var out []string
	for line := range strings.SplitSeq(tui.RenderHive(ins, before, 100, 6), "\n") {
		out = append(out, strings.TrimRight(clean(line), " "))
	}
	return strings.Join(out, "\n")
}

// facts are the entries of the hive's sheet, without its picture and the last
// inspections, which the page shows by itself.
func facts(known *colony.Appraisal) []page.Fact {
	return entries(func(s sheet) { hiveSheet{s, true}.known(known) })
}

// sheetLines are those of the inspection's sheet.
func sheetLines(ins *colony.Inspection) []page.Fact {
	return entries(func(s sheet) { s.body(ins) })
}

// entries are what is printed on a sheet, as facts of the page.
func entries(print func(sheet)) (list []page.Fact) {
	print(sheet{style: stylesFor(io.Discard), taker: func(topic, text string) {
		list = append(list, page.Fact{Topic: topic, Text: text})
	}})
	return list
}

// pageMeasures are those that a mentor or an inspector asks for.
var pageMeasures = []string{"brood_bars", "strength", "temper", "stings", "mite_drop", "mite_share", "honey", "weight"}

// pageTrends draws each measure that has two values or more.
func pageTrends(ap *apiary, hive string, when period) ([]page.Trend, error) {
	var out []page.Trend
	for _, name := range pageMeasures {
		m, err := colony.MeasureNamed(name)
		if err != nil {
			return nil, err
		}
		samples := slices.DeleteFunc(m.Series(ap.hives[hive], ap.settings), func(s colony.Sample) bool { return !when.holds(s.On) })
		if len(samples) < 2 {
			continue
		}
		t, err := trendOf(hive, m, samples, "")
		if err != nil {
			return nil, err
		}
		var svg bytes.Buffer
		if err := chartAlone(t, m.What).writeSVG(&svg); err != nil {
			return nil, err
		}
		out = append(out, page.Trend{What: heads(m.What, m.Unit), Says: t.Says, SVG: inPage(svg.String())})
	}
	return out, nil
}

// inPage makes an image follow the page's colours.
func inPage(svg string) template.HTML {
	_, svg, _ = strings.Cut(svg, "<svg")
	svg = pageColours.Replace("<svg" + svg)
	return template.HTML(svgSize.ReplaceAllString(svg, ""))
}

// The colours that stand for those of the page's style.
var pageTheme = theme{paper: rgb(0x010101), ink: rgb(0x020202), faint: rgb(0x030303), hives: colours(0xff00ff)}

var (
	pageColours = strings.NewReplacer("#010101", "var(--paper)", "#020202", "var(--ink)", "#030303", "var(--faint)", "#FF00FF", "var(--mark)")
	svgSize     = regexp.MustCompile(`(?:width|height)="[\d.]+(?:pt|in)"\s*`)
)

// soundOf names the copy of the note's recording, where copies are asked for.
func (p *pager) soundOf(n *colony.Note) string {
	if !p.options.sound || n.Recording == nil {
		return ""
	}
	file := n.Recording.File
	if !n.Recording.Linked {
		file = filepath.Join(p.dataDir(), file)
	}
	name := n.Recording.Hash + filepath.Ext(file)
	p.sounds[name] = file
	return name
}

// write makes the folder, and the page in it.
func (p *pager) write(made page.Page) error {
	if err := os.MkdirAll(p.options.out, 0o700); err != nil {
		return fmt.Errorf("%s cannot be made: %w", shown(p.options.out), err)
	}
	for name, file := range p.sounds {
		if err := copyNew(filepath.Join(p.options.out, name), file); err != nil {
			return err
		}
	}
	return newFile(filepath.Join(p.options.out, pageFile), func(w io.Writer) error { return page.Write(w, made) })
}

func copyNew(to, from string) error {
	in, err := os.Open(from)
	if err != nil {
		return fmt.Errorf("the recording %s cannot be read: %w", shown(from), err)
	}
	err = newFile(to, func(w io.Writer) error {
		_, err := io.Copy(w, in)
		return err
	})
	return errors.Join(err, in.Close())
}
