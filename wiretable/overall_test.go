package wiretable

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// MW 1000 row by row (Nearson, Centelsa, Elektrisola copies).
func TestMW1000RowsAsPrinted(t *testing.T) {
	cells := 0
	for _, row := range readTable(t, "nema_build.csv") {
		g := mustParse(t, row["awg"]+" AWG")
		row.agrees(t, "bare_nom_in", g.BareMM(Heavy)/mmPerInch, 1e-6)
		for column, b := range map[string]Build{"single": Single, "heavy": Heavy, "triple": Triple} {
			o := g.OverallMM(b)
			for end, got := range map[string]float64{"_nom_in": o.NominalMM, "_max_in": o.MaxMM} {
				if want, _, ok := row.printed(t, column+end); ok {
					assert.InDelta(t, want, got/mmPerInch, 1e-9, "%s%s of No. %s", column, end, row["awg"])
					assert.True(t, strings.HasPrefix(o.Basis, "MW 1000 table"), o.Basis)
					cells++
				}
			}
		}
	}
	assert.Greater(t, cells, 100)
}

// IEC 60317-0-1 row by row (Elektrisola, DIN EN size sheets, Avanti copies).
func TestIECRowsAsPrinted(t *testing.T) {
	rows := readTable(t, "iec_sizes.csv")
	require.GreaterOrEqual(t, len(rows), 80)
	for _, row := range rows {
		g := mustParse(t, "IEC "+row["d_nom_mm"])
		bare := g.BareMM(Grade2)
		for grade, b := range map[string]Build{"g1": Grade1, "g2": Grade2, "g3": Grade3} {
			o := g.OverallMM(b)
			if want, _, ok := row.printed(t, "max_od_"+grade); ok {
				assert.InDelta(t, want, o.MaxMM, 1e-9, "%s %s", row["d_nom_mm"], grade)
			}
			if increase, _, ok := row.printed(t, "min_inc_"+grade); ok {
				assert.InDelta(t, (bare+increase+o.MaxMM)/2, o.NominalMM, 1e-9, "%s %s", row["d_nom_mm"], grade)
			}
			wantBasis := map[string]string{"seen": "IEC 60317-0-1 table", "computed": "IEC 60317-0-1 rule"}[row["status"]]
			assert.True(t, strings.HasPrefix(o.Basis, wantBasis), "%s %s", row["d_nom_mm"], o.Basis)
		}
	}
}

// An intermediate size has the increase to the maximum of the next larger R20 size: a rule found in the
// printed rows from 0.212 mm. It constrains the rows from memory that are next to a computed one.
func TestIECIntermediateRule(t *testing.T) {
	next := map[int32]int32{
		670: 710, 750: 800, 850: 900, 950: 1000, 1060: 1120, 1180: 1250,
		1900: 2000, 2650: 2800, 3000: 3150, 4250: 4500, 4750: 5000, 212: 224, 1320: 1400,
	}
	rows := map[int32]iecRow{}
	for _, row := range iecRows {
		rows[row.bare] = row
	}
	for between, r20 := range next {
		for grade := range 3 {
			assert.Equal(t, rows[r20].maximum[grade]-r20, rows[between].maximum[grade]-between, "%d", between)
		}
		assert.Equal(t, rows[r20].increase, rows[between].increase, "%d", between)
	}
}

// Every curve rises monotonically, and grades and builds keep their order.
func TestCurvesClimb(t *testing.T) {
	for b := range BareWire {
		points := curves[b].points
		require.Greater(t, len(points), 30)
		for i := 1; i < len(points); i++ {
			p, q := points[i-1], points[i]
			assert.Less(t, p.bareMM, q.bareMM, "%s %d", b, i)
			assert.Less(t, p.nominalMM, q.nominalMM, "%s %.4f", b, q.bareMM)
			assert.Less(t, p.maxMM, q.maxMM, "%s %.4f", b, q.bareMM)
			assert.Less(t, q.bareMM, q.nominalMM)
			assert.Less(t, q.nominalMM, q.maxMM)
			assert.NotEmpty(t, q.basis)
		}
	}
}

