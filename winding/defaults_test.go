package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/battery"
	"slotwright/winding/drive"
	"slotwright/winding/field"
	"slotwright/winding/heat"
	"slotwright/winding/job"
	"slotwright/winding/published"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every number used for an empty field, written out. A person who types no liner winds by this one.
func TestDefaultNumbers(t *testing.T) {
	want := map[string]float64{
		"machine.phases": 3, "machine.layers": 2, "machine.sets": 1, "machine.end_run": 9, "machine.ambient": 25,
		"slot.depth_per_width": 2, "slot.mouth_height": 1, "slot.liner": 0.25, "slot.wedge": 1, "slot.separator": 0, "slot.fill_limit": 0.70,
		"old.circuits": 1, "old.strands": 1, "old.also_strands": 1, "old.lead_at": 20, // °C, IEC 60028
		"field.brush": 1, "field.cover": 0.80, "field.leakage": 1.1, "field.magnet_at": 40,
		"drive.slip": 0.02, "drive.peak_cp": 0.35, "drive.peak_tsr": 6, "drive.mean_wind": 5,
		"drive.weibull_k": 2,                  // Rayleigh: IEC 61400-1, from memory
		"drive.altitude":  0, "drive.air": 15, // ISO 2533, from memory
		"drive.furl": 14, "drive.gale": 20, "drive.start_torque": 0,
		"battery.capacity": 100, "battery.cable": 0, "battery.cable_area": 16, "battery.diode_slope": 0.004,
		"target.test_at": 20, "target.allowance": 0.10, "target.spool": 1,
		"trial.circuits": 1, "trial.strands": 1, "trial.also_strands": 1,
		"wound.strands": 1, "wound.also_strands": 1, "wound.lead_at": 20, "field.coil_at": 80, // °C, IEC 60028
	}
	words := map[string]string{
		"machine.kind": "lap", "machine.rotor": "inside", "machine.stator": "slots", "machine.cooling": "open", "machine.thermal_class": "B", "slot.shape": "area",
		"old.state": "there", "old.connection": "star", "old.build": "heavy", "old.metal": "copper", "wound.build": "heavy", "wound.metal": "copper", "drive.through": "direct", "drive.curve": "heier",
		"battery.load": "battery", "battery.rectifier": "bridge", "battery.chemistry": "flooded", "battery.diode": "silicon", "trial.connection": "star", "trial.build": "heavy", "trial.metal": "copper",
		"spin.across": "leads", "spin.meter": "rms", "short.leads": "all", "battery.star_diodes": "no", "battery.held_by": "series", "old.inductance_leads": "two leads", "old.inductance_other": "open",
	}
	for i := range job.Fields {
		f := &job.Fields[i]
		if f.Default == nil {
			continue
		}
		word, isWord := words[f.Path()]
		number, isNumber := want[f.Path()]
		require.True(t, isWord != isNumber, "%s has a default that is not in this test", f.Path())
		assert.Equal(t, word, f.Default.Word, f.Path())
		assert.Equal(t, number, f.Default.Number, f.Path())
		delete(want, f.Path())
		delete(words, f.Path())
	}
	assert.Empty(t, want, "without a default")
	assert.Empty(t, words, "without a default")
}

