package colony

import (
	"errors"
	"fmt"
	"math"
)

// Box is the inside of a top-bar hive: a trough whose cross-section is a
// trapezoid. Lengths are millimetres.
type Box struct {
	Name     string  `json:"name" toml:"name"`
	Top      float64 `json:"top_mm" toml:"top_mm"`       // inside width at the bars
	Bottom   float64 `json:"bottom_mm" toml:"bottom_mm"` // inside width at the floor
	Depth    float64 `json:"depth_mm" toml:"depth_mm"`   // from the underside of the bars to the floor
	Bar      float64 `json:"bar_mm" toml:"bar_mm"`       // width of a bar: the distance from comb to comb
	BeeSpace float64 `json:"bee_space_mm" toml:"bee_space_mm"`
	Bars     int     `json:"bars" toml:"bars"` // that the hive takes
}

// DefaultBox is the plan of a Cameroon top-bar hive: 445 mm at the bars, 190 mm
// at the floor, 280 mm deep, 27 bars [GREGORY03B]; bars of 35 mm and a bee
// space of 8 mm as for northern bees [GREGORY03]. It is used until the keeper
// gives the measures of the hive.
var DefaultBox = Box{Name: "Cameroon plan", Top: 445, Bottom: 190, Depth: 280, Bar: 35, BeeSpace: 8, Bars: 27}

// BoxFromAngle makes a box from the width at the bars, the depth and the angle
// of its walls from the vertical, in degrees; the usual recommendation is 30,
// and 22.5 is in use.
func BoxFromAngle(top, depth, degrees float64) Box {
	b := DefaultBox
	b.Name = fmt.Sprintf("walls %g° from vertical", degrees)
	b.Top, b.Depth = top, depth
	b.Bottom = math.Max(0, top-2*depth*math.Tan(degrees*math.Pi/180))
	return b
}

// Check reports measures that cannot be a hive's.
func (b Box) Check() error {
	switch {
	case b.Top < 100 || b.Top > 1000:
		return fmt.Errorf("width at the bars of %g mm: 100 to 1000 is expected; measures are millimetres", b.Top)
	case b.Bottom < 0 || b.Bottom > b.Top:
		return fmt.Errorf("width at the floor of %g mm: it lies between 0 and the width at the bars, %g mm", b.Bottom, b.Top)
	case b.Depth < 100 || b.Depth > 800:
		return fmt.Errorf("depth of %g mm: 100 to 800 is expected; measures are millimetres", b.Depth)
	case b.Bar < 20 || b.Bar > 60:
		return fmt.Errorf("bar width of %g mm: 20 to 60 is expected", b.Bar)
	case b.BeeSpace < 0 || b.BeeSpace > 20:
		return fmt.Errorf("bee space of %g mm: 0 to 20 is expected", b.BeeSpace)
	case b.Bars < 1:
		return errors.New("a hive takes at least one bar")
	}
	return nil
}

// Trapezoid is the area of the box's cross-section in dm², one side: the most
// that a comb can fill, built to walls and floor.
func (b Box) Trapezoid() float64 { return (b.Top + b.Bottom) / 2 * b.Depth / mm2PerDM2 }

// Natural comb hangs as a rounded tongue that keeps a bee space to walls and
// floor. The model: down from the bar, a comb is as wide as the narrower of
// the box less its bee spaces and a rounded shape of the bar's width. The
// rounded shape is a half ellipse for the best value and a parabola for the
// least; the trapezoid of the box, filled to the wood, is the most. No
// published factor was found; a keeper who measures combs overrides it by
// saying width and depth.

// FullComb is the area of one side of a full comb, in dm².
func (b Box) FullComb() Range { return b.combDownTo(b.Depth - b.BeeSpace) }

// combDownTo is the area of a comb that hangs as deep as depth mm, one side.
func (b Box) combDownTo(depth float64) Range {
	depth = math.Max(0, math.Min(depth, b.Depth))
	most := b.widthAt(0) + b.widthAt(depth)
	high := most / 2 * depth / mm2PerDM2
	if depth >= b.Depth-b.BeeSpace {
		high = b.Trapezoid()
	}
	return Between(b.parabola(depth), b.ellipse(depth), high, unitArea)
}

// widthAt is the inside width of the box at a depth below the bars, in mm.
func (b Box) widthAt(depth float64) float64 {
	return b.Top - (b.Top-b.Bottom)*depth/b.Depth
}

// walls gives the width between the walls less the bee spaces as a straight
// line over the depth y: a − slope·y.
func (b Box) walls() (a, slope float64) {
	return b.Top - 2*b.BeeSpace, (b.Top - b.Bottom) / b.Depth
}

// ellipse is the area in dm² under the narrower of walls and half ellipse
// Top·√(1−(y/depth)²). The walls are the narrower down to where they meet,
// which is the positive root of a quadratic.
func (b Box) ellipse(depth float64) float64 {
	a, slope := b.walls()
	if depth < 1 {
		return 0
	}
	k := slope*slope + b.Top*b.Top/(depth*depth)
	meet := (a*slope + math.Sqrt(a*a*slope*slope+k*(b.Top*b.Top-a*a))) / k
	return b.joined(depth, meet, func(u float64) float64 {
		return math.Pi/4 - (u*math.Sqrt(1-u*u)+math.Asin(u))/2
	})
}

