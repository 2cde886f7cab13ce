package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ten coils of twelve, by hand. Flux of a pole 2·B·D·L/2p = 2·0.35·0.108·0.019/12 = 0.1197 mWb;
// 10·34 turns at 1600 rpm, 160 Hz: √2·π·160·340·1.197e-4 = 28.93 V, ten twelfths of what twelve
// would make. The tooth was calipered: 10 mm.
func TestFlywheelTenOfTwelve(t *testing.T) {
	j := load(t, "flywheel-ten-of-twelve.toml")
	a := evaluateA(j)
	assert.Equal(t, 340.0, a.SeriesTurns.Value)
	assert.InDelta(t, 1, a.Kw1.Value, 1e-12)
	assert.InDelta(t, 28.93, a.LinePerRPM.Value*1600, 0.02)
	// Turn: the depth that leaves 10 mm of tooth is h of (28.274 - 10 - 0.2618·h)·h = 190, 12.712 mm
	// (a circle of 108 - h); 34 wires take 34·over²/0.70 of the lined 11.462 mm.
	over := a.OverallMM.Value
	build := 34 * over * over / 0.70 / (12.712 - 1.25)
	assert.InDelta(t, 2*19+2*10+4+2*math.Pi*(0.25+build/2), a.MeanTurnMM.Value, 0.01)
	assert.InDelta(t, 340*a.MeanTurnMM.Value/1000*1.1, a.Buy[0].Metres.Value, 1e-6, "ten coils to wind")
	plan, why := winding.Prepare(j).Plan(0)
	require.Empty(t, why)
	assert.Len(t, plan.Coils(), 10)
	j.Machine.BareTeeth = nil
	full := evaluateA(j)
	assert.InEpsilon(t, 12.0/10, full.LinePerRPM.Value/a.LinePerRPM.Value, 1e-12)
	assert.InEpsilon(t, 1.2, full.PhaseOhms20.Value/a.PhaseOhms20.Value, 1e-12)
}

// Slot leakage is that of the coils that are there: ten slots full of the same coils leak ten
// twelfths of twelve. The formula goes by N²/(p·q): N is ten twelfths, and so is q.
func TestLeakageOfBareTeethIsThatOfTheCoilsThere(t *testing.T) {
	neck := func(teeth []int, height float64) float64 {
		j := load(t, "flywheel-ten-of-twelve.toml")
		j.Machine.BareTeeth = teeth
		j.Slot.MouthMM, j.Slot.MouthHeightMM = quantity.Known(3), quantity.Known(height)
		return evaluateA(j).PhaseMilliHenries.Value
	}
	ten := neck([]int{3, 4}, 2) - neck([]int{3, 4}, 1)
	twelve := neck(nil, 2) - neck(nil, 1)
	require.Positive(t, twelve)
	assert.InEpsilon(t, 10.0/12, ten/twelve, 1e-6)
}

// Dead slots that leave the phases unequal are called out where the layout would be.
func TestDeadSlotsThatUnbalance(t *testing.T) {
	j := load(t, "hub-outside.toml")
	j.Machine.DeadSlots = []int{1}
	o := winding.Evaluate(j)
	assert.Contains(t, o.Trials[0].Kw1.Why, "leave out the same of each phase")
	assert.NotNil(t, finding(&o, "machine.slots"))
}

