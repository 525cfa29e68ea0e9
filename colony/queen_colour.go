package colony

import "fmt"

// queenColours is the international code by the last digit of the year in
// which the queen was raised: 1 and 6 white, 2 and 7 yellow, 3 and 8 red, 4
// and 9 green, 5 and 0 blue [BEEL00, LAUNC].
var queenColours = [5]string{"blue", "white", "yellow", "red", "green"}

// queenColour is the colour of a queen raised in the year.
func queenColour(year int) string { return queenColours[((year%5)+5)%5] }

// queenYears lists the last two years up to latest, newest first, in which
// queens got the colour. A colour outside the code gives none.
func queenYears(colour string, latest int) []int {
	var out []int
	for y := latest; y > latest-10; y-- {
		if queenColour(y) == colour {
			out = append(out, y)
		}
	}
	return out
}

// ColourFinding is what a mark says of the queen's year.
type ColourFinding struct {
	Colour string `json:"colour"`
	Year   int    `json:"year"`           // she was raised in, as said or by the colour; 0 where neither tells
	Fits   bool   `json:"fits"`           // false only where colour and year were both said and disagree
	Says   string `json:"says,omitempty"` // for people
}

// checkColour compares the mark that was said on a day with the year that was
// said, and reads the year from the mark where none was. A queen raised in the
// southern December keeps that year's colour.
func checkColour(q *Queen, on Date) ColourFinding {
	f := ColourFinding{Fits: true}
	if q == nil {
		return f
	}
	f.Colour = q.Colour
	if q.Year != nil {
		f.Year = *q.Year
		want := queenColour(f.Year)
		switch {
		case f.Colour == "":
			f.Says = fmt.Sprintf("raised in %d, for which the code's colour is %s", f.Year, want)
		case f.Colour == want:
			f.Says = fmt.Sprintf("%s is the code's colour for %d", f.Colour, f.Year)
		default:
			f.Fits = false
			f.Says = fmt.Sprintf("%s is not the code's colour for %d, which is %s: another colour, another year, or a misheard word", f.Colour, f.Year, want)
		}
		return f
	}
	if years := queenYears(f.Colour, on.Year); len(years) > 0 {
		f.Year = years[0]
		f.Says = fmt.Sprintf("%s, by the code a queen raised in %d", f.Colour, years[0])
		if years[0] == on.Year {
			f.Says += fmt.Sprintf(", or in %d if she was marked before this season", years[1])
		}
	}
	return f
}
