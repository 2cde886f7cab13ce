package wound_test

import (
	"fmt"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// In a job in inches, ohms read in a room of 68 °F, typed without the unit, are 16 % low at 68 °C:
// (234.5 + 20)/(234.5 + 68) of the plan. That is questioned, at the temperature and beside the ohms,
// and no fault is named; not in a job in millimetres, not at 20, not once °F is given, nor where the
// winding really is that warm and the ohms confirm it.
func TestARoomInFahrenheitIsAskedBack(t *testing.T) {
	inches := job.Example().Set("machine.mean_turn", "185", quantity.Choice{})
	for _, field := range []string{"machine.bore", "machine.stack", "machine.mean_turn", "machine.air_gap", "machine.end_run", "slot.mouth", "slot.mouth_height"} {
		inches = inches.Set(field, fmt.Sprintf("%.5f in", map[string]float64{"machine.bore": 89, "machine.stack": 33, "machine.mean_turn": 185, "machine.air_gap": 0.4, "machine.end_run": 9, "slot.mouth": 2.6, "slot.mouth_height": 1.5}[field]/25.4), quantity.Choice{})
	}
	require.Empty(t, inches.Problems())
	require.True(t, inches.Units(quantity.Choice{}).Inch)
	plan := winding.Evaluate(inches.Job()).Trials[0]
	at20, at68 := plan.LeadOhms20.Value, plan.LeadOhms20.Value*(234.5+68)/(234.5+20)
	for _, c := range []struct {
		name, celsius string
		ohms          float64
		d             job.Document
		asked         bool
		would         string
	}{
		{"a room in °F", "68", at20, inches, true, "as planned"},
		{"a room in °F, and a fault", "68", at20 * 0.7, inches, true, "30 % low"},
		{"millimetres", "68", at20, job.Example().Set("machine.mean_turn", "185", quantity.Choice{}), false, ""},
		{"°F is said", "68 °F", at20, inches, false, ""},
		{"a room in °C", "20", at20, inches, false, ""},
		{"warm indeed", "68", at68, inches, false, ""},
		{"a winding at work", "120", at20, inches, false, ""},
	} {
		d := c.d.Add("wound", -1).Set("wound[0].trial", plan.Name, quantity.Choice{}).Set("wound[0].lead", fmt.Sprintf("%.5f", c.ohms), quantity.Choice{}).Set("wound[0].lead_at", c.celsius, quantity.Choice{})
		require.Empty(t, d.Problems(), c.name)
		o := winding.Evaluate(d.Job())
		said, lead := saidAt(&o, "wound[0].lead_at"), checkOf(t, &o.Wound[0], "lead").Speaks()
		if !c.asked {
			assert.Empty(t, said, c.name)
			assert.NotContains(t, lead, "at rest, or", c.name)
			continue
		}
		assert.Contains(t, said, "68 °C at rest, or 68 °F? That would be 20 °C, and its ohms "+c.would, c.name)
		assert.Contains(t, said, "write °F or °C behind it", c.name)
		assert.Contains(t, lead, "68 °C at rest, or 68 °F?", c.name)
		assert.NotContains(t, lead, "turns short", c.name)
		assert.Empty(t, saidAt(&o, "wound[0].lead"), c.name)
		assert.Empty(t, o.Wound[0].Likely, c.name)
	}
	old := inches.Set("old.lead_at", "68", quantity.Choice{})
	o := winding.Evaluate(old.Job())
	assert.Contains(t, saidAt(&o, "old.lead_at"), "68 °C at rest, or 68 °F? That would be 20 °C")
}
