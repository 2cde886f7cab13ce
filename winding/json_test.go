package winding

import (
	"encoding/json"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// read is a value as a reader of its JSON has it.
func read(t *testing.T, v any) map[string]any {
	t.Helper()
	b, err := json.Marshal(v)
	require.NoError(t, err)
	var m map[string]any
	require.NoError(t, json.Unmarshal(b, &m))
	return m
}

// A winding whose temperature cannot be followed, or that goes on getting hotter, has none
// in JSON; one that can has it, and the rest of the point stands beside it.
func TestTemperatureNotKnownIsNull(t *testing.T) {
	p := read(t, RunPoint{RPM: 600, WindingC: 66, followed: true})
	assert.Equal(t, 66.0, p["winding_c"])
	assert.Equal(t, 600.0, p["rpm"])
	p = read(t, RunPoint{RPM: 600, WindingC: 20})
	assert.Nil(t, p["winding_c"])
	assert.Contains(t, p, "winding_c")
	assert.Nil(t, read(t, RunPoint{WindingC: hottest, TooHot: true, followed: true})["winding_c"])
	for _, p := range Evaluate(job.Example().Job()).Trials[0].AtSpeeds {
		assert.True(t, p.followed, "the example's temperature is worked out")
	}
}

func TestFieldThatDoesNotHoldIsNull(t *testing.T) {
	assert.Equal(t, 1.5, read(t, FieldPoint{HoldAmps: 1.5, Enough: true})["hold_field_a"])
	p := read(t, FieldPoint{HoldAmps: 4, NetWatts: -3})
	assert.Nil(t, p["hold_field_a"])
	assert.Equal(t, -3.0, p["net_w"])
}

// The unit beside a row's values is the one they are in: fractions have none.
func TestRowsNameTheUnitOfTheirValues(t *testing.T) {
	o := Evaluate(job.Example().Job())
	units := map[string]string{}
	for _, r := range o.Comparison {
		units[r.ID] = r.Unit
	}
	assert.Equal(t, "", units["efficiency_usual"])
	assert.Equal(t, "rpm", units["cut_in_rpm"])
	assert.Equal(t, "rpm", o.Trials[0].XUnit)
	wind := quantity.WindSpeed[0].Name
	j := job.Example().Job()
	j.Drive.Kind, j.Drive.RotorM = "wind", quantity.Known(2)
	assert.Equal(t, wind, Evaluate(j).Trials[0].XUnit)
}
