package winding

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func everyJob(t *testing.T) map[string]job.Job {
	t.Helper()
	all := map[string]job.Job{"example": job.Example().Job()}
	files, err := filepath.Glob("../testdata/jobs/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		d := job.Parse(string(text))
		all[filepath.Base(f)] = d.Job()
	}
	return all
}

// A rectangle with rounded corners, measured along its outline: two straight parts, two ends less their
// corners, four quarter circles. It must equal the mean turn; the coil's length is that times its
// turns, its weight that of the length, and all coils together are the metal wound in.
func TestFormerAgreesWithMeanTurnAndWire(t *testing.T) {
	formers := 0
	for name, j := range everyJob(t) {
		b := Prepare(j)
		o := b.Outcome()
		for i, tr := range o.Trials {
			plan, _ := b.Plan(i)
			if plan == nil {
				continue // no slots and poles: nothing of a coil list is known
			}
			coils := float64(len(plan.Coils()))
			turns := float64(plan.PhaseTurns(0, 0)) / float64(plan.CoilsPerPhase()) // of unequal coils the mean
			assert.InEpsilon(t, tr.MeanTurnMM.Value*turns/1000, tr.CoilMetres.Value, 1e-9, name)
			assert.InEpsilon(t, tr.CopperKg.Value, tr.CoilKg.Value*coils, 1e-9, name)
			if !tr.RadiusMM.Known() {
				assert.NotEmpty(t, tr.RadiusMM.Why, name)
				continue
			}
			formers++
			s, w, r := tr.StraightMM.Value, tr.WidthMM.Value, tr.RadiusMM.Value
			assert.GreaterOrEqual(t, r, 0.0, name)
			assert.LessOrEqual(t, r, w/2+1e-9, name)
			assert.InEpsilon(t, tr.MeanTurnMM.Value, 2*s+2*(w-2*r)+2*math.Pi*r, 1e-9, name)
		}
	}
	assert.Greater(t, formers, 15)
}

// turnOf185 is the example with its mean turn measured.
func turnOf185() job.Job {
	j := job.Example().Job()
	j.Machine.MeanTurnMM = quantity.Known(185)
	return j
}

// Worked by hand for the example with a turn of 185 mm: stack 33 mm and 9 mm out at each end are 51 mm
// straight. A slot of 72 mm² 2.6 times as deep as wide is √(72/2.6) = 5.262 mm wide and 13.68 mm deep,
// so half depth lies on a circle of 89 + 13.68 = 102.68 mm, and three of 36 slots are π·102.68/12 =
// 26.88 mm of it. Of the turn of 185 mm, 102 and 53.76 are straight: 29.24 are left for corners that
// gain 2.2832 mm a mm of radius: 12.81 mm.
func TestFormerByHand(t *testing.T) {
	tr := Evaluate(turnOf185()).Trials[0]
	assert.InDelta(t, 51, tr.StraightMM.Value, 0.001)
	assert.InDelta(t, 26.88, tr.WidthMM.Value, 0.005)
	assert.InDelta(t, 12.81, tr.RadiusMM.Value, 0.01)
	assert.InDelta(t, 17*0.185, tr.CoilMetres.Value, 1e-9)
}

func TestFormerOfALongTurnHasRoundEnds(t *testing.T) {
	j := job.Example().Job()
	j.Machine.MeanTurnMM = quantity.Known(250)
	tr := Evaluate(j).Trials[0]
	assert.InDelta(t, tr.WidthMM.Value/2, tr.RadiusMM.Value, 1e-9)
	assert.InDelta(t, (250-math.Pi*26.88)/2, tr.StraightMM.Value, 0.01)
	assert.NotEmpty(t, tr.StraightMM.Why)
	j.Machine.MeanTurnMM = quantity.Known(150)
	tr = Evaluate(j).Trials[0]
	assert.False(t, tr.RadiusMM.Known())
	assert.Contains(t, tr.RadiusMM.Why, "150 mm is shorter than round the straight parts and the width, 156 mm")
}