// Two phases by hand: 4 coils of 20 turns each, kw = sin 45°/(2·sin 22.5°) = 0.92388; flux
// 2·0.6·0.08·0.04/4 = 0.96 mWb; at 1500 rpm, 50 Hz, 80·0.92388·√2·π·50·0.96e-3 = 15.76 V between
// the two leads of a phase, whose ohms are those of one phase: no star, no delta.
func TestTwoPhaseByHand(t *testing.T) {
	j := load(t, "two-phase.toml")
	j.Battery = ready().Battery // 12.6 V behind 0.02 Ω
	o := winding.Evaluate(j)
	a := o.Trials[0]
	assert.Equal(t, 80.0, a.SeriesTurns.Value)
	assert.InDelta(t, 0.92388, a.Kw1.Value, 1e-5)
	assert.InDelta(t, 15.76, a.LinePerRPM.Value*1500, 0.01)
	assert.Equal(t, a.PhaseOhms20.Value, a.LeadOhms20.Value)
	assert.InEpsilon(t, 2*80*a.MeanTurnMM.Value/1000*1.1, a.Buy[0].Metres.Value, 1e-9, "both are to be wound")
	// Each has a bridge of its own and both one battery: stepped through time.
	require.NotEmpty(t, a.AtSpeeds)
	charging := 0
	for _, p := range a.AtSpeeds {
		two := steppedTwo{peak: math.Sqrt2 * a.PhasePerRPM.Value * p.RPM, r: a.PhaseOhms20.Value*(234.5+p.WindingC)/254.5 + 2*0.004,
			x: 2 * math.Pi * p.RPM * 4 / 120 * a.PhaseMilliHenries.Value / 1000, v: 12.6 + 2*0.75, rb: 0.02}
		amps, rms, phase := two.means()
		assert.InDelta(t, amps, p.AmpsDC, 1e-3*amps+1e-9, "%.0f rpm", p.RPM)
		assert.InDelta(t, phase, p.PhaseAmpsRMS, 1e-3*phase+1e-9, "%.0f rpm", p.RPM)
		assert.InDelta(t, 12.6*amps+0.02*rms*rms, p.BatteryWatts, 1e-3*12.6*amps+1e-9, "%.0f rpm", p.RPM)
		if p.AmpsDC > 0.1 {
			charging++
		}
	}
	assert.Positive(t, charging)
}

// steppedTwo is two phases a quarter of a cycle apart, a bridge each, on one load: small steps of the
// implicit Euler method, in which the diodes that agree are looked for at each step.
type steppedTwo struct{ peak, r, x, v, rb float64 }

// means are the direct amps, their rms, and a phase's rms, over a cycle that repeats: of steps twice as
// small twice, less once of the larger, which takes the method's first error out.
func (c steppedTwo) means() (amps, rms, phase float64) {
	a, b := c.over(8000), c.over(16000)
	for k := range a {
		a[k] = 2*b[k] - a[k]
	}
	return a[0], a[1], a[2]
}

func (c steppedTwo) over(steps int) (means [3]float64) {
	const cycles = 6
	h := 2 * math.Pi / float64(steps)
	back := c.x / h
	var i [2]float64
	for n := range cycles * steps {
		sin, cos := math.Sincos(float64(n+1) * h)
		e := [2]float64{c.peak*sin + back*i[0], -c.peak*cos + back*i[1]}
		more, less := max(math.Abs(e[0]), math.Abs(e[1])), min(math.Abs(e[0]), math.Abs(e[1]))
		rails := c.v + c.rb*max(0, more+less-2*c.v)/(c.r+back+2*c.rb)
		if less <= rails {
			rails = c.v + c.rb*max(0, more-c.v)/(c.r+back+c.rb)
		}
		for k := range i {
			i[k] = math.Copysign(max(0, math.Abs(e[k])-rails)/(c.r+back), e[k])
		}
		if n >= (cycles-1)*steps {
			dc, part := math.Abs(i[0])+math.Abs(i[1]), 1/float64(steps)
			means[0], means[1], means[2] = means[0]+dc*part, means[1]+dc*dc*part, means[2]+(i[0]*i[0]+i[1]*i[1])/2*part
		}
	}
	means[1], means[2] = math.Sqrt(means[1]), math.Sqrt(means[2])
	return means
}

