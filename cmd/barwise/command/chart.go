package command

import (
	"fmt"
	"image/color"
	"io"
	"math"

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

// The hives' colours can be told apart by colour-blind people: Okabe and Ito
// 2008, Color Universal Design; on dark paper without the darkest, on light
// paper without the yellow. Each hive has its shape as well.
var (
	light = theme{paper: rgb(0xffffff), ink: rgb(0x222222), faint: rgb(0xdddddd),
		hives: []color.RGBA{rgb(0x0072b2), rgb(0xd55e00), rgb(0x009e73), rgb(0xcc79a7), rgb(0xe69f00), rgb(0x56b4e9)}}
	dark = theme{paper: rgb(0x16181c), ink: rgb(0xe4e4e4), faint: rgb(0x3c4048),
		hives: []color.RGBA{rgb(0x56b4e9), rgb(0xe69f00), rgb(0x009e73), rgb(0xcc79a7), rgb(0xf0e442), rgb(0xd55e00)}}
)

var shapes = []draw.GlyphDrawer{draw.CircleGlyph{}, draw.BoxGlyph{}, draw.PyramidGlyph{}, draw.CrossGlyph{}, draw.RingGlyph{}, draw.SquareGlyph{}, draw.PlusGlyph{}}

// The size of a chart, and the resolution of one made of pixels.
const (
	chartWidth, chartHeight = 8 * vg.Inch, 4.5 * vg.Inch
	chartDPI                = 150
)

// chart draws the trends: a mark a value with its range, a line where
// inspections follow one another, and the trend's own line where the values
// carry one.
func chart(trends []hiveTrend, title string, th theme) *plot.Plot {
	p := plot.New()
	p.BackgroundColor = th.paper
	style := func(s *draw.TextStyle, size font.Length) { s.Color, s.Font.Size, s.Font.Variant = th.ink, size, "Sans" }
	p.Title.Text, p.Title.Padding = title, vg.Points(8)
	style(&p.Title.TextStyle, 13)
	s := scaleOf(trends)
	for _, axis := range []*plot.Axis{&p.X, &p.Y} {
		axis.LineStyle.Color, axis.Tick.LineStyle.Color = th.ink, th.ink
		style(&axis.Tick.Label, 10)
		style(&axis.Label.TextStyle, 11)
	}
	p.Y.Label.Text, p.Y.Label.Padding = trends[0].Unit, vg.Points(6)
	values := valueTicks(s.low, s.high, 5)
	p.Y.Min, p.Y.Max = values[0].at, values[len(values)-1].at
	p.Y.Tick.Marker = fixedTicks(values)
	room := math.Max(2, float64(s.last.Sub(s.first))*0.02)
	p.X.Min, p.X.Max = dayNumber(s.first)-room, dayNumber(s.last)+room
	p.X.Tick.Marker = fixedTicks(timeTicks(s.first, s.last, 9))
	grid := plotter.NewGrid()
	grid.Horizontal.Color, grid.Vertical.Color = th.faint, color.Transparent
	p.Add(grid)
	p.Legend.Top, p.Legend.Left = true, true
	style(&p.Legend.TextStyle, 10)
	for i, t := range trends {
		addHive(p, t, draw.GlyphStyle{Color: th.hives[i%len(th.hives)], Radius: vg.Points(3.2), Shape: shapes[i%len(shapes)]}, len(trends) > 1)
	}
	return p
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
func addHive(p *plot.Plot, t hiveTrend, mark draw.GlyphStyle, named bool) {
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
	if named {
		p.Legend.Add(oneLine(t.Hive), &plotter.Line{LineStyle: line}, marks)
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

// margin is the paper left free around a chart.
const margin = 10 // points

// paint draws the chart with a margin, and its legend beside the values, where
// it covers none of them.
func paint(p *plot.Plot, on vg.CanvasSizer) {
	page := draw.New(on)
	page.SetColor(p.BackgroundColor)
	page.Fill(page.Rectangle.Path())
	page = draw.Crop(page, margin, -margin, margin, -margin)
	values := *p
	values.Legend = plot.NewLegend()
	beside := vg.Length(0)
	if width := p.Legend.Rectangle(page).Size().X; width > 0 {
		beside = width + margin
		p.Legend.Draw(draw.Crop(page, page.Rectangle.Size().X-width, 0, 0, -2*margin))
	}
	values.Draw(draw.Crop(page, 0, -beside, 0, 0))
}

// writeSVG writes the chart as an SVG image.
func writeSVG(out io.Writer, p *plot.Plot) error {
	c := vgsvg.New(chartWidth, chartHeight)
	paint(p, c)
	_, err := c.WriteTo(out)
	return err
}

// writePNG writes the chart as a PNG image.
func writePNG(out io.Writer, p *plot.Plot) error {
	c := vgimg.NewWith(vgimg.UseWH(chartWidth, chartHeight), vgimg.UseDPI(chartDPI), vgimg.UseBackgroundColor(p.BackgroundColor))
	paint(p, c)
	_, err := vgimg.PngCanvas{Canvas: c}.WriteTo(out)
	return err
}

// chartTitle names what is drawn, and of which hive if of one.
func chartTitle(what string, trends []hiveTrend) string {
	if len(trends) == 1 {
		return fmt.Sprintf("hive %s: %s", oneLine(trends[0].Hive), what)
	}
	return what
}
