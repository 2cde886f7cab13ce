package winding

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Without offers an outcome is the same as with them, except for the offers and the findings about
// them.
func TestWithoutOffersAllElseStays(t *testing.T) {
	offered := 0
	for _, name := range []string{"wind-good", "pedals", "engine", "water"} {
		j := loadJob(t, name)
		with, without := Evaluate(j), Prepare(j).WithoutOffers().Outcome()
		require.Len(t, without.Trials, len(with.Trials))
		for i := range with.Trials {
			o, bare := &with.Trials[i], &without.Trials[i]
			if o.Offer != nil {
				offered++
			}
			assert.Empty(t, bare.Mend)
			assert.Nil(t, bare.Offer)
			o.Mend, o.Offer, o.InTheWay, o.Calmer, o.Rejoin, o.Joints, o.noneStands = "", nil, "", "", "", nil, false
			assert.Equal(t, o, bare, "%s %s", name, o.Name)
		}
		assert.Equal(t, with.Comparison, without.Comparison)
		assert.Equal(t, with.Cautions, without.Cautions)
	}
	assert.Positive(t, offered)
}
