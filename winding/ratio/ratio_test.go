package ratio_test

import (
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/ratio"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// driveOf is a drive as a job file has it.
func driveOf(t *testing.T, between string) *job.DriveSpec {
	t.Helper()
	d := job.Parse("format = 1\n[drive]\nkind = \"engine\"\nusual_rpm = 25\npower_w = 85\n" + between)
	require.Empty(t, d.Problems(), between)
	drive := d.Job().Drive
	return &drive
}

// A ratio given stage by stage loses speed in each belt and power in each stage: 25 rpm through 6 and
// 5.714 are 857 rpm, less 2 % twice 823. V-belts pass 0.95 (US DOE tip sheet: 0.92 to 0.95), chains
// 0.97 (common practice, no source): two of them 0.9025 and 0.9409. A counted ratio already includes
// the slip.
func TestEachStageSlipsAndLoses(t *testing.T) {
	for _, c := range []struct {
		between string
		rpm     float64
		why     string
	}{
		{"through = \"belt\"\nratio = \"6 x 5.714\"\n", 25 * 6 * 5.714 * 0.98 * 0.98, "2 stages, belt: slip 4 %, loss 9.8 %"},
		{"through = \"belt\"\nratio = \"6 x 5.714\"\nslip = 0.2\n", 25 * 6 * 5.714 * 0.64, "2 stages, belt: slip 36 %, loss 9.8 %"},
		{"through = \"belt\"\nratio = \"100:600\"\n", 25 * 6 * 0.98, "one stage, belt: slip 2 %, loss 5 %"},
		{"through = \"belt\"\ndriver_mm = 600\ndriven_mm = 100\n", 25 * 6 * 0.98, "the pulleys, belt: slip 2 %, loss 5 %"},
		{"through = \"belt\"\nratio = 6\nslip = 0.2\n", 25 * 6, "as given, belt: loss 5 %"},
		{"through = \"belt\"\nratio = \"1:6\"\n", 25 * 6, "as given, belt: loss 5 %"},
		{"through = \"chain\"\nratio = \"14:48 x 12:48\"\n", 25 * 48.0 / 14 * 4, "2 stages, chain: loss 5.9 %"},
		{"through = \"gear\"\nratio = \"2 x 2 x 2\"\n", 25 * 8, "3 stages, gear: loss 8.7 %"},
		{"through = \"chain\"\nratio = \"2 x 2\"\nefficiency = 0.9\n", 25 * 4, "2 stages, chain: loss 10 %"},
		{"through = \"chain\"\nratio = 4\nslip = 0.2\n", 25 * 4, "as given, chain: loss 3 %"},
		{"ratio = \"6 x 5.714\"\n", 25 * 6 * 5.714, "2 stages"},
		{"through = \"belt\"\nratio = \"6 x 5.714\"\ntach_drive_rpm = 25\ntach_alternator_rpm = 840\n", 840, "two tachometer readings, which mean 2.0 % of slip"},
	} {
		turns := ratio.Of(driveOf(t, c.between))
		assert.InEpsilon(t, c.rpm, 25*turns.Value, 1e-9, c.between)
		assert.Equal(t, c.why, turns.Why, c.between)
	}
}

// What gives the speed, in its order, and what then has no effect.
func TestOneOfThemIsUsed(t *testing.T) {
	const pulleys, teeth = "driver_mm = 600\ndriven_mm = 100\n", "driver_teeth = 48\ndriven_teeth = 12\n"
	for _, c := range []struct{ between, by, idle, why string }{
		{"through = \"belt\"\n" + pulleys + "ratio = 6\ntach_drive_rpm = 60\ntach_alternator_rpm = 350\n", "drive.tach_drive", "drive.ratio", "the tachometer readings are used"},
		{"through = \"belt\"\n" + pulleys + "ratio = 6\n", "drive.ratio", "drive.driven", "the ratio is used"},
		{"through = \"belt\"\n" + pulleys + teeth, "drive.driver", "drive.driver_teeth", "the other wheels are used"},
		{"through = \"chain\"\n" + pulleys + teeth, "drive.driver_teeth", "drive.driver", "the other wheels are used"},
		{"through = \"chain\"\n" + teeth, "drive.driver_teeth", "drive.driver_teeth", ""},
		{"through = \"belt\"\nratio = 6\n", "drive.ratio", "drive.slip", "the ratio is turns as counted, which have it in them"},
		{"through = \"belt\"\nratio = \"2 x 3\"\n", "drive.ratio", "drive.slip", ""},
		{"", "", "drive.driver", ""},
	} {
		d := driveOf(t, c.between)
		assert.Equal(t, c.by, ratio.By(d), c.between)
		assert.Equal(t, c.why, ratio.Idle(d, c.idle), c.between)
	}
}

// By hand: 600 to 100 mm less the usual 2 % are 5.88 turns. Tachometers may differ from that by a tenth,
// 5.35 to 6.50 (a quotient of e^0.1), a typed ratio by a twentieth.
func TestWaysThatContradict(t *testing.T) {
	const belt = "through = \"belt\"\ndriver_mm = 600\ndriven_mm = 100\n"
	for between, apart := range map[string]bool{
		"tach_drive_rpm = 100\ntach_alternator_rpm = 535\n": false, "tach_drive_rpm = 100\ntach_alternator_rpm = 530\n": true,
		"ratio = 5.6\n": false, "ratio = 5.58\n": true, "ratio = 6.17\n": false, "ratio = 6.19\n": true, "": false,
	} {
		list := ratio.Contradictions(driveOf(t, belt+between))
		if !apart {
			assert.Empty(t, list, between)
		} else if assert.Len(t, list, 1, between) {
			assert.Equal(t, "drive.driver", list[0].Path)
			assert.Contains(t, list[0].Words, "pulleys of 600 mm driving 100 mm are 5.88 turns")
		}
	}
}

// By hand: 25 rpm to 200 are 8 turns. A chain's wheel of 12 teeth behind one of 48 makes 4, and 6 teeth 8. Where
// only the drive's pulley of 600 mm is known, the alternator's is 600·0.98/8 = 73.5 mm.
func TestWheelsForASpeedThatIsWanted(t *testing.T) {
	w := ratio.For(driveOf(t, "through = \"chain\"\ndriver_teeth = 48\ndriven_teeth = 12\n"), quantity.Known(200))
	assert.InDelta(t, 8, w.Turns.Value, 1e-12)
	assert.InDelta(t, 6, w.DrivenTeeth.Value, 1e-9)
	assert.False(t, w.DrivenMM.Known() || w.DriverMM.Known())
	w = ratio.For(driveOf(t, "through = \"belt\"\ndriver_mm = 600\n"), quantity.Known(200))
	assert.InDelta(t, 73.5, w.DrivenMM.Value, 1e-9)
	assert.Equal(t, "needs the other pulley", w.DriverMM.Why)
	w = ratio.For(driveOf(t, ""), quantity.Reading{})
	assert.False(t, w.Turns.Known() || w.DrivenMM.Known() || w.DriverMM.Known() || w.DrivenTeeth.Known())
}
