package quantity

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		v      float64
		digits int
		want   string
	}{
		{0.39386, 3, "0.394"}, {17, 0, "17"}, {1071.4, 3, "1071"}, {1234.5, 3, "1234"}, {12, 3, "12.0"}, {0.0226, 3, "0.0226"}, {2.5, 2, "2.5"},
		{99.96, 3, "100"}, {9.996, 3, "10.0"}, {0.09996, 3, "0.100"}, {-11.09, 3, "-11.1"},
		{0, 3, "0"}, {-1e-12, 3, "0"}, {-0.3, 0, "0"}, {1e12, 3, "1e+12"}, {math.NaN(), 3, "?"}, {math.Inf(-1), 3, "?"},
		{0.4, AsGiven, "0.4"}, {89, AsGiven, "89"}, {100, AsGiven, "100"}, {3.503937, AsGiven, "3.50394"}, {1234.5, AsGiven, "1234.5"}, {1e6, AsGiven, "1000000"}, {0.592593, AtMost(4), "0.5926"}, {12345678, AtMost(4), "12345678"},
	} {
		assert.Equal(t, c.want, Number(c.v, c.digits), "%v %d", c.v, c.digits)
	}
	assert.Equal(t, "−12.3", Screen.Number(-12.34, 3))
	assert.Equal(t, "-12.3", File.Number(-12.34, 3))
	assert.Equal(t, "+12.3", Screen.Signed(12.34, 3))
	assert.Equal(t, "0", Screen.Signed(0.2, 0))
}

func TestFigureText(t *testing.T) {
	inch, fahrenheit := Millimetres[1], Celsius[1]
	assert.Equal(t, "~1.00 ±0.02", Figure{Value: 25.4, PlusMinus: 0.508, Origin: Guessed}.Text(inch, 3))
	assert.Equal(t, "~53 ±2", Figure{Value: 0.529, PlusMinus: 0.015, Origin: Guessed}.Text(Percent[0], 2))
	assert.Equal(t, "", Missing("needs the wire").Text(inch, 3))
	assert.Equal(t, "212 ±18", Figure{Value: 100, PlusMinus: 10, Origin: Derived}.Text(fahrenheit, 3), "10 K are 18 °F of difference, wherever they lie")
	assert.Equal(t, "+18.0", File.Difference(10, fahrenheit, 3))
	assert.Equal(t, "−1.5", Screen.Difference(-1.5, Celsius[0], 3))
}

// Decimals stop where the unit's meters do, but not in what a person gave.
func TestDecimalsByUnit(t *testing.T) {
	for _, c := range []struct {
		v      float64
		dim    Dimension
		digits int
		want   string
	}{
		{0.01234, Amps, 3, "0.01"}, {0.01234, Amps, AsGiven, "0.01234"}, {0.001, Amps, 3, "0"}, {97.3, RPM, 3, "97"}, {6.54, RPM, 3, "6.5"}, {6.54, RPM, 0, "7"}, {0.54, RPM, 3, "1"}, {9.876, Watts, 3, "9.9"},
		{0.71234, Millimetres, 4, "0.712"}, {0.01234, Ohms, 3, "0.0123"}, {0.01234, Only("V"), 3, "0.0123"}, {12.3456, Volts, 4, "12.35"},
	} {
		assert.Equal(t, c.want, File.Value(c.v, c.dim[0], c.digits), "%v %s", c.v, c.dim[0].Name)
	}
	assert.Equal(t, "0.0285", File.Value(0.02846, Millimetres[1], 3), "a ten-thousandth of an inch is worth writing")
	assert.Equal(t, "1.496", File.Value(38/25.4, Millimetres[1], AsGiven), "four figures where the unit is another")
}

// What is written reads back as the number rounded to its figures.
func FuzzNumber(f *testing.F) {
	for _, v := range []float64{0, 1, 9.995, 99.5, 1e-9, 123456789, -0.05, 999999999.9} {
		f.Add(v, uint8(3))
	}
	f.Fuzz(func(t *testing.T, v float64, n uint8) {
		digits := 1 + int(n%8)
		text := Number(v, digits)
		if math.IsNaN(v) || math.IsInf(v, 0) {
			require.Equal(t, "?", text)
			return
		}
		got, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		if math.Abs(v) < 1e9 {
			require.LessOrEqual(t, math.Abs(got-v), 0.500001*math.Max(math.Min(1, math.Pow10(int(math.Floor(math.Log10(math.Abs(v))))-digits+1)), 1e-9), "%v -> %s", v, text)
		}
	})
}

// A number and its ± end at the same decimal place, in every unit and to every number of figures:
// random figures, and the ± that once lost its nought. Only what is 0, or too large to be written in
// full, has no place.
func TestANumberAndItsSpreadEndAtTheSamePlace(t *testing.T) {
	assert.Equal(t, "10.5 ±1.0", Figure{Value: 10.5, PlusMinus: 1, Origin: Derived}.Text(None[0], 3))
	assert.Equal(t, "38.0 ±0.5", Figure{Value: 38, PlusMinus: 0.5, Origin: Derived}.Text(None[0], AsGiven))
	assert.Equal(t, "10.5 ±0.1", Figure{Value: 10.5, PlusMinus: 0.003, Origin: Derived}.Text(None[0], 3), "less than one of the last place is one of it")
	places := func(s string) int { _, f, _ := strings.Cut(s, "."); return len(f) }
	rnd := rand.New(rand.NewPCG(7, 11))
	seen := 0
	for range 20000 {
		dims := []Dimension{None, Millimetres, Amps, RPM, Celsius, VoltsDC, Percent, Metres}
		dim := dims[rnd.IntN(len(dims))]
		u := dim[rnd.IntN(len(dim))]
		f := Figure{Value: math.Pow(10, 10*rnd.Float64()-4) * float64(1-2*rnd.IntN(2)), Origin: Derived}
		f.PlusMinus = math.Abs(f.Value) * math.Pow(10, -4*rnd.Float64())
		digits := []int{0, 1, 2, 3, 4, 6, AsGiven, AtMost(3), Places(4)}[rnd.IntN(9)]
		number, off, ok := strings.Cut(Screen.Figure(f, u, digits), " ±")
		assert.True(t, ok)
		if number == "0" || strings.Contains(number+off, "e") {
			continue
		}
		seen++
		assert.Equal(t, places(number), places(off), "%s ±%s: %v in %q, %d figures", number, off, f, u.Name, digits)
		assert.NotRegexp(t, `^[0.]+$`, off, "a ± is never nothing")
		if digits >= 0 {
			assert.Equal(t, Screen.Value(u.From(f.Value), u, digits), number, "the number looks the same without its ±")
		}
	}
	assert.Greater(t, seen, 15000)
}

// Factors are written as tables of the trade print them.
func TestPlacesAreDecimals(t *testing.T) {
	for v, want := range map[float64]string{1: "1.0000", 0.95979: "0.9598", 0.0668: "0.0668", -0.5: "-0.5000", 0: "0"} {
		assert.Equal(t, want, File.Value(v, None[0], Places(4)))
	}
}
