package winding

import (
	"math"
	"reflect"
	"slices"
	"sync"
	"sync/atomic"

	"slotwright/winding/heat"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
)

// Bench is a job with everything worked out that no trial can change. [Prepare] makes it;
// [Bench.Static] then takes microseconds for a trial, which is what a search wants. It is safe for use
// by several goroutines once made.
//
// Each part is a value made from exactly what it needs, so the compiler checks the order in which they
// are made:
//
//	machine ── room ── layouts ── old winding ── mean turn ── old ohms
//	                                  │                          │
//	battery ── speeds ── drive       flux ── field ── drag ──── heat
//	                                  └── inductance ── plate ───┴── limits
//
// What is built on these parts has a receiver of its own too, which says what it may look at: the bed
// that windings run in (bed.go), offers and ladder, the findings.
type Bench struct {
	job *job.Job // never changed: benches that errors make of this one may share it
	prepared
	// done is what its outcome was put together from, once that exists; before is that of the previous
	// bench, if its trials share the same parts.
	done   atomic.Pointer[done]
	before *done
}

// prepared is what no trial can change. A bench whose job differs only in its trials takes over all of
// it ([Bench.With]).
type prepared struct {
	machine machine
	room    slotRoom
	layouts layouts
	old     oldWinding
	turn    turnLength
	oldOhms Ohms
	dc      dcSide
	rotor   excitation
	drag    drag
	drive   driveSide
	speeds  speeds
	air     thermal
	iron    iron
	flux    flux
	fit     *fitted
	henries inductances
	// spins and shorts are the readings converted to what the meter stands for.
	spins  []job.SpinReading
	shorts []job.ShortReading
	bounds bounds
	was    *oldSum
	bed    bed
	// magnets is the flux, Wb, of the magnets, or of those that may take a wound rotor's place, worked out when
	// it is first asked for; ok is false where it cannot be.
	magnets func() (webers quantity.Figure, ok bool)
	// slots caches the windings that fill the slot; offersNone says that no replacement is searched
	// for.
	slots      *fullSlots
	offersNone bool
}

// Prepare works out what the trials share. Nothing in it is an error: what cannot be worked out is
// missing, with its reason, in every figure that needs it.
func Prepare(j job.Job) *Bench { return prepare(&j, offsets{}, reuse{}) }

// stillGood is the part of a bench that holds for another job.
func (b *Bench) stillGood(j *job.Job) reuse {
	r := reuse{before: b.fit, curve: &b.flux}
	if j.Slot.AsMeasured() == b.job.Slot && j.Machine.Stator != job.StatorFlat && b.job.Machine.Stator != job.StatorFlat {
		r.room = &b.room
	}
	if laidAlike(&j.Machine, &b.job.Machine) {
		r.layouts = &b.layouts
	}
	return r
}

// laidAlike reports whether two machines share their layouts: flat coils depend on their sizes too.
func laidAlike(a, b *job.Machine) bool {
	if a.Stator == job.StatorFlat || b.Stator == job.StatorFlat {
		return reflect.DeepEqual(a, b)
	}
	return a.Phases == b.Phases && a.Slots == b.Slots && a.Poles == b.Poles && a.Layers == b.Layers && a.Span == b.Span && a.Kind == b.Kind &&
		a.Sets == b.Sets && slices.Equal(a.DeadSlots, b.DeadSlots) && slices.Equal(a.BareTeeth, b.BareTeeth)
}

// offsets are what is moved off its value to see the effect; all 0 for none.
type offsets struct {
	flux  float64 // the flux, in units of its own ±
	reach float64 // the flux, in units of its uncertainty above the currents read
	turn  float64 // the estimate of a tooth coil's turn, relative
}

// reuse is what another bench has worked out already, nil where it is to be done anew.
type reuse struct {
	room    *slotRoom
	layouts *layouts
	// before is the joint fit of the readings, reused if they are the same; held is reused in any case.
	before, held *fitted
	curve        *flux // whose curve is reused if its readings are the same
	magnets      func() (quantity.Figure, bool)
}

