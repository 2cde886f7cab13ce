package winding_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pedalled is a claw-pole alternator on a bicycle whose rotor, fed directly by the battery, takes half
// of what legs give: invented, with the sizes of a small car's.
const pedalled = `format = 1
[machine]
slots = 36
poles = 12
layers = 1
bore_mm = 98
stack_mm = 34
air_gap_mm = 0.35
[slot]
area_mm2 = 62
[old]
turns = 8
gauge = "1.5 mm"
lead_ohm = 0.13
plate_current_a = 55
plate_voltage_v = 14
plate_speed_rpm = 6000
[field]
kind = "wound"
coil_ohm = 3.4
[drive]
kind = "pedals"
through = "belt"
ratio = "32.7"
slow_rpm = 45
usual_rpm = 60
top_rpm = 85
power_w = 75
[battery]
chemistry = "agm"
[[trial]]
name = "A"
turns = 20
gauge = "18 AWG"
[[spin]]
speed_rpm = 1000
line_v = 11.2
field_a = 3.4
`

const weakRead = `[[spin]]
speed_rpm = 1000
line_v = 5.4
field_a = 1
`

// For a rotor that takes more than comes in, a weaker field is offered first, since it costs no copper:
// typed, it charges the battery.
func TestAWeakerFieldFreesThePedals(t *testing.T) {
	d := job.Parse(pedalled + weakRead)
	require.Empty(t, d.Problems())
	j := d.Job()
	o := winding.Evaluate(j)
	require.Negative(t, o.Trials[0].AmpsUsual.Value)
	m := regexp.MustCompile(`a field current of ([0-9.]+) A .* in place of [0-9.]+ A: ([0-9.]+), [0-9.]+ A net`).FindStringSubmatch(fixOf(&o, "the battery runs down"))
	require.NotNil(t, m, fixOf(&o, "the battery runs down"))
	amps, err := strconv.ParseFloat(m[1], 64)
	require.NoError(t, err)
	says, err := strconv.ParseFloat(m[2], 64)
	require.NoError(t, err)

	j.Field.Amps = quantity.Known(amps)
	weak := winding.Evaluate(j).Trials[0]
	assert.Greater(t, says, 1.0)
	assert.InEpsilon(t, says, weak.AmpsUsual.Value, 0.25, "the inductance is taken as it is at the field in use")
}

// With one reading the volts at a weaker field are unknown: the finding says what to read, before it
// suggests magnets and a stronger drive.
func TestAWeakerFieldIsReadFirst(t *testing.T) {
	o := winding.Evaluate(job.Parse(pedalled).Job())
	fix := fixOf(&o, "the battery runs down")
	assert.True(t, strings.HasPrefix(fix, "a weaker field may bring more: a second spin-up reading"), fix)
}

// A weaker field is judged by the temperature that it gives, not by the limit under the field in use:
// that is zero where the rotor's heat alone takes the winding to its class.
func TestAWeakerFieldIsJudgedByItsOwnHeat(t *testing.T) {
	j := job.Parse(pedalled + weakRead).Job()
	j.Machine.KelvinPerWatt = quantity.Known(2)
	o := winding.Evaluate(j)
	require.Zero(t, o.Trials[0].LimitAmps.Value)
	best := o.Trials[0].BestUsual
	require.True(t, best.Known(), best.Why)
	j.Field.Amps = quantity.Known(best.Value)
	weak := winding.Evaluate(j).Trials[0]
	assert.Greater(t, weak.AmpsUsual.Value, 1.0)
	assert.False(t, weak.OverLimit())
}

// fixOf returns the remedy of the finding whose text contains these words.
func fixOf(o *winding.Outcome, words string) string {
	for _, f := range o.Findings {
		if strings.Contains(f.Text, words) {
			return f.Fix
		}
	}
	return ""
}
