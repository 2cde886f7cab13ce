package winding

import (
	"math"

	"slotwright/winding/field"
	"slotwright/winding/slot"
)

// The inductance of a phase, best route first:
//
//  1. a short-circuit reading of the old winding: X = √((E/I)² − R²). It wins over a
//     bridge, which works at a thousandth of the current and can read half of it.
//  2. a bridge (LCR meter) on the old winding's leads: star 2L, delta 2L/3.
//  3. the plate: I_dc = (3/π)·√(Ê² − (2V'/π)²)/(ωL), Ê the peak of a phase, which a
//     machine far above cut-in comes to (Caliskan, Perreault, Jahns and Kassakian, IEEE
//     TCAS-I 50 (2003), from memory).
//  4. geometry: air gap m·μ0·D·L·(kw·N)²/(π·g·p²) with g the effective gap, slots 2·μ0·L·N²·λ/(p·q), end turns.
//
// Routes 1 to 3 speak of the old winding; the gap's part goes over with (N·kw)², the
// leakage with N², in the proportion that geometry gives, or all with (N·kw)² where
// there is no geometry. The lumped value leaves saturation and saliency out: 15 %.

const mu0 = 4e-7 * math.Pi // H/m

// leakageEndPermeance is that of the end turns per length, for N²·4m·q/Q·μ0·l (Pyrhönen
// et al. give 0.2 to 0.5 by shape; from memory).
const leakageEndPermeance = 0.3

// saturated is how much longer a gap looks when the iron behind it is full, as it is in a
// wound-rotor alternator at full field: 0.299 mH unsaturated against 0.170 mH at 4.75 A of
// field, a 180 A claw-pole machine (Sarafianos et al. 2015, as digitised in a public
// repository).
const saturated = 0.299 / 0.170

// carter is Carter's factor of the slots over a gap; 1 where the mouth is not known.
func (b *Bench) carter(gapMM float64) float64 {
	m := b.job.Machine
	if !m.BoreMM.Given() || !m.Slots.Given() || !b.job.Slot.MouthMM.Given() {
		return 1
	}
	return field.Carter(math.Pi*m.BoreMM.Value/m.Slots.Value, b.job.Slot.MouthMM.Value, gapMM)
}

// inductance is that of a trial, per phase.
func (b *Bench) inductance(t Trial, c coilSet, k layoutKey) Inductance {
	own := b.geometry(c, k, b.meanOf(c))
	if b.oldHenries.Known() && c.effective > 0 && b.old.effective > 0 && c.relative == b.old.relative {
		share := 1.0
		old := b.geometry(b.old, b.keyOf(b.oldAsTrial()), b.meanOf(b.old))
		if old.gap > 0 {
			share = old.gap / (old.gap + old.leakage)
		}
		working, turns := sq(c.effective/b.old.effective), sq(c.series/b.old.series)
		l := b.oldHenries.times(share*working + (1-share)*turns)
		return Inductance{l.times(1000), b.oldHenriesFrom}
	}
	if own.why != "" {
		return Inductance{missing(own.why), ""}
	}
	return Inductance{derived((own.gap+own.leakage)*1000, Guessed), "geometry, an estimate"}
}

// oldInductance is routes 1 to 3.
func (b *Bench) oldInductance() (Figure, string) {
	if f := b.shortHenries(); f.Known() {
		return f, "a short-circuit reading of the old winding"
	}
	if f := b.bridgeHenries(); f.Known() {
		return f, "an inductance bridge on the old winding"
	}
	if f := b.plateHenries(); f.Known() {
		return f, "the plate of the old winding"
	}
	return missing("needs a short-circuit reading, a bridge reading, the plate or the air gap"), ""
}

// shortHenries is the mean over the short-circuit readings.
func (b *Bench) shortHenries() Figure {
	poles := b.job.Machine.Poles
	perRPM := b.flux.perTurn.times(b.old.effective)
	if b.old.effective <= 0 || !perRPM.Known() || !poles.Given() {
		return missing("needs the flux and the poles")
	}
	ohms := b.oldPhaseOhms()
	sum, n := 0.0, 0.0
	for _, s := range b.job.Shorts {
		if !s.RPM.Given() || !s.LineAmps.Given() || s.LineAmps.Value == 0 {
			continue
		}
		amps := s.LineAmps.Value
		if b.phases == 3 && b.job.Old.Connection == Delta {
			amps /= math.Sqrt(3)
		}
		z := b.perRPMAt(s.FieldAmps) * b.old.effective * s.RPM.Value / amps
		r := 0.0
		if ohms.Known() {
			r = ohms.Value
		}
		if z <= r {
			continue
		}
		sum += math.Sqrt(z*z-r*r) / (2 * math.Pi * s.RPM.Value * poles.Value / 120)
		n++
	}
	if n == 0 {
		return missing("needs a short-circuit reading")
	}
	return derived(sum/n, perRPM.Origin)
}