// Two phases do not pulse together. At the posts of the job's battery 13.61 V stand while it charges,
// the pulses of both laid beside one another; put on top of each other they would be 13.66 V (stepped
// through time with a winding as warm).
func TestTwoPhasesDoNotPulseTogether(t *testing.T) {
	o := winding.Evaluate(load(t, "two-phase.toml"))
	require.Len(t, o.Trials[0].Operating, 3)
	assert.InDelta(t, 13.61, o.Trials[0].Operating[1].PostsVolts, 0.005)
}

// Two sets by hand. The readings are those of 7.0 mV a rpm and phase, 0.0494 Ω and 0.15 mH: volts
// 7·2·√3 = 24.25 V; both sets joined at 300 Hz 21/√(0.0494² + 0.2827²) = 73.2 A; one alone meets
// (π²/9)/2.046 of that inductance (q = 1: harmonic leakage, Pyrhönen, Jokinen and Hrabovcová, Design of
// Rotating Electrical Machines, ch. 4, from memory), 131.8 A, and an inductance bridge on one lead
// against two 1.5·0.0804 = 0.1206 mH, with the field dead √(0.299/0.170) times that, half way to what a
// claw pole's iron fills (readings_test.go of package readings); the amps are of a bridge stepped
// through time. All of it together must come to that machine, and twice the turns to twice and four
// times.
func TestTwoSetsReadEveryWay(t *testing.T) {
	o := winding.Evaluate(load(t, "two-sets.toml"))
	a := o.Trials[0]
	assert.Contains(t, a.InductanceFrom, "solved together")
	for _, kind := range []string{"spin-up volts", "short circuit", "amps into a battery", "inductance bridge"} {
		assert.Contains(t, a.InductanceFrom, kind)
	}
	assert.InEpsilon(t, 2*0.007, a.PhasePerRPM.Value, 0.005)
	assert.InEpsilon(t, 4*0.15, a.PhaseMilliHenries.Value, 0.01)
	for _, f := range o.Findings {
		assert.NotContains(t, f.Text, "does not agree")
	}
	ohms := 1.7241e-8 * 60 * 0.216 / (math.Pi / 4 * 0.75e-3 * 0.75e-3) // 6 coils of 10 turns in a phase of a set
	assert.InEpsilon(t, ohms, a.PhaseOhms20.Value, 1e-3)
}

// Six magnets on twelve poles, by hand: one magnet of 4 mm and two gaps of 1 mm, the gap longer by
// Carter's factor of slots with a mouth of 2 mm, pitch 90π/36 = 7.854 mm:
// γ = 4/π·(1·atan 1 − ln √2) = 0.5587, kC = 7.854/(7.854 − 0.5587·1) = 1.0766 (Pyrhönen, Jokinen
// and Hrabovcová, ch. 3, from memory). B = 1.2/(1 + 1.05·2·1.0766/4) = 0.7666 T, its working wave
// 4/π·sin(0.8·90°) = 1.2109 times that, the flux 2·B1·D·L/2p, and six coils of 14 turns a
// phase in delta give √2·π·f·84·Φ.
func TestSixMagnetsOnTwelvePoles(t *testing.T) {
	o := winding.Evaluate(load(t, "consequent-pole.toml"))
	b1 := 0.7666 * 1.2109
	flux := 2 * b1 * 0.090 * 0.030 / 12
	a := o.Trials[0]
	without := math.Sqrt2 * math.Pi * 0.1 * 84 * flux
	assert.InEpsilon(t, without, a.LinePerRPM.Value, 0.015)
	assert.Less(t, a.LinePerRPM.Value, without, "teeth and yoke, which the hand left out, take a percent")
	assert.InEpsilon(t, (12.7+1.5)/(math.Sqrt2*a.LinePerRPM.Value), a.CutInRPM.Value, 0.01)
	assert.InEpsilon(t, 1.7241e-8*84*0.185/(math.Pi/4*0.64e-6), a.PhaseOhms20.Value, 1e-3)
	assert.InEpsilon(t, 8*math.Sqrt(3)/14, o.Trials[1].LinePerRPM.Value/a.LinePerRPM.Value, 1e-9)
}
