package wiretable

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Three gauge steps halve the area (ASTM B258: 92^(6/39) = 2.005), so two of No. 21 replace one of No.
// 18.
func TestSubstitutesOfKnownWire(t *testing.T) {
	found := Substitutes(Of(1, mustParse(t, "18")), SubstituteOptions{System: AWG})
	require.NotEmpty(t, found)
	var bundles []Bundle
	for _, s := range found {
		bundles = append(bundles, s.Bundle)
		assert.NotEqual(t, "1 × 18 AWG", s.Bundle.String(), "the target is no substitute")
	}
	assert.Contains(t, bundles, Of(2, mustParse(t, "21")))
	assert.Equal(t, Of(2, mustParse(t, "21")), bundles[0], "near in area and fewest wires")
}

func TestSubstitutesKeepTheirWord(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	systems := []System{AWG, SWG, IEC}
	for range 60 {
		target := 0.02 * pow10(random.Float64()*2.5)
		o := SubstituteOptions{
			System: systems[random.IntN(3)], Build: Builds()[random.IntN(7)], MaxStrands: 1 + random.IntN(6),
			Tolerance: 0.005 + 0.05*random.Float64(), MaxOverallMM: 0.3 + 3*random.Float64(), Limit: 1 + random.IntN(40),
		}
		seen := map[Bundle]bool{}
		found := SubstitutesForArea(target, o)
		require.LessOrEqual(t, len(found), o.Limit)
		for _, s := range found {
			require.InEpsilon(t, s.Bundle.AreaMM2(o.Build), s.AreaMM2, 1e-12)
			require.InEpsilon(t, s.Bundle.SquareMM2(o.Build), s.SquareMM2, 1e-12)
			require.InDelta(t, s.AreaMM2/target-1, s.ErrorFraction, 1e-12)
			require.LessOrEqual(t, math.Abs(s.ErrorFraction), o.Tolerance)
			require.LessOrEqual(t, s.Bundle.Count(), o.MaxStrands)
			require.LessOrEqual(t, s.Bundle.ThickestMM(o.Build), o.MaxOverallMM)
			require.False(t, seen[s.Bundle], "twice")
			seen[s.Bundle] = true
			for _, part := range s.Bundle.Parts() {
				require.Equal(t, o.System, part.Gauge.System())
			}
		}
	}
}

// Nothing within the options is missed: a brute-force search over every pair finds as many.
func TestSubstitutesMissNothing(t *testing.T) {
	const target, tolerance = 0.9, 0.05
	sizes := Sizes(AWG)
	want := 0
	for i, a := range sizes {
		for n := 1; n <= 4; n++ {
			if within(Of(n, a), target, tolerance) {
				want++
			}
			for _, b := range sizes[i+1:] {
				for m := 1; n+m <= 4; m++ {
					if a.BareMM(Heavy) <= 2*b.BareMM(Heavy) && within(OfTwo(n, a, m, b), target, tolerance) {
						want++
					}
				}
			}
		}
	}
	found := SubstitutesForArea(target, SubstituteOptions{MaxStrands: 4, Tolerance: tolerance, Limit: 10000})
	assert.Greater(t, want, 5)
	assert.Len(t, found, want)
}

func within(b Bundle, target, tolerance float64) bool {
	return math.Abs(b.AreaMM2(Heavy)/target-1) <= tolerance
}

func TestSubstitutesOrder(t *testing.T) {
	one := func(count int, off, room float64, two bool) Substitute {
		b := Of(count, mustParse(t, "20"))
		if two {
			b = OfTwo(count-1, mustParse(t, "20"), 1, mustParse(t, "22"))
		}
		return Substitute{Bundle: b, ErrorFraction: off, SquareMM2: room}
	}
	close, fewer, same, lean := one(2, 0.001, 1, false), one(2, 0.01, 1, false), one(3, 0.01, 1, true), one(4, 0.01, 1, true)
	bulky := one(4, 0.01, 1.3, true)
	list := []Substitute{bulky, same, lean, fewer, close}
	rank(list, 0.03)
	assert.Equal(t, []Substitute{close, fewer, same, lean, bulky}, list)
}

func TestSubstitutesOfNothing(t *testing.T) {
	assert.Empty(t, Substitutes(Bundle{}, SubstituteOptions{}))
	for _, area := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		assert.Nil(t, SubstitutesForArea(area, SubstituteOptions{}))
	}
	assert.Empty(t, SubstitutesForArea(1e9, SubstituteOptions{}))
	assert.NotEmpty(t, SubstitutesForArea(1, SubstituteOptions{Tolerance: math.NaN(), System: MetricDiameter}))
}
