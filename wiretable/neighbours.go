package wiretable

import (
	"math"
	"slices"
	"sync"
)

// Sizes lists the sizes of a system from thick to thin: 0000 to 50 AWG (whole sizes), 7/0 to 50 SWG, 5
// to 0.018 mm IEC. A measured diameter has no list: MetricDiameter, InchDiameter and zero give nil. The
// slice is the caller's.
func Sizes(s System) []Gauge { return slices.Clone(sizesOf(s)) }

// sizesOf is Sizes as a shared slice.
func sizesOf(s System) []Gauge {
	if list, ok := listed[s]; ok {
		return list()
	}
	return nil
}

// listed makes the list of each system once, when it is first asked for.
var listed = map[System]func() []Gauge{
	AWG: sync.OnceValue(func() []Gauge { return list(AWG) }),
	SWG: sync.OnceValue(func() []Gauge { return list(SWG) }),
	IEC: sync.OnceValue(func() []Gauge { return list(IEC) }),
}

// list makes the sizes of a system.
func list(s System) []Gauge {
	var sizes []Gauge
	switch s {
	case AWG:
		sizes = make([]Gauge, 0, (awgLast-awgFirst)/2+1)
		for n := awgFirst; n <= awgLast; n += 2 {
			sizes = append(sizes, Gauge{system: AWG, n: int32(n)})
		}
	case SWG:
		sizes = make([]Gauge, 0, swgLast-swgFirst+1)
		for n := swgFirst; n <= swgLast; n++ {
			sizes = append(sizes, Gauge{system: SWG, n: int32(n)})
		}
	case IEC:
		sizes = make([]Gauge, 0, len(iecRows))
		for i := len(iecRows) - 1; i >= 0; i-- {
			sizes = append(sizes, Gauge{system: IEC, n: iecRows[i].bare * nmPerMicrometre})
		}
	}
	return sizes
}

const nmPerMicrometre = 1000

// Thicker is the next thicker size of the same system, false at its end. A
// half size steps to the whole size. A measured diameter steps to a standard
// one: mm to IEC, inches to AWG; measured over enamel it is taken as Heavy
// (ThickerIn takes the build).
func (g Gauge) Thicker() (Gauge, bool) { return g.ThickerIn(Heavy) }

// Thinner is the next thinner size, like Thicker.
func (g Gauge) Thinner() (Gauge, bool) { return g.ThinnerIn(Heavy) }

// ThickerIn is Thicker with the build that a diameter over enamel has.
func (g Gauge) ThickerIn(b Build) (Gauge, bool) {
	sizes := sizesOf(g.standard())
	bare := g.BareMM(b)
	for i := len(sizes) - 1; i >= 0 && !g.IsZero(); i-- {
		if sizes[i].BareMM(b) > bare+onRowMM {
			return sizes[i], true
		}
	}
	return Gauge{}, false
}

// ThinnerIn is Thinner with the build that a diameter over enamel has.
func (g Gauge) ThinnerIn(b Build) (Gauge, bool) {
	bare := g.BareMM(b)
	for _, size := range sizesOf(g.standard()) {
		if !g.IsZero() && size.BareMM(b) < bare-onRowMM {
			return size, true
		}
	}
	return Gauge{}, false
}

// standard is the system whose sizes lie next to the gauge.
func (g Gauge) standard() System {
	switch g.system {
	case MetricDiameter:
		return IEC
	case InchDiameter:
		return AWG
	}
	return g.system
}

// Nearest is the size of a system nearest in bare diameter (by ratio; the
// thicker of two equally near). For MetricDiameter it is the bare diameter to
// 0.001 mm, for InchDiameter to 0.0001 in, finer below 0.1 mm. Measured over
// enamel the gauge is taken as Heavy (NearestIn takes the build). The zero
// Gauge and the zero System give the zero Gauge.
func (g Gauge) Nearest(s System) Gauge { return g.NearestIn(s, Heavy) }

// NearestIn is Nearest with the build that a diameter over enamel has.
func (g Gauge) NearestIn(s System, b Build) Gauge {
	if g.IsZero() || (g.system == s && !g.over) {
		return g
	}
	return NearestToMM(g.BareMM(b), s)
}

// NearestToMM is the size of a system nearest to a bare diameter in mm; the
// zero Gauge for a diameter that is not a wire (outside 0.01 to 15 mm).
func NearestToMM(bareMM float64, s System) Gauge {
	if !(bareMM >= minBareMM && bareMM <= maxBareMM) {
		return Gauge{}
	}
	switch s {
	case MetricDiameter:
		return Gauge{system: s, n: roundedTo(bareMM*nmPerMM, nmPerMM/1000, bareMM)}
	case InchDiameter:
		return Gauge{system: s, n: roundedTo(bareMM/mmPerInch*inchParts, inchParts/10000, bareMM)}
	}
	var best Gauge
	least := math.Inf(1)
	for _, size := range sizesOf(s) {
		if off := math.Abs(math.Log(size.BareMM(BareWire) / bareMM)); off < least {
			best, least = size, off
		}
	}
	return best
}

// roundedTo rounds a count to a step, ten times finer for fine wire. The ends of the range are whole
// steps, so rounding stays within it, except in inches, where the step is finer than the rounding of
// the thinnest wire.
func roundedTo(count, step, bareMM float64) int32 {
	const fineMM = 0.1
	if bareMM < fineMM {
		step /= 10
	}
	return int32(math.Round(count/step) * step)
}
