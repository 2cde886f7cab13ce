package slot

import (
	"encoding/csv"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// published is the table of fill factors by definition and winding; sources in the file.
func published(t *testing.T) map[string][2]float64 {
	t.Helper()
	file, err := os.Open("../../testdata/slot/slot_fill.csv")
	require.NoError(t, err)
	defer file.Close()
	read := csv.NewReader(file)
	read.Comment = '#'
	rows, err := read.ReadAll()
	require.NoError(t, err)
	table := map[string][2]float64{}
	for _, row := range rows[1:] {
		low, err := strconv.ParseFloat(row[4], 64)
		require.NoError(t, err)
		high, err := strconv.ParseFloat(row[5], 64)
		require.NoError(t, err)
		table[row[0]+"; "+row[3]] = [2]float64{low, high}
	}
	return table
}

// Wires in exact square rows: the published and computed fills of that packing, from the
// rows "ideal square packing" of the table.
func TestFillOfSquarePacking(t *testing.T) {
	table := published(t)
	room := mustMeasure(t, Slot{Shape: Parallel, TopMM: 20, DepthMM: 30}, Insulation{})
	got := Fill(room, [2]Wire{{OverallMM: 0.5, BareMM: 0.45, Count: 1}}, 40*60)
	assert.InDelta(t, table["sum of d^2 / area, ideal square packing; square lattice"][0], got.Wire, 1e-12)
	assert.InDelta(t, table["circle area / area, ideal square packing; square lattice"][0], got.Round, 5e-5)
	assert.InDelta(t, math.Pi/4*0.81, got.Copper, 1e-12)
}

// A usual small slot, filled by hand to the usual wire fill of 0.65 to 0.75 (common
// practice, no source), must come out at the copper fill published for hand-inserted round
// wire (0.30, the glossary of a motor maker) up to the random-wound band (0.45).
func TestHandFillGivesPublishedCopperFill(t *testing.T) {
	table := published(t)
	low := table["bare copper / gross slot; manually inserted round wire"][0]
	high := table["bare copper / gross slot; random-wound low-voltage machine, round wire"][1]
	require.Equal(t, 0.30, low)
	require.Equal(t, 0.45, high)
	room := mustMeasure(t, Slot{Shape: Tapered, TopMM: 8, BottomMM: 6, DepthMM: 16, MouthMM: 3},
		Insulation{LinerMM: 0.25, WedgeMM: 1, SeparatorMM: 0.25, Layers: 2})
	wires := [2]Wire{{OverallMM: 0.79, BareMM: 0.71, Count: 1}} // IEC 60317-0-1 grade 2, from memory
	// By hand: 112 gross, less 0.25·43.062 of liner, 7.405 of wedge and 1.625 of separator are
	// 92.204 mm²; 0.65 and 0.75 of it over 2·0.79² are 48.02 and 55.40 turns.
	require.InDelta(t, 92.204, room.NetMM2, 0.001)
	for limit, byHand := range map[float64]int{0.65: 48, 0.75: 55} {
		turns := TurnsThatFit(room.NetMM2, SquarePerTurnMM2(wires), 2, limit)
		assert.Equal(t, byHand, turns, "limit %g", limit)
		assert.InEpsilon(t, 2*float64(byHand)*math.Pi/4*0.71*0.71/112, Fill(room, wires, 2*turns).Copper, 1e-12)
		assert.Greater(t, Fill(room, wires, 2*turns).Copper, low, "limit %g", limit)
		assert.Less(t, Fill(room, wires, 2*turns).Copper, high, "limit %g", limit)
	}
}

func TestFillProperties(t *testing.T) {
	everyRoom(t, func(t *testing.T, r *rand.Rand, s Slot, ins Insulation, room Room) {
		wires := [2]Wire{{OverallMM: 0.5 + r.Float64(), Count: 1 + r.IntN(3)}, {OverallMM: 0.3 + r.Float64(), Count: r.IntN(3)}}
		for i := range wires {
			wires[i].BareMM = wires[i].OverallMM * 0.92
		}
		z := 1 + r.IntN(60)
		f := Fill(room, wires, z)
		assert.Less(t, f.Copper, f.Round)
		assert.Less(t, f.Round, f.Wire)
		assert.InDelta(t, 2*f.Wire, Fill(room, wires, 2*z).Wire, 1e-12)

		limit := 0.3 + 0.6*r.Float64()
		square := SquarePerTurnMM2(wires)
		turns := TurnsThatFit(room.NetMM2, square, room.Layers, limit)
		assert.LessOrEqual(t, Fill(room, wires, turns*room.Layers).Wire, limit*(1+FitTolerance))
		assert.Greater(t, Fill(room, wires, (turns+1)*room.Layers).Wire, limit)
		assert.LessOrEqual(t, turns, TurnsThatFit(room.NetMM2, square, room.Layers, limit+0.05))
		assert.GreaterOrEqual(t, turns, TurnsThatFit(room.NetMM2, square*1.1, room.Layers, limit))
		assert.LessOrEqual(t, turns, TurnsThatFit(room.NetMM2*1.1, square, room.Layers, limit))

		s2, ins2 := scaled(s, ins, 2)
		for i := range wires {
			wires[i].OverallMM, wires[i].BareMM = 2*wires[i].OverallMM, 2*wires[i].BareMM
		}
		assert.InDelta(t, f.Copper, Fill(mustMeasure(t, s2, ins2), wires, z).Copper, 1e-9, "fills are pure numbers")
	})
}

// Every whole number of turns, exactly at the limit, must count as fitting.
func TestTurnsThatFitAtTheBoundary(t *testing.T) {
	for turns := 1; turns <= 500; turns++ {
		for _, d := range []float64{0.1, 0.3, 0.71, 0.789, 1.1} {
			for _, limit := range []float64{0.7, 0.65, 0.9, 1} {
				for layers := 1; layers <= 2; layers++ {
					net := float64(turns*layers) * (d * d) / limit
					require.Equal(t, turns, TurnsThatFit(net, d*d, layers, limit), "%d turns of %g at %g", turns, d, limit)
					require.Equal(t, turns-1, TurnsThatFit(net*(1-1e-6), d*d, layers, limit))
				}
			}
		}
	}
}

func TestTurnsThatFitEdges(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, a := range [][3]float64{{0, 1, 0.7}, {-5, 1, 0.7}, {100, 0, 0.7}, {100, 1, 0}, {nan, 1, 0.7}, {100, nan, 0.7}, {100, 1, nan}, {inf, 1, 0.7}, {100, inf, 0.7}} {
		assert.Zero(t, TurnsThatFit(a[0], a[1], 1, a[2]), a)
	}
	assert.Zero(t, TurnsThatFit(100, 1, 0, 0.7))
	assert.Equal(t, 1000000000, TurnsThatFit(1e5, 1e-12, 1, 1))
	assert.Zero(t, testing.AllocsPerRun(100, func() { TurnsThatFit(87.3, 0.62, 2, 0.7) }))
	assert.Zero(t, Fill(Room{}, [2]Wire{{OverallMM: 1, BareMM: 0.9, Count: 1}}, 10))
}

func TestCheckMouth(t *testing.T) {
	s := Slot{Shape: Parallel, TopMM: 8, DepthMM: 16, MouthMM: 2.5}
	lined := mustMeasure(t, s, Insulation{LinerMM: 0.25})
	tests := []struct {
		room   Room
		wire   float64
		passes bool
		spare  float64
		says   string
	}{
		{lined, 1.2, true, 0.8, "0.80 mm to spare"},
		{lined, 1.8, true, 0.2, "tight"},
		{lined, 2.0, false, 0, "does not pass"}, // exactly as wide as the opening: under it is asked
		{lined, 2.3, false, -0.3, "0.300 mm too thick"},
		{mustMeasure(t, s, Insulation{LinerMM: 1.3}), 0.5, false, -0.6, "liner closes the mouth"},
	}
	for _, tt := range tests {
		m := CheckMouth(tt.room, tt.wire)
		assert.Equal(t, tt.passes, m.Passes, m.Text)
		assert.True(t, m.Known)
		assert.InDelta(t, tt.spare, m.SpareMM, 1e-9)
		assert.Contains(t, m.Text, tt.says)
	}
	s.MouthMM = 0
	m := CheckMouth(mustMeasure(t, s, Insulation{LinerMM: 0.25}), 5)
	assert.False(t, m.Known)
	assert.True(t, m.Passes)
	assert.False(t, CheckMouth(lined, math.NaN()).Passes)
}
