package winding

import (
	"math"
	"testing"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ironOf is the iron of a stator of 36 slots, 140 mm bore, 40 mm stack.
func ironOf(slot job.SlotSpec, outside float64) iron {
	m := newMachine(job.Machine{Slots: quantity.Known(36), Poles: quantity.Known(12), BoreMM: quantity.Known(140), StackMM: quantity.Known(40)})
	if outside > 0 {
		m.OutsideMM = quantity.Known(outside)
	}
	room := measureSlot(slot)
	return newIron(&m, &room, slot.ToothMM, &job.FieldSpec{Kind: job.FieldMagnets, MagnetCover: quantity.Known(0.75)})
}

// Tooth and yoke by hand. The slot is 7 mm wide below a neck of 1 mm and 10 mm at 24 mm
// more: the pitch there is π·142/36 and π·190/36, so the teeth are 5.39 and 6.58 mm. A pole's
// flux, 2/π of the working wave over π·140/12, halves into a yoke of 10 mm.
func TestToothAndYokeByHand(t *testing.T) {
	tapered := job.SlotSpec{Shape: "tapered", TopMM: quantity.Known(7), BottomMM: quantity.Known(10), DepthMM: quantity.Known(24)}
	s := ironOf(tapered, 210)
	assert.InEpsilon(t, math.Pi*142/36-7, s.toothMM.Value, 1e-9)
	assert.InEpsilon(t, math.Pi*140/36/(math.Pi*142/36-7)/0.95, s.tooth.Value, 1e-9)
	assert.InEpsilon(t, math.Pi*140/12/2/10/0.95, s.yoke.Value, 1e-9)
	require.Len(t, s.path, toothSlices+1)
	length := 0.0
	for _, p := range s.path[:toothSlices] {
		length += p.MM
	}
	assert.InEpsilon(t, 24, length, 1e-12)
	yoke := s.path[toothSlices]
	assert.InEpsilon(t, math.Pi*200/24, yoke.MM, 1e-12, "half a pole pitch at the yoke's middle")
	assert.InEpsilon(t, 0.75*s.yoke.Value, yoke.Times, 1e-12)
	// The middle of the first slice lies 1.5 mm below the neck: 7 + 3·1.5/24 wide.
	wide := math.Pi*(142+3)/36 - 7 - 3*1.5/24
	assert.InEpsilon(t, math.Pi*140/36/wide/0.95, s.path[0].Times, 1e-9)

	assert.False(t, ironOf(tapered, 0).yoke.Known())
	assert.False(t, ironOf(tapered, 150).yoke.Known(), "slots deeper than the iron")
	wider := job.SlotSpec{Shape: "parallel", TopMM: quantity.Known(13), DepthMM: quantity.Known(24)}
	assert.False(t, ironOf(wider, 0).tooth.Known())
	assert.Nil(t, ironOf(wider, 0).path)
	assert.Equal(t, quantity.Guessed, ironOf(job.SlotSpec{AreaMM2: quantity.Known(72)}, 0).tooth.Origin, "a shape assumed from its area")
}

// A wheel generator with 5.4 mm teeth and 1.04 T in the gap loses some 6 % of its flux to
// the teeth, which come to 2.0 T (worked out apart from this program, with another curve).
func TestTeethTakeFluxFromMagnets(t *testing.T) {
	j := job.Job{Machine: job.Machine{Slots: quantity.Known(36), Poles: quantity.Known(12), BoreMM: quantity.Known(140), StackMM: quantity.Known(40), AirGapMM: quantity.Known(1)},
		Slot:  job.SlotSpec{Shape: "tapered", TopMM: quantity.Known(7), BottomMM: quantity.Known(10), DepthMM: quantity.Known(24), MouthMM: quantity.Known(3)},
		Field: job.FieldSpec{Kind: "magnets", RemanenceTesla: quantity.Known(1.25), MagnetMM: quantity.Known(5), MagnetCover: quantity.Known(0.75), LeakageFactor: quantity.Known(1.15)}}
	b := Prepare(j)
	wb, ok := magnetFlux(&j.Field, &b.machine, j.Slot.MouthMM, field.Iron{})
	require.True(t, ok)
	assert.InDelta(t, 0.94, b.flux.webers(b.machine.Poles).Value/wb.Value, 0.01)
	o := b.Outcome()
	assert.InDelta(t, 2.0, o.Machine.ToothTesla.Value, 0.05)
	found := false
	for _, f := range o.Findings {
		found = found || f.Path == "slot.top" && f.Severity == Doubt
	}
	assert.True(t, found)
}

// A calipered tooth is the tooth, whatever the slot's proportions leave: 10 mm of 140·π/36 = 12.217 mm
// carry 12.217/10/0.95 = 1.286 times the gap's density.
func TestCaliperedToothIsTheTooth(t *testing.T) {
	s := ironOf(job.SlotSpec{AreaMM2: quantity.Known(72), ToothMM: quantity.Known(10)}, 0)
	assert.Equal(t, 10.0, s.toothMM.Value)
	assert.InDelta(t, 1.286, s.tooth.Value, 1e-3)
	assert.NotEqual(t, quantity.Guessed, s.toothMM.Origin)
}

// What a tooth gathers, by adding the wave up across it: twelve teeth under fourteen poles stand 7/6 of a
// pole pitch wide, so the next poles' magnets take some back; thirty-six under twelve a third of one.
func TestAToothGathersWhatStandsOverIt(t *testing.T) {
	for _, c := range []struct {
		slots, poles, cover float64
		kind                string
	}{
		{12, 14, 0.75, job.FieldMagnets}, {12, 14, 0.95, job.FieldMagnets}, {9, 8, 0.8, job.FieldMagnets}, {36, 12, 0.75, job.FieldMagnets}, {16, 16, 1, job.FieldMagnets},
		{12, 14, 0, job.FieldWound}, {36, 12, 0, job.FieldWound}, {9, 8, 0, ""},
	} {
		m := newMachine(job.Machine{Slots: quantity.Known(c.slots), Poles: quantity.Known(c.poles), BoreMM: quantity.Known(55)})
		slots, pole := math.Pi*55/c.slots, math.Pi*55/c.poles
		wave := func(x float64) float64 { // 1 at its peak
			if c.kind != job.FieldMagnets {
				return math.Cos(math.Pi * x / pole)
			}
			switch off := math.Abs(x); {
			case off < c.cover*pole/2:
				return 1
			case off > pole*(1-c.cover/2):
				return -1
			}
			return 0
		}
		const steps = 200000
		sum := 0.0
		for i := range steps {
			sum += wave(slots*((float64(i)+0.5)/steps-0.5)) * slots / steps
		}
		assert.InEpsilon(t, sum, gathered(&m, c.kind == job.FieldMagnets, c.cover), 1e-4, "%v", c)
	}
	assert.InEpsilon(t, math.Pi*140/36, gathered(&machine{Machine: job.Machine{Slots: quantity.Known(36), BoreMM: quantity.Known(140)}}, false, 0), 1e-12, "poles not known")
}
