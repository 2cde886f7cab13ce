package wound

import (
	"fmt"
	"math/cmplx"

	"slotwright/winding/layout"
)

// # A coil turned round where a current circulates
//
// In a delta, and among the parallel circuits of a phase, a reversed coil drives a current round the
// loop, also with nothing connected, and the volts between leads are what that current leaves. Ohms stay
// as they are. Where a phase lacks a part x of its phasor, the loop of a delta has −x·E, and each phase
// takes the share of it that it has of the loop's impedance:
//
//	V = E' + ζ·x·E        ζ = 1/3 each where the three are alike
//
// so that the pair across it has |1 − 2x/3| and the others √(1 − x/3 + x²/9). Of a circuits in parallel,
// of which one lacks x, the phase lacks ζ·x, where ζ = 1/a for circuits that are alike (Millman's
// theorem). A phase's volts between leads then follow as for any other lack (onephase.go).
//
// Shares are alike as far as ohms decide, which are: at a low speed. The reactances are not, since the
// reversed coil links the others in the opposite sense. With a share ζ∞ where only they count, and t the
// reactance of the loop over its ohms,
//
//	ζ = ζ₀ + (ζ∞ − ζ₀)·jt/(1 + jt)
//
// a half circle in the complex plane. ζ∞ depends on iron, mouth and gap. Over windings of 9 to 48 slots,
// with 0.1 to 1 of the reactance leakage, it is 0.6 to 1.15 of ζ₀, and down to 0.3 of it where a phase
// has few coils; so patterns along such half circles are compared, and the nearest counts. That is enough to tell the phase and how many coils,
// and not which coil: the difference between two positions is no more than that between two ζ. Checked
// against the network of all coils in loops_test.go.

// shares are the values of ζ over ζ₀ that are compared for a loop of phases or circuits of n coils: along
// half circles to each ζ∞/ζ₀, at each t. The shaft may have turned either way, which mirrors them.
func shares(n int) []complex128 {
	list, far := []complex128{1}, []float64{0.6, 0.7, 0.8, 0.9, 1.15}
	if n <= fewCoils {
		far = append(far, 0.3, 0.45)
	}
	for _, r := range far {
		for _, t := range [...]float64{0.25, 0.5, 1, 2, 4, 1e6} {
			jt := complex(0, t)
			to := 1 + complex(r-1, 0)*jt/(1+jt)
			list = append(list, to, cmplx.Conj(to))
		}
	}
	return list
}

// fewCoils is the number of coils up to which one of them changes the shares most.
const fewCoils = 4

// turnedInALoop: a coil, or in a delta two or a phase, turned round where that drives a current.
func (f *faultsOf) turnedInALoop() {
	delta, a, n := f.Trial.Connection == layout.Delta, f.Circuits, f.perCircuit()
	if f.Phases != 3 || f.Layout == nil || len(f.Trial.CoilTurns) > 0 || !delta && a == 1 {
		return
	}
	list := f.classes(0)
	if a > 1 || n > 1 {
		what := fmt.Sprintf("one coil of %d", n)
		switch {
		case a > 1 && n == 1:
			what = fmt.Sprintf("one of the %d coils in parallel", a)
		case a > 1:
			what += fmt.Sprintf(" of one of the %d circuits", a)
		}
		for _, c := range list { // a part of all coils of the phase: of one circuit it is a times that
			f.inALoop(complex(2*float64(a), 0)*c.part, what)
		}
	}
	for i, c := range list {
		for k, d := range list[:i+1] {
			if delta && a == 1 && n > 4 && (i != k || len(c.starts) > 1) {
				f.inALoop(2*(c.part+d.part), fmt.Sprintf("two coils of %d", n))
			}
		}
	}
	if delta {
		f.inALoop(2*complex(float64(a), 0), "all")
	}
}

// inALoop adds the fault that a circuit lacks a part of its phasor.
func (f *faultsOf) inALoop(lacks complex128, what string) {
	delta, a := f.Trial.Connection == layout.Delta, complex(float64(f.Circuits), 0)
	volts := func(phase int, share complex128) [3]float64 {
		if delta {
			return f.eachOfDelta(phase, lacks/a, share/3)
		}
		return f.eachVolts(phase, lacks*share/a)
	}
	told, generic := what+" of phase {phase} turned round: ", what+" turned round in one phase"
	if what == "all" {
		told, generic = "phase {phase} turned round: ", "one phase of the delta turned round"
	}
	if delta {
		told += "{across} reads low"
	} else {
		told += "{pairs}"
	}
	if what != "all" {
		told += "; which coil, they do not tell: part the " + map[bool]string{true: "delta", false: "circuits"}[delta] + " and read each"
	}
	f.inOnePhase(func(phase int) onePhase {
		one := onePhase{phase: phase, ohms: pairsAlike, volts: volts(phase, 1), told: told}
		for _, s := range shares(f.perCircuit()) {
			one.around = append(one.around, volts(phase, s))
		}
		return one
	}, generic)
}

// eachOfDelta is the pairs of a delta where a phase lacks a part of its phasor, relative to a sound one;
// share is that of each other phase in the loop's impedance.
func (f *faultsOf) eachOfDelta(phase int, lacks, share complex128) (each [3]float64) {
	loop := -lacks * f.Layout.CircuitPhasor(0, phase, 1, 1)
	for i := range each {
		was := f.Layout.CircuitPhasor(0, i, 1, 1)
		volts := was - share*loop
		if i == phase {
			volts = was + loop - (1-2*share)*loop
		}
		each[i] = cmplx.Abs(volts) / cmplx.Abs(was)
	}
	return each
}
