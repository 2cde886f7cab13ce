package winding

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// More turns are advised if the slot has room for them.
func TestMoreTurnsAreAdvisedAsTheyFit(t *testing.T) {
	of := func(turns, fit float64) *TrialOutcome {
		o := new(TrialOutcome)
		o.Turns, o.TurnsThatFit = quantity.Of(turns), quantity.Of(fit)
		return o
	}
	assert.Equal(t, "more turns, of which 30 go in", moreTurns(1.5, of(20, 30)))
	assert.Equal(t, "more turns of a thinner wire, as only 29 of this one go in", moreTurns(1.5, of(20, 29)))
	assert.Equal(t, "more turns of a thinner wire, as this one fills the slot", moreTurns(1.01, of(30, 30)))
	assert.Equal(t, "more turns of a thinner wire, as this one fills the slot", moreTurns(1.01, of(31, 30)))
	unknown := of(20, 30)
	unknown.TurnsThatFit = quantity.Missing("needs the slot")
	assert.Equal(t, "more turns if they fit", moreTurns(1.5, unknown))
}

// For windings that charge too late, the best one that begins sooner is named, even if too late as
// well, with what it takes to begin in time; the best of these is not told to look for another.
func TestNoTurnsAreAdvisedWhereNoneThatFitMend(t *testing.T) {
	text, err := os.ReadFile("../testdata/jobs/water.toml")
	require.NoError(t, err)
	j := job.Parse(string(text)).Job()
	fix := func(o Outcome) string {
		for _, f := range o.Findings {
			if f.Trial == "A" && strings.Contains(f.Text, "charging begins at") {
				return f.Fix
			}
		}
		return "not called out"
	}
	o := Evaluate(j)
	a := &o.Trials[0]
	require.NotNil(t, a.Offer)
	assert.Regexp(t, "^"+regexp.QuoteMeta(a.Mend)+"; in time only with 11.3 turns of the alternator for one of the drive, in place of 10.2$", fix(o))
	assert.True(t, strings.HasSuffix(a.Mend, ", after the slow speed too"), a.Mend)

	j.Trials = append([]job.Trial(nil), j.Trials...)
	j.Trials[0].Turns, j.Trials[0].Gauge = quantity.Known(float64(a.Offer.Turns)), a.Offer.Gauge
	then := Evaluate(j)
	b := &then.Trials[0]
	assert.Less(t, b.CutInRPM.Value, a.CutInRPM.Value)
	assert.Greater(t, b.CutInRPM.Value, then.Machine.SlowRPM.Value)
	assert.Greater(t, b.AmpsUsual.Value, worthIt*a.AmpsUsual.Value)
	assert.False(t, b.OverLimit() || b.Burns())
	require.NotEmpty(t, b.InTheWay)
	assert.Equal(t, "11.3 turns of the alternator for one of the drive, in place of 10.2; no other turns and wire that fit the slots do it", fix(then))
}

// A replacement that begins too late as well is offered only where it brings enough more to be worth
// new copper.
func TestWhatIsLateTooIsOfferedForAGainOnly(t *testing.T) {
	text, err := os.ReadFile("../testdata/jobs/water.toml")
	require.NoError(t, err)
	j := job.Parse(string(text)).Job()
	offered, none := 0, 0
	own := Evaluate(j).Trials[0].Offer
	thicker, ok := own.Gauge.ThickerIn(j.Trials[0].Build)
	require.True(t, ok)
	for turns := own.Turns - 6; turns <= own.Turns; turns++ {
		k := j
		k.Trials = append([]job.Trial(nil), j.Trials[:1]...)
		k.Trials[0].Turns, k.Trials[0].Gauge = quantity.Known(float64(turns)), thicker
		a := Evaluate(k).Trials[0]
		if a.Offer == nil || a.Offer.lateRPM == 0 {
			none++
			continue
		}
		offered++
		k.Trials[0].Turns, k.Trials[0].Gauge = quantity.Known(float64(a.Offer.Turns)), a.Offer.Gauge
		assert.Greater(t, Evaluate(k).Trials[0].AmpsUsual.Value, worthIt*a.AmpsUsual.Value*(1-1e-3), "%d turns", turns)
	}
	assert.Positive(t, offered)
	assert.Positive(t, none)
}

// Saturated teeth are relieved by lowering what makes the flux.
func TestFullTeethAreToldByTheRotor(t *testing.T) {
	for kind, says := range map[string]string{"wound": "a smaller field current loses little", "magnets": "thinner magnets lose little", "": "thinner magnets or less field lose little"} {
		a := aboutMachine{field: &job.FieldSpec{Kind: kind}, room: new(slotRoom), iron: &iron{toothMM: quantity.Of(4)}}
		d := new(doubts)
		a.teeth(d, quantity.Of(2.1))
		require.Len(t, d.list, 1)
		assert.Contains(t, d.list[0].Fix, "if they hold, "+says)
	}
}
