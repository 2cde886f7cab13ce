package winding

import (
	"fmt"
	"math"
	"sync"

	"slotwright/winding/drive"
	"slotwright/winding/heat"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/zero"
	"slotwright/wiretable"
)

// Brake is the machine turned with leads joined.
type Brake struct {
	LeadAmps quantity.Figure `json:"lead_a"`
	CoilAmps quantity.Figure `json:"coil_a"`
	TorqueNm quantity.Figure `json:"torque_nm"`
	Watts    quantity.Figure `json:"copper_w"`
}

// SafetyRun is what happens at the worst: leads shorted to stop it, a full battery, a battery that
// comes off.
type SafetyRun struct {
	// Brake is all leads of all sets shorted at the top speed, BrakePair only two of one set, the
	// winding as hot as its class allows.
	Brake     Brake `json:"brake_at_top"`
	BrakePair Brake `json:"brake_pair_at_top"`
	// BrakePeakNm is the highest torque of shorted leads, at BrakePeakRPM, where R = ωL; above that
	// speed it falls.
	BrakePeakNm  quantity.Figure `json:"brake_peak_torque_nm"`
	BrakePeakRPM quantity.Figure `json:"brake_peak_rpm"`
	// StopsCold and StopsHot are the strongest wind (m/s), or the highest power of the drive (W), in
	// which shorted leads bring a turning shaft to rest, at 20 °C and at the class limit.
	StopsCold quantity.Figure `json:"brake_stops_to_x_cold"`
	StopsHot  quantity.Figure `json:"brake_stops_to_x_hot"`
	// BrakeSeconds is the time from the temperature in the usual condition to the class limit with all
	// leads shorted at the top speed and no cooling.
	BrakeSeconds quantity.Figure `json:"brake_seconds_to_class_limit"`
	// FuseAmps is the fuse at the battery's post with this winding.
	FuseAmps quantity.Figure `json:"fuse_a"`
	// DumpOhms and DumpWatts take the highest output in any condition at the absorption voltage, for a
	// full battery: with the winding still cold, as a gust finds it.
	DumpOhms  quantity.Figure `json:"dump_load_ohms"`
	DumpWatts quantity.Figure `json:"dump_load_w"`
	// OverChargeAmps is by how much its highest charge exceeds the battery's charge limit.
	OverChargeAmps quantity.Figure `json:"over_charge_limit_a"`
	// OpenAtFurlVolts is the open-circuit peak DC in the furling wind, the rotor running free;
	// MostVolts the highest anywhere.
	OpenAtFurlVolts quantity.Figure `json:"volts_dc_open_furl"`
	MostVolts       quantity.Figure `json:"volts_dc_most"`
}

func noSafety(why string) SafetyRun {
	no := quantity.Missing(why)
	none := Brake{no, no, no, no}
	return SafetyRun{Brake: none, BrakePair: none, BrakePeakNm: no, BrakePeakRPM: no, StopsCold: no, StopsHot: no, BrakeSeconds: no,
		DumpOhms: no, DumpWatts: no, OverChargeAmps: no, OpenAtFurlVolts: no, MostVolts: no}
}

// runSafety works out the worst cases.
func (b *bed) runSafety(r *charger, t *TrialOutcome) SafetyRun {
	noTop := b.drive.lacking(b.speeds.top, "needs the top speed")
	s := noSafety(noTop.Why)
	b.highestVolts(&s, t)
	fast, at := b.speeds.top, t.in(top)
	if at != nil && at.RPM > 0 {
		fast = quantity.Of(at.RPM, quantity.Guessed)
	}
	if !fast.Known() || fast.Value <= 0 {
		return s
	}
	b.brake(&s, r, t, fast.Value)
	most := t.mostAnywhere(b.drive)
	if b.holder != nil {
		most = most.Then(func(amps float64) float64 { return max(b.holder.least(amps), t.pastHolding(b.holder)) })
	}
	s.OverChargeAmps = overLimit(most, b.dc.chargeLimit)
	if b.rotor.wound {
		no := quantity.Missing("with a wound rotor the regulator takes the field back")
		s.DumpOhms, s.DumpWatts = no, no
		return s
	}
	full := noTop
	switch {
	case at == nil:
	case at.full.AmpsDC > 0:
		full = quantity.Of(t.coldFull(), quantity.Guessed)
	default:
		full = quantity.Missing("nothing flows into a full battery at the top speed")
	}
	s.DumpWatts = full.With(b.dc.absorption, func(i, v float64) float64 { _, w := drive.DumpLoad(v, i); return w })
	s.DumpOhms = full.With(b.dc.absorption, func(i, v float64) float64 { o, _ := drive.DumpLoad(v, i); return o })
	return s
}

