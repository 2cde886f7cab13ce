package wiretable

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	mm2PerCircularMil = math.Pi / 4 * mmPerMil * mmPerMil
	metresPerFoot     = 0.3048
	kgPerPound        = 0.45359237
)

// ASTM B258 as printed by MWS Techbook p. 4 and the other copies named in the
// file: every cell of every row, to its last digit.
func TestAmericanRowsAsPrinted(t *testing.T) {
	cells := 0
	for _, row := range readTable(t, "awg.csv") {
		g := mustParse(t, row["gauge"]+" AWG")
		d, area := g.BareMM(Heavy), g.AreaMM2(Heavy)
		ohms := OhmsPerMetre(area, Copper, 20) * 1000 * metresPerFoot
		pounds := KgPerMetre(area, Copper) * 1000 * metresPerFoot / kgPerPound
		mil, _, _ := row.printed(t, "dia_mil")
		assert.InDelta(t, mil, d/mmPerMil, 1e-9, row["gauge"])
		for column, got := range map[string]float64{
			"dia_mm": d, "area_cmil": area / mm2PerCircularMil,
			"ohm_per_1000ft_20C": ohms, "lb_per_1000ft": pounds,
		} {
			if want, _, ok := row.printed(t, column); ok && column == "lb_per_1000ft" && g.n >= 2*37 {
				// The catalogue heads these four weights "approximate".
				assert.InEpsilon(t, want, got, 0.009, "%s of No. %s", column, row["gauge"])
				continue
			}
			// A whole last digit: the printed tables round from rounded figures.
			if row.agrees(t, column, got, 2) {
				cells++
			}
		}
	}
	assert.Greater(t, cells, 100)
}

// The rounding rule of ASTM B258 (0.1 mil to No. 44, then 0.01 mil) holds for every size of the table,
// so also for those of which no copy was available.
func TestAmericanTableFollowsRoundingRule(t *testing.T) {
	require.Len(t, awgHundredthMil, 54)
	for i, got := range awgHundredthMil {
		n := i - 3
		step := 10.0
		if n > 44 {
			step = 1
		}
		unrounded := awgFormulaMM(float64(n)) / mmPerMil * 100
		assert.Equal(t, math.Round(unrounded/step)*step, float64(got), "No. %d", n)
	}
}

// Kuphaldt's table keeps four figures of the formula (NBS Circular 31 style).
func TestAmericanFormula(t *testing.T) {
	for _, row := range readTable(t, "awg_unrounded.csv") {
		g := mustParse(t, row["gauge"]+" AWG")
		// A whole last digit: the table's own rounding is loose in places.
		row.agrees(t, "dia_mil", awgFormulaMM(float64(g.n)/2)/mmPerMil, 2.2)
	}
}

func TestHalfSizesLieBetweenByFormula(t *testing.T) {
	half := mustParse(t, "18.5")
	assert.Equal(t, "formula of ASTM B258, half size", half.Basis())
	assert.Equal(t, "ASTM B258 table", mustParse(t, "18").Basis())
	// 5 mil × 92^(17.5/39) = 38.03 mil.
	assert.InDelta(t, 38.03, half.BareMM(Heavy)/mmPerMil, 0.005)
	for n := awgFirst + 1; n < awgLast; n += 2 {
		g := Gauge{system: AWG, n: int32(n)}
		over := Gauge{system: AWG, n: int32(n - 1)}
		under := Gauge{system: AWG, n: int32(n + 1)}
		assert.Less(t, g.BareMM(Heavy), over.BareMM(Heavy))
		assert.Greater(t, g.BareMM(Heavy), under.BareMM(Heavy))
	}
}

// The imperial standard gauge row by row: GNU units 2.22, and a published
// conversion table in mm.
func TestImperialRowsAsPrinted(t *testing.T) {
	rows := readTable(t, "swg.csv")
	require.Len(t, rows, swgLast-swgFirst+1)
	for _, row := range rows {
		d := mustParse(t, row["gauge"]+" SWG").BareMM(Heavy)
		inch, _, _ := row.printed(t, "dia_in")
		assert.InDelta(t, inch, d/mmPerInch, 1e-12, row["gauge"])
		row.agrees(t, "dia_mm", d, 1.01)
		// Rows that nobody saw printed say so wherever the size is described.
		basis := Describe(mustParse(t, row["gauge"]+" SWG"), Heavy, Copper, 20, SWG).Basis
		assert.Equal(t, row["status"] == "memory", strings.Contains(basis, "from memory"), "%s SWG: %s", row["gauge"], basis)
	}
}

