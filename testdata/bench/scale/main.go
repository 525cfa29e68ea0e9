// Command scale writes a corpus of notes in the demo's ways of speaking: the
// case of an association, 200 keepers with five hives each. The same seed gives
// the same notes. Beside a folder of files, one a note, it writes the whole as
// one table (hive, day, text, tabs between) for other programs.
//
//	go run ./testdata/bench/scale -notes 100000 -out DIR
package main

import (
	"bufio"
	"flag"
	"fmt"
	"log"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"time"
)

const (
	hives        = 1000 // of 200 keepers
	daysBetween  = 9    // visits of a hive, about
	firstVisitOn = "2020-03-15"
)

func main() {
	notes := flag.Int("notes", 100_000, "how many notes, one inspection each")
	seed := flag.Uint64("seed", 1, "of chance")
	out := flag.String("out", "", "folder to write; it must not be there")
	flag.Parse()
	if err := write(*out, *notes, *seed); err != nil {
		log.Fatal(err)
	}
}

func write(out string, notes int, seed uint64) error {
	if out == "" {
		return fmt.Errorf("-out names no folder")
	}
	if err := os.Mkdir(out, 0o700); err != nil {
		return err
	}
	table, err := os.Create(filepath.Join(out, "notes.tsv"))
	if err != nil {
		return err
	}
	rows := bufio.NewWriter(table)
	start, err := time.Parse(time.DateOnly, firstVisitOn)
	if err != nil {
		return err
	}
	r := rand.New(rand.NewPCG(seed, 1))
	size := 0
	for i := range notes {
		hive, visit := i%hives+1, i/hives
		at := start.AddDate(0, 0, visit*daysBetween+r.IntN(5)).Add(time.Duration(10+r.IntN(9)) * time.Hour).Add(time.Duration(r.IntN(60)) * time.Minute)
		text := speakers[r.IntN(len(speakers))](r, hive, at)
		size += len(text)
		folder := filepath.Join(out, "notes", fmt.Sprintf("keeper%03d", (hive-1)/5+1))
		if err := os.MkdirAll(folder, 0o700); err != nil {
			return err
		}
		name := fmt.Sprintf("%s-hive-%d.txt", at.Format("2006-01-02-1504"), hive)
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600); err != nil {
			return err
		}
		if _, err := fmt.Fprintf(rows, "%d\t%s\t%s\n", hive, at.Format(time.DateOnly), strings.ReplaceAll(text, "\n", " ")); err != nil {
			return err
		}
	}
	if err := rows.Flush(); err != nil {
		return err
	}
	fmt.Printf("%d notes, %d bytes of text\n", notes, size)
	return table.Close()
}
