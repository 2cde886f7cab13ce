package winding

import (
	"fmt"
	"math"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/layout"
)

// doubts collects what the job calls out.
type doubts struct{ list []Finding }

func (d *doubts) add(s Severity, path, trial, fix, source, format string, args ...any) {
	d.list = append(d.list, Finding{s, path, trial, fmt.Sprintf(format, args...), fix, source})
}

// Limits of what is believable; common practice, no source, unless said.
const (
	believableCopperFill = 0.60 // bare copper over bare slot; by hand 0.3 to 0.45
	hexagonalWireFill    = 1.1547
	manyHertz            = 1000.0
)

// findings is everything doubtful or broken, job first, then trial by trial.
func (b *Bench) findings(o *Outcome) []Finding {
	d := &doubts{}
	b.doubtMachine(d)
	b.doubtReadings(d)
	b.doubtInductance(d)
	for i := range o.Trials {
		b.doubtTrial(d, i, b.job.Trials[i], &o.Trials[i])
	}
	return d.list
}

// doubtMachine is about the iron.
func (b *Bench) doubtMachine(d *doubts) {
	m, s := b.job.Machine, b.job.Slot
	if b.roomWhy[0] != "" && (s.AreaMM2.Given() || s.TopMM.Given()) {
		d.add(Broken, "slot.area", "", "measure again", "", "%s", b.roomWhy[0])
	}
	if poles := m.Poles.Whole(); poles%2 != 0 {
		d.add(Doubt, "machine.poles", "", fmt.Sprintf("count again: %d or %d", poles-1, poles+1), "", "%d poles: poles come in pairs, north and south", poles)
	} else if c := b.layouts[b.keyOf(job.Trial{})]; c.plan == nil && !c.relative {
		d.add(Doubt, "machine.slots", "", "count slots and poles again", "star of slots", "%s", c.why)
	}
	if s.MouthMM.Given() && s.TopMM.Given() && s.MouthMM.Value > s.TopMM.Value {
		d.add(Doubt, "slot.mouth", "", "measure both again", "", "the mouth, %.2f mm, is wider than the slot below it, %.2f mm", s.MouthMM.Value, s.TopMM.Value)
	}
	if b.job.Slot.FillLimit.Or(0) > 0.80 {
		d.add(Doubt, "slot.fill_limit", "", "0.65 to 0.75 is what hands do", "common practice, no source", "a fill limit of %.2f is more than can be wound by hand", s.FillLimit.Value)
	}
	if top := b.speeds.top; top.Known() && m.Poles.Given() {
		if hz := top.Value * m.Poles.Value / 120; hz > manyHertz {
			d.add(Doubt, "target.top", "", "check the ratio and the poles", "common practice, no source", "%.0f rpm with %d poles is %.0f Hz", top.Value, m.Poles.Whole(), hz)
		}
	}
	if slow, top := b.speeds.slow, b.speeds.top; slow.Known() && top.Known() && slow.Value > top.Value {
		d.add(Doubt, "target.slow", "", "swap them", "", "the slow speed, %.0f rpm, is above the top speed, %.0f rpm", slow.Value, top.Value)
	}
	if m.AirGapMM.Given() && m.BoreMM.Given() && m.AirGapMM.Value > m.BoreMM.Value/10 {
		d.add(Doubt, "machine.air_gap", "", "it is half the difference of the two diameters", "", "an air gap of %.2f mm is large for a bore of %.0f mm", m.AirGapMM.Value, m.BoreMM.Value)
	}
}

// doubtReadings is about the old winding's readings.
func (b *Bench) doubtReadings(d *doubts) {
	for i, s := range b.job.Spins {
		if s.RPM.Given() != s.LineVolts.Given() {
			d.add(Doubt, fmt.Sprintf("spin[%d].speed", i), "", "a reading is a speed and a voltage", "", "the reading is not whole and is not used")
		}
	}
	if spread := b.flux.spread; spread > 0.10 {
		d.add(Doubt, "spin[0].line", "", "take them again at one field current, with a true-rms meter", "", "the spin-up readings differ by %.0f %% in volts per rpm", spread*100)
	}
	if b.flux.extrapolated {
		d.add(Doubt, "field.current", "", "take a spin-up reading at the field current it will run at", "", "the field current, %.2f A, is above the highest one read: the flux there is a guess", b.flux.fieldAmps.Value)
	}
	geo, old := b.geometricTurnMM(b.layouts[b.keyOf(job.Trial{})].span), b.oldTurnMM()
	if m := b.job.Machine.MeanTurnMM; m.Given() && old.Known() && math.Abs(old.Value/m.Value-1) > 0.25 {
		d.add(Doubt, "old.lead", "", "check the old turns, wire, strands, circuits and connection", "", "the old winding's ohms speak of a mean turn of %.0f mm, measured are %.0f mm", old.Value, m.Value)
	} else if !m.Given() && old.Known() && geo.Known() && math.Abs(old.Value/geo.Value-1) > 0.35 {
		d.add(Doubt, "old.lead", "", "check the old turns, wire, strands, circuits and connection", "", "the old winding's ohms speak of a mean turn of %.0f mm, bore and stack of about %.0f mm", old.Value, geo.Value)
	}
}

