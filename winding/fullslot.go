package winding

import (
	"math"
	"sync"
	"sync/atomic"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// # Windings that fill the slot
//
// What could take a trial's place is a wire near its own with as many turns as fit. Such a
// winding hangs on the wire and on how the trial is wound and joined, not on how many turns
// the trial has. So each is worked out once, by itself, for every trial in whose place it
// could be and for every key that leaves alone what the trials share: from rest, cold, as a
// trial is, and as warm as it gets by itself.
//
// Each is worked out as far as it is asked about, a cheap figure before a dear one: first
// what it brings, and only where that is enough whether it stands that in every condition.
//
// Cost: three to ten solved points a condition; in wind a coarse year first, some fifty.

// fullSlots is those worked out so far, for several goroutines; benches that share all that
// is not a trial's own share it.
type fullSlots struct {
	sync.Mutex
	of map[fullKey]*fullSlot
}

// mostFullSlots is how many are kept: some seven wires to a trial, over many keys.
const mostFullSlots = 256

// fullKey is everything of a trial that such a winding hangs on.
type fullKey struct {
	gauge                           wiretable.Gauge
	build                           wiretable.Build
	metal                           wiretable.Metal
	connection                      layout.Connection
	strands, circuits, span, layers quantity.Reading
	kind                            string
}

// fullSlot is one of them.
type fullSlot struct {
	filled, ran, stood sync.Once
	told               sync.Once
	late               bool        // begins above the slow speed of a drive that is not the wind
	drags              atomic.Bool // it drags an engine far below its speed
	trial              job.Trial
	begins             float64  // rpm
	r                  *charger // nil: it does not fit, cannot be put in or does not run
	limits             Limits
	score              float64 // a year's energy in wind, kWh, else net
	net                float64 // A in the usual condition
	year               float64 // kWh, as a trial's
	starts             [conditionCount]spot
	stands             [conditionCount]bool
	usually            drive.WindPoint // in the wind: where the rotor turns in the usual one
}

// full is a trial with its slot filled, the wire and all else as they are.
func (of offers) full(t job.Trial) *fullSlot {
	key := fullKey{t.Gauge, t.Build, t.Metal, t.Connection, t.Strands, t.Circuits, t.Span, t.Layers, t.Kind}
	all := of.slots
	all.Lock()
	f := all.of[key]
	if f == nil {
		if all.of == nil || len(all.of) >= mostFullSlots {
			all.of = map[fullKey]*fullSlot{}
		}
		f = new(fullSlot)
		all.of[key] = f
	}
	all.Unlock()
	f.filled.Do(func() { of.fill(f, t) })
	return f
}

// fill winds as many turns as fit.
func (of offers) fill(f *fullSlot, t job.Trial) {
	t.Turns = quantity.Reading{Value: of.TurnsThatFit(t).Value, Origin: quantity.Derived}
	of.wind(f, t)
}

// wind winds it on paper.
func (of offers) wind(f *fullSlot, t job.Trial) {
	t.Name, t.Note = "", ""
	f.trial = t
	if t.Turns.Value < 1 && len(t.CoilTurns) == 0 {
		return
	}
	o := of.Static(t)
	slowest := of.speeds.slow
	f.late = of.drive.kind != job.DriveWind && slowest.Known() && o.CutInRPM.Known() && o.CutInRPM.Value > slowest.Value*1.0001
	if o.MouthSpareMM.Known() && o.MouthSpareMM.Value <= 0 {
		return
	}
	f.begins, f.limits = o.CutInRPM.Value, o.Limits
	f.r, _ = of.charger(t, &o)
}

// brings is what it is measured by, worked out when it is first asked for; NaN of one that is left out.
func (of offers) brings(f *fullSlot) float64 {
	if f.late && !of.anyhow {
		return math.NaN()
	}
	f.ran.Do(func() {
		switch {
		case f.r == nil:
			f.score = math.NaN()
		case of.drive.kind == job.DriveWind:
			f.score = of.coarseYear(f)
		default:
			for i := range f.starts {
				f.starts[i] = spot{rpm: of.drive.conditions[i].RPM.Value, warm: of.air.ambientC}
			}
			f.stands[usual] = of.standsIn(f, usual)
			if f.score = f.net; !f.stands[usual] {
				f.score = math.NaN()
			}
		}
	})
	return f.score
}

// holds reports whether it stands what flows in every condition; brings comes first.
func (of offers) holds(f *fullSlot) bool {
	f.stood.Do(func() {
		for i := conditionCount - 1; i >= 0; i-- { // at the top most flows
			c := &of.drive.conditions[i]
			if !f.stands[i] {
				f.stands[i] = !c.X.Known() || c.Same != "" || of.standsIn(f, i)
			}
			if !f.stands[i] {
				return
			}
		}
	})
	for _, ok := range f.stands {
		if !ok {
			return false
		}
	}
	return true
}

// standsIn reports whether it stands what flows in a condition.
func (of offers) standsIn(f *fullSlot, i int) bool {
	c, at := &of.drive.conditions[i], f.starts[i]
	begins := f.begins
	if of.drive.kind == job.DriveWind {
		begins = 0 // near where it runs already
	}
	run := f.r.settleAbove(begins, of.drive.given(c.X.Value), max(at.rpm, 1), c.asked, at.warm)
	if i == usual {
		f.net = run.NetAmps
	}
	if of.drive.keepsOf(c, &run) < draggedFar {
		f.drags.Store(true)
		return false
	}
	if !of.endures(&f.limits, f.trial.Connection, run) {
		return false
	}
	full := of.dc.absorption
	if !full.Known() || run.RPM >= of.drive.bestRPM(c) {
		return true // past its best a drive gives less the faster it turns
	}
	return of.endures(&f.limits, f.trial.Connection, f.r.beyond(full.Value).settle(of.drive.given(c.X.Value), run.RPM, c.asked, run.WindingC))
}

// coarseYear is a year's net energy, winds a metre a second apart and those of the conditions,
// in which it also says where the rotor turns.
func (of offers) coarseYear(f *fullSlot) float64 {
	year, points := of.yearOf(f, of.drive.up(of.drive.coarse))
	for k, p := range points {
		for i := range f.starts {
			if math.Abs(p.WindMPS-of.drive.conditions[i].X.Value) <= 1e-6 {
				f.starts[i] = spot{rpm: p.RPM, warm: year.Points[k].WindingC}
				if i == usual {
					f.usually = p
				}
			}
		}
	}
	return year.yearIn(of.drive.year)
}

// yearKWh is the same in the winds of a trial's own year, for what is offered: where charging begins
// in the middle of the winds that count, those a metre a second apart make too much of it by a tenth.
func (of offers) yearKWh(f *fullSlot) float64 {
	f.told.Do(func() {
		year, _ := of.yearOf(f, of.drive.up(of.drive.rising))
		f.year = year.yearIn(of.drive.year)
	})
	return f.year
}

// yearOf is where a winding comes to on the way up through rising wind.
func (of offers) yearOf(f *fullSlot, up *drive.Ascent) (year Driven, points []drive.WindPoint) {
	s := of.drive
	if up == nil {
		return year, nil
	}
	own, c := *f.r, of.tried
	c.over(&own, s.fastest, of.air.ambientC, closeOffer)
	points, err := up.Climb(c.torque(f.begins, s.fastest))
	if err != nil {
		return year, nil
	}
	year.Points = make([]DrivePoint, 0, len(points))
	for _, p := range points {
		year.Points = append(year.Points, windPoint(p, c.at(p.RPM)))
	}
	return year, points
}

// up is the way up through winds, coarse or rising; nil where the drive cannot be worked out.
func (s *driveSide) up(winds func() (*drive.Ascent, error)) *drive.Ascent {
	if s.why != "" {
		return nil
	}
	up, err := winds()
	if err != nil {
		return nil
	}
	return up
}

// coarsely is the same year of a trial, from the winds among those it was worked out in.
func (of offers) coarsely(o *TrialOutcome) float64 {
	up := of.drive.up(of.drive.coarse)
	if up == nil {
		return 0
	}
	left := up.Winds()
	winds, watts := make([]float64, 0, len(left)), make([]float64, 0, len(left))
	for i := range o.Points {
		p := &o.Points[i]
		for len(left) > 0 && left[0] < p.X-1e-6 {
			left = left[1:]
		}
		if len(left) > 0 && math.Abs(left[0]-p.X) <= 1e-6 {
			winds, watts = append(winds, p.X), append(watts, p.kept())
		}
	}
	return of.drive.year.LinesKWh(winds, watts)
}
