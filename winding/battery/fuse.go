package battery

import "math"

// fuses are common sizes of blade, strip and bolt-down fuses in amperes (common
// practice, no source).
var fuses = [...]float64{1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 125, 150, 175, 200, 250, 300, 400, 500}

// continuous is the factor on a load that never stops.
const continuous = 1.25

// FuseSource says where FuseAmps comes from.
const FuseSource = "continuous loads at 125 % (U.S. National Electrical Code, articles 210.20 and 215.3, from memory), next common size (common practice, no source)"

// FuseAmps is the fuse for a charging current: the next size from 1.25 times it, so that it does not
// age at the current it always carries. See FuseSource. 0 when there is none: above 400 A, and for no
// current. The fuse must still be below the cable's rating.
func FuseAmps(amps float64) float64 {
	if !(amps > 0) || math.IsInf(amps, 0) {
		return 0
	}
	for _, f := range fuses {
		if f*(1+1e-12) >= continuous*amps {
			return f
		}
	}
	return 0
}
