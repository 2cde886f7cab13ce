package charge

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Half wave and doubler against a circuit simulator, whose capacitors ripple and whose diodes bend: within
// 1 %.
func TestAgainstACircuitSimulator(t *testing.T) {
	rows := readTable(t, "single_phase_ngspice.csv")
	require.Len(t, rows, 12)
	for _, r := range rows {
		l := Load{Volts: r.num(t, "load_volts"), Ohms: r.num(t, "load_ohms"), DiodeVolts: r.num(t, "diode_volts"), DiodeOhms: 1e-4, Rectifier: HalfWave}
		if r["rectifier"] == "doubler" {
			l.Rectifier = Doubler
		}
		s := Source{EMFPeak: r.num(t, "emf_peak_v"), Hertz: r.num(t, "hertz"), Ohms: r.num(t, "ohms"), Henries: r.num(t, "henries"), Phases: 1}
		p := solved(t, s, l)
		assert.InEpsilon(t, r.num(t, "dc_amps"), p.DCAmps, 0.01, "%v", r)
		assert.InEpsilon(t, r.num(t, "winding_amps_rms"), p.PhaseAmpsRMS, 0.01, "%v", r)
	}
}
