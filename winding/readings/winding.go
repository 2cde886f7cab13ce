package readings

import (
	"fmt"
	"math"

	"slotwright/winding/charge"
	"slotwright/winding/quantity"
)

// Winding is the old winding, or one of other turns in the same iron.
type Winding struct {
	f     Fit
	ratio float64
	ohms  float64
}

// At scales the fit to a winding with ratio times the old one's effective turns in series: EMF by the
// ratio, inductance by its square. Iron saturates by ampere-turns, so the current that saturates it
// scales with one over the ratio. ohms is one phase's, at its temperature in use; 0 takes equal copper,
// the old ohms times the square. The connection is unchanged.
//
// ratio is 0.1 to 10; the ± is tested for 0.6 to 3.5. The error wraps ErrReadings.
func (f Fit) At(ratio, ohms float64) (Winding, error) {
	if !within(ratio, 0.1, 10) || !within(ohms, 0, 1e6) {
		return Winding{}, fmt.Errorf("%w: a winding of %g times the turns and %g ohms; give 0.1 to 10 times and ohms of 0 or more", ErrReadings, ratio, ohms)
	}
	if ohms == 0 {
		ohms = f.p.m.Ohms * ratio * ratio
	}
	return Winding{f, ratio, ohms}, nil
}

// model is the winding at a point of the unknowns.
func (w Winding) model(x point) model {
	m := w.f.p.at(x)
	m.perK *= w.ratio
	m.henries *= w.ratio * w.ratio
	m.ref /= w.ratio
	m.ohms = w.ohms
	return m
}

// VoltsPerRPM is the EMF of a phase, V rms per rpm.
func (w Winding) VoltsPerRPM() quantity.Figure { return w.f.VoltsPerRPM().Times(w.ratio) }

// Henries is the inductance of a phase at a phase current, A rms, 0 and up.
func (w Winding) Henries(phaseAmps float64) float64 { return w.model(w.f.x).henriesAt(phaseAmps) }

// Into is the steady state at a speed, rpm, on a load with its diodes: charge.Solve with the inductance
// consistent with the phase current. What charge.Solve refuses is returned as no current.
func (w Winding) Into(rpm float64, l charge.Load) charge.Point { return w.model(w.f.x).into(rpm, l) }

// ShortAmps is the amps rms in a phase with all leads shorted.
func (w Winding) ShortAmps(rpm float64) quantity.Figure {
	fig := quantity.Of(w.model(w.f.x).short(rpm))
	slope := w.slope(func(m model) float64 { return math.Log(m.short(rpm)) })
	fig.PlusMinus = fig.Value * coverage * w.f.along(slope)
	return fig
}

// Amps is the direct current at a speed, rpm, on a load, with its ±: that of the readings and that of
// the model, which depends on how far above cut-in it runs.
func (w Winding) Amps(rpm float64, l charge.Load) quantity.Figure {
	m := w.model(w.f.x)
	p := m.into(rpm, l)
	fig := quantity.Of(p.DCAmps)
	if !w.f.FallRead() {
		fig = quantity.Of(p.DCAmps, quantity.Guessed)
	}
	if p.DCAmps > 0 && p.Kappa > 1.02 {
		fig.PlusMinus = p.DCAmps * math.Hypot(coverage*w.f.along(w.slope(w.lnAmps(rpm, l))), modelDoubt(p.Kappa))
		return fig
	}
	m.perK *= 1 + max(0.02, coverage*w.f.deviation(0)) // at cut-in: what flows if the EMF is that much higher
	fig.PlusMinus = m.into(rpm, l).DCAmps - p.DCAmps
	return fig
}

func (w Winding) lnAmps(rpm float64, l charge.Load) func(model) float64 {
	return func(m model) float64 { return math.Log(max(m.into(rpm, l).DCAmps, 1e-12)) }
}

// slope is the derivative of something by each unknown.
func (w Winding) slope(of func(model) float64) (slope point) {
	const step = 1e-3
	for k := range slope {
		a, b := w.f.x, w.f.x
		a[k] -= step
		b[k] += step
		slope[k] = (of(w.model(b)) - of(w.model(a))) / (2 * step)
	}
	return slope
}

// along is one standard deviation of something with that slope.
func (f Fit) along(slope point) float64 {
	sum := 0.0
	for a := range slope {
		for b := range slope {
			sum += slope[a] * slope[b] * f.cov.At(a, b)
		}
	}
	return math.Sqrt(max(0, sum))
}

// modelDoubt is the relative error of the lumped model at 95 %, by the ratio of the EMF to that at
// cut-in: the errors left on the simulated machines of testdata/readings, both sets, when every reading
// is exact and a is read.
func modelDoubt(kappa float64) float64 {
	at := []float64{1.02, 1.1, 1.25, 1.5, 2, 3, 5}
	off := []float64{1, 0.4, 0.1, 0.055, 0.055, 0.065, 0.08}
	for n := 1; n < len(at); n++ {
		if kappa < at[n] {
			t := (kappa - at[n-1]) / (at[n] - at[n-1])
			return off[n-1] + t*(off[n]-off[n-1])
		}
	}
	return off[len(off)-1]
}