// coldFull is the highest bridge current in any condition at the absorption voltage, the winding cold.
func (t *TrialOutcome) coldFull() (most float64) {
	for i := range t.Operating {
		most = max(most, t.Operating[i].coldFull)
	}
	return most
}

// overLimit is the amps over a limit; below it none, with the margin left.
func overLimit(most, limit quantity.Figure) quantity.Figure {
	over := most.With(limit, func(i, limit float64) float64 { return i - limit })
	if over.Known() && over.Value < 0 {
		room := -over.Value
		over.Value = 0
		return over.Because(fmt.Sprintf("%.3g A below it", room))
	}
	return over
}

// brake works out everything about shorted leads.
func (b *bed) brake(s *SafetyRun, r *charger, t *TrialOutcome, rpm float64) {
	per := t.PhasePerRPM.Value
	hot, perHenry := r.ohms20*r.factor(20, b.air.classC), 2*math.Pi*r.hertz
	x := perHenry * r.shorted(per*rpm, hot, perHenry*rpm) // Ω per rpm
	all := drive.ShortAll(per*rpm, hot, x*rpm, rpm, b.machine.phases, r.delta)
	sets := float64(b.machine.sets) // each of two phases brakes by itself
	all.TorqueNm *= sets
	all.Watts *= sets
	s.Brake = brakeFigures(all)
	if b.machine.phases == 3 {
		s.BrakePair = brakeFigures(drive.ShortPair(per*rpm, hot, x*rpm, rpm, r.delta))
	} else {
		no := quantity.Missing("only of three leads can two be joined and one left open")
		s.BrakePair = Brake{no, no, no, no}
	}
	holds := func(ohms float64) drive.Torque {
		short := drive.ShortTorque(per, ohms, x, b.machine.phases)
		return func(n float64) float64 { return sets*short(n) + dragTorque(b.drag, n) }
	}
	if x > 0 {
		peak := hot / x
		s.BrakePeakRPM = quantity.Of(peak, quantity.Guessed)
		s.BrakePeakNm = quantity.Of(sets*drive.ShortTorque(per, hot, x, b.machine.phases)(peak), quantity.Guessed)
	}
	s.StopsCold, s.StopsHot = b.drive.stopsTo(holds(r.ohms20)), b.drive.stopsTo(holds(hot))
	warm := t.HotUsualC
	if !warm.Known() {
		warm = quantity.Of(b.air.ambientC, quantity.Guessed)
	}
	s.BrakeSeconds = t.ConductorAreaMM2.Then(func(area float64) float64 {
		return shortedSeconds(t.metal, warm.Value, b.air.classC, func(celsius float64) float64 {
			z := math.Hypot(r.ohms20*r.factor(20, celsius), x*rpm)
			return per * rpm / z / float64(t.Circuits) / area
		})
	})
}

// dragTorque is iron and friction as a torque.
func dragTorque(d *drag, rpm float64) float64 { return torqueOf(d.at(rpm), rpm) }

// shortedSeconds is how long copper takes from one temperature to another with no cooling when the
// current density, A/mm², falls as it heats: in steps of a few kelvins, each with the current at that
// temperature.
func shortedSeconds(metal wiretable.Metal, fromC, toC float64, density func(celsius float64) float64) float64 {
	const steps = 32
	if toC <= fromC {
		return 0
	}
	sum, step := 0.0, (toC-fromC)/steps
	for i := range steps {
		at := fromC + float64(i)*step
		sum += heat.Seconds(metal, density(at+step/2), at, at+step)
	}
	return sum
}

// stopsTo is the strongest wind, m/s, or the highest power of the drive, W, at which shorted leads slow
// a turning shaft to a creep: their torque has to exceed the drive's at every speed from the running
// one (a rotor at its best tip-speed ratio) down to a tip-speed ratio of 1, or a sixth of the speed. It
// never quite stops: the braking torque fades with the speed.
func (s *driveSide) stopsTo(holds drive.Torque) quantity.Figure {
	switch {
	case s.kind == "" || s.kind == job.DriveFixed:
		return quantity.Missing("only for a drive that gives way")
	case s.why != "":
		return quantity.Missing(s.why)
	case s.kind == job.DriveWind:
		wind := s.stopsIn(holds)
		if wind == mostStopWind {
			return quantity.Of(wind, quantity.Guessed).Because("and more")
		}
		return quantity.Of(wind, quantity.Guessed)
	}
	given := s.given(0)
	if given == nil {
		return quantity.Missing("needs the drive's power")
	}
	most := 0.0
	for i := 1; i <= marginSteps; i++ {
		most = max(most, s.source.Watts(s.source.Top()*float64(i)/marginSteps))
	}
	return quantity.Of(most*margin(given, holds, s.ratio.Value*s.source.Top()/creepPart, s.ratio.Value*s.source.Top()), quantity.Guessed)
}

