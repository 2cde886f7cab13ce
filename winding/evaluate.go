package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// Evaluate works a job out. It is pure: the same job gives the same outcome, and
// nothing outside it is read or changed. What cannot be worked out is a missing
// figure that says what it needs; there is no error.
//
// Cost: the static figures of a trial take microseconds; the curves of amps against
// speed and of the drive take most of the time, a few hundred solved points a trial.
func Evaluate(j job.Job) Outcome {
	return Prepare(j).Outcome()
}

// Outcome works out every trial of the job.
func (b *Bench) Outcome() Outcome {
	o := Outcome{Job: b.job.Name, Invented: b.job.Invented, Machine: b.machine(), Reference: b.reference()}
	if old := b.job.Old; old.Bundle().IsZero() == false || old.Turns.Given() {
		w := b.Static(b.oldAsTrial())
		w.MostThatPack = b.mostThatPack(b.oldAsTrial())
		o.Old = &w
	}
	o.Trials = make([]TrialOutcome, len(b.job.Trials))
	for i, t := range b.job.Trials {
		o.Trials[i] = b.Static(t)
		o.Trials[i].MostThatPack = b.mostThatPack(t)
	}
	b.addTolerances(&o)
	b.run(&o)
	o.Machine.FuseAmps = b.fuseFor(&o)
	for i := range o.Trials {
		o.Trials[i].Against = b.against(b.job.Trials[i], &o.Trials[i], o.Old)
	}
	o.Comparison = b.compare(&o)
	o.Findings = b.findings(&o)
	o.Cautions = b.cautions(&o)
	return o
}

// Static works out everything of a trial that needs no running: fit, coils, ohms,
// volts, limits, wire to buy, inductance. It takes microseconds.
func (b *Bench) Static(t job.Trial) TrialOutcome {
	return b.static(t, b.coils(t), b.keyOf(t))
}

// static is the figures of a trial whose coils are known.
func (b *Bench) static(t job.Trial, c coilSet, k layoutKey) TrialOutcome {
	bundle := t.Bundle()
	o := TrialOutcome{
		Name: t.Name, Note: t.Note, Wire: bundle.String(), Build: t.Build.String(), Metal: t.Metal.String(),
		Turns: t.Turns.Figure("needs the turns"), Strands: bundle.Count(), Connection: t.Connection,
		Circuits: c.circuits, Span: k.span, Layers: k.layers, Kind: k.kind,
	}
	if len(t.CoilTurns) > 0 {
		o.Turns = quantity.Of(c.slotTurns)
	}
	o.Fit = b.fit(t, c, k.layers)
	o.Coils = c.figures(t.Turns)
	o.Ohms = b.ohms(t, c)
	o.Volts = b.volts(t, c)
	o.Purchase = b.purchase(t, c, o.MeanTurnMM)
	o.Inductance = b.inductance(t, c, k)
	o.Limits = b.limits(t, c, &o)
	return o
}

// StaticOn is Static for a coil list: an old stator as found, or a planned one with
// something changed (a coil reversed, left out, short of turns). The trial gives wire,
// connection and circuits; turns and factor come from the list. Volts are those of the
// mean phase; how far the phases part is in the list's own Balance.
func (b *Bench) StaticOn(t job.Trial, plan *layout.Layout) TrialOutcome {
	c := coilSet{plan: plan, perPhase: float64(plan.CoilsPerPhase()), span: plan.MeanSpan(), circuits: plan.Circuits(), choices: plan.CircuitChoices()}
	spec := plan.Spec()
	turns, coils := 0.0, plan.Coils()
	for _, coil := range coils {
		turns += float64(coil.Turns)
		c.slotTurns = max(c.slotTurns, float64(coil.Turns))
	}
	for i, h := range harmonics {
		c.kw[i] = plan.Factor(h)
	}
	c.series = turns / float64(spec.Phases*spec.Sets) / float64(c.circuits)
	c.effective = c.series * c.kw[0]
	t.Turns = quantity.Reading{Value: turns / float64(max(1, len(coils))), Origin: quantity.Derived}
	t.Circuits = quantity.Known(float64(c.circuits))
	return b.static(t, c, layoutKey{span: spec.Span, layers: spec.Layers, kind: spec.Kind.String()})
}

// reference is the index of the trial the others are compared with.
func (b *Bench) reference() int {
	for i, t := range b.job.Trials {
		if t.Name == b.job.Target.Reference {
			return i
		}
	}
	return 0
}

// against is a winding over the old one.
func (b *Bench) against(t job.Trial, o, old *TrialOutcome) Ratios {
	if old == nil {
		no := quantity.Missing("needs the old winding's turns and wire")
		return Ratios{no, no, no, no}
	}
	return Ratios{
		Volts:  o.LinePerRPM.Over(old.LinePerRPM),
		Ohms:   b.ohmsAgainst(t, o, old),
		Copper: o.CopperPerSlotMM2.Over(old.CopperPerSlotMM2),
		CutIn:  o.CutInRPM.Over(old.CutInRPM),
	}
}

// ohmsAgainst is ohms between leads over the old ones, also where only turns and wire
// are known.
func (b *Bench) ohmsAgainst(t job.Trial, o, old *TrialOutcome) quantity.Figure {
	if r := o.LeadOhms20.Over(old.LeadOhms20); r.Known() {
		return r
	}
	return b.relativeOhms(t).Times(b.leadPerPhase(t.Connection) / b.leadPerPhase(b.job.Old.Connection))
}

// machine is the figures that do not depend on the trial.
func (b *Bench) machine() MachineOutcome {
	layers := b.keyOf(job.Trial{}).layers
	m := MachineOutcome{
		HertzPerRPM: b.job.Machine.Poles.Figure("needs the poles").Times(1.0 / 120),
		PolePitchMM: b.polePitchMM(),
		FluxMWb:     b.fluxWb().Times(1000), FluxFrom: b.flux.from, GapTesla: b.gapTesla(), FieldAmps: b.flux.fieldAmps,
		RestVolts: b.dc.rest, AbsorptionVolts: b.dc.absorption, FloatVolts: b.dc.float, ChargeLimitAmps: b.dc.chargeLimit,
		LoadOhms: b.dc.ohms, DiodeVolts: b.dc.diodeVolts, DiodeOhms: b.dc.diodeOhms,
		SlowRPM: b.speeds.slow, UsualRPM: b.speeds.usual, TopRPM: b.speeds.top, TestRPM: b.speeds.test,
		TestC: b.job.Target.TestC.OrReading(defaultTestC).Figure(""), Ratio: b.speeds.ratio,
	}
	m.MagnetsAgainstWound = b.magnetsAgainstWound()
	b.wantedPulleys(&m)
	if why := b.roomWhy[layers-1]; why != "" {
		no := quantity.Missing(why)
		m.GrossMM2, m.LinerMM2, m.WedgeMM2, m.SeparatorMM2, m.NetMM2 = no, no, no, no, no
		return m
	}
	room, o := b.rooms[layers-1], b.slot.origin
	m.GrossMM2, m.LinerMM2, m.WedgeMM2 = quantity.Of(room.GrossMM2, o), quantity.Of(room.LinerMM2, o), quantity.Of(room.WedgeMM2, o)
	m.SeparatorMM2, m.NetMM2, m.SlotNote = quantity.Of(room.SeparatorMM2, o), quantity.Of(room.NetMM2, o), room.Note
	return m
}
