package command

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"math"
	"regexp"
	"strings"
	"testing"

	"barwise/colony"
)

func labels(ticks []tick) string {
	var out []string
	for _, t := range ticks {
		out = append(out, t.label)
	}
	return strings.Join(out, " ")
}

func TestValueTicksAreRoundAndSpanTheValues(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		want      string
	}{
		{0, 18, "0 5 10 15 20"}, {1, 4, "1 2 3 4"}, {0, 0.7, "0 0.2 0.4 0.6 0.8"}, {-6, 27, "-10 0 10 20 30"},
		{0, 1, "0 0.5 1"}, {0, 3e6, "0 1e+06 2e+06 3e+06"}, {5, 5, "5 5.5 6"},
	} {
		if got := labels(valueTicks(c.low, c.high)); got != c.want {
			t.Errorf("%g to %g: %s, want %s", c.low, c.high, got, c.want)
		}
	}
}

func TestTimeTicksNameTheYearOnce(t *testing.T) {
	day := func(text string) colony.Date {
		d, err := colony.ParseDate(text)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	for _, c := range []struct{ first, last, want string }{
		{"2026-05-02", "2026-06-06", "4 May 2026 11 May 18 May 25 May 1 Jun"},
		{"2026-05-02", "2026-05-02", "2 May 2026"},
		{"2025-11-20", "2026-05-10", "Dec 2025 Jan 2026 Feb Mar Apr May"},
		{"2025-03-22", "2026-10-17", "Apr 2025 Jul Oct Jan 2026 Apr Jul Oct"},
		{"2020-01-01", "2026-01-01", "Jan 2020 Jan 2021 Jan 2022 Jan 2023 Jan 2024 Jan 2025 Jan 2026"},
	} {
		if got := labels(timeTicks(day(c.first), day(c.last), 8)); got != c.want {
			t.Errorf("%s to %s: %s, want %s", c.first, c.last, got, c.want)
		}
	}
}

// someTrends are two hives, one with a name that an image must not take for
// markup and a value that has no upper end.
func someTrends(t *testing.T) []hiveTrend {
	t.Helper()
	m, err := colony.MeasureNamed("strength")
	if err != nil {
		t.Fatal(err)
	}
	sample := func(days int, v, high float64) colony.Sample {
		return colony.Sample{On: colony.NewDate(2026, 5, 2).AddDays(days), Value: colony.Between(v, v, high, m.Unit), Count: 1}
	}
	var out []hiveTrend
	for name, samples := range map[string][]colony.Sample{
		"a":                  {sample(0, 3, 3), sample(14, 5, math.Inf(1)), sample(70, 9, 11)},
		"b<script>&\x1b[31m": {sample(14, 5, 5)},
	} {
		tr, err := trendOf(name, m, samples, "")
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, tr)
	}
	if out[0].Hive != "a" {
		out[0], out[1] = out[1], out[0]
	}
	return out
}

func TestPlotHasAxes(t *testing.T) {
	var out strings.Builder
	if err := printPlot(&out, someTrends(t), "bees", 60); err != nil {
		t.Fatal(err)
	}
	want := `  bees, bars
  15 ┤
     │
     │
     │
  10 ┤
     │                                                    o
     │
     │
   5 ┤          *
     │
     │o
     │
   0 ┤
     └──────────────────────┬──────────────────────┬───────
                            Jun 2026               Jul
  o a   x b<script>&·[31m   * several
`
	if out.String() != want {
		t.Errorf("got:\n%s\nwant:\n%s", out.String(), want)
	}
}

func TestChartsAreImages(t *testing.T) {
	for name, th := range map[string]theme{"light": light, "dark": dark} {
		var svg, pixels bytes.Buffer
		d := chart(someTrends(t), "bees", th)
		if err := d.writeSVG(&svg); err != nil {
			t.Fatal(err)
		}
		texts := svgTexts(t, svg.Bytes())
		for _, want := range []string{"bees, bars", "hive a: too few", "hive b<script>&·[31m: too few", "Jun 2026", "15"} {
			if !strings.Contains(texts, want) {
				t.Errorf("%s: the SVG does not say %q, but %q", name, want, texts)
			}
		}
		if err := d.writePNG(&pixels); err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(&pixels)
		if err != nil {
			t.Fatal(err)
		}
		r, g, b, _ := img.At(0, 0).RGBA()
		if rgb := (uint32(r>>8)<<16 | uint32(g>>8)<<8 | uint32(b>>8)); rgb != uint32(th.paper.R)<<16|uint32(th.paper.G)<<8|uint32(th.paper.B) {
			t.Errorf("%s: the corner of the PNG is %06x", name, rgb)
		}
	}
}

// TestChartInPageHasThePagesColours: none of its own is left, in light or dark.
func TestChartInPageHasThePagesColours(t *testing.T) {
	var svg bytes.Buffer
	if err := chartAlone(someTrends(t)[0], "bees").writeSVG(&svg); err != nil {
		t.Fatal(err)
	}
	image := string(inPage(svg.String()))
	for _, want := range []string{"var(--paper)", "var(--ink)", "var(--faint)", "var(--mark)"} {
		if !strings.Contains(image, want) {
			t.Errorf("%s is not used", want)
		}
	}
	if own := regexp.MustCompile(`#[0-9A-Fa-f]{6}`).FindString(image); own != "" {
		t.Errorf("the colour %s is fixed", own)
	}
	if !strings.HasPrefix(image, "<svg ") {
		t.Errorf("begins with %.20q", image)
	}
}

// svgTexts is all text of a well-formed image.
func svgTexts(t *testing.T, svg []byte) string {
	t.Helper()
	var texts strings.Builder
	for d := xml.NewDecoder(bytes.NewReader(svg)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return texts.String()
		}
		if err != nil {
			t.Fatalf("the SVG is not well-formed: %v", err)
		}
		if text, ok := token.(xml.CharData); ok {
			texts.Write(text)
			texts.WriteByte('\n')
		}
		if e, ok := token.(xml.StartElement); ok && e.Name.Local == "script" {
			t.Error("the SVG holds a script")
		}
	}
}

// An explanation keeps its two columns on a narrow screen.
func TestExplanationIsWrappedInItsColumn(t *testing.T) {
	e := colony.Explanation{What: "queen", Result: "laying", Formula: strings.Repeat("eggs and larvae ", 9),
		Inputs: []colony.Input{{Name: "speaks for it", Value: "eggs seen", From: "20 May, bars.4.eggs"}}}
	for i, line := range strings.Split(explained(e, 40), "\n") {
		if len(line) > 40 {
			t.Errorf("line of %d columns: %q", len(line), line)
		}
		if column := line[2:11]; i > 1 && strings.TrimSpace(column) != "" && column != "from     " {
			t.Errorf("text in the first column: %q", line)
		}
	}
	if got, want := explained(e, 0), e.String(); got != want {
		t.Errorf("without a width: %q", got)
	}
}
