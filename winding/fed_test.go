package winding

import (
	"strings"
	"testing"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// onBattery is a car's alternator whose rotor is fed by the battery: 4.4 Ω cold, 5.437 Ω at 80 °C, 1 V
// brush drop.
const onBattery = `format = 1
[machine]
slots = 36
poles = 12
phases = 3
layers = 1
bore_mm = 90
stack_mm = 40
mean_turn_mm = 200
drag_w = 40
drag_at_rpm = 3000
rise_k_per_w = 0.8
[old]
turns = 11
gauge = "1.80 mm over"
lead_ohm = 0.17
[[spin]]
speed_rpm = 1200
line_v = 6.0
field_a = 0.8
[[spin]]
speed_rpm = 1200
line_v = 14.6
field_a = 2.5
[[short]]
speed_rpm = 1000
line_a = 31
field_a = 2.5
[field]
kind = "wound"
coil_ohm = 4.4
[drive]
kind = "engine"
through = "belt"
ratio = 2
slow_rpm = 700
usual_rpm = 1500
top_rpm = 3000
power_w = 600
[battery]
chemistry = "flooded"
cells = 6
capacity_ah = 100
cable_m = 3
[[trial]]
name = "A"
turns = 11
gauge = "1.7 mm"
[[trial]]
name = "B"
turns = 20
gauge = "1.2 mm"
`

// readBattery is that job, changed.
func readBattery(t *testing.T, change func(*job.Job)) Outcome {
	t.Helper()
	d := job.Parse(onBattery)
	require.Empty(t, d.Problems())
	j := d.Job()
	if change != nil {
		change(&j)
	}
	return Prepare(j).WithoutOffers().Outcome()
}

// typed is the same with the field current typed.
func typed(amps float64) func(*job.Job) {
	return func(j *job.Job) { j.Field.Amps = quantity.Known(amps) }
}

// By hand. The battery at rest drives (12.6 − 1)/(4.4·314.5/254.5) = 2.1334 A. Froelich's curve through
// 6 V at 0.8 A and 14.6 V at 2.5 A is 44.82·I/(5.175 + I) V at 1200 rpm: at 2.1334 A 13.08 V between leads,
// whose peak comes to 12.6 + 2·0.75 V at 1200·14.1/(√2·13.08) = 914.5 rpm. By the 2.31 A that the
// battery drives while it takes charge it would be 865. B has 20/11 of the turns: 503.
func TestChargingBeginsByTheFieldOfTheBatteryAtRest(t *testing.T) {
	o := readBattery(t, nil)
	assert.InDelta(t, 914.5, o.Trials[0].CutInRPM.Value, 0.5)
	assert.InDelta(t, 503.0, o.Trials[1].CutInRPM.Value, 0.3)
	assert.InDelta(t, 2.309, o.Machine.FieldAmps.Value, 1e-3, "taking charge")
	twin := readBattery(t, typed(11.6/(4.4*314.5/254.5)))
	for i := range o.Trials {
		assert.InEpsilon(t, twin.Trials[i].CutInRPM.Value, o.Trials[i].CutInRPM.Value, 1e-6)
		require.Len(t, o.Trials[i].AtSpeeds, 3)
		for k := range o.Trials[i].AtSpeeds {
			is, was := &o.Trials[i].AtSpeeds[k], &twin.Trials[i].AtSpeeds[k]
			assert.InEpsilon(t, was.NetAmps, is.NetAmps, 4e-3, "the iron is warmed a little less: its loss goes with the flux")
			assert.InEpsilon(t, was.FieldWatts, is.FieldWatts, 1e-9)
		}
	}
	h := HowOf("cut_in_rpm")
	j := job.Parse(onBattery).Job()
	assert.Contains(t, h.Numbers(&j, &o.Machine, &o.Trials[0], quantity.Choice{}), " × 0.94")
	row := o.Row(OutputOf("cut_in_rpm"), false)
	assert.Contains(t, row.Help, "With 2.13 A in the rotor, which the battery at rest drives.")
}

// Nearly full the battery drives (14.52 − 1)/5.437 = 2.487 A, empty 2.133 A: amps into the full and the
// empty battery equal those of the same machine with that current typed, at the speed at which the
// engine runs.
func TestEmptyAndFullBatteriesHaveAFieldOfTheirOwn(t *testing.T) {
	strong := func(change func(*job.Job)) *TrialOutcome {
		o := readBattery(t, func(j *job.Job) {
			j.Drive.Watts = quantity.Known(5000) // so that the speed holds
			if change != nil {
				change(j)
			}
		})
		return &o.Trials[0]
	}
	is := strong(nil)
	ohms := 4.4 * 314.5 / 254.5
	full, empty := strong(typed((14.52-1)/ohms)), strong(typed((12.6-1)/ohms))
	p := is.in(slow)
	require.Greater(t, p.full.AmpsDC, 5.0)
	assert.InEpsilon(t, full.in(slow).FullAmps, p.FullAmps, 6e-3)
	assert.InEpsilon(t, empty.in(slow).EmptyAmps, p.EmptyAmps, 6e-3)
	assert.InDelta(t, 2.487*(2.487*ohms+1), p.full.FieldWatts, 0.05)
	assert.Greater(t, p.FullAmps, 1.02*strong(typed(1.0e-9+(13.56-1)/ohms)).in(slow).FullAmps, "more than by the field of the battery taking charge")
}

// A separate supply, or a current that something sets, is the same at every state of charge.
func TestATypedFieldFollowsNoBattery(t *testing.T) {
	for name, change := range map[string]func(*job.Job){
		"supply":  func(j *job.Job) { j.Field.Volts = quantity.Known(13.56) },
		"current": typed(12.56 / (4.4 * 314.5 / 254.5)),
	} {
		o := readBattery(t, change)
		assert.InDelta(t, 864.9, o.Trials[0].CutInRPM.Value, 0.3, name)
		assert.Equal(t, o.Trials[0].in(usual).FieldWatts, o.Trials[0].in(usual).full.FieldWatts, name)
		row := o.Row(OutputOf("cut_in_rpm"), false)
		assert.True(t, strings.HasSuffix(row.Help, "With 2.31 A in the rotor."), row.Help)
	}
	bus := readBattery(t, func(j *job.Job) {
		j.Battery = job.BatterySpec{Load: job.LoadBus, BusVolts: quantity.Known(13.56)}
	})
	assert.InEpsilon(t, 1, bus.Trials[0].restFlux, 1e-12)
}

// A regulator's full field is the current that the battery drives at those volts. Flux I/(I + 1 A), 2 A
// in use, watts 10 W at that: of 1.5 A the half makes 0.75/1.75 over 1.5/2.5 of the flux and
// 10·(0.75/2)² W.
func TestARegulatorUnderAnotherFullField(t *testing.T) {
	law := func(amps float64) float64 { return amps / (amps + 1) }
	g := &regulator{amps: 5, wound: true, field: 2,
		flux:  func(share float64) float64 { return law(2*share) / law(2) },
		watts: func(share float64) float64 { return 10 * share * share },
	}
	under := g.under(1.5)
	assert.InEpsilon(t, 1.5, under.field, 1e-12)
	assert.InEpsilon(t, 1, under.flux(1), 1e-12)
	assert.InEpsilon(t, (0.75/1.75)/(1.5/2.5), under.flux(0.5), 1e-12)
	assert.InEpsilon(t, 10*sq(0.75/2), under.watts(0.5), 1e-12)
	assert.Nil(t, (*regulator)(nil).under(1))
	series := &regulator{amps: 5}
	assert.Same(t, series, series.under(1))
}

// Against other volts and back gives the original, which itself is unchanged: the curve starts at the
// brushes' 1.1 V, so below them no current flows.
func TestAgainstOtherVoltsIsPure(t *testing.T) {
	f := &feeding{volts: 13.5, amps: 2.5, coil: field.Wound{Ohms20: 5, TempC: 20, BrushVolts: 1}, law: func(a float64) float64 { return a / (5 + a) }}
	r := &charger{peak: 2, openPeak: 3, field: 40, drag: &drag{30, 1000, quantity.Measured}, feed: f}
	r.load.Volts = 13.5
	low := r.against(11)
	assert.InEpsilon(t, 2*(2.0/7)/(2.5/7.5), low.peak, 1e-12)
	assert.InEpsilon(t, 3*(2.0/7)/(2.5/7.5), low.openPeak, 1e-12)
	assert.InEpsilon(t, 2*11, low.field, 1e-12)
	assert.InEpsilon(t, 30*(1.0/3+2.0/3*sq((2.0/7)/(2.5/7.5))), low.drag.watts, 1e-12)
	assert.InEpsilon(t, 2, low.against(13.5).peak, 1e-12)
	assert.InEpsilon(t, 2, r.peak, 1e-12)
	assert.InEpsilon(t, 30, r.drag.watts, 1e-12)
	assert.InEpsilon(t, 2, low.excited(1, 5).against(13).peak/low.peak*2, 1e-12, "what sets the field is led by no battery")
}
