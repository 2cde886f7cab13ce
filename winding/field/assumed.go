package field

import "math"

// # One field current read, another in use
//
// One reading does not show where the iron saturates. The truth lies between two extremes: unsaturated
// iron gives flux in proportion to the current, fully saturated iron the same flux at any current. Half
// way is Froelich's curve with the current read as its I0, the iron half saturated there:
//
//	Φ(I)/Φ1 = 2x/(1 + x),  x = I/I1
//
// The uncertainty is half of the range between the extremes, |x − 1|/2 of the flux read; relative to
// the flux itself, |x − 1/x|/4: 20 % for a current half as high again, 38 % for twice or half. Common
// practice, no source. A second reading at the current in use removes it.

// Assumed is the curve taken through a single reading at a field current above 0.
func Assumed(r Reading) (Curve, error) {
	if !(r.Amps > 0 && r.Amps <= 1e6) || !(r.Flux > 0 && r.Flux <= 1e12) {
		return Curve{}, tooFew(Curve{Low: r.Amps, High: r.Amps})
	}
	return Curve{Infinity: 2 * r.Flux, Half: r.Amps, Low: r.Amps, High: r.Amps}, nil
}

// AssumedDoubt is the relative ± of Assumed at a current, at most 1, when another one was read; both
// above 0.
func AssumedDoubt(amps, read float64) float64 {
	x := amps / read
	return min(1, math.Abs(x-1/x)/4)
}
