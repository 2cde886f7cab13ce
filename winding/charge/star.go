package charge

import (
	"errors"
	"fmt"
	"math"
)

// # How the bridge with diodes at the star point is solved
//
//	      R  ωL             ┌──►|──┬─ +           e_k = Ê·sin(θ - 120°·k) + Ê3·sin 3θ
//	 ┌─(e)─▭──ᔔ──── a ─────┤      │
//	 ├─(e)─▭──ᔔ──── b ─ …  │     Rb               ωL0 for currents equal in all three
//	 ├─(e)─▭──ᔔ──── c ─ …  │      V               each ►| is V0 + r·i
//	 n ───────────────── …  └──|◄──┴─ -
//
// The idea is that of bridge3.go: between two switchings everything is linear and known in closed form,
// and Newton's method closes the state on itself after 60°, where the same happens with the phases
// renamed and all signs reversed (the third harmonic's too).
//
// The circuit. Eight diodes: the star point is a fourth leg with no EMF, ohms or henries of its own,
// which carries the sum of the three phases' currents. With s the rail of a leg (1 upper, -1 lower), v
// = V + 2·V0, and q_k = s_k - s_n, the currents of the conducting phases obey
//
//	M·i' + K·i = e - q·v/2,   M = x + (x0-x)/3·1·1ᵀ,   K = R + r·1·1ᵀ + Rb/4·q·qᵀ
//
// with the star point conducting; while it rests the same holds for currents that sum to zero, and the
// terms in 1·1ᵀ drop out. M and K are symmetric, so the currents decouple into up to three real modes:
// differences within a rail, and, for the sums on the star point's rail and on the other, the two that
// a quadratic equation gives (starmodes.go). Each mode is a constant, two sines and one exponential. x0
// is the zero-sequence reactance: the current of the star point is limited by the three phases in
// parallel, not by the synchronous reactance.
//
// The switchings. A current reaches zero, or a resting leg a rail. Which legs conduct after that is
// tested for every combination of the legs that carry nothing: in the right one each leg that is off
// lies between the rails, and each leg that is on starts in its diode's direction; there is one (the
// circuit only dissipates). Switchings are searched on a grid of 2°, finer just after the last one, and
// refined; a leg that conducts only between two points of the grid is missed.
//
// Where the third harmonic's peak is at most v/3 the star point never reaches a rail (with sine EMFs it
// is within a sixth of the rails' distance from their middle), and the point is that of the bridge,
// solved as such.
//
// Cost. 50 to 200 µs a point, an order of magnitude more than the bridge. Accuracy: with Ê3 = 0 amps
// agree with the bridge to 1e-8 where the march below is made to find them too; power in is power out
// to 1e-8; and Kirchhoff's laws stepped 6000 times a cycle come within 3e-4, which is what such steps
// are good to.
//
// Limits. As bridge3.go; fifth and higher harmonics are left out. Resistance or reactance below a
// millionth of all the ohms is raised to that.

// StarSource is a star with its star point brought out to two extra diodes.
type StarSource struct {
	// Source is the machine; Phases is 3 and Delta false.
	Source
	// ThirdPeak is the peak of the third harmonic of a phase's EMF, V, [-1e9, 1e9]: a positive one
	// flattens the wave, being in phase with it at the zero crossing; a negative one makes it peaked.
	ThirdPeak float64
	// ZeroHenries is the zero-sequence inductance of a phase, H, [0, 1e9].
	ZeroHenries float64
}

// StarSolver solves a series of points, each started from the state of the one before; the zero value
// is ready. It is not for several goroutines at once; copies are independent.
type StarSolver struct {
	bridge Solver
	state  [3]float64
	warm   bool
}

// leastOfAll is the smallest resistance and reactance solved with star-point diodes, relative to all
// the ohms in the loop.
const leastOfAll = 1e-6

// starCircuit is the circuit with what the star point adds, in the circuit's units.
type starCircuit struct {
	circuit
	slope, x0, third float64
}

// Solve gives the steady state of the source on a load through its eight diodes. Errors are those of
// [Solve], and one for a source that has no star point.
func (near *StarSolver) Solve(s StarSource, l Load) (Point, error) {
	if err := errors.Join(checkSource(s.Source), checkLoad(l), checkField("ZeroHenries", s.ZeroHenries, "H"),
		checkField("ThirdPeak, its size,", math.Abs(s.ThirdPeak), "V")); err != nil {
		return Point{}, fmt.Errorf("charge: %w", err)
	}
	if s.Phases != 3 || s.Delta || l.Rectifier != Bridge {
		return Point{}, errors.New("charge: diodes at the star point are for three phases in star on a bridge")
	}
	if 3*math.Abs(s.ThirdPeak) <= l.held() {
		return near.bridge.Solve(s.Source, l)
	}
	kappa, flows := drive(s.Source, l)
	if !flows && s.EMFPeak+math.Abs(s.ThirdPeak) <= l.held() {
		return Point{DCVolts: l.Volts, Mode: Off, Kappa: kappa}, nil
	}
	p, err := near.march(s, l)
	if err != nil {
		return Point{}, fmt.Errorf("charge: %w", err)
	}
	p.Kappa = kappa
	if !p.finite() {
		return Point{}, errors.New("charge: the figures are so large or so small that the answer cannot be held; check their units")
	}
	return p, nil
}

// march is the point found by marching, whatever the third harmonic.
func (near *StarSolver) march(s StarSource, l Load) (Point, error) {
	if !(s.EMFPeak > 0) {
		return Point{}, errors.New("the EMF has a third harmonic and no fundamental: check the winding")
	}
	base, err := reduce(s.Source, l)
	if err != nil {
		return Point{}, err
	}
	c := starCircuit{base, l.DiodeOhms / base.ohms, 2 * math.Pi * s.Hertz * s.ZeroHenries / base.ohms, s.ThirdPeak / base.volts}
	c.r, c.x, c.x0 = max(c.r, leastOfAll), max(c.x, leastOfAll), max(c.x0, leastOfAll)
	m := starMarch{c: &c}
	start := c.guess(starAngle)
	if near.warm {
		start = near.state
	}
	if err := m.settle(start); err != nil {
		if err = m.settle([3]float64{}); err != nil {
			return Point{}, err
		}
	}
	near.state, near.warm = m.from, true
	return m.point(s, l), nil
}
