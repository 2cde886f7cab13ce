package wiretable

import (
	"math"
	"strconv"
	"strings"
)

// The range of wire sizes, in mm: finer than any gauge, up to beyond 7/0.
const (
	minBareMM = 0.01
	maxBareMM = 15.0
	// enamelRoomMM is added to the upper limit for a measurement over enamel.
	enamelRoomMM = 1.0
	maxTyped     = 60 // bytes: nothing longer is a wire size
)

// surelyMM is the bare number over the enamel from which it is in millimetres: as many inches would be
// 5 mm of wire, which nobody winds by hand. Common practice, no source.
const surelyMM = 0.2

const expectedSize = "a wire size"

// usualForms is the advice when a size could not be read at all.
const usualForms = `write it like "18 AWG", "19 SWG", "0.71 mm", "0.0403 in" or "0.75 mm over" (measured over the enamel)`

// Parse reads a wire size as a person types it:
//
//	18 AWG, AWG 18, 18awg, a18, #18, 18 American gauge; 18.5 is a half size
//	0000, 4/0, 2/0 AWG                 its large sizes
//	19 SWG, swg 19, s19, 7/0 SWG           imperial standard gauge
//	IEC 0.71, i0.71, IEC 0.71 mm           a size of IEC 60317-0-1
//	0.71 mm, 0,71mm                    a bare diameter in millimetres
//	0.0403 in, 40.3 mil                a bare diameter in inches or mils
//	19a, 21s                           a system by its first letter, behind the number too
//	0.75 mm over, 0.0431 in over       the same measured over the enamel; 0.75 over is in mm
//	0.50 ±0.02 mm, 0.5 mm ±4%          a measured diameter that may be off by so much
//
// A bare whole number is an American gauge. A bare number with decimals is one
// only when it is a half size finer than No. 8, since "2.5" and "0.71" are more
// likely millimetres; else the error asks for the unit. Diameters run from 0.01
// to 15 mm bare (16 over enamel) and are kept to the nanometre, or to 1e-7 in.
// The error is a *ParseError.
func Parse(text string) (Gauge, error) {
	if len(text) > maxTyped {
		return Gauge{}, sizeError(text, usualForms)
	}
	words, off, over := cutOff(normal(text))
	g, fix := parseWords(words)
	if x, ok := plainNumber(words); fix != "" && over && ok && x >= surelyMM {
		g, fix = parseLength(words, MetricDiameter, nmPerMM)
	}
	if fix != "" && over {
		fix = strings.Replace(fix, ` mm" for a diameter, or "AWG" or "SWG" with a gauge number`, ` mm over" or "`+words+` in over"`, 1)
	}
	if fix == "" && off != "" {
		g, fix = g.within(off)
	}
	if fix != "" {
		return Gauge{}, sizeError(text, fix)
	}
	if over {
		if g.system != MetricDiameter && g.system != InchDiameter {
			return Gauge{}, sizeError(text, "a gauge names the bare wire; over the enamel give what you measured, like \"0.75 mm over\"")
		}
		g.over = true
	}
	if fix := g.absurd(); fix != "" {
		return Gauge{}, sizeError(text, fix)
	}
	return g, nil
}

func sizeError(text, fix string) error {
	return &ParseError{Read: clip(text), Expected: expectedSize, Fix: fix}
}

// normal lowers the text, makes a decimal comma a point and one space of many.
func normal(text string) string {
	words := strings.Join(strings.Fields(strings.ToLower(text)), " ")
	if size, off, found := strings.Cut(words, "±"); found {
		return normal(size) + "±" + normal(off)
	}
	if strings.Count(words, ",") == 1 && !strings.Contains(words, ".") {
		words = strings.Replace(words, ",", ".", 1)
	}
	return words
}

// cutOver takes the words for "measured over the enamel" off the end.
func cutOver(words string) (string, bool) {
	for _, tail := range []string{"over the enamel", "over enamel", "over"} {
		if rest, found := strings.CutSuffix(words, tail); found {
			return strings.TrimSpace(rest), true
		}
	}
	return words, false
}

