package winding

import (
	"regexp"
	"strconv"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A rotor that takes more than comes in at the slow speed keeps no remedy away from what overloads the
// winding at the top speed, as long as the remedy discharges the battery no faster. Invented: an old
// winding of 11 turns in a 36-slot claw pole, turned at 900, 1500 and 4000 rpm.
func TestARemedyIsNamedWhereTheBatteryIsDischargedAtTheSlowSpeed(t *testing.T) {
	j := job.Parse(`format = 1
[machine]
slots = 36
poles = 12
layers = 1
span = 3
bore_mm = 89
stack_mm = 33
air_gap_mm = 0.35
mean_turn_mm = 186
cooling = "fan"
[slot]
area_mm2 = 74
[old]
turns = 11
gauge = "1.5 mm"
[[spin]]
speed_rpm = 2000
line_v = 9.5
field_a = 1
[[spin]]
speed_rpm = 2000
line_v = 18.4
field_a = 2
[[spin]]
speed_rpm = 2000
line_v = 22.6
field_a = 3
[field]
kind = "wound"
coil_ohm = 2.6
[drive]
kind = "fixed"
slow_rpm = 900
usual_rpm = 1500
top_rpm = 4000
[battery]
cells = 6
[[trial]]
name = "A"
turns = 11
gauge = "1.5 mm"
`).Job()
	before := Evaluate(j).Trials[0]
	require.Negative(t, before.Operating[0].NetAmps)
	require.True(t, before.OverLimit())
	most := regexp.MustCompile(`Most current at ([\d.]+) A`).FindStringSubmatch(before.Calmer)
	require.NotNil(t, most, before.Calmer)
	amps, err := strconv.ParseFloat(most[1], 64)
	require.NoError(t, err)
	j.Battery.MostAmps = quantity.Known(amps)
	after := Evaluate(j).Trials[0]
	assert.False(t, after.OverLimit())
	for i, p := range after.Operating {
		assert.GreaterOrEqual(t, p.NetAmps, min(before.Operating[i].NetAmps, before.Operating[i].NetAmps/2)-1e-9)
	}
}
