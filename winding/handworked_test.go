package winding

import (
	"math"
	"strings"
	"testing"

	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Three machines worked by hand, from plane geometry and copper alone: 8.89 g/cm³ and
// 0.017241 Ω·mm²/m at 20 °C (IEC 60028), ohms at 17 °C by 251.5/254.5. A tenth more is bought.
//
// A hub, rotor outside: 12 slots 15 to 9 mm wide, 18 deep, 3 of mouth, teeth of 9, stack 30;
// 24 turns of 1 mm (1.071 over the enamel, 0.7854 mm²) a tooth. A coil takes 24·1.071²/0.70 =
// 39.3 mm² of 16.75 mm of lined depth: 2.35 thick, its middle 0.25 + 1.17 = 1.42 off the
// tooth: 2·(30 + 9) + 4·1 + 2π·1.42 = 90.9 round. 2.18 m a coil, 15.2 g; 12 of them and a
// tenth 28.8 m, 0.201 kg. Four in series, two phases: 8·2.18·0.017241/0.7854 = 0.383 Ω.
// Liner: 9 + 2·√(18² + 3²) + 15 − 3 = 57.5 wide, 40 long; wedge at 0.75 below the mouth
// 14.75 less 0.507 = 14.2.
//
// 36 slots, two layers, throw 1 to 9, 4 poles, bore 105, stack 70, pear slots 18 deep, rounds
// of 7.5 and 5 mm, 2.8 of mouth: W = π·(105 + 18)·8/36 = 85.9; 2·70 + 2.4·85.9 + 4·12 =
// 394.2 round; straight 70 + 24 = 94; corners (394.2 − 188 − 171.7)/2.2832 = 15.1. 6 turns of
// two in hand: 2.365 m each strand, 2·2.365·0.7854·8.89 = 33.0 g; 36 coils, two strands, a
// tenth: 187.3 m, 1.308 kg, two spools of 1 kg. 2·12·2.365·0.017241/1.5708 = 0.623 Ω, 0.616
// at 17 °C. Liner: the round at the mouth stands √(2.5² − 1.4²) = 2.07 high, 12.18 are
// straight: π·3.75 + 2·√(12.18² + 1.25²) + 5·asin(2.07/2.5) = 41.1.
//
// Flat, one phase: 8 coils, hole 40 by 28, sides 22, 12 thick, circle 200; 60 turns of 1.4 mm
// (1.539 mm²): 2·(40 + 28) + 22π = 205.1 round; 12.31 m, 168 g; all 108.3 m, 1.48 kg; 8 in
// series 1.103 Ω. Ties 1.5·2·(22 + 12) = 102, 32 of them; mats 200 ± (40 + 44).
func TestThreeMachinesByHand(t *testing.T) {
	type want struct{ turn, metres, kg, buyM, buyKg, ohms20, ohmsT float64 }
	cut := func(tr *TrialOutcome, name string, pieces int, long, wide float64) {
		for _, c := range tr.Cuts {
			if c.Name == name {
				assert.Equal(t, pieces, c.Pieces, name)
				assert.InDelta(t, long, c.LengthMM.Value, 0.06, name)
				assert.InDelta(t, wide, c.WidthMM.Value, 0.06, name)
				return
			}
		}
		t.Errorf("no %s", name)
	}
	worked := func(text string, w want) *TrialOutcome {
		d := job.Parse(text)
		require.Empty(t, d.Problems())
		tr := &Evaluate(d.Job()).Trials[0]
		require.Len(t, tr.Buy, 1)
		const part = 0.003 // of three figures
		assert.InEpsilon(t, w.turn, tr.MeanTurnMM.Value, part)
		assert.InEpsilon(t, w.metres, tr.CoilMetres.Value, part)
		assert.InEpsilon(t, w.kg, tr.CoilKg.Value, part)
		assert.InEpsilon(t, w.buyM, tr.Buy[0].Metres.Value, part)
		assert.InEpsilon(t, w.buyKg, tr.Buy[0].Kg.Value, part)
		assert.InEpsilon(t, w.ohms20, tr.LeadOhms20.Value, part)
		assert.InEpsilon(t, w.ohmsT, tr.LeadOhmsT.Value, part)
		return tr
	}
	hub := worked("[machine]\nslots = 12\npoles = 14\nspan = 1\nrotor = \"outside\"\nbore_mm = 96\nstack_mm = 30\n"+
		"[slot]\nshape = \"tapered\"\ntop_mm = 15\nbottom_mm = 9\ndepth_mm = 18\nmouth_mm = 3\ntooth_mm = 9\n[[trial]]\nname = \"A\"\nturns = 24\ngauge = \"1.0 mm\"\n",
		want{90.9, 2.18, 0.01523, 28.8, 0.201, 0.383, 0.383})
	cut(hub, "slot liner", 12, 40, 57.5)
	cut(hub, "wedge", 12, 40, 14.24)
	mill := worked("[machine]\nslots = 36\npoles = 4\nlayers = 2\nspan = 8\nbore_mm = 105\nstack_mm = 70\nend_run_mm = 12\n"+
		"[slot]\nshape = \"pear\"\ntop_mm = 5\nbottom_mm = 7.5\ndepth_mm = 18\nmouth_mm = 2.8\nseparator_mm = 0.3\n[target]\ntest_at_c = 17\n"+
		"[[trial]]\nname = \"A\"\nturns = 6\ngauge = \"1.0 mm\"\nstrands = 2\n",
		want{394.2, 2.365, 0.03303, 187.3, 1.308, 0.623, 0.616})
	assert.InDelta(t, 94, mill.StraightMM.Value, 1e-9)
	assert.InDelta(t, 85.87, mill.WidthMM.Value, 0.01)
	assert.InDelta(t, 15.1, mill.RadiusMM.Value, 0.1)
	assert.Equal(t, 2.0, mill.Buy[0].Spools.Value)
	cut(mill, "slot liner", 36, 80, 41.15)
	cut(mill, "phase paper", 24, 105.87, 47)
	flat := worked("[machine]\nstator = \"flat\"\nphases = 1\nslots = 8\npoles = 8\nbore_mm = 200\nstack_mm = 40\nhole_mm = 28\nside_mm = 22\nthick_mm = 12\n"+
		"[field]\nkind = \"magnets\"\n[[trial]]\nname = \"A\"\nturns = 60\ngauge = \"1.4 mm\"\n",
		want{205.1, 12.31, 0.1684, 108.3, 1.482, 1.103, 1.103})
	cut(flat, "tie, coil", 32, 102, 0)
	cut(flat, "glass mat", 2, 284, 116)
	assert.Empty(t, flat.MouthText)
	assert.False(t, flat.MouthSpareMM.Known())
}

// With the rotor outside the end winding is laced round a circle inside the gap's, at half depth of the
// slots; with it inside round one outside the gap's.
func TestLacingGoesRoundTheMiddleOfTheSlots(t *testing.T) {
	text := "[machine]\nslots = 24\npoles = 4\nspan = 5\nlayers = 1\nbore_mm = 100\nstack_mm = 40\nROTOR[slot]\nshape = \"parallel\"\ntop_mm = 6\ndepth_mm = 16\n[[trial]]\nname = \"A\"\nturns = 5\ngauge = \"1 mm\"\n"
	for rotor, across := range map[string]float64{"": 116, "rotor = \"outside\"\n": 84} {
		tr := Evaluate(job.Parse(strings.Replace(text, "ROTOR", rotor, 1)).Job()).Trials[0]
		last := tr.Cuts[len(tr.Cuts)-1]
		require.Equal(t, "lacing cord", last.Name)
		assert.InDelta(t, 6*math.Pi*across, last.LengthMM.Value, 0.1, rotor)
	}
}
