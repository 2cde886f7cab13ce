package slot

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// randomSlot is a slot of the kind small alternators have, of any shape, either side wider.
func randomSlot(r *rand.Rand) Slot {
	mm := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	s := Slot{Shape: Shape(r.IntN(5)), AreaMM2: mm(40, 400), TopMM: mm(4, 14), BottomMM: mm(4, 14), DepthMM: mm(10, 30)}
	if s.Shape == Pear {
		s.DepthMM += 6 // room for both rounds
	}
	if r.IntN(3) > 0 {
		s.MouthMM, s.MouthHeightMM = mm(1.5, 4), mm(0, 2)
	}
	if r.IntN(2) > 0 {
		s.DepthPerWidth = mm(1, 4)
	}
	return s
}

func randomInsulation(r *rand.Rand) Insulation {
	return Insulation{
		LinerMM: 0.4 * r.Float64(), WedgeMM: 1.2 * r.Float64(), SeparatorMM: 0.4 * r.Float64(), Layers: 1 + r.IntN(2), Beside: r.IntN(2) == 0,
	}
}

// scaled is the slot and insulation with every length k times as long.
func scaled(s Slot, ins Insulation, k float64) (Slot, Insulation) {
	s.AreaMM2 *= k * k
	s.TopMM *= k
	s.BottomMM *= k
	s.DepthMM *= k
	s.MouthMM *= k
	s.MouthHeightMM *= k
	ins.LinerMM *= k
	ins.WedgeMM *= k
	ins.SeparatorMM *= k
	return s, ins
}

// everyRoom runs check on many random rooms, the same ones each time.
func everyRoom(t *testing.T, check func(t *testing.T, r *rand.Rand, s Slot, ins Insulation, room Room)) {
	t.Helper()
	r := rand.New(rand.NewPCG(7, 11))
	n := 2000
	if testing.Short() {
		n = 300
	}
	for range n {
		s, ins := randomSlot(r), randomInsulation(r)
		room, err := Measure(s, ins)
		require.NoError(t, err, "%+v %+v", s, ins)
		check(t, r, s, ins, room)
		if t.Failed() {
			t.Fatalf("first failing slot: %+v %+v", s, ins)
		}
	}
}

func mustMeasure(t testing.TB, s Slot, ins Insulation) Room {
	t.Helper()
	room, err := Measure(s, ins)
	require.NoError(t, err)
	return room
}
