package curves

import (
	"math"
	"strconv"
	"strings"

	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// plotted is one thing that can be drawn against speed.
type plotted struct {
	tab   string // its name among the others
	axis  string // its name on the axis
	table string // its name over the table
	dim   quantity.Dimension
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

var percent = quantity.Only("%")

var quantities = []plotted{
	{"amps", "to battery", "to battery", quantity.Amps, 3, func(p winding.RunPoint) float64 { return p.AmpsDC }, true},
	{"watts", "to battery", "to battery", quantity.Watts, 3, func(p winding.RunPoint) float64 { return p.BatteryWatts }, true},
	{"efficiency", "battery/shaft", "efficiency", percent, 2, func(p winding.RunPoint) float64 { return 100 * p.Efficiency }, true},
	{"winding", "winding", "winding", quantity.Celsius, 2, func(p winding.RunPoint) float64 { return p.WindingC }, false},
	{"open volts", "unloaded peak", "unloaded peak", quantity.Volts, 3, func(p winding.RunPoint) float64 { return p.OpenVoltsDC }, false},
	{"shaft", "at the shaft", "shaft", quantity.Watts, 3, func(p winding.RunPoint) float64 { return p.ShaftWatts }, false},
	{"torque", "torque", "torque", quantity.Torque, 3, func(p winding.RunPoint) float64 { return p.TorqueNm }, false},
}

// more are the values that only the list at the cursor shows, below the others.
var more = []plotted{
	{"", "", "phase RMS", quantity.Amps, 3, func(p winding.RunPoint) float64 { return p.PhaseAmpsRMS }, true},
	{"", "", "copper loss", quantity.Watts, 3, func(p winding.RunPoint) float64 { return p.CopperWatts }, true},
	{"", "", "diode loss", quantity.Watts, 3, func(p winding.RunPoint) float64 { return p.DiodeWatts }, true},
	{"", "", "iron and drag", quantity.Watts, 3, func(p winding.RunPoint) float64 { return p.IronWatts }, false},
}

func (v *View) now() plotted { return quantities[v.quantity] }

// unit is the unit it is shown in.
func (q plotted) unit(s *session.Session) quantity.Unit { return s.Units.For(q.dim) }

// value is the quantity at a point, in the unit it is shown in.
func (q plotted) value(s *session.Session, p winding.RunPoint) float64 {
	return q.unit(s).From(q.of(p))
}

// decimals are those of every value of the quantity, by the largest one drawn.
func (q plotted) decimals(s *session.Session) int {
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
func (q plotted) text(s *session.Session, p winding.RunPoint, decimals int) string {
	if q.charging && p.AmpsDC == 0 {
		return session.Dash
	}
	text := strconv.FormatFloat(q.value(s, p), 'f', decimals, 64)
	return strings.Replace(text, "-", "−", 1)
}
