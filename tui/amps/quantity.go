package amps

import (
	"math"
	"strconv"
	"strings"

	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/unit"
)

// quantity is one thing that can be drawn against speed.
type quantity struct {
	tab   string // its name among the others
	axis  string // its name on the axis
	table string // its name over the table
	dim   unit.Dimension
	// figures is how many significant ones its largest value is written with; the others
	// get the same decimals.
	figures int
	of      func(winding.RunPoint) float64
	// charging is set when it says something about charging only, so that it is nothing
	// below cut-in.
	charging bool
}

// The quantities by their place in the list.
const (
	ofAmps = iota
	ofWatts
	ofEfficiency
	ofWinding
	ofOpenVolts
	ofShaft
	ofTorque
)

var percent = unit.Only("%")

var quantities = []quantity{
	{"amps", "to battery", "to battery", unit.Amps, 3, func(p winding.RunPoint) float64 { return p.AmpsDC }, true},
	{"watts", "to battery", "to battery", unit.Watts, 3, func(p winding.RunPoint) float64 { return p.BatteryWatts }, true},
	{"efficiency", "battery/shaft", "efficiency", percent, 2, func(p winding.RunPoint) float64 { return 100 * p.Efficiency }, true},
	{"winding", "winding", "winding", unit.Celsius, 2, func(p winding.RunPoint) float64 { return p.WindingC }, false},
	{"open volts", "unloaded peak", "unloaded peak", unit.Volts, 3, func(p winding.RunPoint) float64 { return p.OpenVoltsDC }, false},
	{"shaft", "at the shaft", "shaft", unit.Watts, 3, func(p winding.RunPoint) float64 { return p.ShaftWatts }, false},
	{"torque", "torque", "torque", unit.Torque, 3, func(p winding.RunPoint) float64 { return p.TorqueNm }, false},
}

// more are the values that only the list at the cursor shows, below the others.
var more = []quantity{
	{"", "", "phase RMS", unit.Amps, 3, func(p winding.RunPoint) float64 { return p.PhaseAmpsRMS }, true},
	{"", "", "copper loss", unit.Watts, 3, func(p winding.RunPoint) float64 { return p.CopperWatts }, true},
	{"", "", "diode loss", unit.Watts, 3, func(p winding.RunPoint) float64 { return p.DiodeWatts }, true},
	{"", "", "iron and drag", unit.Watts, 3, func(p winding.RunPoint) float64 { return p.IronWatts }, false},
}

func (v *View) now() quantity { return quantities[v.quantity] }

// unit is the unit it is shown in.
func (q quantity) unit(s *session.Session) unit.Unit { return s.Units.For(q.dim) }

// value is the quantity at a point, in the unit it is shown in.
func (q quantity) value(s *session.Session, p winding.RunPoint) float64 {
	return q.unit(s).From(q.of(p))
}

// decimals are those of every value of the quantity, by the largest one drawn.
func (q quantity) decimals(s *session.Session) int {
	top := 0.0
	for _, t := range s.Outcome().Trials {
		for _, p := range t.Curve {
			top = max(top, math.Abs(q.value(s, p)))
		}
	}
	if top == 0 {
		return 0
	}
	return max(0, min(q.figures-1-int(math.Floor(math.Log10(top))), 3))
}

// text writes the quantity at a point.
func (q quantity) text(s *session.Session, p winding.RunPoint, decimals int) string {
	if q.charging && p.AmpsDC == 0 {
		return session.Dash
	}
	text := strconv.FormatFloat(q.value(s, p), 'f', decimals, 64)
	return strings.Replace(text, "-", "−", 1)
}
