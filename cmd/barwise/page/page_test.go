package page

import (
	"strings"
	"testing"
	"time"

	"barwise/colony"
)

func visit(t *testing.T, day string, leaves ...string) colony.Inspection {
	t.Helper()
	at, err := time.Parse(time.DateOnly, day)
	if err != nil {
		t.Fatal(err)
	}
	ins := colony.Inspection{Hive: "3", At: at}
	for _, leaf := range leaves {
		path, value, _ := strings.Cut(leaf, "=")
		if err := colony.Set(&ins, path, value); err != nil {
			t.Fatal(err)
		}
	}
	return ins
}

func TestTimelineTellsSilenceFromDenial(t *testing.T) {
	history := []colony.Inspection{
		visit(t, "2026-05-01", "queen.seen=yes", "bars.4.eggs=yes", "bars.5.eggs=no", "queen_cells.cup=yes"),
		visit(t, "2026-06-01", "queen.seen=no", "contents.eggs=no"),
		visit(t, "2026-07-01", "actions.feed=yes", "bars.7.queen_cells.capped=yes"),
	}
	line := NewTimeline(history, colony.DateOf(history[0].At), colony.DateOf(history[2].At))
	var got []string
	for _, row := range line.Rows {
		text := row.Name + ":"
		for _, m := range row.Marks {
			text += map[bool]string{false: " ●", true: " ○"}[m.Hollow]
		}
		got = append(got, text)
	}
	want := "inspection: ● ● ●, queen seen: ● ○, eggs: ● ○, queen cells: ●, fed: ●"
	if text := strings.Join(got, ", "); text != want {
		t.Errorf("got  %s\nwant %s", text, want)
	}
	first, last := line.Rows[0].Marks[0], line.Rows[0].Marks[2]
	if first.X != timelineLeft || last.X != timelineLeft+timelineWidth {
		t.Errorf("from %g to %g", first.X, last.X)
	}
	if len(line.Months) != 2 || line.Months[0].Name != "Jun 2026" || line.Months[1].Name != "Jul" {
		t.Errorf("months %v", line.Months)
	}
}

func TestOneDayHasATimeline(t *testing.T) {
	history := []colony.Inspection{visit(t, "2026-05-01")}
	day := colony.DateOf(history[0].At)
	if line := NewTimeline(history, day, day); len(line.Rows) != 1 || line.Rows[0].Marks[0].X != timelineLeft {
		t.Errorf("%+v", line)
	}
}

// TestPageEscapes: no text of a note leaves its place.
func TestPageEscapes(t *testing.T) {
	bad := `</blockquote></pre><script>alert("x")</script><img src=x onerror=alert(1)>"'` + "`"
	p := Page{Hives: []Hive{{Name: bad, Map: bad, Facts: []Fact{{bad, bad}}, Trends: []Trend{{What: bad, Says: bad}},
		Timeline: Timeline{Rows: []Row{{Name: bad, Marks: []Mark{{Tip: bad}}}}}, Inspections: []Inspection{{Lines: []Fact{{bad, bad}}, Map: bad, Note: bad, Sound: "javascript:alert(1)"}}}},
		Left: []string{bad}}
	var out strings.Builder
	if err := Write(&out, p); err != nil {
		t.Fatal(err)
	}
	html := out.String()
	for _, no := range []string{`<script>alert`, `<img`, `"javascript:`, bad} {
		if strings.Contains(html, no) {
			t.Errorf("the page holds %q", no)
		}
	}
	if strings.Count(html, "<script>") != 1 || strings.Count(html, "</script>") != 1 {
		t.Error("the page does not hold exactly one script")
	}
}

// TestNothingIsLoaded: the page names no other place, and its own parts do not
// end their element.
func TestNothingIsLoaded(t *testing.T) {
	var out strings.Builder
	if err := Write(&out, Page{}); err != nil {
		t.Fatal(err)
	}
	for _, no := range []string{"http:", "https:", "//cdn", "@import", "url("} {
		if strings.Contains(out.String(), no) {
			t.Errorf("the page holds %q", no)
		}
	}
	if !strings.Contains(out.String(), "default-src &#39;none&#39;") {
		t.Error("the page has no policy")
	}
	if strings.Contains(pageJS, "</") || strings.Contains(pageCSS, "</") || strings.Contains(pageJS, "innerHTML") {
		t.Error("the script or style could end its element, or make markup of text")
	}
}
