package drive

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSourcesGiveTheirUsualPower(t *testing.T) {
	y := Yielding{UsualRPM: 60, UsualWatts: 100}
	require.NoError(t, y.Check())
	assert.InEpsilon(t, 100, y.Watts(60), 1e-12)
	for _, n := range []float64{20, 59, 61, 100} {
		assert.Less(t, y.Watts(n), 100.0, "most at the usual speed")
	}
	assert.InEpsilon(t, 2*100/(2*math.Pi), y.Torque(0), 1e-12)
	assert.Zero(t, y.Watts(y.Top()))
	g := Governed{1500, 3000, 3000}
	require.NoError(t, g.Check())
	assert.InEpsilon(t, 3000, g.Watts(1500), 1e-12)
	assert.InEpsilon(t, 6000, g.Watts(3000), 1e-12)
	assert.InDelta(t, 0, g.Watts(g.Top()), 1e-6)
	w := InWind{smallRotor().Rotor, 7, 1.2}
	assert.InDelta(t, 0, w.Watts(w.Top()), 1e-6)
	assert.ErrorIs(t, Yielding{UsualRPM: 0, UsualWatts: 1}.Check(), ErrPoints)
	assert.ErrorIs(t, Governed{10, 1, 9}.Check(), ErrPoints)
	for _, s := range []Source{y, g, w} { // torque times speed is power, everywhere
		for x := 0.05; x < 1; x += 0.05 {
			n := x * s.Top()
			assert.InDelta(t, s.Watts(n), s.Torque(n)*2*math.Pi*n/60, 1e-9*math.Abs(s.Watts(n))+1e-9)
		}
	}
}

func TestCurveTorqueAtRest(t *testing.T) {
	c, err := NewCurve([]Point{{0, 0}, {50, 60}, {90, 80}})
	require.NoError(t, err)
	assert.InEpsilon(t, c.Torque(1e-3), c.Torque(0), 1e-3)
	c, err = NewCurve([]Point{{40, 80}, {90, 80}})
	require.NoError(t, err)
	assert.InEpsilon(t, 80/(2*math.Pi*40/60), c.Torque(0), 1e-12)
	_, err = NewCurve([]Point{{0, 5}, {50, 60}})
	assert.ErrorContains(t, err, "at rest")
}

// A load that takes torque in proportion: all speeds in closed form.
func TestDrivenAtSlowUsualAndTop(t *testing.T) {
	const k = 0.05 // N·m/rpm at the alternator
	y := Yielding{UsualRPM: 60, UsualWatts: 100}
	tr := Transmission{Kind: Chain, DriverTeeth: 44, DrivenTeeth: 11, Efficiency: 0.96}
	d, err := NewDriven(y, tr, func(n float64) float64 { return k * n }, Samples{})
	require.NoError(t, err)
	// T0·(2 − n/60)·0.96/4 = k·4n
	t0 := 100 / (2 * math.Pi)
	rest := 2 * t0 * 0.24 / (4*k + t0*0.24/60)
	require.Len(t, d.Equilibria, 1)
	assert.InEpsilon(t, 4*rest, d.Equilibria[0].RPM, 1e-6)
	full, ok := d.FullPower()
	require.True(t, ok)
	assert.InEpsilon(t, 4*rest, full.RPM, 1e-6)
	slow, err := d.At(rest / 2)
	require.NoError(t, err)
	assert.True(t, slow.Enough)
	assert.InEpsilon(t, 2*rest, slow.AlternatorRPM, 1e-12)
	assert.InEpsilon(t, slow.TorqueNm*2*math.Pi*slow.AlternatorRPM/60/0.96, slow.TakenWatts, 1e-12)
	top, err := d.At(rest * 1.2)
	require.NoError(t, err)
	assert.False(t, top.Enough)
	assert.False(t, top.Stops)
	assert.InEpsilon(t, full.RPM, top.Settles.RPM, 1e-9)
	_, err = d.At(math.NaN())
	assert.ErrorContains(t, err, "above 0")
}

func TestDrivenStops(t *testing.T) {
	d, err := NewDriven(Yielding{UsualRPM: 60, UsualWatts: 100}, Transmission{}, level(1000), Samples{})
	require.NoError(t, err)
	_, ok := d.FullPower()
	assert.False(t, ok)
	r, err := d.At(30)
	require.NoError(t, err)
	assert.True(t, r.Stops && !r.Enough)
	_, err = NewDriven(Yielding{UsualRPM: 60, UsualWatts: 100}, Transmission{Kind: Belt}, level(1), Samples{})
	assert.ErrorIs(t, err, ErrTransmission)
}

func TestUpAndDown(t *testing.T) {
	tr := Transmission{Kind: Belt, DriverMM: 300, DrivenMM: 75, Slip: 0.03}
	up, err := tr.Up(150)
	require.NoError(t, err)
	assert.InEpsilon(t, 150*4*0.97, up, 1e-12)
	down, err := tr.Down(up)
	require.NoError(t, err)
	assert.InEpsilon(t, 150, down, 1e-12)
	assert.Equal(t, 1.0, tr.Passes())
	direct, err := Transmission{}.Up(150)
	require.NoError(t, err)
	assert.Equal(t, 150.0, direct)
	for _, bad := range []Transmission{{Ratio: -1}, {Ratio: math.Inf(1)}, {Ratio: math.NaN()}, {Efficiency: 1.1}, {Slip: math.NaN()},
		{Kind: Gear, DriverTeeth: 12}, {Kind: Belt, DriverMM: 1e9, DrivenMM: 1e-9}} {
		assert.ErrorIs(t, bad.Check(), ErrTransmission, "%+v", bad)
	}
	for _, r := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		_, err := PulleyFor(DriveEnd, r, 100, 0)
		assert.ErrorIs(t, err, ErrTransmission)
		_, err = PulleyFor(DriveEnd, 3, r, 0)
		assert.ErrorIs(t, err, ErrTransmission)
	}
}

// Going through, losses subtract from a driving torque, and add to a braking one.
func TestGeared(t *testing.T) {
	assert.InEpsilon(t, 10*0.9/4, geared(10, 4, 0.9), 1e-12)
	assert.InEpsilon(t, -10/(4*0.9), geared(-10, 4, 0.9), 1e-12)
}
