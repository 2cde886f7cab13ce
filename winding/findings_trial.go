package winding

import (
	"fmt"
	"slices"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// aboutTrial makes the findings about a trial at rest: whether it can be wound.
type aboutTrial struct {
	slots   quantity.Reading // of the stator
	field   *job.FieldSpec
	layouts *layouts
}

// Limits of what is plausible; common practice, no source, unless said.
const (
	believableCopperFill = 0.60 // bare copper over bare slot; 0.3 to 0.45 by hand
	hexagonalWireFill    = 1.1547
)

// callOut is about one trial.
func (a aboutTrial) callOut(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	a.fill(d, at, t, o)
	if s := o.MouthSpareMM; s.Known() && s.Value <= 0 {
		d.add(Finding{Severity: Broken, Path: at("gauge"), Trial: t.Name, Fix: "thinner wire with more strands"}, "%s", o.MouthText)
	}
	if !o.Kw1.Known() && o.Kw1.Why != "" && a.slots.Given() && a.layouts.key(t) != a.layouts.key(job.Trial{}) {
		d.add(Finding{Severity: Doubt, Path: at("span"), Trial: t.Name, Source: "star of slots"}, "%s", o.Kw1.Why)
	}
	if len(o.CircuitChoices) > 0 && !slices.Contains(o.CircuitChoices, o.Circuits) {
		d.add(Finding{Severity: Broken, Path: at("circuits"), Trial: t.Name, Fix: fmt.Sprintf("this layout allows %s", listOf(o.CircuitChoices)), Source: "equal EMF phasors"},
			"%d circuits: the coils of a phase do not split into %d equal sets, and currents would circulate", o.Circuits, o.Circuits)
	}
	if why := o.StraightMM.Why; o.StraightMM.Known() && strings.HasPrefix(why, EndRunNotGiven) {
		d.add(Finding{Severity: Note, Path: "machine.end_run", Trial: t.Name, Fix: "a rule on an old coil says how far it runs straight out of the iron"},
			"%s", why)
	}
	a.delta(d, at, t, o)
}

// fill is about a slot that is too full: only the worst that can be said of it.
func (a aboutTrial) fill(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	fix := "fewer turns or thinner wire"
	if n := o.TurnsThatFit; n.Known() && o.Turns.Known() {
		fix = fmt.Sprintf("%s; or thinner wire", turnsFit(n.Value))
	}
	if o.Strands > 1 {
		fix += ", or fewer strands"
	}
	over := ""
	if o.WireFill.Known() && o.WireFill.Value > o.FillLimit.Value {
		over = fmt.Sprintf(" is over the limit of %.2f", o.FillLimit.Value)
	}
	switch f := o.WireFill; {
	case f.Known() && f.Value > hexagonalWireFill:
		cannot := joined(", and", over, " cannot be: round wire packed perfectly reaches 1.15")
		d.add(Finding{Severity: Broken, Path: at("turns"), Trial: t.Name, Fix: fix, Source: "hexagonal packing, 2/√3"},
			"wire fill %.2f%s", f.Value, cannot)
		return
	case over != "":
		d.add(Finding{Severity: Broken, Path: at("turns"), Trial: t.Name, Fix: fix}, "wire fill %.2f%s", f.Value, over)
	}
	if f := o.CopperFill; f.Known() && f.Value > believableCopperFill {
		d.add(Finding{Severity: Doubt, Path: at("gauge"), Trial: t.Name, Fix: "check slot area, turns and wire", Source: job.Practice + "; hand-wound slots are near 0.30 (space factor, bare copper over bare slot)"},
			"copper fill %.2f is more than round wire in a lined slot reaches by hand", f.Value)
	}
}

// turnsFit says how many turns fit.
func turnsFit(n float64) string {
	switch n {
	case 0:
		return "not one turn fits"
	case 1:
		return "1 turn fits"
	}
	return fmt.Sprintf("%.0f turns fit", n)
}

// delta is about the third harmonic in a delta, with its amps where they are known.
func (a aboutTrial) delta(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	if t.Connection != layout.Delta || !o.Kw3.Known() || o.Kw3.Value <= 0.05 {
		return
	}
	size := ""
	if i := o.ThirdAmps; i.Known() {
		size = fmt.Sprintf(", about %.2g A of it in the usual condition (%s)", i.Value, thirdWaveText(a.field))
	}
	d.add(Finding{Severity: Note, Path: at("connection"), Trial: t.Name, Fix: "star, or a span of two thirds of a pole pitch", Source: "third-harmonic EMFs are in phase in the three windings and drive a current round the delta"},
		"delta with a winding factor of %.4f for the third harmonic: a third-harmonic current circulates in the delta, heats it and gives nothing%s", o.Kw3.Value, size)
}
