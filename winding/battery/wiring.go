package battery

import "math"

// copperOhmM is annealed copper at 20 °C, Ω·m, and copperZeroC how far below 0 °C its
// resistance would be gone (IEC 60028).
const (
	copperOhmM  = 1.7241e-8
	copperZeroC = 234.5
)

// CableOhms is the resistance there and back of a copper cable, ρ·2l/A with
// ρ = 1.7241e-8 Ω·m at 20 °C (IEC 60028), at a temperature. 0 for no length or area, and
// for values that are no numbers.
func CableOhms(oneWayM, mm2, tempC float64) float64 {
	if !(oneWayM > 0 && mm2 > 0 && tempC > -copperZeroC) || math.IsInf(oneWayM, 0) || math.IsInf(tempC, 0) {
		return 0
	}
	return copperOhmM * 2 * oneWayM / (mm2 * 1e-6) * (copperZeroC + tempC) / (copperZeroC + 20)
}

// fuses are common sizes of blade, strip and bolt-down fuses in amperes (common
// practice, no source).
var fuses = [...]float64{1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 125, 150, 175, 200, 250, 300, 400, 500}

// continuous is how much of a fuse a load that never stops counts for.
const continuous = 1.25

// FuseSource says where FuseAmps comes from.
const FuseSource = "continuous loads at 125 % (U.S. National Electrical Code, articles 210.20 and 215.3, from memory), next common size (common practice, no source)"

// FuseAmps is the fuse for a charging current: the next size from 1.25 times it, so that
// it does not tire at the current it always carries. See FuseSource. 0 when there is
// none: above 400 A, and for no current. The fuse must still be below what the cable
// stands.
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
