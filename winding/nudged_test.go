package winding

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The effect of an error on the balance of a drive that gives way is the same, to a few thousandths of
// itself, whether the balance is settled or taken from two or three points: every error of the stored
// jobs, in the usual and the top condition. Most of them take three points at most.
func TestANudgedBalanceIsTheSettledOne(t *testing.T) {
	seen, few := 0, 0
	for name, j := range everyJob(t) {
		b := Prepare(j)
		o := b.Outcome()
		d := b.done.Load()
		for i := range o.Trials {
			for _, at := range []*Operating{o.Trials[i].in(usual), o.Trials[i].in(top)} {
				slope := b.bed.slopeAt(d.trials[i].runs, at)
				if !(slope < 0) {
					continue
				}
				for k, s := range append(b.ofTrial(i), d.shifts...) {
					w := s.bench.layouts.candidate(s.of(j.Trials[i], i))
					o := s.bench.static(&w)
					r := s.bench.bed.keptWarm(&w, &o)
					if r == nil {
						continue
					}
					c, points := &s.bench.drive.conditions[indexOf(at.Condition)], 0
					given := s.bench.drive.given(c.X.Value)
					counted := func(rpm float64) float64 { points++; return given(rpm) }
					now := r.anew().settle(given, at.RPM, c.asked, at.WindingC)
					near := r.anew().nudged(counted, at.RPM, c.asked, at.WindingC, slope)
					said := fmt.Sprintf("%s, trial %d, %s, error %d: from %g rpm, %g A", name, i, at.Condition, k, at.RPM, at.NetAmps)
					assert.InDelta(t, now.RPM, near.RPM, 3e-3*math.Abs(now.RPM-at.RPM)+1e-5*at.RPM, said)
					assert.InDelta(t, now.NetAmps, near.NetAmps, 3e-3*math.Abs(now.NetAmps-at.NetAmps)+3e-5*now.AmpsDC, said)
					if seen++; points <= nudgedPoints {
						few++
					}
				}
			}
		}
	}
	assert.Greater(t, seen, 200)
	assert.Greater(t, few, seen*8/10, seen)
}
