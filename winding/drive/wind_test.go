package drive

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stiff is an alternator that takes a little always, and from cut-in on a torque that
// rises to a top and falls, as behind reactance: 2·T·s/(1 + s²), s speed over cut-in by
// the width.
func stiff(cutIn, top, width float64) Load {
	return Load{CutInRPM: cutIn, Taken: func(n float64) float64 {
		s := max(0, n-cutIn) / width
		return 0.02 + 1e-5*n + 2*top*s/(1+s*s)
	}}
}

func smallRotor() WindShaft {
	return WindShaft{Rotor: Rotor{DiameterM: 2, PeakCp: 0.35, PeakLambda: 6}, Turns: 1, Efficiency: 1, Density: 1.225}
}

// simulate turns a shaft with inertia from a speed until it settles, by small time steps; a reference
// that knows nothing of equilibria.
func simulate(given, taken Torque, rpm, high float64) float64 {
	step := high / 400
	last := 0.0
	for range 20000 {
		over := given(rpm) - taken(rpm)
		dir := sign(over)
		if last != 0 && dir != last {
			step /= 2
		}
		last = dir
		rpm = max(0, rpm+dir*step)
		if step < 1e-7*high {
			break
		}
	}
	return rpm
}

func TestClimbAgainstAShaftLetLoose(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 7))
	jumps, stalled, charging := 0, 0, 0
	for range 60 {
		s := WindShaft{
			Rotor: Rotor{DiameterM: 1 + 2*r.Float64(), PeakCp: 0.2 + 0.25*r.Float64(), PeakLambda: 3 + 5*r.Float64()},
			Turns: 1 + 3*r.Float64(), Efficiency: 0.8 + 0.2*r.Float64(), Density: 1.1 + 0.2*r.Float64(),
		}
		load := stiff(s.FreeRPM(1+4*r.Float64()), (0.2+20*r.Float64())/s.Turns, 20+400*r.Float64())
		points, err := Climb(s, load, winds(14, 0.5))
		require.NoError(t, err)
		require.Len(t, points, 28)
		rpm := 0.0
		var weaker []Equilibrium // in the wind before, but for that it was at
		for _, p := range points {
			given, high := s.Torque(p.WindMPS), s.FreeRPM(14)
			if rpm > 0 || given(0) > s.StartNm+load.Taken(0) {
				want := simulate(given, load.Taken, max(rpm, 1e-3), high)
				require.InDelta(t, want, p.RPM, 1e-3*high+1e-2, "wind %g", p.WindMPS)
			}
			between := slices.ContainsFunc(weaker, func(e Equilibrium) bool {
				return !e.Stable && e.RPM > min(rpm, p.RPM) && e.RPM < max(rpm, p.RPM)
			})
			assert.Equal(t, rpm > 0 && between, p.Jumped, "from %g to %g rpm over %v", rpm, p.RPM, weaker)
			rpm, weaker = p.RPM, p.Others
			if rpm == 0 {
				assert.Equal(t, Still, p.Region)
				continue
			}
			assert.InEpsilon(t, given(rpm), load.Taken(rpm), 1e-6)
			assert.InEpsilon(t, p.RotorWatts*s.Efficiency, p.ShaftWatts, 1e-6)
			assert.InEpsilon(t, p.Lambda, math.Pi*s.Rotor.DiameterM*p.RotorRPM/60/p.WindMPS, 1e-9)
			assert.LessOrEqual(t, p.Cp, Betz)
			for _, o := range p.Others {
				assert.InEpsilon(t, given(o.RPM), load.Taken(o.RPM), 1e-6)
			}
			count(&jumps, p.Jumped)
			count(&stalled, p.Region == Stalled)
			count(&charging, p.Region == Charging)
		}
	}
	assert.Greater(t, jumps, 0, "the cases hold some of each")
	assert.Greater(t, stalled, 20)
	assert.Greater(t, charging, 50)
}