// cutOff splits off the ± and the words for "over the enamel"; a unit only behind the ± applies to
// both.
func cutOff(words string) (size, off string, over bool) {
	words, over = cutOver(words)
	for _, sign := range []string{"±", "+/-", "+-"} {
		left, right, found := strings.Cut(words, sign)
		if !found {
			continue
		}
		left, before := cutOver(strings.TrimSpace(left))
		right = strings.TrimSpace(right)
		if _, ok := plainNumber(left); ok {
			for _, u := range units {
				if strings.HasSuffix(right, u.spelling) {
					left += " " + u.spelling
					break
				}
			}
		}
		if right == "" {
			right = sign // no number
		}
		return left, right, over || before
	}
	return words, "", over
}

// offForms is what is said where a ± cannot be read.
const offForms = `write the ± behind the diameter, like "0.50 ±0.02 mm"`

// within is a measured diameter with its ±; fix says what to do where it cannot have one.
func (g Gauge) within(off string) (_ Gauge, fix string) {
	if g.system != MetricDiameter && g.system != InchDiameter {
		return g, `a gauge has no ±: give the diameter that was measured, like "0.50 ±0.02 mm"`
	}
	counts := nmPerMM
	if g.system == InchDiameter {
		counts = inchParts
	}
	digits, percent := strings.CutSuffix(off, "%")
	if percent {
		counts = float64(g.n) / 100
	}
	for _, u := range units {
		if rest, found := strings.CutSuffix(digits, u.spelling); found && !percent {
			if u.system != g.system {
				return g, "give the diameter and its ± in the same unit"
			}
			digits, counts = rest, u.counts
			break
		}
	}
	x, ok := plainNumber(strings.TrimSpace(digits))
	if !ok || math.Round(x*counts) >= float64(g.n) {
		return g, offForms
	}
	g.off = int32(math.Round(x * counts))
	return g, ""
}

// units of length, longest spelling first, with their size in the counting
// unit of their system.
var units = []struct {
	spelling string
	system   System
	counts   float64
}{
	{"millimetres", MetricDiameter, nmPerMM},
	{"millimeters", MetricDiameter, nmPerMM},
	{"mm", MetricDiameter, nmPerMM},
	{"inches", InchDiameter, inchParts},
	{"inch", InchDiameter, inchParts},
	{"in", InchDiameter, inchParts},
	{"\"", InchDiameter, inchParts},
	{"mils", InchDiameter, inchParts / 1000},
	{"mil", InchDiameter, inchParts / 1000},
	{"thou", InchDiameter, inchParts / 1000},
}

// parseWords reads a size without its "over"; the second result is what to do about it when it cannot
// be read.
func parseWords(words string) (Gauge, string) {
	words = inFull(words)
	if fix := asked(words); fix != "" {
		return Gauge{}, fix
	}
	if rest, found := cutEither(words, "iec"); found {
		rest, _ = strings.CutSuffix(rest, "mm")
		return parseIEC(strings.TrimSpace(rest))
	}
	if rest, found := cutEither(words, "swg"); found {
		return parseSWG(rest)
	}
	if rest, found := cutEither(words, "awg"); found {
		return parseAWG(strings.TrimSpace(strings.TrimPrefix(rest, "#")))
	}
	if rest, found := strings.CutPrefix(words, "#"); found {
		return parseAWG(strings.TrimSpace(rest))
	}
	for letter, name := range map[string]string{"a": "awg", "s": "swg"} {
		if rest, found := strings.CutSuffix(words, letter); found && strings.Trim(rest, "0123456789./ ") == "" {
			return parseWords(strings.TrimSpace(rest) + " " + name)
		}
	}
	for _, u := range units {
		if rest, found := strings.CutSuffix(words, u.spelling); found {
			return parseLength(strings.TrimSpace(rest), u.system, u.counts)
		}
	}
	return parseNaked(words)
}

