package winding

import (
	"fmt"
	"math"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// inStrongWind is each stored job in the wind, with rotors of three sizes and both blade curves.
func inStrongWind(t *testing.T) map[string]job.Job {
	all := map[string]job.Job{}
	for name, stored := range everyJob(t) {
		if stored.Drive.Kind != job.DriveWind {
			continue
		}
		for n, metres := range []float64{0, 1.2, 3} {
			j := stored
			if metres > 0 {
				j.Drive.RotorM, j.Drive.Curve = quantity.Known(metres), []string{"", "heier", "slootweg"}[n]
			}
			all[fmt.Sprint(name, " ", metres, " m")] = j
		}
	}
	require.NotEmpty(t, all)
	return all
}

// No rung of any ladder brings more in a coarse year than the bound that one solved point gives, and where
// there is such a bound it is seldom far above.
func TestNoWindingBringsMoreThanItsBound(t *testing.T) {
	bounded, near := 0, 0
	for name, j := range inStrongWind(t) {
		b := Prepare(j)
		of := offers{workshop: b, bed: &b.bed, slots: new(fullSlots), tried: new(trying)}
		for i := range min(1, len(j.Trials)) {
			for _, r := range b.Ladder(i) {
				f := of.full(r.Trial)
				most := of.atBest(f)
				if math.IsInf(most, 1) || f.r == nil {
					continue
				}
				bounded++
				brings := of.brings(f)
				assert.LessOrEqual(t, brings, most, "%s: %v turns of %s", name, f.trial.Turns.Value, r.Wire)
				if brings > most/2 {
					near++
				}
			}
		}
	}
	assert.Greater(t, bounded, 300)
	assert.Greater(t, near, bounded/3)
}

// A search that leaves out what cannot bring enough ends where one ends that runs every winding.
func TestWhatIsNotRunChangesNothing(t *testing.T) {
	left := 0
	for name, j := range inStrongWind(t) {
		b := Prepare(j)
		for i, o := range b.Outcome().Trials {
			if o.in(usual) == nil {
				continue
			}
			of := offers{workshop: b, bed: &b.bed, slots: new(fullSlots), tried: new(trying)}
			short := of.better(j.Trials[i], &o)
			all := offers{workshop: b, bed: &b.bed, slots: &fullSlots{of: map[fullKey]*fullSlot{}}, tried: new(trying)}
			for key, f := range of.slots.of {
				anew := new(fullSlot)
				anew.bounded.Do(func() { anew.most = math.Inf(1) })
				all.slots.of[key] = anew
				if f.most < math.Inf(1) && f.score == 0 {
					left++
				}
			}
			long := all.better(j.Trials[i], &o)
			assert.Equal(t, [3]string{long.text, long.joins, long.inTheWay}, [3]string{short.text, short.joins, short.inTheWay}, "%s, trial %s", name, o.Name)
			assert.Equal(t, long.noneStands, short.noneStands)
		}
	}
	assert.Greater(t, left, 100)
}

// Below cut-in the torque of a delta with a current in its ring is that of the whole solution.
func TestTheRingAloneTakesWhatTheSolutionSays(t *testing.T) {
	for _, cooling := range []string{"fan", "open"} {
		j := loadJob(t, "wind-wound-rotor")
		j.Machine.Cooling = cooling
		j.Trials[0].Connection = layout.Delta
		b := Prepare(j)
		o := b.Static(j.Trials[0])
		r, why := b.bed.charger(j.Trials[0], &o)
		require.Empty(t, why)
		c := b.bed.follow(r, []float64{0, b.drive.fastest})
		require.False(t, c.r.idles())
		for part := 0.02; part < 1; part += 0.02 {
			rpm := part * c.from
			p := c.at(rpm)
			require.Zero(t, p.AmpsDC)
			require.Greater(t, p.TorqueNm, dragTorque(c.r.drag, rpm)*1.0001)
			assert.InEpsilon(t, p.TorqueNm, c.torqueAt(rpm), 1e-12, "%g rpm", rpm)
		}
	}
}

// A step in other circuits is better where it brings more than any before and, where that is enough for an
// offer, withstands it: also where it was not run at first, since it cannot bring what is asked.
func TestAStepIsBetter(t *testing.T) {
	notStood, enough, tooLittle := 0, 0, 0
	for name, j := range inStrongWind(t) {
		b := Prepare(j)
		for _, trial := range j.Trials {
			for _, asked := range []float64{20, 1e6} {
				of := offers{workshop: b, bed: &b.bed, slots: new(fullSlots), tried: new(trying)}
				s := of.search(trial, of.TurnsThatFit(trial).Value)
				s.more = asked
				for turns := 1.0; turns < 60; turns *= widerStep {
					most, more := 0.0, s.more*worthIt
					if s.top != nil {
						most = s.top.score
					}
					f, better := s.step(turns)
					switch {
					case f == nil || f.r == nil:
						assert.False(t, better)
					case of.brings(f) > more:
						assert.Equal(t, of.holds(f), better, "%s, trial %s, %g turns", name, trial.Name, turns)
						if enough++; !better {
							notStood++
						}
					case of.brings(f) <= s.more && s.best != f:
						assert.Equal(t, f.score > most, better, "%s, trial %s, %g turns: %g after %g", name, trial.Name, turns, f.score, most)
						tooLittle++
					}
				}
			}
		}
	}
	assert.Greater(t, notStood, 10)
	assert.Greater(t, enough, notStood+10)
	assert.Greater(t, tooLittle, 50)
}

// A wire too thick for the slot's mouth ends the search over all sizes among thicker ones, not among thinner
// ones.
func TestThinnerThanTheMouthIsFound(t *testing.T) {
	b := Prepare(loadJob(t, "wind-good"))
	of := offers{workshop: b, bed: &b.bed, slots: new(fullSlots), tried: new(trying)}
	thin := b.job.Trials[0]
	thick := thin
	for g, ok := thin.Gauge, true; ok && !of.full(withGauge(thin, thick.Gauge)).tooThick; thick.Gauge = g {
		g, ok = g.ThickerIn(thin.Build)
	}
	thick.Gauge, _ = thick.Gauge.ThickerIn(thin.Build)
	require.True(t, of.full(thick).tooThick)
	s := of.search(thick, of.TurnsThatFit(thick).Value)
	s.every()
	require.NotNil(t, s.top)
	assert.Less(t, s.top.trial.Gauge.BareMM(thin.Build), thick.Gauge.BareMM(thin.Build))
}
