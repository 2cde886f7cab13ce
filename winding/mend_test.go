package winding

import (
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// By hand: to replace 10 A within its limits an offer has to bring 3 % more, to replace 0.05 A the
// hundredth of an ampere that is shown; to replace what breaks a limit nine tenths of it; to replace
// nothing, anything not shown as 0.
func TestWhatAnOfferHasToBring(t *testing.T) {
	of := offers{bed: &bed{drive: &driveSide{kind: "engine"}}}
	for _, c := range []struct {
		net    float64
		breaks bool
		least  float64
	}{{10, false, 10.3}, {0.05, false, 0.055}, {10, true, 9}, {0.004, true, 0.005}, {0, true, 0.005}, {-1, false, 0.005}} {
		o := new(TrialOutcome)
		o.Operating = []Operating{{Meeting: Meeting{Condition: "usual"}, RunPoint: RunPoint{NetAmps: c.net}}}
		assert.InDelta(t, c.least, of.leastOf(o, c.breaks), 1e-12, "%+v", c)
	}
}

// The same turns of the same wire in other circuits are another winding; circuits that are not given are one.
func TestSameWinding(t *testing.T) {
	wire := func(text string) wiretable.Gauge {
		g, err := wiretable.Parse(text)
		require.NoError(t, err)
		return g
	}
	a := job.Trial{Wound: job.Wound{Turns: quantity.Known(20), Gauge: wire("1.5 mm")}}
	b, c, d, e := a, a, a, a
	b.Circuits, c.Circuits = quantity.Known(1), quantity.Known(2)
	d.Turns, e.Gauge = quantity.Known(21), wire("1.6 mm")
	assert.True(t, same(a, b))
	for _, other := range []job.Trial{c, d, e} {
		assert.False(t, same(a, other))
		assert.False(t, same(other, a))
	}
}

// In wind the search uses a coarse year, the offer the trial's own winds: one that gains less than a
// kilowatt-hour by the second is not made, neither to the trial that found it nor to one that is lent
// it. Where a limit is broken it does not matter.
func TestAnOfferGainsAKilowattHourInTheTrialsOwnYear(t *testing.T) {
	j := loadJob(t, "hub-in-wind")
	j.Trials = j.Trials[:1]
	b := Prepare(j)
	o := &b.Outcome().Trials[0]
	of := offers{workshop: b, bed: &b.bed, slots: b.slots, tried: new(trying)}
	m := of.mendFor(j.Trials[0], o, false, nil)
	require.NotNil(t, m.offer)
	for gain, made := range map[float64]bool{0.9: false, 1.1: true} {
		m.best.year = o.YearKWh.Value + gain
		again := of.mendFor(j.Trials[0], o, false, nil)
		assert.Equal(t, made, again.offer != nil, "%g kWh", gain)
		assert.Equal(t, made, again.inTheWay == "", "%g kWh", gain)
		assert.NotNil(t, of.mendFor(j.Trials[0], o, true, nil).offer, "%g kWh, a limit broken", gain)
		assert.Equal(t, made, of.improves(m.best, nil, &mend{}, j.Trials[0], o), "%g kWh, lent", gain)
		assert.True(t, of.improves(m.best, nil, &mend{breaks: true}, j.Trials[0], o), "%g kWh, lent, a limit broken", gain)
	}
}

// Whole turns come near enough to what is sought, within 8 %, or other circuits are taken: of 1.3 turns
// for a circuit one is a quarter too few and of 2.6 three a seventh too many, of 3.9 four will do; for
// 2.16 two are 7 % too few, for 2.2 they are 9 %.
func TestOtherCircuitsComeOutInWholeTurns(t *testing.T) {
	b := Prepare(loadJob(t, "hub-in-wind"))
	of := offers{workshop: b, bed: &b.bed, slots: b.slots, tried: new(trying)}
	own := b.job.Trials[0]
	s := &search{offers: of, own: own, circuits: 1, choices: []int{1, 2}, turns: 2}
	_, ok := s.with(1.3)
	assert.False(t, ok)
	s.choices = []int{1, 2, 3}
	for forCircuit, circuits := range map[float64]int{1.3: 3, 1.6: 2, 2: 1, 2.16: 1, 2.2: 3} {
		got, ok := s.with(forCircuit)
		require.True(t, ok, forCircuit)
		assert.Equal(t, circuits, max(1, got.Circuits.Whole()), forCircuit)
	}
}

// The figures of a search's best winding, from its curve kept while others were tried, equal those of a
// search that keeps nothing.
func TestTheKeptCurveTellsTheSameYear(t *testing.T) {
	kept := 0
	for _, name := range []string{"wind-good", "wind-wound-rotor", "hub-in-wind"} {
		b := Prepare(loadJob(t, name))
		o := b.Outcome()
		for i, trial := range b.job.Trials {
			of := offers{workshop: b, bed: &b.bed, slots: new(fullSlots), tried: new(trying)}
			s := of.search(trial, of.TurnsThatFit(trial).Value)
			s.more = of.leastOf(&o.Trials[i], true)
			s.near()
			s.wider()
			if s.best == nil {
				continue
			}
			if s.kept != nil && s.kept.whose == s.best && s.tried.whose != s.best {
				kept++
			}
			year := s.yearKWh(s.best)
			anew := offers{workshop: b, bed: &b.bed, slots: new(fullSlots), tried: new(trying)}
			f := anew.full(s.best.trial)
			anew.brings(f)
			assert.Equal(t, anew.yearKWh(f), year, "%s, trial %s", name, trial.Name)
		}
	}
	assert.Greater(t, kept, 3)
}
