package parse

import "strings"

// measure is an amount with its unit, as it was said.
type measure struct {
	amount quantity
	unit   string // mm cm in, l ml kg g lb oz qt gal pt cup
}

// unitNames are the ways of writing a unit.
var unitNames = map[string]string{
	"mm": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm", "mil": "mm",
	"cm": "cm", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm", "cms": "cm",
	"in": "in", "inch": "in", "inches": "in", "ins": "in",
	"l": "l", "litre": "l", "litres": "l", "liter": "l", "liters": "l", "ltr": "l", "ltrs": "l", "lt": "l",
	"ml": "ml", "millilitre": "ml", "millilitres": "ml", "mils": "ml", "mills": "ml", "milliliter": "ml", "milliliters": "ml", "mls": "ml",
	"kg": "kg", "kilo": "kg", "kilos": "kg", "kilogram": "kg", "kilograms": "kg", "kilogramme": "kg", "kgs": "kg", "kilogrammes": "kg",
	"g": "g", "gram": "g", "grams": "g", "gramme": "g", "grammes": "g", "gm": "g", "gms": "g",
	"lb": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb",
	"oz": "oz", "ounce": "oz", "ounces": "oz",
	"qt": "qt", "quart": "qt", "quarts": "qt", "qts": "qt",
	"gal": "gal", "gallon": "gal", "gallons": "gal", "gals": "gal",
	"pt": "pt", "pint": "pt", "pints": "pt", "pts": "pt",
	"cup": "cup", "cups": "cup", "cupful": "cup", "cupfuls": "cup",
}

// millimetres per unit of length; one inch is 25.4 mm by definition
// (international yard and pound agreement, 1959).
var millimetres = map[string]float64{"mm": 1, "cm": 10, "in": 25.4}

// kilograms per unit of mass; one pound is 0.45359237 kg by definition (same
// agreement).
var kilograms = map[string]float64{"kg": 1, "g": 0.001, "lb": 0.45359237, "oz": 0.45359237 / 16}

func (m measure) mm() (float64, bool) {
	f, ok := millimetres[m.unit]
	return m.amount.lo * f, ok
}

func (m measure) kg() (float64, bool) {
	f, ok := kilograms[m.unit]
	return m.amount.lo * f, ok
}

// measures reads amounts with units.
type measures struct {
	numbers *numbers
	units   []string // by wordID
	moreID  wordID
}

func (m *measures) unit(toks []token, i int) string {
	if i < len(toks) && int(toks[i].id) < len(m.units) {
		return m.units[toks[i].id]
	}
	return ""
}

// of reads "two and a half litres", "half a gallon", "an inch and a half",
// "250 g", "8oz", where the number q stands from token i to j; i itself where
// there is none.
func (m *measures) of(text string, toks []token, i int, q quantity, j int) (measure, int) {
	if u := m.unit(toks, i); u == "cup" || u == "in" && toks[i].id != m.numbers.inID {
		return measure{}, i
	}
	if j == i || q.ordinal || !joined(toks, j) {
		return measure{}, i
	}
	if toks[j].id == m.moreID && joined(toks, j+1) { // "one more kilo"
		j++
	}
	if q.share && m.numbers.is(toks, j, articleWord) { // half a gallon
		j++
	}
	if q.share && m.numbers.is(toks, j, ofWord) { // a quarter of a pound
		j++
		if m.numbers.is(toks, j, articleWord) {
			j++
		}
	}
	if j < len(toks) && toks[j].id == idDash {
		j++
	}
	u := m.unit(toks, j)
	if u == "in" && toks[j].id == m.numbers.inID && i > 0 && joined(toks, i) && m.numbers.barWords.has(toks[i-1].id) && !(strings.EqualFold(text[toks[i-1].start:toks[i-1].end], "comb") && m.inchHere(toks, j) && joined(toks, j+1)) {
		return measure{}, i // "festooning on bar 9 in long chains"
	}
	if u == "l" && i > 0 && toks[i].has(glued) && m.numbers.barWords.has(toks[i-1].id) && toks[j].end-toks[j].start == 1 {
		return measure{}, i // "b3 L+CB" is larvae
	}
	if u == "" || !joined(toks, j) || u == "in" && toks[j].id == m.numbers.inID && !toks[j].has(glued) && !m.inchHere(toks, j) && !byBefore(text, toks, i) {
		return measure{}, i
	}
	j++
	if m.numbers.is(toks, j, andWord) && joined(toks, j) { // an inch and a half
		if part, k := m.numbers.single(text, toks, j+1); k > j+1 && part.share && (m.unit(toks, k) == "" || !joined(toks, k)) {
			q.lo += part.lo
			j = k
		}
	}
	return measure{amount: q, unit: u}, j
}

// inchHere tells the unit "in" from the word: a unit is followed by a
// dimension, "by", or a pause.
func (m *measures) inchHere(toks []token, j int) bool {
	if j+1 >= len(toks) || toks[j+1].pause != none {
		return true
	}
	return m.numbers.dimension.has(toks[j+1].id)
}

// byBefore reports whether a number is the second of two that a cross joins: "6 x 4 in
// new comb".
func byBefore(text string, toks []token, i int) bool {
	if i < 2 || !joined(toks, i) {
		return false
	}
	by := text[toks[i-1].start:toks[i-1].end]
	return (by == "x" || by == "×" || by == "X") && toks[i-2].has(digits)
}
