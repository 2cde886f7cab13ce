package field

import "math"

// # Iron
//
// Iron takes a magnetomotive force of its own, H·l, little until it nearly saturates and then as much
// as the gap or more. In the magnet's circuit it is in series with the gap.
//
// The curve is that of ordinary non-oriented lamination, 0.50 mm, grade M800-50A: at 2500, 5000 and 10
// 000 A/m the minimum polarisation of IEC 60404-8-4 (1.60, 1.70 and 1.78 T), below that from makers'
// sheets, above it up to the saturation of low-silicon steel, 2.04 T; all from memory. Beyond the last
// point the iron is saturated: another tesla costs 1/μ0.
//
// Beside a tooth lies its slot, and the air in it is driven by the same H. When the iron saturates, the
// air takes its part: of the flux that comes out of the gap over a slot pitch, B·A goes through the
// iron and μ0·H·(what is not iron) past it.

// steelPoint is H in A/m and the polarisation J in tesla; B = J + μ0·H.
type steelPoint struct{ h, j float64 }

// steel is the curve, H and J both going up.
var steel = []steelPoint{
	{0, 0}, {60, 0.30}, {90, 0.60}, {130, 0.90}, {200, 1.15}, {350, 1.30}, {800, 1.45}, {1500, 1.54},
	{2500, 1.60}, {5000, 1.70}, {10000, 1.78}, {20000, 1.86}, {50000, 1.98}, {100000, 2.04},
}

// Stacking is the fraction of a stack's length that is iron, the rest being varnish and air; common
// practice, no source.
const Stacking = 0.95

// Steel is the field strength, A/m, in lamination that carries an apparent density b, T, 0 and up: the
// flux over the iron's own area, although part of it may pass beside it. beside is the area of the air
// next to the iron over the iron's, 0 and up.
func Steel(b, beside float64) float64 {
	if !(b > 0) {
		return 0
	}
	apparent := func(p steelPoint) float64 { return p.j + Mu0*p.h*(1+beside) }
	for i := 1; i < len(steel); i++ {
		low, high := apparent(steel[i-1]), apparent(steel[i])
		if b <= high {
			return steel[i-1].h + (steel[i].h-steel[i-1].h)*(b-low)/(high-low)
		}
	}
	last := steel[len(steel)-1]
	return last.h + (b-apparent(last))/(Mu0*(1+beside))
}

// Path is a length of iron that the flux of a pole goes through.
type Path struct {
	// Times is the apparent density in it per tesla in the gap over the magnet.
	Times float64
	MM    float64 // along the flux
	// Beside is the area of the air next to it over its own, see Steel.
	Beside float64
}

// Iron is what the flux of half a circuit goes through, from the gap to the middle between
// two poles.
type Iron []Path

// AmpTurns is the magnetomotive force, A, that the iron takes at a gap density, T, over the magnet.
func (iron Iron) AmpTurns(gap float64) float64 {
	sum := 0.0
	for _, p := range iron {
		sum += Steel(p.Times*gap, p.Beside) * p.MM * 1e-3
	}
	return sum
}

// meet is the gap density at which magnet, gap and iron balance: slope·B + F(B)·perAmp = br, by
// bisection, the left side rising with B.
func (iron Iron) meet(br, slope, perAmp float64) float64 {
	low, high := 0.0, br/slope
	for range 60 {
		mid := (low + high) / 2
		if slope*mid+perAmp*iron.AmpTurns(mid) > br {
			high = mid
		} else {
			low = mid
		}
	}
	if math.IsNaN(low) {
		return br / slope
	}
	return low
}
