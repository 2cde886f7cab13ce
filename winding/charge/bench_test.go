package charge

import "testing"

// BenchmarkSolve cycles through the reference cases: every regime, star and delta.
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

// BenchmarkSolver is a search: each case at speeds and temperatures that converge on it.
func BenchmarkSolver(b *testing.B) {
	var near around
	for _, r := range readTable(b, "rectifier_cases.csv") {
		near.add(r.fullCircuit(b))
	}
	near.solve(b)
}

// around are circuits with, for each, some that close in on it.
type around struct {
	sources []Source
	loads   []Load
}

func (a *around) add(s Source, l Load) {
	for _, off := range [...]float64{1.02, 0.99, 1.003, 0.999, 1.0002, 1} {
		near := s
		near.EMFPeak, near.Hertz, near.Ohms = s.EMFPeak*off, s.Hertz*off, s.Ohms*(2-off)
		a.sources, a.loads = append(a.sources, near), append(a.loads, l)
	}
}

// solve times them from nothing and each from the one before.
func (a *around) solve(b *testing.B) {
	for _, way := range [...]string{"cold", "warm"} {
		b.Run(way, func(b *testing.B) {
			b.ReportAllocs()
			var near Solver
			for n := range b.N {
				if way == "cold" {
					near = Solver{}
				}
				k := n % len(a.sources)
				if _, err := near.Solve(a.sources[k], a.loads[k]); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
