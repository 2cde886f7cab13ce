package battery

// cables is what a copper cable carries for ever, mm² and A: two loaded PVC-insulated
// conductors clipped to a surface in air of 30 °C (IEC 60364-5-52, table B.52.4, method C;
// from memory, so the next wiring code's table decides).
var cables = [...]struct{ mm2, amps float64 }{
	{0.5, 8}, {0.75, 11}, {1, 14}, {1.5, 19.5}, {2.5, 27}, {4, 36}, {6, 46}, {10, 63}, {16, 85}, {25, 112}, {35, 138}, {50, 168}, {70, 213}, {95, 258}, {120, 299},
}

// CableSource says where CableAmps comes from.
const CableSource = "IEC 60364-5-52, two loaded PVC conductors on a surface in air of 30 °C (from memory); the local code decides"

// CableAmps is what a copper cable carries for ever, A, by the next smaller size of the
// table; 0 below it. Thicker than its last row the last row counts.
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
