package winding

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// plated is an invented alternator of an engine with a fan on its shaft: 36 slots, 12 poles, its
// plate of 60 A at 14 V and 6000 rpm, 11 turns of two wires of 1.12 mm, in which the plate's amps
// make 24.9 A/mm².
const plated = `format = 1
[machine]
slots = 36
poles = 12
layers = 1
bore_mm = 92
stack_mm = 30
air_gap_mm = 0.4
cooling = "fan"
thermal_class = "F"
[slot]
area_mm2 = 45
fill_limit = 0.77
[old]
turns = 11
gauge = "1.12 mm"
strands = 2
lead_ohm = 0.173
plate_current_a = 60
plate_voltage_v = 14
plate_speed_rpm = 6000
[field]
kind = "wound"
coil_ohm = 3.0
current_a = 3.5
[drive]
kind = "engine"
through = "belt"
driver_mm = 150
driven_mm = 100
slow_rpm = 1500
usual_rpm = 1500
top_rpm = 3000
power_w = 1500
[battery]
chemistry = "agm"
cells = 6
[target]
current_a = 15
[[trial]]
name = "A"
turns = 11
gauge = "1.12 mm"
strands = 2
[[trial]]
name = "B"
turns = 9
gauge = "1.12 mm"
strands = 2
[[spin]]
speed_rpm = 1180
line_v = 7.79
field_a = 1.5
[[spin]]
speed_rpm = 1160
line_v = 11.37
field_a = 3
`

func platedJob(t *testing.T) job.Job {
	d := job.Parse(plated)
	require.Empty(t, d.Problems())
	return d.Job()
}

// What the plate proves is not overruled by a common density: wound as it was, it withstands the
// plate's amps at the plate's speed, 24.9 A/mm² for blocks, where 7.5 would allow 18 A.
func TestThePlateProvesItsOwnDensity(t *testing.T) {
	j := platedJob(t)
	a := Prepare(j).Static(j.Trials[0])
	assert.InEpsilon(t, 60, a.LimitAt(6000), 1e-6)
	assert.False(t, a.byDensity())
	for _, l := range a.Each {
		if l.Name == limitOldDensity {
			assert.InEpsilon(t, 60*math.Sqrt(2.0/3)/(2*math.Pi/4*1.12*1.12), l.sum.density, 1e-3)
		}
	}
	j.Machine.Cooling = "open"
	slow := Prepare(j).Static(j.Trials[0])
	assert.False(t, slow.byDensity(), "4410 rpm at most, more than half of 6000")
	j.Drive.TopRPM = quantity.Known(1700)
	slow = Prepare(j).Static(j.Trials[0])
	assert.True(t, slow.byDensity(), "no fan, and far slower than the plate: not cooled as then")
	j = platedJob(t)
	j.Old.RatedAmps = quantity.Reading{}
	without := Prepare(j).Static(j.Trials[0])
	require.True(t, without.byDensity())
	assert.Equal(t, limitDensity, without.LimitBy)
	assert.InDelta(t, 18.1, without.LimitAmps.Value, 0.05)
}

// Below the plate's speed the fan carries less off, so less heat is allowed: the temperature limit
// depends on the speed at which it is given, and the words have both speeds.
func TestTheLimitByTemperatureGoesByTheFan(t *testing.T) {
	j := platedJob(t)
	b := Prepare(j)
	a := b.Static(j.Trials[0])
	require.Equal(t, limitTemperature, a.LimitBy)
	usual := b.speeds.usual.Value
	require.InDelta(t, 2205, usual, 1)
	leaves := func(rpm float64) float64 {
		return (145-25)/b.air.perWatt(rpm) - 0.7*b.drag.at(rpm) - 0.5*b.rotor.takes()
	}
	more := math.Sqrt(leaves(4410) / leaves(usual))
	require.Greater(t, more, 1.1)
	assert.InEpsilon(t, more*a.LimitAmps.Value, a.LimitAt(4410), 1e-6)
	part := b.air.perWatt(6000) / b.air.perWatt(usual)
	assert.Contains(t, a.LimitAmps.Why, "at 2205 rpm: the fan carries off "+quantity.Number(100*part, 0)+" % of what it does at the plate's 6000 rpm")
	for _, l := range a.Each {
		if l.Name == limitSameHeat {
			assert.InEpsilon(t, 60, l.AmpsDC.Value, 1e-9)
			assert.Contains(t, l.Reason, "proved at 6000 rpm: slower its fan cools less")
		}
	}
	j.Machine.Cooling = "open"
	plain := Prepare(j).Static(j.Trials[0])
	assert.InEpsilon(t, plain.LimitAmps.Value, plain.LimitAt(6000), 1e-12, "no fan, one limit")
	assert.NotContains(t, plain.LimitAmps.Why, "fan")
}

