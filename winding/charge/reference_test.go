package charge

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// row is a line of a table in testdata/charge, by column name.
type row map[string]string

func (r row) num(t testing.TB, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[column], 64)
	require.NoError(t, err, "column %s", column)
	return v
}

func readTable(t testing.TB, name string) []row {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "charge", name))
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	lines, err := r.ReadAll()
	require.NoError(t, err)
	var rows []row
	for _, line := range lines[1:] {
		r := row{}
		for k, name := range lines[0] {
			r[name] = line[k]
		}
		rows = append(rows, r)
	}
	require.NotEmpty(t, rows)
	return rows
}

func (r row) circuit(t testing.TB) (Source, Load) {
	t.Helper()
	s := Source{
		EMFPeak: r.num(t, "emf_peak_v"), Hertz: r.num(t, "hertz"), Ohms: r.num(t, "ohms"),
		Henries: r.num(t, "henries"), Phases: 3, Delta: r["connection"] == "delta",
	}
	return s, Load{Volts: r.num(t, "load_volts")}
}

func (r row) fullCircuit(t testing.TB) (Source, Load) {
	t.Helper()
	s, l := r.circuit(t)
	l.Ohms, l.DiodeVolts, l.DiodeOhms = r.num(t, "load_ohms"), r.num(t, "diode_volts"), r.num(t, "diode_ohms")
	return s, l
}

// The amps of every case against an independent event-driven solution, printed to 7 digits,
// and against a circuit simulator with its own step error: 0.1 %, or its leakage of 7 µA.
func TestReferenceCases(t *testing.T) {
	modes := map[string]Mode{"none": Off, "DCM0": Pulses, "DCM": Mixed, "CCM": Continuous}
	for _, r := range readTable(t, "rectifier_cases.csv") {
		s, l := r.fullCircuit(t)
		p, err := Solve(s, l)
		require.NoError(t, err, r["id"])
		want := r.num(t, "dc_amps")
		assert.InDelta(t, want, p.DCAmps, 3e-6*want, "%s DC amps", r["id"])
		assert.InDelta(t, r.num(t, "winding_rms_amps"), p.PhaseAmpsRMS, 3e-6*p.PhaseAmpsRMS, "%s rms", r["id"])
		assert.InDelta(t, r.num(t, "copper_watts"), p.CopperWatts, 3e-6*p.CopperWatts, "%s copper", r["id"])
		assert.InDelta(t, r.num(t, "battery_watts"), p.BatteryWatts, 3e-6*p.BatteryWatts, "%s battery", r["id"])
		assert.InDelta(t, r.num(t, "kappa"), p.Kappa, 6e-6*p.Kappa, "%s kappa", r["id"])
		assert.Equal(t, modes[r["mode"]], p.Mode, r["id"])
		if r["dc_amps_ngspice"] != "" {
			assert.InDelta(t, r.num(t, "dc_amps_ngspice"), p.DCAmps, max(1e-3*want, 7e-6), "%s simulator", r["id"])
		}
		checkBalance(t, s, p, 1e-9)
	}
}

// checkBalance asserts that power in is power out, to a relative tolerance; where almost none is real,
// to the rounding of volts times amps.
func checkBalance(t testing.TB, s Source, p Point, relative float64) {
	t.Helper()
	rounding := 1e-14 * 3 * s.EMFPeak * p.PhaseAmpsRMS
	assert.InDelta(t, p.InputWatts, p.Watts+p.CopperWatts+p.DiodeWatts, relative*p.InputWatts+rounding, "power of %+v", p)
}

// Idc·Z/V' and line rms/Idc over κ and q = ωL/R, an independent event-driven solution.
func TestReferenceMap(t *testing.T) {
	modes := map[string]Mode{"DCM0": Pulses, "DCM": Mixed, "CCM": Continuous}
	for _, r := range readTable(t, "rectifier_map.csv") {
		kappa, q := r.num(t, "kappa"), r.num(t, "wL_over_R")
		s, l := onMap(kappa, q)
		p, err := Solve(s, l)
		require.NoError(t, err)
		g := p.DCAmps * math.Sqrt(1+q*q) / 10
		assert.InEpsilon(t, r.num(t, "Idc_times_Z_over_V"), g, 3e-6, "κ %g q %g", kappa, q)
		assert.InEpsilon(t, r.num(t, "Iline_rms_over_Idc"), p.LineAmpsRMS/p.DCAmps, 6e-6, "κ %g q %g", kappa, q)
		assert.Equal(t, modes[r["mode"]], p.Mode, "κ %g q %g", kappa, q)
		checkBalance(t, s, p, 1e-9)
	}
}

// onMap is a circuit at a point of the map: 1 Ω, 50 Hz, and 10 V of load, no diodes.
func onMap(kappa, q float64) (Source, Load) {
	const hertz = 50
	return Source{EMFPeak: kappa * 10 / math.Sqrt(3), Hertz: hertz, Ohms: 1, Henries: q / (2 * math.Pi * hertz), Phases: 3},
		Load{Volts: 10}
}

// Just either side of each published boundary the mode is what the table says.
func TestEndOfPulses(t *testing.T) {
	for _, r := range readTable(t, "rectifier_boundaries.csv") {
		q, pulses := r.num(t, "wL_over_R"), r.num(t, "kappa_end_of_isolated_pulses")
		assert.Equal(t, Pulses, modeAt(t, pulses-1e-4, q), "q %g", q)
		assert.Equal(t, Mixed, modeAt(t, pulses+1e-4, q), "q %g", q)
	}
}

func modeAt(t *testing.T, kappa, q float64) Mode {
	t.Helper()
	p, err := Solve(onMap(kappa, q))
	require.NoError(t, err)
	return p.Mode
}

// startOfContinuous is the boundary of continuous conduction.
func startOfContinuous(t *testing.T, q float64) float64 {
	low, high := 1.2, 4/q+2
	for range 50 {
		if mid := (low + high) / 2; modeAt(t, mid, q) == Continuous {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// The two ends of the limit of continuous conduction follow by hand. With negligible inductance, a
// phase current crosses zero q - v/(3E) behind its EMF, and must be past the rail there: sin(q - v/3E)
// = v/3E gives κ = 2/(√3·q). With no resistance the mean of a·sin over the sixth is 2v/3, sin(θ+30°) =
// 2πv/9, and the phase that crosses zero is at the rail, 3·cos(θ+30°) = -v: κ = √3·√(1/9 + 4π²/81) =
// 1.33995.
func TestStartOfContinuous(t *testing.T) {
	assert.InEpsilon(t, 2/(math.Sqrt(3)*0.002), startOfContinuous(t, 0.002), 1e-4)
	assert.InEpsilon(t, math.Sqrt(3*(1./9+4*math.Pi*math.Pi/81)), startOfContinuous(t, 1e6), 1e-5)
}

// Newton's method closes the sixth in a few marches, whatever the circuit.
func TestMarchesToSettle(t *testing.T) {
	most := 0
	for q := 0.01; q < 1e4; q *= 1.5 {
		for kappa := 1.01; kappa < 60; kappa *= 1.03 {
			for _, rb := range []float64{0, 0.2, 20} {
				s, l := onMap(kappa, q)
				l.Ohms = rb
				c, err := reduce(s, l)
				require.NoError(t, err)
				if m := (march{c: &c, pieces: make([]piece, maxPieces)}); !m.continuous() {
					require.NoError(t, m.settle())
					most = max(most, m.marches)
				}
			}
		}
	}
	t.Logf("most marches: %d", most)
	assert.LessOrEqual(t, most, 20)
}
