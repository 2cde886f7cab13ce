package winding

import (
	"fmt"

	"slotwright/winding/drive"
	"slotwright/winding/heat"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// DrivePoint is the balance of drive and alternator at one wind or drive speed, the battery taking
// charge.
type DrivePoint struct {
	// X is the wind in m/s, or the speed of the drive's shaft in rpm.
	X            float64 `json:"x"`
	RPM          float64 `json:"rpm"` // of the alternator
	AmpsDC       float64 `json:"amps_dc"`
	BatteryWatts float64 `json:"battery_w"`
	// NetAmps and NetWatts are net of what the rotor takes.
	NetAmps  float64 `json:"net_amps_dc"`
	NetWatts float64 `json:"net_w"`
	// DriveWatts is the power taken at the drive's shaft; GivesWatts is what it could give, for a
	// drive other than wind.
	DriveWatts float64 `json:"drive_w"`
	GivesWatts float64 `json:"drive_gives_w,omitempty"`
	Efficiency float64 `json:"efficiency"` // net over drive
	WindingC   float64 `json:"winding_c"`
	TooHot     bool    `json:"too_hot,omitempty"`
	// Held is set where the regulator holds the net amps.
	Held bool `json:"held,omitempty"`
	// Gust is set where it keeps this speed once it turns, but does not reach it from rest.
	Gust     bool `json:"gust_starts,omitempty"`
	pushed   bool // no gust takes it there either
	followed bool // the temperature was computed
	// lowered is what the regulator leaves of the field there, which a limit depends on.
	lowered lowered
	Lambda  float64 `json:"tip_speed_ratio,omitempty"`
	Cp      float64 `json:"cp,omitempty"`
	// Region is still, idling, charging, stalled, runaway or overload.
	Region drive.Region `json:"region"`
	// Others are its other balances, stable and unstable.
	Others []drive.Equilibrium `json:"other_equilibria,omitempty"`
}

// lowered is what a regulator that lowers the field leaves of the field and of the iron's watts.
type lowered struct {
	fieldAmps, fieldWatts, ironWatts float64
	spent                            bool
}

// lowers is what a regulator leaves at a point.
func (p *RunPoint) lowers() lowered {
	return lowered{p.HeldFieldAmps, p.FieldWatts, p.IronWatts, p.Spent}
}

// passes reports whether the current at a point of the drive is past a limit.
func (p *DrivePoint) passes(l *Limits) bool {
	return l.PassedIn(&RunPoint{RPM: p.RPM, AmpsDC: p.AmpsDC, HeldFieldAmps: p.lowered.fieldAmps, FieldWatts: p.lowered.fieldWatts, IronWatts: p.lowered.ironWatts, Spent: p.lowered.spent})
}

// Driven is how a trial and its drive balance.
type Driven struct {
	// Points go up in wind or drive speed.
	Points []DrivePoint `json:"drive_points,omitempty"`
	// XUnit is the unit of the points' X and of StartsAt: m/s or rpm.
	XUnit string `json:"x_unit,omitempty"`
	// StartsAt is the wind or the drive speed from which it charges.
	StartsAt quantity.Figure `json:"charges_from_x"`
	// StartsAlone is the wind in which it reaches charging from rest; in less a gust has to start it.
	StartsAlone quantity.Figure `json:"starts_alone_from_x"`
	// YearKWh is the energy into the battery in a year of the stated wind, net of the field in
	// winds where that gains, and 0 in all others: there its current is off. Hours in which the
	// winding finds no steady temperature are left out.
	YearKWh quantity.Figure `json:"year_kwh"`
	// YearPastKWh is the part of YearKWh from winds in which the winding exceeds its current limit or
	// its class.
	YearPastKWh quantity.Figure `json:"year_kwh_past_limit"`
	// RunRPM, RunAmps and RunWatts are where a drive that gives all it can settles against this
	// winding: alternator speed, DC amps and drive watts.
	RunRPM   quantity.Figure `json:"full_power_rpm"`
	RunAmps  quantity.Figure `json:"full_power_amps_dc"`
	RunWatts quantity.Figure `json:"full_power_drive_w"`
	// Suits is one plain sentence on how trial and drive suit each other; Mend is the winding that
	// fits the slot and does better, fully worked out, where there is one.
	Suits string `json:"suits,omitempty"`
	Mend  string `json:"mend,omitempty"`
	// Rejoin is the trial's own coils connected differently (star or delta, circuits) where that
	// does better, fully worked out; Joints are those connections.
	Rejoin string  `json:"mend_rejoined,omitempty"`
	Joints *Joints `json:"mend_joints,omitempty"`
	// Calmer is the smaller field current, and the regulator's setting, that cure what the trial is
	// blamed for without another winding, fully worked out, where there are such.
	Calmer string `json:"mend_as_wound,omitempty"`
	// InTheWay says what stands in the way where something of the trial should be mended and no
	// winding that fits does better.
	InTheWay string `json:"in_the_way,omitempty"`
	// Offer is the winding of Mend.
	Offer *Offer `json:"mend_winding,omitempty"`

	FieldRun
	SafetyRun
	// noneStands says that the other windings that fit were examined, and that none of those that
	// bring nearly as much (or anything, where this one brings nothing) withstands what the drive
	// can do (mend.go).
	noneStands bool
	other      *otherSpeed    // the other stable speed in the usual wind; nil for none
	region     drive.Region   // the one that governs
	runHot     bool           // no steady temperature where full power is
	verdict    *drive.Verdict // of the wind
}

// Better joins all that would do better than a trial, what needs no new winding first; "" where
// nothing does.
func (dr *Driven) Better() string { return joined("; or ", dr.Rejoin, dr.Calmer, dr.Mend) }

// wound is what would do better by other connections or another winding alone.
func (dr *Driven) wound() string { return joined("; or ", dr.Rejoin, dr.Mend) }

// Overload says that a drive is asked for more than it gives; the other regions are those of
// package drive.
const Overload drive.Region = "overload"

// inWind reports whether the winding was examined over winds.
func (d *Driven) inWind() bool { return d.XUnit == quantity.WindSpeed[0].Name }

// noDrive has every figure missing for one reason.
func noDrive(why string) Driven {
	no := quantity.Missing(why)
	return Driven{StartsAt: no, StartsAlone: no, YearKWh: no, YearPastKWh: no, RunRPM: no, RunAmps: no, RunWatts: no, FieldRun: noField(why), SafetyRun: noSafety(why)}
}

// meet finds where a trial runs against the drive, and how the two suit each other.
func (b *bed) meet(c *characteristic, t *TrialOutcome) {
	s, r := b.drive, c.r
	weak := quantity.Of(0, t.PhasePerRPM.Origin, t.PhaseOhms20.Origin, t.PhaseMilliHenries.Origin, b.dc.charging.Origin, b.dc.diodeVolts.Origin).Origin
	spots := s.held(b.air.ambientC)
	switch {
	case s.kind == "":
		t.Driven = noDrive("needs what turns it")
	case s.why != "":
		t.Driven = noDrive(s.why)
	case s.kind == job.DriveWind:
		spots = b.meetWind(c, t)
	case s.source == nil:
		b.meetFixed(t)
	default:
		spots = b.meetShaft(c, t)
	}
	if len(t.Points) > 0 {
		t.XUnit = OutputOf("charges_from_x").DimFor(s.kind == job.DriveWind)[0].Name
	}
	t.readOperating(s.operate(r, spots, b.dc), weak, b.air.still, b.noSpeed())
	t.ThirdAmps = r.third(t)
	if why := b.dc.notBattery; why != "" {
		t.EmptyUsual, t.FullUsual = quantity.Missing(why), quantity.Missing(why)
	}
	t.suit(s, c)
}

// noSpeed is why it is not known where a trial runs.
func (b *bed) noSpeed() quantity.Figure {
	return b.drive.lacking(b.speeds.usual, "needs the speeds")
}

// lacking is why a speed is not known: nothing turns the machine, or its drive, ratio or speeds are not
// given. It is otherwise for a speed that is.
func (d *driveSide) lacking(speed quantity.Figure, otherwise string) quantity.Figure {
	switch {
	case speed.Known():
		return quantity.Missing(otherwise)
	case d.kind == "":
		return quantity.Missing("needs what turns it")
	case d.why != "":
		return quantity.Missing(d.why)
	}
	return speed
}

// readHeat is the highest temperature anywhere, and how long the copper stays below its limit from
// there.
func (t *TrialOutcome) readHeat(b *bed, c *characteristic) {
	t.HottestC = b.noSpeed()
	t.limitByForm(c, b.machine, max(b.drive.fastest, b.speeds.top.Value))
	t.fullTo, t.freed = b.fullTo(c.r, t), b.freed(c.r, t)
	if t.YearPastKWh = t.yearPast(b); t.YearPastKWh.Known() {
		t.YearKWh = t.YearKWh.Because(fmt.Sprintf("%s; %s kWh of it come in winds that the winding does not withstand", t.yearOf(), whole(t.YearPastKWh)))
	}
	if !b.air.still.Known() {
		t.HottestC = b.air.still
		return
	}
	hottest, never := 0.0, false
	add := func(celsius float64, tooHot bool) {
		hottest, never = max(hottest, celsius), never || tooHot
	}
	for i := range t.Operating {
		p := &t.Operating[i]
		add(p.WindingC, p.TooHot)
		add(p.full.WindingC, p.full.TooHot)
	}
	for i := range t.Points {
		if b.drive.within(&t.Points[i]) {
			add(t.Points[i].WindingC, t.Points[i].TooHot)
		}
	}
	switch {
	case never:
		t.HottestC = quantity.Missing(Burnt)
	case hottest > 0:
		t.HottestC = quantity.Of(hottest, quantity.Guessed)
	}
	if warm := t.HotUsualC; warm.Known() {
		t.SecondsToClass = t.DensityPerAmp.With(t.LimitAmps, func(j, amps float64) float64 {
			return heat.Seconds(t.metal, j*amps, warm.Value, b.air.classC)
		})
	}
}
