package winding_test

import (
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Two trials on the same iron are offered the best found for either, and one of them alone only its
// own: shared results belong to the trial they were found for.
func TestTrialsLaidOutAlikeAreOfferedTheBestOfBoth(t *testing.T) {
	j := load(t, "wind-good.toml")
	j.Drive.CutOutMS = quantity.Known(11) // beyond, a full battery sets the rotor free of what is lent
	alone := j
	alone.Trials = j.Trials[1:]
	own := winding.Evaluate(alone).Trials[0]
	require.NotNil(t, own.Offer)

	b := winding.Prepare(j)
	both := b.Outcome()
	require.NotNil(t, both.Trials[0].Offer)
	assert.Equal(t, both.Trials[0].Offer, both.Trials[1].Offer)
	assert.NotEqual(t, own.Offer, both.Trials[1].Offer)
	assert.Equal(t, both.Trials[0].Mend, both.Trials[1].Mend)
	lent := winding.Evaluate(inPlace(j, 1, both.Trials[1].Offer)).Trials[1]
	mine := winding.Evaluate(inPlace(j, 1, own.Offer)).Trials[1]
	assert.False(t, lent.OverLimit() || lent.Burns(), "what is lent stands it")
	assert.Greater(t, lent.YearKWh.Value, 1.03*mine.YearKWh.Value)

	assert.Equal(t, own.Offer, b.With(alone).Outcome().Trials[0].Offer, "taken away with the other trial")
	for what, change := range map[string]func(t *job.Trial){
		"laid out otherwise": func(t *job.Trial) { t.Span = quantity.Known(2) },
		"joined otherwise":   func(t *job.Trial) { t.Connection = layout.Delta },
	} {
		apart, first := j, j
		apart.Trials = append(j.Trials[:0:0], j.Trials...)
		change(&apart.Trials[0])
		first.Trials = apart.Trials[:1]
		o := b.With(apart).Outcome()
		assert.Equal(t, winding.Evaluate(first).Trials[0].Offer, o.Trials[0].Offer, what)
		assert.Equal(t, own.Offer, o.Trials[1].Offer, what)
	}
}
