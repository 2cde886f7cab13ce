package curves

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// plotted is one thing that can be drawn against speed.
type plotted struct {
	*winding.Output
	tab  string // its name among the others
	axis string // its name on the axis
	// charging is set when it concerns charging only: it is not shown where no amps flow, unless the
	// rotor takes some.
	charging bool
}

// The quantities by their index in the list.
const (
	ofAmps = iota
	ofWatts
	ofEfficiency
	ofWinding
	ofOpenVolts
	ofShaft
	ofTorque
)

var quantities = []plotted{
	{winding.PointOutputOf("net_amps_dc"), "amps", "net into the battery", true},
	{winding.PointOutputOf("net_w"), "watts", "net into the battery", true},
	{winding.PointOutputOf("efficiency"), "efficiency", "net over shaft", true},
	{winding.PointOutputOf("winding_c"), "winding", "winding", false},
	{winding.PointOutputOf("open_volts_dc"), "open volts", "unloaded peak", false},
	{winding.PointOutputOf("shaft_w"), "shaft", "at the shaft", false},
	{winding.PointOutputOf("torque_nm"), "torque", "torque", false},
}

// more are the values that only the list at the cursor shows, below the others.
var more = []plotted{
	{winding.PointOutputOf("amps_dc"), "", "", true},
	{winding.PointOutputOf("field_w"), "", "", false},
	{winding.PointOutputOf("phase_amps_rms"), "", "", true},
	{winding.PointOutputOf("copper_w"), "", "", true},
	{winding.PointOutputOf("diode_w"), "", "", true},
	{winding.PointOutputOf("iron_w"), "", "", false},
}

func (v *View) now() plotted { return quantities[v.quantity] }

// unit is the unit it is shown in.
func (q plotted) unit(s *session.Session) quantity.Unit { return s.Units.For(q.Dim) }

// value is the quantity at a point, in the unit it is shown in.
func (q plotted) value(s *session.Session, p winding.RunPoint) float64 {
	return q.unit(s).From(q.AtPoint(&p))
}

// idle reports whether the quantity has nothing to show at a point: no amps flow, and the rotor takes
// none.
func (q plotted) idle(p winding.RunPoint) bool {
	return q.charging && p.AmpsDC == 0 && q.AtPoint(&p) == 0
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
	return max(0, min(q.Digits-1-int(math.Floor(math.Log10(top))), 3))
}

// whole is the width before the decimal point that every value of the quantity fits in.
func (q plotted) whole(s *session.Session) int {
	lo, hi := 0.0, 0.0
	for _, t := range s.Outcome().Trials {
		for i := range t.Curve {
			at := q.value(s, t.Curve[i])
			lo, hi = min(lo, at), max(hi, at)
		}
	}
	n := len(strconv.FormatFloat(hi, 'f', 0, 64))
	if lo < 0 {
		n = max(n, len(strconv.FormatFloat(lo, 'f', 0, 64)))
	}
	return n
}

// widest is the width before the decimal point that every value of every quantity fits in.
func widest(s *session.Session) int {
	n := 1
	for _, q := range slices.Concat(quantities, more) {
		n = max(n, q.whole(s))
	}
	return n
}

// label is the quantity's name and unit.
func (q plotted) label(s *session.Session) string { return q.Label + ", " + q.unit(s).Name }

// text writes the quantity at a point.
func (q plotted) text(s *session.Session, p winding.RunPoint, decimals int) string {
	if q.idle(p) {
		return session.Dash
	}
	text := strconv.FormatFloat(q.value(s, p), 'f', decimals, 64)
	return strings.Replace(text, "-", "−", 1)
}
