package winding_test

import (
	"math"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/drive"
	"slotwright/winding/field"
	"slotwright/winding/heat"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/published"
	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// halfDigit is half a unit of the last digit of a number as printed: 0.05 of "239.6".
func halfDigit(text string) float64 {
	_, decimals, _ := strings.Cut(text, ".")
	return 0.5 * math.Pow(10, -float64(len(decimals)))
}

// book is the relative deviation of books that use 4.44 for √2·π (0.065 %) and carry factors to four
// figures.
const book = 0.0008

// Every row of testdata/winding/emf_examples.csv as it is printed, to half its last digit; EMFs in
// books that use 4.44 for √2·π to 0.08 % more. No row is skipped.
func TestEveryPrintedExample(t *testing.T) {
	for _, row := range published.Rows(t, "winding/emf_examples.csv") {
		in, printed := row.Inputs("inputs"), row.Number(t, "published_value")
		tolerance := halfDigit(row["published_value"])
		var have float64
		switch topic := row["topic"]; topic {
		case "emf", "emf-unit", "harmonic-emf", "flux-from-B":
			have = printedEMF(t, row, in)
			tolerance += book * printed
		case "emf-inverse":
			have = printedInverse(t, row, in)
			tolerance += book * printed
		case "frequency":
			j := plain()
			j.Machine.Poles = quantity.Known(in["poles"])
			have = winding.Evaluate(j).Machine.HertzPerRPM.Value * in["rpm"]
		case "emf-scaling":
			have = printedScaling(in)
			tolerance += 1e-6 * printed // how finely a straight magnetisation curve is fitted
		case "resistance-temperature":
			if row["id"] == "EX073" {
				measuredOhms(t, row, in)
				continue
			}
			have = printedOhms(t, row, in)
		case "star-delta":
			have = printedStarDelta(t, row, in)
		default:
			t.Fatalf("%s: nothing reads the topic %s", row["id"], topic)
		}
		assert.InDelta(t, printed, have, tolerance*(1+1e-9), "%s, %s: %s", row["id"], row["output"], row["source"])
	}
}

// printedEMF is the volts, hertz or flux of a machine with its slots and turns.
func printedEMF(t *testing.T, row published.Row, in map[string]float64) float64 {
	switch row["id"] {
	case "EX040", "EX041", "EX043": // one coil a phase at full pitch; a conductor is half a turn
		in["poles"], in["slots"], in["rpm"] = 2, 6, in["f_Hz"]*60
		in["turns_per_coil"] = max(1, in["turns_per_coil"])
		volts := machineVolts(t, in, 1).PhasePerRPM.Value * in["rpm"]
		if row["output"] == "E_conductor_rms_V" {
			return volts / 2
		}
		return volts
	case "EX048":
		wb, err := field.FluxFromGapTesla(in["B1_peak_T"], 2000*in["bore_radius_m"], 1000*in["stack_length_m"], in["poles"])
		require.NoError(t, err)
		return wb
	case "EX049": // a factor without slots: the volts that the flux of the gap requires, by bisection
		flux, err := field.FluxFromGapTesla(in["B1_peak_T"], 2000*in["bore_radius_m"], 1000*in["stack_length_m"], in["poles"])
		require.NoError(t, err)
		one, err := field.FluxFromEMF(1000, in["f_Hz"], in["turns_per_phase"], in["kw"], false)
		require.NoError(t, err)
		return flux / one
	case "EX013": // a pitch given as an angle of 150°, no whole number of slots: its kp is cos 15°
		in["short_pitch_slots"] = 0
		kd := machineVolts(t, in, 2).Kw1.Value
		one, err := field.FluxFromEMF(math.Sqrt(3), in["rpm"]*in["poles"]/120, in["turns_per_phase"], kd*math.Cos(math.Pi/12), false)
		require.NoError(t, err)
		return in["flux_per_pole_Wb"] / one
	}
	if row["topic"] == "harmonic-emf" {
		return harmonicVolts(t, row["output"], in)
	}
	a := machineVolts(t, in, 2)
	switch row["output"] {
	case "f_Hz":
		j, _ := machineOf(in)
		return winding.Evaluate(j).Machine.HertzPerRPM.Value * in["rpm"]
	case "E_phase_rms_V":
		return a.PhasePerRPM.Value * in["rpm"]
	case "E_line_rms_V":
		return a.LinePerRPM.Value * in["rpm"]
	}
	t.Fatalf("%s: nothing reads %s", row["id"], row["output"])
	return 0
}

// machineVolts is the example as a job, worked out.
func machineVolts(t *testing.T, in map[string]float64, layers float64) winding.TrialOutcome {
	t.Helper()
	j, ok := machineOf(in)
	require.True(t, ok, "%v", in)
	j.Machine.Layers = quantity.Known(layers)
	return evaluateA(j)
}

// harmonicVolts adds the harmonics of the gap's field as squares, each with its own winding
// factor: E_n = E_1·B_n·kw_n/(B_1·kw_1); the third is not between the leads of a star.
func harmonicVolts(t *testing.T, output string, in map[string]float64) float64 {
	in["bore_radius_m"], in["B_peak_T"] = in["bore_diameter_m"]/2, in["B1_peak_T"]
	in["coil_pitch_slots"] = math.Round(in["coil_pitch"] * in["slots"] / in["poles"])
	if n := in["turns_per_phase"]; n > 0 {
		in["turns_per_coil"] = n / (in["slots"] / 3)
	}
	if in["rpm"] == 0 {
		in["rpm"] = in["f_Hz"] * 120 / in["poles"]
	}
	a := machineVolts(t, in, 2)
	part := func(b float64, kw quantity.Figure) float64 { return b * kw.Value / (in["B1_peak_T"] * a.Kw1.Value) }
	third, fifth := part(in["B3_peak_T"], a.Kw3), part(in["B5_peak_T"], a.Kw5)
	if output == "E_line_rms_V" {
		return a.LinePerRPM.Value * in["rpm"] * math.Hypot(1, fifth)
	}
	return a.PhasePerRPM.Value * in["rpm"] * math.Sqrt(1+third*third+fifth*fifth)
}

// printedInverse is the flux that makes given volts, or the conductors that a flux requires.
func printedInverse(t *testing.T, row published.Row, in map[string]float64) float64 {
	hertz := in["f_Hz"]
	if hertz == 0 {
		hertz = in["rpm"] * in["poles"] / 120
	}
	span := in["slots"]/in["poles"] - in["short_pitch_slots"]
	if degrees := in["coil_span_deg"]; degrees > 0 {
		span = in["slots"] / in["poles"] * degrees / 180
	}
	l, err := layout.New(layout.Spec{Slots: int(in["slots"]), Poles: int(in["poles"]), Phases: 3, Layers: 2, Span: int(math.Round(span))})
	require.NoError(t, err)
	kw := l.Factor(1)
	if in["kd"] > 0 {
		assert.InDelta(t, in["kd"], kw, 0.005, "the book's own factor, to its figures")
		kw = in["kd"]
	}
	series := in["conductors_per_slot"] * in["slots"] / 6
	if series == 0 {
		series = 1
	}
	wb, err := field.FluxFromEMF(in["E_line_V"], hertz, series, kw, false)
	require.NoError(t, err)
	switch row["output"] {
	case "flux_per_pole_mWb":
		return 1000 * wb
	case "conductors_per_phase":
		return 2 * wb / in["flux_per_pole_Wb"]
	}
	return wb
}

// printedScaling: with a flux in proportion to the field current, volts go with both.
func printedScaling(in map[string]float64) float64 {
	j := plain()
	j.Field = job.FieldSpec{Kind: "wound", Amps: quantity.Known(in["If2_A"]), Ohms: quantity.Known(4)}
	j.Old = job.OldWinding{Wound: j.Trials[0].Wound}
	for _, part := range []float64{0.5, 1} {
		j.Spins = append(j.Spins, job.SpinReading{RPM: quantity.Known(in["f1_Hz"] * 10), LineVolts: quantity.Known(part * in["E1_V"]), FieldAmps: quantity.Known(part * in["If1_A"])})
	}
	return evaluateA(j).LinePerRPM.Value * in["f2_Hz"] * 10
}

// printedOhms is a metal's straight line: by its inferred zero, or by a coefficient α at a temperature,
// which is a zero at 1/α − t; the line for such a zero is obtained from the steady temperature that one
// watt makes behind one kelvin a watt.
func printedOhms(t *testing.T, row published.Row, in map[string]float64) float64 {
	line := func(zero, from, to float64) float64 { // R(to)/R(from)
		return wattsAt(zero, to) / wattsAt(zero, from)
	}
	zero := 1 / in["alpha0_per_C"]
	switch row["id"] {
	case "EX060":
		return in["P_ohmic_20C_W"] * wiretable.Copper.TempFactor(in["t1_C"], in["t2_C"])
	case "EX061": // stray loss falls as the metal's resistance rises
		k := wiretable.Copper.TempFactor(in["t1_C"], in["t2_C"])
		return in["P_ohmic_20C_W"]*k + in["P_stray_20C_W"]/k
	case "EX064", "EX068", "EX069":
		return in["R1_ohm"] * line(zero, in["t1_C"], in["t2_C"])
	case "EX067": // the temperature at which the ohms are those of the hot reading
		return heatedTo(in["t1_C"], in["R2_ohm"]/in["R1_ohm"], func(c float64) float64 { return line(1/in["alpha18_per_C"]-18, in["t1_C"], c) })
	case "EX070":
		return heatedTo(in["t1_C"], in["I1_A"]/in["I2_A"], func(c float64) float64 { return line(zero, in["t1_C"], c) }) - in["t1_C"]
	case "EX071":
		return wiretable.Copper.TempFactor(20, 21) - 1
	case "EX072":
		return wiretable.Aluminium.TempFactor(20, 21) - 1
	}
	t.Fatalf("%s: nothing reads it", row["id"])
	return 0
}

// wattsAt is what a loss of 1 W at 20 °C in a metal has grown to at a temperature: the rise
// over the air in which it steadily has that temperature.
func wattsAt(zero, celsius float64) float64 {
	low, high := celsius-10, celsius
	for range 60 {
		air := (low + high) / 2
		if steady, ok := heat.Steady(air, 1, 1, zero, 0); ok && steady < celsius {
			low = air
		} else {
			high = air
		}
	}
	return celsius - low
}

// heatedTo is the temperature at which ohms have grown by a ratio.
func heatedTo(from, ratio float64, grown func(c float64) float64) float64 {
	low, high := from, 300.0
	for range 60 {
		if mid := (low + high) / 2; grown(mid) < ratio {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// A small alternator's stator read cold and hot: 0.250 Ω at 20 °C, 0.337 at 93.9. The surface that was
// read is cooler than the mean of the copper, so the law is 4.3 % low.
func measuredOhms(t *testing.T, row published.Row, in map[string]float64) {
	j := plain()
	j.Machine.MeanTurnMM = quantity.Known(200)
	j.Target.TestC = quantity.Known(in["t2_C"])
	a := evaluateA(j)
	law := in["R1_ohm"] * a.LeadOhmsT.Value / a.LeadOhms20.Value
	measured := row.Number(t, "published_value")
	assert.InEpsilon(t, measured, law, 0.045)
	assert.Less(t, law, measured)
}

// printedStarDelta is volts and amps of star and delta.
func printedStarDelta(t *testing.T, row published.Row, in map[string]float64) float64 {
	j := plain()
	star := evaluateA(j)
	j.Trials[0].Connection = layout.Delta
	delta := evaluateA(j)
	linePerPhase := star.LinePerRPM.Value / star.PhasePerRPM.Value
	x := 2 * math.Pi * in["f_Hz"] * in["L_H"]
	switch row["id"] {
	case "EX074":
		return in["V_line_V"] / linePerPhase
	case "EX075":
		return drive.ShortAll(in["V_line_V"]/linePerPhase, in["R_phase_ohm"], 0, 1, 3, false).LeadAmps
	case "EX076": // the volts between leads that drive the current
		return in["I_phase_A"] / drive.ShortAll(1, in["R_ohm"], x, 1, 3, false).CoilAmps * linePerPhase
	case "EX077":
		return drive.ShortAll(in["V_line_V"], in["R_ohm"], x, 1, 3, true).CoilAmps
	case "EX078":
		return drive.ShortAll(in["V_line_V"], in["R_ohm"], x, 1, 3, true).LeadAmps
	case "EX081":
		return in["V_line_delta_V"] * star.LinePerRPM.Value / delta.LinePerRPM.Value
	case "EX082": // a star's lead carries what a delta's winding does
		return in["S_VA"] / (math.Sqrt(3) * in["V_line_delta_V"]) * delta.DensityPerAmp.Value / star.DensityPerAmp.Value
	}
	t.Fatalf("%s: nothing reads it", row["id"])
	return 0
}
