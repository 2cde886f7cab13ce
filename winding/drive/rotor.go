package drive

import (
	"errors"
	"fmt"
	"math"
	"strings"
)

// Betz is the most that any rotor can take of the wind's power, 16/27 (Betz 1919).
const Betz = 16.0 / 27

// Shape is a published form of the power coefficient against tip-speed ratio, blades
// not pitched.
type Shape int

// The shapes.
const (
	// Heier: 0.5176·(116/Λ − 5)·e^(−21/Λ) + 0.0068·λ, 1/Λ = 1/λ − 0.035. Source: Heier,
	// Grid Integration of Wind Energy Conversion Systems (1998), from memory.
	Heier Shape = iota
	// Slootweg: 0.73·(151/Λ − 13.2)·e^(−18.4/Λ), 1/Λ = 1/λ − 0.003. Source: Slootweg, de
	// Haan, Polinder and Kling, IEEE Trans. Power Systems 18 (2003) 144-151, from memory.
	Slootweg
)

// String is the word for it.
func (s Shape) String() string {
	if s == Slootweg {
		return "slootweg"
	}
	return "heier"
}

// ParseShape reads the word.
func ParseShape(text string) (Shape, error) {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "heier":
		return Heier, nil
	case "slootweg":
		return Slootweg, nil
	}
	return Heier, fmt.Errorf("blade curve: read %q, expected heier or slootweg", text)
}

// raw is the published curve.
func (s Shape) raw(lambda float64) float64 {
	if lambda <= 0 {
		return 0
	}
	if s == Slootweg {
		i := 1/lambda - 0.003
		return 0.73 * (151*i - 13.2) * math.Exp(-18.4*i)
	}
	i := 1/lambda - 0.035
	return 0.5176*(116*i-5)*math.Exp(-21*i) + 0.0068*lambda
}

// peak is where the published curve is highest, and how high.
var peaks = [2][2]float64{findPeak(Heier), findPeak(Slootweg)}

func findPeak(s Shape) [2]float64 {
	a, b := 4.0, 12.0
	ratio := (math.Sqrt(5) - 1) / 2
	for range 100 {
		c, d := b-ratio*(b-a), a+ratio*(b-a)
		if s.raw(c) > s.raw(d) {
			b = d
		} else {
			a = c
		}
	}
	return [2]float64{(a + b) / 2, s.raw((a + b) / 2)}
}

// Rotor is a wind rotor: a published shape stretched so that its peak is the rotor's.
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

// Cp is the power coefficient at a tip-speed ratio; below 0 where the wind would have
// to be helped. Never above PeakCp.
func (r Rotor) Cp(lambda float64) float64 {
	p := peaks[r.Shape]
	return min(r.PeakCp, r.PeakCp*r.Shape.raw(lambda*p[0]/r.PeakLambda)/p[1])
}

// Area is what the blades sweep, m².
func (r Rotor) Area() float64 { return math.Pi * r.DiameterM * r.DiameterM / 4 }

// Lambda is the tip-speed ratio ωR/v.
func (r Rotor) Lambda(wind, rpm float64) float64 {
	return math.Pi * r.DiameterM * rpm / 60 / wind
}

// RPM is the speed at a tip-speed ratio: 60·λ·v/(π·D).
func (r Rotor) RPM(wind, lambda float64) float64 { return 60 * lambda * wind / (math.Pi * r.DiameterM) }

// Watts is what the rotor takes of the wind: ½ρ·A·Cp·v³.
func (r Rotor) Watts(wind, rpm, density float64) float64 {
	if wind <= 0 {
		return 0
	}
	return 0.5 * density * r.Area() * r.Cp(r.Lambda(wind, rpm)) * wind * wind * wind
}

// slowest is the tip-speed ratio below which torque is taken as that at rest.
const slowest = 1e-3

// Torque is on the rotor's shaft, also at rest, where Cp/λ has a limit.
func (r Rotor) Torque(wind, rpm, density float64) float64 {
	if wind <= 0 {
		return 0
	}
	lambda := max(slowest, r.Lambda(wind, rpm))
	omega := lambda * wind / (r.DiameterM / 2)
	return 0.5 * density * r.Area() * r.Cp(lambda) * wind * wind * wind / omega
}

// Runaway is the tip-speed ratio at which the free rotor stops getting faster, the zero
// of Cp above its peak.
func (r Rotor) Runaway() float64 {
	low, high := r.PeakLambda, 6*r.PeakLambda
	for range 100 {
		mid := (low + high) / 2
		if r.Cp(mid) > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}
