package tui

// sampleNotes are invented: two hives over a few days, with things to check.
var sampleNotes = []string{
	"Hive 3. Calm. Bar 1 honey both sides. Bar 2 honey, pollen. Bar 3 eggs, larvae. Bar 4 sealed brood both sides. Bar 5 sealed brood half, larvae. Bar 6 eggs, queen on this one. Bar 7 nectar. Bar 8 empty.",
	"Hive 3, a bit windy up on the terrace so I was quick. Bar 1 honey both. Bar 2 honey and pollen. Bar 3 pollen, maybe eggs. Bar 4 larvae, eggs. Bar 5 sealed brewed both sides and it is a lovely comb, straight as a die. Bar 6 sealed half, larvae. Bar 7 eggs and there is the queen. Bar 8 nectar. Bar 9 empty. Gave them syrup. The neighbour's cat watched the whole time and got stung for it.",
	"Hive 5. Bar 1 honey. Bar 2 sealed brood both. Bar 3 larvae, no eggs. Calm.",
	"Hive 7. Bar 1 honey, bar 2 pollen, bar 3 eggs, bar 4 larvae. Calm bees.",
	"Hive orchard. Bar 2 maybe eggs but no larvae. Bar 3 maybe nectar.",
}
