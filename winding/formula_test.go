package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/charge"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bench is a plain machine for working figures by hand: 36 slots, 12 poles, single layer,
// full pitch (kw 1, 6 coils a phase), bore 100, stack 50, 10 turns of 1 mm bare.
func plain() job.Job {
	known := quantity.Known
	j := job.Job{}
	j.Machine = job.Machine{Slots: known(36), Poles: known(12), Phases: known(3), Layers: known(1), Span: known(3), BoreMM: known(100), StackMM: known(50)}
	j.Field.GapTesla = known(0.5)
	t := job.Trial{Name: "A"}
	t.Turns = known(10)
	t.Gauge, _ = wiretable.Parse("1 mm")
	j.Trials = []job.Trial{t}
	return j
}

func evaluateA(j job.Job) winding.TrialOutcome { return winding.Evaluate(j).Trials[0] }

// W = π·100·3/36 = 26.18 mm; l = 2·50 + 2.4·26.18 + 4·9 = 198.8 mm; with a straight run
// of 25 mm the last term is the 0.1 m of Pyrhönen et al. (from memory).
func TestMeanTurnByHand(t *testing.T) {
	j := plain()
	w := math.Pi * 100 * 3 / 36
	assert.InEpsilon(t, 100+2.4*w+36, evaluateA(j).MeanTurnMM.Value, 1e-12)
	j.Machine.EndRunMM = quantity.Known(25)
	assert.InEpsilon(t, 100+2.4*w+100, evaluateA(j).MeanTurnMM.Value, 1e-12)
	j.Machine.MeanTurnMM = quantity.Known(210)
	assert.InEpsilon(t, 210, evaluateA(j).MeanTurnMM.Value, 1e-12, "a measured one goes first")
	j.Machine.Layers = quantity.Known(2)
	j.Trials[0].Span = quantity.Known(2)
	assert.InEpsilon(t, 210-2.4*w/3, evaluateA(j).MeanTurnMM.Value, 1e-12, "and is carried to a shorter span")
}

// N = 60 in series; E = √2·π·f·N·kw·Φ with Φ = 2·B·D·L/2p; R = ρ·N·l/A.
func TestVoltsAndOhmsByHand(t *testing.T) {
	a := evaluateA(plain())
	flux := 2 * 0.5 * 0.1 * 0.05 / 12
	assert.InEpsilon(t, math.Sqrt2*math.Pi*(6/60.0)*60*flux, a.PhasePerRPM.Value, 1e-12)
	assert.InEpsilon(t, 1/58e6*60*a.MeanTurnMM.Value/1000/(math.Pi/4*1e-6), a.PhaseOhms20.Value, 1e-9)
	// Wire to buy: 3 phases, 60 turns, a tenth more; 8890 kg/m³.
	metres := 3 * 60 * a.MeanTurnMM.Value / 1000 * 1.1
	assert.InEpsilon(t, metres, a.Buy[0].Metres.Value, 1e-12)
	assert.InEpsilon(t, metres/0.3048, a.Buy[0].Feet.Value, 1e-12)
	assert.InEpsilon(t, metres*math.Pi/4*1e-6*8890, a.Buy[0].Kg.Value, 1e-9)
	assert.InEpsilon(t, a.Buy[0].Kg.Value/0.45359237, a.Buy[0].Pounds.Value, 1e-12)
}

// The old winding's ohms recover the mean turn that made them, star and delta.
func TestMeanTurnFromOldOhms(t *testing.T) {
	for _, conn := range []layout.Connection{layout.Star, layout.Delta} {
		j := plain()
		j.Trials[0].Connection = conn
		j.Trials[0].Circuits = quantity.Known(2)
		j.Machine.MeanTurnMM = quantity.Known(187)
		ohms := evaluateA(j).LeadOhms20.Value
		j.Machine.MeanTurnMM = quantity.Reading{}
		j.Old = job.OldWinding{Wound: j.Trials[0].Wound, Connection: conn, Circuits: quantity.Known(2),
			LeadOhms: quantity.Known(ohms * (234.5 + 40) / 254.5), LeadOhmsC: quantity.Known(40)}
		a := evaluateA(j)
		assert.InEpsilon(t, 187, a.MeanTurnMM.Value, 1e-9)
		assert.Contains(t, a.MeanTurnFrom, "ohms")
	}
}

