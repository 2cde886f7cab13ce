package wiretable

import "strconv"

// Strand is a number of equal wires.
type Strand struct {
	Gauge Gauge
	Count int
}

// Bundle is the wires wound in hand as one conductor, of one size or two. It
// is a comparable value; the zero Bundle has no wire. Unused entries are zero,
// and used ones come first.
type Bundle struct {
	Strands [2]Strand
}

// MaxBundleCount is the most wires a bundle holds.
const MaxBundleCount = 99

// Of is count like wires in hand. A count outside 1 to MaxBundleCount or the
// zero Gauge gives the zero Bundle.
func Of(count int, g Gauge) Bundle { return OfTwo(count, g, 0, Gauge{}) }

// OfTwo is wires of two sizes in hand. A part with no wire is left out, two
// parts of one gauge are joined, and the thicker named stays first as given.
// More than MaxBundleCount wires give the zero Bundle.
func OfTwo(countA int, a Gauge, countB int, b Gauge) Bundle {
	if countA > MaxBundleCount || countB > MaxBundleCount {
		return Bundle{}
	}
	parts := [2]Strand{usable(countA, a), usable(countB, b)}
	if parts[0].Count > 0 && parts[0].Gauge == parts[1].Gauge {
		parts[0].Count += parts[1].Count
		parts[1] = Strand{}
	}
	if parts[0].Count == 0 {
		parts[0], parts[1] = parts[1], Strand{}
	}
	if parts[0].Count+parts[1].Count > MaxBundleCount {
		return Bundle{}
	}
	return Bundle{Strands: parts}
}

func usable(count int, g Gauge) Strand {
	if count < 1 || g.IsZero() {
		return Strand{}
	}
	return Strand{Gauge: g, Count: count}
}

// IsZero reports the bundle without wire.
func (b Bundle) IsZero() bool { return b.Count() == 0 }

// Count is the number of wires in hand.
func (b Bundle) Count() int { return b.Strands[0].Count + b.Strands[1].Count }

// Parts are the sizes in the bundle, one or two; nil for the zero Bundle.
func (b Bundle) Parts() []Strand {
	var parts []Strand
	for _, s := range b.Strands {
		if s.Count > 0 {
			parts = append(parts, s)
		}
	}
	return parts
}

// AreaMM2 is the bare metal of all the wires in mm².
func (b Bundle) AreaMM2(build Build) float64 {
	total := 0.0
	for _, s := range b.Strands {
		if s.Count > 0 {
			total += float64(s.Count) * s.Gauge.AreaMM2(build)
		}
	}
	return total
}

// SquareMM2 is the room the wires take in a slot, in mm²: each wire counts as
// the square of its nominal overall diameter.
func (b Bundle) SquareMM2(build Build) float64 {
	total := 0.0
	for _, s := range b.Strands {
		if s.Count > 0 {
			d := s.Gauge.OverallMM(build).NominalMM
			total += float64(s.Count) * d * d
		}
	}
	return total
}

// ThickestMM is the largest maximum overall diameter in the bundle, in mm: what
// must pass the slot mouth.
func (b Bundle) ThickestMM(build Build) float64 {
	most := 0.0
	for _, s := range b.Strands {
		if s.Count > 0 {
			most = max(most, s.Gauge.OverallMM(build).MaxMM)
		}
	}
	return most
}

// String is "2 × 18 AWG + 1 × 20 AWG"; ParseBundle reads it back. The zero
// Bundle is the empty string.
func (b Bundle) String() string {
	text := ""
	for _, s := range b.Parts() {
		if text != "" {
			text += " + "
		}
		text += strconv.Itoa(s.Count) + " × " + s.Gauge.String()
	}
	return text
}
