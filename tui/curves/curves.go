// Package curves is the charging-curve screen: what reaches the battery, and what comes with it,
// against the speed of the alternator, for all trials at once. A cursor reads exact values off, a table
// gives them at the job's own speeds, and plain sentences describe the curves.
//
// It computes nothing: every figure is the outcome's, or the bench's for a speed between the curve's
// points.
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
	// rpm is the cursor's speed; NaN: it was never moved and follows the usual speed.
	rpm float64
	// flipped shows the other choice than the size of the screen suggests: every value at the cursor
	// beside the chart, or the chart alone.
	flipped bool
	still   bool // without the cursor
	at      kit.Rect
}

// New is the screen with the amps, the cursor at the usual speed.
func New() *View { return &View{rpm: math.NaN()} }

// Name is on the tab.
func (v *View) Name() string { return "Curves" }

// Typing is never true: no text is taken here.
func (v *View) Typing(*session.Session) bool { return false }

// SetSize gives the screen its rectangle; it keeps nothing else.
func (v *View) SetSize(_ *session.Session, r kit.Rect) { v.at = r }

// Bindings are the keys of the screen.
func (v *View) Bindings(s *session.Session) []kit.Binding {
	const curves, cursor = "Curves", "Cursor"
	n := len(quantities)
	step := func(up, big bool) func() { return func() { v.step(s, up, big) } }
	return []kit.Binding{
		kit.Bind(curves, "y m", "amps/watts…", "What is drawn: net amps, net watts, efficiency, winding temperature, open volts, shaft watts, torque.", func() { v.quantity = (v.quantity + 1) % n }),
		kit.Bind(curves, "Y M", "", "The quantity before.", func() { v.quantity = (v.quantity + n - 1) % n }),
		kit.Bind(cursor, "right l", "faster", "The cursor to a higher speed.", step(true, false)),
		kit.Bind(cursor, "left h", "slower", "The cursor to a lower speed.", step(false, false)),
		kit.Bind(cursor, "shift+right pgdown L", "", "A big step to a higher speed.", step(true, true)),
		kit.Bind(cursor, "shift+left pgup H", "", "A big step to a lower speed.", step(false, true)),
		kit.Bind(cursor, "home", "", "The cursor to standstill.", func() { v.to(s, 0) }),
		kit.Bind(cursor, "end", "", "The cursor to the end of the curves.", func() { v.to(s, math.Inf(1)) }),
		kit.Bind(cursor, "n", "next mark", "The cursor to the next speed that matters: where charging begins, a crossing, a limit, where it really runs, one of the job's own.", func() { v.jump(s, true) }),
		kit.Bind(cursor, "p", "", "The cursor to the mark before.", func() { v.jump(s, false) }),
		kit.Bind(curves, "] down j", "trial", "The next trial.", func() { s.Choose(s.Trial + 1) }),
		kit.Bind(curves, "[ up k", "", "The trial before.", func() { s.Choose(s.Trial - 1) }),
		kit.Bind(curves, "v", "all values", "Every value at the cursor beside the chart, or the chart alone.", func() { v.flipped = !v.flipped }),
	}
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	_, used := kit.Press(v.Bindings(s), msg)
	return used
}

// step takes the cursor along the axis, to the next round speed.
func (v *View) step(s *session.Session, up, big bool) {
	end := endOf(s)
	if end <= 0 {
		return
	}
	step, more := steps(end)
	if big {
		step = more
	}
	now := v.cursor(s) / step
	if up {
		v.to(s, (math.Floor(now+1e-6)+1)*step)
	} else {
		v.to(s, (math.Ceil(now-1e-6)-1)*step)
	}
}

// to takes the cursor to a speed, at most to the end of the curves.
func (v *View) to(s *session.Session, rpm float64) {
	if end := endOf(s); end > 0 {
		v.rpm = max(0, min(rpm, end))
	}
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
