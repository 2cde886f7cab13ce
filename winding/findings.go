package winding

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slotwright/winding/job"
	"slotwright/wiretable"
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
	b.doubtWires(d)
	b.doubtFrequency(d)
	b.doubtInductance(d)
	b.doubtShorts(d)
	b.doubtCoils(d)
	b.doubtTogether(d)
	b.doubtMagnets(d)
	b.doubtFlat(d)
	b.doubtOld(d, o)
	b.doubtIron(d, o)
	b.doubtField(d)
	b.doubtFuse(d, o)
	b.doubtRecords(d, o)
	b.doubtReference(d)
	for i := range o.Trials {
		b.doubtTrial(d, i, b.job.Trials[i], &o.Trials[i])
	}
	return d.list
}

// doubtMachine is about the iron.
func (b *Bench) doubtMachine(d *doubts) {
	m, s := &b.machine, &b.job.Slot
	if _, why := b.room.of(1); why != "" && (s.AreaMM2.Given() || s.TopMM.Given()) {
		d.add(Broken, "slot.area", "", "measure again", "", "%s", why)
	}
	if poles := m.Poles.Whole(); poles%2 != 0 {
		d.add(Doubt, "machine.poles", "", fmt.Sprintf("count again: %d or %d", poles-1, poles+1), "", "%d poles: poles come in pairs, north and south", poles)
	} else if c := b.layouts.own(); c.plan == nil && !c.relative {
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

// doubtReference is about the trial the others are compared with.
func (b *Bench) doubtReference(d *doubts) {
	name := b.job.Target.Reference
	if name == "" || len(b.job.Trials) == 0 {
		return
	}
	names := make([]string, len(b.job.Trials))
	for i, t := range b.job.Trials {
		if t.Name == name {
			return
		}
		names[i] = t.Name
	}
	d.add(Doubt, "target.reference", "", "write one of "+strings.Join(names, ", "), "",
		"there is no trial %q to compare with; the first, %s, is taken", name, names[0])
}

// doubtWires asks back what a whole number is that names no system of gauges.
func (b *Bench) doubtWires(d *doubts) {
	for _, path := range b.job.BareGauges {
		g := b.job.GaugeAt(path)
		if g.IsZero() {
			continue
		}
		number := strings.TrimSuffix(g.String(), " AWG")
		other := ""
		if s, err := wiretable.Parse(number + " SWG"); err == nil {
			other = fmt.Sprintf(" (%.2f mm), or %s (%.2f mm)", g.BareMM(wiretable.Heavy), s, s.BareMM(wiretable.Heavy))
		}
		d.add(Doubt, path, "", fmt.Sprintf("write %q, %q or the diameter", g.String(), number+" SWG"), "",
			"%s of which gauge? It is taken as %s%s", number, g, other)
	}
}

// doubtReadings is about the old winding's readings.
func (b *Bench) doubtReadings(d *doubts) {
	for i, s := range b.spins {
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
	old := b.turn.old
	if m := b.job.Machine.MeanTurnMM; m.Given() && old.Known() && math.Abs(old.Value/m.Value-1) > 0.25 {
		d.add(Doubt, "old.lead", "", "check the old turns, wire, strands, circuits and connection", "", "the old winding's ohms speak of a mean turn of %.0f mm, measured are %.0f mm", old.Value, m.Value)
	} else if geo, by, doubted := b.turn.doubted(); !m.Given() && doubted {
		d.add(Doubt, "old.lead", "", "check the old turns, wire, strands, circuits and connection", "", "the old winding's ohms speak of a mean turn of %.0f mm, %s of about %.0f mm", old.Value, by, geo.Value)
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
		d.add(Broken, at("turns"), t.Name, fits, "", "wire fill %.2f is over the limit of %.2f", f.Value, o.FillLimit.Value)
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
	if !o.Kw1.Known() && o.Kw1.Why != "" && b.job.Machine.Slots.Given() && b.layouts.key(t) != b.layouts.key(job.Trial{}) {
		d.add(Doubt, at("span"), t.Name, "", "star of slots", "%s", o.Kw1.Why)
	}
	if len(o.CircuitChoices) > 0 && !slices.Contains(o.CircuitChoices, o.Circuits) {
		d.add(Broken, at("circuits"), t.Name, fmt.Sprintf("this layout allows %s", listOf(o.CircuitChoices)), "equal EMF phasors", "%d circuits: the coils of a phase do not split into %d equal sets, and currents would circulate", o.Circuits, o.Circuits)
	}
	b.doubtDelta(d, at, t, o)
	b.doubtRunning(d, at, t, o)
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

// doubtInductance says when two readings of the same thing disagree.
func (b *Bench) doubtInductance(d *doubts) {
	short, bridge := b.henries.shortHenries(), b.henries.bridgeHenries()
	if !short.Known() || !bridge.Known() {
		return
	}
	if r := bridge.Value / short.Value; r < 0.75 || r > 1.33 {
		d.add(Doubt, "old.inductance", "", "the short-circuit reading is used: it was taken at the current that matters", "small-signal and short-circuit inductance of one machine can differ by a factor of two",
			"the bridge says %.3g mH a phase, the short circuit %.3g mH", bridge.Value*1000, short.Value*1000)
	}
}

// doubtField is about a rotor current that is not the one the flux was read at, or that its
// supply cannot drive.
func (b *Bench) doubtField(d *doubts) {
	e, f := &b.rotor, &b.job.Field
	if !e.wound {
		return
	}
	switch {
	case e.guessed:
		d.add(Doubt, "field.coil", "", "measure ring to ring, cold", "",
			"the rotor coil's ohms are not given: its %.3g A are taken to come of all the supply, %.3g W off every row", e.amps.Value, e.watts.Value)
	case !e.watts.Known():
		d.add(Doubt, "field.coil", "", "measure ring to ring, cold, or the current it takes", "",
			"what the rotor takes is not known: amps and watts are before it is taken off")
	}
	if e.unmatched != "" {
		d.add(Doubt, "field.current", "", "take a second spin-up reading, at another field current: then the flux follows the current", "",
			"the flux was read at %.3g A of field, the rotor will take %.3g A: flux, short circuit and watts are those of the reading", e.amps.Value, fieldCurrent(f, &b.dc).Value)
	}
	if f.Amps.Given() && e.driven.Known() && f.Amps.Value > e.driven.Value*(1+fieldApart) {
		need := f.Amps.Value*e.coil.Ohms() + e.coil.BrushVolts
		d.add(Doubt, "field.current", "", fmt.Sprintf("measure the current warm; it needs %.3g V", need), "Ohm's law, the coil at its working temperature",
			"the supply drives %.3g A through the warm rotor coil, not %.3g A", e.driven.Value, f.Amps.Value)
	}
}
