package heat

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"slotwright/winding/published"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// k of IEC 60364-5-54 is √τ·J. The printed k is whole, and its heat capacities are 0.8 %
// (copper) and 3.0 % (aluminium) above the handbook ones, so √ of that in k.
func TestAdiabaticAgainstTheInstallationStandard(t *testing.T) {
	capacity := map[string]float64{"copper": 3.45e6, "aluminium": 2.5e6}
	for _, row := range published.Rows(t, "heat/adiabatic_k.csv") {
		m, err := wiretable.ParseMetal(row["metal"])
		require.NoError(t, err)
		printed, from, to := row.Number(t, "k"), row.Number(t, "from_c"), row.Number(t, "to_c")
		k := math.Sqrt(Seconds(m, 50, from, to)) * 50
		assert.InEpsilon(t, printed, k, 0.02, "%v", row)
		assert.Less(t, k, printed+0.5, "never on the unsafe side")
		ours := m.SpecificHeat() * m.DensityKgM3()
		assert.InDelta(t, printed, k*math.Sqrt(capacity[row["metal"]]/ours), 0.75, "with the standard's heat capacity: %v", row)
	}
}

// Circular mils per ampere and A/mm² as books print both: the conversion, not the choice of a density,
// which is from memory and tested in TestConstants.
func TestPrintedCircularMilsAreOurs(t *testing.T) {
	for _, row := range published.Rows(t, "heat/density.csv") {
		cmil, amps := row.Number(t, "cmil_per_amp"), row.Number(t, "amps_per_mm2")
		assert.InDelta(t, amps, CmilPerMM2/cmil, 0.0051, row["source"])
		assert.InDelta(t, amps, CmilPerAmp(cmil), 0.0051, "the turning round is its own inverse")
	}
}

func TestClassesAsPublished(t *testing.T) {
	rows := published.Rows(t, "heat/classes.csv")
	assert.Len(t, rows, len(Classes()))
	for _, row := range rows {
		c, err := ParseClass(strings.ToLower(row["class"]))
		require.NoError(t, err)
		assert.Equal(t, row.Number(t, "limit_c"), c.LimitC())
		assert.Equal(t, row.Number(t, "rise_k"), c.RiseK())
		assert.LessOrEqual(t, 40+c.RiseK(), c.LimitC()-5, "the hottest spot is above the mean")
	}
	assert.Zero(t, Class('Q').RiseK())
}

// A plate's loss hot, from its loss cold: a textbook's 504 W are 613 W.
func TestHotWattsOfATextbook(t *testing.T) {
	for _, row := range published.Rows(t, "heat/loss.csv") {
		cold := row.Number(t, "watts_20c")
		require.Equal(t, -row.Number(t, "inferred_zero"), wiretable.Copper.InferredZeroC())
		assert.InDelta(t, row.Number(t, "watts_hot"), HotWatts(wiretable.Copper, 3, 10, cold/300, row.Number(t, "celsius")), 0.5)
	}
}

// A machine at its plate's load, run again with the rise per watt derived from its plate, reaches the
// temperature it had.
func TestPlateAndSteadyAgree(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for range 300 {
		rise, amps, ohms, iron := 20+100*r.Float64(), 1+40*r.Float64(), 0.02+0.5*r.Float64(), 30*r.Float64()
		hot := 40 + rise
		rth, err := KelvinPerWattFromPlate(rise, HotWatts(wiretable.Copper, 3, amps, ohms, hot)+iron)
		require.NoError(t, err)
		got, ok := Steady(40, rth, HotWatts(wiretable.Copper, 3, amps, ohms, 20), -wiretable.Copper.InferredZeroC(), iron)
		require.True(t, ok)
		assert.InEpsilon(t, hot, got, 1e-9)
	}
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		_, err := KelvinPerWattFromPlate(bad, 100)
		assert.ErrorIs(t, err, ErrPlate)
		_, err = KelvinPerWattFromPlate(80, bad)
		assert.ErrorIs(t, err, ErrPlate)
	}
	assert.Zero(t, HotWatts(wiretable.Copper, 3, math.NaN(), 1, 20))
}

