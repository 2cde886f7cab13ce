package chart

import (
	"math"
	"strconv"
)

// Ticks are at most max (at least 2) round values from lo to hi, a step of 1, 2 or 5 times
// a power of ten apart. There is none when the range is empty or not finite.
func Ticks(lo, hi float64, max int) (ticks []float64, step float64) {
	step = niceStep(lo, hi, max)
	return ticksAt(lo, hi, step), step
}

// ticksAt are the whole steps from lo to hi, none where there is no step.
func ticksAt(lo, hi, step float64) (ticks []float64) {
	if step == 0 {
		return nil
	}
	for i := math.Ceil(lo/step - 1e-9); i <= hi/step+1e-9 && len(ticks) < 1000; i++ {
		ticks = append(ticks, i*step+0) // + 0 turns -0 into 0
	}
	return ticks
}

// evenly is the narrowest range round lo to hi in which the ticks of a 1-2-5 step are a whole number of
// the axis' rows apart, at least two of them and no closer than reads well; any excess lies above;
// below asks for a row under lo. The step is 0 where there is none.
func evenly(lo, hi float64, rows int, below bool) (from, to, step float64) {
	least := max(1, min(3, rows/3))
	most := max(2, rows/max(3, min(6, rows/5))) // a tall axis has more ticks than a low one
	for apart := least; apart <= most; apart++ {
		for _, s := range niceSteps((hi - lo) / float64(rows)) {
			under := lo
			if below {
				under -= s / float64(apart)
			}
			a, b, ok := onRows(under, hi, s, rows, apart)
			if ok && (step == 0 || b-a < (to-from)*(1-1e-9)) {
				from, to, step = a, b, s
			}
		}
	}
	return from, to, step
}

// onRows is the range of so many rows with the steps a given number of rows apart, each in its row's
// middle, starting as little below lo as possible; it is usable where it reaches hi.
func onRows(lo, hi, step float64, rows, apart int) (from, to float64, ok bool) {
	dot := step / float64(4*apart) // a row is four dots high
	for _, middle := range []float64{2, 1} {
		top := math.Floor((lo/dot + float64(4*rows-1) - middle + 1e-6) / 4)
		to = (4*top + middle) * dot
		from = to - float64(4*rows-1)*dot
		if to >= hi-1e-6*dot {
			return from, to, !math.IsInf(from, 0)
		}
	}
	return from, to, false
}

// niceSteps are the 1-2-5 steps from the largest of at most v upwards, over two powers of ten; none
// where v is not usable.
func niceSteps(v float64) (steps []float64) {
	base := math.Pow(10, math.Floor(math.Log10(v)))
	if !(base > 0) || math.IsInf(base*100, 0) {
		return nil
	}
	for _, m := range []float64{1, 2, 5, 10, 20, 50, 100} {
		steps = append(steps, base*m)
	}
	return steps
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
