package winding

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"slotwright/winding/drive"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// "On only from so many rpm" is no remedy where the drive never takes the alternator there: of rotors
// of several diameters the small ones never do, in any wind and at any balance, the large ones do.
func TestARemedyIsAtASpeedThatIsHad(t *testing.T) {
	never, had := 0, 0
	for _, metres := range []float64{0.6, 1, 1.2, 1.4, 1.7, 2, 2.5} {
		j := loadJob(t, "wind-wound-rotor")
		j.Drive.RotorM = quantity.Known(metres)
		o := Evaluate(j)
		for i := range o.Trials {
			a := &o.Trials[i]
			pays := a.BreakEvenRPM.Value
			reached := slices.ContainsFunc(a.Points, func(p DrivePoint) bool {
				return p.RPM >= pays || slices.ContainsFunc(p.Others, func(e drive.Equilibrium) bool { return e.Stable && e.RPM >= pays })
			})
			for _, f := range o.Findings {
				if f.Trial != a.Name || !f.NoUse {
					continue
				}
				only := strings.Contains(f.Fix, fmt.Sprintf("the rotor's current on only from %.0f rpm", pays))
				if strings.Contains(f.Fix, fmt.Sprintf("never reaches the %.0f alternator rpm", pays)) {
					never++
					assert.False(t, reached || only, "%g m, %s: %s", metres, a.Name, f.Fix)
				} else if only {
					had++
					assert.True(t, reached, "%g m, %s: %s", metres, a.Name, f.Fix)
				}
			}
		}
	}
	assert.Positive(t, never)
	assert.Positive(t, had)
}
