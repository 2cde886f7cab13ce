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
// A replacement for a trial is a wire near its own with as many turns as fit. Such a winding depends on
// the wire and on how the trial is wound and connected, not on the trial's turns. So each is computed
// once, independently, for every trial that it could replace and for every edit that leaves what the
// trials share alone. Like a trial, it starts at rest and cold and warms as much as it does.
//
// Each is computed only as far as it is asked for, cheap figures before expensive ones: first what it
// brings, and only where that is enough, whether it withstands that in every condition.
//
// Cost: three to ten solved points a condition; in wind first a coarse year, some fifty, or a few that show
// that it cannot bring enough (heldback.go).

// fullSlots caches the windings computed so far, for several goroutines; benches that share everything
// but the trials share it.
type fullSlots struct {
	sync.Mutex
	of map[fullKey]*fullSlot
}

// mostFullSlots is how many are kept: some seven wires a trial, over many edits.
const mostFullSlots = 256

// fullKey is everything of a trial that such a winding depends on.
type fullKey struct {
	gauge                           wiretable.Gauge
	build                           wiretable.Build
	metal                           wiretable.Metal
	connection                      layout.Connection
	strands, circuits, span, layers quantity.Reading
	kind                            string
}

// fullSlot is a winding that fills the slot.
type fullSlot struct {
	filled, ran, stood sync.Once
	told, bounded      sync.Once
	late               bool        // begins above the slow speed of a drive other than wind
	tooThick           bool        // its wire does not pass the slot's mouth
	drags              atomic.Bool // drags an engine far below its speed
	trial              job.Trial
	begins             float64  // rpm
	r                  *charger // nil: it does not fit, cannot be put in or does not run
	limits             Limits
	score              float64 // a year's energy in wind, kWh, else net
	most               float64 // bound of score (heldback.go)
	net                float64 // A in the usual condition
	year               float64 // kWh, as for a trial
	starts             [conditionCount]spot
	stands             [conditionCount]bool
	usually            drive.WindPoint // in wind: where the rotor turns in the usual wind
}

// full is a trial with its slot filled, the wire and everything else unchanged.
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

// wind lays it out and computes its static figures.
func (of offers) wind(f *fullSlot, t job.Trial) {
	t.Name, t.Note = "", ""
	f.trial = t
	if t.Turns.Value < 1 && len(t.CoilTurns) == 0 {
		return
	}
	o := of.Static(t)
	slowest := of.speeds.slow
	f.late = of.drive.kind != job.DriveWind && slowest.Known() && o.CutInRPM.Known() && o.CutInRPM.Value > slowest.Value*1.0001
	if f.tooThick = o.MouthSpareMM.Known() && o.MouthSpareMM.Value <= 0; f.tooThick {
		return
	}
	f.begins, f.limits = o.CutInRPM.Value, o.Limits
	f.r, _ = of.charger(t, &o)
}

// brings is its score, computed when first asked for; NaN for one that is left out.
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

// holds reports whether it withstands the current in every condition; brings has to be called first.
func (of offers) holds(f *fullSlot) bool {
	f.stood.Do(func() {
		for i := conditionCount - 1; i >= 0; i-- { // most flows at the top
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

// standsIn reports whether it withstands the current in a condition.
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
		return true // past its best speed a drive gives less the faster it turns
	}
	return of.endures(&f.limits, f.trial.Connection, f.r.beyond(full.Value).settle(of.drive.given(c.X.Value), run.RPM, c.asked, run.WindingC))
}

// coarseYear is a year's net energy from winds a metre a second apart and those of the conditions; it
// also notes where the rotor turns in these.
func (of offers) coarseYear(f *fullSlot) float64 {
	year, at, points := of.yearOf(f, of.drive.up(of.drive.coarse))
	for k, p := range points {
		for i := range f.starts {
			if math.Abs(p.WindMPS-of.drive.conditions[i].X.Value) <= 1e-6 {
				f.starts[i] = spot{rpm: p.RPM, warm: at[k].WindingC}
				if i == usual {
					f.usually = p
				}
			}
		}
	}
	return year
}

// yearKWh is the same from the winds of a trial's own year, for what is offered: where charging begins
// among the winds that count, those a metre a second apart overrate the year by a tenth.
func (of offers) yearKWh(f *fullSlot) float64 {
	f.told.Do(func() {
		f.year, _, _ = of.yearOf(f, of.drive.up(of.drive.rising))
	})
	return f.year
}

// trying is a winding under evaluation in the wind, with its curve and operating points.
type trying struct {
	whose *fullSlot
	characteristic
	points []DrivePoint
}

// yearOf is a winding's year, kWh, and its operating point in each wind, in memory that the next candidate
// reuses.
func (of offers) yearOf(f *fullSlot, up *climb) (kWh float64, at []DrivePoint, points []drive.WindPoint) {
	if up == nil {
		return 0, nil, nil
	}
	c := of.tried
	if of.kept != nil && of.kept.whose == f {
		c = of.kept
	} else {
		own := *f.r
		c.whose = f
		c.over(&own, of.drive.fastest, of.air.ambientC, closeOffer)
	}
	points, err := up.Run(of.inWind(&c.characteristic))
	if err != nil {
		return 0, nil, nil
	}
	c.points = c.points[:0]
	for _, p := range points {
		c.points = append(c.points, windPoint(p, c.at(p.RPM)))
	}
	return up.yearOf(c.points), c.points, points
}

// up is the climb through winds, coarse or fine; nil where the drive cannot be worked out.
func (s *driveSide) up(winds func() (*climb, error)) *climb {
	if s.why != "" {
		return nil
	}
	up, err := winds()
	if err != nil {
		return nil
	}
	return up
}

// coarsely is a trial's coarse year, from those of its winds that a coarse year has.
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
