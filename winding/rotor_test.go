package winding

import (
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/published"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// testdata/field/knee.csv, computed outside the program: at a field current at which the old winding
// was read, its volts are those read, however sharply its iron saturates; between readings they are as
// accurate as the table says. There are no findings: the readings are right.
func TestVoltsAtAFieldCurrentThatWasRead(t *testing.T) {
	j := job.Example().Job()
	j.Field = job.FieldSpec{Kind: "wound", Ohms: quantity.Known(2.2)}
	j.Shorts, j.Spins, j.Old.RatedAmps, j.Old.LeadOhms = nil, nil, quantity.Reading{}, quantity.Reading{}
	rows := published.Rows(t, "field/knee.csv")
	for _, row := range rows {
		if row.Number(t, "read") == 1 {
			j.Spins = append(j.Spins, job.SpinReading{RPM: quantity.Known(2000), LineVolts: quantity.Known(row.Number(t, "volts")), FieldAmps: quantity.Known(row.Number(t, "field_a"))})
		}
	}
	for _, row := range rows {
		j.Field.Amps = quantity.Known(row.Number(t, "field_a"))
		o := Evaluate(j)
		require.NotNil(t, o.Old)
		assert.InEpsilon(t, row.Number(t, "volts"), 2000*o.Old.LinePerRPM.Value, max(1e-9, row.Number(t, "off")), "%g A", j.Field.Amps.Value)
		for _, f := range o.Findings {
			assert.NotContains(t, f.Text, "spin-up readings")
		}
	}
}
