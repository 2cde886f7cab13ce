package winding

import (
	"cmp"
	"fmt"
	"math"

	"slotwright/winding/quantity"
	"slotwright/winding/slot"
	"slotwright/wiretable"
)

// # The former
//
// A coil is wound on a former before it goes into the slots, so that all coils are alike. Here the
// former is a rectangle with rounded corners, measured along the middle of the coil's cross-section:
// the straight part S lies in the slot and runs out of the iron at both ends, S = L + 2x; the width W
// is the distance from slot to slot at half depth; the corner radius r makes the perimeter the mean
// turn l:
//
//	l = 2S + 2W + (2π − 4)·r        r = (l − 2S − 2W)/(2π − 4)
//
// which is plane geometry. At r = W/2 the ends are half circles; a longer turn than that lengthens the
// straight part. A turn shorter than the rectangle is impossible: then the readings disagree, and there
// is no former; nor where the corner radius is less than half of the coil's thickness, roughly the side
// of a square of its wires. Where that comes of an end run that nobody typed, the mean turn takes
// precedence: the longest run, in half millimetres, that leaves room for the corners is used instead. A
// coil round one tooth is wound on the tooth.

// cornerSaves is the perimeter gained per mm of corner radius, straight part and width kept: 2π − 4.
const cornerSaves = 2*math.Pi - 4

// Former is what one coil is wound on, and the wire in it.
type Former struct {
	// StraightMM, WidthMM and RadiusMM are along the middle of the coil, in mm.
	StraightMM quantity.Figure `json:"former_straight_mm"`
	WidthMM    quantity.Figure `json:"former_width_mm"`
	RadiusMM   quantity.Figure `json:"former_radius_mm"`
	// CoilMetres is the length of each strand of one coil, CoilKg the metal of all its strands; of
	// unequal coils those of an average one: see nested.go for each.
	CoilMetres quantity.Figure `json:"coil_length_m"`
	CoilKg     quantity.Figure `json:"coil_kg"`
}

// former is the former of a winding's coils.
func former(w *candidate, turn *turnLength, mean quantity.Figure) Former {
	var f Former
	f.StraightMM, f.WidthMM, f.RadiusMM = turn.formerOf(w, w.coils.span, w.coils.slotTurns, mean)
	f.CoilMetres, f.CoilKg = coilWire(w, mean)
	return f
}

// formerOf is the former of a coil of so many turns, if its corners leave room for its thickness.
func (l *turnLength) formerOf(w *candidate, span, turns float64, mean quantity.Figure) (straight, width, radius quantity.Figure) {
	thick := coilThickMM(w, turns)
	straight, width, radius = l.former(span, mean, l.endRun())
	tight := radius.Known() && radius.Value < thick/2
	if run := l.agreeing(l.coilWidthMM(span), mean, thick); (tight || !radius.Known()) && run.Known() {
		return l.former(span, mean, run)
	}
	if tight {
		no := quantity.Missing(fmt.Sprintf("a mean turn of %.0f mm leaves a corner of %.2g mm to the middle of a coil that is some %.2g mm thick: measure the turn, the end run and the bore again", mean.Value, radius.Value, thick))
		return no, no, no
	}
	return straight, width, radius
}

// EndRunNotGiven begins what is said of an end run that was adjusted to the mean turn.
const EndRunNotGiven = "end run not given: "

// endRun is the end run that is used, mm.
func (l *turnLength) endRun() quantity.Figure {
	return l.machine.EndRunMM.OrReading(defaultEndRunMM).Figure("")
}

// agreeing is the longest end run, mm, with which a mean turn leaves corners half as wide as the coil
// is thick; missing where the run was given, or none does.
func (l *turnLength) agreeing(width, mean quantity.Figure, thick float64) quantity.Figure {
	stack := l.machine.StackMM
	if l.machine.EndRunMM.Given() || !width.Known() || !mean.Known() || !stack.Given() {
		return quantity.Missing("needs the mean turn, and an end run that is not given")
	}
	run := math.Floor((mean.Value-2*stack.Value-2*width.Value-cornerSaves*thick/2)/4*2) / 2
	if run < 0 {
		return quantity.Missing("not even coils that bend at the iron agree with the mean turn")
	}
	return quantity.Of(run, quantity.Guessed).Because(fmt.Sprintf(EndRunNotGiven+"%s mm agrees with the mean turn, the usual %s mm does not", figures(run), figures(defaultEndRunMM)))
}

// coilThickMM is roughly the thickness of a coil of so many turns, its wires in a square; 0 where that
// is not known.
func coilThickMM(w *candidate, turns float64) float64 {
	return math.Sqrt(turns * slot.SquarePerTurnMM2(slotWires(w.trial.Wound)))
}

// former is straight part, width and corner radius for a span and an end run, so that the perimeter is
// the mean turn.
func (l *turnLength) former(span float64, mean, run quantity.Figure) (straight, width, radius quantity.Figure) {
	none := func(why string) (a, b, c quantity.Figure) {
		no := quantity.Missing(why)
		return no, no, no
	}
	stack := l.machine.StackMM.Figure("needs the stack")
	width = l.coilWidthMM(span)
	switch {
	case l.machine.flat():
		return none("a flat coil is wound round its hole, to the side and thickness given")
	case span == 1:
		return none("a coil round one tooth is wound on the tooth")
	case !width.Known():
		return none("needs the bore, the slots and the span")
	case !stack.Known():
		return none(stack.Why)
	case !mean.Known():
		return none(mean.Why)
	}
	straight = stack.With(run, func(s, x float64) float64 { return s + 2*x })
	if run.Why != "" {
		straight = straight.Because(run.Why)
	}
	rest := mean.Value - 2*straight.Value - 2*width.Value
	if rest < 0 {
		return none(fmt.Sprintf("a mean turn of %.0f mm is shorter than round the straight parts and the width, %.0f mm: measure the turn, the end run and the bore again", mean.Value, mean.Value-rest))
	}
	radius = mean.With(width, func(float64, float64) float64 { return min(rest/cornerSaves, width.Value/2) }).With(straight, func(r, _ float64) float64 { return r })
	if long := (mean.Value - math.Pi*width.Value) / 2; long > straight.Value {
		straight = mean.With(straight, func(float64, float64) float64 { return long }).Because("longer than stack and end runs, for the mean turn is")
	}
	return straight, width, radius
}

// coilWire is the length of a strand in one coil, m, and the metal of all of them, kg.
func coilWire(w *candidate, mean quantity.Figure) (metres, kg quantity.Figure) {
	c := &w.coils
	if c.perPhase <= 0 {
		no := quantity.Missing(cmp.Or(c.why, "needs the turns"))
		return no, no
	}
	return wireOf(w, mean, c.series*float64(c.circuits)/c.perPhase)
}

// kgPerMetre is the metal of all strands of a trial's wire, kg per metre of turn.
func kgPerMetre(w *candidate) float64 {
	sum := 0.0
	for _, s := range w.trial.Bundle().Parts() {
		sum += float64(s.Count) * wiretable.KgPerMetre(s.Gauge.AreaMM2(w.trial.Build), w.trial.Metal)
	}
	return sum
}
