package winding

import (
	"fmt"
	"math"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # What no iron gives
//
// A gap in which the fundamental had a peak of B all round would carry, through a pole of the bore D
// and the stack L, the flux Φ = 2·B·D·L/p, and a full-pitch turn would give
//
//	V = √2·π·f·Φ,  f = n·p/120,  so  V/n = √2·π/60 · B·D·L
//
// per turn and rpm, whatever the number of poles. Lamination steel saturates at about 2 T (IEC
// 60404-8-4, from memory), and the gap never reaches what the iron cannot: a reading above that was
// misread, or its speed and its volts are swapped.

// fullIronTesla is the saturation of lamination steel.
const fullIronTesla = 2.0

// mostPerTurn is the highest volts rms per rpm of a full-pitch turn.
func (m *machine) mostPerTurn() quantity.Figure {
	if !m.BoreMM.Given() || !m.StackMM.Given() || m.flat() {
		return quantity.Missing("needs the bore and the stack")
	}
	return quantity.Of(math.Sqrt2 * math.Pi / 60 * fullIronTesla * m.BoreMM.Value / 1000 * m.StackMM.Value / 1000)
}

// beyondIron reports the trial coils whose volts no iron of this size gives, at their own field, and
// whether there are any.
func (a aboutReadings) beyondIron(d *doubts) bool {
	most := a.machine.mostPerTurn()
	if !most.Known() {
		return false
	}
	found := false
	for i, c := range a.trialCoils {
		if c.Turns.Given() && c.RPM.Given() && c.Volts.Given() {
			found = beyond(d, job.PathOf("coil", i, "voltage"), c.Turns.Value, most.Value, c.RPM, c.Volts) || found
		}
	}
	return found
}

// beyond reports one reading of so many turns.
func beyond(d *doubts, path string, turns, perTurn float64, rpm, volts quantity.Reading) bool {
	most := perTurn * turns * rpm.Value
	if volts.Value <= most {
		return false
	}
	fix := "read it again, its speed too; count the turns again, check bore and stack"
	if rpm.Value <= perTurn*turns*volts.Value {
		fix = fmt.Sprintf("swap speed and volts? %s V at %s rpm could be", asTyped(rpm.Value), asTyped(volts.Value))
	}
	d.add(Finding{Severity: Broken, Path: path, Fix: fix, Source: "iron is full at 2 T: IEC 60404-8-4 (from memory)"},
		"%s V at %s rpm cannot be: with iron full at %.0f T, bore × stack give %.0f turns at most %s V there", asTyped(volts.Value), asTyped(rpm.Value), fullIronTesla, turns, asTyped(most))
	return true
}
