package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The hub by hand. Its slots are on average 13.75 mm wide and 21 deep (288.75 mm²); half way
// down, on a circle of 118 - 21 = 97 mm, they stand π·97/12 = 25.394 mm apart, which leaves
// teeth of 11.644. 38 wires of 0.81 mm over, each its square at 0.70, take 24.932/0.70 = 35.617
// mm², over 21 - 0.25 - 1 = 19.75 mm of lined depth 1.803 mm. The middle wire lies 0.25 + 0.902
// off the tooth: 2·22 + 2·11.644 + 4·1 + 2π·1.152 = 78.53 mm. Four coils of a phase are 38·4
// of that, 11.94 m, and two phases in series twice that.
func TestHubRoundOneTooth(t *testing.T) {
	j := load(t, "hub-outside.toml")
	j.Old.LeadOhms = quantity.Reading{}
	a := evaluateA(j)
	assert.InDelta(t, 78.53, a.MeanTurnMM.Value, 0.01)
	assert.Contains(t, a.MeanTurnFrom, "tooth")
	bare := math.Sqrt(a.ConductorAreaMM2.Value * 4 / math.Pi)
	assert.InDelta(t, 2*4*38*0.07853/(58e6*math.Pi/4*bare*bare*1e-6), a.LeadOhms20.Value, 1e-3)
	// The measured ohms, 0.94 with wire of 0.75 mm, imply the same turn: no doubt.
	o := winding.Evaluate(load(t, "hub-outside.toml"))
	assert.InDelta(t, 78.5, o.Trials[0].MeanTurnMM.Value, 1)
	assert.Nil(t, finding(&o, "old.lead"))
}

// The same turns with 0.8 mm wire: 0.5027 mm² of copper, 11.94 m a phase, so two phases of 0.409 Ω and
// 3·11.94 m·4.47 g/m = 0.160 kg.
func TestHubOhmsAndCopper(t *testing.T) {
	j := load(t, "hub-outside.toml")
	j.Old.LeadOhms = quantity.Reading{}
	require.NoError(t, setGauge(&j.Trials[0], "IEC 0.8 mm"))
	a := evaluateA(j)
	assert.InDelta(t, 0.82, a.LeadOhms20.Value, 0.01)
	assert.InDelta(t, 0.160, a.CopperKg.Value, 0.003)
	assert.InDelta(t, 0.18, a.BuyKg.Value, 0.005)
}

// The 62 turns of thin wire build up thicker or thinner than the old 38: from the turn that the old
// ohms imply, the turn changes by π times the difference in build.
func TestTurnFromOldOhmsIsCarriedToAnotherBuild(t *testing.T) {
	j := load(t, "hub-outside.toml")
	o := winding.Evaluate(j)
	over := o.Trials[1].OverallMM.Value
	build := func(turns, over float64) float64 { return turns * over * over / (0.70 * 19.75) }
	assert.InDelta(t, o.Trials[0].MeanTurnMM.Value+math.Pi*(build(62, over)-build(38, 0.81)), o.Trials[1].MeanTurnMM.Value, 1e-6)
	j.Machine.MeanTurnMM = quantity.Known(80)
	o = winding.Evaluate(j)
	assert.Equal(t, 80.0, o.Trials[0].MeanTurnMM.Value)
	assert.Equal(t, 80.0, o.Trials[1].MeanTurnMM.Value, "a measured turn is that of the coil as wound")
}

// A coil has no more than its half of the slot: with 300 turns it would be 14 mm thick, and is
// 13.75/2 - 0.25 = 6.625. One side to a slot may take it all, 13.25.
func TestBuildEndsAtTheMiddleOfTheSlot(t *testing.T) {
	j := load(t, "hub-outside.toml")
	j.Old = job.OldWinding{}
	j.Trials[0].Turns = quantity.Known(300)
	round := 44 + 2*11.6444 + 4
	assert.InDelta(t, round+2*math.Pi*(0.25+6.625/2), evaluateA(j).MeanTurnMM.Value, 0.01)
	j.Machine.Layers, j.Machine.Poles = quantity.Known(1), quantity.Known(10)
	j.Trials[0].Turns = quantity.Known(600)
	assert.InDelta(t, round+2*math.Pi*(0.25+13.25/2), evaluateA(j).MeanTurnMM.Value, 0.01)
}

