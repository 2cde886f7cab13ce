package winding_test

import (
	"os"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// driven is the water wheel's job with a different transmission.
func driven(t *testing.T, between string) job.Job {
	t.Helper()
	text, err := os.ReadFile("../testdata/jobs/water.toml")
	require.NoError(t, err)
	require.Contains(t, string(text), "\nratio = 10.2\n")
	d := job.Parse(strings.Replace(string(text), "\nratio = 10.2\n", "\n"+between+"\n", 1))
	require.Empty(t, d.Problems(), between)
	return d.Job()
}

// A wheel of 85 rpm at the top through 48:14 and 180:55 makes 0.0891 turns, 7.6 alternator rpm, at
// which nothing charges; 14:48 and 55:180 make 10.8 turns (48·180/(14·55) = 11.22, less 2 % of slip of
// each belt) and 916 rpm. With / it is a fraction, 48/14; the same holds for teeth and pulleys. Ratios
// with both stages below 1 are questioned even if something charges. A ratio that is the right way
// round, or whose inverse would be no better, is not.
func TestADriveTheWrongWayRoundIsAsked(t *testing.T) {
	for _, c := range []struct{ between, path, says string }{
		{`ratio = "48:14 x 180:55"`, "drive.ratio", "10.8, and 916 alternator rpm"},
		{`ratio = "14/48 x 55/180"`, "drive.ratio", "10.8, and 916 alternator rpm"},
		{`ratio = "14:48 x 55:180"`, "", ""},
		{`ratio = "48/14 x 180/55"`, "", ""},
		{`ratio = "11:10"`, "drive.ratio", "it would be 1.08"}, {`ratio = "10/11"`, "drive.ratio", "it would be 1.08"}, {`ratio = "11/10"`, "", ""},
		{`ratio = "3:1"`, "drive.ratio", "it would be 3, "}, {`ratio = "1:3"`, "", ""},
		{`ratio = 10.2`, "", ""},
		// One stage alone: 14:48 and 180:55 are 1.048 turns, 89 rpm, less the slip; with 55:180 again 10.8.
		{`ratio = "14:48 x 180:55"`, "drive.ratio", "With stage 2 as 55:180 in place of 180:55 it would be 10.8, and 916 alternator rpm"},
		{`ratio = "~48:14 x 55:180"`, "drive.ratio", "With stage 1 as 14:48 in place of 48:14 it would be 10.8, and 916 alternator rpm"},
		// 0.3 × 3.5 = 1.05; 3.33 × 3.5 = 11.67, 11.2 less 2 % twice, times 85 rpm is 952.
		{`ratio = "3.5 x 0.3"`, "drive.ratio", "With stage 2 as 3.33 in place of 0.3 it would be 11.2, and 952 alternator rpm"},
		// Less 2 % three times: 4 · 0.5 / 3 = 0.667 turns, 4 · 0.5 · 3 = 6 with the third alone; 2 /
		// 2.5 / 2 = 0.4, which no single stage corrects (2.5 or 1.6 turns, 213 or 136 rpm), but two do:
		// 2 · 2.5 · 2 = 10.
		{`ratio = "1:4 x 2:1 x 3:1"`, "drive.ratio", "With stage 3 as 1:3 in place of 3:1 it would be 5.65, and 480 alternator rpm"},
		{`ratio = "1:2 x 2.5:1 x 2:1"`, "drive.ratio", "With stage 2 as 1:2.5 in place of 2.5:1 and stage 3 as 1:2 in place of 2:1 it would be 9.41, and 800 alternator rpm"},
		{`ratio = 0.0891`, "drive.ratio", "11.2"},
		{`ratio = 0.9`, "", ""},
		{`ratio = 0.01`, "drive.ratio", "100, and 8500"},
		{"driver_teeth = 10\ndriven_teeth = 110", "drive.driver_teeth", "With the wheels swapped it would be 11,"},
		{"driver_teeth = 110\ndriven_teeth = 10", "", ""},
		{"driver_mm = 60\ndriven_mm = 600", "drive.driver", "With the pulleys swapped"},
		{"ratio = 0.0891\ntach_drive_rpm = 60\ntach_alternator_rpm = 5.35", "", ""},
	} {
		j := driven(t, c.between)
		if strings.Contains(c.between, "teeth") {
			j.Drive.Transmission = "chain"
		}
		var asked []winding.Finding
		for _, f := range winding.Evaluate(j).Findings {
			if strings.Contains(f.Fix, "reversed?") || f.First {
				asked = append(asked, f)
			}
		}
		if c.path == "" {
			assert.Empty(t, asked, c.between)
			continue
		}
		if assert.Len(t, asked, 1, c.between) {
			assert.Equal(t, c.path, asked[0].Path)
			assert.Contains(t, asked[0].Fix, c.says)
		}
	}
}

// Speeds given for the alternator itself do not depend on the ratio, which then is not questioned.
func TestSpeedsOfTheAlternatorAreNotTurnedRound(t *testing.T) {
	j := driven(t, "ratio = 0.0891")
	j.Target.TopRPM = j.Drive.TopRPM
	for _, f := range winding.Evaluate(j).Findings {
		assert.NotContains(t, f.Fix, "reversed?")
	}
}