// Block currents through a three-phase bridge: √(2/3) of the DC in a lead, that over √3 in
// a delta's winding; one phase: π/(2√2), sines. (Any power electronics text.)
func TestAmpsInTheWindingForOneDC(t *testing.T) {
	j := plain()
	area := math.Pi / 4
	assert.InEpsilon(t, math.Sqrt(2.0/3)/area, evaluateA(j).DensityPerAmp.Value, 1e-9)
	j.Trials[0].Connection = layout.Delta
	assert.InEpsilon(t, math.Sqrt(2)/3/area, evaluateA(j).DensityPerAmp.Value, 1e-9)
	j = plain()
	j.Machine.Phases = quantity.Known(1)
	j.Machine.Layers = quantity.Known(2)
	assert.InEpsilon(t, math.Pi/(2*math.Sqrt2)/area, evaluateA(j).DensityPerAmp.Value, 1e-9)
}

// "Same heat": the copper loss of the plate's amps in the old winding and of the limit in
// the new are the same watts, also from star to delta.
func TestSameHeatIsTheSameWatts(t *testing.T) {
	for _, conn := range []layout.Connection{layout.Star, layout.Delta} {
		j := plain()
		j.Old = job.OldWinding{Wound: j.Trials[0].Wound, RatedAmps: quantity.Known(20)}
		j.Old.Turns = quantity.Known(6)
		j.Old.Strands = quantity.Known(2)
		j.Trials[0].Connection = conn
		o := winding.Evaluate(j)
		found := false
		for _, l := range o.Trials[0].Each {
			if l.Name != "same heat" {
				continue
			}
			found = true
			loss := func(dc float64, w *winding.TrialOutcome) float64 {
				lead := dc * math.Sqrt(2.0/3)
				if w.Connection == layout.Delta {
					lead /= math.Sqrt(3)
				}
				return 3 * lead * lead * w.PhaseOhms20.Value
			}
			assert.InEpsilon(t, loss(20, o.Old), loss(l.AmpsDC.Value, &o.Trials[0]), 1e-9)
		}
		assert.True(t, found)
	}
}

// The temperature limit is the current at which the winding reaches its class limit.
func TestTemperatureLimit(t *testing.T) {
	j := plain()
	j.Machine.KelvinPerWatt = quantity.Known(1.5)
	j.Machine.AmbientC = quantity.Known(30)
	j.Machine.ThermalClass = "F"
	a := evaluateA(j)
	for _, l := range a.Each {
		if l.Name == "temperature" {
			phase := l.AmpsDC.Value * math.Sqrt(2.0/3)
			watts := 3 * phase * phase * a.PhaseOhms20.Value * (234.5 + 145) / 254.5 // class F by resistance: 40 + 105
			assert.InEpsilon(t, 145-30, 1.5*watts, 1e-9)
			return
		}
	}
	t.Fatal("no such limit")
}

// Readings computed from a known inductance recover it: short circuit with resistance, bridge between
// leads, star and delta.
func TestInductanceFromReadings(t *testing.T) {
	for _, conn := range []layout.Connection{layout.Star, layout.Delta} {
		j := plain()
		j.Old = job.OldWinding{Wound: j.Trials[0].Wound, Connection: conn}
		j.Trials[0].Connection = conn
		lead := 2.0
		if conn == layout.Delta {
			lead = 2.0 / 3
		}
		const henries = 0.0017
		j.Old.LeadMilliHenries = quantity.Known(1000 * henries * lead)
		a := evaluateA(j)
		assert.InEpsilon(t, 1000*henries, a.PhaseMilliHenries.Value, 1e-9)

		const rpm = 240.0 // slow, so that the resistance matters
		e, r, x := a.PhasePerRPM.Value*rpm, a.PhaseOhms20.Value, 2*math.Pi*rpm*12/120*0.0009
		amps := e / math.Hypot(r, x)
		if conn == layout.Delta {
			amps *= math.Sqrt(3)
		}
		j.Shorts = []job.ShortReading{{RPM: quantity.Known(rpm), LineAmps: quantity.Known(amps)}}
		a = evaluateA(j)
		assert.InEpsilon(t, 0.9, a.PhaseMilliHenries.Value, 1e-9)
		assert.Contains(t, a.InductanceFrom, "short-circuit")
		j.Trials[0].Turns = quantity.Known(20)
		assert.InEpsilon(t, 0.9*4, evaluateA(j).PhaseMilliHenries.Value, 1e-9, "twice the turns, four times")
	}
}