// Typing the default changes nothing: each is in the schema and is used from there, in every job of
// testdata, whatever it drives and charges.
func TestTypingTheDefaultChangesNothing(t *testing.T) {
	for _, name := range []string{"car-stator-13-to-30", "engine-alternator-short", "engine", "fixed", "pedals", "water", "wind-good"} {
		before := load(t, name+".toml")
		d, _, err := job.Load("../testdata/jobs/" + name + ".toml")
		require.NoError(t, err)
		for i := range job.Fields {
			f := &job.Fields[i]
			_, _, given := d.Typed(f.PathAt(0))
			if f.Default == nil || given || (f.Table == "spin" || f.Table == "short" || f.Table == "drive_point" || f.Table == "wound") {
				continue
			}
			text := f.Empty(f.Dim[0])
			if f.Kind == job.Number || f.Kind == job.Whole {
				text = "~" + text
			}
			d = d.Set(f.PathAt(0), text, quantity.Choice{})
		}
		require.Empty(t, d.Problems(), name)
		a, b := winding.Evaluate(before), winding.Evaluate(d.Job())
		require.Equal(t, len(a.Comparison), len(b.Comparison))
		for i, row := range a.Comparison {
			for k, cell := range row.Cells {
				assert.Equal(t, cell.Figure.Value, b.Comparison[i].Cells[k].Figure.Value, "%s: %s of trial %d", name, row.ID, k)
			}
		}
		a.Machine.Ratio.Why, b.Machine.Ratio.Why = "", ""
		for i, pair := range [][2]quantity.Figure{{a.Machine.NetMM2, b.Machine.NetMM2}, {a.Machine.LoadOhms, b.Machine.LoadOhms},
			{a.Machine.DiodeVolts, b.Machine.DiodeVolts}, {a.Machine.DiodeOhms, b.Machine.DiodeOhms}, {a.Machine.FieldAmps, b.Machine.FieldAmps},
			{a.Machine.Ratio, b.Machine.Ratio}, {a.Machine.TestC, b.Machine.TestC}, {a.Machine.FluxMWb, b.Machine.FluxMWb}} {
			assert.Equal(t, pair[0].Value, pair[1].Value, "%s: figure %d of the machine", name, i)
		}
	}
}

// A slot of 8 by 20 mm of which nothing else was said: liner 0.25 round its 56 mm, wedge 1 by
// 7.5, no separator: 160 − 14 − 7.5 = 138.5 mm² for wire, to a fill of 0.70. 1 mm lies between
// 18 and 19 AWG, which are 0.0431 and 0.0386 in over heavy enamel (MW 1000).
func TestTurnsThatFitWithNothingTyped(t *testing.T) {
	j := plain()
	j.Slot = job.SlotSpec{Shape: "parallel", TopMM: quantity.Known(8), DepthMM: quantity.Known(20)}
	o := winding.Evaluate(j)
	a := o.Trials[0]
	assert.InDelta(t, 138.5, o.Machine.NetMM2.Value, 1e-9)
	assert.Equal(t, 0.70, a.FillLimit.Value)
	assert.Equal(t, quantity.Default, a.FillLimit.Origin)
	between := (1/25.4 - 0.0359) / (0.0403 - 0.0359)
	assert.InDelta(t, 25.4*(0.0386+between*(0.0431-0.0386)), a.OverallMM.Value, 0.0005)
	assert.Equal(t, math.Floor(0.70*138.5/(a.OverallMM.Value*a.OverallMM.Value)), a.TurnsThatFit.Value)
	assert.Equal(t, quantity.Guessed, a.TurnsThatFit.Origin)
	// Where only the area is known the slot is a parallel one, twice as deep as wide: 50 mm²
	// are 5 by 10 mm, 50 − 0.25·30 − 4.5 = 38 mm² of them for wire.
	j.Slot = job.SlotSpec{AreaMM2: quantity.Known(50)}
	assert.InDelta(t, 38.0, winding.Evaluate(j).Machine.NetMM2.Value, 1e-9)
	// Two layers without a separator have the same room.
	j.Machine.Layers = quantity.Reading{}
	assert.InDelta(t, 38.0, winding.Evaluate(j).Machine.NetMM2.Value, 1e-9)
}

