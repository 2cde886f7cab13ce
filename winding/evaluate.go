package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/ratio"
)

// Evaluate works out a job. It is pure: the same job gives the same outcome, and nothing outside it is
// read or changed. What cannot be worked out is a missing figure that says what it needs; there is no
// error.
//
// Cost: microseconds for a trial's static figures; most of the time goes into running it, one or two
// hundred solved points of the bridge.
func Evaluate(j job.Job) Outcome {
	return Prepare(j).Outcome()
}

// Outcome works out every trial of the job: each alone, on all processors, then everything that looks
// at several. What the previous bench handed on ([Bench.With]) is not worked out again.
func (b *Bench) Outcome() Outcome {
	d := b.work()
	o := Outcome{Job: b.job.Name, Invented: b.job.Invented, Machine: d.machine, Reference: b.Reference(), Reversed: d.reversed, phases: b.machine.phases, magnets: !b.rotor.wound}
	if d.old != nil {
		old := *d.old
		o.Old = &old
	}
	o.Trials = make([]TrialOutcome, len(d.trials))
	runners := make([]*characteristic, len(d.trials))
	for i, t := range d.trials {
		o.Trials[i], runners[i] = t.outcome, t.runs
	}
	b.shareOffers(&o, d)
	o.withhold()
	o.Wound = b.Wound()
	o.spreadProofs()
	for i := range o.Wound {
		o.Wound[i].Explain()
	}
	o.cross(runners)
	b.dc.fuses(&o, &b.drive, b.job.Target.Amps)
	for i := range o.Trials {
		o.Trials[i].Verdict = o.verdict(i, b.job.Drive.Kind)
	}
	o.Comparison = compare(&o, b.job.Drive.Kind == job.DriveWind)
	o.Machine.NextReading = b.fit.advice()
	o.Findings = findings(b, &o)
	o.Cautions = cautions(&o, b.drive.kind, b.job.Field.Kind == job.FieldMagnets, b.dc.cautions())
	return o
}

// trialAlone is a trial worked out without looking at any other.
func (b *Bench) trialAlone(i int, d *done) *workedTrial {
	t := b.job.Trials[i]
	w := b.layouts.candidate(t)
	alone := &workedTrial{trial: t, outcome: b.works(&w)}
	o := &alone.outcome
	shifts := append(b.ofTrial(i), d.shifts...)
	others := make([]*charger, len(shifts))
	b.spreadStatic(o, i, shifts, func(k int, w *candidate, then *TrialOutcome) { others[k] = shifts[k].bench.bed.keptWarm(w, then) })
	alone.runs = b.bed.run(t, o, d.grid)
	o.spreadRunning(others, shifts, b.bed.slopeAt(alone.runs, o.in(usual)), new(TrialOutcome))
	if !b.offersNone {
		of := offers{workshop: b, bed: &b.bed, slots: b.slots, tried: new(trying)}
		m := of.better(t, o)
		o.Calmer = of.calmer(t, o, alone.runs)
		o.noneStands = m.noneStands && m.rejoined == nil
		o.Mend, o.Offer, o.InTheWay, o.Rejoin, o.Joints = m.text, m.offer, m.inTheWay, m.joins, m.joints
		alone.mend = m
	}
	return alone
}

// oldAlone is the old winding worked out like a trial; nil where it is not known.
func (b *Bench) oldAlone(d *done) *TrialOutcome {
	if !b.old.known() {
		return nil
	}
	o := b.works(&b.old.candidate)
	b.runOld(&o)
	o.spread(len(d.shifts), new(TrialOutcome), func(k int, then *TrialOutcome) {
		if other := d.shifts[k].bench; d.shifts[k].sameCoils {
			other.fillBeside(&other.old.candidate, &o, then)
		} else {
			other.fillStatic(&other.old.candidate, then)
		}
	})
	return &o
}

// machineAlone is the machine's figures with their ±.
func (b *Bench) machineAlone(d *done) MachineOutcome {
	o := b.machineFigures()
	follow(&o, len(d.shifts), new(MachineOutcome), func(k int, then *MachineOutcome) { *then = d.shifts[k].bench.machineFigures() }, followedOfMachine, (*Output).atMachine)
	return o
}

// cutIns is where the trials that can run begin to charge.
func (b *Bench) cutIns() []quantity.Figure {
	var list []quantity.Figure
	for _, t := range b.job.Trials {
		o := b.Static(t)
		if _, why := b.bed.charger(t, &o); why == "" {
			list = append(list, o.CutInRPM)
		}
	}
	return list
}

