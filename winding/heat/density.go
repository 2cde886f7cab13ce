// Package heat says how much current copper withstands: by density, by the heat it made before, by its
// steady temperature, and for how long without cooling.
//
// Its figures keep a rewinder out of trouble; they are no rating. It knows nothing of windings: it
// takes watts, areas and amperes.
package heat

import (
	"fmt"
	"math"
	"strings"

	"slotwright/wiretable"
)

// Cooling is how air reaches the winding.
type Cooling int

// The ways of cooling.
const (
	Open   Cooling = iota // air gets through the machine by itself
	Closed                // no air gets in
	Fan                   // a fan blows through it
)

var coolings = [...]string{"open", "closed", "fan"}

// String is the word for it.
func (c Cooling) String() string {
	if c < 0 || int(c) >= len(coolings) {
		return fmt.Sprintf("cooling %d", int(c))
	}
	return coolings[c]
}

// ParseCooling reads the word.
func ParseCooling(text string) (Cooling, error) {
	for i, n := range coolings {
		if strings.EqualFold(strings.TrimSpace(text), n) {
			return Cooling(i), nil
		}
	}
	return Open, fmt.Errorf("cooling: read %q, expected one of %s", text, strings.Join(coolings[:], ", "))
}

// Density is a range of current densities in continuous use.
type Density struct {
	Low, High float64 // A/mm²
	Source    string
}

// DensityOf is the range for a kind of cooling, for copper. No published table by kind of cooling was
// available to read; the sources are marked as from memory.
func DensityOf(c Cooling) Density {
	switch c {
	case Closed:
		return Density{1.5, 5, "totally enclosed, Hendershot and Miller, Design of Brushless Permanent-Magnet Machines (from memory)"}
	case Fan:
		return Density{5, 10, "fan cooled, Hendershot and Miller, Design of Brushless Permanent-Magnet Machines (from memory)"}
	default:
		return Density{3, 6.5, "air cooled: from the low end for induction stators (3 to 8 A/mm²) to the high end for synchronous armatures (4 to 6.5), Pyrhönen et al., Design of Rotating Electrical Machines (from memory)"}
	}
}

// Mid is the middle of the range, which is the value used, in a metal, A/mm².
func (d Density) Mid(m wiretable.Metal) float64 {
	return (d.Low + d.High) / 2 * AtEqualHeat(wiretable.Copper, m)
}

// AtEqualHeat is the ratio of current densities in two metals that make the same heat in wire of the
// same size: heat per volume is J²·ρ, so J goes with √(1/ρ). Both at 20 °C: at 100 °C copper and
// aluminium differ from that by 0.4 %.
func AtEqualHeat(from, to wiretable.Metal) float64 {
	return math.Sqrt(from.Resistivity(20) / to.Resistivity(20))
}

// LimitAmps is the rms current that the middle of the range allows a conductor of an area, mm² of bare
// metal, all strands in hand together. 0 for an area not above 0.
func LimitAmps(c Cooling, m wiretable.Metal, areaMM2 float64) float64 {
	if !(areaMM2 > 0) || math.IsInf(areaMM2, 0) {
		return 0
	}
	return DensityOf(c).Mid(m) * areaMM2
}

// CmilPerMM2 is circular mils in a square millimetre, (4/π)/0.0254² by definition.
const CmilPerMM2 = 4 / math.Pi / (0.0254 * 0.0254)

// CmilPerAmp converts A/mm² to circular mils per ampere, and back: the product of the two is
// CmilPerMM2. 0 and less give 0.
func CmilPerAmp(ampsPerMM2 float64) float64 {
	if !(ampsPerMM2 > 0) {
		return 0
	}
	return CmilPerMM2 / ampsPerMM2
}

// SameHeat is the current that makes the same heat in a new winding as the rated one did in the old:
// I·√(R_old/R_new). 0 when a value is not above 0.
func SameHeat(ratedAmps, oldOhms, newOhms float64) float64 {
	if !(ratedAmps > 0 && oldOhms > 0 && newOhms > 0) {
		return 0
	}
	amps := ratedAmps * math.Sqrt(oldOhms/newOhms)
	if math.IsInf(amps, 0) || math.IsNaN(amps) {
		return 0
	}
	return amps
}
