package field

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The bridge reads what series and parallel rules give for three equal coils.
func TestFromBridgeIsTheNetwork(t *testing.T) {
	for _, l := range []float64{1e-6, 3.3e-4, 0.2} {
		star, err := FromBridge((l+l)*1000, TwoLeads, false, 0)
		require.NoError(t, err)
		assert.InEpsilon(t, l, star, 1e-12)
		star, err = FromBridge((l+l/2)*1000, OneAgainstTwo, false, 0)
		require.NoError(t, err)
		assert.InEpsilon(t, l, star, 1e-12)
		delta, err := FromBridge(1000/(1/l+1/(l+l)), TwoLeads, true, 0)
		require.NoError(t, err)
		assert.InEpsilon(t, l, delta, 1e-12)
		delta, err = FromBridge(1000/(1/l+1/l), OneAgainstTwo, true, 0)
		require.NoError(t, err)
		assert.InEpsilon(t, l, delta, 1e-12)
	}
	_, err := FromBridge(1, LeadAndStar, true, 0)
	assert.ErrorContains(t, err, "no star point")
}

// Three coils of self inductance 5 and mutual -1 mH: currents 1, -1, 0 meet 5 + 1 = 6 mH each, equal
// currents in all 5 - 2 = 3. One alone shows its 5, two in series 12, one against two 6 + 3 = 9: all
// three give the same 6 mH.
func TestFromBridgeWithMutualInductance(t *testing.T) {
	for on, shows := range map[BridgeOn]float64{LeadAndStar: 5, TwoLeads: 12, OneAgainstTwo: 9} {
		got, err := FromBridge(shows, on, false, 3.0/6)
		require.NoError(t, err)
		assert.InEpsilon(t, 6e-3, got, 1e-12, "%d", on)
	}
}

// A short circuit of known R and L is read back.
func TestFromShortReadsBackACircuit(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 500 {
		l, ohms, hertz, volts := math.Exp(-9+6*r.Float64()), 2*r.Float64(), 20+500*r.Float64(), 1+50*r.Float64()
		x := 2 * math.Pi * hertz * l
		if x < 0.01*ohms {
			continue
		}
		got, err := FromShort(volts, volts/math.Hypot(ohms, x), ohms, hertz)
		require.NoError(t, err)
		assert.InEpsilon(t, l, got, 1e-9)
	}
}

// Delta is the star of E/√3, R/3, L/3: the same plate.
func TestPlateDeltaIsItsStar(t *testing.T) {
	star := Plate{DCAmps: 30, EMFPeak: 40, Hertz: 200, DCVolts: 15, Ohms: 0.05}
	delta := Plate{DCAmps: 30, EMFPeak: 40 * math.Sqrt(3), Hertz: 200, DCVolts: 15, Ohms: 0.15, Delta: true}
	a, err := star.Henries()
	require.NoError(t, err)
	b, err := delta.Henries()
	require.NoError(t, err)
	assert.InEpsilon(t, 3*a, b, 1e-12)
	bare, err := FromNameplate(30, 40, 200)
	require.NoError(t, err)
	assert.Greater(t, bare, a, "the bridge as a short circuit is an upper bound")
}

// One full-pitch coil round a pole pair of a two-pole machine: gap field N·I/2g on both
// sides, a square wave whose fundamental links 8/π² of it. Ampère's law and Fourier.
func TestAirGapOfOneCoil(t *testing.T) {
	const bore, stack, gap, turns = 0.08, 0.05, 0.0005, 60.0
	whole := turns * Mu0 * turns / (2 * gap) * math.Pi * bore / 2 * stack
	got, err := InductanceAirGap(1, bore*1000, stack*1000, gap*1000, 2, turns, 1)
	require.NoError(t, err)
	assert.InEpsilon(t, whole*8/(math.Pi*math.Pi), got, 1e-12)
	three, err := InductanceAirGap(3, bore*1000, stack*1000, gap*1000, 2, turns, 1)
	require.NoError(t, err)
	assert.InEpsilon(t, 1.5*got, three, 1e-12, "three phases with balanced currents work together as 3/2")
}

// The same in Pyrhönen's letters: 2m·μ0·τp·l·(kw·N)²/(π²·p·δ).
func TestAirGapInTheOtherForm(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for range 300 {
		m, d, l, g := float64(2+r.IntN(5)), 20+300*r.Float64(), 10+100*r.Float64(), 0.2+5*r.Float64()
		poles, n, kw := float64(2*(1+r.IntN(30))), 1+200*r.Float64(), 0.5+0.5*r.Float64()
		got, err := InductanceAirGap(m, d, l, g, poles, n, kw)
		require.NoError(t, err)
		want := 2 * m * Mu0 * PolePitchMM(d, poles) * l * 1e-3 * math.Pow(kw*n, 2) / (math.Pi * math.Pi * poles / 2 * g)
		assert.InEpsilon(t, want, got, 1e-12)
		twice, err := InductanceAirGap(m, d, l, g, poles, 2*n, kw)
		require.NoError(t, err)
		assert.InEpsilon(t, 4*got, twice, 1e-12, "turns count squared")
	}
}

// Slot leakage slot by slot: 2·p·q slots, each z conductors, z²·μ0·l·λ.
func TestSlotLeakageSlotBySlot(t *testing.T) {
	const p, q, z, stack, lambda = 4.0, 2.0, 7.0, 0.04, 1.3
	turns := p * q * z // 2pq slots of z sides are pq·z turns
	got, err := InductanceSlot(stack*1000, turns, p, q, lambda)
	require.NoError(t, err)
	assert.InEpsilon(t, 2*p*q*z*z*Mu0*stack*lambda, got, 1e-12)
	end, err := EndLeakage(30, turns, p, EndPermeance)
	require.NoError(t, err)
	// Pyrhönen's form with Q = 2pqm, m = 3: 4m/Q·q·N²·μ0·l_w·λ_w.
	assert.InEpsilon(t, 4*3/(2*p*q*3)*q*turns*turns*Mu0*0.03*EndPermeance, end, 1e-12)
	none, err := EndLeakage(0, turns, p, EndPermeance)
	require.NoError(t, err)
	assert.Zero(t, none)
}

// NaN and impossible values are refused by name, and no NaN gets out.
func TestInductanceRefuses(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1), -1} {
		for name, call := range map[string]func() (float64, error){
			"bridge": func() (float64, error) { return FromBridge(bad, TwoLeads, true, 0) },
			"short":  func() (float64, error) { return FromShort(10, 5, bad, 50) },
			"hertz":  func() (float64, error) { return FromShort(10, 5, 0.1, bad) },
			"plate":  func() (float64, error) { return FromNameplate(bad, 20, 50) },
			"ohms":   func() (float64, error) { return Plate{DCAmps: 1, EMFPeak: 20, Hertz: 50, Ohms: bad}.Henries() },
			"gap":    func() (float64, error) { return InductanceAirGap(3, 80, 50, bad, 12, 30, 0.9) },
			"slot":   func() (float64, error) { return InductanceSlot(50, 30, 6, 1, bad) },
			"end":    func() (float64, error) { return EndLeakage(bad, 30, 6, 0.3) },
		} {
			v, err := call()
			assert.ErrorIs(t, err, ErrInductance, "%s %g", name, bad)
			assert.Zero(t, v)
		}
	}
	_, err := FromShort(1, 10, 0.2, 50)
	assert.ErrorContains(t, err, "higher speed")
	_, err = Plate{DCAmps: 20, EMFPeak: 5, Hertz: 100, DCVolts: 15}.Henries()
	assert.ErrorContains(t, err, "take a higher one")
}
