package slot

import "math"

// SquarePerTurnMM2 is the sum of overall diameters squared over the strands of one turn,
// mm²: what one turn takes of the net area when each wire is given its own square.
func SquarePerTurnMM2(wires [2]Wire) float64 {
	sum := 0.0
	for _, w := range wires {
		sum += float64(w.Count) * w.OverallMM * w.OverallMM
	}
	return sum
}

// copperPerTurn is the metal of one turn, mm².
func copperPerTurn(wires [2]Wire) float64 {
	sum := 0.0
	for _, w := range wires {
		sum += float64(w.Count) * math.Pi / 4 * w.BareMM * w.BareMM
	}
	return sum
}

// Fill gives the three fill factors of a slot that holds conductors turns' sides (turns per
// coil times layers), each of the strands in wires:
//
//	wire   = conductors x sum(overall²) / net
//	round  = conductors x sum(pi/4 x overall²) / net
//	copper = conductors x sum(pi/4 x bare²) / gross
//
// Round is pi/4 of wire. Square packing of round wires is wire = 1 and round = 0.785,
// hexagonal wire = 1.155 and round = 0.907 (geometry). A zero Room gives zeros.
func Fill(room Room, wires [2]Wire, conductors int) Fills {
	if !finite(room.NetMM2) || !finite(room.GrossMM2) || conductors <= 0 {
		return Fills{}
	}
	z := float64(conductors)
	wire := z * SquarePerTurnMM2(wires) / room.NetMM2
	return Fills{Wire: wire, Round: math.Pi / 4 * wire, Copper: z * copperPerTurn(wires) / room.GrossMM2}
}

// FitTolerance is how far, relatively, a fill may exceed a limit and still count as at the limit: for
// the rounding of the arithmetic, nothing that a caliper sees.
const FitTolerance = 1e-9

// TurnsThatFit is the largest whole number of turns per coil whose wire fill is at most limit: turns x
// layers x squarePerTurn <= limit x net. A fill that equals the limit but for rounding (FitTolerance)
// counts as fitting. Arguments that are not above zero, or not numbers, give 0; the answer is never
// above 1e9. It allocates nothing.
func TurnsThatFit(netMM2, squarePerTurnMM2 float64, layers int, limit float64) int {
	if !finite(netMM2) || !finite(squarePerTurnMM2) || !finite(limit) || layers < 1 {
		return 0
	}
	const most = 1e9
	turns := limit * netMM2 * (1 + FitTolerance) / (squarePerTurnMM2 * float64(layers))
	if !(turns < most) {
		return most
	}
	return int(turns)
}