// A machine of which only bore and stack are known, closed, with a wire: the middle of its
// range of densities, 3.25 A/mm², governs the amps; class B and 25 °C.
func TestAmpsWithNothingTyped(t *testing.T) {
	area := math.Pi / 4
	for word, middle := range map[string]float64{"": 4.75, "open": 4.75, "closed": 3.25, "fan": 7.5} {
		j := plain()
		j.Machine.Cooling = word
		j.Machine.StackMM = quantity.Known(50)
		limits := map[string]winding.Limit{}
		for _, l := range evaluateA(j).Each {
			limits[l.Name] = l
		}
		assert.InEpsilon(t, middle*area/math.Sqrt(2.0/3), limits["density"].AmpsDC.Value, 1e-12, "cooling %q", word)
		// By temperature: 10 or 15 W/m²K on mantle, bore and no faces of 100 by 50 mm; a fan
		// helps only at a speed, and none is said. Class B stands a mean of 40 + 80 °C
		// (IEC 60034-1, rise by resistance).
		film := map[string]float64{"": 15, "open": 15, "closed": 10, "fan": 15}[word]
		watts := (120 - 25) * film * 2 * math.Pi * 0.1 * 0.05
		phase := limits["temperature"].AmpsDC.Value * math.Sqrt(2.0/3)
		assert.InEpsilon(t, watts, 3*phase*phase*evaluateA(j).PhaseOhms20.Value*(234.5+120)/254.5, 1e-9, "cooling %q", word)
	}
	m := winding.Evaluate(plain()).Machine
	assert.Equal(t, "B", m.ThermalClass)
	assert.Equal(t, 130.0, m.ClassLimitC.Value)
}

// A battery of which nothing was said is a flooded one of 12 V and 100 Ah, behind silicon
// diodes: 12.6 V at rest, 14.52 at absorption, 13.62 at float, 20 A, 6·0.08/100 Ω. Of each
// other kind the cells of a 12 V battery.
func TestBatteryWithNothingTyped(t *testing.T) {
	for _, c := range []struct {
		word                                 string
		rest, absorption, float, amps, inner float64
	}{
		{"", 12.60, 14.52, 13.62, 20, 0.0048},
		{"flooded", 12.60, 14.52, 13.62, 20, 0.0048},
		{"agm", 12.78, 14.52, 13.62, 30, 0.0036},
		{"gel", 12.78, 14.10, 13.50, 20, 0.0048},
		{"lfp", 13.20, 14.20, 13.50, 50, 0.0020},
	} {
		j := plain()
		j.Battery.Chemistry = c.word
		m := winding.Evaluate(j).Machine
		for _, v := range []struct {
			want float64
			have quantity.Figure
		}{{c.rest, m.RestVolts}, {c.absorption, m.AbsorptionVolts}, {c.float, m.FloatVolts}, {c.amps, m.ChargeLimitAmps}, {c.inner, m.LoadOhms}, {c.inner, m.InsideOhms}} {
			assert.InDelta(t, v.want, v.have.Value, 1e-9, "%q", c.word)
			assert.Equal(t, quantity.Default, m.RestVolts.Origin, "%q", c.word)
		}
	}
	j := plain()
	m := winding.Evaluate(j).Machine
	assert.Equal(t, 0.75, m.DiodeVolts.Value, "silicon; common practice, no source")
	assert.Equal(t, 0.004, m.DiodeOhms.Value, "common practice, no source")
	j.Battery.Diode = "schottky"
	m = winding.Evaluate(j).Machine
	assert.Equal(t, 0.40, m.DiodeVolts.Value, "schottky; common practice, no source")
	assert.Equal(t, 0.004, m.DiodeOhms.Value)
	// 10 m of a cable of which only the length was said: 20 m of 16 mm² at 40 °C.
	j.Battery.CableM = quantity.Known(10)
	assert.InEpsilon(t, 0.0048+1.7241e-8*20/16e-6*274.5/254.5, winding.Evaluate(j).Machine.LoadOhms.Value, 1e-12)
	// Cut-in of silicon, star: line peak = rest and two diodes.
	a := evaluateA(plain())
	assert.InEpsilon(t, (12.6+1.5)/a.PeakDCPerRPM.Value, a.CutInRPM.Value, 1e-6)
}

