package heat

import (
	"math"
	"testing"

	"slotwright/winding/published"
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
		{What: "the middle of the range governs: A of 2 mm², closed", Want: 6.5, Have: LimitAmps(Closed, 2), Source: published.Practice},
		{What: "the middle of the range governs: A of 2 mm², open", Want: 9.5, Have: LimitAmps(Open, 2), Source: published.Practice},
		{What: "the middle of the range governs: A of 2 mm², fan", Want: 15, Have: LimitAmps(Fan, 2), Source: published.Practice},
		{What: "W/m²K, closed", Want: 10, Have: Film(Closed), Source: film},
		{What: "W/m²K, open", Want: 15, Have: Film(Open), Source: film},
		{What: "W/m²K, fan", Want: 40, Have: Film(Fan), Source: film},
		{What: "copper, Ω·m at 20 °C", Want: 1.7241e-8, Have: Copper.Resistivity20, Source: "IEC 60028"},
		{What: "copper, inferred zero", Want: 234.5, Have: Copper.InferredZero, Source: "IEC 60028"},
		{What: "copper, kg/m³", Want: 8890, Have: Copper.Density, Source: "IEC 60028"},
		{What: "copper, J/kgK", Want: 385, Have: Copper.Specific, Source: "handbooks, from memory"},
		{What: "aluminium, Ω·m at 20 °C", Want: 1.7241e-8 / 0.61, Have: Aluminium.Resistivity20, Source: "IEC 60889, from memory"},
		{What: "aluminium, inferred zero", Want: 228.1, Have: Aluminium.InferredZero, Source: "IEC 60889, from memory"},
		{What: "aluminium, kg/m³", Want: 2703, Have: Aluminium.Density, Source: "IEC 60889, from memory"},
		{What: "aluminium, J/kgK", Want: 897, Have: Aluminium.Specific, Source: "handbooks, from memory"},
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

// A stator that is a plain cylinder of 100 by 100 mm, no slots: mantle and bore, π·D·L each.
// 0.06283 m² at 10 W/m²K are 1.5915 K/W.
func TestRiseOfAPlainCylinder(t *testing.T) {
	const area = 2 * math.Pi * 0.1 * 0.1
	published.Constants(t, []published.Constant{
		{What: "K/W, closed", Want: 1.5915, Have: math.Round(1e4*FromSurface(Closed, 100, 100, 0)) / 1e4, Source: "1/(10·0.062832), by hand"},
		{What: "K/W, fan", Want: math.Round(1e8/(40*area)) / 1e8, Have: math.Round(1e8*FromSurface(Fan, 100, 100, 0)) / 1e8, Source: "1/(40·0.062832), by hand"},
	})
}
