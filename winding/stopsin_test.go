package winding

import (
	"fmt"
	"testing"

	"slotwright/winding/drive"
	"slotwright/winding/zero"

	"github.com/stretchr/testify/assert"
)

// The strongest wind in which shorted leads hold a rotor, found from the strongest down at the worst
// ratio, equals that of a bisection over all ratios: for leads that hold it in a breeze, in a gale,
// nowhere and everywhere, for both shapes of blades.
func TestTheWindThatShortedLeadsHoldIsTheLeastOfAllRatios(t *testing.T) {
	seen := 0
	for _, curve := range []string{"heier", "slootweg"} {
		j := loadJob(t, "wind-good")
		j.Drive.Curve = curve
		b := Prepare(j)
		s := &b.drive
		turn := s.inOneMetre()
		for _, volts := range []float64{0, 0.001, 0.01, 0.02, 0.05, 0.1, 0.3} {
			for _, ohms := range []float64{0.02, 0.2, 1} {
				for _, reactance := range []float64{1e-5, 1e-4, 1e-3} {
					short := drive.ShortTorque(volts, ohms, reactance, 3)
					holds := func(n float64) float64 { return short(n) + dragTorque(&b.drag, n) }
					stops := func(wind float64) bool {
						for i := range turn {
							if g := turn[i].given * wind * wind; g > 0 && !(holds(turn[i].rpm*wind) > g) {
								return false
							}
						}
						return true
					}
					want := mostStopWind
					if !stops(mostStopWind) {
						want = zero.Bisect(leastStopWind, mostStopWind, func(wind float64) bool { return !stops(wind) })
					}
					got := s.stopsIn(holds)
					assert.InDelta(t, want, got, 3e-5*want, fmt.Sprintf("%s, %g V/rpm, %g Ω, %g Ω/rpm", curve, volts, ohms, reactance))
					if got > 2*leastStopWind && got < mostStopWind {
						seen++
					}
				}
			}
		}
	}
	assert.Greater(t, seen, 20)
}
