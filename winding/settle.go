package winding

import (
	"math"

	"slotwright/winding/drive"
)

// # The next balance up or down the shaft
//
// A trial whose battery, wire or field has changed runs near the speed it had. From there the shaft
// goes up while torque is in excess and down while it is short, in steps small enough not to pass a
// balance and its neighbour at once, and no longer than the secant through the last two speeds asks
// for. Once two speeds bracket the balance, false position (Illinois) closes in on it, with
// bisection where one side sticks. Near by this takes three to six solved points.
//
// The balance of a winding that never ran may be far away. At cut-in it takes nothing but drag, so
// cut-in and any speed with torque short bracket a balance from the start. If there are several in
// between, any of them may be found; all of them hold.

// settle is where a shaft settles from a speed near a balance, but not above the speed asked for. A
// drive that does not give way (no torque given) stays.
func (r *charger) settle(given drive.Torque, rpm, asked, warm float64) RunPoint {
	return r.settleAbove(0, given, rpm, asked, warm)
}

// settleAbove is settle from a speed that may be far above the balance, for a trial that begins to
// charge at the speed begins, rpm; 0 if unknown.
func (r *charger) settleAbove(begins float64, given drive.Torque, rpm, asked, warm float64) RunPoint {
	if given == nil || rpm <= 0 {
		return r.at(rpm, warm)
	}
	way := *r
	r = &way
	r.onTheWay = true
	idea := trend{ambient: warm}
	return settle(begins, func(rpm float64) RunPoint {
		if r.holdsHeat() {
			return r.at(rpm, warm)
		}
		p := r.at(rpm, idea.next(rpm))
		idea.add(rpm, p.WindingC)
		return p
	}, given, rpm, asked)
}

// settle is the same for anything that runs.
func settle(begins float64, run func(rpm float64) RunPoint, given drive.Torque, rpm, asked float64) RunPoint {
	w := shaftWalk{run, given, asked}
	var from stop
	if asked > 0 {
		if from = w.to(asked); from.over >= 0 {
			return from.RunPoint
		}
	}
	if from.RPM != rpm {
		from = w.to(rpm)
	}
	if from.over < 0 && begins > 0 && begins < from.RPM {
		if low := w.to(begins); low.over > 0 {
			return w.close(low, from)
		}
	}
	return w.walk(from)
}

// stop is a speed on the way and its excess torque: given less taken.
type stop struct {
	RunPoint
	over float64
}

// shaftWalk is a shaft on its way to a balance.
type shaftWalk struct {
	run   func(rpm float64) RunPoint
	given drive.Torque
	asked float64
}

func (w *shaftWalk) to(rpm float64) stop {
	p := w.run(rpm)
	return stop{p, w.given(rpm) - p.TorqueNm}
}

// Steps by which settle walks to the next balance: a volt or two of the battery move it by a few
// per cent of speed. settled is how close to the balance it stops, relative.
const (
	settleStep  = 0.02
	longStep    = 0.5
	settleSteps = 24
	settled     = 2e-6
)

// walk goes on until the balance is bracketed, or has been approached from one side.
func (w *shaftWalk) walk(a stop) RunPoint {
	if a.over == 0 {
		return a.RunPoint
	}
	way, step, long := math.Copysign(1, a.over), settleStep, settleStep
	for range settleSteps {
		n := a.RPM * (1 + way*long)
		if w.asked > 0 {
			n = min(n, w.asked)
		}
		b := w.to(n)
		if (a.over > 0) != (b.over > 0) {
			return w.close(a, b)
		}
		step = min(1.3*step, longStep)
		long = step
		if ahead := b.over * (b.RPM - a.RPM) / (a.over - b.over) * way / b.RPM; ahead > 0 {
			if ahead < settled {
				return b.RunPoint
			}
			long = min(4*step, longStep, ahead*1.02) // a little past it, to bracket the balance
		}
		if b.RPM == a.RPM {
			return b.RunPoint
		}
		a = b
	}
	return a.RunPoint
}

// close closes in on a balance between two speeds.
func (w *shaftWalk) close(a, b stop) RunPoint {
	if a.RPM > b.RPM {
		a, b = b, a
	}
	side, same := 0, 0
	for range 60 {
		slope := (b.over - a.over) / (b.RPM - a.RPM)
		n := a.RPM - a.over/slope
		if same > 1 || !(n > a.RPM && n < b.RPM) { // a corner lies in between, as at cut-in
			n, same = (a.RPM+b.RPM)/2, 0
		}
		m := w.to(n)
		if math.Abs(m.over) <= settled*n*math.Abs(slope) || b.RPM-a.RPM <= 1e-5*b.RPM {
			return m.RunPoint
		}
		now := 1
		if (m.over > 0) == (a.over > 0) {
			if a = m; side == 1 {
				b.over /= 2
			}
		} else {
			if b, now = m, -1; side == -1 {
				a.over /= 2
			}
		}
		if same++; now != side {
			same = 0
		}
		side = now
	}
	return w.to((a.RPM + b.RPM) / 2).RunPoint
}
