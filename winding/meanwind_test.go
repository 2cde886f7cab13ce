package winding

import (
	"fmt"
	"strings"
	"testing"

	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// What brings the most in a year may bring fewer amps in the usual wind than the trial does: then what both
// bring is told, else not.
func TestABetterYearWithFewerAmpsSaysBoth(t *testing.T) {
	fewer, more := 0, 0
	for _, in := range []struct {
		name         string
		metres, mean float64
	}{{"wind-trap", 2.6, 3.5}, {"wind-good", 2, 5}, {"wind-good", 1.6, 6}} {
		for _, times := range []float64{0.6, 1} {
			name, j := in.name, loadJob(t, in.name)
			j.Drive.RotorM, j.Drive.MeanWindMS = quantity.Known(in.metres), quantity.Known(in.mean)
			for i := range j.Trials {
				j.Trials[i].Turns = quantity.Known(float64(int(times * j.Trials[i].Turns.Value)))
			}
			o := Evaluate(j)
			for i := range o.Trials {
				a := &o.Trials[i]
				if a.Offer == nil {
					continue
				}
				k := j
				k.Trials = append(k.Trials[:0:0], j.Trials[i])
				k.Trials[0].Turns, k.Trials[0].Gauge, k.Trials[0].Circuits = quantity.Known(float64(a.Offer.Turns)), a.Offer.Gauge, quantity.Known(float64(a.Offer.Circuits))
				n := Prepare(k).WithoutOffers().Outcome().Trials[0]
				both := fmt.Sprintf(" in place of %s A there and %s kWh", amps(a.AmpsUsual.Value), whole(a.YearKWh))
				if n.AmpsUsual.Value*1.04 < a.AmpsUsual.Value {
					fewer++
					assert.Contains(t, a.Mend, both, "%s %s", name, a.Name)
				} else if n.AmpsUsual.Value > a.AmpsUsual.Value {
					more++
					assert.False(t, strings.Contains(a.Mend, "in place of"), a.Mend)
				}
			}
		}
	}
	assert.Positive(t, more)
	assert.Positive(t, fewer)
}
