package winding

import (
	"fmt"

	"slotwright/winding/battery"
	"slotwright/winding/charge"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// dcSide is what the bridge works into.
type dcSide struct {
	rest, absorption, float, chargeLimit quantity.Figure
	ohms                                 quantity.Figure // battery, and cable there and back
	inner, cable                         quantity.Figure
	diodeVolts, diodeOhms                quantity.Figure
	why                                  string // what is wrong with the battery
	spec                                 battery.Spec
}

// Common practice, no source. A diode's line is that of a press-fit or stud diode between
// a few and a few tens of amperes.
const (
	defaultCableC    = 40.0
	siliconVolts     = 0.75
	schottkyVolts    = 0.40
	defaultIronPower = 1.5
)

// Where nothing was said.
var (
	defaultCapacityAh  = job.DefaultOf("battery.capacity")
	defaultCableMM2    = job.DefaultOf("battery.cable_area")
	defaultDiodeOhms   = job.DefaultOf("battery.diode_slope")
	defaultAmbientC    = job.DefaultOf("machine.ambient")
	defaultClass       = job.DefaultWord("machine.thermal_class")
	defaultFieldBrushV = job.DefaultOf("field.brush")
)

// newDCSide fills in what was not given of battery, cable and diodes.
func newDCSide(g job.BatterySpec) dcSide {
	kind, _ := battery.ParseChemistry(orWord(g.Chemistry, battery.Flooded.String()))
	d := dcSide{}
	drop := siliconVolts
	if g.Diode == "schottky" {
		drop = schottkyVolts
	}
	d.diodeVolts = g.DiodeVolts.OrReading(drop).Figure("")
	d.diodeOhms = g.DiodeOhms.OrReading(defaultDiodeOhms).Figure("")
	spec := battery.Spec{
		Chemistry: kind, Cells: int(g.Cells.Or(float64(battery.CellsOf12V(kind)))), CapacityAh: g.CapacityAh.Or(defaultCapacityAh),
		RestVolts: g.RestVolts.Value, AbsorptionVolts: g.AbsorptionVolts.Value, FloatVolts: g.FloatVolts.Value,
		MaxChargeAmps: g.MaxChargeAmps.Value, Ohms: g.Ohms.Value,
	}
	d.spec = spec
	l, err := battery.Levels(spec)
	if err != nil {
		no := quantity.Missing(err.Error())
		d.rest, d.absorption, d.float, d.chargeLimit, d.ohms, d.inner, d.cable = no, no, no, no, no, no, no
		d.why = err.Error()
		return d
	}
	d.rest, d.absorption, d.float = level(l.RestVolts, g.RestVolts), level(l.AbsorptionVolts, g.AbsorptionVolts), level(l.FloatVolts, g.FloatVolts)
	d.chargeLimit, d.inner = level(l.MaxChargeAmps, g.MaxChargeAmps), level(l.Ohms, g.Ohms)
	if g.Ohms.Given() {
		d.inner = g.Ohms.Figure("")
	}
	d.cable = quantity.Of(battery.CableOhms(g.CableM.Or(0), g.CableMM2.Or(defaultCableMM2), defaultCableC), g.CableM.Origin)
	d.ohms = d.inner.With(d.cable, func(a, c float64) float64 { return a + c })
	return d
}

// fuseFor is the fuse at the post for the most that any trial charges, or for the amps
// wanted where nothing runs yet.
func (d *dcSide) fuseFor(o *Outcome, wanted quantity.Reading) quantity.Figure {
	most := wanted.Figure("needs the amps wanted")
	for i := range o.Trials {
		if a := o.Trials[i].AmpsTop; a.Known() && a.Value > most.Value {
			most = a
		}
	}
	if !most.Known() {
		most = d.chargeLimit
	}
	fuse := most.Then(battery.FuseAmps)
	if fuse.Known() && fuse.Value == 0 {
		return quantity.Missing("more amps than a usual fuse carries")
	}
	return fuse.Because(fmt.Sprintf("the next size from 1.25 times %.3g A, the most that any trial charges; the cable must stand it", most.Value))
}

// level is a battery level as a figure: as it was given, or a default out of the table.
func level(l battery.Level, given quantity.Reading) quantity.Figure {
	switch {
	case l.Value <= 0:
		return quantity.Missing("not known for this battery; give it")
	case l.Given:
		return quantity.Figure{Value: l.Value, Origin: given.Origin}
	default:
		return quantity.Figure{Value: l.Value, Origin: quantity.Default, Why: l.Source}
	}
}

// load is the DC side for the solver; ok is false when the battery is not known.
func (d *dcSide) load() (charge.Load, bool) {
	if !d.rest.Known() {
		return charge.Load{}, false
	}
	return charge.Load{Volts: d.rest.Value, Ohms: d.ohms.Value, DiodeVolts: d.diodeVolts.Value, DiodeOhms: d.diodeOhms.Value}, true
}
