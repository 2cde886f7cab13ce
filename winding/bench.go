package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
)

// Bench is a job with everything worked out that no trial can change: the room in
// the slot, the flux, the battery, the speeds. [Prepare] makes it; [Bench.Static]
// then takes a trial in microseconds, which is what a search wants. It is safe for
// use by several goroutines once made.
type Bench struct {
	job    job.Job
	phases int
	sets   int
	// rooms is the lined slot with one and with two layers; roomWhy says why there
	// is none.
	rooms   [2]slot.Room
	roomWhy [2]string
	slot    slotGuess
	// old is the old winding as far as the flux needs it; oldBad what is wrong.
	old    coilSet
	flux   fluxSource
	speeds speeds
	dc     dcSide
	air    surroundings
	// oldOhms and oldHenries are those of the old winding.
	oldOhms        Ohms
	oldHenries     quantity.Figure
	oldHenriesFrom string
	permeance      [2]float64
	// layouts of the trials in the job, by what they depend on.
	layouts map[layoutKey]coilSet
}

// layoutKey is what a layout depends on, turns apart.
type layoutKey struct {
	span, layers int
	kind         string
}

// Prepare works out what the trials share. Nothing in it is an error: what cannot be
// worked out is missing, with its reason, in every figure that needs it.
func Prepare(j job.Job) *Bench {
	b := &Bench{job: j, phases: int(j.Machine.Phases.Or(3)), sets: int(j.Machine.Sets.Or(1))}
	if b.phases == 1 {
		b.sets = 1
	}
	b.layouts = map[layoutKey]coilSet{}
	b.measureSlot()
	for _, t := range j.Trials {
		b.remember(b.keyOf(t))
	}
	b.remember(b.keyOf(job.Trial{}))
	b.old = b.coils(b.oldAsTrial())
	b.speeds = b.findSpeeds()
	b.dc = b.findBattery()
	b.air = b.findSurroundings()
	b.flux = b.findFlux()
	b.oldOhms = b.ohms(b.oldAsTrial(), b.old)
	b.findPermeance()
	b.oldHenries, b.oldHenriesFrom = b.oldInductance()
	return b
}

// keyOf is what a trial's layout depends on, its own values before the machine's.
func (b *Bench) keyOf(t job.Trial) layoutKey {
	m := b.job.Machine
	k := layoutKey{span: t.Span.Whole(), layers: t.Layers.Whole(), kind: t.Kind}
	if k.span == 0 {
		k.span = m.Span.Whole()
	}
	if k.layers == 0 {
		k.layers = int(m.Layers.Or(2))
	}
	if k.kind == "" {
		k.kind = m.Kind
	}
	if k.kind == "" {
		k.kind = layout.Lap.String()
	}
	if k.span == 0 {
		k.span = fullPitch(m)
	}
	return k
}

// fullPitch is the span nearest to a pole pitch, 0 when slots or poles are not known.
// Half a slot is rounded down, as winders do: the shorter coil is easier to put in.
func fullPitch(m job.Machine) int {
	q, p := m.Slots.Whole(), m.Poles.Whole()
	if q == 0 || p == 0 {
		return 0
	}
	return max(1, (2*q+p-1)/(2*p))
}

// remember lays a winding out once.
func (b *Bench) remember(k layoutKey) {
	if _, done := b.layouts[k]; !done {
		b.layouts[k] = b.layOut(k)
	}
}

// oldAsTrial is the old winding in the form of a trial.
func (b *Bench) oldAsTrial() job.Trial {
	o := b.job.Old
	return job.Trial{Name: "old", Wound: o.Wound, Connection: o.Connection, Circuits: o.Circuits}
}
