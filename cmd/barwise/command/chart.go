package command

import (
	"image/color"
	"io"
	"math"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// theme is the colours of a chart.
type theme struct {
	paper, ink, faint color.RGBA
	hives             []color.RGBA
}

func rgb(hex uint32) color.RGBA {
	return color.RGBA{uint8(hex >> 16), uint8(hex >> 8), uint8(hex), 255}
}

func colours(hex ...uint32) (out []color.RGBA) {
	for _, h := range hex {
		out = append(out, rgb(h))
	}
	return out
}

// The hives' colours can be told apart by colour-blind people: Okabe and Ito
// 2008, Color Universal Design; on dark paper without the darkest, on light
// paper without the yellow.
var (
	light = theme{paper: rgb(0xffffff), ink: rgb(0x222222), faint: rgb(0xdddddd),
		hives: colours(0x0072b2, 0xd55e00, 0x009e73, 0xcc79a7, 0xe69f00, 0x56b4e9)}
	dark = theme{paper: rgb(0x16181c), ink: rgb(0xe4e4e4), faint: rgb(0x3c4048),
		hives: colours(0x56b4e9, 0xe69f00, 0x009e73, 0xcc79a7, 0xf0e442, 0xd55e00)}
)

// The size of a chart, which has a panel a hive, and the resolution of one made
// of pixels.
const (
	chartWidth  = 8 * vg.Inch
	panelHeight = 1.9 * vg.Inch
	headHeight  = 0.7 * vg.Inch
	chartMargin = 0.15 * vg.Inch
	chartDPI    = 150
)

// drawing is a chart ready to be written.
type drawing struct {
	title  string
	theme  theme
	panels [][]*plot.Plot // a row a hive
}

// chart draws the trends, a panel a hive on the same axes: a mark a value with
// its range, a line where inspections follow one another, and the trend's own
// line where the values carry one.
func chart(trends []hiveTrend, what string, th theme) drawing {
	s := scaleOf(trends)
	d := drawing{title: heads(what, trends[0].Unit), theme: th}
	for i, t := range trends {
		p := panel(s, th)
		p.Title.Text = t.head() + ": " + t.Says
		addHive(p, t, draw.GlyphStyle{Color: th.hives[i%len(th.hives)], Radius: vg.Points(3), Shape: draw.CircleGlyph{}})
		d.panels = append(d.panels, []*plot.Plot{p})
	}
	return d
}

// heads names a measure with its unit, which some measures' words hold already.
func heads(what, unit string) string {
	if strings.HasPrefix(unit, "of ") || strings.Contains(what, unit) {
		return what
	}
	return what + ", " + unit
}

// chartAlone draws one hive in the colours of a page that says the rest.
func chartAlone(t hiveTrend, what string) drawing {
	d := chart([]hiveTrend{t}, what, pageTheme)
	d.title, d.panels[0][0].Title.Text = "", ""
	return d
}

// panel is an empty plot with the axes that all hives share.
func panel(s scale, th theme) *plot.Plot {
	p := plot.New()
	p.BackgroundColor = th.paper
	style := func(s *draw.TextStyle, size font.Length) { s.Color, s.Font.Size, s.Font.Variant = th.ink, size, "Sans" }
	style(&p.Title.TextStyle, 10)
	p.Title.Padding = vg.Points(6)
	for _, axis := range []*plot.Axis{&p.X, &p.Y} {
		axis.LineStyle.Color, axis.Tick.LineStyle.Color = th.ink, th.ink
		style(&axis.Tick.Label, 9)
	}
	values := valueTicks(s.low, s.high)
	p.Y.Min, p.Y.Max = values[0].at, values[len(values)-1].at
	p.Y.Tick.Marker = fixedTicks(values)
	room := math.Max(2, float64(s.last.Sub(s.first))*0.02)
	p.X.Min, p.X.Max = dayNumber(s.first)-room, dayNumber(s.last)+room
	p.X.Tick.Marker = fixedTicks(timeTicks(s.first, s.last, 9))
	grid := plotter.NewGrid()
	grid.Horizontal.Color, grid.Vertical.Color = th.faint, color.Transparent
	p.Add(grid)
	return p
}

// size is that of the whole drawing.
func (d drawing) size() (w, h vg.Length) {
	return chartWidth, d.head() + panelHeight*vg.Length(len(d.panels))
}

func (d drawing) head() vg.Length {
	if d.title == "" {
		return 2 * chartMargin
	}
	return headHeight
}

// on draws the panels below one another on a canvas, under the title.
func (d drawing) on(c draw.Canvas) {
	c.FillPolygon(d.theme.paper, []vg.Point{c.Min, {X: c.Max.X, Y: c.Min.Y}, c.Max, {X: c.Min.X, Y: c.Max.Y}})
	if d.title != "" {
		style := d.panels[0][0].Title.TextStyle
		style.Font.Size, style.XAlign, style.YAlign = 13, draw.XLeft, draw.YTop
		c.FillText(style, vg.Point{X: c.Min.X + 2*chartMargin, Y: c.Max.Y - chartMargin}, d.title)
	}
	c = draw.Crop(c, 2*chartMargin, -2*chartMargin, chartMargin, chartMargin-d.head())
	tiles := draw.Tiles{Rows: len(d.panels), Cols: 1, PadY: vg.Points(10)}
	for i, row := range plot.Align(d.panels, tiles, c) {
		d.panels[i][0].Draw(row[0])
	}
}

type fixedTicks []tick

func (f fixedTicks) Ticks(_, _ float64) []plot.Tick {
	out := make([]plot.Tick, len(f))
	for i, t := range f {
		out[i] = plot.Tick{Value: t.at, Label: t.label}
	}
	return out
}

// addHive draws one hive's values.
func addHive(p *plot.Plot, t hiveTrend, mark draw.GlyphStyle) {
	line := draw.LineStyle{Color: mark.Color, Width: vg.Points(1.2)}
	marks := &plotter.Scatter{GlyphStyle: mark}
	var run plotter.XYs
	flush := func() {
		if len(run) > 1 {
			p.Add(&plotter.Line{XYs: run, LineStyle: line})
		}
		run = nil
	}
	for i, sample := range t.Samples {
		at := plotter.XY{X: dayNumber(sample.On), Y: sample.Value.Best}
		if i > 0 && sample.On.Sub(t.Samples[i-1].On) > t.gap {
			flush()
		}
		run = append(run, at)
		marks.XYs = append(marks.XYs, at)
		low, high := math.Max(sample.Value.Low, p.Y.Min), math.Min(sample.Value.High, p.Y.Max)
		if low < high {
			p.Add(&plotter.Line{XYs: plotter.XYs{{X: at.X, Y: low}, {X: at.X, Y: high}}, LineStyle: draw.LineStyle{Color: faded(mark.Color), Width: vg.Points(3)}})
		}
	}
	flush()
	p.Add(marks)
	if t.trend.Carries {
		p.Add(trendLine(p, t, mark.Color))
	}
}

// faded is the colour half seen through.
func faded(c color.Color) color.Color {
	r, g, b, _ := c.RGBA()
	return color.NRGBA{uint8(r >> 8), uint8(g >> 8), uint8(b >> 8), 96}
}

// trendLine is the fitted line, cut at the edges of the plot.
func trendLine(p *plot.Plot, t hiveTrend, c color.Color) *plotter.Line {
	first, last := t.Samples[0].On, t.Samples[len(t.Samples)-1].On
	line := &plotter.Line{LineStyle: draw.LineStyle{Color: c, Width: vg.Points(1), Dashes: []vg.Length{vg.Points(5), vg.Points(4)}}}
	for day := range last.Sub(first) + 1 {
		y := t.trend.Slope.Intercept + t.trend.Slope.Slope*float64(day)
		if y >= p.Y.Min && y <= p.Y.Max {
			line.XYs = append(line.XYs, plotter.XY{X: dayNumber(first) + float64(day), Y: y})
		}
	}
	if n := len(line.XYs); n > 2 {
		line.XYs = plotter.XYs{line.XYs[0], line.XYs[n-1]}
	}
	return line
}

// writeSVG writes the chart as an SVG image.
func (d drawing) writeSVG(out io.Writer) error {
	c := vgsvg.New(d.size())
	d.on(draw.New(c))
	_, err := c.WriteTo(out)
	return err
}

// writePNG writes the chart as a PNG image.
func (d drawing) writePNG(out io.Writer) error {
	c := vgimg.NewWith(vgimg.UseWH(d.size()), vgimg.UseDPI(chartDPI), vgimg.UseBackgroundColor(d.theme.paper))
	d.on(draw.New(c))
	_, err := vgimg.PngCanvas{Canvas: c}.WriteTo(out)
	return err
}
