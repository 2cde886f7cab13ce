package slot

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// polygonArea is the shoelace formula (geometry).
func polygonArea(points []Point) float64 {
	sum := 0.0
	for i, p := range points {
		q := points[(i+1)%len(points)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum / 2
}

func TestMeasureByHand(t *testing.T) { // geometry, worked with pencil
	tests := []struct {
		name                                      string
		s                                         Slot
		ins                                       Insulation
		gross, perimeter, liner, wedge, sep, mean float64
	}{
		{"parallel 8 x 16, mouth 3, liner 0.25, wedge 1",
			Slot{Shape: Parallel, TopMM: 8, DepthMM: 16, MouthMM: 3}, Insulation{LinerMM: 0.25, WedgeMM: 1, Layers: 1},
			128, 45, 11.25, 7.5, 0, 8},
		{"the same in two layers, separator 0.3",
			Slot{Shape: Parallel, TopMM: 8, DepthMM: 16, MouthMM: 3}, Insulation{LinerMM: 0.25, WedgeMM: 1, SeparatorMM: 0.3, Layers: 2},
			128, 45, 11.25, 7.5, 2.25, 8},
		{"open slot: no liner under the mouth",
			Slot{Shape: Parallel, TopMM: 8, DepthMM: 16, MouthMM: 8}, Insulation{LinerMM: 0.25},
			128, 40, 10, 0, 0, 8},
		{"mouth not known: the liner is folded shut",
			Slot{Shape: Parallel, TopMM: 8, DepthMM: 16}, Insulation{LinerMM: 0.25},
			128, 48, 12, 0, 0, 8},
		{"tapered 10 to 4 over 4: sides 5 long (3-4-5)",
			Slot{Shape: Tapered, TopMM: 10, BottomMM: 4, DepthMM: 4, MouthMM: 2}, Insulation{LinerMM: 0.1},
			28, 22, 2.2, 0, 0, 7},
		{"round bottom, parallel sides 6, depth 13 with the round",
			Slot{Shape: RoundBottom, TopMM: 6, BottomMM: 6, DepthMM: 13, MouthMM: 2}, Insulation{LinerMM: 0.2},
			60 + 4.5*math.Pi, 24 + 3*math.Pi, 0.2 * (24 + 3*math.Pi), 0, 0, 6},
		{"area only, 2:1",
			Slot{AreaMM2: 200}, Insulation{LinerMM: 0.5},
			200, 60, 30, 0, 0, 10},
		{"area only, 1:1 by request",
			Slot{AreaMM2: 100, DepthPerWidth: 1}, Insulation{},
			100, 40, 0, 0, 0, 10},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			room := mustMeasure(t, tt.s, tt.ins)
			assert.InDelta(t, tt.gross, room.GrossMM2, 1e-9)
			assert.InDelta(t, tt.perimeter, room.PerimeterMM, 1e-9)
			assert.InDelta(t, tt.liner, room.LinerMM2, 1e-9)
			assert.InDelta(t, tt.wedge, room.WedgeMM2, 1e-9)
			assert.InDelta(t, tt.sep, room.SeparatorMM2, 1e-9)
			assert.InDelta(t, tt.gross-tt.liner-tt.wedge-tt.sep, room.NetMM2, 1e-9)
			assert.InDelta(t, tt.mean, room.WidthMidMM, 1e-9)
			assert.Equal(t, tt.s.Shape == AreaOnly, room.Assumed)
			assert.Equal(t, room.Assumed, strings.Contains(room.Note, "only the area is given"))
		})
	}
}

