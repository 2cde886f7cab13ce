package readings

import (
	"math"

	"slotwright/winding/charge"
	"slotwright/winding/zero"
)

// # The winding that the readings are fitted with
//
// A sine EMF in proportion to speed, behind resistance and one inductance per phase, on the exact
// bridge of package charge. Saturating iron makes the inductance depend on the current, and the bridge
// knows only fixed ones; so the inductance is lumped at the rms phase current i that it leads to,
//
//	L(i) = Lref·(1 + a·(i/iref - 1)),  not under Lref/10
//
// with iref the short-circuit current where one was read, else the phase current of the strongest
// loaded reading. A negative a is an inductance that falls with current, a positive one an inductance
// that grows: the armature reduces the saturation caused by the field.
//
// L(i) gives a current and the current an L. With a below 0 there may be several self-consistent
// currents; a machine run up from rest reaches the lowest. settle climbs from the current of L(0), by
// twice of what is missing, then four times and so on, a fifth at most, until the current exceeds what
// its own inductance lets through, and finds the point between by false position: some six solutions of
// the bridge.
//
// Limits. Saliency, harmonics and iron loss are absorbed by k, L and a as far as possible. The phase
// angle of the current is ignored: the d and q axes saturate alike.

// model is a winding by its numbers.
type model struct {
	Machine
	ohms float64
	perK float64 // V rms of a phase per rpm
	// henries at a phase current of ref, A rms, and the share fall by which it changes over the next
	// ref: L(i) = henries·(1 + fall·(i/ref - 1)), not under leastShare of henries.
	henries, ref, fall float64
}

// leastShare keeps the inductance above 0.
const leastShare = 0.1

// henriesAt is the inductance at a phase current, A rms.
func (m model) henriesAt(amps float64) float64 {
	return m.henries * max(leastShare, 1+m.fall*(amps/m.ref-1))
}

// settle finds the lowest phase current consistent with its own inductance: the one that a machine
// brought up from rest reaches. flow is the current for an inductance.
func (m model) settle(flow func(henries float64) float64) float64 { return settle(m.henriesAt, flow) }

func settle(henries, flow func(float64) float64) float64 {
	over := func(i float64) float64 { return flow(henries(i)) - i }
	low, high := 0.0, flow(henries(0))
	if high <= 0 {
		return 0
	}
	atLow, atHigh := high, over(high)
	for n := 0; atHigh > 0; n++ {
		if n == 60 {
			return high
		}
		low, atLow = high, atHigh
		high += min(0.2*high, math.Ldexp(atHigh, n+1))
		atHigh = over(high)
	}
	return crossing(over, zero.Bracket{A: low, B: high, AtA: atLow, AtB: atHigh})
}

// SettleAt is the point at that current, solved for one inductance after another, none of them twice in
// a row.
func SettleAt(henries func(amps float64) float64, solve func(henries float64) charge.Point) charge.Point {
	var p charge.Point
	at := math.NaN()
	flow := func(h float64) float64 {
		if h != at {
			p, at = solve(h), h
		}
		return p.PhaseAmpsRMS
	}
	flow(henries(settle(henries, flow)))
	return p
}

// crossing is where an excess of current crosses zero, A rms, to 1 part in 10⁹ of it.
func crossing(over func(float64) float64, z zero.Bracket) float64 {
	for range 100 {
		mid := z.Next()
		at := over(mid)
		if math.Abs(z.B-z.A) <= 1e-9*math.Abs(z.B) || math.Abs(at) <= 1e-9*math.Abs(mid) {
			return mid
		}
		z.Put(mid, at)
	}
	return z.Middle()
}

// into is the steady state at a speed on a load; nothing flows where it cannot be solved.
func (m model) into(rpm float64, l charge.Load) charge.Point {
	var near charge.Solver // one inductance after another: each starts from the one before
	if m.fall == 0 {
		return m.bridge(&near, rpm, l, m.henries)
	}
	return SettleAt(m.henriesAt, func(henries float64) charge.Point { return m.bridge(&near, rpm, l, henries) })
}

// bridge is the exact circuit with a fixed inductance.
func (m model) bridge(near *charge.Solver, rpm float64, l charge.Load, henries float64) charge.Point {
	s := charge.Source{
		EMFPeak: math.Sqrt2 * m.perK * rpm, Hertz: m.hertz(rpm), Ohms: m.ohms, Henries: henries,
		Phases: m.Phases, Delta: m.Delta,
	}
	p, _ := near.Solve(s, l)
	return p
}

// short is the phase current, A rms, with all leads shorted.
func (m model) short(rpm float64) float64 {
	return m.settle(func(henries float64) float64 { return m.joined(rpm, henries) })
}

// joined is the same with a fixed inductance.
func (m model) joined(rpm, henries float64) float64 {
	return m.perK * rpm / math.Hypot(m.ohms, 2*math.Pi*m.hertz(rpm)*henries)
}
