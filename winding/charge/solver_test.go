package charge

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sameFigures checks every figure of two points to one part in 10⁹ of the larger of its kind. The watts
// of a purely reactive circuit are rounding, and are compared with the volt-amperes.
func sameFigures(t *testing.T, s Source, want, got Point, what ...any) {
	t.Helper()
	amps := want.DCAmpsRMS + want.LineAmpsRMS
	watts := max(want.InputWatts, 1e-5*s.EMFPeak*amps)
	for _, pair := range [...][3]float64{
		{want.DCAmps, got.DCAmps, amps}, {want.DCAmpsRMS, got.DCAmpsRMS, amps}, {want.PhaseAmpsRMS, got.PhaseAmpsRMS, amps},
		{want.LineAmpsRMS, got.LineAmpsRMS, amps}, {want.DCVolts, got.DCVolts, want.DCVolts},
		{want.Watts, got.Watts, watts}, {want.BatteryWatts, got.BatteryWatts, watts}, {want.CopperWatts, got.CopperWatts, watts},
		{want.DiodeWatts, got.DiodeWatts, watts}, {want.InputWatts, got.InputWatts, watts}, {want.Kappa, got.Kappa, want.Kappa},
	} {
		require.InDelta(t, pair[0], pair[1], 1e-9*pair[2], what...)
	}
	if want.Mode != got.Mode {
		// On the boundary of two modes either name is right, and a piece of no length is between.
		assert.NotEqual(t, Off, want.Mode, what...)
		assert.NotEqual(t, Off, got.Mode, what...)
	}
}

// nudged is a circuit near another: speed, ohms, volts by up to a part each.
func nudged(r *rand.Rand, s Source, l Load, part float64) (Source, Load) {
	off := func() float64 { return 1 + part*(2*r.Float64()-1) }
	speed := off()
	s.EMFPeak, s.Hertz, s.Ohms, l.Volts = s.EMFPeak*speed, s.Hertz*speed, s.Ohms*off(), l.Volts*off()
	return s, l
}

// A point started from a neighbour is the point solved from nothing, be the neighbour 1 part in 10⁵
// away or nowhere near.
func TestANeighbourChangesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 7))
	for range 4000 {
		s, l := anyCircuit(r)
		var near Solver
		for range 8 {
			part := math.Pow(10, -5*r.Float64())
			warm, err := near.Solve(s, l)
			require.NoError(t, err)
			cold, err := Solve(s, l)
			require.NoError(t, err)
			sameFigures(t, s, cold, warm, "%+v %+v", s, l)
			s, l = nudged(r, s, l, part)
		}
	}
}

// Neighbours of another kind in between (one phase, none conducting) do no harm either.
func TestASolverTakesAnyOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 3))
	var near Solver
	for range 4000 {
		s, l := anyCircuit(r)
		if r.IntN(5) == 0 {
			s.Phases = 1
		}
		warm, err := near.Solve(s, l)
		require.NoError(t, err)
		cold, err := Solve(s, l)
		require.NoError(t, err)
		sameFigures(t, s, cold, warm, "%+v %+v", s, l)
	}
}

// The mixed state found from two unknowns is the one that the general march finds.
func TestHandoverAgainstTheGeneralMarch(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 9))
	found := 0
	for range 20000 {
		s, l := anyCircuit(r)
		if _, flows := drive(s, l); !flows {
			continue
		}
		c, err := reduce(s, l)
		require.NoError(t, err)
		quick, slow := march{c: &c, pieces: make([]piece, usualPieces)}, march{c: &c, pieces: make([]piece, maxPieces)}
		if _, ok := quick.mixed(c.roughHandover()); !ok {
			continue
		}
		found++
		require.NoError(t, slow.settle())
		var want, got sums
		for k := range slow.n {
			slow.pieces[k].integrate(true, &want)
		}
		for k := range quick.n {
			quick.pieces[k].integrate(false, &got)
		}
		require.InEpsilon(t, want.amps, got.amps, 1e-11, "%+v", c)
		require.InEpsilon(t, want.square, got.square, 1e-11, "%+v", c)
		require.InEpsilon(t, want.phases, got.phases, 1e-11, "%+v", c)
		require.InEpsilon(t, want.input, got.input, 1e-11, "%+v", c)
	}
	assert.Greater(t, found, 3000)
}

// A state of the mixed kind, right or not, is accepted only where the loop lasts to the end of its
// sixth: so a walk without any expectation finds it too, and only phase b may wake there.
func TestAHandoverIsBelievedWhereItsLoopLasts(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 9))
	believed, not := 0, 0
	for range 5000 {
		s, l := anyCircuit(r)
		c, err := reduce(s, l)
		require.NoError(t, err)
		m, at := march{c: &c, pieces: make([]piece, usualPieces)}, c.roughHandover()
		at.amps *= math.Exp(3*r.Float64() - 2)
		if _, ok := m.agreesMixed(&at); !ok {
			not++
			continue
		}
		believed++
		loop := &m.pieces[1]
		if end, event := loop.firstEvent(loop.span); event != -1 {
			require.Equal(t, 1, event, "%+v", c)
			require.InDelta(t, loop.span, end, 1e-9, "%+v", c)
		}
	}
	assert.Greater(t, believed, 400)
	assert.Greater(t, not, 400)
}
