package wiretable

import (
	"math"
	"strconv"
)

// Gauge is one wire size as a person named it: a small value, usable as a map key and with ==. Its zero
// value names no wire. Two gauges of one diameter in two systems ("0.71 mm" and "IEC 0.71 mm") are
// different values.
type Gauge struct {
	system System
	over   bool // measured over the enamel, not bare
	// n counts half gauge steps (AWG), gauge steps (SWG), nanometres (IEC and MetricDiameter) or
	// ten-millionths of an inch (InchDiameter). Whole numbers make == exact.
	n int32
	// off is the uncertainty of a measured diameter, counted like n.
	off int32
}

const (
	mmPerInch = 25.4 // exact
	nmPerMM   = 1e6
	// inchParts are the steps a measured inch is kept in: 1e-7 in.
	inchParts = 1e7
)

// IsZero reports the gauge that names no wire.
func (g Gauge) IsZero() bool { return g.system == 0 }

// System is the system the size was named in; zero for the zero Gauge.
func (g Gauge) System() System { return g.system }

// OverEnamel reports a diameter measured over the enamel: the bare diameter then depends on the build.
func (g Gauge) OverEnamel() bool { return g.over }

// String writes the gauge so that Parse reads it back: "18 AWG", "18.5 AWG",
// "2/0 AWG", "19 SWG", "IEC 0.71 mm", "0.71 mm", "0.75 mm over", "0.0403 in".
// The zero Gauge is the empty string.
func (g Gauge) String() string {
	switch g.system {
	case AWG:
		if g.n%2 != 0 {
			return strconv.Itoa(int(g.n/2)) + ".5 AWG"
		}
		return gaugeNumber(int(g.n/2)) + " AWG"
	case SWG:
		return gaugeNumber(int(g.n)) + " SWG"
	case IEC:
		return "IEC " + decimal(float64(g.n)/nmPerMM) + " mm"
	case MetricDiameter:
		return decimal(float64(g.n)/nmPerMM) + g.offWord(nmPerMM) + " mm" + g.overWord()
	case InchDiameter:
		return decimal(float64(g.n)/inchParts) + g.offWord(inchParts) + " in" + g.overWord()
	}
	return ""
}

// offWord is the ± of a measured diameter, "" where there is none.
func (g Gauge) offWord(counts float64) string {
	if g.off == 0 {
		return ""
	}
	return " ±" + decimal(float64(g.off)/counts)
}

// PlusMinusMM is the uncertainty of a measured diameter, mm; 0 where none was given, and for a gauge.
func (g Gauge) PlusMinusMM() float64 {
	if g.system == InchDiameter {
		return float64(g.off) / inchParts * mmPerInch
	}
	return float64(g.off) / nmPerMM
}

// Wider is the same wire thicker by its ±, and exact.
func (g Gauge) Wider() Gauge {
	g.n, g.off = g.n+g.off, 0
	return g
}

func (g Gauge) overWord() string {
	if g.over {
		return " over"
	}
	return ""
}

// gaugeNumber writes a gauge number the way the trade does: -1 is 2/0.
func gaugeNumber(n int) string {
	if n < 0 {
		return strconv.Itoa(1-n) + "/0"
	}
	return strconv.Itoa(n)
}

func decimal(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// Basis says where the bare diameter comes from, in a few words for the screen.
func (g Gauge) Basis() string {
	switch {
	case g.system == AWG && g.n%2 != 0:
		return "formula of ASTM B258, half size"
	case g.system == AWG:
		return "ASTM B258 table"
	case g.system == SWG && swgFromMemory[g.n]:
		return "imperial standard wire gauge, from memory"
	case g.system == SWG:
		return "imperial standard wire gauge table"
	case g.system == IEC:
		return "IEC 60317-0-1 table"
	case g.over:
		return "as measured over enamel less the build"
	case g.system != 0:
		return "as measured, bare"
	}
	return "no wire"
}

// BasisIn is Basis with the build known: it says when a diameter measured over the enamel lies beyond
// the rows of that build, so that the bare diameter is extrapolated.
func (g Gauge) BasisIn(b Build) string {
	if !g.over {
		return g.Basis()
	}
	if beyondRows(b, g.typedMM()) {
		return "as measured over enamel less the build, extrapolated beyond its table"
	}
	return g.Basis()
}

// BareMM is the diameter of the bare metal in mm. The build matters only for a
// diameter measured over the enamel: the bare wire is then the one whose
// nominal overall diameter, in that build, is what was measured. The zero
// Gauge gives 0.
func (g Gauge) BareMM(b Build) float64 {
	if g.over {
		return bareUnder(b, g.typedMM())
	}
	return g.typedMM()
}

// typedMM is the diameter the name itself stands for.
func (g Gauge) typedMM() float64 {
	switch g.system {
	case AWG:
		return awgMM[g.n-awgFirst]
	case SWG:
		return swgMM[g.n-swgFirst]
	case IEC, MetricDiameter:
		return float64(g.n) / nmPerMM
	case InchDiameter:
		return float64(g.n) / inchParts * mmPerInch
	}
	return 0
}

// AreaMM2 is the area of bare metal in mm²: π/4 times BareMM squared.
func (g Gauge) AreaMM2(b Build) float64 {
	d := g.BareMM(b)
	return math.Pi / 4 * d * d
}

// OverallMM is the diameter over the enamel in mm. For a diameter measured
// over the enamel the nominal is the measurement itself.
func (g Gauge) OverallMM(b Build) Overall {
	if g.IsZero() {
		return Overall{Basis: "no wire"}
	}
	o := overallFor(b, g.BareMM(b))
	if g.over {
		grow := o.MaxMM - o.NominalMM
		o.NominalMM = g.typedMM()
		o.MaxMM = o.NominalMM + grow
		o.Basis = "as measured over enamel"
		if beyondRows(b, g.typedMM()) {
			o.Basis = "as measured over enamel, maximum extrapolated beyond the table"
		}
	}
	return o
}

// MarshalText writes String; the zero Gauge is the empty text.
func (g Gauge) MarshalText() ([]byte, error) { return []byte(g.String()), nil }

// UnmarshalText reads what Parse reads; empty text is the zero Gauge.
func (g *Gauge) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*g = Gauge{}
		return nil
	}
	read, err := Parse(string(text))
	if err != nil {
		return err
	}
	*g = read
	return nil
}
