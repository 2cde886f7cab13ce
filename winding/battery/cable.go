package battery

import "math"

// copperOhmM is annealed copper at 20 °C, Ω·m, and copperZeroC how far below 0 °C its resistance
// extrapolates to zero (IEC 60028).
const (
	copperOhmM  = 1.7241e-8
	copperZeroC = 234.5
)

// CableOhms is the resistance, out and back, of a copper cable, ρ·2l/A with ρ = 1.7241e-8 Ω·m at 20 °C
// (IEC 60028), at a temperature. 0 for no length or area, and for NaN and infinities.
func CableOhms(oneWayM, mm2, tempC float64) float64 {
	if !(oneWayM > 0 && mm2 > 0 && tempC > -copperZeroC) || math.IsInf(oneWayM, 0) || math.IsInf(tempC, 0) {
		return 0
	}
	return copperOhmM * 2 * oneWayM / (mm2 * 1e-6) * (copperZeroC + tempC) / (copperZeroC + 20)
}

// cables is the continuous rating of copper cables, mm² and A: two loaded PVC-insulated conductors
// clipped to a surface in air of 30 °C (IEC 60364-5-52, table B.52.4, method C; from memory; the local
// wiring code decides).
var cables = [...]struct{ mm2, amps float64 }{
	{0.5, 8}, {0.75, 11}, {1, 14}, {1.5, 19.5}, {2.5, 27}, {4, 36}, {6, 46}, {10, 63}, {16, 85}, {25, 112}, {35, 138}, {50, 168}, {70, 213}, {95, 258}, {120, 299},
}

// CableSource says where CableAmps comes from.
const CableSource = "IEC 60364-5-52, two loaded PVC conductors on a surface in air of 30 °C (from memory); the local code decides"

// CableAmps is what a copper cable carries continuously, A, by the next smaller size of the table; 0
// below its first row. Above its last row the last row counts.
func CableAmps(mm2 float64) float64 {
	amps := 0.0
	for _, c := range cables {
		if mm2 >= c.mm2*(1-1e-9) {
			amps = c.amps
		}
	}
	return amps
}

// CableFor is the thinnest copper cable of the table, mm², that carries a current; 0 when
// none does.
func CableFor(amps float64) float64 {
	for _, c := range cables {
		if c.amps >= amps {
			return c.mm2
		}
	}
	return 0
}
