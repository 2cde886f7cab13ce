package wiretable

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The annealed copper standard (IEC 60028) and 61 % IACS aluminium (IEC 60889).
func TestMetalConstants(t *testing.T) {
	assert.InDelta(t, 1.7241e-8, Copper.Resistivity(20), 0.00005e-8)
	assert.Equal(t, 8890.0, Copper.DensityKgM3())
	assert.InDelta(t, 2.8264e-8, Aluminium.Resistivity(20), 0.0001e-8)
	assert.Equal(t, 2703.0, Aluminium.DensityKgM3())
	assert.Equal(t, -234.5, Copper.InferredZeroC())
	assert.Equal(t, -228.1, Aluminium.InferredZeroC())
	// The coefficients at 20 °C printed with them: 0.00393 and 0.00403.
	assert.InDelta(t, 0.00393, Copper.TempFactor(20, 21)-1, 0.000005)
	assert.InDelta(t, 0.00403, Aluminium.TempFactor(20, 21)-1, 0.000005)
	// IEC mass resistivity: 0.15328 Ω·g/m² for copper.
	assert.InEpsilon(t, 0.15328, Copper.Resistivity(20)*Copper.DensityKgM3()*1e3, 1e-4)
}

func TestResistanceScales(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 2000 {
		m := Metals()[random.IntN(2)]
		area, temp, other := 0.001+random.Float64()*100, random.Float64()*250-40, random.Float64()*250-40
		r := OhmsPerMetre(area, m, temp)
		require.InEpsilon(t, r/2, OhmsPerMetre(2*area, m, temp), 1e-12)
		require.InEpsilon(t, OhmsPerMetre(area, m, other), r*m.TempFactor(temp, other), 1e-12)
		require.InEpsilon(t, 1, m.TempFactor(temp, other)*m.TempFactor(other, temp), 1e-12)
		require.InEpsilon(t, 2*KgPerMetre(area, m), KgPerMetre(2*area, m), 1e-12)
		// ρ·density depends on the metal alone, however thick the wire.
		require.InEpsilon(t, m.Resistivity(temp)*m.DensityKgM3(), r*KgPerMetre(area, m), 1e-12)
	}
}

// The handbook rule for copper at 20 °C is 66.1/√f mm.
func TestSkinDepth(t *testing.T) {
	assert.InDelta(t, 66.1, SkinDepthMM(Copper, 20, 1), 0.05)
	assert.InEpsilon(t, SkinDepthMM(Copper, 20, 50)/2, SkinDepthMM(Copper, 20, 200), 1e-12)
	assert.InEpsilon(t, math.Sqrt(1/0.61), SkinDepthMM(Aluminium, 20, 50)/SkinDepthMM(Copper, 20, 50), 1e-12)
}

// Our figure lies within the printed limits of resistance: IEC 60317-0-1 (SH-wire sheet, ohm per metre)
// and MW 1000 (MWS Techbook, ohm per 1000 ft).
func TestResistanceWithinPrintedLimits(t *testing.T) {
	checked := 0
	for _, row := range readTable(t, "ohm_limits.csv") {
		g := mustParse(t, row["size"])
		ohms := OhmsPerMetre(g.AreaMM2(Heavy), Copper, 20)
		if row["unit"] == "ohm/1000ft" {
			ohms *= 1000 * metresPerFoot
		}
		least, _, ok := row.printed(t, "least")
		if ok {
			assert.Greater(t, ohms, least, row["size"])
			checked++
		}
		if most, _, ok := row.printed(t, "most"); ok {
			assert.Less(t, ohms, most, row["size"])
			checked++
		}
		// IEC computes its nominal with 58.5 m/(ohm.mm2), we with 58.
		if nominal, _, ok := row.printed(t, "nominal"); ok {
			assert.InEpsilon(t, nominal*58.5/58, ohms, 1e-3, row["size"])
			checked++
		}
	}
	assert.Greater(t, checked, 50)
}
