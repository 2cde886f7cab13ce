package winding

import (
	"os"
	"strings"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// More turns are advised as the slot has room for them.
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

// Of windings that charge too late, those for which none that fits does better are not told to
// look for one.
func TestNoTurnsAreAdvisedWhereNoneThatFitMend(t *testing.T) {
	text, err := os.ReadFile("../testdata/jobs/water.toml")
	require.NoError(t, err)
	o := Evaluate(job.Parse(string(text)).Job())
	require.NotEmpty(t, o.Trials[0].InTheWay)
	for _, f := range o.Findings {
		if f.Trial == "A" && strings.Contains(f.Text, "charging begins at") {
			assert.Equal(t, "13.9 turns of the alternator for one of the drive, in place of 10.2; no other turns and wire that fit the slots do it", f.Fix)
			return
		}
	}
	assert.Fail(t, "not called out")
}

// Full teeth are relieved by what makes the flux.
func TestFullTeethAreToldByTheRotor(t *testing.T) {
	for kind, says := range map[string]string{"wound": "a smaller field current loses little", "magnets": "thinner magnets lose little", "": "thinner magnets or less field lose little"} {
		a := aboutMachine{field: &job.FieldSpec{Kind: kind}, room: new(slotRoom), iron: &iron{toothMM: quantity.Of(4)}}
		d := new(doubts)
		a.teeth(d, quantity.Of(2.1))
		require.Len(t, d.list, 1)
		assert.Contains(t, d.list[0].Fix, "if they hold, "+says)
	}
}
