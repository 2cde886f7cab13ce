package winding

import (
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A reading is off only where neither its own ± nor that of the computed value explains it; with no ±
// known a tenth is assumed, and never less than a twentieth.
func TestStand(t *testing.T) {
	read := func(v, off float64) Proof {
		f, e := quantity.Of(v), quantity.Of(100)
		f.PlusMinus, e.PlusMinus = off, 8
		return proof(f, e)
	}
	for _, c := range []struct {
		read, off float64
		want      Stand
	}{{100, 0, Good}, {92, 0, Good}, {108, 0, Good}, {91.9, 0, Low}, {108.1, 0, High}, {91, 1.1, Good}, {91, 0.9, Low}, {110, 2.1, Good}, {110, 1.9, High}} {
		assert.Equal(t, c.want, read(c.read, c.off).Stand(), "%+v", c)
	}
	no := quantity.Missing("no")
	assert.Equal(t, NotRead, proof(no, quantity.Of(1)).Stand())
	assert.Equal(t, NotRead, proof(no, no).Stand())
	assert.Equal(t, NotHeld, proof(quantity.Of(1), no).Stand())
	assert.Equal(t, []Stand{Good, High}, []Stand{proof(quantity.Of(109), quantity.Of(100)).Stand(), proof(quantity.Of(111), quantity.Of(100)).Stand()})
	guess := quantity.Of(100, quantity.Guessed)
	assert.Equal(t, NotHeld, proof(quantity.Of(140), guess).Stand(), "a guess of which no ± is known is no measure")
	guess.PlusMinus = 20
	assert.Equal(t, High, proof(quantity.Of(140), guess).Stand())
	low, high, ok := read(1, 0).Limits()
	assert.Equal(t, []any{92.0, 108.0, true}, []any{low, high, ok})
	_, _, ok = proof(no, no).Limits()
	assert.False(t, ok)
}

// Screen and card apply the same limits to a reading: a figure accurate to 0.7 % is still read with a
// meter at a speed, and has the card's twentieth each way.
func TestScreenAndCardHoldToTheSameLimits(t *testing.T) {
	for _, off := range []float64{0, 0.7, 4, 12} {
		e := quantity.Of(100)
		e.PlusMinus = off
		low, high, _, ok := Between(e)
		require.True(t, ok)
		l, h, ok := proof(quantity.Of(100), e).Limits()
		assert.Equal(t, []any{low, high, true}, []any{l, h, ok}, "±%g", off)
		assert.GreaterOrEqual(t, h-100, 100*ProofLeast-1e-9)
	}
}

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
	assert.Equal(t, Low, c.Proof.Stand())
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
	began := func(rpm float64) *WoundOutcome {
		return &WoundOutcome{CutInRPM: proof(quantity.Of(rpm), quantity.Of(490))}
	}
	assert.True(t, began(500).Proved())
	assert.False(t, began(900).Proved(), "it charges, but far later than it should")
}

// Every check names an input of the record.
func TestChecksNameTheirInputs(t *testing.T) {
	o := Evaluate(job.Example().Job())
	for i, c := range o.Checks(1) {
		assert.Equal(t, (&WoundOutcome{}).Checks()[i].Field, c.Field)
		assert.Equal(t, NotRead, c.Proof.Stand())
	}
	assert.Equal(t, o.Trials[1].LeadOhms20, o.Checks(1)[2].Proof.Expected)
	for _, c := range (&WoundOutcome{}).Checks() {
		_, ok := job.InputAt("wound." + c.Field)
		assert.True(t, ok, c.Field)
		assert.NotEmpty(t, c.Low)
		assert.NotEmpty(t, c.High)
	}
}
