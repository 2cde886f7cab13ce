package wound_test

import (
	"math"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A star of 2 Ω and 0.1 V rms a rpm between leads, read at 60 °C. Copper has (234.5 + 60)/(234.5 + 20) =
// 1.15717 times its ohms of 20 °C (IEC 60028). In delta its ohms are a third, its volts 1/√3.
func TestARecordNeedsNoMachine(t *testing.T) {
	plan, err := layout.New(layout.Spec{Slots: 36, Poles: 12, Phases: 3, Span: 3, Layers: 1})
	require.NoError(t, err)
	w := wound.Winding{Trial: job.Trial{Name: "A"}, Phases: 3, Sets: 1, Leads: []string{"U", "V", "W"}, Layout: plan, Circuits: 1, SeriesTurns: 60}
	record := func(ohms, volts float64) wound.Record {
		read := job.AsWound{LeadOhms: quantity.Known(1.15717 * ohms), LeadOhmsC: quantity.Known(60), RPM: quantity.Known(500), LineVolts: quantity.Known(volts)}
		r := w.Record(&read)
		r.ReadOhms(&read, quantity.Of(2))
		r.ReadVolts(&read, quantity.Of(0.1), 0)
		r.Explain()
		return r
	}
	sound := record(2, 50)
	assert.InDelta(t, 2, sound.LeadOhms20.Read.Value, 1e-4)
	assert.InDelta(t, 50, sound.LineVolts.Expected.Value, 1e-9)
	assert.Empty(t, sound.Likely)
	assert.True(t, sound.Proved())
	other := record(2.0/3, 50/math.Sqrt(3))
	assert.Equal(t, wound.Low, other.LeadOhms20.Stand())
	assert.Equal(t, "67 % low", other.LeadOhms20.OffInWords())
	require.NotEmpty(t, other.Likely)
	assert.Equal(t, "joined in delta, not star", other.Likely[0].Fault)
	assert.False(t, other.Proved())
}

// What a plan is sure of a reading is held to: 5 of 100 Ω are 0.1 of 2; a conversion of a squared 0.0075
// beside the 0.05 of the plan makes 0.1 of the volts.
func TestAsSureAsThePlan(t *testing.T) {
	read := job.AsWound{LeadOhms: quantity.Known(2), RPM: quantity.Known(500), LineVolts: quantity.Known(50)}
	r := wound.Winding{Phases: 3, Sets: 1}.Record(&read)
	r.ReadOhms(&read, quantity.Of(2))
	r.ReadVolts(&read, quantity.Of(0.1), 0.0075)
	plan := quantity.Of(100)
	plan.PlusMinus = 5
	r.AsSureAs(wound.Predicted{LeadOhms20: plan, LineVolts: plan})
	assert.InDelta(t, 0.1, r.LeadOhms20.Expected.PlusMinus, 1e-12)
	assert.InDelta(t, 5, r.LineVolts.Expected.PlusMinus, 1e-9)
	assert.Zero(t, r.CutInRPM.Expected.PlusMinus)
}

// A record without a plan is compared with nothing, and says why.
func TestARecordWithoutAPlan(t *testing.T) {
	r := wound.Unplanned(&job.AsWound{Trial: "Z", LeadOhms: quantity.Known(2)}, true, "the job has no such trial")
	assert.Equal(t, "Z", r.Trial)
	for _, c := range r.Checks() {
		assert.Equal(t, wound.NotRead, c.Proof.Stand(), c.Field)
		assert.Equal(t, "the job has no such trial", c.Proof.Expected.Why)
	}
	r.Explain()
	assert.Empty(t, r.Likely)
}
