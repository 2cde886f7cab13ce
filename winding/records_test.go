package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The mean turn is 185 ±5 mm: the ohms of a record with more turns than planned have the same relative
// ±, 5/185, as the trial's; the turns are counted.
func TestRecordsAreAsSureAsTheirTrial(t *testing.T) {
	j := turnOf185()
	j.Machine.MeanTurnMM.PlusMinus = 5
	j.AsWound = []job.AsWound{{Trial: "A", Wound: job.Wound{Turns: quantity.Known(20)}, LeadOhms: quantity.Known(0.1), LeadOhmsC: quantity.Known(20)}}
	o := Evaluate(j)
	trial, c := &o.Trials[0], o.Wound[0].Checks()[2]
	require.Equal(t, "lead", c.Field)
	expected := c.Proof.Expected
	assert.InEpsilon(t, 5.0/185, expected.PlusMinus/expected.Value, 0.01)
	assert.InEpsilon(t, trial.LeadOhms20.PlusMinus/trial.LeadOhms20.Value, expected.PlusMinus/expected.Value, 1e-9)
	assert.NotEqual(t, trial.LeadOhms20.Value, expected.Value)
	assert.Equal(t, wound.Low, c.Proof.Stand())
	assert.Contains(t, c.Speaks(), "turns short")
	j.AsWound[0].LeadOhms = quantity.Known(9)
	assert.Contains(t, Evaluate(j).Wound[0].Checks()[2].Speaks(), "cold joint")
	j.AsWound[0].LeadOhms = quantity.Known(expected.Value)
	assert.Empty(t, Evaluate(j).Wound[0].Checks()[2].Speaks())
	assert.False(t, o.Wound[0].Proved(), "ohms alone do not prove it")
	j.AsWound[0].LineVolts, j.AsWound[0].RPM = quantity.Known(10), quantity.Known(600)
	assert.False(t, Evaluate(j).Wound[0].Proved(), "10 V at 600 rpm are far off")
	j.AsWound[0].LineVolts = quantity.Known(Evaluate(j).Wound[0].LineVolts.Expected.Value)
	assert.True(t, Evaluate(j).Wound[0].Proved())
	j.AsWound[0].RPM = quantity.Reading{}
	assert.False(t, Evaluate(j).Wound[0].Proved(), "volts at no speed show nothing")
	began := func(rpm float64) *wound.Record {
		return &wound.Record{CutInRPM: wound.Compare(quantity.Of(rpm), quantity.Of(490))}
	}
	assert.True(t, began(500).Proved())
	assert.False(t, began(900).Proved(), "it charges, but far later than it should")
}

// Screen and folder judge alike: both use the same ± of the plan.
func TestRecordsAreJudgedAlikeInAFolder(t *testing.T) {
	j := turnOf185()
	j.Machine.MeanTurnMM.PlusMinus = 5
	for _, times := range []float64{1, 1.04, 1.07, 1.2} {
		j.AsWound = []job.AsWound{{Trial: "A", LeadOhms: quantity.Known(0.1), LeadOhmsC: quantity.Known(20), RPM: quantity.Known(600), LineVolts: quantity.Known(10)}}
		o := Evaluate(j).Wound[0]
		j.AsWound[0].LeadOhms, j.AsWound[0].LineVolts = quantity.Known(times*o.LeadOhms20.Expected.Value), quantity.Known(o.LineVolts.Expected.Value)
		whole, records := Evaluate(j).Wound[0], Prepare(j).Records()[0]
		assert.Equal(t, whole.LeadOhms20, records.LeadOhms20)
		assert.Equal(t, whole.LineVolts, records.LineVolts)
		assert.Equal(t, whole.CutInRPM, records.CutInRPM)
		assert.Equal(t, whole.RisePerWatt, records.RisePerWatt)
		assert.Equal(t, times < 1.05, records.Proved(), "%g", times)
	}
}

// Every check names an input of the record.
func TestChecksNameTheirInputs(t *testing.T) {
	o := Evaluate(job.Example().Job())
	for i, c := range o.Checks(1) {
		assert.Equal(t, (&wound.Record{}).Checks()[i].Field, c.Field)
		assert.Equal(t, wound.NotRead, c.Proof.Stand())
	}
	assert.Equal(t, o.Trials[1].LeadOhms20, o.Checks(1)[2].Proof.Expected)
	for _, c := range (&wound.Record{}).Checks() {
		_, ok := job.InputAt("wound." + c.Field)
		assert.True(t, ok, c.Field)
		assert.NotEmpty(t, c.Low)
		assert.NotEmpty(t, c.High)
	}
}