// runOld runs the old winding like a trial, for comparison, but does not work out what it costs the
// rotor nor what it does with its leads shorted.
func (b *Bench) runOld(o *TrialOutcome) {
	const no = "worked out for the trials only"
	o.notRun(no)
	o.NoCharging = ""
	r, why := b.bed.charger(b.old.trial, o)
	if r == nil {
		o.notRun(why)
		return
	}
	grid := b.bed.grid(func() []quantity.Figure { return []quantity.Figure{o.CutInRPM} })
	c := b.bed.follow(r, grid)
	b.bed.runTrial(c, o, grid)
	b.bed.meet(c, o)
	o.readHeat(&b.bed, c)
	o.FieldRun, o.SafetyRun, o.FuseAmps = noField(no), noSafety(no), quantity.Missing(no)
	o.BreakEvenRPM = b.bed.gainsFrom(c, o)
}

// works is Static plus what is too expensive for a search.
func (b *Bench) works(w *candidate) TrialOutcome {
	o := b.static(w)
	o.MostThatPack = b.room.mostThatPack(w)
	o.Shapes = b.turn.shapes(w, o.MeanTurnMM)
	o.Cuts = insulation{&b.machine, &b.job.Slot, &b.room}.cuts(w, &o)
	return o
}

// Static works out everything of a trial that needs no running: fit, coils, ohms, volts, limits, wire
// to buy, inductance. It takes microseconds.
func (b *Bench) Static(t job.Trial) TrialOutcome {
	w := b.layouts.candidate(t)
	return b.static(&w)
}

// StaticOn is Static for a coil list: an old stator as found, or a planned one with something changed
// (a coil reversed, left out, short of turns). The trial gives wire, connection and circuits; turns and
// factor come from the list. Volts are those of the mean phase; the unbalance of the phases is in the
// list's own Balance.
func (b *Bench) StaticOn(t job.Trial, plan *layout.Layout) TrialOutcome {
	w := candidateOn(t, plan, b.machine)
	return b.static(&w)
}

// static is the figures of a winding whose coils are known.
func (b *Bench) static(w *candidate) (o TrialOutcome) {
	b.fillStatic(w, &o)
	return o
}

// fillStatic is static into existing memory, that of its limits included: an outcome is some kilobytes.
func (b *Bench) fillStatic(w *candidate, o *TrialOutcome) {
	t, bundle := &w.trial, w.trial.Bundle()
	room := o.Each[:0]
	*o = TrialOutcome{
		Name: t.Name, Note: t.Note, Wire: bundle.String(), Build: t.Build.String(), Metal: t.Metal.String(),
		Turns: t.Turns.Figure("needs the turns"), Strands: bundle.Count(), Connection: t.Connection,
		Circuits: w.coils.circuits, Span: w.key.span, Layers: w.key.layers, Kind: w.key.kind, metal: t.Metal,
	}
	if len(t.CoilTurns) > 0 {
		o.Turns = quantity.Of(w.coils.slotTurns)
	}
	o.Fit = b.room.fit(w)
	if b.machine.flat() {
		o.MouthText, o.MouthSpareMM = "", quantity.Missing("flat coils lie in no slot")
	}
	o.Coils = w.coils.figures(t.Turns)
	o.Ohms = ohms(w, &b.machine, &b.turn, b.testC())
	o.Ohms.of(b.byTurns().byRatio(w, o.PhaseOhms20), t, &b.machine, b.testC())
	o.Purchase = purchase(w, &b.machine, o.MeanTurnMM, &b.job.Target)
	o.Former = former(w, &b.turn, o.MeanTurnMM)
	b.fillRest(w, o, room)
}

// fillRest is the part of fillStatic that depends on more than the coils and their copper.
func (b *Bench) fillRest(w *candidate, o *TrialOutcome, room []Limit) {
	o.Volts, o.was = volts(w, &b.machine, &b.flux, &b.dc, b.rotor.feed, &b.speeds), b.was
	o.Inductance = b.henries.of(w)
	o.Limits = b.bounds.limits(w, o, room)
}

// fillBeside is fillStatic on a bench with the same coils and copper as that of now: results that
// depend on these alone are copied where others need them, and otherwise left out.
func (b *Bench) fillBeside(w *candidate, now, o *TrialOutcome) {
	room := o.Each[:0]
	*o = TrialOutcome{Fit: now.Fit, Coils: now.Coils, Ohms: now.Ohms, Circuits: now.Circuits, metal: now.metal}
	b.fillRest(w, o, room)
}