// inFull writes the letter for a standard before a size in full: a18, s21, i0.71.
func inFull(words string) string {
	if len(words) < 2 || !(words[1] >= '0' && words[1] <= '9') {
		return words
	}
	switch words[0] {
	case 'a':
		return "awg " + words[1:]
	case 's':
		return "swg " + words[1:]
	case 'i':
		return "iec " + words[1:]
	}
	return words
}

// times maps the multiplication signs between a number of wires and their size to one.
var times = strings.NewReplacer("×", "x", "*", "x")

// asked is the question for input that is understood but says too little or too much: "18 gauge" exists
// in two systems, and "2x0.8 mm" is two wires.
func asked(words string) string {
	for _, tail := range []string{"gauge", "ga", "g"} {
		rest, found := strings.CutSuffix(words, tail)
		if _, number := plainNumber(strings.TrimSpace(rest)); found && number {
			rest = strings.TrimSpace(rest)
			return "say which gauge: \"" + rest + " AWG\" (American) or \"" + rest + " SWG\" (imperial)"
		}
	}
	if count, size, found := strings.Cut(times.Replace(words), "x"); found {
		n, err := strconv.Atoi(strings.TrimSpace(count))
		if g, fix := parseWords(strings.TrimSpace(size)); err == nil && n > 0 && fix == "" {
			return "one wire stands here: write \"" + g.String() + "\" and " + strconv.Itoa(n) + " strands in their own field"
		}
	}
	return ""
}

// BareNumber reports whether a size as typed is a whole number that names no system: Parse takes it for
// an American gauge, which a person may not have meant.
func BareNumber(text string) bool {
	_, err := strconv.Atoi(strings.TrimSpace(text))
	return err == nil
}

// cutEither takes a word off the front or the back.
func cutEither(words, word string) (string, bool) {
	rest, found := strings.CutPrefix(words, word)
	if !found {
		rest, found = strings.CutSuffix(words, word)
	}
	return strings.TrimSpace(rest), found
}

// parseLength reads a diameter; it prevents the overflow of an int32 and leaves the range of a wire to
// absurd.
func parseLength(digits string, s System, counts float64) (Gauge, string) {
	x, ok := plainNumber(digits)
	if !ok {
		return Gauge{}, usualForms
	}
	n := math.Round(x * counts)
	if n > math.MaxInt32 {
		n = math.MaxInt32
	}
	return Gauge{system: s, n: int32(n)}, ""
}

// parseNaked reads a number without a unit.
func parseNaked(words string) (Gauge, string) {
	x, ok := plainNumber(words)
	if !ok || x == math.Trunc(x) && !strings.Contains(words, ".") {
		return parseAWG(words)
	}
	const finestDoubtful = 8
	half := 2*x == math.Trunc(2*x) && x != math.Trunc(x)
	if x < awgLast/2 && (half && x > finestDoubtful || x > maxBareMM) {
		return parseAWG(words)
	}
	if x < minBareMM || x > maxBareMM {
		return Gauge{}, usualForms
	}
	return Gauge{}, "say which unit: \"" + decimal(x) + " mm\" for a diameter, or \"AWG\" or \"SWG\" with a gauge number"
}

// plainNumber reads digits with at most one point: no sign, exponent, NaN.
func plainNumber(digits string) (float64, bool) {
	for _, r := range digits {
		if (r < '0' || r > '9') && r != '.' {
			return 0, false
		}
	}
	x, err := strconv.ParseFloat(digits, 64)
	return x, err == nil
}

// absurd says what is wrong with a size that no wire has; empty for a valid one.
func (g Gauge) absurd() string {
	limit := maxBareMM
	if g.over {
		limit += enamelRoomMM
	}
	if mm := g.typedMM(); mm >= minBareMM && mm <= limit {
		return ""
	}
	return "a wire measures " + decimal(minBareMM) + " to " + decimal(limit) + " mm; check the figure and its unit"
}
