package winding

import (
	"slotwright/winding/drive"
	"slotwright/winding/quantity"
)

// # Where it really runs
//
// What decides between windings is not what the machine would do if something held it at a
// speed, but the speed at which it and its drive come to terms, with the battery taking
// charge and the rotor's own watts taken off. That is worked out in three conditions:
//
//   - wind: a light wind, the year's mean wind, the wind at which the rotor furls; the
//     shaft is taken up through rising wind (drive.Ascent), so that of two speeds at which
//     it could stay it has the one it would really have;
//   - pedals and water: at the slow speed as far as their power goes there; usual and top
//     are the speed at which they come to terms when they give all they can, which is each
//     winding's own;
//   - an engine: its throttle or governor holds the slow, usual or top speed as far as its
//     power goes. Where a trial asks for more than there is, it is held back to the next
//     lower speed at which both agree;
//   - a drive that does not give way, or of which nothing is said: held at the speed.
//
// In each condition the battery is also taken empty (at rest) and full (absorbing), from
// the speed found: the next balance up or down the shaft.
//
// Cost: one torque curve of some fifty solved points a trial, ten more a condition.

// Operating is a trial in one condition of its drive.
type Operating struct {
	Meeting
	RunPoint
	// most is the most amps of the bridge there: the battery empty, the winding still cold, as when a
	// gust or a rider comes upon it rested, or the battery nearly full, the winding cold or warm.
	most float64
	// full is where it runs against a battery that absorbs, coldFull the amps of the bridge there with the
	// winding still cold, which a dump load has to take; 0 where none flow.
	full     RunPoint
	coldFull float64
	// unheld and unheldRPM are what would flow without the regulator where that holds the winding's own
	// amps, and at which speed.
	unheld, unheldRPM float64
	// emptyHeld and fullHeld say that the regulator holds EmptyAmps and FullAmps.
	emptyHeld, fullHeld bool
}

// Meeting is the drive's side of it.
type Meeting struct {
	// Condition is slow, usual or top, X its wind in m/s or the drive's speed in rpm.
	Condition string  `json:"condition"`
	X         float64 `json:"x"`
	// DriveRPM is the speed of the drive's own shaft there, DriveWatts what is taken of it,
	// GivesWatts what it could give at that speed, BeltWatts what is lost in between.
	DriveRPM   float64 `json:"drive_rpm"`
	DriveWatts float64 `json:"drive_w"`
	GivesWatts float64 `json:"drive_gives_w,omitempty"`
	BeltWatts  float64 `json:"belt_w"`
	// Net is net watts into the battery over watts taken of the drive.
	Net float64 `json:"net_efficiency"`
	// HeldBack says that the trial asks for more than the drive can give at X.
	HeldBack bool `json:"held_back,omitempty"`
	// governed says that a throttle or governor is to hold X, which legs and water do not.
	governed bool
	// best is where a drive that gives way would have the most power; nothing of any other.
	best   drive.Point
	Region drive.Region `json:"region,omitempty"`
	// Others are the other speeds at which drive and alternator agree there, the drive giving all it can.
	Others []drive.Equilibrium `json:"other_equilibria,omitempty"`
	// EmptyAmps and FullAmps are net amps with the battery at rest and absorbing.
	EmptyAmps float64 `json:"net_amps_dc_empty"`
	FullAmps  float64 `json:"net_amps_dc_absorbing"`
}

// spot is where a trial is in one condition, before it is dressed up.
type spot struct {
	asked     bool // the condition has a speed or a wind
	rpm, warm float64
	region    drive.Region
	stops     bool
	// also are other speeds at which it could stay, as after a gust; other is all balances but where it is.
	also  []float64
	other []drive.Equilibrium
	// yields says that the drive comes to its speed by giving all it can.
	yields bool
}