func TestMeasureProperties(t *testing.T) {
	everyRoom(t, func(t *testing.T, _ *rand.Rand, s Slot, ins Insulation, room Room) {
		assert.Positive(t, room.NetMM2)
		assert.LessOrEqual(t, room.NetMM2, room.GrossMM2)
		round := math.Pi / 8 * s.BottomMM * s.BottomMM
		switch s.Shape {
		case RoundBottom:
		case Pear:
			round += math.Pi / 8 * s.TopMM * s.TopMM
		default:
			round = 0
		}
		assert.InDelta(t, room.GrossMM2, polygonArea(room.Outline), 0.001*round+1e-9*room.GrossMM2)

		// The picture's room and the figures' agree except for corners and the areas under shoulders.
		inner := polygonArea(room.Inner) - room.SeparatorMM2
		assert.InDelta(t, room.NetMM2, inner, 6*ins.LinerMM*ins.LinerMM+ins.LinerMM*(s.MouthMM+0.8)+0.001*round)
		below := 0.0
		if w := room.wall; w.split > 0 {
			below = polygonArea(w.outline(w.liner, w.split))
			assert.InDelta(t, 0.5, below/polygonArea(room.Inner), 2e-3)
		}

		s2, ins2 := scaled(s, ins, 2)
		twice, err := Measure(s2, ins2)
		require.NoError(t, err)
		for i, pair := range [][2]float64{{room.GrossMM2, twice.GrossMM2}, {room.NetMM2, twice.NetMM2},
			{room.LinerMM2, twice.LinerMM2}, {room.WedgeMM2, twice.WedgeMM2}, {room.SeparatorMM2, twice.SeparatorMM2}} {
			assert.InDelta(t, 4*pair[0], pair[1], 1e-9*twice.GrossMM2, "area %d", i)
		}
		assert.InDelta(t, 2*room.PerimeterMM, twice.PerimeterMM, 1e-9*twice.PerimeterMM)
	})
}

func TestTaperedOfEqualWidthsIsParallel(t *testing.T) {
	ins := Insulation{LinerMM: 0.3, WedgeMM: 0.8, SeparatorMM: 0.2, Layers: 2}
	a := mustMeasure(t, Slot{Shape: Parallel, TopMM: 7, DepthMM: 18, MouthMM: 2.5, MouthHeightMM: 1}, ins)
	b := mustMeasure(t, Slot{Shape: Tapered, TopMM: 7, BottomMM: 7, DepthMM: 18, MouthMM: 2.5, MouthHeightMM: 1}, ins)
	assert.Equal(t, a, b)
}

func TestMoreInsulationLeavesLess(t *testing.T) {
	s := Slot{Shape: RoundBottom, TopMM: 9, BottomMM: 6, DepthMM: 20, MouthMM: 3}
	base := Insulation{LinerMM: 0.2, WedgeMM: 0.5, SeparatorMM: 0.2, Layers: 2}
	net := mustMeasure(t, s, base).NetMM2
	for i, more := range []Insulation{{LinerMM: 0.3, WedgeMM: 0.5, SeparatorMM: 0.2, Layers: 2},
		{LinerMM: 0.2, WedgeMM: 0.7, SeparatorMM: 0.2, Layers: 2}, {LinerMM: 0.2, WedgeMM: 0.5, SeparatorMM: 0.3, Layers: 2}} {
		assert.Less(t, mustMeasure(t, s, more).NetMM2, net, "row %d", i)
	}
	one := base
	one.Layers = 1
	assert.Greater(t, mustMeasure(t, s, one).NetMM2, net, "no separator in one layer")
}

