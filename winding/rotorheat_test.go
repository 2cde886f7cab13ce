package winding_test

import (
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A claw pole of 14 V, its rotor straight on 24 V, at a wheel that turns it too slowly to charge.
const onTwiceItsVolts = `format = 1
[machine]
slots = 36
poles = 12
layers = 1
bore_mm = 92
stack_mm = 28
air_gap_mm = 0.35
[slot]
area_mm2 = 38
[old]
turns = 8
gauge = "1.68 mm over"
lead_ohm = 0.142
plate_current_a = 55
plate_voltage_v = 14
plate_speed_rpm = 6000
[field]
kind = "wound"
coil_ohm = 3.0
[drive]
kind = "water"
through = "gears"
ratio = 6
slow_rpm = 25
usual_rpm = 38
top_rpm = 55
power_w = 350
[battery]
cells = 12
[[trial]]
name = "A"
turns = 24
gauge = "19 AWG"
[[spin]]
speed_rpm = 1000
line_v = 9.1
field_a = 4
`

func calledOut(t *testing.T, o *winding.Outcome, words string) winding.Finding {
	t.Helper()
	for _, f := range o.Findings {
		if strings.Contains(f.Text, words) {
			return f
		}
	}
	require.Fail(t, "not called out: "+words)
	return winding.Finding{}
}

// Where the rotor's field heats the winding while no current flows in it, neither another winding nor a
// current regulator helps, and a rotor coil with four times the heat of its plate is no mere doubt.
func TestAWindingThatItsRotorHeats(t *testing.T) {
	j := job.Parse(onTwiceItsVolts).Job()
	o := winding.Evaluate(j)
	require.Zero(t, o.Trials[0].AmpsUsual.Value-o.Trials[0].Operating[0].NetAmps)
	hot := calledOut(t, &o, "the winding reaches a mean of")
	assert.Contains(t, hot.Text, "the rotor's field of 191 W warms it more than its own copper, 0 W")
	assert.Contains(t, hot.Fix, "a smaller field current")
	assert.NotContains(t, hot.Fix, "Most current")
	assert.Contains(t, hot.Text, "cooling taken as open, none was said")
	rotor := calledOut(t, &o, "times the heat it is made for")
	assert.Equal(t, winding.Broken, rotor.Severity)

	said := j
	said.Machine.Cooling = "open"
	as := winding.Evaluate(said)
	assert.NotContains(t, calledOut(t, &as, "the winding reaches a mean of").Text, "taken as open")

	j.Field.Amps = quantity.Known(4.5) // (4.5/3.51)² is 1.6 times the heat
	o = winding.Evaluate(j)
	assert.Equal(t, winding.Doubt, calledOut(t, &o, "times the heat it is made for").Severity)
}

// Legs and a wheel settle at the speed that the winding leaves them: no lower one is asked of them.
func TestNoLowerSpeedIsAskedOfWhatGivesWay(t *testing.T) {
	for name, asked := range map[string]bool{"pedals.toml": false, "fixed.toml": true} {
		j := load(t, name)
		j.Machine.KelvinPerWatt = quantity.Known(20)
		j.Trials = j.Trials[:1]
		o := winding.Evaluate(j)
		f := calledOut(t, &o, "the winding ")
		if asked {
			assert.Contains(t, f.Fix, "a lower top speed", name)
		} else {
			assert.NotContains(t, f.Fix, "a lower top speed", name)
		}
	}
}

// An old fill that no hand reaches is no limit to be typed.
func TestNoFillIsAdvisedThatNoHandWinds(t *testing.T) {
	for area, says := range map[float64]string{40: "a fill limit of 0.7", 38: "by hand 0.65 to 0.75 goes in"} {
		j := job.Parse(onTwiceItsVolts).Job()
		j.Slot.AreaMM2 = quantity.Known(area)
		o := winding.Evaluate(j)
		assert.Contains(t, calledOut(t, &o, "the old winding filled this slot").Fix, says)
	}
}