// The plate of a machine far above cut-in, computed by the exact solver, recovers the inductance to 3
// %.
func TestInductanceFromThePlate(t *testing.T) {
	for _, delta := range []bool{false, true} {
		j := plain()
		conn := layout.Star
		if delta {
			conn = layout.Delta
		}
		j.Old = job.OldWinding{Wound: j.Trials[0].Wound, Connection: conn}
		perRPM := evaluateA(j).PhasePerRPM.Value
		const rpm, henries = 9000.0, 0.0004
		p, err := charge.Solve(charge.Source{EMFPeak: math.Sqrt2 * perRPM * rpm, Hertz: rpm / 10, Ohms: 0.01, Henries: henries, Phases: 3, Delta: delta},
			charge.Load{Volts: 14, DiodeVolts: 0.75})
		require.NoError(t, err)
		j.Old.RatedAmps, j.Old.RatedRPM, j.Old.RatedVolts = quantity.Known(p.DCAmps), quantity.Known(rpm), quantity.Known(14)
		a := evaluateA(j)
		assert.Equal(t, "the plate of the old winding", a.InductanceFrom)
		assert.InEpsilon(t, 1000*henries, a.PhaseMilliHenries.Value, 0.03)
	}
}

// Geometry by hand: gap m·μ0·D·L·(kw·N)²/(π·g·p²) with the gap longer by a wound rotor's saturation and
// π²/9 for all waves of one slot per pole and phase, slots 2·μ0·L·N²·λ/(p·q) with λ 1 where the slot is
// not known, ends 4m/Q·q·N²·μ0·l·0.3.
func TestInductanceFromGeometry(t *testing.T) {
	j := plain()
	j.Machine.AirGapMM = quantity.Known(0.5)
	j.Field.Kind = "wound"
	a := evaluateA(j)
	const mu0 = 4e-7 * math.Pi
	gap := math.Pi * math.Pi / 9 * 3 * mu0 * 0.1 * 0.05 * 3600 / (math.Pi * 0.0005 * 0.299 / 0.170 * 36)
	slots := 2 * mu0 * 0.05 * 3600 / 6
	ends := 4 * 3.0 / 36 * 1 * 3600 * mu0 * (a.MeanTurnMM.Value/1000 - 0.1) / 2 * 0.3
	assert.InEpsilon(t, 1000*(gap+slots+ends), a.PhaseMilliHenries.Value, 1e-9)
	assert.Equal(t, quantity.Guessed, a.PhaseMilliHenries.Origin)
}

// Measured henries are converted to coils of another span part by part: the gap part, by the hand
// calculation above, with the square of the winding factor, three quarters for coils of two thirds of a
// pole; leakage with the turns, which are unchanged.
func TestMeasuredInductanceOfAnotherSpan(t *testing.T) {
	j := plain()
	j.Machine.AirGapMM, j.Field.Kind, j.Machine.Layers = quantity.Known(0.5), "wound", quantity.Known(2)
	j.Old = job.OldWinding{Wound: j.Trials[0].Wound, LeadMilliHenries: quantity.Known(3.4)}
	full := evaluateA(j)
	j.Trials[0].Span = quantity.Known(2)
	a := evaluateA(j)
	require.InEpsilon(t, math.Sqrt(3)/2, a.Kw1.Value, 1e-9)
	gap := math.Pi * math.Pi / 9 * 3 * 0.1 * 0.05 / (math.Pi * 0.0005 * 0.299 / 0.170 * 36)
	leaks := 2*0.05/6 + 4*3.0/36*(full.MeanTurnMM.Value/1000-0.1)/2*0.3
	assert.InEpsilon(t, (0.75*gap+leaks)/(gap+leaks)*full.PhaseMilliHenries.Value, a.PhaseMilliHenries.Value, 1e-6)
}

// ready is plain with everything needed to run into a battery.
func ready() job.Job {
	j := plain()
	j.Old = job.OldWinding{Wound: j.Trials[0].Wound, LeadMilliHenries: quantity.Known(2)}
	j.Battery = job.BatterySpec{RestVolts: quantity.Known(12.6), AbsorptionVolts: quantity.Known(14.4), Ohms: quantity.Known(0.02), Chemistry: "custom"}
	j.Target = job.Target{SlowRPM: quantity.Known(600), UsualRPM: quantity.Known(900), TopRPM: quantity.Known(2000)}
	j.Machine.KelvinPerWatt = quantity.Known(0.8)
	j.Machine.IronWatts, j.Machine.IronRPM = quantity.Known(0), quantity.Known(600) // measured: none
	return j
}

// At each point the temperature is the one that its own loss makes, and the amps are those with the
// ohms at that temperature.
func TestHotPointsAgreeWithThemselves(t *testing.T) {
	j := ready()
	a := evaluateA(j)
	for _, p := range a.AtSpeeds {
		assert.InDelta(t, 25+0.8*p.CopperWatts, p.WindingC, 0.15)
		q, err := charge.Solve(charge.Source{EMFPeak: math.Sqrt2 * a.PhasePerRPM.Value * p.RPM, Hertz: p.RPM / 10,
			Ohms: a.PhaseOhms20.Value * (234.5 + p.WindingC) / 254.5, Henries: 0.001, Phases: 3}, charge.Load{Volts: 12.6, Ohms: 0.02, DiodeVolts: 0.75, DiodeOhms: 0.004})
		require.NoError(t, err)
		assert.InEpsilon(t, q.DCAmps, p.AmpsDC, 0.001)
	}
}

