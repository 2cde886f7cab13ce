package job

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A whole number for a wire is kept, and remembered as one that named no system; with its
// system it is not.
func TestBareGaugesAreRemembered(t *testing.T) {
	j := Parse("[old]\ngauge = \"17\"\n[[trial]]\ngauge = \"18 AWG\"\n[[trial]]\ngauge = 18\nalso_gauge = \"0.5 mm\"\n").Job()
	assert.Equal(t, []string{"old.gauge", "trial[1].gauge"}, j.BareGauges)
	assert.Equal(t, "18 AWG", j.GaugeAt("trial[1].gauge").String())
	assert.Equal(t, "0.5 mm", j.GaugeAt("trial[1].also_gauge").String())
	assert.True(t, j.GaugeAt("trial[2].gauge").IsZero())
	assert.True(t, j.GaugeAt("machine.bore").IsZero())
}

// Per cent is understood where a part of something is asked for, and only there.
func TestPerCentOfAPart(t *testing.T) {
	d := Parse("[drive]\nefficiency = \"93 %\"\nslip = \"~2%\"\n[machine]\nbore_mm = \"93 %\"\n")
	assert.InDelta(t, 0.93, d.Job().Drive.Efficiency.Value, 1e-12)
	assert.InDelta(t, 0.02, d.Job().Drive.Slip.Value, 1e-12)
	_, bad := d.ProblemAt("machine.bore")
	assert.True(t, bad)
	_, bad = Parse("[drive]\nefficiency = \"130 %\"\n").ProblemAt("drive.efficiency")
	assert.True(t, bad)
}

// A new file explains every reading that can be given, and takes it.
func TestReadingsCanBeGiven(t *testing.T) {
	text := Template("x")
	for _, table := range []string{"spin", "short", "amps", "coil"} {
		assert.Contains(t, text, "# [["+table+"]]")
	}
	d := Parse("[[amps]]\nspeed_rpm = 1000\ncurrent_a = \"20 ±0.5\"\nvoltage_v = 13.8\nwinding_c = 80\n[[coil]]\nturns = 5\nspan = 3\nspeed_rpm = 500\nvoltage_v = 0.4\n[[spin]]\nfrequency_hz = 120\nline_v = 9\nacross = \"star point\"\nmeter = \"peak\"\n[[short]]\nleads = \"two\"\nspeed_rpm = 900\nline_a = 30\n[old]\nbegan_current_a = 0.5\n")
	require.Empty(t, d.Problems())
	j := d.Job()
	assert.InDelta(t, 0.5, j.Amps[0].Amps.PlusMinus, 1e-12)
	assert.InDelta(t, 80, j.Amps[0].WindingC.Value, 1e-12)
	assert.InDelta(t, 0.4, j.Coils[0].Volts.Value, 1e-12)
	assert.InDelta(t, 120, j.Spins[0].Hertz.Value, 1e-12)
	assert.Equal(t, "star point peak two", j.Spins[0].Across+" "+j.Spins[0].Meter+" "+j.Shorts[0].Leads)
	assert.InDelta(t, 0.5, j.Old.BeganAmps.Value, 1e-12)
}
