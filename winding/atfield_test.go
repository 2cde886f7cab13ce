package winding

import (
	"fmt"
	"testing"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// woundRotor is the example with a wound rotor that takes 3 A, its old winding spun up at the given
// field currents with volts by the law I/(2 + I): 2 A saturates the iron by half.
func woundRotor(at ...float64) job.Job {
	j := job.Example().Job()
	j.Field = job.FieldSpec{Kind: "wound", Ohms: quantity.Known(3), Amps: quantity.Known(3)}
	j.Spins = nil
	for _, amps := range at {
		j.Spins = append(j.Spins, job.SpinReading{RPM: quantity.Known(1000), LineVolts: quantity.Known(30 * amps / (2 + amps)), FieldAmps: quantity.Known(amps)})
	}
	return j
}

// recordAt is the record of its first trial with volts read at 1000 rpm and a field current; 0 for
// one that was not said.
func recordAt(j job.Job, amps float64) wound.Record {
	r := job.AsWound{Trial: j.Trials[0].Name, LineVolts: quantity.Known(9), RPM: quantity.Known(1000)}
	if amps > 0 {
		r.FieldAmps = quantity.Known(amps)
	}
	j.AsWound = []job.AsWound{r}
	return Evaluate(j).Wound[0]
}

// By hand: read at 1 and 4 A the curve is I/(2 + I) again, 0.6 at the 3 A planned and 0.5 at
// 2 A: 5/6 of the volts planned are to be read there, and all of them where no current is said.
func TestVoltsAreHeldAtTheFieldTheyWereReadAt(t *testing.T) {
	j := woundRotor(1, 4)
	plan := Evaluate(j).Trials[0].LinePerRPM.Times(1000)
	require.True(t, plan.Known())
	same := recordAt(j, 0)
	assert.InEpsilon(t, plan.Value, same.LineVolts.Expected.Value, 1e-9)
	assert.Equal(t, 3.0, same.FieldAmps.Value, "what it is planned to have")
	assert.InEpsilon(t, plan.Value, recordAt(j, 3).LineVolts.Expected.Value, 1e-9)
	at := recordAt(j, 2)
	assert.Equal(t, 2.0, at.FieldAmps.Value)
	assert.InEpsilon(t, plan.Value*5/6, at.LineVolts.Expected.Value, 1e-6)
	assert.InEpsilon(t, plan.PlusMinus/plan.Value, at.LineVolts.Expected.PlusMinus/at.LineVolts.Expected.Value, 1e-6, "as sure as the plan, on a curve that was read")
	assert.False(t, at.LineVolts.Expected.Origin.Weak())
	assert.True(t, recordAt(j, 6).LineVolts.Expected.Origin.Weak(), "beyond the readings it is a guess")
}

// From one reading, at 1.5 A, half-saturated iron has 2x/(1 + x) of its flux: 4/3 at the 3 A planned, 1
// at the 1.5 A that was read, with no uncertainty of the conversion there and its own at 2 A.
func TestVoltsCarriedFromOneReading(t *testing.T) {
	j := woundRotor(1.5)
	plan := Evaluate(j).Trials[0].LinePerRPM.Times(1000)
	read, near := recordAt(j, 1.5).LineVolts.Expected, recordAt(j, 2).LineVolts.Expected
	assert.InEpsilon(t, plan.Value*3/4, read.Value, 1e-9)
	assert.InEpsilon(t, plan.Value*(8.0/7)/(4.0/3), near.Value, 1e-9)
	part := func(f quantity.Figure) float64 { return f.PlusMinus / f.Value }
	own := sq(part(plan)) - sq(field.AssumedDoubt(3, 1.5))
	require.Greater(t, own, 0.0)
	assert.InEpsilon(t, own, sq(part(read)), 1e-6)
	assert.InEpsilon(t, own+sq(field.AssumedDoubt(2, 1.5)), sq(part(near)), 1e-6)
}

// Magnets have no field current, whatever is typed; without one that the plan is for there is nothing
// to convert from, and it says so.
func TestFieldOfARecordWithoutAPlan(t *testing.T) {
	j := woundRotor()
	j.Field = job.FieldSpec{Kind: "magnets"}
	j.Spins = []job.SpinReading{{RPM: quantity.Known(1000), LineVolts: quantity.Known(20)}}
	require.True(t, recordAt(j, 0).LineVolts.Expected.Known())
	assert.Equal(t, recordAt(j, 0).LineVolts, recordAt(j, 2).LineVolts)
	assert.False(t, recordAt(j, 2).FieldAmps.Known())
	j = woundRotor()
	j.Spins = []job.SpinReading{{RPM: quantity.Known(1000), LineVolts: quantity.Known(20)}}
	r := recordAt(j, 2)
	assert.Contains(t, r.LineVolts.Expected.Why, "field current that the old winding's volts were read at")
	assert.True(t, recordAt(j, 0).LineVolts.Expected.Known())
}

// What is called out of volts that are off names the current they go by.
func TestVoltsThatAreOffNameTheField(t *testing.T) {
	j := woundRotor(1, 4)
	j.AsWound = []job.AsWound{{Trial: j.Trials[0].Name, LineVolts: quantity.Known(1), RPM: quantity.Known(1000), FieldAmps: quantity.Known(2)}}
	said := ""
	for _, f := range Evaluate(j).Findings {
		if f.Path == "wound[0].line" {
			said = f.Text
		}
	}
	assert.Contains(t, said, "at 1000 rpm and 2 A of field", fmt.Sprint(said))
}
