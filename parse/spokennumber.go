package parse

import (
	"strconv"
	"strings"
)

// Numbers in words: two hundred and five, one and a half, a quarter.

// spoken reads number words.
func (n *numbers) spoken(text string, toks []token, i int) (quantity, int) {
	w := n.of(toks[i].id)
	switch w.kind {
	case ordinalWord:
		return quantity{lo: w.value, ordinal: true}, i + 1
	case partWord:
		if w.value == 0.5 { // half a dozen, half
			if n.is(toks, i+1, articleWord) && n.is(toks, i+2, groupWord) && joined(toks, i+1) && joined(toks, i+2) {
				return quantity{lo: n.of(toks[i+2].id).value / 2}, n.skipOf(toks, i+3)
			}
			return quantity{lo: 0.5, share: true}, i + 1
		}
		return quantity{lo: w.value, share: true}, i + 1
	case groupWord:
		return quantity{lo: w.value}, n.skipOf(toks, i+1)
	case articleWord:
		return n.article(toks, i)
	case scaleWord:
		return quantity{lo: w.value}, i + 1
	case unitWord, tensWord:
	default:
		return quantity{}, i
	}
	if q, j := n.year(toks, i); j > i {
		return q, j
	}
	v, j := n.cardinal(toks, i)
	if joined(toks, j) && !n.behindBar(toks, i) { // "bar one half drawn"
		next := n.of(toks[j].id)
		if next.kind == ordinalWord && w.kind == tensWord && next.value < 10 && j == i+1 {
			return quantity{lo: v + next.value, ordinal: true}, j + 1
		}
		if isPart(next) && v*next.value <= 1.01 { // two thirds: an ordinal's plural or a part word
			return quantity{lo: v * next.value, share: true}, j + 1
		}
		if v == 1 && next.kind == ordinalWord && next.value >= 3 && next.value <= 10 && j == i+1 {
			return quantity{lo: 1 / next.value, share: true}, j + 1 // one third
		}
		if next.kind == groupWord && next.value > 2 {
			return quantity{lo: v * next.value}, n.skipOf(toks, j+1)
		}
		if next.kind == pointWord {
			if q, end := n.decimals(text, toks, v, j+1); end > j+1 {
				return q, end
			}
		}
	}
	return n.withPart(text, toks, quantity{lo: v}, j)
}

// behindBar reports whether a word for a bar stands right before the number at token i, so
// that it names one: "bar one half drawn", but "fresh comb two thirds drawn" and "bar four
// comb two thirds drawn".
func (n *numbers) behindBar(toks []token, i int) bool {
	if i == 0 || !joined(toks, i) || !n.barWords.has(toks[i-1].id) {
		return false
	}
	if i < 2 || !joined(toks, i-1) || !n.combWords.has(toks[i-1].id) {
		return true
	}
	told := &toks[i-2]
	numbered := i > 2 && joined(toks, i-2) && n.barWords.has(toks[i-3].id) && (told.has(digits) || n.of(told.id).kind != notNumber)
	return !numbered && !n.combsTold.has(told.id)
}

// year reads "twenty twenty three".
func (n *numbers) year(toks []token, i int) (quantity, int) {
	if n.of(toks[i].id).value != 20 || !joined(toks, i+1) || n.of(toks[i+1].id).kind != tensWord || n.of(toks[i+1].id).value != 20 {
		return quantity{}, i
	}
	v, j := n.belowHundred(toks, i+1)
	return quantity{lo: 2000 + v}, j
}

func isPart(w numberWord) bool { return w.kind == partWord && w.value < 1 }

// article reads "a dozen", "a couple of", "a third", "a hundred"; alone it is
// the number one and says so.
func (n *numbers) article(toks []token, i int) (quantity, int) {
	if joined(toks, i+1) {
		switch w := n.of(toks[i+1].id); w.kind {
		case groupWord:
			return quantity{lo: w.value}, n.skipOf(toks, i+2)
		case scaleWord:
			return n.aHundred(toks, i+1)
		case partWord:
			return quantity{lo: w.value, share: true}, i + 2
		case ordinalWord:
			if w.value > 2 && n.is(toks, i+2, ofWord) || w.value > 2 && w.value <= 10 && w.value != 3 {
				return quantity{lo: 1 / w.value, share: true}, i + 2
			}
			if w.value == 3 {
				return quantity{lo: 1.0 / 3, share: true}, i + 2
			}
		}
	}
	return quantity{lo: 1, article: true}, i + 1
}