// oldPhaseOhms is a phase of the old winding: as measured, else as worked out.
func (b *Bench) oldPhaseOhms() Figure {
	o := b.job.Old
	if o.LeadOhms.Given() {
		return o.LeadOhms.figure("").times(o.Metal.TempFactor(o.LeadOhmsC.Or(20), 20) / b.leadPerPhase(o.Connection))
	}
	return b.oldOhms.PhaseOhms20
}

// perRPMAt is the source's volts per rpm and turn at a field current, where readings
// at several make that known.
func (b *Bench) perRPMAt(field Reading) float64 {
	if b.flux.at != nil && field.Given() {
		return b.flux.at(field.Value)
	}
	return b.flux.perTurn.Value
}

// bridgeHenries is the bridge reading over what two leads see of a phase.
func (b *Bench) bridgeHenries() Figure {
	mh := b.job.Old.LeadMilliHenries
	return mh.figure("needs a bridge reading").times(1e-3 / b.leadPerPhase(b.job.Old.Connection))
}

// plateHenries turns the formula above round.
func (b *Bench) plateHenries() Figure {
	o, poles := b.job.Old, b.job.Machine.Poles
	if !o.RatedAmps.Given() || !o.RatedRPM.Given() || !poles.Given() || b.phases != 3 || b.old.effective <= 0 || !b.flux.perTurn.Known() {
		return missing("needs the plate's amps and speed")
	}
	volts := o.RatedVolts.Or(b.dc.absorption.Value) + 2*b.dc.diodeVolts.Value
	peak := math.Sqrt2 * b.flux.perTurn.Value * b.old.effective * o.RatedRPM.Value
	scale := 1.0
	if o.Connection == Delta { // of the star that stands for it
		peak /= math.Sqrt(3)
		scale = 3
	}
	under := sq(peak) - sq(2*volts/math.Pi)
	if under <= 0 {
		return missing("the plate's speed is below cut-in")
	}
	omega := 2 * math.Pi * o.RatedRPM.Value * poles.Value / 120
	return derived(scale*3/math.Pi*math.Sqrt(under)/(omega*o.RatedAmps.Value), Guessed)
}

// parts is the inductance by geometry, henries of a phase.
type parts struct {
	gap, leakage float64
	why          string
}

// geometry works out the three parts.
func (b *Bench) geometry(c coilSet, k layoutKey, mean Figure) parts {
	m := b.job.Machine
	gap := m.AirGapMM
	if b.job.Field.MagnetGapMM.Given() && b.job.Field.Kind == "magnets" {
		gap = b.job.Field.MagnetGapMM
	}
	switch {
	case c.plan == nil:
		return parts{why: c.why}
	case c.series <= 0:
		return parts{why: "needs the turns"}
	case !gap.Given():
		return parts{why: "needs a short-circuit or bridge reading, or the air gap"}
	case !m.BoreMM.Given() || !m.StackMM.Given():
		return parts{why: "needs the bore and the stack"}
	}
	effective := gap.Value * b.carter(gap.Value)
	if b.job.Field.Kind != "magnets" {
		effective *= saturated
	}
	if b.job.Field.Kind == "magnets" { // the magnet is gap to the winding's field, μr about 1.05
		effective += b.job.Field.MagnetMM.Or(0) / 1.05
	}
	p, stack := m.Poles.Value/2, m.StackMM.Value/1000
	q := m.Slots.Value / (m.Poles.Value * float64(b.phases*b.sets))
	out := parts{gap: float64(b.phases) * mu0 * m.BoreMM.Value / 1000 * stack * sq(c.effective) / (math.Pi * effective / 1000 * sq(p))}
	permeance := 1.0
	if b.roomWhy[k.layers-1] == "" {
		permeance = b.permeance[k.layers-1]
	}
	out.leakage = 2 * mu0 * stack * sq(c.series) * permeance / (p * q)
	if mean.Known() {
		end := max(0, mean.Value/1000-2*stack) / 2
		out.leakage += 4 * float64(b.phases*b.sets) / m.Slots.Value * q * sq(c.series) * mu0 * end * leakageEndPermeance
	}
	return out
}

// doubtInductance says when two readings of the same thing disagree.
func (b *Bench) doubtInductance(d *doubts) {
	short, bridge := b.shortHenries(), b.bridgeHenries()
	if !short.Known() || !bridge.Known() {
		return
	}
	if r := bridge.Value / short.Value; r < 0.75 || r > 1.33 {
		d.add(Doubt, "old.inductance", "", "the short-circuit reading is used: it was taken at the current that matters", "small-signal and short-circuit inductance of one machine can differ by a factor of two",
			"the bridge says %.3g mH a phase, the short circuit %.3g mH", bridge.Value*1000, short.Value*1000)
	}
}

// meanOf is the mean turn of a coil set.
func (b *Bench) meanOf(c coilSet) Figure {
	f, _ := b.meanTurn(c.span)
	return f
}

// findPermeance works the slots' leakage out once: it costs more than a trial.
func (b *Bench) findPermeance() {
	for n := range b.rooms {
		if b.roomWhy[n] == "" {
			b.permeance[n] = slot.LeakagePermeance(b.rooms[n], n+1)
		}
	}
}

func sq(v float64) float64 { return v * v }