// The gauge falls in equal steps between its corners, as the Order in Council
// of 1883 sets it: a slip in one entry breaks the step.
func TestImperialSteps(t *testing.T) {
	corners := []struct{ from, to, step int }{
		{23, 26, 20}, {30, 39, 8}, {39, 49, 4}, {14, 16, 80}, {19, 23, 40}, {10, 13, 120},
		{3, 6, 200}, {6, 9, 160}, {26, 28, 16}, {49, 50, 2}, {16, 19, 80},
	}
	for _, c := range corners {
		for n := c.from; n < c.to; n++ {
			got := int(swgTenthMil[n-swgFirst] - swgTenthMil[n+1-swgFirst])
			assert.Equal(t, c.step, got, "No. %d to %d", n, n+1)
		}
	}
}

// The figures everyone knows: NBS Handbook 100 and ASTM B258.
func TestKnownSizes(t *testing.T) {
	g := mustParse(t, "18 AWG")
	assert.InDelta(t, 1.024, g.BareMM(Heavy), 0.0005)
	assert.InDelta(t, 0.0403, g.BareMM(Heavy)/mmPerInch, 1e-9)
	assert.InEpsilon(t, 20.95, OhmsPerMetre(g.AreaMM2(Heavy), Copper, 20)*1000, 0.001)
	g = mustParse(t, "40 AWG")
	assert.InDelta(t, 3.1, g.BareMM(Heavy)/mmPerMil, 1e-9)
	assert.InDelta(t, 9.61, g.AreaMM2(Heavy)/mm2PerCircularMil, 1e-9)
}

func TestMeasuredOverEnamel(t *testing.T) {
	for _, b := range Builds() {
		for _, text := range []string{"0.75 mm over", "0.0431 in over", "0.02 mm over", "9 mm over"} {
			g := mustParse(t, text)
			o := g.OverallMM(b)
			assert.Equal(t, g.typedMM(), o.NominalMM)
			assert.GreaterOrEqual(t, o.MaxMM, o.NominalMM)
			assert.InDelta(t, o.NominalMM, overallFor(b, g.BareMM(b)).NominalMM, 1e-9, "%s %s", text, b)
			assert.True(t, strings.HasPrefix(o.Basis, "as measured over enamel"))
		}
	}
	// MW 1000, Nearson table: heavy No. 18 measures 0.0431 in over, 0.0403 bare.
	g := mustParse(t, "0.0431 in over")
	assert.InDelta(t, 0.0403, g.BareMM(Heavy)/mmPerInch, 1e-9)
	assert.Equal(t, "as measured over enamel less the build", g.Basis())
	assert.True(t, g.OverEnamel())
	assert.Equal(t, g.typedMM(), g.BareMM(BareWire))
}

func TestMeasuredOverEnamelSaysWhenExtrapolated(t *testing.T) {
	for text, beyond := range map[string]bool{"0.75 mm over": false, "9 mm over": true, "0.02 mm over": true} {
		g := mustParse(t, text)
		assert.Equal(t, beyond, strings.Contains(g.BasisIn(Heavy), "extrapolated"), text)
		assert.Equal(t, beyond, strings.Contains(g.OverallMM(Heavy).Basis, "extrapolated"), text)
		assert.NotContains(t, g.BasisIn(BareWire), "extrapolated", text)
	}
	assert.Equal(t, "ASTM B258 table", mustParse(t, "18").BasisIn(Heavy))
}

func TestGaugeIsAMapKey(t *testing.T) {
	seen := map[Gauge]int{mustParse(t, "18"): 1}
	assert.Equal(t, 1, seen[mustParse(t, "#18")])
	assert.Zero(t, seen[mustParse(t, "18 SWG")])
	var none Gauge
	assert.True(t, none.IsZero())
	assert.Zero(t, none.BareMM(Heavy))
	assert.Zero(t, none.OverallMM(Heavy).MaxMM)
	assert.Equal(t, "none", none.System().String())
	assert.Equal(t, "no wire", none.Basis())
}