func count(n *int, is bool) {
	if is {
		*n++
	}
}

// Torque at rest goes with v², so a rotor starts where it reaches what holds it.
func TestClimbStartsWhereTorqueAtRestIsEnough(t *testing.T) {
	s := smallRotor()
	s.StartNm = 0.3
	load := Load{Taken: level(0), CutInRPM: 1e5}
	start := math.Sqrt(s.StartNm / s.Torque(1)(0))
	points, err := Climb(s, load, winds(12, 0.1))
	require.NoError(t, err)
	for _, p := range points {
		assert.Equal(t, p.WindMPS > start, p.RPM > 0, "%g, starts at %g", p.WindMPS, start)
		if p.RPM > 0 {
			assert.Equal(t, Idling, p.Region)
			assert.InEpsilon(t, s.FreeRPM(p.WindMPS), p.RPM, 1e-6, "nothing taken: it runs free")
		}
	}
}

func TestClimbWithSamplesGiven(t *testing.T) {
	s, load := smallRotor(), stiff(180, 6, 200)
	fresh, err := Climb(s, load, winds(14, 0.5))
	require.NoError(t, err)
	load.Samples = Sample(load.Taken, 1.02*s.FreeRPM(14), 140, load.CutInRPM)
	given, err := Climb(s, load, winds(14, 0.5))
	require.NoError(t, err)
	for i := range fresh {
		assert.InDelta(t, fresh[i].RPM, given[i].RPM, 1e-5*fresh[i].RPM)
		assert.Equal(t, fresh[i].Region, given[i].Region)
	}
	load.Samples = Sample(load.Taken, 100, 20)
	_, err = Climb(s, load, winds(14, 0.5))
	assert.ErrorContains(t, err, "up to 100 rpm")
}

// winds is every step up to a wind.
func winds(cutOut, step float64) []float64 {
	list, err := Winds(cutOut, step)
	if err != nil {
		panic(err)
	}
	return list
}

func TestWindsAskedForBesides(t *testing.T) {
	list, err := Winds(2, 0.5, 1.2, 1.5, 9)
	require.NoError(t, err)
	assert.Equal(t, []float64{0.5, 1, 1.2, 1.5, 2}, list, "once each, none above the last")
}

func TestClimbRefuses(t *testing.T) {
	good, load := smallRotor(), stiff(180, 6, 200)
	for name, change := range map[string]func(*WindShaft){
		"ratio":      func(s *WindShaft) { s.Turns = 0 },
		"efficiency": func(s *WindShaft) { s.Efficiency = math.NaN() },
		"density":    func(s *WindShaft) { s.Density = 12 },
		"starting":   func(s *WindShaft) { s.StartNm = -1 },
		"diameter":   func(s *WindShaft) { s.Rotor.DiameterM = 0 },
	} {
		bad := good
		change(&bad)
		_, err := Climb(bad, load, winds(14, 0.5))
		assert.ErrorContains(t, err, name)
	}
	for _, w := range [][2]float64{{0, 1}, {math.Inf(1), 1}, {10, 0}, {10, 1e-9}, {math.NaN(), 1}} {
		_, err := Winds(w[0], w[1])
		assert.ErrorIs(t, err, ErrWind)
	}
	for _, list := range [][]float64{nil, {0, 1}, {2, 1}, {1, 1e9}, {1, math.NaN()}} {
		_, err := Climb(good, load, list)
		assert.ErrorIs(t, err, ErrWind)
	}
	_, err := Climb(good, Load{}, winds(14, 0.5))
	assert.Error(t, err)
}

func verdict(t *testing.T, s WindShaft, load Load) Verdict {
	points, err := Climb(s, load, winds(14, 0.25))
	require.NoError(t, err)
	v, err := Judge(s, load, points, Rayleigh(5))
	require.NoError(t, err)
	sum := 0.0
	for _, share := range v.Share {
		sum += share
	}
	assert.InEpsilon(t, 1, sum, 1e-9)
	return v
}

