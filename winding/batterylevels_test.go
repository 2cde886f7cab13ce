package winding_test

import (
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// Battery volts in an impossible order are reported at their field, just beyond the boundary and not
// before: twelve lead cells rest at 25.2 V here and are held at 28.8 V. Common practice, no source.
func TestBatteryVoltsThatCannotStandInTheirOrder(t *testing.T) {
	of := func(charging, absorption float64) winding.Outcome {
		j := plain()
		j.Battery = job.BatterySpec{Cells: quantity.Known(12), RestVolts: quantity.Known(25.2), AbsorptionVolts: quantity.Known(absorption)}
		if charging > 0 {
			j.Battery.ChargingVolts = quantity.Known(charging)
		}
		return winding.Evaluate(j)
	}
	for _, c := range []struct {
		charging, absorption float64
		path, words          string
		as                   winding.Severity
	}{
		{25.2, 28.8, "", "", 0}, {28.8, 28.8, "", "", 0}, {0, 28.8, "", "", 0},
		{20, 28.8, "battery.charging", "20 V while it takes charge are under the 25.2 V", winding.Doubt},
		{25.1, 28.8, "battery.charging", "are under the 25.2 V", winding.Doubt},
		{28.9, 28.8, "battery.charging", "over its absorption voltage of 28.8 V", winding.Doubt},
		{0, 25.2, "battery.absorption", "is not over the 25.2 V", winding.Broken},
		{0, 25.3, "", "", 0},
	} {
		o := of(c.charging, c.absorption)
		for _, path := range []string{"battery.charging", "battery.absorption"} {
			f := finding(&o, path)
			if path != c.path {
				assert.Nil(t, f, "%+v", c)
				continue
			}
			if assert.NotNil(t, f, "%+v", c) {
				assert.Contains(t, f.Text, c.words)
				assert.Equal(t, c.as, f.Severity)
			}
		}
	}
	j := plain() // as it is by its chemistry alone
	j.Battery = job.BatterySpec{Cells: quantity.Known(12), ChargingVolts: quantity.Known(20)}
	o := winding.Evaluate(j)
	assert.True(t, says(&o, "battery.charging", "under the"))
}