// Charging is what reaches the battery where the trial really runs, net of what the rotor
// takes, the battery taking charge, at the temperature the winding comes to.
type Charging struct {
	AmpsSlow  quantity.Figure `json:"amps_dc_slow"`
	AmpsUsual quantity.Figure `json:"amps_dc_usual"`
	AmpsTop   quantity.Figure `json:"amps_dc_top"`
	// EmptyUsual and FullUsual are the usual amps with the battery at rest and absorbing.
	EmptyUsual quantity.Figure `json:"amps_dc_usual_empty"`
	FullUsual  quantity.Figure `json:"amps_dc_usual_absorbing"`
	// Bridge… is what the bridge gives, the rotor's part not taken off: what copper, diodes
	// and fuse carry. MostAmps is the most of it in any condition, the battery empty or nearly full.
	BridgeSlow  quantity.Figure `json:"bridge_amps_dc_slow"`
	BridgeUsual quantity.Figure `json:"bridge_amps_dc_usual"`
	BridgeTop   quantity.Figure `json:"bridge_amps_dc_top"`
	MostAmps    quantity.Figure `json:"bridge_amps_dc_most"`
	// SteadyAmps is the most of it that lasts, the winding warm and the battery taking
	// charge or nearly full, as for the temperatures: what is held against LimitAmps, a limit by heat.
	SteadyAmps quantity.Figure `json:"bridge_amps_dc_steady"`
	// Runs… is the alternator's speed there.
	RunsSlow  quantity.Figure `json:"runs_rpm_slow"`
	RunsUsual quantity.Figure `json:"runs_rpm_usual"`
	RunsTop   quantity.Figure `json:"runs_rpm_top"`
	HotSlowC  quantity.Figure `json:"winding_c_slow"`
	HotUsualC quantity.Figure `json:"winding_c_usual"`
	HotTopC   quantity.Figure `json:"winding_c_top"`
	// HottestC is the hottest anywhere in the drive's range.
	HottestC quantity.Figure `json:"winding_c_hottest"`
	// Efficiency is net watts into the battery over watts taken of the drive, usual.
	Efficiency    quantity.Figure `json:"efficiency_usual"`
	NetWattsUsual quantity.Figure `json:"net_w_usual"`
	// TargetRPM is where the amps wanted are reached, net, if something held the speed.
	TargetRPM quantity.Figure `json:"target_rpm"`
	// CrossRPM is where its curve crosses the reference's.
	CrossRPM quantity.Figure `json:"cross_reference_rpm"`
	// LimitRPM is where the governing current limit is reached.
	LimitRPM quantity.Figure `json:"limit_rpm"`
	// LimitToRPM is where, above that, what flows is within the limit again up to the end of the curve,
	// as where a regulator lowers the field or a fan carries off more; 0 where it stays past.
	LimitToRPM float64 `json:"limit_left_rpm,omitempty"`
	// fullTo is the strongest wind, m/s, of those gone through in which it stands a battery that is nearly
	// full; 0 where it stands all of them.
	fullTo float64
	// freed is the amps of a rotor that runs on just beyond what was read; 0 where none do.
	freed float64
	// ThirdAmps is what the third harmonic drives round a delta, rms in the winding, usual.
	ThirdAmps quantity.Figure `json:"third_harmonic_a_usual"`
	// Operating is the trial in each condition of its drive.
	Operating []Operating `json:"operating,omitempty"`
	// AtSpeeds are the job's own speeds and Curve the whole range, as if something held the
	// bare machine there: AtSpeeds against the battery at rest, Curve against one that takes
	// charge.
	AtSpeeds []RunPoint `json:"at_speeds,omitempty"`
	Curve    []RunPoint `json:"curve,omitempty"`
	// NoCharging says why there is none of this.
	NoCharging string `json:"no_charging,omitempty"`
}

// dress fills in what holds at a spot.
func (s *driveSide) dress(i int, at spot, r *charger, dc *dcSide) Operating {
	c := &s.conditions[i]
	given := s.given(c.X.Value)
	o := Operating{Meeting: Meeting{Condition: c.Name, X: c.X.Value, Region: at.region, HeldBack: c.asked > 0 && at.rpm < c.asked*(1-1e-6), governed: !yields(s.kind), best: s.best, Others: at.other}}
	o.RunPoint = r.at(at.rpm, at.warm)
	ratio, passes := 1.0, 1.0
	if s.kind != "" && s.ratio.Known() {
		ratio, passes = s.ratio.Value, s.through.Passes()
	}
	o.DriveRPM = at.rpm / ratio
	o.DriveWatts = o.ShaftWatts / passes
	o.BeltWatts = o.DriveWatts - o.ShaftWatts
	if o.DriveWatts > 0 {
		o.Net = o.NetWatts / o.DriveWatts
	}
	if s.source != nil {
		o.GivesWatts = s.source.Watts(o.DriveRPM)
	}
	o.most = max(o.AmpsDC, r.coldest(given, at, c.asked, dc.held))
	ends := func(volts quantity.Figure) RunPoint {
		if !volts.Known() || at.stops {
			return o.RunPoint
		}
		return r.against(volts.Value).settle(given, at.rpm, c.asked, o.WindingC)
	}
	empty := ends(dc.rest)
	o.full = ends(dc.absorption)
	o.EmptyAmps, o.emptyHeld = empty.NetAmps, empty.Held
	o.FullAmps, o.fullHeld = o.full.NetAmps, o.full.Held
	if o.full.AmpsDC > 0 {
		o.coldFull = max(o.full.AmpsDC, r.coldest(given, at, c.asked, dc.absorption))
	}
	o.most = max(o.most, o.full.AmpsDC, o.coldFull)
	if (o.Held || o.Spent) && r.holder.bends() {
		free := r.unheld().settle(given, at.rpm, c.asked, o.WindingC)
		o.unheld, o.unheldRPM = free.AmpsDC, free.RPM
	}
	return o
}

