package colony

import (
	"math/rand/v2"
	"testing"
)

// benchHistory is a simulated season of about twenty visits.
func benchHistory() []Inspection {
	var out []Inspection
	for _, v := range newSimColony(rand.New(rand.NewPCG(4, 4))).visits() {
		out = append(out, v.ins)
	}
	return out
}

func BenchmarkJudgeQueen(b *testing.B) {
	h := benchHistory()
	today := dayOf(&h[len(h)-1])
	b.ReportAllocs()
	for b.Loop() {
		judgeQueen(h, today)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(h)), "ns/visit")
}

func BenchmarkAppraise(b *testing.B) {
	h := benchHistory()
	today := dayOf(&h[len(h)-1])
	b.ReportAllocs()
	for b.Loop() {
		Appraise(h, today, DefaultSettings(), nil)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(h)), "ns/visit")
}
