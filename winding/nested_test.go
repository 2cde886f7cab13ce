package winding

import (
	"math"
	"testing"

	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Worked by hand for the nested coils of a stator of 24 slots, bore 70 mm, slots 14 mm deep, stack
// 50 mm, the wire 10 mm out at each end. Half depth lies on a circle of 84 mm: throws of 7 and 5
// slots are π·84·7/24 = 76.969 and 54.978 mm wide, the mean of equal turns 65.973 mm. The turn of
// that is 100 + 2.4·65.973 + 40 = 298.336 mm (Pyrhönen, Jokinen and Hrabovcová's end turn, from
// memory), those of the two 2.4·10.996 = 26.389 mm more and less: 324.725 and 271.947 mm. Of the
// wide one 140 and 153.938 are straight, 30.787 are left for corners that gain 2.28319 mm a mm:
// 13.484 mm; of the narrow one 22.0 of 271.947: 9.631 mm.
func TestNestedFormersByHand(t *testing.T) {
	j := everyJob(t)["nested-coils.toml"]
	list := Evaluate(j).Trials[0].Shapes
	require.Len(t, list, 2)
	for i, want := range []struct {
		span                         int
		turn, wide, radius, straight float64
	}{{7, 324.725, 76.969, 13.484, 70}, {5, 271.947, 54.978, 9.631, 70}} {
		s := list[i]
		assert.Equal(t, [3]int{want.span, 20, 6}, [3]int{s.Span, s.Turns, s.Count})
		assert.InDelta(t, want.turn, s.TurnMM.Value, 0.002)
		assert.InDelta(t, want.wide, s.WidthMM.Value, 0.001)
		assert.InDelta(t, want.radius, s.RadiusMM.Value, 0.002)
		assert.InDelta(t, want.straight, s.StraightMM.Value, 1e-9)
		assert.InDelta(t, want.turn*20/1000, s.Metres.Value, 1e-4)
	}
}

// Whatever the turns of a group and the measured mean turn, the coils together are the wire that
// the mean turn says, the formers go round to their turns, and coils all alike have no list.
func TestShapesAreAllTheWire(t *testing.T) {
	j := everyJob(t)["nested-coils.toml"]
	for n := range 60 {
		j.Machine.MeanTurnMM = quantity.Reading{}
		if n%2 == 1 {
			j.Machine.MeanTurnMM = quantity.Known(280 + float64(n))
		}
		j.Trials[1].CoilTurns = []int{3 + n%7, 2 + n%11}
		for _, o := range Evaluate(j).Trials {
			metres, kg, coils := 0.0, 0.0, 0
			require.NotEmpty(t, o.Shapes)
			for _, s := range o.Shapes {
				metres += float64(s.Count) * s.Metres.Value
				kg += float64(s.Count) * s.Kg.Value
				coils += s.Count
				if s.RadiusMM.Known() {
					assert.InEpsilon(t, s.TurnMM.Value, 2*s.StraightMM.Value+2*s.WidthMM.Value+(2*math.Pi-4)*s.RadiusMM.Value, 1e-9)
				}
			}
			assert.Equal(t, 12, coils)
			assert.InEpsilon(t, float64(coils)*o.CoilMetres.Value, metres, 1e-9, n)
			assert.InEpsilon(t, o.CopperKg.Value, kg, 1e-9, n)
		}
	}
	j.Machine.Kind = "lap"
	j.Trials[1].CoilTurns = nil
	assert.Empty(t, Evaluate(j).Trials[0].Shapes)
}
