package winding

import (
	"testing"

	"slotwright/winding/drive"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// Worked by hand, a rotor of 2 m geared up to twice its speed with a tenth lost in the gear: at 5 m/s
// half of 1.225 kg/m³ times π m² times 125 m³/s³ are 240.5 W, of which 0.35 are 84.2 W and the alternator
// is given 75.8 W. It is best at six times the wind at its tips, 30 rad/s or 286.5 rpm, where the
// alternator turns at 573.0 rpm: 40 W there are more than half of what comes, 37 W less.
func TestDragAtTheRotorsBestIsThatOfTheAlternatorsSpeed(t *testing.T) {
	side := &driveSide{kind: "wind", shaft: drive.WindShaft{Rotor: drive.Rotor{DiameterM: 2, PeakCp: 0.35, PeakLambda: 6}, Turns: 2, Efficiency: 0.9, Density: 1.225}}
	side.conditions[usual] = Condition{Label: "wind 5 m/s", X: quantity.Of(5)}
	o := new(TrialOutcome)
	o.Operating = []Operating{{RunPoint: RunPoint{AmpsDC: 1, RPM: 500}, Meeting: Meeting{Condition: conditionNames[usual], Region: drive.Charging}}}
	says := func(watts float64) string {
		s := &search{offers: offers{bed: &bed{drive: side, drag: &drag{watts: watts, rpm: 573.0}}}}
		return s.dragHolds(o)
	}
	assert.Equal(t, "iron and drag take 40 W of the 75.8 W that the rotor gives at its best (wind 5 m/s)", says(40))
	assert.Empty(t, says(37))
}
