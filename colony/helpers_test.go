package colony

import (
	"strings"
	"time"
)

// visit makes an inspection of hive 3 at noon of a day from leaves written
// path=value.
func visit(on string, leaves ...string) Inspection {
	ins := Inspection{Hive: "3", At: day(on).Time().Add(12 * time.Hour)}
	for _, l := range leaves {
		path, value, _ := strings.Cut(l, "=")
		if err := Set(&ins, path, value); err != nil {
			panic(err)
		}
	}
	return ins
}

// noBrood denies every stage of brood.
var noBrood = []string{"contents.eggs=no", "contents.open_brood=no", "contents.capped_brood=no"}

// judgeQueen weighs the inspections up to a day, as of that day.
func judgeQueen(history []Inspection, today Date) QueenEvidence {
	verdicts := judgeLast(upTo(history, today), today, 0)
	return verdicts[len(verdicts)-1]
}
