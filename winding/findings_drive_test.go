package winding_test

import (
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
)

// Speeds of the drive in the wrong order, a free speed meant as a working one and a power that
// is not used are called out, each at its field; in their usual order nothing is.
func TestWhatWasSaidOfTheDriveIsDoubted(t *testing.T) {
	const points = "[[drive_point]]\nspeed_rpm = 60\npower_w = 95\n[[drive_point]]\nspeed_rpm = 80\npower_w = 100\n"
	for _, c := range []struct{ drive, path, says string }{
		{"slow_rpm = 60\nusual_rpm = 70\ntop_rpm = 130\npower_w = 100\n", "", ""},
		{"slow_rpm = 90\nusual_rpm = 70\ntop_rpm = 130\npower_w = 100\n", "drive.slow", "slow speed, 90 rpm, is above its usual"},
		{"slow_rpm = 60\nusual_rpm = 120\ntop_rpm = 110\npower_w = 100\n", "drive.top", "usual speed, 120 rpm, is above its top"},
		{"slow_rpm = 60\nusual_rpm = 70\ntop_rpm = 80\npower_w = 100\n", "drive.top", "running free"},
		{"slow_rpm = 60\nusual_rpm = 70\ntop_rpm = 85\n" + points, "", ""},
		{"slow_rpm = 60\nusual_rpm = 70\ntop_rpm = 110\npower_w = 1000\n" + points, "drive.power", "1000 W is not used"},
	} {
		j := job.Parse("format = 1\n[drive]\nkind = \"pedals\"\n" + c.drive).Job()
		var told []string
		for _, f := range winding.Evaluate(j).Findings {
			if strings.HasPrefix(f.Path, "drive.") {
				told = append(told, f.Path+": "+f.Text)
			}
		}
		if c.path == "" {
			assert.Empty(t, told, c.drive)
			continue
		}
		if assert.Len(t, told, 1, c.drive) {
			assert.Contains(t, told[0], c.path+": ")
			assert.Contains(t, told[0], c.says)
		}
	}
}

// A trial that charges but brings less than is wanted says how much less.
func TestWhatIsWantedAndNotBroughtIsTold(t *testing.T) {
	told := func(amps string) (list []string) {
		j := load(t, "water.toml")
		doc := job.Parse("format = 1\n[target]\ncurrent_a = " + amps + "\n")
		j.Target.Amps = doc.Job().Target.Amps
		for _, f := range winding.Evaluate(j).Findings {
			if strings.Contains(f.Text, "wanted") {
				list = append(list, f.Text)
			}
		}
		return list
	}
	assert.NotEmpty(t, told("90"))
	assert.Contains(t, told("90")[0], "of the 90 A wanted (full water)")
	assert.Empty(t, told("0.1"))
}

// A speed wanted of the alternator that is more than twice off what the drive's own makes of it is
// doubted: the drive's typed in its place. One that is near is not, nor one without a drive.
func TestASpeedWantedFarFromTheDrivesIsDoubted(t *testing.T) {
	const engine = "format = 1\n[drive]\nkind = \"engine\"\nratio = 1.5\nslow_rpm = 1500\nusual_rpm = 2000\ntop_rpm = 3000\npower_w = 1500\n"
	for target, says := range map[string]string{
		"slow_rpm = 15":    "target.slow: the slow speed wanted, 15 alternator rpm, is far from the 2250 that the drive's 1500 rpm make",
		"slow_rpm = 1500":  "",
		"slow_rpm = 1130":  "",
		"slow_rpm = 1120":  "target.slow: the slow speed wanted, 1120 alternator rpm",
		"slow_rpm = 2000":  "",
		"top_rpm = 45000":  "target.top: the top speed wanted, 45000 alternator rpm, is far from the 4500",
		"usual_rpm = 6000": "", // asks which pulley would do it
	} {
		var told []string
		for _, f := range winding.Evaluate(job.Parse(engine + "[target]\n" + target + "\n").Job()).Findings {
			if strings.Contains(f.Text, "speed wanted") {
				told = append(told, f.Path+": "+f.Text)
			}
		}
		if says == "" {
			assert.Empty(t, told, target)
		} else if assert.Len(t, told, 1, target) {
			assert.Contains(t, told[0], says)
		}
	}
	none := job.Parse("format = 1\n[target]\nslow_rpm = 15\ntop_rpm = 3000\n").Job()
	for _, f := range winding.Evaluate(none).Findings {
		assert.NotContains(t, f.Text, "speed wanted")
	}
}
