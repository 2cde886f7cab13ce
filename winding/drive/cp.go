package drive

import (
	"fmt"
	"math"
	"strings"
)

// Betz is the largest fraction of the wind's power that any rotor can take, 16/27 (Betz 1919).
const Betz = 16.0 / 27

// Shape is a published form of the power coefficient against tip-speed ratio, for blades of fixed
// pitch.
type Shape int

// The shapes.
const (
	// Heier: 0.5176·(116/Λ − 5)·e^(−21/Λ) + 0.0068·λ, 1/Λ = 1/λ − 0.035. Source: Heier,
	// Grid Integration of Wind Energy Conversion Systems (1998), from memory.
	Heier Shape = iota
	// Slootweg: 0.73·(151/Λ − 13.2)·e^(−18.4/Λ), 1/Λ = 1/λ − 0.003. Source: Slootweg, de Haan, Polinder
	// and Kling, IEEE Trans. Power Systems 18 (2003) 144-151, from memory. It has no torque at rest: a
	// rotor of this shape cannot start against any.
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

// fitted is the tip-speed ratio up to which the published fits are used. Both fall below 0 well before
// it; Heier's would rise again far beyond, so it is extended from there as a straight line.
const fitted = 20.0

// raw is the published curve.
func (s Shape) raw(lambda float64) float64 {
	if !(lambda > 0) {
		return 0
	}
	if lambda > fitted {
		const step = 1e-3
		slope := (s.fit(fitted) - s.fit(fitted-step)) / step
		return s.fit(fitted) + slope*(lambda-fitted)
	}
	return s.fit(lambda)
}

func (s Shape) fit(lambda float64) float64 {
	if s == Slootweg {
		i := 1/lambda - 0.003
		return 0.73 * (151*i - 13.2) * math.Exp(-18.4*i)
	}
	i := 1/lambda - 0.035
	return 0.5176*(116*i-5)*math.Exp(-21*i) + 0.0068*lambda
}

// peaks is where the published curves are highest, and how high.
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

// peak is that of the shape; an unknown shape counts as Heier's.
func (s Shape) peak() (lambda, cp float64) {
	if s != Slootweg {
		s = Heier
	}
	return peaks[s][0], peaks[s][1]
}
