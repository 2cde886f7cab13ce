package winding

import (
	"fmt"
	"math"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// aboutMachine makes the findings about iron, slot and magnets.
type aboutMachine struct {
	machine *machine
	slot    *job.SlotSpec
	field   *job.FieldSpec
	room    *slotRoom
	layouts *layouts
	speeds  *speeds
	iron    *iron
}

// manyHertz is more than a small machine's frequency; common practice, no source.
const manyHertz = 1000.0

// mostByHand is the fill above which nobody winds by hand; common practice, no source.
const mostByHand = 0.80

// measured is about what was counted and measured, and the speeds asked for.
func (a aboutMachine) measured(d *doubts) {
	m, s := a.machine, a.slot
	if _, why := a.room.of(1); why != "" && (s.AreaMM2.Given() || s.TopMM.Given()) {
		d.add(Finding{Severity: Broken, Path: "slot.area", Fix: "measure again"}, "%s", why)
	}
	if s.BySides {
		d.add(Finding{Severity: Note, Path: "slot.area", Fix: "say its shape, where its sides are not parallel"},
			"the area is given as width × depth: taken as a parallel slot %s mm wide below its mouth and %s mm deep", figures(s.TopMM.Value), figures(s.DepthMM.Value))
	}
	if poles := m.Poles.Whole(); poles%2 != 0 {
		d.add(Finding{Severity: Doubt, Path: "machine.poles", Fix: fmt.Sprintf("count again: %d or %d", poles-1, poles+1)},
			"%d poles: poles come in pairs, north and south", poles)
	} else if c := a.layouts.own(); c.plan == nil && !c.relative {
		d.add(Finding{Severity: Doubt, Path: "machine.slots", Fix: "count slots and poles again", Source: "star of slots"}, "%s", c.why)
	}
	if s.MouthMM.Given() && s.TopMM.Given() && s.MouthMM.Value > s.TopMM.Value {
		d.add(Finding{Severity: Doubt, Path: "slot.mouth", Fix: "measure both again"},
			"the mouth, %.2f mm, is wider than the slot below it, %.2f mm", s.MouthMM.Value, s.TopMM.Value)
	}
	if s.FillLimit.Or(0) > mostByHand {
		d.add(Finding{Severity: Doubt, Path: "slot.fill_limit", Fix: "0.65 to 0.75 is what hands do", Source: job.Practice},
			"a fill limit of %.2f is more than can be wound by hand", s.FillLimit.Value)
	}
	if top := a.speeds.top; top.Known() && m.Poles.Given() {
		if hz := top.Value * m.Poles.Value / 120; hz > manyHertz {
			d.add(Finding{Severity: Doubt, Path: "target.top", Fix: "check the ratio and the poles", Source: job.Practice},
				"%.0f alternator rpm with %d poles is %.0f Hz", top.Value, m.Poles.Whole(), hz)
		}
	}
	if slow, top := a.speeds.slow, a.speeds.top; slow.Known() && top.Known() && slow.Value > top.Value {
		d.add(Finding{Severity: Doubt, Path: "target.slow", Fix: "swap them"},
			"the slow speed, %.0f alternator rpm, is above the top speed, %.0f alternator rpm", slow.Value, top.Value)
	}
	if m.AirGapMM.Given() && m.BoreMM.Given() && m.AirGapMM.Value > m.BoreMM.Value/10 {
		d.add(Finding{Severity: Doubt, Path: "machine.air_gap", Fix: "it is half the difference of the two diameters"},
			"an air gap of %.2f mm is large for a bore of %.0f mm", m.AirGapMM.Value, m.BoreMM.Value)
	}
}

// magnets compares the count of the magnets with that of the poles.
func (a aboutMachine) magnets(d *doubts) {
	c := magnetCount{a.field.Magnets.Whole(), a.machine.Poles.Whole()}
	if a.field.Kind == job.FieldMagnets && c.odd() {
		d.add(Finding{Severity: Doubt, Path: "field.magnets", Fix: "count both again; a magnet in pieces side by side is one"},
			"%d magnets and %d poles: a rotor has as many magnets as poles, or half as many with bare iron between", c.magnets, c.poles)
	}
}

// flat says when flat coils do not fit round the circle.
func (a aboutMachine) flat(d *doubts) {
	m := a.machine
	f, ok := m.flatCoils(1)
	if !ok || !m.Slots.Given() {
		return
	}
	if pitch := math.Pi * f.CircleMM / m.Slots.Value; f.HoleMM+2*f.SideMM > pitch {
		d.add(Finding{Severity: Broken, Path: "machine.side", Fix: "narrower sides or holes, fewer coils, or a larger circle"},
			"a coil is %.1f mm wide with its sides, and only %.1f mm of the circle is there for each of %.0f", f.HoleMM+2*f.SideMM, pitch, m.Slots.Value)
	}
}

// mostToothTesla is where the teeth begin to take as much mmf as the gap does; common practice.
const mostToothTesla = 1.8

// lessFlux is what takes flux out of saturated iron, and its verb.
func (a aboutMachine) lessFlux() string {
	switch a.field.Kind {
	case job.FieldWound:
		return "a smaller field current loses"
	case job.FieldMagnets:
		return "thinner magnets lose"
	}
	return "thinner magnets or less field lose"
}

// teeth is about saturated teeth.
func (a aboutMachine) teeth(d *doubts, t quantity.Figure) {
	if a.iron.noTooth {
		m := a.machine
		d.add(Finding{Severity: Doubt, Path: "machine.bore", Fix: "measure the diameter at the gap and the slots' widths again, and look at their units; count the slots again"},
			"%.0f such slots do not go round: with %.0f mm across at the gap there are %.1f mm for slot and tooth", m.Slots.Value, m.BoreMM.Value, math.Pi*m.BoreMM.Value/m.Slots.Value)
		return
	}
	if !t.Known() || t.Value <= mostToothTesla {
		return
	}
	assumed := ""
	if a.room.assumed() && a.iron.toothMM.Origin.Weak() {
		assumed = ", the slot's shape only assumed from its area"
	}
	d.add(Finding{Severity: Doubt, Path: "slot.top", Fix: "measure slot widths and bore again; if they hold, " + a.lessFlux() + " little", Source: "ordinary lamination needs 10 000 A/m at 1.8 T: IEC 60404-8-4 (from memory)"},
		"the teeth, %.1f mm where they are narrowest%s, would carry %.1f T: they are full", a.iron.toothMM.Value, assumed, t.Value)
}
