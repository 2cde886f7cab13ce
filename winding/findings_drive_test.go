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
