package index

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// The columns that have a leaf of their own. What else a record says stands in
// the column of its list, or in "other", as path=value; so nothing is left out
// but the words, the evidence and the history, which the JSON Lines hold.
var (
	inspectionPaths = append(prefixed("contents.", colony.Keys("contents")),
		"brood_pattern", "queen.seen", "queen.bar", "queen.marked", "queen.colour", "queen.worn",
		"queen.clipped", "queen.virgin", "queen.year", "queenright", "drones", "temper.score", "temper.runny", "temper.stings",
		"strength.word", "strength.bars_of_bees", "stores.word", "mites.method", "mites.count", "mites.days", "mites.bees",
		"mites.cells", "follower.bar", "bars_total", "feeder", "floor", "entrance", "weight_kg",
		"weather.temp_c", "weather.sky", "weather.wind")
	inspectionLists = []string{"queen_cells", "signs", "incoming", "actions", "plans", "earlier"}

	barPaths = append(barContents(), "comb.drawn", "comb.size", "comb.width_mm", "comb.depth_mm", "comb.length_mm",
		"comb.new", "comb.old", "comb.straight", "comb.cross", "comb.attached", "comb.broken", "placed", "festooning")
	barLists = []string{"queen_cells"}
)

func prefixed(prefix string, names []string) []string {
	var list []string
	for _, name := range names {
		list = append(list, prefix+name)
	}
	return list
}

func barContents() []string {
	var list []string
	for _, what := range colony.Keys("contents") {
		list = append(list, what, what+".cover")
	}
	return list
}

// ExportInspectionsCSV writes a row for each inspection that is confirmed or
// waits, the oldest first, after a header row; RFC 4180, with CRLF. A text that
// a spreadsheet would run as a formula gets an apostrophe before it.
func (s *Store) ExportInspectionsCSV(w io.Writer) error {
	header := slices.Concat([]string{"record", "hive", "date", "at", "state"}, inspectionPaths, inspectionLists,
		[]string{"other", "remarks", "check", "note"})
	return s.exportCSV(w, header, func(r *colony.Record, ins *colony.Inspection) [][]string {
		cells := cellsOf(colony.Leaves(ins), inspectionPaths, inspectionLists, func(path string) (string, bool) {
			return path, path != "hive" && path != "at" && !strings.HasPrefix(path, "bars.")
		})
		at := ""
		if !ins.At.IsZero() {
			at = ins.At.Format(time.RFC3339)
		}
		var check []string
		for _, c := range ins.Check {
			check = append(check, c.Path+": "+c.Why)
		}
		return [][]string{slices.Concat([]string{r.ID, ins.Hive, day(ins), at, string(r.State)}, cells,
			[]string{strings.Join(ins.Remarks, "; "), strings.Join(check, "; "), r.NoteHash})}
	})
}

// ExportBarsCSV writes a row for each bar of these inspections, in the same
// form.
func (s *Store) ExportBarsCSV(w io.Writer) error {
	header := slices.Concat([]string{"record", "hive", "date", "state", "bar"}, barPaths, barLists, []string{"other"})
	return s.exportCSV(w, header, func(r *colony.Record, ins *colony.Inspection) (rows [][]string) {
		leaves := colony.Leaves(ins)
		for _, bar := range ins.Bars {
			number := strconv.Itoa(bar.Bar)
			cells := cellsOf(leaves, barPaths, barLists, func(path string) (string, bool) {
				n, rest, ok := barPath(path)
				return rest, ok && n == number
			})
			rows = append(rows, slices.Concat([]string{r.ID, ins.Hive, day(ins), string(r.State), number}, cells))
		}
		return rows
	})
}

func day(ins *colony.Inspection) string {
	if ins.At.IsZero() {
		return ""
	}
	return colony.DateOf(ins.At).String()
}

// cellsOf fills the columns of single leaves, then those of lists, then
// "other". Relative tells a leaf's path within the row, and whether it is part
// of it at all.
func cellsOf(leaves []colony.Leaf, single, lists []string, relative func(string) (string, bool)) []string {
	cells := make([]string, len(single)+len(lists)+1)
	for _, leaf := range leaves {
		path, ok := relative(leaf.Path)
		if !ok {
			continue
		}
		if i := slices.Index(single, path); i >= 0 {
			cells[i] = leaf.Value
			continue
		}
		list, rest, _ := strings.Cut(path, ".")
		column, said := len(cells)-1, path+"="+leaf.Value
		if i := slices.Index(lists, list); i >= 0 {
			column, said = len(single)+i, rest+"="+leaf.Value
		}
		if cells[column] != "" {
			cells[column] += "; "
		}
		cells[column] += said
	}
	return cells
}

func (s *Store) exportCSV(w io.Writer, header []string, rows func(*colony.Record, *colony.Inspection) [][]string) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	if err := out.Write(header); err != nil {
		return err
	}
	err := s.view(func(tx *bolt.Tx) error {
		c := tx.Bucket(bucketByTime).Cursor()
		for k, _ := c.First(); k != nil; k, _ = c.Next() {
			r, err := getRecord(tx, keyID(k, nil))
			if err != nil {
				return err
			}
			if r.State == colony.SetAside {
				continue
			}
			ins := r.Inspection()
			for _, row := range rows(&r, &ins) {
				for i := range row {
					row[i] = harmless(row[i])
				}
				if err := out.Write(row); err != nil {
					return err
				}
			}
		}
		return nil
	})
	out.Flush()
	if err == nil {
		err = out.Error()
	}
	if err != nil {
		return fmt.Errorf("export: %w", err)
	}
	return nil
}

// harmless keeps a spreadsheet from running a text as a formula: one that
// begins with =, +, -, @, a tab or a carriage return, and is no number, gets an
// apostrophe before it (OWASP, "CSV Injection").
func harmless(text string) string {
	if text == "" || !strings.ContainsRune("=+-@\t\r", rune(text[0])) {
		return text
	}
	if _, err := strconv.ParseFloat(text, 64); err == nil {
		return text
	}
	return "'" + text
}
