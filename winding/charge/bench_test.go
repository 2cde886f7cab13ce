package charge

import "testing"

// BenchmarkSolve goes round the reference cases: every regime, star and delta.
func BenchmarkSolve(b *testing.B) {
	var sources []Source
	var loads []Load
	for _, r := range readTable(b, "rectifier_cases.csv") {
		s, l := r.fullCircuit(b)
		sources, loads = append(sources, s), append(loads, l)
	}
	b.ReportAllocs()
	b.ResetTimer()
	for n := range b.N {
		k := n % len(sources)
		if _, err := Solve(sources[k], loads[k]); err != nil {
			b.Fatal(err)
		}
	}
}
