package charge

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Amps within 3 % of a circuit simulator's on the whole exponential law.
func TestDiodeLawCases(t *testing.T) {
	worst := 0.0
	for _, r := range readTable(t, "rectifier_diode_law_cases.csv") {
		s, l := r.circuit(t)
		d := Shockley{r.num(t, "diode_IS_A"), r.num(t, "diode_N"), r.num(t, "diode_RS_ohm"), r.num(t, "diode_temp_C")}
		p, err := SolveDiode(s, l, d)
		require.NoError(t, err)
		want := r.num(t, "dc_amps")
		assert.InEpsilon(t, want, p.DCAmps, 0.03, r["id"])
		assert.InEpsilon(t, r.num(t, "winding_rms_amps"), p.PhaseAmpsRMS, 0.03, r["id"])
		checkBalance(t, s, p, 1e-9)
		t.Logf("%s %.4g A, %+.2f %%", r["id"], p.DCAmps, 100*(p.DCAmps/want-1))
		worst = max(worst, math.Abs(p.DCAmps/want-1))
	}
	t.Logf("worst %.2f %%", 100*worst)
}

// A straight line is its own tangent: the answer is Solve's.
func TestDiodeLineIsSolve(t *testing.T) {
	table := DiodeTable{{0, 0.7}, {10, 0.9}, {20, 1.1}}
	for _, kappa := range []float64{1.2, 1.5, 4} {
		s := Source{kappa * 14 / math.Sqrt(3), 60, 0.4, 0.001, 3, false}
		l := Load{Volts: 12.6, Ohms: 0.1, DiodeVolts: 99, DiodeOhms: 99}
		p, err := SolveDiode(s, l, table)
		require.NoError(t, err)
		l.DiodeVolts, l.DiodeOhms = 0.7, 0.02
		want, err := Solve(s, l)
		require.NoError(t, err)
		same(t, want, p, 1, 1, 1e-9)
	}
}

// A finely sampled curve acts like its law.
func TestDiodeTableOfLaw(t *testing.T) {
	d := Shockley{1e-8, 1.8, 0.003, 27}
	var table DiodeTable
	for amps := 1e-3; amps < 100; amps *= 1.05 {
		v, r := d.Tangent(amps)
		table = append(table, DiodeReading{amps, v + r*amps})
	}
	require.NoError(t, table.Check())
	s := Source{11, 60, 0.4, 0.001, 3, false}
	byLaw, err := SolveDiode(s, Load{Volts: 12.6}, d)
	require.NoError(t, err)
	byTable, err := SolveDiode(s, Load{Volts: 12.6}, table)
	require.NoError(t, err)
	assert.InEpsilon(t, byLaw.DCAmps, byTable.DCAmps, 5e-3)
}

// The tangent touches: at its current it has the law's value, and nearby the law's slope.
func TestShockleyTangent(t *testing.T) {
	d := Shockley{2e-5, 1.05, 0.004, 40}
	law := func(i float64) float64 {
		return d.Ideality*voltsPerKelvin*313.15*math.Log(1+i/d.SaturationAmps) + d.SeriesOhms*i
	}
	for amps := 1e-3; amps < 200; amps *= 2 {
		v, r := d.Tangent(amps)
		assert.InEpsilon(t, law(amps), v+r*amps, 1e-12)
		assert.InEpsilon(t, (law(amps*1.0001)-law(amps*0.9999))/(amps*0.0002), r, 1e-6)
	}
	// kT/q is 25.85 mV at 300 K (CODATA constants).
	assert.InEpsilon(t, 0.02585, voltsPerKelvin*300, 1e-4)
}

// Amps rise with EMF from none, with no step over 1 % of what they are within 0.1 % of EMF,
// save near the least that counts.
func TestDiodeFromOffUpwards(t *testing.T) {
	d := Shockley{1e-8, 1.8, 0.003, 27}
	s := Source{Hertz: 60, Ohms: 0.4, Henries: 0.001, Phases: 3}
	last := 0.0
	for s.EMFPeak = 7; s.EMFPeak < 30; s.EMFPeak *= 1.001 {
		p, err := SolveDiode(s, Load{Volts: 12.6}, d)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, p.DCAmps, last, "%g V", s.EMFPeak)
		if last > 5 {
			assert.Less(t, p.DCAmps, last*1.05)
		}
		last = p.DCAmps
	}
	assert.Greater(t, last, 10.0)
	p, err := SolveDiode(Source{1, 60, 0.4, 0.001, 3, false}, Load{Volts: 12.6}, d)
	require.NoError(t, err)
	assert.Equal(t, Off, p.Mode)
	assert.Equal(t, 12.6, p.DCVolts)
}

func TestDiodeErrors(t *testing.T) {
	s, l := Source{20, 50, 1, 0.003, 3, false}, Load{Volts: 12}
	for want, d := range map[string]Diode{
		"Shockley.SaturationAmps is NaN":                   Shockley{math.NaN(), 1, 0, 27},
		"Shockley.Ideality is 0":                           Shockley{1e-8, 0, 0, 27},
		"Shockley.SeriesOhms is -1":                        Shockley{1e-8, 1, -1, 27},
		"Shockley.Celsius is -300":                         Shockley{1e-8, 1, 0, -300},
		"has 1 readings":                                   DiodeTable{{1, 0.7}},
		"reading 2 of the diode's table is 1 A":            DiodeTable{{1, 0.7}, {1, 0.8}},
		"reading 2 of the diode's table, Volts is +Inf":    DiodeTable{{1, 0.7}, {2, math.Inf(1)}},
		"reading 2 of the diode's table is 2 A at 0.6 V":   DiodeTable{{1, 0.7}, {2, 0.6}},
		"reading 1 of the diode's table, Amps is -1 A: it": DiodeTable{{-1, 0.7}, {2, 0.8}},
	} {
		_, err := SolveDiode(s, l, d)
		assert.ErrorContains(t, err, want)
	}
	_, err := SolveDiode(s, l, nil)
	assert.Error(t, err)
	s.Hertz = -1
	_, err = SolveDiode(s, l, Shockley{1e-8, 1, 0, 27})
	assert.ErrorContains(t, err, "Source.Hertz")
}