func TestJudge(t *testing.T) {
	s := smallRotor()
	best := s.Rotor.RPM(3, 6) // at its best in 3 m/s, 0.6 of the mean: where cut-in is wanted

	// Takes after cut-in what a rotor at its best gives: torque as the square of speed.
	k := s.Torque(8)(s.Rotor.RPM(8, 6)) / math.Pow(s.Rotor.RPM(8, 6), 2)
	suits := Load{CutInRPM: best, Taken: func(n float64) float64 {
		if n < best {
			return 0.01
		}
		return 0.01 + k*n*n*min(1, (n-best)/20)
	}}
	v := verdict(t, s, suits)
	assert.Equal(t, Charging, v.Region)
	assert.Empty(t, v.Mends)
	assert.InDelta(t, 3, v.ChargesFrom, 1)

	early := stiff(best/3, 40, 30)
	v = verdict(t, s, early)
	assert.Equal(t, Stalled, v.Region)
	assert.True(t, v.EarlyCutIn)
	assert.Equal(t, FewerTurns, v.Mends[0].Remedy)
	assert.InEpsilon(t, 1.0/3, v.Mends[0].Factor, 1e-9)

	tooStiff := stiff(best*1.1, 60, 60)
	v = verdict(t, s, tooStiff)
	assert.Equal(t, Stalled, v.Region)
	assert.False(t, v.EarlyCutIn)
	assert.Equal(t, InLine, v.Mends[0].Remedy)

	late := stiff(s.FreeRPM(13), 5, 100)
	v = verdict(t, s, late)
	assert.Equal(t, Idling, v.Region)
	assert.Equal(t, MoreTurns, v.Mends[0].Remedy)
	assert.InEpsilon(t, s.FreeRPM(13)/best, v.Mends[0].Factor, 1e-9)

	soft := stiff(best, 0.3, 200)
	v = verdict(t, s, soft)
	assert.Equal(t, Runaway, v.Region)
	assert.Equal(t, LowResistance, v.Mends[0].Remedy)

	held := s
	held.StartNm = 100
	v = verdict(t, held, soft)
	assert.Equal(t, Still, v.Region)
	assert.Equal(t, EasierStart, v.Mends[0].Remedy)
	assert.Zero(t, v.TurnsFrom)
}

func TestRegions(t *testing.T) {
	r := Rotor{DiameterM: 2, PeakCp: 0.35, PeakLambda: 6}
	for _, c := range []struct {
		rpm, lambda float64
		want        Region
	}{{0, 0, Still}, {99, 9, Idling}, {100, 6, Charging}, {100, 2, Stalled}, {100, 9, Runaway}} {
		assert.Equal(t, c.want, r.region(c.rpm, 100, c.lambda), "%+v", c)
	}
}

// A wind counts for the stretch up to it, however the winds are spaced.
func TestSharesDoNotDependOnTheStep(t *testing.T) {
	s, load := smallRotor(), stiff(smallRotor().Rotor.RPM(2.5, 6), 8, 200)
	coarse, err := Climb(s, load, winds(9.9, 0.25))
	require.NoError(t, err)
	fine, err := Climb(s, load, winds(9.9, 0.02))
	require.NoError(t, err)
	var mixed []WindPoint
	for _, p := range fine { // fine up to 5 m/s, coarse above
		if p.WindMPS <= 5 {
			mixed = append(mixed, p)
		}
	}
	for _, p := range coarse {
		if p.WindMPS > 5.01 {
			mixed = append(mixed, p)
		}
	}
	a, err := Judge(s, load, fine, Rayleigh(5))
	require.NoError(t, err)
	b, err := Judge(s, load, mixed, Rayleigh(5))
	require.NoError(t, err)
	require.Greater(t, len(a.Share), 2)
	for r, share := range a.Share {
		assert.InDelta(t, share, b.Share[r], 0.02, "%s", r)
	}
}
