package winding

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The water wheel's slot, of which the area is known: 72 mm², 2.6 times as deep as wide, is √(72/2.6) = 5.262
// mm wide and 13.68 mm deep under a neck of 1.5 mm, the mouth 2.6 mm. A pitch of 36 slots round 89 mm is
// π·89/36 = 7.767 mm at the gap, π·92/36 = 8.029 under the neck, π·119.36/36 = 10.416 at the bottom: the next
// wall begins half a mouth before the first, 6.467, and half a slot before the last, 7.785; the tooth is
// narrowest under the neck, 8.029 - 5.262 = 2.767.
func TestASlotAsItIsCut(t *testing.T) {
	j := loadJob(t, "water")
	s, why := Prepare(j).Section()
	require.Empty(t, why)
	assert.InDelta(t, math.Sqrt(72/2.6), s.Wide.Value, 1e-6)
	assert.InDelta(t, 2.6*math.Sqrt(72/2.6), s.Deep.Value, 1e-6)
	assert.True(t, s.Wide.Origin.Weak() && s.Deep.Origin.Weak(), "nobody measured them")
	assert.Equal(t, 2.6, s.Mouth.Value)
	assert.InDelta(t, s.Deep.Value+1.5, s.GapMM, 1e-6)
	assert.InDelta(t, 2.767, s.Tooth.Value, 2e-3)
	require.NotEmpty(t, s.Next)
	assert.InDelta(t, 6.467, s.Next[0].X, 2e-3)
	assert.InDelta(t, s.GapMM, s.Next[0].Y, 1e-6)
	assert.InDelta(t, 7.785, s.Next[len(s.Next)-1].X, 2e-3)
	assert.InDelta(t, 1.3, s.Wall[len(s.Wall)-1].X, 1e-6, "the mouth's edge")
	assert.Zero(t, s.BackMM, "nobody knows")
	assert.False(t, s.Back.Known())

	// 150 mm outside: (150 - 89)/2 - 1.5 - 13.682 = 15.318 mm of iron behind the slots.
	j.Machine.OutsideMM.Value, j.Machine.OutsideMM.Origin = 150, j.Machine.BoreMM.Origin
	s, _ = Prepare(j).Section()
	assert.InDelta(t, 15.318, s.Back.Value, 2e-3)
	assert.InDelta(t, -15.318, s.BackMM, 2e-3)
}

// A rotor outside leaves less pitch the deeper the slot is; measured sizes of a slot are kept; without
// iron there is no section, without a bore no neighbouring slot.
func TestSlotsAsTheyAreCut(t *testing.T) {
	s, why := Prepare(loadJob(t, "hub-outside")).Section()
	require.Empty(t, why)
	pitch := func(i int) float64 { return s.Next[i].X }
	assert.Less(t, pitch(len(s.Next)-1), pitch(2))
	assert.Equal(t, 17.0, s.Wide.Value)
	assert.False(t, s.Wide.Origin.Weak())
	_, why = Prepare(loadJob(t, "axial-air-core")).Section()
	assert.Contains(t, why, "no iron")
	j := loadJob(t, "water")
	j.Machine.BoreMM.Origin = 0
	s, why = Prepare(j).Section()
	assert.Empty(t, why)
	assert.Empty(t, s.Next)
	assert.NotEmpty(t, s.Wall)
}