// Limits of the search for what shorted leads hold.
const (
	mostStopWind  = 40.0
	leastStopWind = 0.1
	marginSteps   = 96
	creepPart     = 6.0
)

// stopsIn is the strongest wind, m/s, in which shorted leads slow a rotor to a creep. At a given
// tip-speed ratio its torque grows with the square of the wind, that of the leads at most in proportion
// to it. So each tip-speed ratio is held up to a wind of its own, and the lowest of these is sought:
// from the strongest wind down, always at the ratio with the smallest margin.
func (s *driveSide) stopsIn(holds drive.Torque) float64 {
	turn, wind := s.inOneMetre(), mostStopWind
	for {
		worst, least := 0, 1.0
		for i := range turn {
			if g := turn[i].given * wind * wind; g > 0 && holds(turn[i].rpm*wind) <= least*g {
				worst, least = i, holds(turn[i].rpm*wind)/g
			}
		}
		at := turn[worst]
		if at.given <= 0 || holds(at.rpm*wind) > at.given*wind*wind {
			return wind
		}
		next := zero.Bisect(leastStopWind, wind, func(wind float64) bool { return !(holds(at.rpm*wind) > at.given*wind*wind) })
		if next >= wind*(1-2e-5) || next <= leastStopWind*(1+1e-5) {
			return next
		}
		wind = next
	}
}

// turning is a rotor's speed, alternator rpm, and its torque on that shaft.
type turning struct{ rpm, given float64 }

// turning is the rotor from a tip-speed ratio of 1 up to its best, in a wind of 1 m/s, computed when
// first needed.
func (s *driveSide) turning() func() *[marginSteps + 1]turning {
	rotor, one, ratio := s.shaft.Rotor, s.shaft.Torque(1), s.ratio.Value
	return sync.OnceValue(func() *[marginSteps + 1]turning {
		turn := new([marginSteps + 1]turning)
		low, high := ratio*rotor.RPM(1, 1), ratio*rotor.RPM(1, rotor.PeakLambda)
		for i := range turn {
			rpm := low + (high-low)*float64(i)/marginSteps
			turn[i] = turning{rpm, one(rpm)}
		}
		return turn
	})
}

// margin is the least ratio, over a range of speeds, of braking torque to driving torque.
func margin(given, holds drive.Torque, low, high float64) float64 {
	least := math.Inf(1)
	for i := 0; i <= marginSteps; i++ {
		n := low + (high-low)*float64(i)/marginSteps
		if g := given(n); g > 0 {
			least = min(least, holds(n)/g)
		}
	}
	return least
}

// highestVolts is the open-circuit voltage where it is highest, and that of the battery itself.
func (b *bed) highestVolts(s *SafetyRun, t *TrialOutcome) {
	d := b.drive
	free := func(wind float64) quantity.Figure {
		switch {
		case d.kind != job.DriveWind:
			return quantity.Missing("only for a wind rotor")
		case d.why != "":
			return quantity.Missing(d.why)
		}
		return t.PeakDCPerRPM.Times(d.shaft.FreeRPM(wind))
	}
	s.OpenAtFurlVolts, t.OpenAtGaleVolts = free(d.furl), free(d.gale)
	if !t.Turns.Known() { // nothing is wound: the battery's own volts do not come from it
		s.MostVolts = quantity.Missing("needs the turns")
		return
	}
	best := quantity.Missing("needs the volts and a top speed")
	for _, c := range []struct {
		volts quantity.Figure
		where string
	}{
		{t.OpenAtTopVolts, "unloaded at the top speed"}, {s.OpenAtFurlVolts, "unloaded in the wind at which it furls"},
		{t.OpenAtGaleVolts, "unloaded in the gale"}, {b.dc.absorption, "the battery itself, absorbing"},
	} {
		if c.volts.Known() && (!best.Known() || c.volts.Value > best.Value) {
			best = c.volts.Because(c.where)
		}
	}
	s.MostVolts = best
}

// brakeFigures is a brake for the outcome; nothing where no current flows.
func brakeFigures(b drive.Brake) Brake {
	if b.LeadAmps <= 0 {
		no := quantity.Missing("nothing flows")
		return Brake{no, no, no, no}
	}
	return Brake{quantity.Of(b.LeadAmps), quantity.Of(b.CoilAmps), quantity.Of(b.TorqueNm), quantity.Of(b.Watts)}
}
