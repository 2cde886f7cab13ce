package winding

import (
	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// sourceOf is what the drive can give against its own speed: the points typed, else the usual shape
// of its kind through the power at the usual speed.
func sourceOf(d *job.DriveSpec) (drive.Source, string) {
	var points []drive.Point
	for _, p := range d.Points {
		if p.RPM.Given() && p.Watts.Given() {
			points = append(points, drive.Point{RPM: p.RPM.Value, Watts: p.Watts.Value})
		}
	}
	if len(points) >= 2 {
		c, err := drive.NewCurve(points)
		if err != nil {
			return nil, err.Error()
		}
		c.FreeRPM = d.TopRPM.Or(0)
		return c, ""
	}
	if !d.Watts.Given() || !d.UsualRPM.Given() {
		return nil, "needs the drive's usual speed and power, or two points of its power curve"
	}
	if d.Kind == job.DriveEngine {
		g := drive.Governed{UsualRPM: d.UsualRPM.Value, UsualWatts: d.Watts.Value, TopRPM: max(d.UsualRPM.Value, d.TopRPM.Or(1.6*d.UsualRPM.Value))}
		if err := g.Check(); err != nil {
			return nil, err.Error()
		}
		return g, ""
	}
	y := drive.Yielding{UsualRPM: d.UsualRPM.Value, UsualWatts: d.Watts.Value}
	if free := d.TopRPM.Value; free > d.UsualRPM.Value {
		y.FreeRPM = free
	}
	if err := y.Check(); err != nil {
		return nil, err.Error()
	}
	return y, ""
}

// meetShaft balances a trial with a drive of limited power: what it takes and what there is at each
// speed, where it runs in the three conditions, and where it settles when the drive gives all it
// can.
func (b *bed) meetShaft(c *characteristic, t *TrialOutcome) (spots [conditionCount]spot) {
	s := b.drive
	spots = s.held(b.air.ambientC)
	load := c.torque(s.fastest)
	met, err := drive.NewDriven(s.source, s.through, load.Taken, load.Samples)
	if err != nil {
		t.Driven = noDrive(err.Error())
		return spots
	}
	t.Driven = noDrive("only for a wind rotor")
	t.Points = s.alongCurve(t.Curve)
	t.StartsAt = t.CutInRPM.Times(1 / s.ratio.Value)
	for i := range spots {
		if s.conditions[i].asked > 0 {
			spots[i].reach(met, s.ratio.Value, c)
		} else {
			spots[i] = atFullPower(met, c)
		}
		spots[i].other = spots[i].others(met.Equilibria)
	}
	t.other = s.otherOfShaft(c, &spots)
	no := quantity.Missing("it comes to no rest within the drive's speeds")
	e, held := met.FullPower()
	if held && b.spare(e) {
		held, no = false, quantity.Missing("up to its top speed the engine gives more than this winding takes")
	}
	t.RunRPM, t.RunAmps, t.RunWatts = no, no, no
	if held {
		p := c.r.at(e.RPM, c.at(e.RPM).WindingC)
		t.RunRPM, t.RunWatts = quantity.Of(e.RPM, quantity.Guessed), quantity.Of(e.Watts/s.through.Passes(), quantity.Guessed)
		t.RunAmps, t.runHot = quantity.Of(p.NetAmps, quantity.Guessed), p.TooHot
	}
	return spots
}

// spare reports whether a drive that holds its speed would reach full power only above its top speed,
// where its power falls off: it never runs there.
func (b *bed) spare(e drive.Equilibrium) bool {
	return b.drive.kind == job.DriveEngine && b.speeds.top.Known() && e.RPM > b.speeds.top.Value*(1+1e-6)
}

// atFullPower is where the drive settles when it gives all it can.
func atFullPower(met *drive.Driven, c *characteristic) spot {
	e, ok := met.FullPower()
	if !ok {
		return spot{asked: true, region: drive.Stalled, stops: true}
	}
	return spot{asked: true, rpm: e.RPM, warm: c.at(e.RPM).WindingC, region: drive.Charging, yields: true}
}

// reach limits a spot to what the drive can do at the speed asked for.
func (at *spot) reach(met *drive.Driven, ratio float64, c *characteristic) {
	if !at.asked {
		return
	}
	run, err := met.At(at.rpm / ratio)
	switch {
	case err != nil:
		at.asked = false
		return
	case run.Enough:
		at.region = drive.Charging
	case run.Stops:
		at.rpm, at.region, at.stops = 0, drive.Stalled, true
	default:
		at.rpm, at.region = run.Settles.RPM, Overload
	}
	at.warm = c.at(at.rpm).WindingC
}

// alongCurve is the trial's curve against the drive's own speed, and whether the drive can hold it.
func (s *driveSide) alongCurve(curve []RunPoint) []DrivePoint {
	list := make([]DrivePoint, 0, len(curve))
	passes := s.through.Passes()
	for i := range curve {
		run := &curve[i]
		x := run.RPM / s.ratio.Value
		if x <= 0 || s.source != nil && x > s.source.Top() {
			continue
		}
		p := DrivePoint{X: x, RPM: run.RPM, AmpsDC: run.AmpsDC, BatteryWatts: run.BatteryWatts, NetAmps: run.NetAmps, NetWatts: run.NetWatts,
			DriveWatts: run.ShaftWatts / passes, WindingC: run.WindingC, TooHot: run.TooHot, followed: run.followed, lowered: run.lowers(), Held: run.Held, Region: drive.Charging}
		if s.source != nil {
			p.GivesWatts = s.source.Watts(x)
		}
		if p.DriveWatts > 0 {
			p.Efficiency = max(0, p.NetWatts) / p.DriveWatts
		}
		switch {
		case s.source != nil && p.DriveWatts > p.GivesWatts:
			p.Region = Overload
		case p.AmpsDC == 0:
			p.Region = drive.Idling
		}
		list = append(list, p)
	}
	return list
}

// meetFixed is a drive whose speed does not give way.
func (b *bed) meetFixed(t *TrialOutcome) {
	t.Driven = noDrive("its speed does not give way")
	t.Points = b.drive.alongCurve(t.Curve)
	t.StartsAt = t.CutInRPM.Times(1 / b.drive.ratio.Value)
}