// Nine teeth in a bore of 60 mm, stack 20, of the slot only its 110 mm² known. With tooth and
// slot equally wide at half depth, π(60 + h)/18·h = 110 gives h = 9.118 mm and both 12.064 mm: bare
// tooth and cheeks make 2·20 + 2·12.064 + 4 = 68.13 mm, 30 turns of 0.9 mm wire (0.98 over) build
// it to about 86. Measured round such teeth by hand it is about 80; the slot pitch formula gave
// 139. With the tooth calipered as 12 mm it is nearly the same.
func TestNineTeethOfWhichOnlyTheAreaIsKnown(t *testing.T) {
	j := plain()
	known := quantity.Known
	j.Machine = job.Machine{Slots: known(9), Poles: known(12), Layers: known(2), Span: known(1), BoreMM: known(60), StackMM: known(20)}
	j.Slot = job.SlotSpec{AreaMM2: known(110)}
	j.Trials[0].Turns = known(30)
	require.NoError(t, setGauge(&j.Trials[0], "0.9 mm"))
	a := evaluateA(j)
	over := a.OverallMM.Value
	build := 30 * over * over / 0.70 / (9.118 - 1.25)
	assert.InDelta(t, 68.128+2*math.Pi*(0.25+build/2), a.MeanTurnMM.Value, 0.01)
	assert.InEpsilon(t, 80, a.MeanTurnMM.Value, 0.10)
	// The calipered tooth settles the depth instead: (π(60 + h)/9 - 12.5)·h = 110, h = 9.386.
	j.Slot.ToothMM = known(12.5)
	build = 30 * over * over / 0.70 / (9.386 - 1.25)
	assert.InDelta(t, 40+25+4+2*math.Pi*(0.25+build/2), evaluateA(j).MeanTurnMM.Value, 0.01)
	// Given its proportion the slot counts as measured: 2 times as deep as wide are 7.416 by 14.832, on
	// a circle of 74.832 mm 26.121 apart, so teeth of 18.705.
	j.Slot.ToothMM, j.Slot.DepthPerWidth = quantity.Reading{}, known(2)
	build = 30 * over * over / 0.70 / (14.832 - 1.25)
	assert.InDelta(t, 40+37.41+4+2*math.Pi*(0.25+build/2), evaluateA(j).MeanTurnMM.Value, 0.02)
}

// Measured straight runs take precedence over the 1 mm of a cheek.
func TestEndRunOfAToothCoil(t *testing.T) {
	j := load(t, "hub-outside.toml")
	j.Old.LeadOhms = quantity.Reading{}
	short := evaluateA(j).MeanTurnMM.Value
	j.Machine.EndRunMM = quantity.Known(3)
	assert.InDelta(t, short+8, evaluateA(j).MeanTurnMM.Value, 1e-9)
}

// Slots as wide as their pitch leave no tooth; the figure is missing and says why.
func TestNoToothBetweenTheSlots(t *testing.T) {
	j := load(t, "hub-outside.toml")
	j.Old.LeadOhms = quantity.Reading{}
	j.Slot.TopMM, j.Slot.BottomMM = quantity.Known(30), quantity.Known(30)
	a := evaluateA(j)
	assert.False(t, a.MeanTurnMM.Known())
	assert.Contains(t, a.MeanTurnMM.Why, "no tooth")
}

// Rotor outside, by hand: slots of 20 mm open outwards from a circle of 100 mm, so a coil lies
// on one of 80: W = π·80·3/36 = 20.944, l = 2·50 + 2.4·20.944 + 4·9 = 186.27 mm, against 211.40 with
// the rotor inside. Pole pitch and flux go by the diameter at the gap and stay.
func TestRotorOutside(t *testing.T) {
	j := plain()
	j.Slot = job.SlotSpec{Shape: "parallel", TopMM: quantity.Known(4), DepthMM: quantity.Known(20)}
	inside := winding.Evaluate(j)
	j.Machine.Rotor = "outside"
	outside := winding.Evaluate(j)
	assert.InDelta(t, 211.398, inside.Trials[0].MeanTurnMM.Value, 0.001)
	assert.InDelta(t, 186.265, outside.Trials[0].MeanTurnMM.Value, 0.001)
	assert.Equal(t, inside.Machine.PolePitchMM, outside.Machine.PolePitchMM)
	assert.Equal(t, inside.Trials[0].LinePerRPM.Value, outside.Trials[0].LinePerRPM.Value)
	// Deeper than the stator's own radius is impossible.
	j.Slot.DepthMM = quantity.Known(101)
	assert.Contains(t, evaluateA(j).MeanTurnMM.Why, "deeper than the stator")
}