func TestOverallProperties(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 5000 {
		bare := minBareMM * pow10(random.Float64()*3.17)
		thinner := bare * (1 - 0.05*random.Float64())
		for _, b := range Builds() {
			o := overallFor(b, bare)
			require.InEpsilon(t, bare, bareUnder(b, o.NominalMM), 1e-5, "%s %v", b, bare)
			require.GreaterOrEqual(t, o.MaxMM, o.NominalMM)
			require.GreaterOrEqual(t, o.NominalMM, bare)
			require.LessOrEqual(t, overallFor(b, thinner).NominalMM, o.NominalMM+onRowMM)
			require.NotEmpty(t, o.Basis)
		}
		ordered(t, bare, Single, Heavy, Triple)
		ordered(t, bare, Grade1, Grade2, Grade3)
	}
}

// ordered checks that thicker enamel has the larger diameter, within the tables' range: beyond it each
// build extrapolates its own end row.
func ordered(t *testing.T, bare float64, builds ...Build) {
	t.Helper()
	if bare < 0.08 || bare > 3.2 {
		return
	}
	for i := 1; i < len(builds); i++ {
		less, more := overallFor(builds[i-1], bare), overallFor(builds[i], bare)
		require.Less(t, less.NominalMM, more.NominalMM, "%v %v", builds[i], bare)
		require.Less(t, less.MaxMM, more.MaxMM, "%v %v", builds[i], bare)
	}
}

func TestOverallSaysWhereItComesFrom(t *testing.T) {
	for _, c := range []struct{ size, build, starts string }{
		{"18 AWG", "heavy", "MW 1000 table"},
		{"24 AWG", "heavy", "MW 1000 table"},
		{"16 AWG", "heavy", "MW 1000, from memory"},
		{"18.5 AWG", "heavy", "between rows of MW 1000"},
		{"0.71 mm", "heavy", "between rows of MW 1000"},
		{"0000 AWG", "heavy", "extrapolated: thicker"},
		{"0.01 mm", "heavy", "extrapolated: thinner"},
		{"45 AWG", "triple", "extrapolated: thinner"},
		{"0.71 mm", "grade 2", "IEC 60317-0-1 table"},
		{"IEC 0.8", "grade 2", "IEC 60317-0-1, from memory"},
		{"0.72 mm", "grade 1", "between rows of IEC 60317-0-1"},
		{"6 mm", "grade 3", "extrapolated: thicker"},
		{"0.015 mm", "grade 3", "extrapolated: thinner"},
		{"18 SWG", "bare", "bare wire"},
	} {
		b, err := ParseBuild(c.build)
		require.NoError(t, err)
		basis := mustParse(t, c.size).OverallMM(b).Basis
		assert.True(t, strings.HasPrefix(basis, c.starts), "%s %s: %s", c.size, c.build, basis)
	}
}

// A gauge that equals a table row gets the row itself, whatever system named it.
func TestEqualDiametersAgree(t *testing.T) {
	inch := mustParse(t, "0.0403 in").OverallMM(Heavy)
	assert.Equal(t, mustParse(t, "18 AWG").OverallMM(Heavy), inch)
	assert.Equal(t, mustParse(t, "IEC 0.71").OverallMM(Grade2), mustParse(t, "0.71 mm").OverallMM(Grade2))
}

// Halfway between two rows both diameters are halfway: MW 1000 heavy No. 24 is
// 0.0201 bare, 0.02224 nominal and 0.02272 in at most, No. 25 is 0.0179,
// 0.01988 and 0.02031 (Elektrisola copy).
func TestBetweenRowsIsAStraightLine(t *testing.T) {
	o := mustParse(t, "0.0190 in").OverallMM(Heavy)
	assert.InDelta(t, (0.02224+0.01988)/2, o.NominalMM/mmPerInch, 1e-9)
	assert.InDelta(t, (0.02272+0.02031)/2, o.MaxMM/mmPerInch, 1e-9)
}

// Beyond the rows the increase (thick) or the ratio (thin) of the end row is
// held: IEC grade 1 of 5 mm is 5.093 mm at most (published).
func TestBeyondRowsHoldsTheEndRow(t *testing.T) {
	assert.InDelta(t, 6.093, mustParse(t, "6 mm").OverallMM(Grade1).MaxMM, 1e-9)
	end := mustParse(t, "IEC 0.018").OverallMM(Grade1)
	assert.InEpsilon(t, end.MaxMM/0.018, mustParse(t, "0.012 mm").OverallMM(Grade1).MaxMM/0.012, 1e-9)
	assert.InEpsilon(t, end.NominalMM/0.018, mustParse(t, "0.012 mm").OverallMM(Grade1).NominalMM/0.012, 1e-9)
}
