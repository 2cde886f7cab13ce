package field

import (
	"math"
	"testing"

	"slotwright/winding/published"

	"github.com/stretchr/testify/require"
)

func TestConstants(t *testing.T) {
	const makers = "makers' sheets, from memory"
	published.Constants(t, []published.Constant{
		{What: "permeability of space, H/m", Want: 4e-7 * math.Pi, Have: Mu0, Source: "by definition until 2019"},
		{What: "how far magnets' flux may be off", Want: 0.15, Have: Uncertainty, Source: published.Practice},
		{What: "permeance of end turns", Want: 0.3, Have: EndPermeance, Source: "Pyrhönen et al., 0.2 to 0.5 by shape, from memory"},
		{What: "mm of a magnet of unknown thickness", Want: 3, Have: UsualMagnetMM, Source: published.Practice},
		{What: "remanence a kelvin, neodymium", Want: -0.0012, Have: PerKelvinOf(1.3), Source: makers},
		{What: "remanence a kelvin, weakest neodymium", Want: -0.0012, Have: PerKelvinOf(0.6), Source: makers},
		{What: "remanence a kelvin, ferrite", Want: -0.0020, Have: PerKelvinOf(0.4), Source: makers},
		{What: "remanence a kelvin, strongest ferrite", Want: -0.0020, Have: PerKelvinOf(0.599), Source: makers},
	})
}

// What stands in where nothing is given: leakage 1.1, recoil permeability 1.05, no slots, the
// gap as wide as the magnet. By hand at 20 °C: 1.2/(1.1 + 1.05·2/6) = 0.827586 T.
func TestMagnetsWithNothingElseGiven(t *testing.T) {
	gap, _, err := Magnets{RemanenceT: 1.2, TempC: 20, ThicknessMM: 6, Cover: 0.8, GapMM: 2}.GapTesla()
	require.NoError(t, err)
	require.InDelta(t, 0.827586, gap, 1e-6)
}
