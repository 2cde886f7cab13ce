package winding

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The curve of a winding that is only compared is that of the solver to 2 % of its largest torque and amps
// where it crosses a corner in a straight line, and to 2 parts in 1,000 elsewhere, though its steps of
// temperature are ten times those of what is shown.
func TestACurveThatIsOnlyComparedIsNear(t *testing.T) {
	for _, name := range []string{"wind-good", "wind-wound-rotor", "hub-in-wind", "round-slots", "wind-trap"} {
		b := Prepare(loadJob(t, name))
		for _, trial := range b.job.Trials {
			o := b.Static(trial)
			r, why := b.bed.charger(trial, &o)
			if why != "" {
				continue
			}
			own := r.anew()
			c := own.over(b.drive.fastest, b.air.ambientC, closeOffer)
			const speeds = 120
			var amps, torque [speeds]float64
			most, hard := 0.0, 0.0
			corner := make([]bool, speeds)
			for i := range speeds {
				rpm := c.from + (c.top-c.from)*(float64(i)+0.5)/speeds
				p := r.anew().at(rpm, b.air.ambientC)
				drawn := c.at(rpm)
				amps[i], torque[i] = drawn.AmpsDC-p.AmpsDC, drawn.TorqueNm-p.TorqueNm
				most, hard = max(most, p.AmpsDC), max(hard, p.TorqueNm)
				k, _, _ := c.find(rpm)
				corner[i] = !c.knots[k].like(&c.knots[k+1])
			}
			worst, plain := 0.0, 0.0
			for i := range speeds {
				off := max(math.Abs(amps[i])/most, math.Abs(torque[i])/hard)
				worst = max(worst, off)
				if !corner[i] {
					plain = max(plain, off)
				}
			}
			assert.Less(t, worst, 0.02, "%s, trial %s", name, trial.Name)
			assert.Less(t, plain, 0.002, "%s, trial %s", name, trial.Name)
		}
	}
}
