package winding_test

import (
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The law shown is the law used: most at the usual speed, nothing at the free one, and the power
// available to each trial where it runs lies on it.
func TestTheLawShownIsTheLawMet(t *testing.T) {
	d := job.Example()
	j := d.Job()
	law, ok := winding.DriveLawOf(&j)
	require.True(t, ok)
	assert.True(t, law.Assumed)
	assert.Contains(t, law.Words, "assumed: it gives most, 320 W, at 60 rpm")
	assert.Contains(t, law.Words, "none at 85 rpm, running free")
	assert.Zero(t, law.Points[0].Watts)
	assert.InDelta(t, 0, law.Points[len(law.Points)-1].Watts, 1e-9)
	most := 0.0
	for _, p := range law.Points {
		most = max(most, p.Watts)
	}
	assert.InDelta(t, 320, most, 0.3, "60 rpm need not be one of the steps")
	o := winding.Evaluate(j)
	met := 0
	for _, tr := range o.Trials {
		for _, at := range tr.Operating {
			for i := 1; i < len(law.Points); i++ {
				if a, b := law.Points[i-1], law.Points[i]; at.GivesWatts > 0 && a.RPM <= at.DriveRPM && at.DriveRPM < b.RPM {
					met++
					assert.InDelta(t, a.Watts+(b.Watts-a.Watts)*(at.DriveRPM-a.RPM)/(b.RPM-a.RPM), at.GivesWatts, 1)
				}
			}
		}
	}
	assert.Greater(t, met, 3)
}

// Typed values are not called assumed; a drive without a power of its own has no law.
func TestWhoseLawItIs(t *testing.T) {
	of := func(text string) (winding.DriveLaw, bool) {
		d := job.Parse("format = 1\n" + text)
		j := d.Job()
		return winding.DriveLawOf(&j)
	}
	law, ok := of("[drive]\nkind = \"water\"\n[[drive_point]]\nspeed_rpm = 10\npower_w = 100\n[[drive_point]]\nspeed_rpm = 60\npower_w = 300\n")
	require.True(t, ok)
	assert.False(t, law.Assumed)
	assert.NotContains(t, law.Words, "assumed")
	assert.Contains(t, law.Words, "nothing at 72 rpm, 1.2 times that")
	law, _ = of("[drive]\nkind = \"water\"\ntop_rpm = 100\n[[drive_point]]\nspeed_rpm = 10\npower_w = 100\n[[drive_point]]\nspeed_rpm = 60\npower_w = 300\n")
	assert.Contains(t, law.Words, "nothing at the top, 100 rpm")
	assert.InDelta(t, 150, givenAt(law, 80), 1e-9, "half way from 300 W at 60 rpm to nothing at 100")
	law, ok = of("[drive]\nkind = \"pedals\"\nusual_rpm = 60\npower_w = 90\n")
	require.True(t, ok)
	assert.Contains(t, law.Words, "none at twice that speed, 120 rpm")
	assert.Contains(t, law.Words, "as legs do")
	law, ok = of("[drive]\nkind = \"engine\"\nusual_rpm = 1500\ntop_rpm = 3000\npower_w = 900\n")
	require.True(t, ok)
	assert.Contains(t, law.Words, "until the governor closes at 3000 rpm")
	for _, none := range []string{"", "[drive]\nkind = \"wind\"\n", "[drive]\nkind = \"fixed\"\nusual_rpm = 900\n", "[drive]\nkind = \"water\"\n"} {
		_, ok := of(none)
		assert.False(t, ok, none)
	}
}

// givenAt is the power of a law at a speed, linearly interpolated.
func givenAt(law winding.DriveLaw, rpm float64) float64 {
	for i := 1; i < len(law.Points); i++ {
		if a, b := law.Points[i-1], law.Points[i]; b.RPM >= rpm {
			return a.Watts + (b.Watts-a.Watts)*(rpm-a.RPM)/(b.RPM-a.RPM)
		}
	}
	return 0
}
