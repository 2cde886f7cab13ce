package readings

import (
	"math"
	"slices"

	"slotwright/winding/quantity"

	"gonum.org/v1/gonum/mat"
)

// Fit is the old winding as identified from its readings.
type Fit struct {
	p      *problem
	x      point
	rows   [][unknowns]float64 // slopes of the residuals; the last row is the usual value of a
	cov    *mat.SymDense
	spread float64
}

// Checked is a reading compared with the fit.
type Checked struct {
	Reading
	// Shown is what the fitted machine would show: volts, amps or henries, according to the kind.
	Shown float64
	// Off is the reading's distance from that in units of its own ±: beyond 1 it contradicts the
	// others.
	Off float64
	// Aside says why it was not used, "" when it was.
	Aside string
}

// deviation is one standard deviation of an unknown.
func (f Fit) deviation(k int) float64 { return math.Sqrt(f.cov.At(k, k)) }

// VoltsPerRPM is the EMF of a phase, V rms per rpm, at the field current of FieldAmps.
func (f Fit) VoltsPerRPM() quantity.Figure { return f.figure(0, math.Exp(f.x[0])) }

// Henries is the inductance of a phase at RefAmps.
func (f Fit) Henries() quantity.Figure { return f.figure(1, math.Exp(f.x[1])) }

// RefAmps is the phase current, A rms, at which Henries is given.
func (f Fit) RefAmps() float64 { return f.p.ref }

// FieldAmps is the field current that the fit is for; 0 where none was given.
func (f Fit) FieldAmps() float64 { return f.p.m.FieldAmps }

// Fall is the share a by which the inductance changes from RefAmps to twice that, negative where it
// falls: L(i) = Henries·(1 + a·(i/RefAmps - 1)), -2.5 to 0.8. It is Guessed where the readings
// determine little of it.
func (f Fit) Fall() quantity.Figure {
	fig := quantity.Of(f.x[2])
	if !f.FallRead() {
		fig = quantity.Of(f.x[2], quantity.Guessed)
	}
	fig.PlusMinus, fig.Why = coverage*f.deviation(2), f.decided(2)
	return fig
}

// FallRead reports whether the readings determine how the inductance changes with current.
func (f Fit) FallRead() bool {
	_, doubt := f.p.m.usualFall()
	return f.deviation(2) < 0.7*doubt
}

// figure is an unknown that is fitted as a logarithm.
func (f Fit) figure(k int, v float64) quantity.Figure {
	fig := quantity.Of(v)
	fig.PlusMinus, fig.Why = v*math.Expm1(coverage*f.deviation(k)), f.decided(k)
	return fig
}

// decided names the reading without which an unknown would be known least well.
func (f Fit) decided(k int) string {
	most, by := 1.0, "all readings together"
	for n := range f.rows {
		if k > 0 && n < len(f.p.reads) && f.p.reads[n].spin() {
			continue // the inductance depends on the volts too, but is not read there
		}
		without := covariance(slices.Delete(slices.Clone(f.rows), n, n+1), f.spread)
		if v := without.At(k, k) / f.cov.At(k, k); v > 1.2*most {
			most, by = v, "what is usual"
			if n < len(f.p.reads) {
				by = string(f.p.reads[n].Kind)
			}
		}
	}
	return by
}

// Readings compares each reading with the fit; those set aside come last.
func (f Fit) Readings() []Checked {
	var all []Checked
	m := f.p.at(f.x)
	for n, r := range f.p.reads {
		off := math.Abs(f.p.residual(m, n)) / f.p.sigma[n] / coverage
		all = append(all, Checked{Reading: r, Shown: f.p.shows(m, n), Off: off})
	}
	return append(all, f.p.aside...)
}
