package winding

import (
	"fmt"
	"math"
	"sync"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/readings"
)

// The inductance of a phase, best route first (each in package field, with its source):
//
//  0. amps into a battery or the plate, solved jointly with all other readings of the old
//     winding (jointfit.go).
//  1. a short-circuit reading of the old winding. It is preferred to a bridge, which works at
//     a thousandth of the current and can read half of it.
//  2. a bridge (LCR meter) on the old winding's leads; of a wound rotor, whose field is off
//     while it is read, half way (logarithmically) to that with saturated iron.
//  3. the plate: the amps that a machine reaches far above cut-in.
//  4. geometry: what crosses the gap, the slots and the end turns.
//
// Routes 1 to 3 measure the old winding; the gap's part scales with (N·kw)² and with the waves that
// either coil list puts into the gap (layout/gapwaves.go), the leakage with N², in the proportion that
// geometry gives; without geometry all of it scales as the gap's part. The lumped value leaves
// saturation and saliency out: 15 %.
//
// It is the inductance of a phase with every set carrying current, as all of them do when charging. A
// reading with one set alone is converted to that. For the slots' part the sides of a slot are taken to
// carry the same current, which is a few per cent high where two sets or two phases share one.

// saturated is how much longer a gap looks when the iron behind it saturates, as in a wound-rotor
// alternator at full field.
const saturated = readings.Saturation

// inductances is what the inductance of any winding depends on.
type inductances struct {
	machine *machine
	rotor   *job.FieldSpec
	shorts  []job.ShortReading // as heardShorts has them
	room    *slotRoom
	turn    *turnLength
	flux    *flux
	dc      *dcSide
	old     *oldWinding
	oldOhms *Ohms
	fit     *fitted
	// measured is the old winding's, H, by routes 1 to 3, and by which.
	measured quantity.Figure
	from     string
	route    route
	// gapShare is the gap's part of it, by geometry, worked out when first asked for; 1 where there is
	// none.
	gapShare func() float64
	// off is a relative change of all of it, to find its effect.
	off float64
	// loose moves the amps by the error of the lumped model, to find its effect.
	loose bool
}

// route says where the inductance comes from.
type route int

const (
	byGeometry route = iota
	byShort
	byBridge
	byPlate
	byAll
)

var routeWords = map[route]string{byShort: "a short-circuit reading of the old winding", byBridge: "an inductance bridge on the old winding", byPlate: "the plate of the old winding"}

// Inductance is per phase.
type Inductance struct {
	PhaseMilliHenries quantity.Figure `json:"phase_mh"`
	InductanceFrom    string          `json:"inductance_from,omitempty"`
}

// spread is the relative uncertainty of a route. Amps predicted from a short circuit or the plate are
// good to 15 % at twice cut-in and 6 % at five times (own simulation of machines that saturate), as by
// an inductance off by a fifth; a bridge reads the unsaturated iron, off by half; geometry reduces
// saturation to a factor, and for a wound rotor also the claws, which leak and leave gaps between them
// (common practice, no source).
func (b *inductances) spread() float64 {
	switch b.route {
	case byAll:
		return 0 // included in the covariance
	case byShort:
		return 0.20
	case byPlate:
		return 0.25
	case byBridge:
		return 0.50
	}
	if b.rotor.Kind == job.FieldWound {
		return 0.70
	}
	return 0.40
}

// newInductances finds the old winding's.
func newInductances(b inductances) inductances {
	b.measured, b.route = b.best()
	b.from = routeWords[b.route]
	if b.route == byAll {
		b.from = b.fit.from(b.measured.Why)
	}
	if b.measured.Known() { // else nothing asks for it
		b.gapShare = sync.OnceValue(func() float64 {
			old, waves := b.geometry(&b.old.candidate), b.old.coils.waves.All
			if old.working <= 0 {
				return 1
			}
			return old.gap(waves) / old.phase(waves)
		})
	}
	return b
}

