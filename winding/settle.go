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

// # A balance that is moved a little
//
// To find the effect of an error, the balance of the same trial with a small change is needed many
// times. It lies within a few percent, and the slope of the torque difference over speed is known from
// the trial's own curve. So the trial is solved at its old speed, and once more where that slope
// predicts the new balance, or twice if that was not near. The balance is then taken by linear
// interpolation, or a short extrapolation, through the last two points. A balance further away, past a
// corner or at the limit of a regulator is found by settle. The effect of an error differs from that by
// settle by a thousandth of itself.

// How close the last point has to come, as a part of the first one's imbalance, in how many points; and
// how far it may be from where the trial ran, as a part of the speed.
const (
	nudgedPart   = 0.03
	nudgedPoints = 3
	nudgedFar    = 0.06
)

// nudged is settle for a trial changed slightly from where it ran, at its old temperature: amps, watts
// and speed alone. slope is the torque surplus over speed there, Nm per rpm; 0 if unknown.
func (r *charger) nudged(given drive.Torque, rpm, asked, warm, slope float64) RunPoint {
	if given == nil || !(slope < 0) || rpm <= 0 {
		return r.settle(given, rpm, asked, warm)
	}
	w := shaftWalk{func(rpm float64) RunPoint { return r.at(rpm, warm) }, given, asked}
	a := w.to(rpm)
	first := math.Abs(a.over)
	for range nudgedPoints - 1 {
		n := a.RPM - a.over/slope
		if asked > 0 {
			n = min(n, asked)
		}
		if !(math.Abs(n-rpm) <= nudgedFar*rpm) {
			break
		}
		if math.Abs(n-a.RPM) <= settled*rpm {
			return a.RunPoint
		}
		b := w.to(n)
		switch {
		case n == asked && b.over >= 0:
			return b.RunPoint
		case a.Held != b.Held:
			return r.settle(given, rpm, asked, warm)
		case math.Abs(b.over) <= nudgedPart*first:
			return a.between(&b)
		}
		slope = (b.over - a.over) / (b.RPM - a.RPM)
		a = b
	}
	return r.settle(given, rpm, asked, warm)
}

// between is the balance on the straight line through two stops: amps, watts and speed alone.
func (a *stop) between(b *stop) RunPoint {
	part := a.over / (a.over - b.over)
	on := func(from, to float64) float64 { return from + part*(to-from) }
	p := b.RunPoint
	p.RPM, p.AmpsDC = on(a.RPM, b.RPM), max(0, on(a.AmpsDC, b.AmpsDC))
	p.NetAmps, p.NetWatts = on(a.NetAmps, b.NetAmps), on(a.NetWatts, b.NetWatts)
	return p
}

// slopeAt is the slope of the torque surplus of a drive that gives way over speed where a trial runs,
// Nm per rpm; 0 if it does not run or the drive holds its speed.
func (b *bed) slopeAt(c *characteristic, at *Operating) float64 {
	if c == nil || at == nil || at.RPM <= 0 || b.drive.holds(at) {
		return 0
	}
	given := b.drive.given(at.X)
	if given == nil {
		return 0
	}
	h := 1e-3 * at.RPM
	over := func(rpm float64) float64 { return given(rpm) - c.torqueAt(rpm) }
	return (over(at.RPM+h) - over(at.RPM-h)) / (2 * h)
}