func TestMeasureRefuses(t *testing.T) {
	ok := Slot{Shape: Tapered, TopMM: 8, BottomMM: 6, DepthMM: 16, MouthMM: 3, MouthHeightMM: 1}
	with := func(change func(*Slot)) Slot { s := ok; change(&s); return s }
	nan, inf := math.NaN(), math.Inf(1)
	tests := []struct {
		field string
		s     Slot
		ins   Insulation
		says  string
	}{
		{"TopMM", with(func(s *Slot) { s.TopMM = 0 }), Insulation{}, "more than 0"},
		{"TopMM", with(func(s *Slot) { s.TopMM = nan }), Insulation{}, "is NaN mm"},
		{"BottomMM", with(func(s *Slot) { s.BottomMM = -2 }), Insulation{}, "slot width at the yoke end is -2 mm"},
		{"DepthMM", with(func(s *Slot) { s.DepthMM = inf }), Insulation{}, "at most 1000 mm"},
		{"MouthMM", with(func(s *Slot) { s.MouthMM = 9 }), Insulation{}, "wider than the slot just below it, 8 mm"},
		{"MouthMM", with(func(s *Slot) { s.MouthMM = -1 }), Insulation{}, "is -1 mm"},
		{"MouthHeightMM", with(func(s *Slot) { s.MouthHeightMM = nan }), Insulation{}, "mouth height"},
		{"DepthMM", with(func(s *Slot) { s.Shape = RoundBottom; s.DepthMM = 2.5 }), Insulation{}, "the round included"},
		{"AreaMM2", Slot{}, Insulation{}, "slot area is 0 mm²"},
		{"DepthPerWidth", Slot{AreaMM2: 90, DepthPerWidth: 50}, Insulation{}, "from 0.1 to 20"},
		{"Shape", Slot{Shape: 9}, Insulation{}, "shape(9)"},
		{"LinerMM", ok, Insulation{LinerMM: -0.1}, "liner is -0.1 mm"},
		{"WedgeMM", ok, Insulation{WedgeMM: nan}, "wedge is NaN"},
		{"SeparatorMM", ok, Insulation{SeparatorMM: inf}, "separator"},
		{"Layers", ok, Insulation{Layers: 3}, "1 or 2"},
		{"WedgeMM", ok, Insulation{WedgeMM: 20}, "fills the slot"},
		{"LinerMM", ok, Insulation{LinerMM: 9, WedgeMM: 1}, "liner of 9 mm with a wedge of 1 mm fills the slot"},
		{"NetMM2", ok, Insulation{LinerMM: 3}, "too much"},
		{"SeparatorMM", ok, Insulation{SeparatorMM: 30, Layers: 2}, "thicker than the room of a layer"},
	}
	for _, tt := range tests {
		room, err := Measure(tt.s, tt.ins)
		var fault *FieldError
		require.True(t, errors.As(err, &fault), "%s: %v", tt.field, err)
		assert.Equal(t, tt.field, fault.Field, err)
		assert.ErrorContains(t, err, tt.says)
		assert.NotEmpty(t, fault.Advice)
		assert.Contains(t, fieldWords, fault.Field)
		assert.Zero(t, room)
	}
}

func TestNetSaysByHowMuch(t *testing.T) {
	// 4 x 10: liner 2 on a wall of 28 is 56, in 40: 16 too much; no wedge, no mouth given.
	_, err := Measure(Slot{Shape: Parallel, TopMM: 4, DepthMM: 10}, Insulation{LinerMM: 2})
	assert.ErrorContains(t, err, "16 mm² too much")
}

func FuzzParseShape(f *testing.F) {
	for _, name := range append(ShapeNames(), "", "Round Bottom", "TAPERED", "areaonly", "-") {
		f.Add(name)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParseShape(text)
		if err != nil {
			assert.ErrorContains(t, err, "expected one of area, parallel, tapered, round, pear")
			return
		}
		again, err := ParseShape(s.String())
		require.NoError(t, err)
		assert.Equal(t, s, again)
	})
}

func TestParseShape(t *testing.T) {
	for text, want := range map[string]Shape{"area": AreaOnly, "Parallel": Parallel, "TAPERED": Tapered, "round": RoundBottom, "Pear": Pear} {
		got, err := ParseShape(text)
		require.NoError(t, err)
		assert.Equal(t, want, got)
	}
	_, err := ParseShape("oval")
	assert.ErrorContains(t, err, `slot shape "oval"`)
}

func FuzzMeasure(f *testing.F) {
	f.Add(2, 100.0, 8.0, 6.0, 16.0, 3.0, 1.0, 0.25, 1.0, 0.2)
	f.Add(3, 0.0, 4.0, 12.0, 7.0, 0.0, 0.0, 0.0, 0.0, 0.0)
	f.Add(0, 1e-9, 1.0, 1.0, 1.0, 1e-3, 1e3, 0.0, 0.0, 0.0)
	f.Add(2, 0.0, 8.0, 308.0, 106.0, 6.0, 1.0, 0.25, 0.8, 64.2) // a separator thicker than a layer
	f.Fuzz(func(t *testing.T, shape int, area, top, bottom, depth, mouth, height, liner, wedge, sep float64) {
		room, err := Measure(Slot{Shape(shape), area, top, bottom, depth, mouth, height, 0}, Insulation{liner, wedge, sep, 2, shape%2 == 0})
		if err != nil {
			return
		}
		for _, v := range []float64{room.GrossMM2, room.NetMM2, room.WidthMidMM, LeakageParts(room, 2, 1).Total} {
			assert.True(t, finite(v), "%v %+v", v, room)
		}
		for _, p := range append(room.Outline, room.Inner...) {
			assert.False(t, math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0))
		}
	})
}