// of is that of a winding, per phase.
func (b *inductances) of(w *candidate) Inductance {
	c, was := &w.coils, &b.old.coils
	if b.measured.Known() && c.effective > 0 && was.effective > 0 && b.old.likeCoils(c) {
		working, turns := sq(c.effective/was.effective)*c.waves.All/was.waves.All, sq(c.series/was.series)
		share := b.gapShare()
		l := b.measured.Times((1 + b.off) * (share*working + (1-share)*turns))
		return Inductance{l.Times(1000), b.from}
	}
	own := b.geometry(w)
	if own.why != "" {
		return Inductance{quantity.Missing(own.why), ""}
	}
	return Inductance{quantity.Of((1+b.off)*own.phase(c.waves.All)*1000, quantity.Guessed), b.geometryFrom()}
}

// geometryFrom names what a value by geometry is based on.
func (b *inductances) geometryFrom() string {
	if b.rotor.Kind == job.FieldMagnets && !b.rotor.MagnetMM.Given() {
		return fmt.Sprintf("geometry, an estimate: the magnets taken as %.0f mm thick", field.UsualMagnetMM)
	}
	return "geometry, an estimate"
}

// best is routes 1 to 3.
func (b *inductances) best() (quantity.Figure, route) {
	if b.fit != nil && b.fit.ok {
		l := b.fit.fit.Henries()
		return quantity.Of(l.Value, b.flux.perTurn.Origin).Because(l.Why), byAll
	}
	if f := b.shortHenries(); f.Known() {
		if henriesApart(f, b.bridgeHenries()) {
			f.Origin = quantity.Guessed // reported, and what follows is marked too
		}
		return f, byShort
	}
	if f := b.bridgeHenries(); f.Known() {
		if b.rotor.Kind == job.FieldWound { // read with the field off and the iron unsaturated: half way
			f = f.Times(1 / math.Sqrt(saturated))
		}
		return f, byBridge
	}
	if f := b.plateHenries(); f.Known() {
		return f, byPlate
	}
	return quantity.Missing("needs a short-circuit reading, a bridge reading, the plate or the air gap"), byGeometry
}

// henriesApart reports whether a short circuit and a bridge contradict each other.
func henriesApart(short, bridge quantity.Figure) bool {
	r := bridge.Value / short.Value
	return short.Known() && bridge.Known() && (r < 0.75 || r > 1.33)
}

// oldPhaseOhms is a phase of the old winding at 20 °C: as measured, else as computed.
func (b *inductances) oldPhaseOhms() quantity.Figure {
	return oldPhaseOhms(b.machine, b.old, b.oldOhms)
}

func oldPhaseOhms(m *machine, o *oldWinding, worked *Ohms) quantity.Figure {
	if o.LeadOhms.Given() {
		return o.LeadOhms.Figure("").Times(o.Metal.TempFactor(o.LeadOhmsC.Or(20), 20) / m.leadPerPhase(o.Connection))
	}
	return worked.PhaseOhms20
}

// bridgeHenries is the bridge reading as a phase, with all sets carrying current.
func (b *inductances) bridgeHenries() quantity.Figure {
	mh := b.old.LeadMilliHenries
	switch {
	case !mh.Given():
		return quantity.Missing("needs a bridge reading")
	case b.machine.phases == 1: // the leads are the phase
		return mh.Figure("").Times(1e-3)
	case b.old.OtherSet == job.OtherJoined && b.machine.sets > 1:
		return quantity.Missing("the other set's leads were joined: the bridge reads what leaks between the sets, not what limits the amps")
	}
	on := bridgeOn[b.old.BridgeLeads]
	alike, ok := b.alikeShare(&b.old.candidate)
	if on == field.LeadAndStar && !ok {
		return quantity.Missing("needs the number of slots and poles: the bridge was on one phase alone")
	}
	henries, err := field.FromBridge(mh.Value, on, b.old.Connection == layout.Delta, alike)
	return quantity.OrError(henries, err, mh.Origin).Times(b.allSets(1)) // the leads of one set
}

