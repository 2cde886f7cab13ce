package layout

import (
	"math"
	"math/cmplx"
)

// # All the waves of the gap
//
// A phase's current makes more than the working wave. Its magnetomotive force goes round the bore in
// steps, one at each slot, and contains every harmonic that the coils let through, also below the
// working wave where coils sit on single teeth. Each of them crosses the same gap and stores energy, so
// each adds inductance:
//
//	L = L1·Σ (kwν/ν)²/kw1²
//
// the sum being over every ν (in working waves, so also below 1) that balanced currents leave. The sum
// need not be evaluated term by term: by Parseval's theorem it is the mean square of the whole
// staircase over that of its working wave, and the staircase is read off the coil list, tooth by tooth.
// For one slot per pole and phase it is π²/9 = 1.097 exactly, for twelve slots and ten poles 1.97 (the
// same sums appear as harmonic leakage, σ = sum − 1, in Pyrhönen, Jokinen and Hrabovcová, Design of
// Rotating Electrical Machines, ch. 4, from memory).
//
// Two sets that both carry current share the gap: each sees the other's field as well as its own, which
// doubles the working wave; harmonics in which they are opposed cancel. Two sets of q = 1 thus make
// 2.046 working waves of one: 1.87 times one set alone.
//
// Equal (zero-sequence) currents in the three phases of a delta, as the third harmonic's are, make the
// other waves, those that balanced currents leave out.
//
// Slots are taken as thin, the gap as uniform and the field as radial: a wave shorter than the gap is
// deep crosses less than computed here.

// GapWaves is the inductance across the gap over that of the working wave of one set. It does not
// depend on turns and circuits.
type GapWaves struct {
	// One is for one set carrying balanced current, All for all sets: 1 and up, except for coils
	// without a working wave.
	One, All float64
	// Alike is for the same current in the three phases of one set; 0 with one phase or two.
	Alike float64
	// AlikeSlots is the share of a slot's leakage that remains when its sides carry zero-sequence
	// currents, 0 to 1: sides wound against each other cancel.
	AlikeSlots float64
}

// WorkingWave is the waves of coils taken to have the working wave alone.
func WorkingWave(sets int) GapWaves { return GapWaves{One: 1, All: float64(sets), AlikeSlots: 1} }

// GapWaves reads them off the coil list; [WorkingWave] for one without a working wave.
func (l *Layout) GapWaves() GapWaves {
	spec := l.Spec()
	working := 2 / math.Pi * l.Factor(1) * l.meanPhaseTurns() / float64(spec.Poles) * 2
	if !(working > 0) {
		return WorkingWave(spec.Sets)
	}
	f := staircases{plan: l, phases: spec.Phases, working: working}
	w := GapWaves{One: f.balanced(1), All: f.balanced(spec.Sets), AlikeSlots: 1}
	if spec.Phases == 3 {
		w.Alike, w.AlikeSlots = f.alike(), f.alikeSlots()
	}
	return w
}

// meanPhaseTurns is the turns in series of the mean phase.
func (l *Layout) meanPhaseTurns() float64 {
	spec := l.Spec()
	turns := 0
	for set := range spec.Sets {
		for phase := range spec.Phases {
			turns += l.PhaseTurns(set, phase)
		}
	}
	return float64(turns) / float64(spec.Sets*spec.Phases*l.Circuits())
}

// staircases is the magnetomotive forces of a coil list; working is the peak of one phase's working
// wave for an ampere, (2/π)·kw1·N/p.
type staircases struct {
	plan    *Layout
	phases  int
	working float64
}

// balanced is for the currents of a rotating field in the first sets. With peaks of one
// ampere the energy of K phases is L·K/4, that of the staircase c·⟨|F|²⟩/2, and the working
// wave of one set of m phases L1 = c·m·F1²/2 (m = 2 for one phase, which works alone), so
//
//	L/L1 = 4·⟨|F|²⟩/(K·m·F1²)
func (s *staircases) balanced(sets int) float64 {
	spec := s.plan.Spec()
	teeth := make([]complex128, spec.Slots)
	for set := range sets {
		for phase := range s.phases {
			turned := s.plan.PhasePhasor(set, phase, 1)
			if turned == 0 {
				continue
			}
			turned /= complex(cmplx.Abs(turned), 0)
			var amps [6]float64
			amps[3*set+phase] = 1
			for i, v := range s.plan.ToothMMF(amps[:]) {
				teeth[i] += complex(v, 0) * turned
			}
		}
	}
	sum := 0.0
	for _, v := range teeth {
		sum += real(v)*real(v) + imag(v)*imag(v)
	}
	together := s.phases
	if s.phases == 1 {
		together = 2
	}
	return 4 * sum / float64(spec.Slots*s.phases*sets*together) / sq(s.working)
}

// alike is for one ampere in each phase of the first set: L0·3/2 = c·⟨F²⟩ and L1 = c·3·F1²/2 give L0/L1
// = 4·⟨F²⟩/(9·F1²).
func (s *staircases) alike() float64 {
	return 4 * meanSquare(s.plan.ToothMMF([]float64{1, 1, 1})) / (9 * sq(s.working))
}

// alikeSlots is the square of what the slots then carry over that of sides that all agree.
func (s *staircases) alikeSlots() float64 {
	carried := s.plan.SlotAmpTurns([]float64{1, 1, 1})
	agreed := make([]float64, len(carried))
	for _, c := range s.plan.Coils() {
		if c.Set == 0 {
			turns := float64(c.Turns) / float64(s.plan.Circuits())
			agreed[c.Start-1] += turns
			agreed[c.Finish-1] += turns
		}
	}
	return meanSquare(carried) / meanSquare(agreed)
}

func sq(v float64) float64 { return v * v }

func meanSquare(list []float64) float64 {
	sum := 0.0
	for _, v := range list {
		sum += sq(v)
	}
	return sum / float64(len(list))
}
