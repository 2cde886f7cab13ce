package winding

import (
	"slotwright/winding/battery"
	"slotwright/winding/charge"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # What the rectifier works into
//
// Three kinds of load, of which only the open-circuit voltage and the ohms enter the figures:
//
//	battery     its rest voltage, higher while it takes charge; its own ohms
//	resistor    no voltage; its ohms, hot (a lamp is one: volts² over watts when lit)
//	bus         the voltage that a converter's input holds whatever the current; no ohms
//
// each with the cable's ohms in series. What only a battery has (levels, charge limit, fuse at its
// post, dump load when it is full) is missing for the others, and says so.

// rectifiers are those that the file has a word for.
var rectifiers = map[string]charge.Rectifier{"": charge.Bridge, job.RectifierBridge: charge.Bridge, job.RectifierHalfWave: charge.HalfWave, job.RectifierDoubler: charge.Doubler}

// joined puts the rectifier on a machine of so many phases, and marks everything as missing where they
// do not go together.
func (d dcSide) joined(way string, phases int) dcSide {
	d.rectifier = rectifiers[way]
	if err := d.rectifier.Takes(phases); err != nil {
		return d.without("the " + err.Error())
	}
	return d
}

// without is a side of which nothing is known.
func (d dcSide) without(why string) dcSide {
	no := quantity.Missing(why)
	d.rest, d.absorption, d.float, d.chargeLimit, d.charging = no, no, no, no, no
	d.ohms, d.inner, d.cable, d.held, d.works, d.why = no, no, no, no, no, why
	return d
}

// noBattery marks what only a battery has.
func (d *dcSide) noBattery(why string) {
	no := quantity.Missing(why)
	d.rest, d.absorption, d.float, d.chargeLimit, d.charging = no, no, no, no, no
	d.notBattery = why
}

// resistor is a load without a voltage of its own.
func (d dcSide) resistor(g job.BatterySpec) dcSide {
	if !g.ResistorOhms.Given() {
		return d.without("needs the resistor's ohms")
	}
	d.noBattery("the load is a resistor: it holds no voltage")
	d.noFuse = "a resistor feeds nothing back: what a short circuit draws is the winding's own, and a fuse that blows leaves it unloaded"
	d.inner = g.ResistorOhms.Figure("")
	d.held = quantity.Of(0, g.ResistorOhms.Origin)
	d.works = d.held
	return d.cabled(g)
}

// bus is a converter's input.
func (d dcSide) bus(g job.BatterySpec) dcSide {
	if !g.BusVolts.Given() {
		return d.without("needs the voltage that the converter's input holds")
	}
	d.noBattery("the load is a converter's input: what it does with the amps is its own affair")
	d.noFuse = "the converter's own sheet says what fuse stands before it; one that blows leaves the machine unloaded"
	d.inner = quantity.Of(0, g.BusVolts.Origin)
	d.held = g.BusVolts.Figure("")
	d.works = d.held
	return d.cabled(g)
}

// cabled adds the cable to the load.
func (d dcSide) cabled(g job.BatterySpec) dcSide {
	d.cable = quantity.Of(battery.CableOhms(g.CableM.Or(0), g.CableMM2.Or(defaultCableMM2), defaultCableC), g.CableM.Origin)
	d.ohms = d.inner.With(d.cable, func(a, c float64) float64 { return a + c })
	return d
}

// load is the DC side for the solver with the load at a voltage; ok is false when it is not known.
func (d *dcSide) load(volts quantity.Figure) (charge.Load, bool) {
	if !volts.Known() {
		return charge.Load{}, false
	}
	return charge.Load{
		Volts: volts.Value, Ohms: d.ohms.Value, DiodeVolts: d.diodeVolts.Value, DiodeOhms: d.diodeOhms.Value, Rectifier: d.rectifier,
	}, true
}

// openPeak is the open-circuit peak DC behind the rectifier, from that between the leads.
func (d *dcSide) openPeak(line quantity.Figure) quantity.Figure {
	if d.rectifier == charge.Doubler {
		return line.Times(2)
	}
	return line
}

// onDiode is the highest voltage that one diode has to block, from the peak DC with the load off: with
// half wave the load's voltage, if it holds one, adds to the other half wave.
func (d *dcSide) onDiode(open quantity.Figure) quantity.Figure {
	if d.rectifier == charge.HalfWave && d.held.Known() {
		return open.With(d.held, func(v, held float64) float64 { return v + max(v, held) })
	}
	return open
}

// cautions is what a battery asks for.
func (d *dcSide) cautions() []string {
	if d.notBattery != "" {
		return nil
	}
	return battery.Cautions(d.spec)
}
