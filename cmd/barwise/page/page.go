// Package page writes the history of an apiary as one web page that needs
// nothing beside itself: no network, no other file, and a browser's scripts
// only for searching.
//
// Whatever comes from notes is untrusted. It reaches the page as text through
// html/template, and the page's own policy lets a browser run the one script
// that is part of it, and load nothing.
package page

import (
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"io"
	"time"

	"barwise/colony"
)

// Page is all that is shown.
type Page struct {
	Made     colony.Date // the day that everything is as of
	From, To colony.Date // the stretch of inspections; zero for no bound
	Hives    []Hive
	Left     []string // what was left out, in words
}

// Hive is one colony.
type Hive struct {
	Name        string
	Facts       []Fact    // as of the day the page was made
	Map         string    // the combs as last found, drawn in text
	MapOn       time.Time // zero where no comb was ever spoken of
	Timeline    Timeline
	Trends      []Trend
	Inspections []Inspection // newest first
}

// Fact is a line of what is known of a hive.
type Fact struct{ Topic, Text string }

// Trend is a measure over time.
type Trend struct {
	What, Says string
	SVG        template.HTML // made by a chart writer, which has escaped its texts
}

// Inspection is one visit with the words behind it.
type Inspection struct {
	At        time.Time
	Confirmed bool
	Lines     []Fact
	Map       string
	Note      string // word for word; "" where it is not to be shown
	Sound     string // file of the recording, beside the page; "" for none
}

var (
	//go:embed page.html
	pageHTML string
	//go:embed page.css
	pageCSS string
	//go:embed page.js
	pageJS string
)

// frame is what the template is given.
type frame struct {
	Page
	CSS    template.CSS
	JS     template.JS
	Policy string
}

var layout = template.Must(template.New("page").Funcs(template.FuncMap{
	"day":  func(t time.Time) string { return t.Format("Mon 2 January 2006") },
	"hour": func(t time.Time) string { return t.Format("15:04") },
	"date": func(d colony.Date) string { return d.Time().Format("2 January 2006") },
	"id":   func(i int) string { return fmt.Sprintf("hive-%d", i+1) },
}).Parse(pageHTML))

// Write writes the page as HTML.
func Write(out io.Writer, p Page) error {
	sum := sha256.Sum256([]byte(pageJS))
	policy := "default-src 'none'; style-src 'unsafe-inline'; media-src 'self' file:; script-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	// Both texts are ours, and hold no end of their element.
	return layout.Execute(out, frame{p, template.CSS(pageCSS), template.JS(pageJS), policy})
}
