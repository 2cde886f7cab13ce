package winding

import (
	"fmt"

	"slotwright/winding/battery"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// aboutField makes the findings about the rotor's current.
type aboutField struct {
	rotor *excitation
	given *job.FieldSpec
	plate quantity.Reading // volts of the original alternator
}

// rotorOver is the factor on its plate current above which a rotor coil's current is reported; its heat
// is then half as much again. Common practice, no source.
const rotorOver = 1.25

// burnsRotor is the factor on its plate heat that no rotor coil survives; common practice, no source.
const burnsRotor = 2

// overPlate is about a rotor coil fed with more than its machine's plate suggests.
func (a aboutField) overPlate(d *doubts) {
	e := a.rotor
	if !a.given.Ohms.Given() || !a.plate.Given() || !e.amps.Known() {
		return
	}
	made := e.coil.Amps(a.plate.Value)
	if !(made > 0) || e.amps.Value <= rotorOver*made {
		return
	}
	severity := Doubt
	if sq(e.amps.Value/made) >= burnsRotor {
		severity = Broken
	}
	d.add(Finding{Severity: severity, Path: "field.current", Fix: fmt.Sprintf("hold the field to %.2g A, and say it here: coil, rings and brushes are made for that", made), Source: "Ohm's law, the coil at its working temperature"},
		"the rotor coil takes %.3g A here, on its plate's %.3g V it takes %.3g A: %.1f times the heat it is made for", e.amps.Value, a.plate.Value, made, sq(e.amps.Value/made))
}

// callOut is about a rotor current that is not the one the flux was read at, or that its supply cannot
// drive.
func (a aboutField) callOut(d *doubts) {
	e, f := a.rotor, a.given
	if !e.wound {
		return
	}
	switch {
	case e.guessed:
		d.add(Finding{Severity: Doubt, Path: "field.coil", Fix: "measure ring to ring, cold"},
			"the rotor coil's ohms are not given: its %.3g A are taken to come of all the supply, %.3g W off every row", e.amps.Value, e.watts.Value)
	case !e.watts.Known():
		d.add(Finding{Severity: Doubt, Path: "field.coil", Fix: "measure ring to ring, cold, or the current it takes"},
			"what the rotor takes is not known: amps and watts are shown before it is subtracted")
	}
	if e.unmatched != "" {
		fix := "take a second spin-up reading, at another field current: then the flux follows the current"
		if e.overfed(f) {
			fix = "say the field current, or the volts that feed it, where something holds it lower: straight on the battery a rotor made for fewer volts burns; else " + fix
		}
		d.add(Finding{Severity: Doubt, Path: "field.current", Fix: fix}, "%s", e.unmatched)
	}
	a.overPlate(d)
	if f.Amps.Given() && e.driven.Known() && f.Amps.Value > e.driven.Value*(1+fieldApart) {
		need := f.Amps.Value*e.coil.Ohms() + e.coil.BrushVolts
		d.add(Finding{Severity: Doubt, Path: "field.current", Fix: fmt.Sprintf("measure the current warm; it needs %.3g V", need), Source: "Ohm's law, the coil at its working temperature"},
			"the supply drives %.3g A through the warm rotor coil, not %.3g A", e.driven.Value, f.Amps.Value)
	}
}

// aboutBattery makes the findings about the cells: what voltage they are taken to be.
type aboutBattery struct {
	given *job.BatterySpec
	spec  battery.Spec
	other bool // not a battery
	wound bool // the rotor is wound
}

// unused says which of the current limits typed are not used, and why.
func (a aboutBattery) unused(d *doubts) {
	g := a.given
	most, by := g.MostAmps.Given(), g.HeldBy != ""
	switch {
	case a.other && most:
		d.add(Finding{Severity: Note, Path: "battery.most_current", Fix: "take it out"},
			"the most current of %s A is not used: it applies to a regulator that charges a battery, and the load is %s", asTyped(g.MostAmps.Value), loadNames[g.Load])
	case by && a.other:
		d.add(Finding{Severity: Note, Path: "battery.held_by", Fix: "take it out"},
			"held by %s is not used: that is said of a battery's controller, and the load is %s", g.HeldBy, loadNames[g.Load])
	case by && a.wound:
		d.add(Finding{Severity: Note, Path: "battery.held_by", Fix: "take it out"},
			"held by %s is not used: with a wound rotor it is the field that is lowered", g.HeldBy)
	case by && !most:
		d.add(Finding{Severity: Note, Path: "battery.held_by", Fix: "say the most current, or take it out"},
			"held by %s is not used: no most current is given that it would hold", g.HeldBy)
	}
}

// loadNames are the loads that are not a battery.
var loadNames = map[string]string{job.LoadResistor: "a resistor", job.LoadBus: "a converter's input"}

// callOut says the volts of a cell count that may have been meant as volts, and doubts one that makes
// no usual battery.
func (a aboutBattery) callOut(d *doubts) {
	if a.other {
		return
	}
	a.levels(d)
	g := a.given
	volts := a.spec.NominalVolts()
	if !g.Cells.Given() || volts == 0 || g.RestVolts.Given() || g.ChargingVolts.Given() {
		return
	}
	switch {
	case !battery.Usual(volts):
		d.add(Finding{Severity: Doubt, Path: "battery.cells", Fix: "count the cells in series again, or give its rest voltage", Source: job.Practice},
			"%d cells in series (%s) are a battery of %.3g V, which is not a usual one", a.spec.Cells, a.spec.Chemistry, volts)
	case a.spec.Cells >= 12 && battery.Usual(float64(a.spec.Cells)):
		d.add(Finding{Severity: Note, Path: "battery.cells", Fix: fmt.Sprintf("if it is a %d V battery, give %.0f", a.spec.Cells, float64(a.spec.Cells)/volts*float64(a.spec.Cells))},
			"%d cells in series (%s) are a battery of %.3g V: every figure is for that", a.spec.Cells, a.spec.Chemistry, volts)
	}
}

// levels is about battery voltages in an impossible order: charging is above rest, and is limited to
// the absorption voltage; common practice, no source.
func (a aboutBattery) levels(d *doubts) {
	g, bare := a.given, a.spec
	bare.AbsorptionVolts, bare.FloatVolts = 0, 0
	l, err := battery.Levels(bare)
	if err != nil {
		return
	}
	rest, full, fix := l.RestVolts.Value, l.AbsorptionVolts.Value, "read it again, or count the cells again, or give its rest voltage"
	if g.AbsorptionVolts.Given() {
		full = g.AbsorptionVolts.Value
		if full <= rest {
			d.add(Finding{Severity: Broken, Path: "battery.absorption", Fix: fix, Source: job.Practice},
				"an absorption voltage of %.4g V is not over the %.4g V at which the battery rests: nothing would flow into it", full, rest)
			return
		}
	}
	switch v := g.ChargingVolts.Value; {
	case !g.ChargingVolts.Given():
	case v < rest:
		d.add(Finding{Severity: Doubt, Path: "battery.charging", Fix: fix, Source: job.Practice},
			"%.4g V while it takes charge are under the %.4g V at which the battery rests", v, rest)
	case full > 0 && v > full:
		d.add(Finding{Severity: Doubt, Path: "battery.charging", Fix: "read it again, or give its absorption voltage", Source: job.Practice},
			"%.4g V while it takes charge are over its absorption voltage of %.4g V, where charging is held back", v, full)
	}
}

// doubtFuse says when the cable burns before the fuse does, and what a blown fuse means.
func doubtFuse(d *doubts, fuse quantity.Figure, mm2 quantity.Reading) {
	if !fuse.Known() || !mm2.Given() {
		return
	}
	if carries := battery.CableAmps(mm2.Value); carries < fuse.Value {
		d.add(Finding{Severity: Doubt, Path: "battery.cable_area", Fix: fmt.Sprintf("%.3g mm² or more, or a smaller fuse and less current", battery.CableFor(fuse.Value)), Source: battery.CableSource},
			"a fuse of %.3g A does not protect a cable of %.3g mm², which carries %.0f A", fuse.Value, mm2.Value, carries)
	}
}