// The cut list of that machine, worked by hand. Liner: stack 33 and 5 mm out at each end, 43
// long; the wall of a slot 5.262 wide and 13.68 deep is 2·13.68 + 2·5.262 − 2.6 of mouth =
// 35.29 wide. Wedge: as long, as wide as the slot within its liners, 5.262 − 0.5 = 4.76. One
// layer: no separator. 15 joins coil to coil (6 coils a phase) and the star point: 16
// sleeves; three leads. One coil a group, 18 groups, two ends: 36 papers. The coil ends
// 9 + 12.81 = 21.81 mm out of the iron, its width is 26.88; 10 mm more all round: 46.88 ×
// 41.81. Cord: 6 × π × 102.68 = 1935.5 mm. Sleeves: 15 AWG of heavy build is at most
// 1.547 mm over the enamel; 1.3 times that is 2.01 mm for a lead, twice that for a joint.
func TestCutListByHand(t *testing.T) {
	tr := Evaluate(turnOf185()).Trials[0]
	type row struct {
		pieces               int
		length, width, thick float64
	}
	want := map[string]row{
		"slot liner": {36, 43, 35.29, 0.25}, "wedge": {36, 43, 4.76, 1}, "phase paper": {36, 46.88, 41.81, 0},
		"sleeve, joint": {16, 40, 4.02, 0}, "sleeve, lead": {3, 200, 2.01, 0}, "lacing cord": {0, 1935.5, 0, 0},
	}
	require.Len(t, tr.Cuts, len(want))
	for _, c := range tr.Cuts {
		w, ok := want[c.Name]
		require.True(t, ok, c.Name)
		assert.Equal(t, w.pieces, c.Pieces, c.Name)
		assert.InDelta(t, w.length, c.LengthMM.Value, 0.5, c.Name)
		assert.InDelta(t, w.width, c.WidthMM.Value, 0.02, c.Name)
		assert.Equal(t, w.thick, c.ThickMM.Value, c.Name)
	}
}

// A separator is cut where its thickness is given; if empty, its field says that none will be used.
func TestSeparatorIsCutWhereOneIsUsed(t *testing.T) {
	j := job.Example().Job()
	j.Machine.Layers = quantity.Known(2)
	find := func() *Cut {
		for _, c := range Evaluate(j).Trials[0].Cuts {
			if c.Name == "separator" {
				return &c
			}
		}
		return nil
	}
	assert.Nil(t, find())
	j.Slot.SeparatorMM = quantity.Known(0.2)
	c := find()
	require.NotNil(t, c)
	assert.Equal(t, 36, c.Pieces)
	assert.InDelta(t, 0.2, c.ThickMM.Value, 1e-9)
	assert.InDelta(t, 5.262-0.5, c.WidthMM.Value, 0.01)
}

// A corner radius of less than half the coil's thickness cannot be wound: the example's coil of 17
// wires is some 6 mm thick (√17 × 1.53 mm), a turn 0.3 mm longer than its rectangle leaves 0.3/(2π − 4)
// = 0.13 mm.
func TestACornerNeedsRoomForTheCoil(t *testing.T) {
	j := job.Example().Job()
	o := Evaluate(j).Trials[0]
	require.True(t, o.RadiusMM.Known(), o.RadiusMM.Why)
	rectangle := 2 * (o.StraightMM.Value + o.WidthMM.Value)
	j.Machine.MeanTurnMM = quantity.Known(rectangle + 0.3)
	o = Evaluate(j).Trials[0]
	assert.False(t, o.RadiusMM.Known())
	assert.Contains(t, o.RadiusMM.Why, "corner of 0.13 mm")
	assert.Contains(t, o.RadiusMM.Why, "some 6.3 mm thick")
	j.Machine.MeanTurnMM = quantity.Known(rectangle + 2.2832*3.3)
	assert.True(t, Evaluate(j).Trials[0].RadiusMM.Known(), "3.3 mm are more than half of it")
}

// A measured turn takes precedence over an assumed end run. Worked by hand for a turn of 150 mm: 66 mm
// of it lie in the iron and 53.76 across; 17 wires of 1.534 mm over the enamel in a square are 6.32 mm
// thick, whose corners need at least 7.2 mm. This leaves 5.75 mm at each end, 5.5 in half millimetres:
// 44 mm straight and corners of (30.24 − 22)/2.2832 = 3.61 mm. That is noted without a doubt; if the
// iron's own 119.76 mm is too long for the turn, no end run helps.
func TestAnEndRunThatNobodyGaveGivesWay(t *testing.T) {
	j := job.Example().Job()
	j.Machine.MeanTurnMM = quantity.Known(150)
	j.Machine.EndRunMM = quantity.Reading{}
	o := Evaluate(j)
	tr := &o.Trials[0]
	assert.InDelta(t, 44, tr.StraightMM.Value, 1e-9)
	assert.InDelta(t, 3.61, tr.RadiusMM.Value, 0.01)
	assert.True(t, tr.StraightMM.Origin.Weak())
	assert.Equal(t, "end run not given: 5.5 mm agrees with the mean turn, the usual 9 mm does not", tr.StraightMM.Why)
	var ranks []Severity
	for _, f := range o.Findings {
		if f.Path == "machine.end_run" && f.Trial == "A" {
			ranks = append(ranks, f.Severity)
		}
	}
	assert.Equal(t, []Severity{Note}, ranks)
	j.Machine.MeanTurnMM = quantity.Known(115)
	assert.False(t, Evaluate(j).Trials[0].RadiusMM.Known())
}
