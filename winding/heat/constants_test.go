package heat

import (
	"math"
	"testing"

	"slotwright/winding/published"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestConstants(t *testing.T) {
	const (
		hendershot = "Hendershot and Miller, Design of Brushless Permanent-Magnet Machines, from memory"
		pyrhonen   = "Pyrhönen et al., Design of Rotating Electrical Machines, from memory"
		film       = "a guess within Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 1.1, from memory"
	)
	published.Constants(t, []published.Constant{
		{What: "A/mm², closed, lowest", Want: 1.5, Have: DensityOf(Closed).Low, Source: hendershot},
		{What: "A/mm², closed, highest", Want: 5, Have: DensityOf(Closed).High, Source: hendershot},
		{What: "A/mm², open, lowest", Want: 3, Have: DensityOf(Open).Low, Source: pyrhonen},
		{What: "A/mm², open, highest", Want: 6.5, Have: DensityOf(Open).High, Source: pyrhonen},
		{What: "A/mm², fan, lowest", Want: 5, Have: DensityOf(Fan).Low, Source: hendershot},
		{What: "A/mm², fan, highest", Want: 10, Have: DensityOf(Fan).High, Source: hendershot},
		{What: "the middle of the range governs: A of 2 mm², closed", Want: 6.5, Have: LimitAmps(Closed, wiretable.Copper, 2), Source: published.Practice},
		{What: "the middle of the range governs: A of 2 mm², open", Want: 9.5, Have: LimitAmps(Open, wiretable.Copper, 2), Source: published.Practice},
		{What: "the middle of the range governs: A of 2 mm², fan", Want: 15, Have: LimitAmps(Fan, wiretable.Copper, 2), Source: published.Practice},
		{What: "W/m²K, closed", Want: 10, Have: Film(Closed), Source: film},
		{What: "W/m²K, open", Want: 15, Have: Film(Open), Source: film},
		{What: "W/m²K, fan", Want: 40, Have: Film(Fan), Source: film},
		{What: "class A, °C", Want: 105, Have: Class('A').LimitC(), Source: "IEC 60085"},
		{What: "class E, °C", Want: 120, Have: Class('E').LimitC(), Source: "IEC 60085"},
		{What: "class B, °C", Want: 130, Have: Class('B').LimitC(), Source: "IEC 60085"},
		{What: "class F, °C", Want: 155, Have: Class('F').LimitC(), Source: "IEC 60085"},
		{What: "class H, °C", Want: 180, Have: Class('H').LimitC(), Source: "IEC 60085"},
		{What: "class A, K by resistance", Want: 60, Have: Class('A').RiseK(), Source: "IEC 60034-1"},
		{What: "class E, K by resistance", Want: 75, Have: Class('E').RiseK(), Source: "IEC 60034-1"},
		{What: "class B, K by resistance", Want: 80, Have: Class('B').RiseK(), Source: "IEC 60034-1"},
		{What: "class F, K by resistance", Want: 105, Have: Class('F').RiseK(), Source: "IEC 60034-1"},
		{What: "class H, K by resistance", Want: 125, Have: Class('H').RiseK(), Source: "IEC 60034-1"},
		{What: "circular mils in a mm²", Want: 4 / math.Pi / (0.0254 * 0.0254), Have: CmilPerMM2, Source: "by definition"},
	})
}

// A stator that is a plain cylinder of 100 by 100 mm, no slots: mantle and bore, π·D·L each,
// 0.062832 m² together, at 10, 15 and 40 W/m²K: 1.5915, 1.0610 and 0.3979 K/W.
func TestRiseOfAPlainCylinder(t *testing.T) {
	for cooling, byHand := range map[Cooling]float64{Closed: 1.5915, Open: 1.0610, Fan: 0.3979} {
		rise, err := FromSurface(cooling, 100, 100, 0)
		require.NoError(t, err)
		assert.InDelta(t, byHand, rise, 0.0001, "%s", cooling)
	}
}

// Heat in a volume of wire is J²·ρ: aluminium of 61 % IACS (IEC 60889) tolerates √0.61 of copper's
// density (IEC 60028), the middle of 3 to 6.5 A/mm² in air becomes 3.71.
func TestDensityOfAluminium(t *testing.T) {
	assert.InEpsilon(t, math.Sqrt(0.61), AtEqualHeat(wiretable.Copper, wiretable.Aluminium), 1e-6)
	assert.InEpsilon(t, 1, AtEqualHeat(wiretable.Copper, wiretable.Aluminium)*AtEqualHeat(wiretable.Aluminium, wiretable.Copper), 1e-12)
	assert.InDelta(t, 3.71, DensityOf(Open).Mid(wiretable.Aluminium), 0.005)
	assert.InEpsilon(t, 2*DensityOf(Open).Mid(wiretable.Aluminium), LimitAmps(Open, wiretable.Aluminium, 2), 1e-12)
}
