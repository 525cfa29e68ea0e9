package colony

// Bar is one top bar and the comb that hangs from it, as found. Its contents
// stand right under it in paths: bars.4.capped_brood.
type Bar struct {
	Bar        int          `json:"bar" min:"1" max:"60"` // as the keeper counts
	Comb       *Comb        `json:"comb,omitempty"`
	Placed     Date         `json:"placed,omitzero"` // the day the bar went in
	Festooning *bool        `json:"festooning,omitempty"`
	QueenCells []QueenCells `json:"queen_cells,omitempty" key:"stage"`
	Contents   []Content    `json:"contents,omitempty" key:"what" inline:"yes"`
}

// Comb is the state of the wax. Drawn is the share of a full comb that is
// built; Size is used when it was said in words instead.
type Comb struct {
	Drawn    *float64 `json:"drawn,omitempty" min:"0" max:"1"`
	Size     string   `json:"size,omitempty" values:"bare started small large"`
	WidthMM  *float64 `json:"width_mm,omitempty" min:"1" max:"600"`
	DepthMM  *float64 `json:"depth_mm,omitempty" min:"1" max:"600"`
	LengthMM *float64 `json:"length_mm,omitempty" min:"1" max:"600"`
	New      *bool    `json:"new,omitempty"`
	Old      *bool    `json:"old,omitempty"`
	Straight *bool    `json:"straight,omitempty"`
	Cross    *bool    `json:"cross,omitempty"` // built across bars
	Attached string   `json:"attached,omitempty" values:"wall floor bar no"`
	Broken   *bool    `json:"broken,omitempty"`
}

// Content is something that a comb, or the colony as a whole, holds. Cover is
// a share of the comb (of one side where Side says one); Bars is the number of
// bars that hold it, for a colony's contents only.
type Content struct {
	What    string   `json:"what" values:"eggs open_brood capped_brood emerging_brood brood drone_brood nectar capped_honey honey pollen empty"`
	Present bool     `json:"present"`
	Cover   *float64 `json:"cover,omitempty" min:"0" max:"1"`
	Amount  string   `json:"amount,omitempty" values:"little much"`
	Pattern string   `json:"pattern,omitempty" values:"solid patchy"`
	Side    string   `json:"side,omitempty" values:"both one front back"`
	Place   string   `json:"place,omitempty" values:"top middle bottom edge corners"`
	Bars    *float64 `json:"bars,omitempty" min:"0" max:"60"`
	BarsMax *float64 `json:"bars_max,omitempty" min:"0" max:"60"`
}

// Bar returns the bar of the given number, or nil where none is recorded.
func (ins *Inspection) Bar(number int) *Bar {
	for i := range ins.Bars {
		if ins.Bars[i].Bar == number {
			return &ins.Bars[i]
		}
	}
	return nil
}

// Content returns what is said of the named content, or nil for silence.
func (b *Bar) Content(what string) *Content { return contentOf(b.Contents, what) }

// Content returns what is said of the colony's content, or nil for silence.
func (ins *Inspection) Content(what string) *Content { return contentOf(ins.Contents, what) }

func contentOf(contents []Content, what string) *Content {
	for i := range contents {
		if contents[i].What == what {
			return &contents[i]
		}
	}
	return nil
}
