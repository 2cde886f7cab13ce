package field

import "math"

// # One field current read, another in use
//
// One reading does not say where the iron fills up. It lies between two ends: iron that is empty
// gives flux in proportion to the current, iron that is full the same flux at any. Half way is
// Froelich's curve with the current that was read as its I0, the iron half full there:
//
//	Φ(I)/Φ1 = 2x/(1 + x),  x = I/I1
//
// The doubt is half of what lies between the ends, |x − 1|/2 of what was read, as a part of
// the flux |x − 1/x|/4: 20 % for a current half as high again, 38 % for one of twice or half.
// Common practice, no source. A second reading at the current in use ends it.

// Assumed is the curve taken through a single reading at a field current above 0.
func Assumed(r Reading) (Curve, error) {
	if !(r.Amps > 0 && r.Amps <= 1e6) || !(r.Flux > 0 && r.Flux <= 1e12) {
		return Curve{}, tooFew(Curve{Low: r.Amps, High: r.Amps})
	}
	return Curve{Infinity: 2 * r.Flux, Half: r.Amps, Low: r.Amps, High: r.Amps}, nil
}

// AssumedDoubt is the ± of what Assumed gives at a current, a part of it and at most 1, for one
// that was read; both above 0.
func AssumedDoubt(amps, read float64) float64 {
	x := amps / read
	return min(1, math.Abs(x-1/x)/4)
}
