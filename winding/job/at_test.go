package job

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What was given is found by its path, in every table; what was left out, has a default or is in no
// table is not.
func TestGivenAt(t *testing.T) {
	j := Parse("[machine]\nbore_mm = 90\nkind = \"wave\"\n[drive]\nkind = \"engine\"\n[[drive_point]]\nspeed_rpm = 60\n[[spin]]\nspeed_rpm = 900\n[[short]]\nline_a = 3\n" +
		"[[amps]]\nvoltage_v = 14\n[[coil]]\nturns = 5\n[[trial]]\n[[trial]]\ngauge = \"18 AWG\"\nmetal = \"aluminium\"\ncoil_turns = [3, 4]\n[[wound]]\ntrial = \"A\"\n").Job()
	for _, path := range []string{"machine.bore", "drive.kind", "drive_point[0].speed", "spin[0].speed", "short[0].line", "amps[0].voltage", "coil[0].turns", "trial[1].gauge", "trial[1].coil_turns", "wound[0].trial"} {
		assert.True(t, j.GivenAt(path), path)
	}
	for _, path := range []string{"machine.stack", "old.turns", "drive_point[0].power", "drive_point[1].speed", "spin[1].speed", "short[0].speed", "amps[1].voltage", "coil[1].turns", "trial[0].gauge", "trial[2].gauge", "trial[1].metal", "wound[1].trial", "nothing", "", "trial[-1].gauge"} {
		assert.False(t, j.GivenAt(path), path)
	}
	r, ok := j.ReadingAt("machine.bore")
	assert.True(t, ok)
	assert.Equal(t, 90.0, r.Value)
	_, ok = j.ReadingAt("spin[3].speed")
	assert.False(t, ok, "no entry: no panic")
	_, ok = j.ReadingAt("trial[1].gauge")
	assert.False(t, ok)
}
