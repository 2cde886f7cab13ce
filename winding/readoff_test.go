package winding

import (
	"testing"

	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

func TestReadOffTheCurve(t *testing.T) {
	m := &MachineOutcome{MeanLimitC: quantity.Of(120)}
	trial := TrialOutcome{}
	for i, c := range []float64{20, 130, 140, 110, 150, 100, 90} {
		trial.Curve = append(trial.Curve, RunPoint{RPM: 100 * float64(i), WindingC: c, TooHot: i >= 4, Efficiency: []float64{0, 0.4, 0.6, 0.6, 0.5, 0, 0}[i]})
	}
	over, ok := trial.OverClass(m)
	assert.Equal(t, SpeedRange{100, 400}, over, "from the first to the last, what lies between counted")
	assert.True(t, ok)
	steady, ok := trial.NeverSteady()
	assert.Equal(t, SpeedRange{From: 400}, steady, "to the end")
	assert.True(t, ok)
	p, ok := trial.MostEfficient()
	assert.Equal(t, 200.0, p.RPM)
	assert.True(t, ok)
	trial.Curve = trial.Curve[:1]
	_, ok = trial.OverClass(m)
	assert.False(t, ok)
	_, ok = trial.MostEfficient()
	assert.False(t, ok)
}

func TestBeats(t *testing.T) {
	curve := func(amps ...float64) (list []RunPoint) {
		for i, v := range amps {
			list = append(list, RunPoint{RPM: 100 * float64(i), NetAmps: v})
		}
		return list
	}
	no := quantity.Missing("")
	o := Outcome{Trials: []TrialOutcome{{Charging: Charging{Curve: curve(0, 1, 2, 3)}}, {Charging: Charging{Curve: curve(0, 2, 2.5, 2)}}, {Charging: Charging{Curve: curve(0, 2, 4, 5)}}, {Charging: Charging{Curve: curve(0, 1, 2, 3)}}}}
	for i := range o.Trials {
		o.Trials[i].CrossRPM = no
	}
	o.Trials[1].CrossRPM = quantity.Of(240)
	for i, want := range []struct {
		above float64
		side  int
	}{{0, 0}, {240, -1}, {0, 1}, {0, 0}} {
		above, side := o.Beats(i)
		assert.Equal(t, want.above, above, i)
		assert.Equal(t, want.side, side, i)
	}
}