// coldest is the amps with a cold winding and the battery at some volts.
func (r *charger) coldest(given drive.Torque, at spot, asked float64, volts quantity.Figure) float64 {
	if !volts.Known() || at.stops {
		return 0
	}
	cold := r.against(volts.Value)
	cold.air = &thermal{ambientC: r.air.ambientC} // holds the temperature it is given
	most := cold.settle(given, at.rpm, asked, r.air.ambientC).AmpsDC
	for _, rpm := range at.also {
		most = max(most, cold.settle(given, rpm, asked, r.air.ambientC).AmpsDC)
	}
	return most
}

// operate is a trial in the three conditions; why says why there is none.
func (s *driveSide) operate(r *charger, spots [conditionCount]spot, dc *dcSide) []Operating {
	list := make([]Operating, 0, conditionCount)
	for i, at := range spots {
		if !at.asked || !s.conditions[i].X.Known() {
			continue
		}
		if n := len(list); n > 0 && (s.conditions[i].Same != "" || i == usual && s.conditions[slow].Same != "" && list[n-1].Condition == conditionNames[slow]) {
			o := list[len(list)-1]
			o.Condition, o.X = s.conditions[i].Name, s.conditions[i].X.Value
			list = append(list, o)
			continue
		}
		list = append(list, s.dress(i, at, r, dc))
	}
	return list
}

// held is the spots of a drive that does not give way.
func (s *driveSide) held(ambient float64) (spots [conditionCount]spot) {
	for i, c := range s.conditions {
		if c.RPM.Known() {
			spots[i] = spot{asked: true, rpm: c.RPM.Value, warm: ambient}
		}
	}
	return spots
}

// readOperating takes the figures of a trial from its conditions.
func (c *Charging) readOperating(list []Operating, weak quantity.Origin, heat, no quantity.Figure) {
	c.Operating = list
	net := [conditionCount]*quantity.Figure{&c.AmpsSlow, &c.AmpsUsual, &c.AmpsTop}
	gross := [conditionCount]*quantity.Figure{&c.BridgeSlow, &c.BridgeUsual, &c.BridgeTop}
	rpm := [conditionCount]*quantity.Figure{&c.RunsSlow, &c.RunsUsual, &c.RunsTop}
	hot := [conditionCount]*quantity.Figure{&c.HotSlowC, &c.HotUsualC, &c.HotTopC}
	for i := range net {
		*net[i], *gross[i], *rpm[i], *hot[i] = no, no, no, no
	}
	c.Efficiency, c.EmptyUsual, c.FullUsual, c.NetWattsUsual, c.MostAmps, c.SteadyAmps = no, no, no, no, no, no
	for k := range list {
		o := &list[k]
		i := indexOf(o.Condition)
		*net[i], *gross[i], *rpm[i] = quantity.Of(o.NetAmps, weak), quantity.Of(o.AmpsDC, weak), quantity.Of(o.RPM, weak)
		*hot[i] = quantity.Of(o.WindingC, quantity.Guessed)
		if !heat.Known() {
			*hot[i] = heat
		} else if o.TooHot {
			*hot[i] = quantity.Missing(noSteady)
		}
		if !c.MostAmps.Known() || o.most > c.MostAmps.Value {
			c.MostAmps = quantity.Of(o.most, weak)
		}
		if lasts := max(o.AmpsDC, o.full.AmpsDC); !c.SteadyAmps.Known() || lasts > c.SteadyAmps.Value {
			c.SteadyAmps = quantity.Of(lasts, weak)
		}
		if i == usual {
			c.Efficiency = quantity.Of(max(0, o.Net), weak, quantity.Guessed)
			c.EmptyUsual, c.FullUsual = quantity.Of(o.EmptyAmps, weak), quantity.Of(o.FullAmps, weak)
			c.NetWattsUsual = quantity.Of(o.NetWatts, weak)
		}
	}
}

func indexOf(name string) int {
	for i, n := range conditionNames {
		if n == name {
			return i
		}
	}
	return usual
}

// In is where the trial runs in a condition by its name ([UsualCondition]); nil where it does not run.
func (c *Charging) In(name string) *Operating {
	for k := range c.Operating {
		if c.Operating[k].Condition == name {
			return &c.Operating[k]
		}
	}
	return nil
}

// in is In by the condition's place.
func (c *Charging) in(i int) *Operating { return c.In(conditionNames[i]) }
