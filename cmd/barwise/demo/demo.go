// Package demo carries the notes of an invented apiary: four hives over two
// seasons, in the ways that keepers speak. The name of each file begins with
// the local time of the inspection.
//
// The story, so that answers can be checked against it. Orchard: builds up
// well, swarms on 22 May 2025, its young queen lays by 20 June and is marked
// blue; gives a bar of eggs to pond in May 2026. Pond: the swarm of 22 May
// 2025 with the old green queen, who fails in April 2026; an emergency queen
// from the orchard's eggs lays by 6 June and is marked white. Barn: the red
// queen of 2023 is superseded in June 2025; gives pond a bar of brood in 2026.
// Hedge: stings, until it is requeened on 12 June 2026. Mites rise every
// summer and are counted before and after each treatment: by drop board in
// orchard and pond, by wash in barn, by sugar roll in hedge. Honey comes off
// in July, syrup and fondant go in before and after the winter.
package demo

import "embed"

// Notes holds the folder notes, a file a note.
//
//go:embed notes
var Notes embed.FS

// Recordings holds the folder recordings: one of a synthetic voice that says
// "Barn hive. Twelve degrees and cloudy. Bees on nine bars. Stores heavy. The
// entrance is reduced. Need to feed fondant in January."
//
//go:embed recordings
var Recordings embed.FS
