package layout

import (
	"math"
	"math/cmplx"
)

// Harmonics are the orders for which a winding is described: the fundamental, and the odd ones that are
// strongest in a rotor's field.
var Harmonics = [6]int{1, 3, 5, 7, 11, 13}

// unit is e^(j·2π·n/m): exact on the axes, and for any size of n.
func unit(n, m int) complex128 {
	n = wrap(n, m)
	sin, cos := math.Sincos(2 * math.Pi * float64(n) / float64(m))
	switch {
	case 2*n == m:
		return -1
	case 4*n == m:
		return 1i
	case 4*n == 3*m:
		return -1i
	}
	return complex(cos, sin)
}

// side is the phasor of a slot at a harmonic, of size 1.
func (l *Layout) side(slot, harmonic int) complex128 {
	q := l.spec.Slots
	step := (harmonic % q) * (l.spec.pairs() % q) % q
	return unit(step*(slot-1), q)
}

// effective is a coil's turns as wound, as a phasor: turns·sense·(start-finish)/2.
func (l *Layout) effective(c *Coil, harmonic int) complex128 {
	half := 0.5 * float64(c.Turns*c.Sense)
	return complex(half, 0) * (l.side(c.Start, harmonic) - l.side(c.Finish, harmonic))
}

// CoilPhasor is the effective turns of one coil of the layout, as wound, at an electrical harmonic: its
// part of [Layout.CircuitPhasor].
func (l *Layout) CoilPhasor(c Coil, harmonic int) complex128 { return l.effective(&c, harmonic) }

// Factor is the winding factor of an electrical harmonic, 0 to 1, from the coil list: |Σ
// turns·sign·e^(jναk)| over one phase's coil sides, over the turns of all those sides. Harmonic 1 makes
// the EMF; the sign of the harmonic does not matter, harmonic 0 is 0. In a list as found it is the mean
// over the phases, weighted by their turns. It does not depend on circuits or connection. Source:
// Pyrhönen et al., Design of Rotating Electrical Machines, ch. 2, from memory (the definition by slot
// phasors).
func (l *Layout) Factor(harmonic int) float64 {
	sets, phases := 1, 1
	if l.found {
		sets, phases = l.spec.Sets, l.spec.Phases
	}
	var effective, turns float64
	for set := range sets {
		for phase := range phases {
			sum, n := l.sum(set, phase, 0, harmonic)
			effective += cmplx.Abs(sum)
			turns += float64(n)
		}
	}
	if turns == 0 {
		return 0
	}
	return min(effective/turns, 1)
}

// sum adds the effective turns and the turns of a phase, of one circuit or, for
// circuit 0, of all.
func (l *Layout) sum(set, phase, circuit, harmonic int) (effective complex128, turns int) {
	for i := range l.coils {
		c := &l.coils[i]
		if c.Set != set || c.Phase != phase || (circuit != 0 && c.Circuit != circuit) {
			continue
		}
		effective += l.effective(c, harmonic)
		turns += c.Turns
	}
	return effective, turns
}

// PitchFactor is |sin(ν·π·p·y/Q)|, the effect of the nominal span on a harmonic. For nested coils it is
// that of the equal coils with the same sides.
func (l *Layout) PitchFactor(harmonic int) float64 {
	q := l.spec.Slots
	n := (harmonic % (2 * q)) * (l.spec.pairs() * l.spec.Span % (2 * q)) % (2 * q)
	return math.Abs(imag(unit(n, 2*q)))
}

// BeltFactor is the effect on a harmonic of spreading a phase over several slots: the magnitude of the
// sum of the start sides alone over the turns. For coils of equal turns, Factor is PitchFactor times
// BeltFactor.
func (l *Layout) BeltFactor(harmonic int) float64 {
	var sum complex128
	turns := 0
	for i := range l.coils {
		c := &l.coils[i]
		if c.Set != 0 || c.Phase != 0 {
			continue
		}
		sum += complex(float64(c.Turns*c.Sense), 0) * l.side(c.Start, harmonic)
		turns += c.Turns
	}
	if turns == 0 {
		return 0
	}
	return min(cmplx.Abs(sum)/float64(turns), 1)
}

// CircuitPhasor is the effective turns of one circuit (from 1) of a phase: its coils in series, as a
// phasor at the electrical harmonic. Its magnitude times √2·π·f·Φ is the rms EMF. Zero when there is no
// such circuit.
func (l *Layout) CircuitPhasor(set, phase, circuit, harmonic int) complex128 {
	if circuit < 1 {
		return 0
	}
	sum, _ := l.sum(set, phase, circuit, harmonic)
	return sum
}

// PhasePhasor is the effective turns of a phase between its leads with nothing
// connected. With several circuits that is their mean weighted by conductance,
// taken as 1/turns (Millman's theorem; all of one wire): for equal circuits, simply
// that of any of them. A circuit of no turns shorts the phase, which gives 0.
func (l *Layout) PhasePhasor(set, phase, harmonic int) complex128 {
	if l.circuits == 1 {
		return l.CircuitPhasor(set, phase, 1, harmonic)
	}
	var weighted complex128
	var weight float64
	for circuit := 1; circuit <= l.circuits; circuit++ {
		if !l.hasCircuit(set, phase, circuit) {
			continue
		}
		sum, turns := l.sum(set, phase, circuit, harmonic)
		if turns == 0 {
			return 0
		}
		weighted += sum / complex(float64(turns), 0)
		weight += 1 / float64(turns)
	}
	if weight == 0 {
		return 0
	}
	return weighted / complex(weight, 0)
}

// hasCircuit reports whether any coil is in that circuit.
func (l *Layout) hasCircuit(set, phase, circuit int) bool {
	for i := range l.coils {
		c := &l.coils[i]
		if c.Set == set && c.Phase == phase && c.Circuit == circuit {
			return true
		}
	}
	return false
}

// CircuitTurns is the sum of the turns in series in one circuit (from 1) of a phase, which its ohms
// depend on.
func (l *Layout) CircuitTurns(set, phase, circuit int) int {
	if circuit < 1 {
		return 0
	}
	_, turns := l.sum(set, phase, circuit, 1)
	return turns
}

// PhaseTurns is the sum of the turns of all circuits of a phase, which its wire depends on.
func (l *Layout) PhaseTurns(set, phase int) int {
	_, turns := l.sum(set, phase, 0, 1)
	return turns
}
