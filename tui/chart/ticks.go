package chart

import (
	"math"
	"strconv"
)

// Ticks are at most max (at least 2) round values from lo to hi, a step of 1, 2 or 5 times
// a power of ten apart. There is none when the range is empty or not finite.
func Ticks(lo, hi float64, max int) (ticks []float64, step float64) {
	step = niceStep(lo, hi, max)
	if step == 0 {
		return nil, 0
	}
	first := math.Ceil(lo/step - 1e-9)
	for i := first; i <= hi/step+1e-9 && len(ticks) < 1000; i++ {
		ticks = append(ticks, i*step+0) // + 0 turns -0 into 0
	}
	return ticks, step
}

// niceStep is the smallest 1-2-5 step that puts at most n ticks on the range, 0 if the range
// is empty, not finite, or too narrow for its place to be divided at all.
func niceStep(lo, hi float64, n int) float64 {
	span := hi - lo
	if !(span > 0) || math.IsInf(span, 0) || span < 1e-12*max(math.Abs(lo), math.Abs(hi)) {
		return 0
	}
	n = max(n, 2)
	base := math.Pow(10, math.Floor(math.Log10(span/float64(n))))
	for base > 0 && !math.IsInf(base, 0) {
		for _, m := range []float64{1, 2, 5} {
			step := base * m
			if math.Floor(hi/step+1e-9)-math.Ceil(lo/step-1e-9)+1 <= float64(n) {
				return step
			}
		}
		base *= 10
	}
	return 0
}

// TickText writes a tick with as many decimals as its step has.
func TickText(v, step float64) string {
	if v == 0 {
		v = 0
	}
	if a := math.Abs(v); a >= 1e6 || step > 0 && step < 1e-4 {
		return strconv.FormatFloat(v, 'g', 4, 64)
	}
	decimals := 0
	if step > 0 && step < 1 {
		decimals = int(math.Ceil(-math.Log10(step) - 1e-9))
	}
	return strconv.FormatFloat(v, 'f', decimals, 64)
}
