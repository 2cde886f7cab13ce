package winding

import (
	"math"
	"slices"
	"strings"
	"testing"

	"slotwright/winding/charge"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ruled is a stored job with a regulator; 0 is none.
func ruled(t *testing.T, name string, most float64, by string) job.Job {
	t.Helper()
	j := loadJob(t, name)
	if most > 0 {
		j.Battery.MostAmps = quantity.Known(most)
	}
	j.Battery.HeldBy = by
	return j
}

// regulated are machines with a wound rotor and with magnets, with drives that give way and drives that
// hold.
var regulated = []struct {
	name, by string
	most     float64
}{{"engine", "", 15}, {"wind-wound-rotor", "", 8}, {"water", "", 5}, {"wind-good", "series", 8}, {"wind-good", "shunt", 8}, {"pedals", "", 3}, {"pedals-hub", "series", 2}}

// No net amps exceed the regulator's limit, and watts at the shaft are all accounted for: battery,
// copper, diodes, iron, cable, controller. The tolerance of the balance is the hundredth of a kelvin to
// which the winding's temperature is found.
func TestRegulatorHoldsAndWattsAddUp(t *testing.T) {
	held := 0
	for _, c := range regulated {
		o := Evaluate(ruled(t, c.name, c.most, c.by))
		for i := range o.Trials {
			tr := &o.Trials[i]
			points := append([]RunPoint(nil), tr.Curve...)
			for k := range tr.Operating {
				points = append(points, tr.Operating[k].RunPoint)
				assert.LessOrEqual(t, tr.Operating[k].EmptyAmps, c.most*(1+1e-9), c.name)
				assert.LessOrEqual(t, tr.Operating[k].FullAmps, c.most*(1+1e-9), c.name)
			}
			for _, p := range points {
				assert.LessOrEqual(t, p.NetAmps, c.most*(1+1e-9), "%s %s", c.name, c.by)
				assert.InDelta(t, p.ShaftWatts, p.BatteryWatts+p.CopperWatts+p.DiodeWatts+p.IronWatts+p.CableWatts+p.ControllerWatts, 1e-4*p.ShaftWatts+1e-3, "%s %s at %g", c.name, c.by, p.RPM)
				if p.Held {
					held++
					assert.InEpsilon(t, c.most, p.NetAmps, 1e-9)
				}
			}
			for k := range tr.Points {
				assert.LessOrEqual(t, tr.Points[k].NetAmps, c.most*(1+1e-9), c.name)
			}
		}
	}
	assert.Greater(t, held, 100)
}

// A regulator that never holds changes nothing, to the last bit, except where a winding burns, which is
// computed twice and then agrees to rounding.
func TestRegulatorSetHighChangesNothing(t *testing.T) {
	for _, c := range regulated {
		free, high := Evaluate(ruled(t, c.name, 0, "")), Evaluate(ruled(t, c.name, 1e6, c.by))
		for i := range free.Trials {
			f, h := &free.Trials[i], &high.Trials[i]
			if !slices.ContainsFunc(f.Curve, func(p RunPoint) bool { return p.TooHot }) {
				assert.Equal(t, f.Curve, h.Curve, c.name)
				assert.Equal(t, f.Points, h.Points, c.name)
				assert.Equal(t, f.FieldRun, h.FieldRun, c.name)
			}
			require.Equal(t, len(f.Curve), len(h.Curve))
			for k := range f.Curve {
				assert.InDelta(t, f.Curve[k].NetAmps, h.Curve[k].NetAmps, 1e-9, c.name)
				assert.InDelta(t, f.Curve[k].ShaftWatts, h.Curve[k].ShaftWatts, 1e-7, c.name)
				assert.False(t, h.Curve[k].Held)
			}
			for k := range f.Operating {
				assert.InDelta(t, f.Operating[k].EmptyAmps, h.Operating[k].EmptyAmps, 1e-9, c.name)
				assert.InDelta(t, f.Operating[k].RPM, h.Operating[k].RPM, 1e-7, c.name)
			}
		}
	}
}

// The lower it is set the less flows, and the cooler the winding is; with a shunt what the winding
// carries and its heat stay the same to the last bit.
func TestRegulatorSetLowerCoolsAllButWithAShunt(t *testing.T) {
	for _, c := range []struct {
		name, by string
	}{{"engine", ""}, {"wind-good", "series"}, {"wind-good", "shunt"}} {
		free := Evaluate(ruled(t, c.name, 0, ""))
		before := free
		for _, most := range []float64{24, 16, 9, 5, 2} {
			o := Evaluate(ruled(t, c.name, most, c.by))
			for k := range o.Trials[0].Curve {
				p, was, bare := &o.Trials[0].Curve[k], &before.Trials[0].Curve[k], &free.Trials[0].Curve[k]
				assert.LessOrEqual(t, p.NetAmps, was.NetAmps+5e-3, "%s %g A at %g", c.name, most, p.RPM)
				if c.by == job.HeldByShunt {
					assert.Equal(t, bare.AmpsDC, p.AmpsDC)
					assert.InDelta(t, bare.BatteryWatts*p.NetAmps, p.BatteryWatts*bare.NetAmps, 1e-6, "the battery's watts go with its amps")
					assert.Equal(t, bare.CopperWatts, p.CopperWatts)
					assert.Equal(t, bare.WindingC, p.WindingC)
					continue
				}
				if p.Held && !was.TooHot {
					assert.Less(t, p.CopperWatts, was.CopperWatts, "%s %g A at %g", c.name, most, p.RPM)
					assert.Less(t, p.WindingC, was.WindingC, "%s %g A at %g", c.name, most, p.RPM)
				}
			}
			before = o
		}
	}
}

// Worked by hand, of one phase with neither inductance nor slopes: E = 30 V peak, R = 0.5 Ω, two diodes
// of 0.7 V. Against V in all, x = (V + 1.4)/30 = sin a, the mean of the bridge is 2/π·(E/R)·(cos a −
// x·(π/2 − a)). With x = 0.8: a = 0.9273, 38.197·(0.6 − 0.8·0.6435) = 3.254 A. So a battery of 12 V,
// where 12.26 A would flow, is held at 3.254 A by a controller that takes up 22.6 − 12 = 10.6 V and
// burns 34.5 W.
func TestControllerInSeriesByHand(t *testing.T) {
	r := charger{
		air: &thermal{}, drag: &drag{}, peak: 0.03, hertz: 0.05, ohms20: 0.5, phases: 1, sets: 1, openPeak: 0.03,
		factor: func(_, _ float64) float64 { return 1 }, holder: &regulator{amps: 3.254},
	}
	r.load.Volts, r.load.DiodeVolts = 12, 0.7
	p := r.at(1000, 20)
	assert.True(t, p.Held)
	assert.InDelta(t, 10.6, p.ControllerWatts/p.AmpsDC, 2e-2)
	assert.InDelta(t, 34.5, p.ControllerWatts, 0.1)
	assert.InDelta(t, 12*3.254, p.BatteryWatts, 1e-6)
	x := 13.4 / 30
	assert.InDelta(t, 2/math.Pi*60*(math.Cos(math.Asin(x))-x*(math.Pi/2-math.Asin(x))), r.unheld().at(1000, 20).AmpsDC, 1e-3)
}

// The same with a wound rotor: at x = 0.8 its peak is 13.4/0.8 = 16.75 V of 30, and amps go with the peak:
// 3.254·16.75/30 = 1.817 A. The field is in proportion where no curve was read, 55.8 % of its amps.
func TestFieldHeldByHand(t *testing.T) {
	r := charger{
		air: &thermal{}, drag: &drag{watts: 30, rpm: 1000}, peak: 0.03, hertz: 0.05, ohms20: 0.5, phases: 1, sets: 1, openPeak: 0.03,
		factor: func(_, _ float64) float64 { return 1 },
		holder: &regulator{amps: 1.817, wound: true, field: 2, flux: func(s float64) float64 { return s }, watts: func(float64) float64 { return 0 }},
	}
	r.load.Volts, r.load.DiodeVolts = 12, 0.7
	p := r.at(1000, 20)
	assert.True(t, p.Held)
	assert.InDelta(t, 2*16.75/30, p.HeldFieldAmps, 2e-3)
	assert.InDelta(t, 30*(1.0/3+2.0/3*sq(16.75/30)), p.IronWatts, 0.05, "a third is friction, iron goes with the square")
}

// By hand: of two sets of 5 A each a rotor of 28 W takes 28/14 = 2 A at a battery's 14 V, and at a
// resistor, where the bridge has 16 V, 1.75 A; with neither it takes none.
func TestNetAmpsByHand(t *testing.T) {
	r := charger{sets: 2, field: 28}
	r.load.Volts = 14
	assert.InDelta(t, 8, r.net(&charge.Point{DCAmps: 5, DCVolts: 16, BatteryWatts: 14 * 5}), 1e-12)
	r.load.Volts = 0
	assert.InDelta(t, 8.25, r.net(&charge.Point{DCAmps: 5, DCVolts: 16}), 1e-12)
	assert.InDelta(t, 10, r.net(&charge.Point{DCAmps: 5}), 1e-12)
}

// The volts that stand in the formula of net amps are those at the battery's posts, which feed the
// rotor: 28 W and 2 A less are 14 V. What the amps are worked out against is the battery's own, 13.8 V.
func TestVoltsOfAFormulaOfNetAmps(t *testing.T) {
	o, m := new(TrialOutcome), &MachineOutcome{ChargingVolts: quantity.Of(13.8)}
	o.Operating = []Operating{{Meeting: Meeting{Condition: "usual"}, RunPoint: RunPoint{AmpsDC: 12, NetAmps: 10, FieldWatts: 28, PostsVolts: 14}}}
	assert.InDelta(t, 14, termAt("posts_v_usual", &job.Job{}, m, o).value, 1e-12)
	assert.InDelta(t, 13.8, termAt("supply_v_usual", &job.Job{}, m, o).value, 1e-12)
}

// Where only the regulator keeps a winding within its limit, it says so; without it the winding is past
// it.
func TestRegulatorThatProtectsTheWindingIsSaid(t *testing.T) {
	free := Evaluate(ruled(t, "water", 0, ""))
	held := Evaluate(ruled(t, "water", 4, ""))
	require.True(t, free.Trials[1].OverLimit())
	require.False(t, held.Trials[1].OverLimit(), "%v %v", held.Trials[1].LimitAmps, held.Trials[1].SteadyAmps)
	said := false
	for _, f := range held.Findings {
		said = said || f.Path == "battery.most_current" && f.Severity == Note
	}
	assert.True(t, said, "%v", held.Findings)
	assert.Contains(t, held.Trials[1].Verdict, "held by the regulator")
	bench := Prepare(ruled(t, "water", 4, ""))
	assert.Contains(t, bench.bed.holds(&held.Trials[1]), "the regulator holds them at 4 A: the field is down to")
}

// Two such sets give 3.634 A, of which the rotor, 10 W at its full field, takes 10·0.5583² = 3.117 W, 0.260 A
// at 12 V: a regulator set to 3.374 A net has the field down to the same 55.8 %. Turned without a load
// it then has 16.75 V, and at its full field 30 V.
func TestFieldOfTwoSetsHeldByHand(t *testing.T) {
	const share = 16.75 / 30
	r := charger{
		air: &thermal{}, drag: &drag{}, peak: 0.03, hertz: 0.05, ohms20: 0.5, phases: 1, sets: 2, openPeak: 0.03, field: 10,
		factor: func(_, _ float64) float64 { return 1 },
		holder: &regulator{amps: 3.374, wound: true, field: 2, flux: func(s float64) float64 { return s }, watts: func(s float64) float64 { return 10 * s * s }},
	}
	r.load.Volts, r.load.DiodeVolts = 12, 0.7
	p := r.at(1000, 20)
	require.True(t, p.Held)
	assert.InDelta(t, 2*share, p.HeldFieldAmps, 2e-3)
	assert.InDelta(t, 10*sq(share), p.FieldWatts, 2e-2)
	assert.InDelta(t, 3.634, p.AmpsDC, 2e-3)
	assert.InDelta(t, 3.374, p.NetAmps, 1e-9)
	assert.InDelta(t, 12*3.374, p.NetWatts, 1e-3)
	assert.InDelta(t, 16.75, p.OpenVoltsDC, 0.03)
	assert.InDelta(t, 30, r.unheld().at(1000, 20).OpenVoltsDC, 1e-9)
	small := r
	small.holder = &regulator{amps: 21, wound: true, field: 2, flux: r.holder.flux, watts: r.holder.watts}
	assert.True(t, small.at(1000, 20).Held, "two sets bring 24.5 A, of which the rotor takes 0.8")
}

// A shunt lets the battery have no more than its setting, which then also limits its charge; but the
// dump load has to take all that the winding brings at the top speed, as without it. A controller in
// series keeps the rest in the winding, and needs a smaller one.
func TestRegulatorGuardsTheBatteryAndTheDumpLoadTakesTheRest(t *testing.T) {
	run := func(most float64, by string) *TrialOutcome {
		j := ruled(t, "wind-good", most, by)
		j.Battery.MaxChargeAmps = quantity.Known(10)
		o := Evaluate(j)
		return &o.Trials[0]
	}
	free, shunt, series := run(0, ""), run(8, "shunt"), run(8, "series")
	require.Greater(t, free.OverChargeAmps.Value, 5.0)
	assert.Zero(t, shunt.OverChargeAmps.Value)
	assert.Zero(t, series.OverChargeAmps.Value)
	require.True(t, free.DumpWatts.Known(), free.DumpWatts.Why)
	assert.InEpsilon(t, free.DumpWatts.Value, shunt.DumpWatts.Value, 1e-9)
	assert.InEpsilon(t, free.DumpOhms.Value, shunt.DumpOhms.Value, 1e-9)
	assert.Less(t, series.DumpWatts.Value, 0.6*free.DumpWatts.Value)
	assert.Greater(t, series.DumpOhms.Value, free.DumpOhms.Value)
}

// Flux follows the field by the curve where one was read, flat at its top: of one that goes as I/(I + 1
// A), half of 2 A makes 0.5 of 0.667, three quarters. Without a curve half the current makes half. Into
// a resistor and a converter's input no regulator is set.
func TestFluxAtAShareOfTheField(t *testing.T) {
	g := &job.BatterySpec{MostAmps: quantity.Known(8)}
	e := &excitation{wound: true, amps: quantity.Of(2)}
	curve := &flux{at: func(amps float64) float64 { return amps / (amps + 1) }}
	assert.InEpsilon(t, 0.75, newRegulator(g, e, curve).flux(0.5), 1e-12)
	assert.InEpsilon(t, 0.5, newRegulator(g, e, &flux{}).flux(0.5), 1e-12)
	for _, load := range []string{job.LoadResistor, job.LoadBus} {
		assert.Nil(t, newRegulator(&job.BatterySpec{MostAmps: g.MostAmps, Load: load}, e, curve), load)
	}
	assert.Nil(t, newRegulator(&job.BatterySpec{}, e, curve))
}

// The best field brings no more than the regulator's limit: it is the current at which the machine, run
// with it and without a regulator, has just these amps, and its gain is the watts of that run less
// those of the field in use. Where the regulator holds already, its own field is the best and gains
// nothing.
func TestTheBestFieldIsThatOfTheRegulator(t *testing.T) {
	run := func(most, field float64) *TrialOutcome {
		j := ruled(t, "engine", most, "")
		j.Field.Amps = quantity.Known(field)
		o := Evaluate(j)
		return &o.Trials[0]
	}
	in := func(o *TrialOutcome) *Operating { return o.in(usual) }
	most := run(0, 1)
	require.InDelta(t, 13.2, in(most).NetAmps, 0.1)
	require.Greater(t, most.BestGainUsual.Value, 100.0, "unheld a larger field brings far more")
	for _, lets := range []float64{14, 16, 20} {
		held := run(lets, 1)
		require.False(t, in(held).Held)
		best := run(0, held.BestUsual.Value)
		assert.InEpsilon(t, lets, in(best).NetAmps, 2e-3, "%g A", lets)
		assert.InDelta(t, in(best).NetWatts-in(most).NetWatts, held.BestGainUsual.Value, 0.3, "%g A", lets)
	}
	held := run(10, 1)
	require.True(t, in(held).Held)
	assert.InDelta(t, in(held).HeldFieldAmps, held.BestUsual.Value, 1e-12)
	assert.Zero(t, held.BestGainUsual.Value)
}

// What the regulator is said to keep from a winding is the current, and the drive's speed, in the same
// job without it.
func TestWhatIsKeptFromAWindingIsWhatFlowsWithoutARegulator(t *testing.T) {
	apart := 0
	for _, name := range []string{"water", "pedals"} {
		free, held := Evaluate(ruled(t, name, 0, "")), Evaluate(ruled(t, name, 3, ""))
		for i := range held.Trials {
			for k := range held.Trials[i].Operating {
				p, without := &held.Trials[i].Operating[k], &free.Trials[i].Operating[k]
				if !p.Held {
					assert.Zero(t, p.unheld)
					continue
				}
				assert.InEpsilon(t, without.AmpsDC, p.unheld, 1e-3, "%s %s", name, p.Condition)
				assert.InEpsilon(t, without.RPM, p.unheldRPM, 1e-3, "%s %s", name, p.Condition)
				if math.Abs(p.RPM/without.RPM-1) > 0.1 {
					apart++
				}
			}
		}
	}
	assert.Positive(t, apart, "a drive that gives way turns faster where it is asked for less")
}

// A winding whose field is held is as warm as what heats it makes it, all sets together: rise per watt times
// the copper's watts, 0.7 of the iron's and half of the field's.
func TestAHeldWindingIsAsWarmAsItsWatts(t *testing.T) {
	for name, most := range map[string]float64{"engine": 12, "two-sets": 8} {
		j := ruled(t, name, most, "")
		j.Machine.KelvinPerWatt, j.Machine.Cooling, j.Machine.AmbientC = quantity.Known(0.4), "open", quantity.Known(20)
		o, held := Evaluate(j), 0
		for _, p := range o.Trials[0].Curve {
			if p.Held && !p.TooHot {
				held++
				assert.InDelta(t, 0.4*(p.CopperWatts+0.7*p.IronWatts+0.5*p.FieldWatts), p.WindingC-20, 0.05, "%s at %g rpm", name, p.RPM)
			}
		}
		assert.Greater(t, held, 10, name)
	}
}

// The same rotor with flux that stays, three fifths of all: without any field its peak is 18 V, x =
// 13.4/18 = 0.7444, a = 0.8397, and 2/π·36·(0.6677 − 0.7444·0.7311) = 2.828 A flow. A regulator set to
// 1.817 A cannot hold that; set to 3.254 A it holds, with some field left.
func TestResidualFluxPastTheRegulatorByHand(t *testing.T) {
	r := charger{
		air: &thermal{}, drag: &drag{watts: 30, rpm: 1000}, peak: 0.03, hertz: 0.05, ohms20: 0.5, phases: 1, sets: 1, openPeak: 0.03, field: 10,
		factor: func(_, _ float64) float64 { return 1 },
		holder: &regulator{amps: 1.817, wound: true, field: 2, flux: func(s float64) float64 { return 0.6 + 0.4*s }, watts: func(s float64) float64 { return 10 * s * s }},
	}
	r.load.Volts, r.load.DiodeVolts = 12, 0.7
	p := r.at(1000, 20)
	assert.True(t, p.Spent)
	assert.False(t, p.Held)
	assert.InDelta(t, 2.828, p.NetAmps, 2e-3)
	assert.Equal(t, p.AmpsDC, p.NetAmps)
	assert.Zero(t, p.HeldFieldAmps)
	assert.Zero(t, p.FieldWatts)
	assert.InDelta(t, 12*2.828, p.BatteryWatts, 3e-2)
	assert.InDelta(t, 30*(1.0/3+2.0/3*sq(0.6)), p.IronWatts, 0.05)
	r.holder.amps = 3.254
	p = r.at(1000, 20)
	assert.True(t, p.Held)
	assert.Positive(t, p.HeldFieldAmps)
	assert.InDelta(t, 3.254, p.NetAmps, 1e-9)
}

// Where residual flux alone brings more than the regulator's setting, amps and watts are the actual
// ones, on the curve and in the condition, and it is reported.
func TestResidualFluxPastTheRegulatorIsShownAndSaid(t *testing.T) {
	j := ruled(t, "engine", 3, "")
	bare := j.Spins[0]
	bare.LineVolts, bare.FieldAmps = quantity.Known(2.5), quantity.Known(0)
	j.Spins = append(j.Spins, bare)
	o := Evaluate(j)
	p := o.Trials[0].in(top)
	require.True(t, p.Spent)
	assert.False(t, p.Held)
	assert.Greater(t, p.NetAmps, 3.5)
	assert.Equal(t, p.AmpsDC, p.NetAmps, "the rotor takes nothing")
	spent := 0
	for _, p := range append([]RunPoint{p.RunPoint}, o.Trials[0].Curve...) {
		if p.AmpsDC > 0 {
			assert.InEpsilon(t, p.BatteryWatts, p.NetWatts+p.FieldWatts, 1e-9)
			assert.InDelta(t, 13.6, p.BatteryWatts/p.AmpsDC, 0.5, "watts are of the amps shown, at %g", p.RPM)
		}
		if p.Spent {
			spent++
			assert.Greater(t, p.NetAmps, 3.0)
			assert.InDelta(t, p.ShaftWatts, p.BatteryWatts+p.CopperWatts+p.DiodeWatts+p.IronWatts+p.CableWatts, 1e-4*p.ShaftWatts)
		}
	}
	assert.Greater(t, spent, 3)
	assert.True(t, slices.ContainsFunc(o.Findings, func(f Finding) bool {
		return f.Path == "battery.most_current" && f.Trial == "A" && f.Text == "residual flux alone brings "+amps(p.NetAmps)+" A (engine 2200 rpm), more than the 3.00 A that the regulator should hold: with no field current at all it can lower them no further"
	}), "%v", o.Findings)
	assert.Equal(t, ", more than the regulator can hold", o.Trials[0].heldSaid(top))
	assert.Zero(t, o.Trials[0].BestTop.Value)
}

// A regulator's setting that has no effect says so and why; one that has does not.
func TestRegulatorThatIsNotUsedIsSaid(t *testing.T) {
	for _, c := range []struct {
		name, by  string
		most      float64
		path, why string
	}{
		{"bus", "", 1, "battery.most_current", "the load is a converter's input"},
		{"lamp-half-wave", "", 1, "battery.most_current", "the load is a resistor"},
		{"bus", "shunt", 0, "battery.held_by", "the load is a converter's input"},
		{"engine", "shunt", 15, "battery.held_by", "with a wound rotor it is the field that is lowered"},
		{"wind-good", "shunt", 0, "battery.held_by", "no most current is given"},
		{"wind-good", "shunt", 8, "", ""},
		{"engine", "", 15, "", ""},
		{"bus", "", 0, "", ""},
	} {
		o := Evaluate(ruled(t, c.name, c.most, c.by))
		at := slices.IndexFunc(o.Findings, func(f Finding) bool {
			return strings.Contains(f.Text, "is not used: ") && strings.HasPrefix(f.Path, "battery.")
		})
		if c.path == "" {
			assert.Negative(t, at, "%s %v", c.name, o.Findings)
			continue
		}
		require.GreaterOrEqual(t, at, 0, "%s %v", c.name, o.Findings)
		assert.Equal(t, c.path, o.Findings[at].Path, c.name)
		assert.Contains(t, o.Findings[at].Text, c.why)
	}
}

// The cells of net amps held by the regulator are marked: those, and only those, that would have more
// without it, and they show its setting.
func TestHeldAmpsAreMarkedInTheirCells(t *testing.T) {
	for _, name := range []string{"engine-held", "wind-held"} {
		j := loadJob(t, name)
		set := j.Battery.MostAmps.Value
		held := Evaluate(j).Comparison
		j.Battery.MostAmps, j.Battery.HeldBy = quantity.Reading{}, ""
		free := Evaluate(j).Comparison
		seen := map[bool]int{}
		for i, r := range held {
			require.Equal(t, r.ID, free[i].ID)
			for k, c := range r.Cells {
				if !strings.HasPrefix(r.ID, "amps_dc_") {
					assert.False(t, c.Held, "%s of %s", r.ID, name)
					continue
				}
				assert.Equal(t, free[i].Cells[k].Figure.Value > set*(1+1e-6), c.Held, "%s of %s, trial %d", r.ID, name, k)
				if seen[c.Held]++; c.Held {
					assert.InEpsilon(t, set, c.Figure.Value, 1e-6, "%s of %s", r.ID, name)
				}
			}
		}
		assert.NotZero(t, seen[true], name)
		assert.NotZero(t, seen[false], name)
	}
}
