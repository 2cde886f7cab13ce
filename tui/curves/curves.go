// Package curves is the charging-curve screen: what reaches the battery, and what comes
// with it, against the speed of the alternator, for all trials at once. A cursor reads
// exact values off, a table gives them at the job's own speeds, and plain sentences
// say what the curves say.
//
// It works nothing out: every figure is the outcome's, or the bench's for a speed
// between the curve's points.
package curves

import (
	"math"

	"slotwright/tui/kit"
	"slotwright/tui/session"

	tea "github.com/charmbracelet/bubbletea"
)

// View is the charging-curve screen.
type View struct {
	quantity int
	// rpm is where the cursor stands; NaN: it was never moved and stands at the usual
	// speed, also when that changes.
	rpm float64
	// flipped shows the other choice than the size of the screen suggests: every value
	// at the cursor beside the chart, or the chart alone.
	flipped bool
}

// New is the screen with the amps, the cursor at the usual speed.
func New() *View { return &View{rpm: math.NaN()} }

// Name stands on the tab.
func (v *View) Name() string { return "Curves" }

// Typing is never: no text is taken here.
func (v *View) Typing(*session.Session) bool { return false }

// Bindings are the keys of the screen.
func (v *View) Bindings(*session.Session) []kit.Binding { return bindings }

var bindings = []kit.Binding{
	{ID: "quantity", Keys: []string{"y", "m"}, Label: "amps/watts…", Help: "What is drawn: amps, watts, efficiency, winding temperature, open volts, shaft watts, torque.", Group: "Curves"},
	{ID: "quantity-", Keys: []string{"Y", "M"}, Help: "The quantity before.", Group: "Curves"},
	{ID: "right", Keys: []string{"right", "l"}, Label: "faster", Help: "The cursor to a higher speed.", Group: "Cursor"},
	{ID: "left", Keys: []string{"left", "h"}, Label: "slower", Help: "The cursor to a lower speed.", Group: "Cursor"},
	{ID: "right+", Keys: []string{"shift+right", "pgdown", "L"}, Help: "A big step to a higher speed.", Group: "Cursor"},
	{ID: "left+", Keys: []string{"shift+left", "pgup", "H"}, Help: "A big step to a lower speed.", Group: "Cursor"},
	{ID: "first", Keys: []string{"home"}, Help: "The cursor to standstill.", Group: "Cursor"},
	{ID: "last", Keys: []string{"end"}, Help: "The cursor to the end of the curves.", Group: "Cursor"},
	{ID: "mark", Keys: []string{"n"}, Label: "next mark", Help: "The cursor to the next speed that matters: a cut-in, a crossing, a limit, one of the job's own.", Group: "Cursor"},
	{ID: "mark-", Keys: []string{"p"}, Help: "The cursor to the mark before.", Group: "Cursor"},
	{ID: "down", Keys: []string{"]", "down", "j"}, Label: "trial", Help: "The next trial.", Group: "Curves"},
	{ID: "up", Keys: []string{"[", "up", "k"}, Help: "The trial before.", Group: "Curves"},
	{ID: "panel", Keys: []string{"v"}, Label: "all values", Help: "Every value at the cursor beside the chart, or the chart alone.", Group: "Curves"},
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	id := kit.Lookup(bindings, msg.String())
	switch id {
	case "":
		return false
	case "quantity":
		v.quantity = (v.quantity + 1) % len(quantities)
	case "quantity-":
		v.quantity = (v.quantity + len(quantities) - 1) % len(quantities)
	case "panel":
		v.flipped = !v.flipped
	case "up":
		s.Trial = max(0, s.Trial-1)
	case "down":
		s.Trial = max(0, min(len(s.Outcome().Trials)-1, s.Trial+1))
	case "mark", "mark-":
		v.jump(s, id == "mark")
	default:
		v.move(s, id)
	}
	return true
}

// move takes the cursor along the axis. A step lands on round speeds.
func (v *View) move(s *session.Session, id string) {
	end := endOf(s)
	if end <= 0 {
		return
	}
	small, big := steps(end)
	now := v.cursor(s)
	up := func(step float64) float64 { return (math.Floor(now/step+1e-6) + 1) * step }
	down := func(step float64) float64 { return (math.Ceil(now/step-1e-6) - 1) * step }
	switch id {
	case "right":
		now = up(small)
	case "left":
		now = down(small)
	case "right+":
		now = up(big)
	case "left+":
		now = down(big)
	case "first":
		now = 0
	case "last":
		now = end
	}
	v.rpm = max(0, min(now, end))
}

// jump takes the cursor to the next mark on the axis, or to the one before.
func (v *View) jump(s *session.Session, forward bool) {
	list, now := marks(s), v.cursor(s)
	const apart = 1e-6
	if forward {
		for _, m := range list {
			if m > now+apart {
				v.rpm = m
				return
			}
		}
		s.Say("no mark above this speed")
		return
	}
	for i := len(list) - 1; i >= 0; i-- {
		if list[i] < now-apart {
			v.rpm = list[i]
			return
		}
	}
	s.Say("no mark below this speed")
}

// steps are the cursor's small and big step for curves that end at a speed: about a
// hundred and twenty small ones, in round numbers of rpm.
func steps(end float64) (small, big float64) {
	unit := math.Pow(10, math.Floor(math.Log10(end/120)))
	for _, k := range []float64{1, 2, 5, 10} {
		if small = k * unit; small >= end/120 {
			break
		}
	}
	return small, 10 * small
}