// Where a winding runs it is judged by its limit there: faster than usual it may carry more than its
// limit at the usual speed, and the speed at which that is passed is where its curve meets the limit's.
func TestALimitIsHeldAgainstTheSpeedItIsFor(t *testing.T) {
	j := platedJob(t)
	o := Evaluate(j)
	a := &o.Trials[0]
	p := a.in(top)
	require.Greater(t, p.AmpsDC, limitSlack*a.LimitAmps.Value)
	require.LessOrEqual(t, p.AmpsDC, a.LimitAt(p.RPM))
	assert.False(t, a.OverLimit())
	assert.False(t, OutputOf("bridge_amps_dc_top").Past(&o, a))
	assert.False(t, OutputOf("bridge_amps_dc_steady").Past(&o, a))
	assert.NotContains(t, a.Verdict, "limit")
	for _, f := range o.Findings {
		assert.False(t, f.Trial == "A" && strings.Contains(f.Text, "is over its limit"), f.Text)
	}
	j.Machine.AmbientC = quantity.Known(90)
	o = Evaluate(j)
	a = &o.Trials[0]
	require.True(t, a.OverLimit())
	require.True(t, a.LimitRPM.Known(), a.LimitRPM.Why)
	at, _ := Prepare(j).RunAt(0, a.LimitRPM.Value)
	assert.InEpsilon(t, a.LimitAt(a.LimitRPM.Value), at.AmpsDC, 0.005)
}

// Where the regulator lowers the field, copper may make the heat that field and iron leave it, by hand:
// 100 K at 0.5 K/W are 200 W. Of 30 W of iron 0.7 and of 40 W of field half heat the stator, which
// leaves 159 W at full field; 15 and 10 W leave 184.5 W, and amps go with the root: 1.077 times as
// many.
func TestALoweredFieldLeavesTheCopperMore(t *testing.T) {
	f := &fanned{
		air:   &thermal{still: quantity.Of(1), fanGain: 1, fanRPM: 1000},
		drag:  &drag{watts: 30, rpm: 1000},
		rotor: &excitation{wound: true, watts: quantity.Of(40)},
		usual: 1000, rise: 100,
	}
	assert.InEpsilon(t, 1, f.grows(limitTemperature, &RunPoint{RPM: 1000, IronWatts: 30, FieldWatts: 40}), 1e-12)
	held := &RunPoint{RPM: 1000, IronWatts: 15, FieldWatts: 10, HeldFieldAmps: 1}
	assert.InEpsilon(t, math.Sqrt(184.5/159), f.grows(limitTemperature, held), 1e-12)
	assert.InDelta(t, 1, f.grows(limitDensity, held), 0)

	// So 10.7 A are within a limit of 10 A there, even on the way up through the winds.
	l := &Limits{Each: []Limit{{Name: limitTemperature, AmpsDC: quantity.Of(10)}}, LimitAmps: quantity.Of(10), fanned: f}
	held.AmpsDC = 10.7
	assert.False(t, l.PassedIn(held))
	assert.False(t, (&DrivePoint{RPM: 1000, AmpsDC: 10.7, lowered: held.lowers()}).passes(l))
	assert.True(t, (&DrivePoint{RPM: 1000, AmpsDC: 10.9, lowered: held.lowers()}).passes(l))
	assert.True(t, (&DrivePoint{RPM: 1000, AmpsDC: 10.7}).passes(l), "at full field")
	one := windPoint(drive.WindPoint{RPM: 1000}, *held)
	assert.False(t, one.passes(l))
}