// aHundred reads "a hundred", "a hundred and one", "a hundred and twenty".
func (n *numbers) aHundred(toks []token, i int) (quantity, int) {
	scale, j := n.of(toks[i].id).value, i+1
	if joined(toks, j) && n.is(toks, j, andWord) && joined(toks, j+1) {
		if more, end := n.belowHundred(toks, j+1); end > j+1 {
			return quantity{lo: scale + more}, end
		}
	}
	return quantity{lo: scale}, j
}

func (n *numbers) skipOf(toks []token, i int) int {
	if n.is(toks, i, ofWord) && joined(toks, i) {
		return i + 1
	}
	return i
}

// cardinal reads units, tens and units, and what follows an explicit hundred
// or thousand: "one twenty two" stays a list.
func (n *numbers) cardinal(toks []token, i int) (float64, int) {
	v, j := n.belowHundred(toks, i)
	total := 0.0
	for joined(toks, j) && n.is(toks, j, scaleWord) {
		total += v * n.of(toks[j].id).value
		j++
		k := j
		if n.is(toks, k, andWord) && joined(toks, k) {
			k++
		}
		if !joined(toks, k) {
			return total, j
		}
		more, after := n.belowHundred(toks, k)
		if after == k {
			return total, j
		}
		v, j = more, after
		if !n.is(toks, j, scaleWord) {
			return total + v, j
		}
	}
	return total + v, j
}

func (n *numbers) belowHundred(toks []token, i int) (float64, int) {
	if i >= len(toks) {
		return 0, i
	}
	w := n.of(toks[i].id)
	switch w.kind {
	case unitWord:
		return w.value, i + 1
	case tensWord:
		if joined(toks, i+1) {
			if u := n.of(toks[i+1].id); u.kind == unitWord && u.value > 0 && u.value < 10 {
				return w.value + u.value, i + 2
			}
		}
		return w.value, i + 1
	}
	return 0, i
}

// decimals reads what stands behind "point": "five", "two five", or "5" in digits; it ends
// at token j itself where that is no number.
func (n *numbers) decimals(text string, toks []token, v float64, j int) (quantity, int) {
	if joined(toks, j) && toks[j].id == idNumber {
		part, _ := strconv.ParseFloat("0."+text[toks[j].start:toks[j].end], 64)
		return quantity{lo: v + part}, j + 1
	}
	for place := 0.1; n.is(toks, j, unitWord) && n.of(toks[j].id).value < 10 && joined(toks, j); place /= 10 {
		v += n.of(toks[j].id).value * place
		j++
	}
	return quantity{lo: v}, j
}

// withPart adds "and a half", "and three quarters" or "1/2" to a whole number.
func (n *numbers) withPart(text string, toks []token, q quantity, j int) (quantity, int) {
	if !joined(toks, j) {
		return q, j
	}
	if toks[j].id == idFraction || toks[j].id == idVulgar {
		if part, k := n.single(text, toks, j); k > j && part.share {
			q.lo += part.lo
			return q, k
		}
		return q, j
	}
	if !n.is(toks, j, andWord) || !joined(toks, j+1) {
		return q, j
	}
	part, k := n.single(text, toks, j+1)
	if k == j+1 || !part.share {
		return q, j
	}
	// "eight and three quarters full" is a bar and a share; only a plain
	// half, quarter or third joins without a unit to follow.
	q.lo += part.lo
	return q, k
}

// point writes a number with a point for its decimal comma, and without the comma
// that groups thousands: behind that one stand three digits.
func point(s string) string {
	if at := strings.LastIndexByte(s, ','); at >= 0 && len(s)-at != 4 {
		return s[:at] + "." + s[at+1:]
	}
	return strings.ReplaceAll(s, ",", "")
}
