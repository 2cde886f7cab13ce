package winding

import (
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/published"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// testdata/field/knee.csv, worked outside the program: where the rotor takes a current that the old
// winding was read at, that winding's volts are those that were read, however suddenly its iron fills
// up; between they are as near as the table says. Nothing is called out: the readings are right.
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
