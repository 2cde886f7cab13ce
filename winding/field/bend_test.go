package field

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"slotwright/winding/published"
)

// testdata/field/knee.csv: a circuit of gap and iron, computed outside the program. At currents that
// were read the volts are those read; between and above them they are predicted.
func TestCurveOfIronWithAKnee(t *testing.T) {
	var readings []Reading
	rows := published.Rows(t, "field/knee.csv")
	for _, row := range rows {
		if row.Number(t, "read") == 1 {
			readings = append(readings, Reading{Amps: row.Number(t, "field_a"), Flux: row.Number(t, "volts")})
		}
	}
	require.Len(t, readings, 4)
	c, err := Fit(readings)
	require.NoError(t, err)
	assert.Zero(t, c.Error, "nothing contradicts anything")
	for _, row := range rows {
		amps, volts := row.Number(t, "field_a"), row.Number(t, "volts")
		assert.InEpsilon(t, volts, c.At(amps), max(1e-12, row.Number(t, "off")), "%g A", amps)
		back, ok := c.Amps(c.At(amps))
		assert.True(t, ok)
		assert.InEpsilon(t, amps, back, 1e-9, "there and back")
	}
}

// By hand: 24.5 at 3 A and 24.2 at 4 A, the first of twice the weight, are 24.4 at both; two readings at
// one current are their mean.
func TestReadingsThatFallAreLevel(t *testing.T) {
	c, err := Fit([]Reading{{Amps: 1, Flux: 9.4}, {Amps: 1, Flux: 9.6}, {Amps: 2, Flux: 18.4}, {Amps: 3, Flux: 24.5, Weight: 2}, {Amps: 4, Flux: 24.2}})
	require.NoError(t, err)
	for amps, want := range map[float64]float64{1: 9.5, 2: 18.4, 3: 24.4, 3.5: 24.4, 4: 24.4} {
		assert.InEpsilon(t, want, c.At(amps), 1e-12, "%g A", amps)
	}
	assert.InEpsilon(t, 9.5/9.4-1, c.Error, 1e-12, "what differs most")
	assert.Positive(t, c.OutsideDoubt(6), "level readings do not say that nothing more comes")
	knots := []knot{{flux: 3, weight: 1}, {flux: 5, weight: 1}, {flux: 4, weight: 1}, {flux: 0, weight: 2}}
	level(knots)
	for _, k := range knots {
		assert.InEpsilon(t, 12.0/5, k.flux, 1e-12)
	}
}

// By hand: at 2 A the line from 9.5 V at 1 A to 22.6 V at 3 A is at 16.05 V: 13 V lie 23 % under it.
// Two readings that rise more than in proportion: at 1 A the line to 3 A is at 10/3, above the 2 read.
func TestReadingsThatIronCannotMake(t *testing.T) {
	c, err := Fit([]Reading{{Amps: 1, Flux: 9.5}, {Amps: 2, Flux: 13}, {Amps: 3, Flux: 22.6}, {Amps: 4, Flux: 24}})
	require.NoError(t, err)
	assert.InEpsilon(t, 16.05/13-1, c.Error, 1e-12)
	c, err = Fit([]Reading{{Amps: 1, Flux: 2}, {Amps: 3, Flux: 10}})
	require.NoError(t, err)
	assert.InEpsilon(t, 10.0/6-1, c.Error, 1e-9)
	assert.InEpsilon(t, 2.0, c.At(1), 1e-12)
	assert.InEpsilon(t, 10.0, c.At(3), 1e-12)
}

// For any rising readings the curve rises, passes through them, inverts to the same current, and is
// self-excited from the speed that a search by small steps finds.
func TestBentCurvesRiseAndFeedThemselves(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 26))
	for n := range 60 {
		var readings []Reading
		amps, flux := 0.0, 0.02*r.Float64()
		if r.IntN(2) == 0 && flux > 0 {
			readings = append(readings, Reading{Amps: 0, Flux: flux})
		}
		for range 3 + r.IntN(3) {
			amps, flux = amps+0.3+r.Float64(), flux+r.Float64()
			readings = append(readings, Reading{Amps: amps, Flux: flux})
		}
		c, err := Fit(readings)
		require.NoError(t, err)
		said := fmt.Sprintf("%d: %v", n, readings)
		for _, read := range readings {
			assert.InEpsilon(t, read.Flux, c.At(read.Amps), 1e-9, said)
		}
		w, k, most := Wound{Ohms20: 1 + 9*r.Float64(), TempC: 20, BrushVolts: 2 * r.Float64()}, 0.02, 1.5*amps
		speed := func(i float64) float64 { return (w.Ohms()*i + w.BrushVolts + 0.7) / (k * c.At(i)) }
		least, at, last := math.Inf(1), 0.0, -1.0
		const steps = 4000
		for i := range steps + 1 {
			x := most * float64(i) / steps
			now := c.At(x)
			if now < last {
				t.Fatalf("%s: %g at %g A after %g", said, now, x, last)
			}
			last = now
			if v := speed(x); v < least {
				least, at = v, x
			}
			if i%400 == 399 && now > c.At(x-0.01)+1e-9 {
				back, ok := c.Amps(now)
				require.True(t, ok, said)
				assert.InEpsilon(t, x, back, 1e-6, said)
			}
		}
		hold, build := SelfExcitation(c, w, 0.7, k, most)
		assert.InEpsilon(t, least, hold, 2e-3, said)
		assert.LessOrEqual(t, hold, least*(1+1e-12), said)
		worst := 0.0
		for i := range steps {
			worst = max(worst, speed(at*float64(i)/steps))
		}
		if c.At(0) > 0 {
			assert.InEpsilon(t, worst, build, 5e-3, said)
		} else {
			assert.True(t, math.IsInf(build, 1), said)
		}
	}
}
