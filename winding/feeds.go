package winding

import (
	"fmt"
	"strings"

	"slotwright/winding/battery"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// feeds is what the machine feeds, in a few words: "12 V flooded battery, 100 Ah".
func (d *dcSide) feeds(g *job.BatterySpec) string {
	number := func(r quantity.Reading) string { return quantity.Number(r.Value, quantity.AsGiven) }
	switch {
	case g.Load == job.LoadResistor && g.ResistorOhms.Given():
		return fmt.Sprintf("resistor of %s Ω", number(g.ResistorOhms))
	case g.Load == job.LoadResistor:
		return "resistor, its ohms not given"
	case g.Load == job.LoadBus && g.BusVolts.Given():
		return fmt.Sprintf("converter holding %s V", number(g.BusVolts))
	case g.Load == job.LoadBus:
		return "converter, its volts not given"
	case !d.held.Known():
		return "battery, its volts not known"
	}
	// A battery is named by its nominal volts: 12 for as many cells as 12 V has.
	volts := d.held.Value
	if n := battery.CellsOf12V(d.spec.Chemistry); n > 0 {
		volts = 12 * float64(d.spec.Cells) / float64(n)
	}
	kind := d.spec.Chemistry.String()
	if d.spec.Chemistry == battery.AGM || d.spec.Chemistry == battery.LFP {
		kind = strings.ToUpper(kind)
	}
	words := fmt.Sprintf("%s V %s battery", quantity.Number(volts, quantity.AtMost(3)), kind)
	if g.CapacityAh.Given() {
		words += fmt.Sprintf(", %s Ah", number(g.CapacityAh))
	}
	if g.Chemistry == "" && !g.Cells.Given() && !g.RestVolts.Given() {
		words = "~" + words + " (not given)"
	}
	return words
}