// The ring that a rotor outside turns round, 100 mm across with slots of 10 mm, has the surface
// of the ring round a bore of 60 mm: both are 60 mm inside and 60 + 4·10 = 100 outside.
func TestRotorOutsideHasTheSurfaceOfItsOwnRing(t *testing.T) {
	rise := func(rotor string, diameter float64) float64 {
		j := ready()
		j.Machine.KelvinPerWatt = quantity.Reading{}
		j.Slot = job.SlotSpec{Shape: "parallel", TopMM: quantity.Known(3), DepthMM: quantity.Known(10)}
		j.Machine.Rotor, j.Machine.BoreMM = rotor, quantity.Known(diameter)
		o := winding.Evaluate(j)
		require.True(t, o.Machine.RisePerWatt.Known(), o.Machine.RisePerWatt.Why)
		return o.Machine.RisePerWatt.Value
	}
	assert.InEpsilon(t, rise("inside", 60), rise("outside", 100), 1e-12)
	assert.Greater(t, rise("outside", 100), rise("inside", 100), "the same gap, a smaller ring")
}

// setGauge gives a trial a wire.
func setGauge(t *job.Trial, text string) (err error) {
	t.Gauge, err = wiretable.Parse(text)
	return err
}

// The middle wire of two machines measured off as a chain of short straight pieces round a rectangle with
// rounded corners, which knows nothing of the formula. The hub: 22 by 11.644 mm, 1 mm of cheek at
// either end, the wire 0.25 + 1.803/2 = 1.152 mm off: 78.53 mm. The flywheel: 19 by 10 mm calipered; of
// the slot 190 mm²: (π·108/12 - 10 - π·h/12)·h = 190 gives h = 12.71 mm, its width 14.95. 34 turns of 19
// SWG, 1.087 mm over and so 40.2 mm² as squares, take 40.2/0.70/(12.71 - 1.25) = 5.01 mm of build, less
// than half the slot, so the wire lies 0.25 + 2.50 off: 2·19 + 2·10 + 4 + 2π·2.75 = 79.3 mm.
func TestMiddleWireByAChainOfPieces(t *testing.T) {
	chain := func(long, wide, off float64) float64 {
		var x, y []float64
		for k := range 4000 {
			a := 2 * math.Pi * (float64(k) + 0.5) / 4000
			x = append(x, math.Copysign(long/2, math.Cos(a))+off*math.Cos(a))
			y = append(y, math.Copysign(wide/2, math.Sin(a))+off*math.Sin(a))
		}
		sum := 0.0
		for k := range x {
			n := (k + 1) % len(x)
			sum += math.Hypot(x[n]-x[k], y[n]-y[k])
		}
		return sum
	}
	hub := load(t, "hub-outside.toml")
	hub.Old.LeadOhms = quantity.Reading{}
	assert.InDelta(t, chain(22+2, 11.644, 1.152), evaluateA(hub).MeanTurnMM.Value, 0.02)

	a := evaluateA(load(t, "flywheel-ten-of-twelve.toml"))
	pitch := math.Pi * 108 / 12
	free, area := pitch-10, 190.0
	h := 2 * area / (free + math.Sqrt(free*free-4*math.Pi/12*area))
	require.InDelta(t, area, (free-math.Pi/12*h)*h, 1e-9)
	build := 34 * a.OverallMM.Value * a.OverallMM.Value / (0.70 * (h - 0.25 - 1))
	require.Less(t, build, area/h/2-0.25)
	assert.InDelta(t, chain(19+2, 10, 0.25+build/2), a.MeanTurnMM.Value, 0.02)
}