// Magnets of which only remanence, thickness and gap were said: cover 0.80, leakage 1.1, at
// 40 °C, no slots. Neodymium, Br 1.2·(1 − 0.0012·20) = 1.1712 T; Bg = 1.1712/(1.1 + 1.05·2/6);
// B1 = (4/π)·Bg·sin(0.8·π/2).
func TestMagnetsWithNothingTyped(t *testing.T) {
	j := plain()
	j.Field = job.FieldSpec{Kind: "magnets", RemanenceTesla: quantity.Known(1.2), MagnetMM: quantity.Known(6), MagnetGapMM: quantity.Known(2)}
	b1 := 4 / math.Pi * 1.1712 / 1.45 * math.Sin(0.4*math.Pi)
	assert.InEpsilon(t, b1, winding.Evaluate(j).Machine.GapTesla.Value, 1e-9)
	assert.InEpsilon(t, 2*b1*0.1*0.05/12*1000, winding.Evaluate(j).Machine.FluxMWb.Value, 1e-9, "Φ = 2·B·D·L/2p")
}

// A rotor coil of 4 Ω at a battery at rest, 12.6 V: at 80 °C, less 1 V of brushes.
func TestRotorCoilWithNothingTyped(t *testing.T) {
	j := plain()
	j.Field = job.FieldSpec{Kind: "wound", GapTesla: quantity.Known(0.5), Ohms: quantity.Known(4)}
	j.Old = job.OldWinding{Wound: j.Trials[0].Wound, LeadMilliHenries: quantity.Known(2)}
	j.Target.UsualRPM = quantity.Known(900)
	a := evaluateA(j)
	amps := ((12.6+14.52)/2 - 1) / (4 * (234.5 + 80) / 254.5)
	assert.InEpsilon(t, field.Wound{Ohms20: 4, TempC: 80, BrushVolts: 1}.Watts(amps), a.FieldWatts.Value, 1e-9)
}

// A wind rotor of 2.4 m of which nothing else was said: best at Cp 0.35 and 6, furled at 14 m/s,
// in a Rayleigh wind of 5 m/s in standard air at the sea.
func TestWindWithNothingTyped(t *testing.T) {
	j := ready()
	j.Target = job.Target{}
	j.Drive = job.DriveSpec{Kind: "wind", RotorM: quantity.Known(2.4)}
	o := winding.Evaluate(j)
	rpm := func(wind float64) float64 { return 6 * wind / (math.Pi * 2.4) * 60 } // λ·v/(π·D)
	assert.InEpsilon(t, rpm(3.5), o.Machine.SlowRPM.Value, 1e-12, "the light wind from which it should charge; common practice, no source")
	assert.InEpsilon(t, rpm(5), o.Machine.UsualRPM.Value, 1e-12)
	assert.InEpsilon(t, rpm(14), o.Machine.TopRPM.Value, 1e-12)
	a := o.Trials[0]
	last := a.Points[len(a.Points)-1]
	assert.InDelta(t, 14, last.X, 1e-9, "the last wind is that at which it furls")
	// Power at the wind, in 1.225 kg/m³ (ISO 2533), through the Cp there, which peaks at 0.35.
	rotor := drive.Rotor{DiameterM: 2.4, Shape: drive.Heier, PeakCp: 0.35, PeakLambda: 6}
	for _, p := range a.Points {
		if p.RPM > 0 {
			assert.InEpsilon(t, 0.5*1.225*math.Pi*1.44*p.X*p.X*p.X*rotor.Cp(p.Lambda), p.DriveWatts, 1e-4, "at %g m/s", p.X)
		}
	}
	// The year, by the Rayleigh density (π/2)·v/m²·exp(−π·v²/4m²) for m = 5 m/s in small steps.
	kwh := 0.0
	for i := 1; i < len(a.Points); i++ {
		p, q := a.Points[i-1], a.Points[i]
		const steps = 50
		for k := range steps {
			part := (float64(k) + 0.5) / steps
			v := p.X + (q.X-p.X)*part
			watts := p.BatteryWatts + (q.BatteryWatts-p.BatteryWatts)*part
			kwh += 8.760 * watts * math.Pi / 2 * v / 25 * math.Exp(-math.Pi*v*v/100) * (q.X - p.X) / steps
		}
	}
	assert.InEpsilon(t, kwh, a.YearKWh.Value, 0.002)
	assert.InEpsilon(t, a.PeakDCPerRPM.Value*rotor.RPM(20, rotor.Runaway()), a.OpenAtGaleVolts.Value, 1e-9, "a gale of 20 m/s")
}

