package winding

import (
	"math"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
)

// The inductance of a phase, best route first (each in package field, with its source):
//
//  1. a short-circuit reading of the old winding. It wins over a bridge, which works at a
//     thousandth of the current and can read half of it.
//  2. a bridge (LCR meter) on the old winding's leads.
//  3. the plate: the amps that a machine far above cut-in comes to.
//  4. geometry: what crosses the gap, the slots and the end turns.
//
// Routes 1 to 3 speak of the old winding; the gap's part goes over with (N·kw)², the
// leakage with N², in the proportion that geometry gives, or all with (N·kw)² where
// there is no geometry. The lumped value leaves saturation and saliency out: 15 %.

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
func (b *Bench) inductance(t job.Trial, c coilSet, k layoutKey) Inductance {
	own := b.geometry(c, k, b.meanOf(c))
	if b.oldHenries.Known() && c.effective > 0 && b.old.effective > 0 && c.relative == b.old.relative {
		share := 1.0
		old := b.geometry(b.old, b.keyOf(b.oldAsTrial()), b.meanOf(b.old))
		if old.gap > 0 {
			share = old.gap / (old.gap + old.leakage)
		}
		working, turns := sq(c.effective/b.old.effective), sq(c.series/b.old.series)
		l := b.oldHenries.Times(share*working + (1-share)*turns)
		return Inductance{l.Times(1000), b.oldHenriesFrom}
	}
	if own.why != "" {
		return Inductance{quantity.Missing(own.why), ""}
	}
	return Inductance{quantity.Of((own.gap+own.leakage)*1000, quantity.Guessed), "geometry, an estimate"}
}

// oldInductance is routes 1 to 3.
func (b *Bench) oldInductance() (quantity.Figure, string) {
	if f := b.shortHenries(); f.Known() {
		return f, "a short-circuit reading of the old winding"
	}
	if f := b.bridgeHenries(); f.Known() {
		return f, "an inductance bridge on the old winding"
	}
	if f := b.plateHenries(); f.Known() {
		return f, "the plate of the old winding"
	}
	return quantity.Missing("needs a short-circuit reading, a bridge reading, the plate or the air gap"), ""
}

// shortHenries is the mean over the short-circuit readings.
func (b *Bench) shortHenries() quantity.Figure {
	poles := b.job.Machine.Poles
	perRPM := b.flux.perTurn.Times(b.old.effective)
	if b.old.effective <= 0 || !perRPM.Known() || !poles.Given() {
		return quantity.Missing("needs the flux and the poles")
	}
	ohms := b.oldPhaseOhms()
	sum, n := 0.0, 0.0
	for _, s := range b.job.Shorts {
		if !s.RPM.Given() || !s.LineAmps.Given() || s.LineAmps.Value == 0 {
			continue
		}
		amps := s.LineAmps.Value
		if b.phases == 3 && b.job.Old.Connection == layout.Delta {
			amps /= math.Sqrt(3)
		}
		henries, err := field.FromShort(b.perRPMAt(s.FieldAmps)*b.old.effective*s.RPM.Value, amps, ohms.Value, s.RPM.Value*poles.Value/120)
		if err != nil {
			continue
		}
		sum += henries
		n++
	}
	if n == 0 {
		return quantity.Missing("needs a short-circuit reading")
	}
	return quantity.Of(sum/n, perRPM.Origin)
}

// oldPhaseOhms is a phase of the old winding: as measured, else as worked out.
func (b *Bench) oldPhaseOhms() quantity.Figure {
	o := b.job.Old
	if o.LeadOhms.Given() {
		return o.LeadOhms.Figure("").Times(o.Metal.TempFactor(o.LeadOhmsC.Or(20), 20) / b.leadPerPhase(o.Connection))
	}
	return b.oldOhms.PhaseOhms20
}

// perRPMAt is the source's volts per rpm and turn at a field current, where readings
// at several make that known.
func (b *Bench) perRPMAt(field quantity.Reading) float64 {
	if b.flux.at != nil && field.Given() {
		return b.flux.at(field.Value)
	}
	return b.flux.perTurn.Value
}

// bridgeHenries is the bridge reading as a phase.
func (b *Bench) bridgeHenries() quantity.Figure {
	mh := b.job.Old.LeadMilliHenries
	if !mh.Given() {
		return quantity.Missing("needs a bridge reading")
	}
	if b.phases == 1 { // the leads are the phase
		return mh.Figure("").Times(1e-3)
	}
	henries, err := field.FromBridge(mh.Value, b.job.Old.Connection == layout.Delta)
	return quantity.OrError(henries, err, mh.Origin)
}

// plateHenries is what the plate's amps speak of.
func (b *Bench) plateHenries() quantity.Figure {
	o, poles := b.job.Old, b.job.Machine.Poles
	if !o.RatedAmps.Given() || !o.RatedRPM.Given() || !poles.Given() || b.phases != 3 || b.old.effective <= 0 || !b.flux.perTurn.Known() {
		return quantity.Missing("needs the plate's amps and speed")
	}
	hot := o.Metal.TempFactor(20, plateC)
	henries, err := field.Plate{
		DCAmps: o.RatedAmps.Value / float64(b.sets), EMFPeak: math.Sqrt2 * b.flux.perTurn.Value * b.old.effective * o.RatedRPM.Value,
		Hertz: o.RatedRPM.Value * poles.Value / 120, DCVolts: o.RatedVolts.Or(b.dc.absorption.Value) + 2*b.dc.diodeVolts.Value,
		Ohms: b.oldPhaseOhms().Value * hot, Delta: o.Connection == layout.Delta,
	}.Henries()
	return quantity.OrError(henries, err, quantity.Guessed)
}

// plateC is the temperature that a winding has at its plate's amps; common practice, no
// source.
const plateC = 100.0

// parts is the inductance by geometry, henries of a phase.
type parts struct {
	gap, leakage float64
	why          string
}

// geometry works out the three parts.
func (b *Bench) geometry(c coilSet, k layoutKey, mean quantity.Figure) parts {
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
	return b.crossings(c, k, mean, effective)
}

// crossings is what crosses an effective gap, the slots and the end turns.
func (b *Bench) crossings(c coilSet, k layoutKey, mean quantity.Figure, gapMM float64) parts {
	m, p := b.job.Machine, b.job.Machine.Poles.Value/2
	all := float64(b.phases * b.sets)
	gap, err := field.InductanceAirGap(float64(b.phases), m.BoreMM.Value, m.StackMM.Value, gapMM, m.Poles.Value, c.series, c.kw[0])
	if err != nil {
		return parts{why: err.Error()}
	}
	permeance := 1.0
	if b.roomWhy[k.layers-1] == "" {
		permeance = b.permeance[k.layers-1]
	}
	leakage, err := field.InductanceSlot(m.StackMM.Value, c.series, p, m.Slots.Value/(m.Poles.Value*all), permeance)
	if err != nil {
		return parts{why: err.Error()}
	}
	if mean.Known() {
		end, err := field.EndLeakage(max(0, mean.Value/2-m.StackMM.Value), c.series, p, field.EndPermeance)
		if err != nil {
			return parts{why: err.Error()}
		}
		leakage += end
	}
	return parts{gap: gap, leakage: leakage}
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
func (b *Bench) meanOf(c coilSet) quantity.Figure {
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
