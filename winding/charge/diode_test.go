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