// The strongest wind that is called cool enough is the last before anything is too much: amps over the
// limit, no steady temperature, or, where temperature is followed, more than the class's mean.
func TestTheStrongestWindThatIsCool(t *testing.T) {
	known, not := &thermal{still: quantity.Of(0.8), meanC: 145}, &thermal{meanC: 145}
	for what, c := range map[string]struct {
		third DrivePoint
		air   *thermal
		wind  float64
	}{
		"within": {DrivePoint{X: 8, AmpsDC: 9, WindingC: 140}, known, 10},
		"amps":   {DrivePoint{X: 8, AmpsDC: 11, WindingC: 140}, known, 6},
		"burns":  {DrivePoint{X: 8, AmpsDC: 9, TooHot: true}, known, 6},
		"warm":   {DrivePoint{X: 8, AmpsDC: 9, WindingC: 150}, known, 6},
		"untold": {DrivePoint{X: 8, AmpsDC: 9, WindingC: 150}, not, 10},
	} {
		o := &TrialOutcome{}
		o.Limits = Limits{Each: []Limit{{Name: limitDensity, AmpsDC: quantity.Of(10)}}, LimitAmps: quantity.Of(10)}
		o.Points = []DrivePoint{{X: 4, AmpsDC: 5}, {X: 6, AmpsDC: 9}, c.third, {X: 10, AmpsDC: 9}}
		assert.Equal(t, c.wind, o.coolTo(c.air), what)
	}
	assert.Zero(t, (&TrialOutcome{}).coolTo(known))
}

// Where a regulator lowers the field, or a fan cools more the faster it turns, a limit that was passed
// is met again further up: the current is past it between the two speeds and nowhere else.
func TestALimitIsPassedFromOneSpeedToAnother(t *testing.T) {
	j := loadJob(t, "star-diodes")
	j.Battery.MostAmps = quantity.Known(20)
	b := Prepare(j)
	o := b.Outcome()
	humps := 0
	for i := range o.Trials {
		a := &o.Trials[i]
		from, to := a.LimitRPM, a.LimitToRPM
		require.True(t, from.Known() && to > 0, a.Name)
		humps++
		for rpm, times := range map[float64]float64{from.Value: 1, to: limitSlack} {
			p, _ := b.RunAt(i, rpm)
			assert.InEpsilon(t, times*a.LimitIn(&p), p.AmpsDC, 2e-3, "%s at %g", a.Name, rpm)
		}
		for k := range a.Curve {
			p := &a.Curve[k]
			assert.Equal(t, p.RPM > from.Value && p.RPM < to && p.AmpsDC > limitSlack*a.LimitIn(p), a.PassedIn(p), "%s at %g", a.Name, p.RPM)
		}
		cool := o.Machine
		cool.MeanLimitC = quantity.Missing("every class stands it")
		if !slices.ContainsFunc(a.Curve, func(p RunPoint) bool { return p.TooHot }) {
			assert.Equal(t, []Stretch{{from.Value, to}}, a.NotWithstood(&cool), a.Name)
		}
		for _, of := range a.NotWithstood(&o.Machine) {
			assert.LessOrEqual(t, of.From, of.To)
			for k := range a.Curve {
				if p := &a.Curve[k]; p.RPM > of.From && p.RPM < of.To {
					assert.True(t, p.TooHot || a.PassedIn(p) || p.AmpsDC > a.LimitIn(p) || p.WindingC > o.Machine.MeanLimitC.Value, "%s at %g", a.Name, p.RPM)
				}
			}
		}
	}
	assert.Equal(t, 2, humps)
	assert.Contains(t, o.Trials[0].Verdict, "from "+whole(o.Trials[0].LimitRPM)+fmt.Sprintf(" to %.0f alternator rpm", o.Trials[0].LimitToRPM))
}

// A regulator set to the limit itself, or within the slack that a limit has, passes none.
func TestHeldAtItsLimitIsNotPastIt(t *testing.T) {
	j := loadJob(t, "pedals-hub")
	j.Battery.MostAmps = quantity.Reading{}
	free := Evaluate(j)
	held := 0
	for i := range free.Trials {
		if !free.Trials[i].LimitRPM.Known() {
			continue
		}
		k := j
		for _, part := range []float64{1, 1.003} {
			k.Battery.MostAmps = quantity.Known(part * free.Trials[i].LimitAmps.Value)
			a := &Prepare(k).Outcome().Trials[i]
			require.Less(t, k.Battery.MostAmps.Value, limitSlack*a.LimitAmps.Value)
			held++
			assert.False(t, a.OverLimit())
			assert.False(t, a.LimitRPM.Known(), "%s: from %g", a.Name, a.LimitRPM.Value)
		}
	}
	assert.Positive(t, held)
}
