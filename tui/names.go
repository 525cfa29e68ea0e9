package tui

import (
	"math"
	"strconv"
	"strings"
	"time"

	"barwise/colony"
)

// plainWords are the parts of a path whose everyday name is not the part
// itself with its underscores taken out.
var plainWords = map[string]string{
	"contents":      "colony",
	"any":           "", // queen cells of which no stage was said
	"bars_total":    "bars in use",
	"bars_of_bees":  "bars of bees",
	"temp_c":        "temperature",
	"weight_kg":     "weight",
	"actions":       "done",
	"plans":         "to do",
	"width_mm":      "width",
	"depth_mm":      "depth",
	"length_mm":     "length",
	"at":            "when",
	"bars_max":      "at most",
	"count_max":     "at most",
	"follower":      "follower board",
	"brood_pattern": "laying pattern",
	"incoming":      "coming in",
}

// plainWord names one part of a path for a person.
func plainWord(part string) string {
	word, nth, again := strings.Cut(part, "#")
	if name, ok := plainWords[word]; ok {
		word = name
	} else {
		word = strings.ReplaceAll(word, "_", " ")
	}
	if again {
		word += " (" + nth + ")"
	}
	return word
}

// groupOf is the heading a leaf stands under: its bar, or its topic.
func groupOf(path string) string {
	if bar, _, ok := splitBar(path); ok {
		return "bar " + strconv.Itoa(bar)
	}
	first, _, _ := strings.Cut(path, ".")
	return plainWord(first)
}

// itemOf is the thing that a leaf is said of: for bars.4.eggs.cover it is
// bars.4.eggs, for queen.seen it is queen.
func itemOf(path string) string {
	if isItem(path) {
		return path
	}
	if up := parent(path); up != "" {
		return up
	}
	return path
}

// isItem reports whether the path names a thing whose presence is a leaf.
func isItem(path string) bool {
	parts := strings.Split(path, ".")
	n := len(parts)
	if parts[0] == "bars" {
		parts, n = parts[min(2, n):], n-2
		if n == 1 {
			return contentKeys[parts[0]]
		}
	}
	return n == 2 && keyedLists[parts[0]]
}

var (
	contentKeys = setOf(colony.Keys("contents"))
	keyedLists  = setOf(listLeaves)
)

func setOf(words []string) map[string]bool {
	set := make(map[string]bool, len(words))
	for _, w := range words {
		set[w] = true
	}
	return set
}

// itemName names the thing without its group: "capped brood", "feed", or ""
// where the group's name says it all.
func itemName(item string) string {
	if _, rest, ok := splitBar(item); ok {
		return words(rest)
	}
	_, rest, _ := strings.Cut(item, ".")
	return words(rest)
}

// fieldName names the leaf within its item; "" for the item's own presence.
func fieldName(path string) string {
	if isItem(path) || itemOf(path) == path {
		return ""
	}
	return plainWord(path[strings.LastIndexByte(path, '.')+1:])
}

// fullName names the leaf in one breath: "bar 4 capped brood cover".
func fullName(path string) string {
	if path == noteText {
		return "the note"
	}
	if bar, rest, ok := splitBar(path); ok {
		return strings.TrimSpace("bar " + strconv.Itoa(bar) + " " + words(rest))
	}
	return words(path)
}

func words(path string) string {
	if path == "" {
		return ""
	}
	parts := strings.Split(path, ".")
	for i, p := range parts {
		parts[i] = plainWord(p)
	}
	return strings.Join(strings.Fields(strings.Join(parts, " ")), " ")
}

// showValue writes a value the way a person says it.
func showValue(path, value string) string {
	last := path[strings.LastIndexByte(path, '.')+1:]
	switch last {
	case "cover", "drawn":
		if share, err := strconv.ParseFloat(value, 64); err == nil {
			return strconv.FormatFloat(math.Round(share*1000)/10, 'f', -1, 64) + " %"
		}
	case "temp_c":
		return value + " °C"
	case "width_mm", "depth_mm", "length_mm":
		return value + " mm"
	case "weight_kg":
		return value + " kg"
	case "at":
		if t, err := time.Parse(time.RFC3339, value); err == nil {
			return showTime(t)
		}
	case "due", "on", "placed":
		if d, err := colony.ParseDate(value); err == nil {
			return showDay(d)
		}
	case "score":
		if names := [...]string{"stinging", "touchy", "acceptable", "gentle"}; len(value) == 1 && value >= "1" && value <= "4" {
			return value + " (" + names[value[0]-'1'] + ")"
		}
	}
	return clean(value)
}

func showTime(t time.Time) string {
	if t.IsZero() {
		return "no date"
	}
	return t.Format("Mon 2 Jan 2006, 15:04")
}

func showDay(d colony.Date) string {
	if d.IsZero() {
		return "no date"
	}
	return d.Time().Format("Mon 2 Jan 2006")
}
