package winding_test

import (
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// by is a drive of 25 rpm at its usual speed, behind something.
func by(t *testing.T, kind, between string) job.Job {
	t.Helper()
	d := job.Parse("format = 1\n[drive]\nkind = \"" + kind + "\"\nusual_rpm = 25\npower_w = 85\n" + between)
	require.Empty(t, d.Problems(), between)
	return d.Job()
}

// The losses of two chains also reduce the power of legs: 85 W of which 79.98 arrive.
func TestStagesLosePower(t *testing.T) {
	for _, c := range []struct {
		through, ratio string
		passes         float64
	}{{"chain", "14:48 x 12:48", 0.97 * 0.97}, {"belt", "3 x 4", 0.95 * 0.95}, {"chain", "12", 0.97}} {
		j := driven(t, "ratio = \""+c.ratio+"\"")
		j.Drive.Transmission, j.Drive.Efficiency = c.through, quantity.Reading{}
		p := winding.Evaluate(j).Trials[0].Operating[1]
		require.Positive(t, p.DriveWatts, c.ratio)
		assert.InEpsilon(t, p.ShaftWatts/c.passes, p.DriveWatts, 2e-3, c.ratio)
	}
}

// A ratio given in two ways that disagree is reported with both; one that agrees, within the accuracy
// of measured pulleys, is not, nor is a slip that has an effect.
func TestARatioSaidTwiceIsCalledOut(t *testing.T) {
	const pulleys = "driver_mm = 600\ndriven_mm = 100\n"
	for between, want := range map[string]string{
		"through = \"belt\"\nratio = \"6 x 5.714\"\n" + pulleys:                                       "drive.driver: pulleys of 600 mm driving 100 mm are 5.88 turns of the alternator for one of the drive, not the 32.9 of the ratio, by which it goes",
		"through = \"belt\"\nratio = 6\n" + pulleys:                                                   "",
		"through = \"belt\"\nratio = 5.5\n" + pulleys:                                                 "drive.driver: pulleys of 600 mm driving 100 mm are 5.88 turns",
		"through = \"belt\"\n" + pulleys:                                                              "",
		"through = \"chain\"\nratio = 3\ndriver_teeth = 48\ndriven_teeth = 12\n":                      "drive.driver_teeth: wheels of 48 teeth driving 12 are 4 turns",
		"through = \"chain\"\ndriver_teeth = 48\ndriven_teeth = 12\n" + pulleys:                       "drive.driver: pulleys of 600 mm driving 100 mm are 5.88 turns of the alternator for one of the drive, not the 4 of the teeth, by which it goes",
		"through = \"belt\"\ntach_drive_rpm = 60\ntach_alternator_rpm = 330\n" + pulleys:              "",
		"through = \"belt\"\ntach_drive_rpm = 60\ntach_alternator_rpm = 300\n" + pulleys:              "drive.driver: pulleys of 600 mm driving 100 mm are 5.88 turns of the alternator for one of the drive, not the 5 of the tachometer readings, by which it goes",
		"ratio = 3\ntach_drive_rpm = 60\ntach_alternator_rpm = 300\n":                                 "drive.ratio: the ratio is 3 turns",
		"through = \"belt\"\nratio = 6\nslip = 0.2\n":                                                 "drive.slip: the belt's slip of 20 % is not used: the ratio is turns as counted, which have it in them",
		"through = \"chain\"\nratio = 6\nslip = 0.2\n":                                                "drive.slip: the belt's slip of 20 % is not used: no belt is said to lie between",
		"through = \"belt\"\nratio = \"2 x 3\"\nslip = 0.2\n":                                         "",
		"through = \"belt\"\nslip = 0.02\n" + pulleys:                                                 "",
		"through = \"belt\"\nslip = 0.02\ntach_drive_rpm = 60\ntach_alternator_rpm = 350\n" + pulleys: "drive.slip: the belt's slip of 2 % is not used: the tachometer readings have it in them",
		"ratio = \"3/1\"\n": "drive.ratio: the ratio is read as 3 turns of the alternator for one of the drive: a / is a fraction, of teeth the drive's over the alternator's",
		// 3 · 610/56 = 32.7 as shown in the field; two belts that slip 2 % each leave 0.98² of it.
		"through = \"belt\"\nratio = \"3 x 610/56\"\n": "drive.ratio: the ratio is read as 32.7 turns of the alternator for one of the drive (31.4 with the slip of its stages): a / is a fraction, of teeth the drive's over the alternator's",
		"ratio = \"1/3\"\n":                            "drive.ratio: the ratio is read as 0.333 turns of the alternator for one of the drive: it would turn slower than the drive",
		"ratio = \"3:1\"\n":                            "",
		"ratio = \"3 1/2\"\n":                          "",
	} {
		var told []string
		for _, f := range winding.Evaluate(by(t, "engine", between)).Findings {
			if strings.HasPrefix(f.Path, "drive.") {
				told = append(told, f.Path+": "+f.Text)
			}
		}
		if want == "" {
			assert.Empty(t, told, between)
		} else if assert.Len(t, told, 1, between) {
			assert.Contains(t, told[0], want, between)
		}
	}
}