// Reference is the index of the trial the others are compared with.
func (b *Bench) Reference() int {
	for i, t := range b.job.Trials {
		if t.Name == b.job.Target.Reference {
			return i
		}
	}
	return 0
}

// byTurns is the old winding for comparisons.
func (b *Bench) byTurns() byTurns { return byTurns{&b.machine, &b.layouts, &b.old, &b.oldOhms} }

// machineFigures is the figures that do not depend on the trial.
func (b *Bench) machineFigures() MachineOutcome {
	lie := lyingOf(b.layouts.key(job.Trial{}))
	m := MachineOutcome{
		HertzPerRPM: b.machine.Poles.Figure("needs the poles").Times(1.0 / 120),
		PolePitchMM: b.machine.polePitchMM(),
		FluxMWb:     b.flux.webers(b.machine.Poles).Times(1000), FluxFrom: b.flux.from, GapTesla: b.flux.gapTesla(&b.machine), FieldAmps: b.fieldAmps(),
		Feeds: b.dc.feeds(&b.job.Battery), RestVolts: b.dc.rest, AbsorptionVolts: b.dc.absorption, ChargingVolts: b.dc.charging, FloatVolts: b.dc.float, ChargeLimitAmps: b.dc.chargeLimit,
		InsideOhms: b.dc.inside(), LoadOhms: b.dc.ohms, DiodeVolts: b.dc.diodeVolts, DiodeOhms: b.dc.diodeOhms,
		DiodeReverseVolts: b.job.Battery.DiodeReverseVolts.Figure("needs the diodes' rating"),
		ThermalClass:      b.air.class.String(), ClassLimitC: quantity.Of(b.air.classC), MeanLimitC: quantity.Of(b.air.meanC),
		DragWatts: b.dragAt(b.speeds.usual), RisePerWatt: b.air.still.With(b.speeds.usual, func(_, n float64) float64 { return b.air.perWatt(n) }),
		Conditions: b.drive.conditions[:],
		SlowRPM:    b.speeds.slow, UsualRPM: b.speeds.usual, TopRPM: b.speeds.top, TestRPM: b.speeds.test,
		TestC: b.job.Target.TestC.OrReading(defaultTestC).Figure(""), Ratio: b.speeds.ratio,
	}
	if f := b.rotor.feed; f != nil {
		m.restAmps, _ = f.at(b.dc.held.Value)
	}
	m.ToothTesla, m.YokeTesla = b.iron.densities(&b.job.Field, m.GapTesla)
	m.MagnetsAgainstWound = magnetsAgainstWound(&b.job.Field, &b.machine, b.magnets, &b.flux)
	wanted := ratio.For(&b.job.Drive, b.job.Target.UsualRPM)
	m.WantedRatio, m.DrivenMM, m.DriverMM, m.DrivenTeeth = wanted.Turns, wanted.DrivenMM, wanted.DriverMM, wanted.DrivenTeeth
	room, why := b.room.of(lie)
	if why != "" {
		no := quantity.Missing(why)
		m.GrossMM2, m.LinerMM2, m.WedgeMM2, m.SeparatorMM2, m.NetMM2 = no, no, no, no, no
		return m
	}
	o, bare := b.room.origin, b.room.origin
	if s := &b.job.Slot; s.AreaMM2.Given() && !b.room.misread {
		bare = s.AreaMM2.Origin // as it was read, whatever shape and lining are assumed
	}
	m.GrossMM2, m.LinerMM2, m.WedgeMM2 = quantity.Of(room.GrossMM2, bare), quantity.Of(room.LinerMM2, o), quantity.Of(room.WedgeMM2, o)
	m.SeparatorMM2, m.NetMM2, m.SlotNote = quantity.Of(room.SeparatorMM2, o), quantity.Of(room.NetMM2, o), room.Note
	return m
}

// fieldAmps is the rotor current that the flux is for; magnets need none, however their flux was found.
func (b *Bench) fieldAmps() quantity.Figure {
	if f := b.flux.fieldAmps; f.Known() || b.job.Field.Kind != job.FieldMagnets {
		return f
	}
	return quantity.Missing("magnets need none")
}

// dragAt is iron and friction loss at a speed, marked when it is a guess.
func (b *Bench) dragAt(rpm quantity.Figure) quantity.Figure {
	if b.drag.watts == 0 {
		return quantity.Missing("needs the drag loss, or bore, stack, poles and flux to guess it")
	}
	return rpm.Then(b.drag.at).With(quantity.Of(0, b.drag.origin), func(w, _ float64) float64 { return w })
}
