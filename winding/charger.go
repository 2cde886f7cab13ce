package winding

import (
	"math"

	"slotwright/winding/charge"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// # Running into the battery
//
// At each speed the bridge is solved with the winding's resistance at its steady temperature, which
// depends on the loss and so on the current: a fixed point, found by the secant method from the
// temperature at the speed before. As resistance grows by only 0.4 % a kelvin, one or two solutions a
// point are enough.
//
// The curve is on a grid of speeds common to all trials, so their crossings and the speeds at which
// something is reached take one bracket and bisection.

// charger is a trial ready to run into the battery: the solver's inputs, per rpm. It is for one
// goroutine at a time; copies are independent.
type charger struct {
	air      *thermal
	drag     *drag
	peak     float64 // V of a phase per rpm
	hertz    float64 // per rpm
	ohms20   float64
	henries  float64 // at filled, where it changes with current
	fill     filling
	delta    bool
	phases   int
	sets     float64 // number of equal sets: two sets of three phases are each solved as one
	load     charge.Load
	near     charge.Solver // the previous point, where the next solution starts
	warms    warming       // the effect of a kelvin there; see balance
	onTheWay bool          // an intermediate result is wanted; see stepOfBefore
	compared bool          // it is only compared; see stepCompared
	inner    float64       // the battery's internal ohms, part of the load's
	cable    float64       // the cable's ohms, the rest of it
	factor   func(fromC, toC float64) float64
	metal    wiretable.Metal
	openPeak float64 // unloaded V DC per rpm
	field    float64 // W that the rotor takes
	ring     ring    // of a delta, for the third harmonic
	eight    charge.StarSolver
	star     neutral // of a star with diodes at its star point
	holder   *regulator
	drop     float64 // V across a series controller, part of the load's
	feed     *feeding
}

// RunPoint is a trial running into the battery at one speed of its shaft.
type RunPoint struct {
	RPM          float64 `json:"rpm"`
	AmpsDC       float64 `json:"amps_dc"`
	VoltsDC      float64 `json:"volts_dc"`
	BatteryWatts float64 `json:"battery_w"`
	PhaseAmpsRMS float64 `json:"phase_amps_rms"`
	CopperWatts  float64 `json:"copper_w"`
	DiodeWatts   float64 `json:"diode_w"`
	IronWatts    float64 `json:"iron_w"`
	CableWatts   float64 `json:"cable_w"`
	// ControllerWatts is what a series controller drops or a shunt burns.
	ControllerWatts float64 `json:"controller_w,omitempty"`
	// PostsVolts is the voltage at the battery's posts at those amps, weighted by the current.
	PostsVolts float64 `json:"posts_volts_dc"`
	// FieldWatts is what the rotor takes; NetAmps and NetWatts are what is left for the battery after
	// that, negative where it takes more than comes in: NetWatts are PostsVolts times NetAmps.
	FieldWatts  float64 `json:"field_w"`
	NetAmps     float64 `json:"net_amps_dc"`
	NetWatts    float64 `json:"net_w"`
	ShaftWatts  float64 `json:"shaft_w"`
	TorqueNm    float64 `json:"torque_nm"`
	Efficiency  float64 `json:"efficiency"`
	WindingC    float64 `json:"winding_c"`
	OpenVoltsDC float64 `json:"open_volts_dc"`
	Mode        string  `json:"mode"`
	// TooHot is set when no steady temperature exists.
	TooHot bool `json:"too_hot,omitempty"`
	// Held is set where the regulator holds the net amps, HeldFieldAmps the field current that it
	// leaves a wound rotor, flux the remaining part of the flux.
	Held          bool    `json:"held,omitempty"`
	HeldFieldAmps float64 `json:"held_field_a,omitempty"`
	// Spent is set where the regulator has removed a wound rotor's whole field and the residual flux
	// still brings more than its setting: then nothing is held.
	Spent bool `json:"regulator_spent,omitempty"`
	flux  float64
	// followed is set when the temperature could be worked out; else WindingC is that of the air.
	followed bool
}

// charger makes a trial ready, with the battery taking charge, or says what is missing.
func (b *bed) charger(t job.Trial, o *TrialOutcome) (*charger, string) {
	w := b.layouts.candidate(t)
	return b.chargerOf(&w, o)
}

// chargerOf is charger for a trial that is laid out.
func (b *bed) chargerOf(w *candidate, o *TrialOutcome) (*charger, string) {
	t := &w.trial
	load, ok := b.dc.load(b.dc.works)
	for _, need := range []quantity.Figure{o.PhasePerRPM, o.PhaseOhms20, o.PhaseMilliHenries, b.machine.Poles.Figure("needs the poles")} {
		if !need.Known() {
			return nil, need.Why
		}
	}
	if !ok {
		return nil, b.dc.why
	}
	r := &charger{
		air: b.air, drag: b.drag, peak: math.Sqrt2 * o.PhasePerRPM.Value, hertz: b.machine.Poles.Value / 120,
		ohms20: o.PhaseOhms20.Value, henries: o.PhaseMilliHenries.Value / 1000, delta: t.Connection == layout.Delta,
		load: load, inner: b.dc.inner.Value, cable: b.dc.cable.Value,
		factor: t.Metal.TempFactor, metal: t.Metal, openPeak: o.PeakDCPerRPM.Value, field: b.rotor.takes(), holder: b.holder, feed: b.rotor.feed,
	}
	r.phases, r.sets = b.machine.charging()
	r.fill = b.henries.fillingOf(w)
	r.ring = b.henries.ringOf(w, r.henries)
	if b.dc.starDiodes {
		r.star = b.henries.neutralOf(w)
	}
	// Two sets of three phases feed the same battery, so each sees the sum of both currents in it, as
	// if they pulsed together: within 0.32 % of the result for sets 30° apart (by time stepping). Two
	// phases a quarter of a cycle apart differ more, and are solved as they are (charge/pair.go).
	r.load.Ohms *= r.sets
	return r, ""
}

// anew is a copy with nothing solved yet.
func (r *charger) anew() *charger {
	other := *r
	other.near, other.eight, other.warms = charge.Solver{}, charge.StarSolver{}, warming{}
	return &other
}

// against is a copy with the battery at another voltage, and the field current that this drives where
// it feeds the rotor.
func (r *charger) against(volts float64) *charger {
	other := *r
	other.fed(volts)
	other.load.Volts = volts
	return &other
}

// excited is a copy with the flux times a factor and the rotor taking a given power, which nothing
// lowers further and no battery changes.
func (r *charger) excited(flux, watts float64) *charger {
	other := *r
	other.peak *= flux
	other.openPeak *= flux
	other.field, other.holder, other.feed = watts, nil, nil
	return &other
}

// solve is one set at a speed with the winding at a temperature.
func (r *charger) solve(rpm, celsius float64) charge.Point {
	ohms := r.ohms20 * r.factor(20, celsius)
	p := r.filled(rpm, ohms)
	// The circulating current of a delta is in no lead. Its waves are others, so their squares add.
	if round, heat := r.round(rpm, ohms); round > 0 {
		p.PhaseAmpsRMS, p.CopperWatts, p.InputWatts = math.Hypot(p.PhaseAmpsRMS, round), p.CopperWatts+heat, p.InputWatts+heat
	}
	return p
}

// round is the current that circulates in a delta at a speed, A rms, and its heat, W.
func (r *charger) round(rpm, ohms float64) (amps, watts float64) {
	amps = r.ring.amps(r.peak*rpm, r.hertz*rpm, ohms)
	return amps, float64(r.phases) * sq(amps) * ohms
}

// holdsHeat reports whether the winding keeps a given temperature, whatever flows.
func (r *charger) holdsHeat() bool { return !r.air.still.Known() || r.air.still.Value == 0 }

// at runs the trial at a speed; warm is a first guess of the winding's temperature, or its temperature
// where that cannot be worked out.
func (r *charger) at(rpm, warm float64) RunPoint {
	if r.holder.bends() {
		h, celsius, tooHot := r.steadyHeld(rpm, warm)
		return h.shown(r, rpm, celsius, tooHot)
	}
	p, celsius, tooHot := r.steady(rpm, warm)
	return r.point(rpm, celsius, tooHot, p)
}

// steady is one set at a speed at its steady temperature; tooHot says that there is none.
func (r *charger) steady(rpm, warm float64) (p charge.Point, celsius float64, tooHot bool) {
	if r.holdsHeat() {
		return r.solve(rpm, warm), warm, false
	}
	rth, floor := r.air.perWatt(rpm), r.floor(rpm)
	if floor > hottest-1 {
		return r.solve(rpm, hottest), hottest, true
	}
	warm = max(floor, min(warm, hottest))
	p = r.solve(rpm, warm)
	heats := balance{at: warm, low: floor, high: hottest, bend: r.warms.bend}
	if r.onTheWay {
		heats.last = r.longer(r.warms.step())
	}
	for range 40 {
		if p.DCAmps == 0 && p.CopperWatts == 0 {
			return p, floor, false
		}
		next, done := heats.next(floor + rth*p.CopperWatts*r.sets)
		if done {
			p, heats.at = r.warmer(p, next-heats.at), next
			break
		}
		if heats.low > hottest-1 {
			if heats.at != hottest {
				p = r.solve(rpm, hottest)
			}
			return p, hottest, true
		}
		before, from := p, heats.at
		heats.at, p = next, r.solve(rpm, next)
		if step := r.warms.learn(&before, &p, next-from); r.onTheWay {
			heats.last = r.longer(step)
		}
	}
	r.warms.bend = heats.bend
	return p, heats.at, false
}

// floor is the temperature, °C, with nothing in the copper: what iron and field leave in the stator warms it
// also then.
func (r *charger) floor(rpm float64) float64 {
	return r.air.ambientC + r.air.perWatt(rpm)*(ironThroughStator*r.drag.at(rpm)+fieldThroughStator*r.field)
}

// torqueOf converts watts at a shaft's speed to a torque, Nm; 0 at rest.
func torqueOf(watts, rpm float64) float64 {
	if rpm <= 0 {
		return 0
	}
	return watts / (2 * math.Pi * rpm / 60)
}

// idles reports whether no current flows anywhere in the winding below cut-in: neither round a delta
// nor through diodes at the star point.
func (r *charger) idles() bool { return r.ring.volts <= 0 && r.star.third == 0 }

// posts is the power into the battery's posts, W, after the losses of cable and controller, and the
// volts there: watts over amps, weighted by the current. They exceed the battery's rest volts by the
// drop in its own ohms. Where nothing flows they are the voltage it stands at.
func (r *charger) posts(p *charge.Point) (volts, watts float64) {
	amps := p.DCAmps * r.sets
	watts = p.BatteryWatts*r.sets + r.inner*sq(p.DCAmpsRMS*r.sets) - r.drop*amps
	if amps > 0 {
		return watts / amps, watts
	}
	return r.load.Volts - r.drop, watts
}

// net is the amps into the battery less what the rotor takes at its posts, so that net watts are the
// volts there times these. A resistor has no posts that hold a voltage: the rotor takes its mean.
func (r *charger) net(p *charge.Point) float64 {
	amps := p.DCAmps * r.sets
	volts, _ := r.posts(p)
	if r.load.Volts == 0 {
		volts = p.DCVolts
	}
	if volts > 0 {
		amps -= r.field / volts
	}
	return amps
}

// point turns the solver's answer into what is shown.
func (r *charger) point(rpm, celsius float64, tooHot bool, p charge.Point) RunPoint {
	iron, rms := r.drag.at(rpm), p.DCAmpsRMS*r.sets
	out := RunPoint{
		RPM: rpm, AmpsDC: p.DCAmps * r.sets, VoltsDC: p.DCVolts, PhaseAmpsRMS: p.PhaseAmpsRMS,
		CopperWatts: p.CopperWatts * r.sets, DiodeWatts: p.DiodeWatts * r.sets, IronWatts: iron,
		CableWatts: r.cable * sq(rms), FieldWatts: r.field,
		WindingC: celsius, TooHot: tooHot, OpenVoltsDC: r.openPeak * rpm, Mode: string(p.Mode), followed: r.air.still.Known(),
	}
	if r.drop > 0 {
		out.ControllerWatts = r.drop * out.AmpsDC
	}
	out.PostsVolts, out.BatteryWatts = r.posts(&p)
	out.NetWatts, out.NetAmps = out.BatteryWatts-r.field, r.net(&p)
	r.holder.dumped(&out)
	out.ShaftWatts = p.InputWatts*r.sets + iron
	out.TorqueNm = torqueOf(out.ShaftWatts, rpm)
	if out.ShaftWatts > 0 {
		out.Efficiency = max(0, out.NetWatts) / out.ShaftWatts
	}
	return out
}
