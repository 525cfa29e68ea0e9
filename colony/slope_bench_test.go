package colony

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"
)

// longHistory is n visits to one hive, two days apart: simulated seasons one
// after another, with the plans, feeds and counts that a talkative keeper
// speaks of and never says done.
func longHistory(n int) []Inspection {
	begin := day("2001-04-01")
	rng := rand.New(rand.NewPCG(7, 7))
	var out []Inspection
	for len(out) < n {
		for _, v := range newSimColony(rng).visits() {
			ins := v.ins
			ins.Hive = "3"
			ins.At = begin.AddDays(2 * len(out)).Time()
			ins.Plans = append(ins.Plans, Task{Do: "straighten"}, Task{Do: "add_bar"}, Task{Do: "split"})
			ins.Actions = append(ins.Actions, Task{Do: "feed"})
			if len(out)%9 == 0 {
				ins.Actions = append(ins.Actions, Task{Do: "treat", What: "thymol"})
			}
			out = append(out, ins)
		}
	}
	return out[:n]
}

// Everything that is worked out for a hive, over histories of growing length.
// The exponent is the slope of time over length, both as logarithms, from the
// shortest history to the longest: 1 is linear, 2 is quadratic.
func BenchmarkAppraiseByLength(b *testing.B) {
	lengths := []int{500, 1000, 2000, 4000, 8000}
	spent := make([]float64, len(lengths))
	for b.Loop() {
		for i, n := range lengths {
			h := longHistory(n)
			begin := time.Now()
			Appraise(h, dayOf(&h[n-1]), DefaultSettings(), nil)
			spent[i] += float64(time.Since(begin).Nanoseconds())
		}
	}
	last := len(lengths) - 1
	for i, n := range lengths {
		b.ReportMetric(spent[i]/float64(b.N*n), fmt.Sprintf("ns/visit-of-%d", n))
	}
	b.ReportMetric(math.Log(spent[last]/spent[0])/math.Log(float64(lengths[last])/float64(lengths[0])), "exponent")
}
