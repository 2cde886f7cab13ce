package winding

import (
	"testing"

	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Slow and top speeds equal to the usual one are shown once, as the usual one; each keeps its figures.
// Two that differ are both shown.
func TestOneSpeedIsShownOnce(t *testing.T) {
	shown := func(slowRPM, usualRPM, topRPM float64) (o Outcome, ids map[string]bool) {
		j := platedJob(t)
		j.Drive.SlowRPM, j.Drive.UsualRPM, j.Drive.TopRPM = quantity.Known(slowRPM), quantity.Known(usualRPM), quantity.Known(topRPM)
		o, ids = Evaluate(j), map[string]bool{}
		for _, r := range o.Comparison {
			ids[r.ID] = true
		}
		return o, ids
	}
	o, ids := shown(1500, 1500, 3000)
	assert.Equal(t, "usual", o.Machine.Conditions[slow].Same)
	assert.Equal(t, "Its slow speed is its usual one, engine 1500 rpm.", o.Machine.Conditions[slow].SameAs())
	assert.False(t, ids["amps_dc_slow"])
	assert.True(t, ids["amps_dc_usual"] && ids["amps_dc_top"])
	a := &o.Trials[0]
	require.Len(t, a.Operating, 3)
	assert.Equal(t, a.AmpsUsual.Value, a.AmpsSlow.Value)
	assert.Equal(t, a.BestUsual, a.BestSlow)
	assert.Equal(t, conditionNames[:], []string{a.Operating[0].Condition, a.Operating[1].Condition, a.Operating[2].Condition})
	o, ids = shown(1500, 2000, 2000)
	assert.Empty(t, o.Machine.Conditions[slow].Same)
	assert.True(t, ids["amps_dc_slow"] && ids["amps_dc_usual"])
	assert.False(t, ids["amps_dc_top"])
	o, ids = shown(1500, 2000, 3000)
	assert.True(t, ids["amps_dc_slow"] && ids["amps_dc_usual"] && ids["amps_dc_top"])
	assert.Empty(t, o.Machine.Conditions[top].Same)
}

// One figure relates the battery's power to the drive's watts, another to the shaft's: they differ by
// the belt, and have distinct names.
func TestBothEfficienciesSayWhatTheyInclude(t *testing.T) {
	a := &Evaluate(platedJob(t)).Trials[0]
	p := a.in(usual)
	assert.InEpsilon(t, a.Efficiency.Value, 0.95*p.Efficiency, 1e-9)
	drive, shaft := OutputOf("efficiency_usual"), PointOutputOf("efficiency")
	assert.NotEqual(t, drive.Label, shaft.Label)
	assert.Contains(t, drive.Meaning, "belt, chain or gears and all")
	assert.Contains(t, shaft.Meaning, "without belt")
}