// prepare is Prepare with something moved off its value, and with what is known already.
func prepare(from *job.Job, off offsets, known reuse) *Bench {
	if s := from.Slot.AsMeasured(); s != from.Slot {
		read := *from
		read.Slot, from = s, &read
	}
	b := &Bench{job: from}
	b.slots = new(fullSlots)
	j := asFlat(*from)
	b.machine = newMachine(j.Machine)
	markPoles(&b.machine, j.Spins)
	if known.room != nil {
		b.room = *known.room
	} else {
		b.room = measureSlot(j.Slot)
	}
	m, rotor := &b.machine, &b.job.Field
	if known.layouts != nil {
		b.layouts = *known.layouts
	} else {
		b.layouts = newLayouts(*m)
	}
	b.old = newOld(j.Old, &b.layouts)
	b.room.heldAgainst(&b.old)
	b.turn = newTurnLength(*m, &b.room, j.Slot, b.layouts.candidate(job.Trial{}), &b.old)
	b.turn.off = off.turn
	b.oldOhms = ohms(&b.old.candidate, m, &b.turn, b.testC())
	b.dc = newDCSide(j.Battery, b.machine.phases)
	b.speeds = newSpeeds(&j.Target, &j.Drive)
	b.spins, b.shorts = heardSpins(j.Spins, m, j.Old.Connection, &b.dc), heardShorts(j.Shorts, m)
	b.iron = newIron(m, &b.room, j.Slot.ToothMM, rotor)
	if b.magnets = known.magnets; b.magnets == nil {
		mouth, iron := b.room.mouth, b.iron.path
		b.magnets = sync.OnceValues(func() (quantity.Figure, bool) { return magnetFlux(rotor, m, mouth, iron) })
	}
	b.flux = newFlux(fluxRoutes{machine: m, rotor: rotor, spins: b.spins, coils: j.Coils, old: &b.old, dc: &b.dc, ofMagnets: b.magnets, before: known.curve})
	b.henries = inductances{
		machine: m, rotor: rotor, shorts: b.shorts, room: &b.room, turn: &b.turn, flux: &b.flux, dc: &b.dc, old: &b.old, oldOhms: &b.oldOhms,
	}
	if known.held != nil {
		b.fit = known.held.withOhms(oldPhaseOhms(m, &b.old, &b.oldOhms))
	} else {
		read := book{
			machine: m, field: rotor, old: &b.old, oldOhms: &b.oldOhms, dc: &b.dc, flux: &b.flux, henries: &b.henries,
			spins: b.spins, shorts: b.shorts, amps: j.Amps, coils: j.Coils,
		}
		b.fit = newFitted(&read, b.speeds.top, known.before)
	}
	b.flux = b.fit.flux(b.flux, &b.old, rotor)
	b.flux.perTurn.Value += off.flux*b.flux.perTurn.PlusMinus + off.reach*b.flux.reach
	markPlate(m, &b.old, oldPhaseOhms(m, &b.old, &b.oldOhms), &b.flux, &b.dc)
	b.was = newOldSum(&b.flux, &b.old, m)
	b.rotor = newExcitation(rotor, &b.dc, &b.flux)
	b.drag = newDrag(m, &b.room, &b.flux)
	b.drive = newDriveSide(&b.job.Drive, &b.speeds)
	b.henries.fit = b.fit
	b.henries = newInductances(b.henries)
	b.bed = bed{
		machine: m, layouts: &b.layouts, henries: &b.henries, dc: &b.dc, rotor: &b.rotor, drag: &b.drag, drive: &b.drive,
		speeds: &b.speeds, air: &b.air, flux: &b.flux, wanted: j.Target.Amps, holder: newRegulator(&j.Battery, &b.rotor, &b.flux),
	}
	form := b.bed.plateForm(&b.old, &b.oldOhms, m.class())
	plate := fromPlate(m, &b.old, &b.oldOhms, form, &b.drag, &b.rotor)
	b.air = newThermal(m, &b.room, plate, j.Old.RatedRPM.Figure("no plate"), b.speeds.top, heat.InThinAir(j.Drive.AltitudeM.Or(0)))
	b.bounds = newBounds(bounds{machine: m, room: &b.room, air: &b.air, form: form, drag: &b.drag, rotor: &b.rotor, usual: b.speeds.usual, top: b.speeds.top, old: &b.old, oldOhms: &b.oldOhms})
	return b
}

// testC is the temperature at which the finished winding will be proved.
func (b *Bench) testC() float64 { return b.job.Target.TestC.Or(defaultTestC) }

// WithoutOffers is a bench whose outcome searches for no replacements, nor for what stands in their
// way, which takes most of the time in wind: for answers that show neither. It is for a bench that has
// not been asked for anything yet.
func (b *Bench) WithoutOffers() *Bench {
	b.offersNone = true
	return b
}

// Job is the job that was prepared.
func (b *Bench) Job() job.Job { return *b.job }

// trial is a trial of the job counted from 0; ok is false when it does not exist.
func (b *Bench) trial(i int) (t job.Trial, ok bool) {
	if i < 0 || i >= len(b.job.Trials) {
		return t, false
	}
	return b.job.Trials[i], true
}

// Picture is the slot with a trial's wires in it, to scale; why says why there is none.
func (b *Bench) Picture(trial int) (picture slot.Packing, why string) {
	t, ok := b.trial(trial)
	if !ok {
		return picture, noSuchTrial
	}
	return b.PictureOf(t)
}

// PictureOf is [Bench.Picture] for any winding.
func (b *Bench) PictureOf(t job.Trial) (picture slot.Packing, why string) {
	w := b.layouts.candidate(t)
	room, why := b.room.of(w.coils.lie)
	switch {
	case why != "":
		return picture, why
	case t.Bundle().IsZero():
		return picture, "needs the wire"
	}
	return slot.Pack(*room, slotWires(t.Wound), int(w.coils.slotTurns), w.key.layers), ""
}

// Plan is a trial's layout with its turns and circuits, for drawing and winding; why
// says why there is none.
func (b *Bench) Plan(trial int) (plan *layout.Layout, why string) {
	t, ok := b.trial(trial)
	if !ok {
		return nil, noSuchTrial
	}
	return b.layouts.wired(t)
}

const noSuchTrial = "there is no such trial"

// RunAt runs a trial of the job, counted from 0, into the battery at one speed of the alternator's
// shaft: the same solution as the points of its curve, for a speed between them. A non-empty string
// says why there is none; rpm must be finite and not negative. It costs about as much as one point of a
// curve.
func (b *Bench) RunAt(trial int, rpm float64) (RunPoint, string) {
	t, ok := b.trial(trial)
	if !ok {
		return RunPoint{}, noSuchTrial
	}
	if math.IsNaN(rpm) || math.IsInf(rpm, 0) || rpm < 0 {
		return RunPoint{}, "the speed must be a number of rpm, 0 or more"
	}
	r, why := b.ready(trial, t)
	if r == nil {
		return RunPoint{}, why
	}
	return r.at(rpm, b.air.ambientC), ""
}

// ready is a trial's charger: the outcome's, where that exists, in its initial state.
func (b *Bench) ready(i int, t job.Trial) (*charger, string) {
	if d := b.done.Load(); d != nil && d.trials[i].runs != nil {
		return d.trials[i].runs.r.anew(), ""
	}
	o := b.Static(t)
	return b.bed.charger(t, &o)
}
