package job

import (
	"os"
	"testing"

	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A new job for a machine of the same kind keeps the iron, the drive and the trials; nothing that was
// read on the other piece is left in it.
func TestFromAnotherJob(t *testing.T) {
	text, err := os.ReadFile("../../testdata/shelf/proved.toml")
	require.NoError(t, err)
	read := Example().Add("amps", -1).Set("amps[0].current", "20", quantity.Choice{}).Add("amps", 0).Add("coil", -1).Set("coil[0].turns", "5", quantity.Choice{})
	require.Len(t, read.Job().Amps, 2)
	for name, d := range map[string]Document{"proved": Parse(string(text)), "example": Example(), "amps and a trial coil": read} {
		old, n := d.Job(), d.From("Fifth")
		require.Empty(t, n.Refused(), name)
		require.Empty(t, n.Problems(), name)
		j := n.Job()
		assert.Equal(t, "Fifth", j.Name)
		assert.Empty(t, j.Notes)
		assert.Equal(t, old.Slot, j.Slot, name)
		assert.Equal(t, old.Trials, j.Trials, name)
		assert.Equal(t, old.Drive, j.Drive, name)
		assert.Equal(t, old.Field, j.Field, name)
		assert.Equal(t, old.Battery, j.Battery, name)
		assert.Equal(t, OldWinding{RatedAmps: old.Old.RatedAmps, RatedVolts: old.Old.RatedVolts, RatedRPM: old.Old.RatedRPM}, j.Old, "the plate only")
		assert.Empty(t, j.Spins, name)
		assert.Empty(t, j.Shorts, name)
		assert.Empty(t, j.Amps, name)
		assert.Empty(t, j.Coils, name)
		assert.Empty(t, j.AsWound, name)
		assert.Equal(t, quantity.Guessed, j.Machine.MeanTurnMM.Origin, name)
		old.Machine.MeanTurnMM, old.Machine.IronWatts, old.Machine.IronRPM = j.Machine.MeanTurnMM, j.Machine.IronWatts, j.Machine.IronRPM
		assert.Equal(t, old.Machine, j.Machine, name)
		assert.Equal(t, d.Text()[:40], n.Text()[:40], "the comments stay")
	}
}

// Records are read, edited and taken out like any other table.
func TestRecordsAreATable(t *testing.T) {
	d := Parse("[[trial]]\nname = \"A\"\n").Add("wound", -1).Set("wound[0].wire_length", "204 ft", quantity.Choice{}).Set("wound[0].filled", "Full", quantity.Choice{}).
		Set("wound[0].turns", "17", quantity.Choice{})
	require.Empty(t, d.Problems(), d.Text())
	r := d.Job().AsWound
	require.Len(t, r, 1)
	assert.InDelta(t, 204*0.3048, r[0].Metres.Value, 1e-9)
	assert.Equal(t, "full", r[0].Filled)
	assert.Equal(t, 17, r[0].Turns.Whole())
	assert.Empty(t, d.Remove("wound", 0).Job().AsWound)
	assert.NotEmpty(t, Parse("[[wound]]\nfilled = \"brimming\"\n").Problems())
}
