package wiretable

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

const (
	expectedBundle = "the wires in hand"
	bundleForms    = `write it like "2 x 18 AWG" or "2 x 18 AWG + 1 x 20 AWG"`
	maxTypedBundle = 2*maxTyped + 20
)

// ParseBundle reads the wires in hand: "18 AWG" (one wire), "2 x 18 AWG",
// "2 × 18 AWG + 1 × 20 AWG", "2*0.71 mm + 0.5 mm". At most two sizes and
// MaxBundleCount wires. The error is a *ParseError.
func ParseBundle(text string) (Bundle, error) {
	if len(text) > maxTypedBundle {
		return Bundle{}, bundleError(text, bundleForms)
	}
	terms := strings.Split(text, "+")
	if len(terms) > 2 {
		return Bundle{}, bundleError(text, "a conductor is wound of one or two sizes; "+bundleForms)
	}
	var strands [2]Strand
	for i, term := range terms {
		s, err := parseStrand(text, term)
		if err != nil {
			return Bundle{}, err
		}
		strands[i] = s
	}
	b := OfTwo(strands[0].Count, strands[0].Gauge, strands[1].Count, strands[1].Gauge)
	if b.IsZero() {
		return Bundle{}, bundleError(text, "a conductor has at most "+strconv.Itoa(MaxBundleCount)+" wires")
	}
	return b, nil
}

// parseStrand reads one term, "2 x 18 AWG" or "18 AWG", of the whole text.
func parseStrand(whole, term string) (Strand, error) {
	count := 1
	size := term
	if i := strings.IndexAny(term, "xX×*"); i >= 0 {
		n, err := strconv.Atoi(strings.TrimSpace(term[:i]))
		if err != nil || n < 1 || n > MaxBundleCount {
			return Strand{}, bundleError(whole, "the number of wires is whole, 1 to "+strconv.Itoa(MaxBundleCount)+"; "+bundleForms)
		}
		count = n
		_, width := utf8.DecodeRuneInString(term[i:])
		size = term[i+width:]
	}
	g, err := Parse(size)
	if err != nil {
		return Strand{}, err
	}
	return Strand{Gauge: g, Count: count}, nil
}

func bundleError(text, fix string) error {
	return &ParseError{Read: clip(text), Expected: expectedBundle, Fix: fix}
}

// MarshalText writes String; the zero Bundle is the empty text.
func (b Bundle) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// UnmarshalText reads what ParseBundle reads; empty text is the zero Bundle.
func (b *Bundle) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*b = Bundle{}
		return nil
	}
	read, err := ParseBundle(string(text))
	if err != nil {
		return err
	}
	*b = read
	return nil
}
