package readings

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// unknowns is the number of unknowns: ln of volts per rpm, ln of henries, fall.
const unknowns = 3

// point is values of these, in that order.
type point [unknowns]float64

// least is a sum of squares to be minimised within bounds.
type least struct {
	residuals func(point) []float64
	low, high point
}

// clamp puts a point within the bounds.
func (l least) clamp(x point) point {
	for k := range x {
		x[k] = min(max(x[k], l.low[k]), l.high[k])
	}
	return x
}

func (l least) cost(x point) float64 {
	sum := 0.0
	for _, r := range l.residuals(x) {
		sum += r * r
	}
	return sum
}

// slopes is the derivative of each residual by each unknown, by differences that keep to the bounds.
func (l least) slopes(x point) [][unknowns]float64 {
	const step = 1e-4
	var rows [][unknowns]float64
	for k := range x {
		a, b := x, x
		a[k], b[k] = max(x[k]-step, l.low[k]), min(x[k]+step, l.high[k])
		ra, rb := l.residuals(a), l.residuals(b)
		if rows == nil {
			rows = make([][unknowns]float64, len(ra))
		}
		for n := range ra {
			rows[n][k] = (rb[n] - ra[n]) / (b[k] - a[k])
		}
	}
	return rows
}

// normal is JᵀJ of slopes, and Jᵀr where there are residuals.
func normal(rows [][unknowns]float64, r []float64) (*mat.SymDense, *mat.VecDense) {
	jtj, jtr := mat.NewSymDense(unknowns, nil), mat.NewVecDense(unknowns, nil)
	for n, row := range rows {
		for a := range row {
			for b := a; b < unknowns; b++ {
				jtj.SetSym(a, b, jtj.At(a, b)+row[a]*row[b])
			}
			if r != nil {
				jtr.SetVec(a, jtr.AtVec(a)+row[a]*r[n])
			}
		}
	}
	return jtj, jtr
}

// minimise descends from a point by the Levenberg-Marquardt method; see solve.go.
func (l least) minimise(x point) (point, float64) {
	x = l.clamp(x)
	cost, damping := l.cost(x), 1e-3
	for range 60 {
		jtj, jtr := normal(l.slopes(x), l.residuals(x))
		moved := false
		for ; damping < 1e9; damping *= 5 {
			next := l.clamp(l.step(x, jtj, jtr, damping))
			at := l.cost(next)
			if at < cost {
				moved = cost-at > max(1e-9*cost, 1e-12)
				x, cost = next, at
				damping = max(damping/10, 1e-9)
				break
			}
		}
		if !moved {
			break
		}
	}
	return x, cost
}

// step is where the damped normal equations lead, unknowns that push against a bound held.
func (l least) step(x point, jtj *mat.SymDense, jtr *mat.VecDense, damping float64) point {
	a, b := mat.NewSymDense(unknowns, nil), mat.NewVecDense(unknowns, nil)
	a.CopySym(jtj)
	for k := range x {
		b.SetVec(k, -jtr.AtVec(k))
		a.SetSym(k, k, a.At(k, k)*(1+damping)+1e-12)
		if x[k] <= l.low[k] && jtr.AtVec(k) > 0 || x[k] >= l.high[k] && jtr.AtVec(k) < 0 {
			hold(a, b, k)
		}
	}
	var chol mat.Cholesky
	var d mat.VecDense
	if !chol.Factorize(a) || chol.SolveVecTo(&d, b) != nil {
		return x
	}
	for k := range x {
		x[k] += math.Max(-1, math.Min(1, d.AtVec(k)))
	}
	return x
}

// hold takes an unknown out of the equations.
func hold(a *mat.SymDense, b *mat.VecDense, k int) {
	for n := range unknowns {
		a.SetSym(k, n, 0)
	}
	a.SetSym(k, k, 1)
	b.SetVec(k, 0)
}
