package winding

import (
	"slotwright/winding/drive"
	"slotwright/winding/quantity"
)

// # Where it really runs
//
// What decides between windings is not what a machine does when held at a speed. It is the
// operating point that winding and drive settle at, with the battery taking charge, net of the
// rotor's own watts. It is found in three conditions (slow, usual, top):
//
//   - wind: a light wind, the year's mean wind, the wind at which the rotor furls; the
//     shaft is taken up through rising wind and, from the wind in which it charges by itself,
//     down again (drive.Ascent): a speed that it keeps once it turns is taken where from rest
//     nothing would come in, else the one reached from rest;
//   - pedals and water: slow is the slow speed, or what their power allows there; usual and
//     top are where winding and drive balance when the drive gives all it can, a speed of
//     each winding's own;
//   - an engine: its throttle or governor holds the slow, usual or top speed as far as its
//     power goes. A trial that asks for more drags it down to the next lower balance;
//   - a drive that does not give way, or is not described: held at the speed.
//
// In each condition the battery is also taken empty (at rest) and full (absorbing): from the speed
// found, the shaft settles at the next balance up or down.
//
// Cost: one torque curve of some fifty solved points a trial, ten more a condition.

// Operating is a trial in one condition of its drive.
type Operating struct {
	Meeting
	RunPoint
	// most is the highest bridge current there: with the battery empty and the winding still cold,
	// as when a gust or a rider starts it rested, or with the battery nearly full, the winding cold
	// or warm.
	most float64
	// full is where it runs against an absorbing battery; coldFull is the bridge current there with
	// the winding still cold, which a dump load has to take; 0 where none flows.
	full     RunPoint
	coldFull float64
	// unheld is the current that would flow without the regulator, and unheldRPM the speed, where
	// the regulator limits the winding's own amps.
	unheld, unheldRPM float64
	// emptyHeld and fullHeld say that the regulator holds EmptyAmps and FullAmps.
	emptyHeld, fullHeld bool
}

// Meeting is the drive's side of an operating point.
type Meeting struct {
	// Condition is slow, usual or top; X is its wind in m/s or the drive's speed in rpm.
	Condition string  `json:"condition"`
	X         float64 `json:"x"`
	// DriveRPM is the speed of the drive's own shaft, DriveWatts the power taken from it,
	// GivesWatts what it could give at that speed, BeltWatts the loss in between.
	DriveRPM   float64 `json:"drive_rpm"`
	DriveWatts float64 `json:"drive_w"`
	GivesWatts float64 `json:"drive_gives_w,omitempty"`
	BeltWatts  float64 `json:"belt_w"`
	// Net is net watts into the battery over watts taken from the drive.
	Net float64 `json:"net_efficiency"`
	// HeldBack says that the trial asks for more than the drive can give at X.
	HeldBack bool `json:"held_back,omitempty"`
	// Gust says that it keeps that speed once it turns, but does not reach it from rest.
	Gust   bool `json:"gust_starts,omitempty"`
	pushed bool // no gust takes it there either
	// governed says that a throttle or governor is to hold X, which legs and water do not have.
	governed bool
	// best is the point of most power of a drive that gives way; zero for any other.
	best   drive.Point
	Region drive.Region `json:"region,omitempty"`
	// Others are the other balances of drive and alternator there, with the drive giving all it
	// can.
	Others []drive.Equilibrium `json:"other_equilibria,omitempty"`
	// EmptyAmps and FullAmps are net amps with the battery at rest and absorbing.
	EmptyAmps float64 `json:"net_amps_dc_empty"`
	FullAmps  float64 `json:"net_amps_dc_absorbing"`
}

// spot is where a trial runs in one condition, before dress works out the rest.
type spot struct {
	asked     bool // the condition has a speed or a wind
	rpm, warm float64
	region    drive.Region
	stops     bool
	gust      bool // only a gust takes it there
	pushed    bool // no gust does, only a push
	// also are the other stable speeds, reached after a gust for instance; other is every balance
	// but its own.
	also  []float64
	other []drive.Equilibrium
	// yields says that the speed is where the drive gives all it can.
	yields bool
}