// doubtTrial is about one trial.
func (b *Bench) doubtTrial(d *doubts, i int, t job.Trial, o *TrialOutcome) {
	at := func(field string) string { return fmt.Sprintf("trial[%d].%s", i, field) }
	if f := o.WireFill; f.Known() && f.Value > o.FillLimit.Value {
		fits := ""
		if o.TurnsThatFit.Known() && o.Turns.Known() {
			fits = fmt.Sprintf("%.0f turns fit; or thinner wire, or fewer strands", o.TurnsThatFit.Value)
		}
		severity := Broken
		d.add(severity, at("turns"), t.Name, fits, "", "wire fill %.2f is over the limit of %.2f", f.Value, o.FillLimit.Value)
	}
	if f := o.WireFill; f.Known() && f.Value > hexagonalWireFill {
		d.add(Broken, at("turns"), t.Name, "fewer turns or thinner wire", "hexagonal packing, 2/√3", "wire fill %.2f cannot be: round wire packed perfectly reaches 1.15", f.Value)
	}
	if f := o.CopperFill; f.Known() && f.Value > believableCopperFill {
		d.add(Doubt, at("gauge"), t.Name, "check slot area, turns and wire", "common practice, no source; hand-wound slots are near 0.30 (space factor, bare copper over bare slot)", "copper fill %.2f is more than round wire in a lined slot reaches by hand", f.Value)
	}
	if s := o.MouthSpareMM; s.Known() && s.Value <= 0 {
		d.add(Doubt, at("gauge"), t.Name, "thinner wire with more strands", "", "%s", o.MouthText)
	}
	if !o.Kw1.Known() && o.Kw1.Why != "" && b.job.Machine.Slots.Given() && b.keyOf(t) != b.keyOf(job.Trial{}) {
		d.add(Doubt, at("span"), t.Name, "", "star of slots", "%s", o.Kw1.Why)
	}
	if len(o.CircuitChoices) > 0 && !contains(o.CircuitChoices, o.Circuits) {
		d.add(Broken, at("circuits"), t.Name, fmt.Sprintf("this layout allows %s", listOf(o.CircuitChoices)), "equal EMF phasors", "%d circuits: the coils of a phase do not split into %d equal sets, and currents would circulate", o.Circuits, o.Circuits)
	}
	if t.Connection == layout.Delta && o.Kw3.Known() && o.Kw3.Value > 0.05 {
		d.add(Note, at("connection"), t.Name, "star, or a span of two thirds of a pole pitch", "third-harmonic EMFs are in phase in the three windings and drive a current round the delta", "delta with kw3 = %.2f: a third-harmonic current goes round the delta, heats it and gives nothing", o.Kw3.Value)
	}
	b.doubtRunning(d, at, t, o)
}

// doubtRunning is about what a trial does when it turns.
func (b *Bench) doubtRunning(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	if c, s := o.CutInRPM, b.speeds.slow; b.job.Drive.Kind != "wind" && c.Known() && s.Known() && c.Value > s.Value {
		d.add(Doubt, at("turns"), t.Name, fmt.Sprintf("about %.0f turns would", math.Ceil(o.Turns.Value*c.Value/s.Value)), "", "charging begins at %.0f rpm, above the slow speed of %.0f rpm", c.Value, s.Value)
	}
	if f := o.ACFactor; f.Known() && f.Value > 1.1 {
		d.add(Doubt, at("gauge"), t.Name, fmt.Sprintf("twice the strands with the same metal bring it to %.2f", o.ACFactorSplit.Value), "Dowell; flagged above 1.1", "at the top speed the wire's AC resistance is %.2f times its DC resistance", f.Value)
	}
	b.doubtOpen(d, at, t, o)
	o.Charging.doubt(d, at, t, o)
	o.Driven.doubt(d, at, t)
}

// ordinaryInsulation is the volts rms between leads up to which ordinary enamel, liner and
// sleeving of a low-voltage stator are not doubted; common practice, no source.
const ordinaryInsulation = 250.0

// doubtOpen is about the voltage with nothing connected, at the top speed and in a gale.
func (b *Bench) doubtOpen(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	worst, where := o.OpenAtTopVolts, "at the top speed"
	if g := o.OpenAtGaleVolts; g.Known() && g.Value > worst.Value {
		worst, where = g, "in the gale"
	}
	if !worst.Known() {
		return
	}
	if r := b.job.Battery.DiodeReverseVolts; r.Given() {
		fix := fmt.Sprintf("diodes of %.0f V and more", math.Ceil(worst.Value*2/50)*50)
		switch open, err := drive.OpenAt(1, worst.Value/math.Sqrt2, r.Value, 0); {
		case err != nil:
		case open.DiodesBroken:
			d.add(Broken, "battery.diode_reverse", t.Name, fix, "", "unloaded %s the diodes see %.0f V, their rating is %.0f V", where, worst.Value, r.Value)
		case open.DiodesTight:
			d.add(Doubt, "battery.diode_reverse", t.Name, fix, "half the rating; common practice, no source", "unloaded %s the diodes see %.0f V, more than half of their %.0f V: no reserve for a battery that comes off", where, worst.Value, r.Value)
		}
	}
	if line := worst.Value / math.Sqrt2; line > ordinaryInsulation {
		d.add(Doubt, at("turns"), t.Name, "liner, sleeving and enamel rated for it, proved by someone with the proper tester; or fewer turns", "common practice, no source",
			"unloaded %s there are %.0f V rms between leads: more than the insulation of a low-voltage stator is made for", where, line)
	}
}

func contains(list []int, n int) bool {
	for _, v := range list {
		if v == n {
			return true
		}
	}
	return false
}

// listOf writes "1, 2 or 4".
func listOf(list []int) string {
	s := ""
	for i, v := range list {
		switch {
		case i == 0:
		case i == len(list)-1:
			s += " or "
		default:
			s += ", "
		}
		s += fmt.Sprint(v)
	}
	return s
}
