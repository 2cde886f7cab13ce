package winding

import (
	"cmp"
	"slotwright/winding/battery"
	"slotwright/winding/charge"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// dcSide is what the machine feeds: rectifier, cable and load.
type dcSide struct {
	rest, absorption, float, chargeLimit quantity.Figure
	// charging is the voltage of the battery while it takes charge; every figure of amps is at this
	// voltage unless it says otherwise.
	charging              quantity.Figure
	ohms                  quantity.Figure // battery, and cable there and back
	inner, cable          quantity.Figure
	diodeVolts, diodeOhms quantity.Figure
	// held is the voltage at no current; works is the one the amps are worked out against: of a battery
	// at rest and taking charge.
	held, works quantity.Figure
	rectifier   charge.Rectifier
	starDiodes  bool   // two more at the star point
	why         string // what is wrong with the load
	notBattery  string // why it is no battery, "" for one
	noFuse      string // why nothing is said of a fuse
	spec        battery.Spec
}

// Common practice, no source. A diode's line is that of a press-fit or stud diode from a few to a few
// tens of amperes.
const (
	defaultCableC    = 40.0
	siliconVolts     = 0.75
	schottkyVolts    = 0.40
	defaultIronPower = 1.5
)

// Where nothing was given.
var (
	defaultCapacityAh  = job.DefaultOf("battery.capacity")
	defaultCableMM2    = job.DefaultOf("battery.cable_area")
	defaultDiodeOhms   = job.DefaultOf("battery.diode_slope")
	defaultAmbientC    = job.DefaultOf("machine.ambient")
	defaultClass       = job.DefaultWord("machine.thermal_class")
	defaultFieldBrushV = job.DefaultOf("field.brush")
)

// newDCSide fills in what was not given of load, cable and diodes, on a machine of so many phases.
func newDCSide(g job.BatterySpec, phases int) dcSide {
	d := dcSide{starDiodes: g.StarDiodes == "yes"}
	drop := siliconVolts
	if g.Diode == "schottky" {
		drop = schottkyVolts
	}
	d.diodeVolts = g.DiodeVolts.OrReading(drop).Figure("")
	d.diodeOhms = g.DiodeOhms.OrReading(defaultDiodeOhms).Figure("")
	switch g.Load {
	case job.LoadResistor:
		d = d.resistor(g)
	case job.LoadBus:
		d = d.bus(g)
	default:
		d = d.battery(g)
	}
	return d.joined(g.Rectifier, phases)
}

// battery adds the levels of the battery's chemistry to a load.
func (d dcSide) battery(g job.BatterySpec) dcSide {
	kind, _ := battery.ParseChemistry(cmp.Or(g.Chemistry, battery.Flooded.String()))
	spec := battery.Spec{
		Chemistry: kind, Cells: int(g.Cells.Or(float64(battery.CellsOf12V(kind)))), CapacityAh: g.CapacityAh.Or(defaultCapacityAh),
		RestVolts: g.RestVolts.Value, AbsorptionVolts: g.AbsorptionVolts.Value, FloatVolts: g.FloatVolts.Value,
		MaxChargeAmps: g.MaxChargeAmps.Value, Ohms: g.Ohms.Value,
	}
	d.spec = spec
	l, err := battery.Levels(spec)
	if err != nil {
		return d.without(err.Error())
	}
	d.rest, d.absorption, d.float = level(l.RestVolts, g.RestVolts), level(l.AbsorptionVolts, g.AbsorptionVolts), level(l.FloatVolts, g.FloatVolts)
	d.charging = chargingVolts(g.ChargingVolts, d.rest, d.absorption)
	d.chargeLimit, d.inner = level(l.MaxChargeAmps, g.MaxChargeAmps), level(l.Ohms, g.Ohms)
	if g.Ohms.Given() {
		d.inner = g.Ohms.Figure("")
	}
	d.held, d.works = d.rest, d.charging
	return d.cabled(g)
}

// inside is the battery's own resistance, missing for any other load.
func (d *dcSide) inside() quantity.Figure {
	if !d.rest.Known() {
		return quantity.Missing(d.rest.Why)
	}
	return d.inner
}

// chargingVolts is what was given, else half way from rest to absorption: where a battery is for most
// of the time that it takes charge (common practice, no source). A battery whose absorption voltage is
// not known is taken at rest.
func chargingVolts(given quantity.Reading, rest, absorption quantity.Figure) quantity.Figure {
	switch {
	case given.Given():
		return given.Figure("")
	case !absorption.Known():
		return rest.Because("at rest: its absorption voltage is not known")
	}
	half := rest.With(absorption, func(a, b float64) float64 { return (a + b) / 2 })
	half.Origin = quantity.Guessed
	return half.Because("half way from rest to absorption")
}

// level is a battery level as a figure: as given, or a default from the table.
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
