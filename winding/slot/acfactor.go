package slot

import "math"

// AC resistance of wires stacked in a slot
//
// Leakage flux crosses the slot and is strongest near the mouth; it drives eddy currents in the wires,
// so their resistance to alternating current is higher than to direct current, by a factor that grows
// with the number of wires stacked. The one-dimensional theory (Field, Trans. AIEE 24, 1905; Dowell,
// Proc. IEE 113(8), 1966; Pyrhönen et al., Design of Rotating Electrical Machines, ch. 5; all from
// memory, expansions checked in the tests) gives for m layers, averaged over the layers,
//
//	k = φ(ξ) + (m² - 1)/3 · ψ(ξ)
//	φ(ξ) = ξ (sinh 2ξ + sin 2ξ)/(cosh 2ξ - cos 2ξ)
//	ψ(ξ) = 2ξ (sinh ξ - sin ξ)/(cosh ξ + cos ξ)
//	ξ = h √(½ ω μ0 σ · bc/b)
//
// with h the height of a conductor, bc the width of metal in one layer and b the slot's width. A round
// wire of diameter d is replaced by a square of equal area, h = d√π/2. At low ξ that overstates the
// extra loss by π/3, 4.7 %, against the exact eddy loss of a round wire in a uniform field (Sullivan,
// IEEE Trans. Power Electronics 14(2), 1999; from memory): the safe side. At ξ above 2 or so, in few
// layers, it is a guide only.
//
// Every wire is taken to carry the same current. Strands in hand joined at both ends need not: one that
// stays near the bottom links more flux, and current circulates between strands, which is not counted
// here. Loose strands that change places from turn to turn come close to equal currents.

// mu0 is the magnetic constant, H/m (CODATA 2018: 1.25663706212e-6).
const mu0 = 1.25663706212e-6

// squareOfRound is the side of the square with a round wire's area, over its diameter.
var squareOfRound = math.Sqrt(math.Pi) / 2

// ACFactor is the AC resistance over the DC resistance, in the slot, of round wires with bare diameter
// wireBareMM that lie layersDeep over one another (1 or more, need not be whole; less is taken as 1)
// and acrossWires side by side in a slot slotWidthMM wide, at hertz and resistivity ohmMetre (1.72e-8
// for copper at 20 °C). The coil heads are hardly affected: weight the factor by the share of the turn
// that lies in the slot. Metal wider than the slot is taken as filling it. Arguments that are not above
// zero give 1; a factor above 1e6, which means nothing, is cut there.
func ACFactor(wireBareMM, layersDeep, hertz, ohmMetre, slotWidthMM, acrossWires float64) float64 {
	xi, ok := reducedHeight(wireBareMM, hertz, ohmMetre, slotWidthMM, acrossWires)
	if !ok || !finite(layersDeep) {
		return 1
	}
	m := max(1, layersDeep)
	return min(ownFactor(xi)+(m*m-1)/3*otherFactor(xi), 1e6)
}

// ACFactorSplit is ACFactor after every wire is split into strands of the same total metal: diameter /
// √strands, and √strands times as many both deep and across. At low frequency the extra loss falls as
// 1/strands. It assumes that the strands share the current; see above. strands below 1 is taken as 1.
func ACFactorSplit(wireBareMM, layersDeep, hertz, ohmMetre, slotWidthMM, acrossWires float64, strands int) float64 {
	root := math.Sqrt(float64(max(1, strands)))
	return ACFactor(wireBareMM/root, max(1, layersDeep)*root, hertz, ohmMetre, slotWidthMM, acrossWires*root)
}

// reducedHeight is ξ; false when an argument is not above zero.
func reducedHeight(wireBareMM, hertz, ohmMetre, slotWidthMM, acrossWires float64) (float64, bool) {
	if !finite(wireBareMM) || !finite(hertz) || !finite(ohmMetre) || !finite(slotWidthMM) || !finite(acrossWires) {
		return 0, false
	}
	side := squareOfRound * wireBareMM
	share := min(1, acrossWires*side/slotWidthMM)
	xi := side / 1000 * math.Sqrt(math.Pi*hertz*mu0/ohmMetre*share)
	return xi, finite(xi)
}

// ownFactor is φ(ξ), a layer's loss from its own current: 1 + 4ξ⁴/45 for small ξ, ξ for large.
func ownFactor(xi float64) float64 {
	switch {
	case xi < 0.05: // the quotient loses its digits here; the next term is below 1e-11
		return 1 + 4*math.Pow(xi, 4)/45
	case xi > 20:
		return xi
	}
	return xi * (math.Sinh(2*xi) + math.Sin(2*xi)) / (math.Cosh(2*xi) - math.Cos(2*xi))
}

// otherFactor is ψ(ξ), a layer's loss in the field of the others: ξ⁴/3 for small ξ, 2ξ for large.
func otherFactor(xi float64) float64 {
	switch {
	case xi < 0.05:
		return math.Pow(xi, 4) / 3
	case xi > 20:
		return 2 * xi
	}
	return 2 * xi * (math.Sinh(xi) - math.Sin(xi)) / (math.Cosh(xi) + math.Cos(xi))
}

// LayersDeep is how many wires are stacked in the slot, and how many lie side by side, when wires of
// one overall diameter (mm) lie in square rows across the middle of the room: across = width inside the
// liner / diameter, deep = wires / across. Neither is below 1, neither is rounded. The figures suit
// ACFactor; wires counts every strand of every turn of every layer.
func LayersDeep(room Room, overallMM float64, wires int) (deep, across float64) {
	if !finite(overallMM) || wires < 1 || len(room.Inner) == 0 {
		return 1, 1
	}
	width := 2 * room.wall.reach(room.DepthMM/2, room.wall.liner)
	across = max(1, width/overallMM)
	return max(1, float64(wires)/across), across
}
