package layout

import (
	"math"
	"math/cmplx"
)

// PhaseBalance compares one phase with the mean of all.
type PhaseBalance struct {
	Set, Phase int
	Name       string // U, or 1U when there are two sets
	// EffectiveTurns is the size of the phase's fundamental phasor.
	EffectiveTurns float64
	// AngleDeg is its electrical angle from phase U of set 1, 0 to below 360.
	AngleDeg float64
	// SizePercent is the deviation of EffectiveTurns from the mean of the phases, in per cent.
	SizePercent float64
	// AngleErrorDeg is the deviation from its nominal angle (V 120 degrees on from U, set 2 30 degrees
	// on from set 1), once the whole star is rotated to the best fit.
	AngleErrorDeg float64
}

// Balance is how equal the phases and their circuits are, at the fundamental.
type Balance struct {
	Phases []PhaseBalance
	// WorstSizePercent and WorstAngleDeg are the largest absolute values of the phases'.
	WorstSizePercent, WorstAngleDeg float64
	// WorstCircuitPercent is the largest deviation of a circuit's phasor from the mean of its phase's
	// circuits, over that mean: it drives a circulating current in the phase even with nothing
	// connected.
	WorstCircuitPercent float64
	// Equal is true when all three are nil to within rounding.
	Equal bool
}

// Deviations that count as none: far above rounding, far below any real fault.
const equalPercent = 1e-6

// Balance compares the phases' phasors, and the circuits within each phase. A
// phase with no voltage at all is 100 % down; its angle is left out.
func (l *Layout) Balance() Balance {
	var b Balance
	var mean float64
	var turned complex128
	ideal := l.spec.phaseLag
	n := float64(l.spec.Sets * l.spec.Phases)
	for set := range l.spec.Sets {
		for phase := range l.spec.Phases {
			v := l.PhasePhasor(set, phase, 1)
			mean += cmplx.Abs(v) / n
			turned += v * cmplx.Rect(1, -ideal(set, phase))
		}
	}
	zero := cmplx.Phase(l.PhasePhasor(0, 0, 1))
	best := cmplx.Phase(turned)
	for set := range l.spec.Sets {
		for phase := range l.spec.Phases {
			pb := PhaseBalance{Set: set, Phase: phase, Name: l.PhaseName(set, phase)}
			v := l.PhasePhasor(set, phase, 1)
			pb.EffectiveTurns = cmplx.Abs(v)
			if mean > 0 {
				pb.SizePercent = 100 * (pb.EffectiveTurns - mean) / mean
			}
			if pb.EffectiveTurns > 1e-9*mean {
				pb.AngleDeg = degrees(cmplx.Phase(v) - zero)
				pb.AngleErrorDeg = math.Remainder(degrees(cmplx.Phase(v)-best-ideal(set, phase)), 360)
			}
			b.Phases = append(b.Phases, pb)
			b.WorstSizePercent = max(b.WorstSizePercent, math.Abs(pb.SizePercent))
			b.WorstAngleDeg = max(b.WorstAngleDeg, math.Abs(pb.AngleErrorDeg))
			b.WorstCircuitPercent = max(b.WorstCircuitPercent, l.circuitDifference(set, phase))
		}
	}
	b.Equal = mean > 0 && b.WorstSizePercent < equalPercent && b.WorstAngleDeg < equalPercent && b.WorstCircuitPercent < equalPercent
	return b
}

// degrees converts radians to 0 to below 360, without rounding noise at the seam.
func degrees(rad float64) float64 {
	d := math.Mod(rad*180/math.Pi+720, 360)
	if d > 360-1e-9 {
		return 0
	}
	return d
}

// circuitDifference is the largest difference of a circuit from the mean of its
// phase, in percent of that mean.
func (l *Layout) circuitDifference(set, phase int) float64 {
	if l.circuits == 1 {
		return 0
	}
	var mean complex128
	for c := 1; c <= l.circuits; c++ {
		mean += l.CircuitPhasor(set, phase, c, 1) / complex(float64(l.circuits), 0)
	}
	size := cmplx.Abs(mean)
	if size == 0 {
		return 0
	}
	worst := 0.0
	for c := 1; c <= l.circuits; c++ {
		worst = max(worst, 100*cmplx.Abs(l.CircuitPhasor(set, phase, c, 1)-mean)/size)
	}
	return worst
}