// No steady temperature where the loss outgrows the cooling; NaN and Inf are never returned as one.
func TestSteadyRunsAwayAndRefuses(t *testing.T) {
	below, ok := Steady(25, 1, 254.4, 234.5, 0)
	assert.True(t, ok)
	assert.Greater(t, below, 1e5, "just below runaway it is hotter than anything")
	for _, v := range [][5]float64{
		{25, 1, 254.5, 234.5, 0}, {25, 1, 300, 234.5, 0}, {math.NaN(), 1, 10, 234.5, 0}, {25, math.NaN(), 10, 234.5, 0}, {25, 1, math.Inf(1), 234.5, 0},
		{25, 1, 10, math.NaN(), 0}, {25, 1, 10, 234.5, math.NaN()}, {25, 1, 10, 234.5, math.Inf(1)}, {25, -1, 10, 234.5, 0}, {25, 1, -10, 234.5, 0},
	} {
		c, ok := Steady(v[0], v[1], v[2], v[3], v[4])
		assert.False(t, ok, "%v", v)
		assert.True(t, math.IsInf(c, 1), "%v", v)
	}
	cold, ok := Steady(-10, 2, 0, 234.5, 0)
	assert.True(t, ok)
	assert.Equal(t, -10.0, cold, "no loss, no rise")
}

// Seconds, RiseRate and After follow one law.
func TestAdiabaticIsOneLaw(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	for range 300 {
		m := wiretable.Metals()[r.IntN(2)]
		j, from := 1+80*r.Float64(), -20+150*r.Float64()
		to := from + 1 + 150*r.Float64()
		s := Seconds(m, j, from, to)
		assert.InEpsilon(t, to+k(m), After(m, j, from, s)+k(m), 1e-12)
		assert.InEpsilon(t, s/4, Seconds(m, 2*j, from, to), 1e-12, "twice the current, a quarter of the time")
		slope := (After(m, j, from, 1e-4) - After(m, j, from, 0)) / 1e-4
		assert.InEpsilon(t, slope, RiseRate(m, j, from), 1e-3)
		mid := (from + to) / 2
		assert.InEpsilon(t, s, Seconds(m, j, from, mid)+Seconds(m, j, mid, to), 1e-9)
	}
	assert.Equal(t, 30.0, After(wiretable.Copper, 0, 30, 5))
	assert.Zero(t, RiseRate(wiretable.Copper, math.NaN(), 30))
	assert.Zero(t, RiseRate(wiretable.Copper, 5, -300))
	for _, v := range [][3]float64{{math.NaN(), 20, 100}, {5, math.NaN(), 100}, {5, 20, math.NaN()}, {5, -400, 100}} {
		assert.True(t, math.IsInf(Seconds(wiretable.Copper, v[0], v[1], v[2]), 1), "%v", v)
	}
}

// Film lies in the textbook's convection ranges with radiation, 4·ε·σ·T³ at 60 °C and ε
// of 0.9 (Stefan and Boltzmann), on top.
func TestFilmInTheTextbookRange(t *testing.T) {
	radiation := 4 * 0.9 * 5.670374e-8 * math.Pow(333.15, 3)
	for _, c := range []Cooling{Closed, Open} {
		assert.GreaterOrEqual(t, Film(c), radiation+2)
		assert.LessOrEqual(t, Film(c), radiation+25)
	}
	assert.GreaterOrEqual(t, Film(Fan), radiation+25)
	assert.LessOrEqual(t, Film(Fan), radiation+250)
	assert.Contains(t, FilmSource, "guess")
}

func TestLimitAmpsOfNothing(t *testing.T) {
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		assert.Zero(t, LimitAmps(Open, wiretable.Copper, bad))
		assert.Zero(t, SameHeat(bad, 1, 1))
		assert.Zero(t, SameHeat(1, bad, 1))
	}
}

// A parsed word is written back as it was, in any case.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"A", "h", " F ", "open", "CLOSED", "fan", "", "AB", "\x00", "Ａ"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if c, err := ParseClass(text); err == nil {
			again, err := ParseClass(c.String())
			require.NoError(t, err)
			require.Equal(t, c, again)
			require.Positive(t, c.LimitC())
		}
		if c, err := ParseCooling(text); err == nil {
			again, err := ParseCooling(c.String())
			require.NoError(t, err)
			require.Equal(t, c, again)
			require.True(t, strings.EqualFold(strings.TrimSpace(text), c.String()))
		}
	})
}
