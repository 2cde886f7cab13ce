package slot

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A pear by hand: rounds of 10 and 6 mm in 20 mm of depth leave 12 mm of straight sides, so
// (3 + 5)·12 + π/2·(5² + 3²) = 149.407 mm², and the wall is 2·√(2² + 12²) + π·5 + π·3. A mouth
// of 2 mm meets the round √(3² - 1²) = 2.8284 mm above its centre: the straight sides are 12.1716
// mm, and the cap of 3²·asin(1/3) - 2.8284 = 0.2301 mm² is the neck's.
func TestPearByHand(t *testing.T) {
	closed := mustMeasure(t, Slot{Shape: Pear, TopMM: 6, BottomMM: 10, DepthMM: 20}, Insulation{})
	assert.InDelta(t, 149.407, closed.GrossMM2, 0.001)
	assert.InDelta(t, 2*math.Sqrt(148)+8*math.Pi, closed.PerimeterMM, 1e-9)
	open := mustMeasure(t, Slot{Shape: Pear, TopMM: 6, BottomMM: 10, DepthMM: 20, MouthMM: 2, MouthHeightMM: 1}, Insulation{})
	assert.InDelta(t, 8*12.17157+math.Pi/2*34-0.23014, open.GrossMM2, 0.001)
	assert.InDelta(t, 2*math.Hypot(2, 12.17157)+5*math.Pi+3*(math.Pi-2*math.Asin(1.0/3)), open.PerimeterMM, 0.001)
	assert.InDelta(t, 1, open.wall.half(20), 1e-9, "the body is as wide as the neck where they meet")
	for _, p := range open.Outline {
		assert.InDelta(t, open.wall.half(p.Y), math.Abs(p.X), 1e-6)
	}
	_, err := Measure(Slot{Shape: Pear, TopMM: 6, BottomMM: 10, DepthMM: 8}, Insulation{})
	assert.ErrorContains(t, err, "the round included")
}

// A pear whose two rounds are equal with nothing between them is a circle: λ = 0.623, see
// TestLeakageOfRoundSlot. A body of 0.001 mm between them does not change it.
func TestPearOfTwoHalfDiscsIsARoundSlot(t *testing.T) {
	room := mustMeasure(t, Slot{Shape: Pear, TopMM: 8, BottomMM: 8, DepthMM: 8.001}, Insulation{})
	assert.InEpsilon(t, math.Pi*16, room.GrossMM2, 1e-3)
	assert.InDelta(t, 0.623, LeakageParts(room, 1, 1).Body, 1e-3)
}

// Ten wires of 1 mm a coil side in a slot of 10 by 20 mm: each coil has its own half of 5 mm,
// and one row of 20 stands against its tooth before a second begins. In 5 by 20 mm square rows
// hold 100 and no pattern less.
func TestSidesBesideOneAnother(t *testing.T) {
	room := mustMeasure(t, Slot{Shape: Parallel, TopMM: 10, DepthMM: 20}, Insulation{Layers: 2, Beside: true})
	p := Pack(room, [2]Wire{{OverallMM: 1, Count: 1}}, 10, 2)
	assert.True(t, p.Beside)
	assert.Equal(t, 20, p.Placed)
	for _, c := range p.Circles {
		side := 2*float64(c.Layer) - 1 // left is 0
		assert.InDelta(t, 4.5*side, c.X, 1e-9, "against its tooth")
	}
	assert.GreaterOrEqual(t, MostThatPack(room, 1), 200)
	assert.LessOrEqual(t, MostThatPack(room, 1), PackBound(room, 1))
	// A sheet of 0.4 mm upright takes 0.4·20 mm² and one wire's width of neither half's ten.
	sheet := mustMeasure(t, Slot{Shape: Parallel, TopMM: 10, DepthMM: 20}, Insulation{Layers: 2, Beside: true, SeparatorMM: 0.4})
	assert.InDelta(t, 8, sheet.SeparatorMM2, 1e-9)
	assert.InDelta(t, 8, polygonArea(sheet.Separator), 1e-9)
	assert.Less(t, MostThatPack(sheet, 1), MostThatPack(room, 1))
	_, err := Measure(Slot{Shape: Parallel, TopMM: 10, DepthMM: 20}, Insulation{Layers: 2, Beside: true, SeparatorMM: 11})
	assert.ErrorContains(t, err, "thicker than the room")
}

// Sides beside one another, by hand: of the slot's current the part y/h lies below y whether it is of
// one coil or of both, so with equal currents λ = h/3b as of one side, and with the currents at right
// angles each links only itself, half of it: (½)²·2 = ½.
func TestLeakageOfSidesBesideOneAnother(t *testing.T) {
	s := Slot{Shape: Parallel, TopMM: 8, DepthMM: 20, MouthMM: 2, MouthHeightMM: 1}
	room := mustMeasure(t, s, Insulation{WedgeMM: 2, Layers: 2, Beside: true})
	all := LeakageParts(room, 2, 1)
	assert.InEpsilon(t, 18/(3*8.0)+2.0/8+0.5, all.Total, 1e-5)
	assert.InEpsilon(t, all.Total/2, LeakageParts(room, 2, 0).Total, 1e-9)
	// 60 degrees apart, as of neighbouring teeth of two phases: cos 60° = ½ gives ¾.
	assert.InEpsilon(t, 0.75*all.Total, LeakageParts(room, 2, 0.5).Total, 1e-9)
	// One over the other at right angles the upper one links less of the body than the lower.
	stacked := LeakageParts(mustMeasure(t, s, Insulation{WedgeMM: 2, Layers: 2}), 2, 0)
	assert.Greater(t, stacked.Body, LeakageParts(room, 2, 0).Body)
}
