package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The factors are exact by definition: international yard and pound agreement of
// 1959; the Fahrenheit scale by its two fixed points, 32 °F = 0 °C, 212 °F = 100 °C.
func TestExactFactors(t *testing.T) {
	for _, c := range []struct {
		dim    Dimension
		suffix string
		value  float64
		base   float64
	}{
		{Millimetres, "in", 1, 25.4},
		{SquareMM, "in2", 1, 645.16},
		{Metres, "ft", 1, 0.3048},
		{Celsius, "f", 32, 0},
		{Celsius, "f", 212, 100},
		{Celsius, "f", -40, -40},
		{Ohms, "mohm", 250, 0.25},
		{Millihenry, "uh", 1500, 1.5},
		{WindSpeed, "kmh", 36, 10},
		{WindSpeed, "mph", 10, 4.4704},
		{Kilograms, "lb", 1, 0.45359237},
		{Watts, "kw", 1.5, 1500},
	} {
		u, ok := c.dim.Suffixed(c.suffix)
		assert.True(t, ok, c.suffix)
		assert.InDelta(t, c.base, u.Base(c.value), 1e-9, c.suffix)
		assert.InDelta(t, c.value, u.From(c.base), 1e-9, "%s back again", c.suffix)
	}
}

func TestToleranceHasNoZeroPoint(t *testing.T) {
	f, _ := Celsius.Suffixed("f")
	assert.InDelta(t, 5.0, f.BaseSpan(9), 1e-12, "9 °F of tolerance is 5 K, wherever it lies")
}

func TestTypedUnits(t *testing.T) {
	for text, want := range map[string]string{"": "mm", "mm": "mm", " IN ": "in", `"`: "in", "inches": "in"} {
		u, ok := Millimetres.Typed(text)
		assert.True(t, ok, text)
		assert.Equal(t, want, u.Suffix, text)
	}
	_, ok := Millimetres.Typed("rpm")
	assert.False(t, ok)
	u, ok := Celsius.Typed("°F")
	assert.True(t, ok)
	assert.Equal(t, "f", u.Suffix)
	assert.Equal(t, "mm or in or cm or mil", Millimetres.Names())
}

func TestEveryDimensionStartsWithItsBase(t *testing.T) {
	for _, d := range []Dimension{None, Millimetres, SquareMM, Metres, Celsius, RPM, Volts, Amps, AmpHours,
		Ohms, Millihenry, Watts, Tesla, WindSpeed, Torque, Kilograms, KelvinPerW, Megohms} {
		assert.Equal(t, 7.25, d[0].Base(7.25), d[0].Name)
		seen := map[string]bool{}
		for _, u := range d {
			assert.False(t, seen[u.Suffix], "suffix %q twice", u.Suffix)
			seen[u.Suffix] = true
			assert.InDelta(t, 3.5, u.From(u.Base(3.5)), 1e-12)
		}
	}
}

// Factors that are typed at a bench beside the usual ones: horsepower is 550 ft·lbf/s (NIST
// Special Publication 811, B.8: 7.456999 E+02 W).
func TestUnitsOfTheBench(t *testing.T) {
	for _, c := range []struct {
		dim        Dimension
		unit       string
		value, inv float64
	}{{Millimetres, "cm", 2.5, 25}, {Volts, "mV", 2190, 2.19}, {Watts, "hp", 1, 745.6999}, {Millimetres, "″", 1, 25.4},
		{Millimetres, "mil", 25, 0.635}, {Millimetres, "Thou", 25, 0.635}, {Millimetres, "mils", 1000, 25.4}} {
		u, ok := c.dim.Typed(c.unit)
		assert.True(t, ok, c.unit)
		assert.InEpsilon(t, c.inv, u.Base(c.value), 1e-7, c.unit)
	}
	assert.InEpsilon(t, 550*0.3048*0.45359237*9.80665, Watts[2].Base(1), 1e-12, "from its definition")
}
