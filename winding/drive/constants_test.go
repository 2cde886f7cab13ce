package drive

import (
	"testing"

	"slotwright/winding/published"
)

func TestConstants(t *testing.T) {
	const (
		iso    = "ISO 2533:1975"
		choice = published.Choice
	)
	published.Constants(t, []published.Constant{
		{What: "pressure at the sea, Pa", Want: 101325, Have: seaPascal, Source: iso},
		{What: "temperature at the sea, K", Want: 288.15, Have: seaKelvin, Source: iso},
		{What: "K cooler a metre", Want: 0.0065, Have: lapse, Source: iso},
		{What: "gas constant of air, J/kgK", Want: 287.05287, Have: gasConstant, Source: iso},
		{What: "exponent", Want: 9.80665 / (287.05287 * 0.0065), Have: exponent, Source: iso},
		{What: "lowest place, m", Want: -500, Have: lowestM, Source: "where the atmosphere's layer begins; " + choice},
		{What: "highest place, m", Want: 11000, Have: highestM, Source: iso + ": the top of the layer"},
		{What: "coldest air, °C", Want: -90, Have: coldestC, Source: choice},
		{What: "hottest air, °C", Want: 70, Have: hottestC, Source: choice},
		{What: "most of the wind's power", Want: 16.0 / 27, Have: Betz, Source: "Betz 1919"},
		{What: "tip-speed ratio to which the published fits go", Want: 20, Have: fitted, Source: choice},
		{What: "tip-speed ratio of a rotor at rest", Want: 1e-3, Have: slowest, Source: choice},
		{What: "part of the best Cp below which a rotor is weak", Want: 0.8, Have: Weak, Source: published.Practice},
		{What: "share of the wind's power that governs", Want: 0.4, Have: governs, Source: "our own choice"},
		{What: "cut-in wind over mean wind", Want: 0.6, Have: wantedCut, Source: published.Practice},
		{What: "early cut-in", Want: 0.8, Have: early, Source: "our own choice"},
		{What: "speed at which a typed drive gives nothing", Want: 1.2, Have: overrun, Source: published.Practice},
		{What: "droop of a governor", Want: 0.04, Have: droop, Source: published.Practice + ": 3 to 6 %"},
		{What: "hours in a year", Want: 8760, Have: HoursPerYear, Source: "365 days"},
		{What: "V DC to touch", Want: 60, Have: TouchDC, Source: "IEC 61140"},
		{What: "V AC of extra-low voltage", Want: 50, Have: TouchAC, Source: "IEC 60364-4-41"},
		{What: "part of a diode's reverse rating that is used", Want: 0.5, Have: diodeReserve, Source: published.Practice},
		{What: "least wrap of a belt, degrees", Want: 120, Have: LeastWrapDegrees, Source: published.Practice},
		{What: "fastest V-belt, m/s", Want: 30, Have: MostBeltMPS, Source: published.Practice},
		{What: "highest ratio", Want: 1e4, Have: maxTurns, Source: choice},
		{What: "samples of a drive", Want: 96, Have: drivenSteps, Source: choice},
		{What: "samples of a wind", Want: 96, Have: climbSteps, Source: choice},
		{What: "winds at most", Want: 10000, Have: mostWinds, Source: choice},
		{What: "strongest wind, m/s", Want: 100, Have: mostWind, Source: choice},
		{What: "torques that agree", Want: 1e-9, Have: agreed, Source: choice},
		{What: "torques that do not", Want: 1e-6, Have: disagreed, Source: choice},
		{What: "speeds that are one", Want: 1e-7, Have: alike, Source: choice},
	})
}

// An engine has nothing left at 1.04 times its top speed, and a typed curve at 1.2 times its
// last point.
func TestWhereDrivesGiveOut(t *testing.T) {
	g := Governed{UsualRPM: 2000, UsualWatts: 1000, TopRPM: 3000}
	c, err := NewCurve([]Point{{100, 50}, {200, 80}})
	if err != nil {
		t.Fatal(err)
	}
	published.Constants(t, []published.Constant{
		{What: "top of an engine, rpm", Want: 3120, Have: g.Top(), Source: published.Practice},
		{What: "top of a typed curve, rpm", Want: 240, Have: c.Top(), Source: published.Practice},
		{What: "top of legs and water, rpm", Want: 120, Have: Yielding{UsualRPM: 60, UsualWatts: 100}.Top(), Source: "momentum of the water, any text on hydraulics"},
	})
}