// bridgeOn maps the file's words for the leads; two when nothing is given.
var bridgeOn = map[string]field.BridgeOn{job.BridgeOneTwo: field.OneAgainstTwo, job.BridgeStar: field.LeadAndStar}

// plateHenries is the inductance by the plate's amps.
func (b *inductances) plateHenries() quantity.Figure {
	o, poles := b.old, b.machine.Poles
	if !o.RatedAmps.Given() || !o.RatedRPM.Given() || !poles.Given() || b.machine.phases != 3 || o.coils.effective <= 0 || !b.flux.perTurn.Known() {
		return quantity.Missing("needs the plate's amps and speed")
	}
	volts := o.RatedVolts.Or(b.dc.absorption.Value)
	if volts <= 0 { // a resistor holds none, and 0 would be shorted leads
		return quantity.Missing("needs the plate's volts: the load holds none")
	}
	hot := o.Metal.TempFactor(20, plateC)
	henries, err := field.Plate{
		DCAmps: o.RatedAmps.Value / float64(b.machine.sets), EMFPeak: math.Sqrt2 * b.flux.perTurn.Value * o.coils.effective * o.RatedRPM.Value,
		Hertz: o.RatedRPM.Value * poles.Value / 120, DCVolts: volts + 2*b.dc.diodeVolts.Value,
		Ohms: b.oldPhaseOhms().Value * hot, Delta: o.Connection == layout.Delta,
	}.Henries()
	return quantity.OrError(henries, err, quantity.Guessed)
}

// plateC is the temperature that a winding has at its plate's amps; common practice, no
// source.
const plateC = 100.0

// parts is the inductance by geometry, henries of a phase: what the working wave of one
// set makes, and the leakage of slots and end turns.
type parts struct {
	working, leakage float64
	// slots is the slots' part of the leakage.
	slots float64
	why   string
}

// gap is what crosses the gap, given the sum of waves over the working one; phase is the whole.
func (p *parts) gap(waves float64) float64   { return p.working * waves }
func (p *parts) phase(waves float64) float64 { return p.gap(waves) + p.leakage }

// geometry works out the three parts.
func (b *inductances) geometry(w *candidate) parts {
	m, c := b.machine, &w.coils
	gap := m.AirGapMM
	if b.rotor.MagnetGapMM.Given() && b.rotor.Kind == job.FieldMagnets {
		gap = b.rotor.MagnetGapMM
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
	effective := gap.Value * m.carter(b.room.mouth, gap.Value)
	if b.rotor.Kind == job.FieldWound {
		effective *= saturated
	}
	if b.rotor.Kind == job.FieldMagnets { // the magnet counts as gap for the winding's field
		count := magnetCount{b.rotor.Magnets.Whole(), m.Poles.Whole()}
		effective += b.rotor.MagnetMM.Or(field.UsualMagnetMM) * count.magnetPerPole() / field.UsualRecoilMu
	}
	if m.flat() {
		return b.flatParts(w, effective)
	}
	return b.crossings(w, effective)
}

// crossings is what crosses an effective gap, the slots and the end turns.
func (b *inductances) crossings(w *candidate, gapMM float64) parts {
	m, c, p := b.machine, &w.coils, b.machine.Poles.Value/2
	gap, err := field.InductanceAirGap(float64(m.phases), m.BoreMM.Value, m.StackMM.Value, gapMM, m.Poles.Value, c.series, c.kw[0])
	if err != nil {
		return parts{why: err.Error()}
	}
	slots, err := field.InductanceSlot(m.StackMM.Value, c.series, p, c.woundPart()*m.Slots.Value/(m.Poles.Value*m.windings()), b.room.leakage(c))
	if err != nil {
		return parts{why: err.Error()}
	}
	leakage := slots
	if mean, _ := b.turn.of(w); mean.Known() {
		end, err := field.EndLeakage(max(0, mean.Value/2-m.StackMM.Value), c.series, p, field.EndPermeance)
		if err != nil {
			return parts{why: err.Error()}
		}
		leakage += end
	}
	return parts{working: gap, leakage: leakage, slots: slots}
}

func sq(v float64) float64 { return v * v }
