package readings

import (
	"slices"

	"gonum.org/v1/gonum/mat"
)

// Moved is the fit moved by its ±, once along each of three uncorrelated errors: the columns of the
// square root of the covariance (Cholesky). EMF and inductance read from the same amps have correlated
// errors; the uncertainty of what follows from them is the root of the sum of the squares of the
// changes by these three moves.
func (f Fit) Moved() []Fit {
	var chol mat.Cholesky
	if !chol.Factorize(f.cov) {
		return nil
	}
	var root mat.TriDense
	chol.LTo(&root)
	var all []Fit
	for k := range unknowns {
		one := f
		for n := range unknowns {
			one.x[n] += coverage * root.At(n, k)
		}
		one.x[2] = min(max(one.x[2], leastFall), mostFall)
		all = append(all, one)
	}
	return all
}

// WithOhms is the fit as it would be with other ohms per phase of the old winding, above 0, to first
// order: one Gauss-Newton step with the slopes at the solution. Readings with ohms of their own, by
// their temperature, move in proportion. It costs one evaluation of the readings.
func (f Fit) WithOhms(ohms float64) Fit {
	p := *f.p
	by := ohms / p.m.Ohms
	p.m.Ohms, p.reads = ohms, slices.Clone(p.reads)
	for n := range p.reads {
		p.reads[n].Ohms *= by
	}
	was, now := f.p.residuals(f.x), p.residuals(f.x)
	for n := range now {
		now[n] -= was[n]
	}
	a, b := normal(f.rows, now)
	for k := range unknowns {
		a.SetSym(k, k, a.At(k, k)+1e-6)
	}
	var chol mat.Cholesky
	var d mat.VecDense
	if f.p = &p; !chol.Factorize(a) || chol.SolveVecTo(&d, b) != nil {
		return f
	}
	for k := range unknowns {
		f.x[k] -= d.AtVec(k)
	}
	f.x = least{low: p.low(), high: highest}.clamp(f.x)
	return f
}

// ModelDoubt is the error of the lumped model itself, as a fraction of the amps at 95 %, by the ratio
// of the EMF to that at cut-in, 1 and up.
func ModelDoubt(kappa float64) float64 { return modelDoubt(max(kappa, 1.02)) }

// HenriesFactor is the inductance of the old winding at a phase current, A rms, over that at RefAmps. A
// winding with c times the effective turns has it at c times its own current.
func (f *Fit) HenriesFactor(phaseAmps float64) float64 {
	return model{henries: 1, ref: f.p.ref, fall: f.x[2]}.henriesAt(phaseAmps)
}

// Settle finds the lowest current consistent with its own inductance: henries is the inductance at a
// current, flow the current that an inductance lets through; see model.go.
func Settle(henries, flow func(float64) float64) float64 { return settle(henries, flow) }
