package readings

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// Advice is the reading that would narrow the predicted amps most.
type Advice struct {
	Kind Kind
	// CutIns is the speed to take it at, in multiples of cut-in, and RPM that speed.
	CutIns, RPM float64
	// Now and Then are the relative ± of predicted amps before and after: the mean over 1.5, 2 and 3
	// times cut-in, for the old turns and twice as many.
	Now, Then float64
}

// candidates are the readings to consider, each with its speed in multiples of cut-in.
var candidates = []struct {
	kind   Kind
	cutIns float64
}{{Loaded, 1.25}, {Loaded, 2}, {Loaded, 4}, {SpinUp, 2}, {Short, 3}}

// Next says which further reading, of the usual accuracy of such readings, would narrow the predicted
// amps into a battery of some volts most. top is the highest speed available, rpm, 0 for any. ok is
// false where none narrows them by a twentieth.
func (f Fit) Next(volts, top float64) (a Advice, ok bool) {
	slopes, doubts := f.forecasts(volts)
	now := mean(f.cov, slopes, doubts)
	best := Advice{Now: now, Then: now}
	cutIn := f.p.m.cutIn(volts) / math.Exp(f.x[0])
	for _, c := range candidates {
		rpm := c.cutIns * cutIn
		if top > 0 && rpm > top {
			continue
		}
		if then := mean(f.with(f.invent(c.kind, rpm, volts)), slopes, doubts); then < best.Then {
			best = Advice{Kind: c.kind, CutIns: c.cutIns, RPM: rpm, Now: now, Then: then}
		}
	}
	return best, best.Then < 0.95*now
}

// forecasts is how the amps to be predicted depend on the unknowns, and the error of the model.
func (f Fit) forecasts(volts float64) (slopes []point, doubts []float64) {
	l := f.p.m.load(volts)
	for _, ratio := range []float64{1, 2} {
		w := Winding{f, ratio, f.p.m.Ohms * ratio * ratio}
		for _, cutIns := range []float64{1.5, 2, 3} {
			rpm := cutIns * f.p.m.cutIn(volts) / math.Exp(f.x[0]) / ratio
			slopes = append(slopes, w.slope(w.lnAmps(rpm, l)))
			doubts = append(doubts, modelDoubt(cutIns))
		}
	}
	return slopes, doubts
}

// mean is the mean ± of forecasts.
func mean(cov *mat.SymDense, slopes []point, doubts []float64) float64 {
	sum := 0.0
	for n, s := range slopes {
		sum += math.Hypot(coverage*Fit{cov: cov}.along(s), doubts[n])
	}
	return sum / float64(len(slopes))
}

// invent is a reading that agrees with the fit.
func (f Fit) invent(k Kind, rpm, volts float64) Reading {
	m := f.p.at(f.x)
	r := Reading{Kind: k, RPM: rpm, Volts: volts}
	switch k {
	case SpinUp:
		r.Volts = m.perK * rpm * f.p.m.linePerPhase()
	case Short:
		r.Amps = m.short(rpm) / f.p.m.phasePerLine()
	default:
		r.Amps = m.into(rpm, f.p.m.load(volts)).DCAmps
	}
	return r
}

// with is the covariance with one more reading.
func (f Fit) with(r Reading) *mat.SymDense {
	p := *f.p
	p.reads = append(slices.Clone(p.reads), r)
	p.share, p.doubt = append(slices.Clone(p.share), 1), append(slices.Clone(p.doubt), 0)
	p.weigh(f.x)
	l := least{residuals: p.residuals, low: p.low(), high: highest}
	return covariance(l.slopes(f.x), f.spread)
}
