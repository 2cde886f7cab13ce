package winding

import (
	"fmt"
	"strings"
	"testing"

	"slotwright/winding/drive"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Two stable speeds in the usual wind are reported with what each brings, or, where only the faster
// brings anything, with what starts it. At both the rotor gives what the alternator takes; just past
// the speed between them it gives more, so that the shaft speeds up.
func TestTwoSpeedsInOneWindAreTold(t *testing.T) {
	told, gusts, silent := 0, 0, 0
	for name, metres := range map[string]float64{"pear-slots": 1.7, "wind-12v-gale": 1.4, "wind-wound-rotor": 1.7, "wind-good": 2.4} {
		j := loadJob(t, name)
		j.Drive.RotorM = quantity.Known(metres)
		b := Prepare(j).WithoutOffers()
		o := b.Outcome()
		for i := range o.Trials {
			a := &o.Trials[i]
			said := Finding{}
			for _, f := range o.Findings {
				if f.Trial == a.Name && strings.HasPrefix(f.Text, "it can stay at two speeds (wind ") {
					said = f
				}
			}
			if a.other == nil {
				silent++
				assert.Empty(t, said.Text)
				continue
			}
			told++
			p, other := a.in(usual), a.other
			over := func(rpm float64) float64 {
				run, why := b.RunAt(i, rpm)
				require.Empty(t, why)
				return b.drive.shaft.Torque(p.X)(rpm) - run.TorqueNm
			}
			scale := b.drive.shaft.Torque(p.X)(other.rpm)
			assert.InDelta(t, 0, over(p.RPM), 5e-3*scale, "%s %s", name, a.Name)
			assert.InDelta(t, 0, over(other.rpm), 5e-3*scale, "%s %s", name, a.Name)
			assert.Greater(t, over(other.rpm*0.98), 0.0, "%s %s: it stays there", name, a.Name)
			assert.Less(t, over(other.rpm*1.02), 0.0, "%s %s", name, a.Name)
			assert.Less(t, over(other.past*0.95), 0.0, "%s %s: short of it the shaft falls back", name, a.Name)
			assert.Greater(t, over(other.past*1.05), 0.0, "%s %s: past it the shaft goes on", name, a.Name)
			there, _ := b.RunAt(i, other.rpm)
			assert.InDelta(t, there.NetAmps, other.net, 0.02)
			if p.Gust {
				gusts++
				assert.Empty(t, said.Text)
				assert.Less(t, other.rpm, p.RPM, "that which turns is told")
				assert.Zero(t, there.AmpsDC)
				assert.Positive(t, p.AmpsDC)
				continue
			}
			assert.Contains(t, said.Text, fmt.Sprintf("comes to %.0f alternator rpm, %s", p.RPM, netSaid(p.NetAmps)))
			assert.Contains(t, said.Text, fmt.Sprintf("at %.0f alternator rpm it stays too, %s", other.rpm, netSaid(other.net)))
			assert.Contains(t, said.Fix, fmt.Sprintf("past %.0f alternator rpm", other.past))
			first := 0.0
			for _, up := range a.Points {
				if up.X > p.X && up.RPM >= other.rpm && first == 0 {
					first = up.X
				}
			}
			if assert.Equal(t, first, other.from); first > 0 {
				assert.Contains(t, said.Text, fmt.Sprintf("from %.3g m/s on", first))
			}
		}
	}
	assert.Greater(t, told, 2)
	assert.Greater(t, gusts, 2)
	assert.Positive(t, silent)
}

// An unstable speed is not reported, however much would come in there; the speed between is the one
// nearest to the other, and a wind reaches it from rest in which it turns as fast.
func TestOnlyWhereItCanStayIsTold(t *testing.T) {
	j := loadJob(t, "wind-good")
	b := Prepare(j)
	o := b.Static(j.Trials[0])
	r, why := b.bed.charger(j.Trials[0], &o)
	require.NotNil(t, r, why)
	c := r.over(800, 20, closeCurve)
	require.Greater(t, c.at(500).NetAmps, c.at(300).NetAmps)
	points := []drive.WindPoint{
		{WindMPS: 4, RPM: 400},
		{WindMPS: 5, RPM: 20, Others: []drive.Equilibrium{{RPM: 60, Stable: true}, {RPM: 100}, {RPM: 300, Stable: true}, {RPM: 500}}},
		{WindMPS: 6, RPM: 299}, {WindMPS: 7, RPM: 310},
	}
	assert.Equal(t, &otherSpeed{condition: usual, rpm: 300, net: c.at(300).NetAmps, past: 100, from: 7}, otherBalance(c, points, 5))
	points[1].Others = points[1].Others[:2]
	assert.Nil(t, otherBalance(c, points, 5), "nothing comes in at either")
}

// The best of a ladder in a year brings the most of all that withstand their limits, though nothing may
// come in in the mean wind: stronger winds bring it.
func TestTheBestOfAYearIsNotAskedForTheMeanWind(t *testing.T) {
	unstarted := 0
	for _, metres := range []float64{1.4, 1.7, 2, 2.4} {
		j := loadJob(t, "wind-good")
		j.Drive.RotorM, j.Drive.MeanWindMS = quantity.Known(metres), quantity.Known(2.2)
		b := Prepare(j)
		list := b.Ladder(0)
		best, most := -1, 0.0
		for i := range list {
			r := &list[i]
			stands := r.Fits() && !r.OverLimit() && (!b.air.still.Known() || r.HottestC.Known() && r.HottestC.Value <= b.air.meanC)
			if stands && r.YearKWh.Known() && r.YearKWh.Value >= leastYear && r.YearKWh.Value > most {
				best, most = i, r.YearKWh.Value
			}
		}
		for i := range list {
			assert.Equal(t, i == best, list[i].BestYear, "%g m, %s", metres, list[i].Wire)
		}
		if best >= 0 && list[best].AmpsUsual.Value <= 0 {
			unstarted++
		}
	}
	assert.Positive(t, unstarted)
}
