package drive

import (
	"errors"
	"fmt"
	"math"
)

// Rotor is a wind rotor: a published shape stretched to the rotor's peak.
type Rotor struct {
	DiameterM  float64 // 0.1 to 200
	Shape      Shape
	PeakCp     float64 // above 0, at most Betz
	PeakLambda float64 // 0.3 to 20
}

// ErrRotor is wrapped by the errors about a rotor.
var ErrRotor = errors.New("wind rotor")

// Check tests the numbers.
func (r Rotor) Check() error {
	switch {
	case !(r.DiameterM >= 0.1 && r.DiameterM <= 200):
		return fmt.Errorf("%w: diameter: read %g m, expected 0.1 to 200", ErrRotor, r.DiameterM)
	case !(r.PeakCp > 0 && r.PeakCp <= Betz):
		return fmt.Errorf("%w: best Cp: read %g, expected above 0 and at most 0.593 (Betz)", ErrRotor, r.PeakCp)
	case !(r.PeakLambda >= 0.3 && r.PeakLambda <= 20):
		return fmt.Errorf("%w: best tip-speed ratio: read %g, expected 0.3 to 20", ErrRotor, r.PeakLambda)
	}
	return nil
}

// Cp is the power coefficient at a tip-speed ratio; negative where the rotor has to be driven. Never
// above PeakCp, nor above Betz.
func (r Rotor) Cp(lambda float64) float64 {
	c := r.blades()
	return c.cp(lambda)
}

// blades is the shape as the rotor stretches it.
type blades struct {
	shape                 Shape
	most, stretch, height float64
}

func (r Rotor) blades() blades {
	at, high := r.Shape.peak()
	most := min(r.PeakCp, Betz)
	return blades{r.Shape, most, at / r.PeakLambda, most / high}
}

func (b *blades) cp(lambda float64) float64 {
	return min(b.most, b.height*b.shape.raw(lambda*b.stretch))
}

// Area is what the blades sweep, m².
func (r Rotor) Area() float64 { return math.Pi * r.DiameterM * r.DiameterM / 4 }

// Lambda is the tip-speed ratio ωR/v; 0 in no wind.
func (r Rotor) Lambda(wind, rpm float64) float64 {
	if !(wind > 0) {
		return 0
	}
	return r.TipSpeed(rpm) / wind
}

// RPM is the speed at a tip-speed ratio: 60·λ·v/(π·D).
func (r Rotor) RPM(wind, lambda float64) float64 { return 60 * lambda * wind / (math.Pi * r.DiameterM) }

// TipSpeed is m/s of the blade tips, π·D·n/60. Above about 80 m/s tips are loud and
// leading edges wear (common practice, no source).
func (r Rotor) TipSpeed(rpm float64) float64 { return math.Pi * r.DiameterM * rpm / 60 }

// Watts is what the rotor takes from the wind: ½ρ·A·Cp·v³.
func (r Rotor) Watts(wind, rpm, density float64) float64 {
	if !(wind > 0) {
		return 0
	}
	return 0.5 * density * r.Area() * r.Cp(r.Lambda(wind, rpm)) * wind * wind * wind
}

// slowest is the tip-speed ratio below which torque is taken as that at rest.
const slowest = 1e-3

// Torque is on the rotor's shaft, N·m: ½ρ·A·R·v²·Cp/λ, also at rest, where Cp/λ has a
// limit.
func (r Rotor) Torque(wind, rpm, density float64) float64 {
	a := r.in(wind, density)
	return a.torque(rpm)
}

// blown is a rotor in one wind, with all that does not depend on its speed worked out: balances ask for
// its torque some ten thousand times.
type blown struct {
	blades
	perRPM float64 // tip-speed ratio for one rpm; 0 in no wind
	nm     float64 // ½ρ·A·R·v²
}

func (r Rotor) in(wind, density float64) blown {
	return blown{r.blades(), r.Lambda(wind, 1), 0.5 * density * r.Area() * r.DiameterM / 2 * wind * wind}
}

// torque is the rotor's at a speed of its shaft.
func (b *blown) torque(rpm float64) float64 {
	if b.perRPM == 0 {
		return 0
	}
	lambda := max(slowest, rpm*b.perRPM)
	return b.nm * b.cp(lambda) / lambda
}

// Runaway is the tip-speed ratio at which the free rotor stops accelerating, the zero of Cp above its
// peak.
func (r Rotor) Runaway() float64 {
	low, high := r.PeakLambda, 6*r.PeakLambda
	for range 100 {
		mid := (low + high) / 2
		if mid <= low || mid >= high {
			break // no number between them
		}
		if r.Cp(mid) > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}
