package winding

import (
	"math"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// machine is the iron as counted and measured, with its defaults, and the simple ratios that its number
// of phases sets.
type machine struct {
	job.Machine
	phases, sets int
	// quadrature says that the two sets of one phase are the two phases of one winding.
	quadrature bool
}

// laidOut is phases and sets as the layout counts them.
func (m *machine) laidOut() (phases, sets int) {
	if m.quadrature {
		return 2, 1
	}
	return m.phases, m.sets
}

// newMachine fills in phases and sets: three phases in one set when nothing is given. Two phases are 90
// degrees apart, each with a bridge of its own, and do not link each other's flux: they are laid out as
// two sets of one phase, and charge as one circuit of two.
func newMachine(m job.Machine) machine {
	made := machine{Machine: m, phases: int(m.Phases.Or(3)), sets: int(m.Sets.Or(1))}
	switch made.phases {
	case 1:
		made.sets = 1
	case 2:
		made.phases, made.sets, made.quadrature = 1, 2, true
	}
	return made
}

// charging is the number of phases in one solution of the rectifier, and how many times that counts:
// sets of three phases are solved one by one, the two phases of a two-phase winding together.
func (m *machine) charging() (phases int, times float64) {
	if m.quadrature {
		return 2, 1
	}
	return m.phases, float64(m.sets)
}

// outward is the direction of the slots from the gap: 1 away from the shaft, as usual, -1 towards it
// where the rotor turns round the stator.
func (m *machine) outward() float64 {
	if m.Rotor == job.RotorOutside {
		return -1
	}
	return 1
}

// insideMM is the inside diameter of the stator's wound ring, mm: the bore, or, with the rotor outside,
// what is left of it four slot depths in, but always positive.
func (m *machine) insideMM(depthMM float64) float64 {
	if m.outward() > 0 {
		return m.BoreMM.Value
	}
	return max(m.BoreMM.Value-4*depthMM, m.BoreMM.Value/10)
}

// windings is the number of phase windings in all sets together.
func (m *machine) windings() float64 { return float64(m.phases * m.sets) }

// hertz is the frequency at a speed, f = p·n/60.
func (m *machine) hertz(rpm quantity.Figure) quantity.Figure {
	return rpm.With(m.Poles.Figure("needs the poles"), func(n, poles float64) float64 { return n * poles / 120 })
}

// linePerPhase is volts between leads over volts of a phase.
func (m *machine) linePerPhase(conn layout.Connection) float64 { return conn.LinePerPhase(m.phases) }

// leadPerPhase is ohms between leads over ohms of a phase.
func (m *machine) leadPerPhase(conn layout.Connection) float64 { return conn.LeadPerPhase(m.phases) }

// phasePerDC is rms amps in a winding for one ampere DC through the bridge, with block-shaped currents:
// star √(2/3), delta that over √3; one phase has a sine's 1.11. A sine in star makes 0.741, pulses just
// above cut-in make more: limits use this value until the bridge is solved (formfactor.go,
// plateform.go). Source: the three-phase bridge with smooth current, any power electronics text.
func (m *machine) phasePerDC(conn layout.Connection) float64 {
	switch {
	case m.phases == 1:
		return math.Pi / (2 * math.Sqrt2)
	case conn == layout.Delta:
		return math.Sqrt(2) / 3
	default:
		return math.Sqrt(2.0 / 3)
	}
}

// phaseOfLine is volts of a phase from volts between leads.
func (m *machine) phaseOfLine(conn layout.Connection) float64 { return 1 / m.linePerPhase(conn) }

// polePitchMM is τp = πD/2p.
func (m *machine) polePitchMM() quantity.Figure {
	if !m.BoreMM.Given() || !m.Poles.Given() {
		return quantity.Missing("needs the bore and the poles")
	}
	return quantity.Of(field.PolePitchMM(m.BoreMM.Value, m.Poles.Value), m.BoreMM.Origin)
}

// carter is Carter's factor of the slots over a gap; 1 where the mouth is not known.
func (m *machine) carter(mouth quantity.Reading, gapMM float64) float64 {
	if !m.BoreMM.Given() || !m.Slots.Given() || !mouth.Given() {
		return 1
	}
	return field.Carter(math.Pi*m.BoreMM.Value/m.Slots.Value, mouth.Value, gapMM)
}