// Transmissions of which only the wheels were said. V-belts 0.92 to 0.95 and a slip of 2 %
// (US DOE tip sheet and field literature), chain and gear 0.97 (common practice, no source).
func TestTransmissionsWithNothingTyped(t *testing.T) {
	for _, c := range []struct {
		kind              string
		ratio, efficiency float64
	}{{"belt", 2 * 0.98, 0.95}, {"chain", 3, 0.97}, {"gear", 3, 0.97}, {"", 1, 1}} {
		j := ready()
		j.Drive = job.DriveSpec{Kind: "fixed", Transmission: c.kind, UsualRPM: quantity.Known(600), DriverMM: quantity.Known(200), DrivenMM: quantity.Known(100),
			DriverTeeth: quantity.Known(60), DrivenTeeth: quantity.Known(20)}
		o := winding.Evaluate(j)
		assert.InEpsilon(t, c.ratio, o.Machine.Ratio.Value, 1e-12, c.kind)
		p := o.Trials[0].Points[len(o.Trials[0].Points)-1]
		shaft, why := winding.Prepare(j).RunAt(0, p.RPM)
		require.Empty(t, why)
		assert.InEpsilon(t, shaft.ShaftWatts/c.efficiency, p.DriveWatts, 2e-3, c.kind)
	}
}

// Wire to buy with nothing said: a tenth more, on spools of a kilogram; ohms to be measured
// at 20 °C; an engine's top speed 1.6 times its usual one.
func TestPurchaseAndProofWithNothingTyped(t *testing.T) {
	a := evaluateA(plain())
	assert.Equal(t, 0.10, a.Allowance)
	assert.InEpsilon(t, a.CopperKg.Value*1.1, a.Buy[0].Kg.Value, 1e-12)
	assert.Equal(t, 1.0, a.Buy[0].SpoolKg)
	assert.Equal(t, 20.0, winding.Evaluate(plain()).Machine.TestC.Value)
	assert.Equal(t, a.LeadOhms20.Value, a.LeadOhmsT.Value)
}

// What a part of the physics uses by itself for an empty field is the schema's default too.
func TestPartsAgreeWithTheSchema(t *testing.T) {
	published.Constants(t, []published.Constant{
		{What: "depth over width", Want: job.DefaultOf("slot.depth_per_width"), Have: slot.DefaultDepthPerWidth, Source: "the schema"},
	})
	gap := func(leakage float64) float64 {
		g, _, err := field.Magnets{RemanenceT: 1.2, TempC: 20, ThicknessMM: 6, Cover: 0.8, GapMM: 2, Leakage: leakage}.GapTesla()
		require.NoError(t, err)
		return g
	}
	assert.Equal(t, gap(job.DefaultOf("field.leakage")), gap(0))
	assert.Equal(t, heat.Cooling(0).String(), job.DefaultWord("machine.cooling"))
	assert.Equal(t, battery.Chemistry(0).String(), job.DefaultWord("battery.chemistry"))
	assert.Equal(t, drive.Shape(0).String(), job.DefaultWord("drive.curve"))
	assert.Equal(t, drive.Kind(0).String(), job.DefaultWord("drive.through"))
	assert.Equal(t, slot.AreaOnly.String(), job.DefaultWord("slot.shape"))
}