// parabola is the area in dm² under the narrower of walls and parabola
// Top·(1−(y/depth)²).
func (b Box) parabola(depth float64) float64 {
	a, slope := b.walls()
	if depth < 1 {
		return 0
	}
	k := b.Top / (depth * depth)
	meet := (slope + math.Sqrt(slope*slope+4*k*(b.Top-a))) / (2 * k)
	return b.joined(depth, meet, func(u float64) float64 { return 2.0/3 - u + u*u*u/3 })
}

// joined adds the part between the walls, down to the depth where shape and
// walls meet, and the part of the shape below; rest is the share of the
// rectangle Top × depth that the shape covers below a share of the depth.
// Walls that close before that leave no comb below.
func (b Box) joined(depth, meet float64, rest func(float64) float64) float64 {
	a, slope := b.walls()
	if slope > 0 && a/slope <= meet {
		closed := math.Min(a/slope, depth)
		return (a - slope*closed/2) * closed / mm2PerDM2
	}
	meet = math.Min(meet, depth)
	return ((a-slope*meet/2)*meet + b.Top*depth*rest(meet/depth)) / mm2PerDM2
}

// MeasuredComb is the area of one side of a comb given by its greatest width
// and its depth in mm: a half ellipse (π/4 of the rectangle), at the least a
// parabola (2/3), at the most the rectangle, and never more than the box.
func (b Box) MeasuredComb(width, depth float64) Range {
	rect := width * depth / mm2PerDM2
	return Between(rect*2/3, rect*math.Pi/4, rect, unitArea).AtMost(math.Max(b.Trapezoid(), rect*2/3))
}

// combWords gives the share of a full comb for a size said in words.
var combWords = map[string]Constant{
	"bare":    {"bare bar", Between(0, 0, 0, ""), "", from("PRACTICE")},
	"started": {"comb just started", Between(0.005, 0.05, 0.15, ""), "share of a full comb", from("PRACTICE")},
	"small":   {"small comb", Between(0.05, 0.2, 0.4, ""), "share of a full comb", from("PRACTICE")},
	"large":   {"large comb", Between(0.5, 0.75, 1, ""), "share of a full comb", from("PRACTICE")},
}

// someComb is the share of a full comb that is there where something is in it
// and its size was not said.
var someComb = Constant{"comb of no said size", Between(0.25, 0.75, 1, ""), "share of a full comb", from("PRACTICE")}

// CombArea is the area of one side of the bar's comb in dm², from what was
// said of it: width and depth first, then the share drawn, then a word. A bar
// that holds something but of whose comb nothing was said has some comb, up to
// a full one. It returns an unknown estimate where nothing tells of a comb.
func (b Box) CombArea(bar *Bar, origin string) Estimate {
	full := b.FullComb()
	c := bar.Comb
	if c == nil {
		c = &Comb{}
	}
	what := fmt.Sprintf("comb on bar %d, one side", bar.Bar)
	in := func(name, value string) []Input {
		return []Input{{name, value, origin}, {"full comb", full.String(), b.Name}}
	}
	var e Estimate
	switch {
	case c.WidthMM != nil && c.DepthMM != nil && *c.WidthMM >= 1 && *c.DepthMM >= 1:
		e = because(what, b.MeasuredComb(*c.WidthMM, *c.DepthMM), "π/4 × width × depth (2/3 to 1)",
			in("width × depth", fmt.Sprintf("%g × %g mm", *c.WidthMM, *c.DepthMM)))
	case c.Drawn != nil:
		e = because(what, full.Scale(share01(*c.Drawn)), "share drawn × full comb", in("share drawn", amount(*c.Drawn)))
	case c.DepthMM != nil && *c.DepthMM >= 1:
		r := b.combDownTo(*c.DepthMM)
		r.Low = math.Min(r.Low, *c.DepthMM**c.DepthMM*2/3/mm2PerDM2)
		e = because(what, r, "a comb as wide as the bar down to that depth; at the least a tongue as wide as deep", in("depth", fmt.Sprintf("%g mm", *c.DepthMM)))
	case c.Size != "":
		k := combWords[c.Size]
		e = because(what, full.Times(k.Value, unitArea), "share for the word × full comb", in("size", c.Size), k)
	case bar.holdsComb():
		e = because(what, full.Times(someComb.Value, unitArea), "share of a comb whose size was not said × full comb", in("comb", "size not said"), someComb)
	default:
		return Estimate{}
	}
	e.Why.From = withReferences(e.Why.From, from("TRAPEZOID", "GREGORY03B")...)
	e.Why.Caveats = append(e.Why.Caveats, "shape of natural comb is a model: rounded below, a bee space from walls and floor")
	return e
}

// holdsComb reports whether something was seen that needs comb to be in.
func (b *Bar) holdsComb() bool {
	for _, c := range b.Contents {
		if c.Present {
			return true
		}
	}
	return len(presentCells(b.QueenCells)) > 0 || b.Comb != nil && *b.Comb != (Comb{})
}