// A cable of 0.1 ohm there and back is part of the circuit.
func TestCableStandsInTheCircuit(t *testing.T) {
	j := ready()
	without := evaluateA(j).AmpsTop.Value
	j.Battery.CableM, j.Battery.CableMM2 = quantity.Known(20), quantity.Known(2*1.7241e-8*20/0.5*1e6)
	m := winding.Evaluate(j).Machine
	assert.InEpsilon(t, 0.02+0.5*(234.5+40)/254.5, m.LoadOhms.Value, 1e-9)
	assert.Less(t, evaluateA(j).AmpsTop.Value, without*0.9)
}

func TestDragGrowsWithSpeed(t *testing.T) {
	j := ready()
	j.Machine.IronWatts, j.Machine.IronRPM = quantity.Known(10), quantity.Known(500)
	a := evaluateA(j)
	for _, p := range a.AtSpeeds {
		assert.InEpsilon(t, 10*math.Pow(p.RPM/500, 1.5), p.IronWatts, 1e-9)
	}
}

// Spin-up readings are fitted as V = k·n by least squares: k = Σ n·V/Σ n².
func TestSpinReadingsAreFitted(t *testing.T) {
	j := plain()
	j.Field.GapTesla = quantity.Reading{}
	j.Old = job.OldWinding{Wound: j.Trials[0].Wound}
	read := [][2]float64{{500, 6.3}, {1000, 12.1}, {2000, 23.8}}
	num, den := 0.0, 0.0
	for _, r := range read {
		j.Spins = append(j.Spins, job.SpinReading{RPM: quantity.Known(r[0]), LineVolts: quantity.Known(r[1])})
		num, den = num+r[0]*r[1], den+r[0]*r[0]
	}
	assert.InEpsilon(t, num/den, evaluateA(j).LinePerRPM.Value, 1e-9)
}

// Two field currents give a magnetisation curve, evaluated at the rotor's field current in service.
func TestFieldCurrentMovesTheVolts(t *testing.T) {
	j := plain()
	j.Field = job.FieldSpec{Kind: "wound", Amps: quantity.Known(2), Ohms: quantity.Known(4)}
	j.Old = job.OldWinding{Wound: j.Trials[0].Wound}
	for _, r := range [][2]float64{{1, 8}, {3, 16}} { // 1/V linear in 1/I: V = 32·I/(3+I)
		j.Spins = append(j.Spins, job.SpinReading{RPM: quantity.Known(1000), LineVolts: quantity.Known(r[1]), FieldAmps: quantity.Known(r[0])})
	}
	assert.InEpsilon(t, 32*2.0/5/1000, evaluateA(j).LinePerRPM.Value, 1e-6)
	j.Field.Amps = quantity.Known(4)
	o := winding.Evaluate(j)
	found := false
	for _, f := range o.Findings {
		found = found || f.Path == "field.current"
	}
	assert.True(t, found, "above the highest reading the flux is a guess, and it says so")
	// 32·4/7 = 18.286 V, fully saturated 16 V, unsaturated 16 + 32·3/36 = 18.667 V: the farther end is
	// 12.5 % off; a meter's usual 2 % and a tachometer's 1 % are added.
	assert.InEpsilon(t, math.Hypot(0.125, math.Hypot(0.02, 0.01)), o.Trials[0].LinePerRPM.PlusMinus/o.Trials[0].LinePerRPM.Value, 1e-3)
}

// The ±15 % of the magnets carries over to the volts.
func TestMagnetsCarryTheirUncertainty(t *testing.T) {
	a := evaluateA(load(t, "wind-good.toml"))
	assert.InEpsilon(t, 0.15, a.LinePerRPM.PlusMinus/a.LinePerRPM.Value, 1e-9)
	assert.Equal(t, quantity.Guessed, a.LinePerRPM.Origin)
}

// The fuse carries the most that any trial charges with, not only the amps wanted.
func TestFuseCarriesTheMost(t *testing.T) {
	j := ready()
	j.Target.Amps = quantity.Known(1)
	o := winding.Evaluate(j)
	most := o.Trials[0].AmpsTop.Value
	assert.GreaterOrEqual(t, o.Machine.FuseAmps.Value, 1.25*most)
	assert.Less(t, o.Machine.FuseAmps.Value, 2*1.25*most)
	j.Target.Amps = quantity.Known(most * 3)
	assert.GreaterOrEqual(t, winding.Evaluate(j).Machine.FuseAmps.Value, 3.75*most)
}
