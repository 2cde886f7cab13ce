package drawing

import "math"

// axis is a scale of a diagram with round numbers at its ticks.
type axis struct {
	low, high, step float64
	// from and to are where low and high are on the page.
	from, to float64
}

// newAxis covers low to high with about so many ticks, 1, 2 or 5 times a power of ten apart, with ticks
// at both ends.
func newAxis(low, high float64, ticks int, from, to float64) axis {
	if !(high > low) {
		high = low + 1
	}
	step := roundStep((high - low) / float64(ticks))
	return axis{math.Floor(low/step+1e-9) * step, math.Ceil(high/step-1e-9) * step, step, from, to}
}

// roundStep is the smallest of 1, 2, 5, 10 ... that is not below a number.
func roundStep(least float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(least)))
	for _, k := range []float64{1, 2, 5} {
		if k*power >= least*(1-1e-9) {
			return k * power
		}
	}
	return 10 * power
}

// at is where a value is on the page.
func (a axis) at(v float64) float64 {
	return a.from + (v-a.low)/(a.high-a.low)*(a.to-a.from)
}

// ticks are the values marked.
func (a axis) ticks() []float64 {
	n := int(math.Round((a.high - a.low) / a.step))
	list := make([]float64, n+1)
	for i := range list {
		list[i] = (math.Round(a.low/a.step) + float64(i)) * a.step
	}
	return list
}