// Charging is what reaches the battery where the trial really runs: net of what the rotor takes,
// the battery taking charge, the winding at its steady temperature.
type Charging struct {
	AmpsSlow  quantity.Figure `json:"amps_dc_slow"`
	AmpsUsual quantity.Figure `json:"amps_dc_usual"`
	AmpsTop   quantity.Figure `json:"amps_dc_top"`
	// EmptyUsual and FullUsual are the usual amps with the battery at rest and absorbing.
	EmptyUsual quantity.Figure `json:"amps_dc_usual_empty"`
	FullUsual  quantity.Figure `json:"amps_dc_usual_absorbing"`
	// Bridge… is the bridge's current before the rotor's part is taken off: what copper, diodes and
	// fuse carry. MostAmps is its highest in any condition, the battery empty or nearly full.
	BridgeSlow  quantity.Figure `json:"bridge_amps_dc_slow"`
	BridgeUsual quantity.Figure `json:"bridge_amps_dc_usual"`
	BridgeTop   quantity.Figure `json:"bridge_amps_dc_top"`
	MostAmps    quantity.Figure `json:"bridge_amps_dc_most"`
	// SteadyAmps is its highest sustained value, the winding warm and the battery taking charge or
	// nearly full, as for the temperatures. It is compared with LimitAmps, a thermal limit.
	SteadyAmps quantity.Figure `json:"bridge_amps_dc_steady"`
	// Runs… is the alternator's speed there.
	RunsSlow  quantity.Figure `json:"runs_rpm_slow"`
	RunsUsual quantity.Figure `json:"runs_rpm_usual"`
	RunsTop   quantity.Figure `json:"runs_rpm_top"`
	HotSlowC  quantity.Figure `json:"winding_c_slow"`
	HotUsualC quantity.Figure `json:"winding_c_usual"`
	HotTopC   quantity.Figure `json:"winding_c_top"`
	// HottestC is the highest temperature anywhere in the drive's range.
	HottestC quantity.Figure `json:"winding_c_hottest"`
	// Efficiency is net watts into the battery over watts taken from the drive, usual.
	Efficiency    quantity.Figure `json:"efficiency_usual"`
	NetWattsUsual quantity.Figure `json:"net_w_usual"`
	// TargetRPM is where the amps wanted are reached, net, with the speed held.
	TargetRPM quantity.Figure `json:"target_rpm"`
	// CrossRPM is where its curve crosses the reference's.
	CrossRPM quantity.Figure `json:"cross_reference_rpm"`
	// LimitRPM is where the governing current limit is reached.
	LimitRPM quantity.Figure `json:"limit_rpm"`
	// LimitToRPM is the speed above that from which the current is within the limit again up to the
	// end of the curve, as where a regulator lowers the field or a fan cools more; 0 where it stays
	// past.
	LimitToRPM float64 `json:"limit_left_rpm,omitempty"`
	// fullTo is the strongest wind examined, m/s, in which it withstands a nearly full battery; 0
	// where it withstands all of them.
	fullTo float64
	// freed is the current of a rotor that breaks away just above the top wind examined; 0 where
	// none does.
	freed float64
	// ThirdAmps is the circulating third-harmonic current of a delta, rms in the winding, usual.
	ThirdAmps quantity.Figure `json:"third_harmonic_a_usual"`
	// Operating is the trial in each condition of its drive.
	Operating []Operating `json:"operating,omitempty"`
	// AtSpeeds are the job's own speeds, Curve the whole range, both with the bare machine held at
	// the speed: AtSpeeds against the battery at rest, Curve against one that takes charge.
	AtSpeeds []RunPoint `json:"at_speeds,omitempty"`
	Curve    []RunPoint `json:"curve,omitempty"`
	// dress works out everything that is shown of a spot.
	NoCharging string `json:"no_charging,omitempty"`
}

// dress fills in what holds at a spot.
func (s *driveSide) dress(i int, at spot, r *charger, dc *dcSide) Operating {
	c := &s.conditions[i]
	given := s.given(c.X.Value)
	o := Operating{Meeting: Meeting{Condition: c.Name, X: c.X.Value, Region: at.region, Gust: at.gust, pushed: at.pushed, HeldBack: c.asked > 0 && at.rpm < c.asked*(1-1e-6), governed: !yields(s.kind), best: s.best, Others: at.other}}
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

// coldest is the bridge current with a cold winding and the battery at some volts.
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

// operate is a trial in the three conditions.
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

// held gives the spots of a drive that does not give way.
func (s *driveSide) held(ambient float64) (spots [conditionCount]spot) {
	for i, c := range s.conditions {
		if c.RPM.Known() {
			spots[i] = spot{asked: true, rpm: c.RPM.Value, warm: ambient}
		}
	}
	return spots
}

// readOperating takes a trial's figures from its conditions.
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
			*hot[i] = quantity.Missing(Burnt)
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

// In is where the trial runs in a condition, by its name ([UsualCondition]); nil where it does not run.
func (c *Charging) In(name string) *Operating {
	for k := range c.Operating {
		if c.Operating[k].Condition == name {
			return &c.Operating[k]
		}
	}
	return nil
}

// in is In by the condition's index.
func (c *Charging) in(i int) *Operating { return c.In(conditionNames[i]) }
