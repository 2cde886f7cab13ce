package slot

import (
	"fmt"
	"math"
)

// FieldError is an impossible slot or insulation: which field, what is wrong with it and what to do.
// Field is the Go field name (TopMM, LinerMM, ...), so that a screen can go to it.
type FieldError struct {
	Field   string
	Problem string
	Advice  string
}

// Error gives the whole as one sentence, in the words of the trade.
func (e *FieldError) Error() string {
	return fmt.Sprintf("%s %s; %s", fieldWords[e.Field], e.Problem, e.Advice)
}

var fieldWords = map[string]string{
	"Shape":         "slot shape",
	"AreaMM2":       "slot area",
	"TopMM":         "slot width at the mouth side",
	"BottomMM":      "slot width at the yoke end",
	"DepthMM":       "slot depth",
	"MouthMM":       "slot mouth",
	"MouthHeightMM": "mouth height",
	"DepthPerWidth": "slot depth per width",
	"LinerMM":       "liner",
	"WedgeMM":       "wedge",
	"SeparatorMM":   "separator",
	"Layers":        "layers",
	"NetMM2":        "room for wire",
}

// The largest dimensions accepted; a small alternator's slot is far below them, and a larger figure is
// a wrong unit.
const (
	longestMM     = 1000.0
	largestMM2    = 100000.0
	leastRatio    = 0.1
	greatestRatio = 20.0
)

func wrong(field, problem, advice string, args ...any) error {
	return &FieldError{field, problem, fmt.Sprintf(advice, args...)}
}

// within checks a number against [least, most], or (0, most] when least is 0 and zero is
// not allowed. NaN is never within.
func within(field, unit string, v, least, most float64, zeroToo bool) error {
	if v >= least && v <= most && (v > 0 || zeroToo) {
		return nil
	}
	span := fmt.Sprintf("from %g to %g%s", least, most, unit)
	if least == 0 && !zeroToo {
		span = fmt.Sprintf("more than 0 and at most %g%s", most, unit)
	}
	return wrong(field, fmt.Sprintf("is %g%s", v, unit), "give %s", span)
}

func firstOf(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// checkSlot looks at the fields that the shape uses.
func checkSlot(s Slot) error {
	length := func(field string, v float64) error { return within(field, " mm", v, 0, longestMM, false) }
	err := firstOf(
		within("MouthMM", " mm", s.MouthMM, 0, longestMM, true),
		within("MouthHeightMM", " mm", s.MouthHeightMM, 0, longestMM, true))
	if err != nil {
		return err
	}
	switch s.Shape {
	case AreaOnly:
		err = within("AreaMM2", " mm²", s.AreaMM2, 0, largestMM2, false)
		if err == nil && s.DepthPerWidth != 0 {
			err = within("DepthPerWidth", "", s.DepthPerWidth, leastRatio, greatestRatio, false)
		}
		return err
	case Parallel:
		err = firstOf(length("TopMM", s.TopMM), length("DepthMM", s.DepthMM))
	case Tapered, RoundBottom, Pear:
		err = firstOf(length("TopMM", s.TopMM), length("BottomMM", s.BottomMM), length("DepthMM", s.DepthMM))
	default:
		return wrong("Shape", "is "+s.Shape.String(), "give area, parallel, tapered, round or pear")
	}
	if err != nil {
		return err
	}
	if s.MouthMM > s.TopMM {
		return wrong("MouthMM", fmt.Sprintf("is %g mm", s.MouthMM),
			"it cannot be wider than the slot just below it, %g mm (equal: an open slot)", s.TopMM)
	}
	return checkRounds(s)
}

// checkRounds tests that the depth holds the rounds.
func checkRounds(s Slot) error {
	rounds := s.BottomMM / 2
	switch s.Shape {
	case RoundBottom:
	case Pear:
		rounds += s.crownMM()
	default:
		return nil
	}
	if s.DepthMM > rounds {
		return nil
	}
	return wrong("DepthMM", fmt.Sprintf("is %g mm", s.DepthMM),
		"what is round of the slot alone is %.4g mm deep: measure the depth to the deepest point, the round included", rounds)
}

// checkInsulation tests the thicknesses alone; whether they fit shows in Measure.
func checkInsulation(ins Insulation) error {
	if ins.Layers < 0 || ins.Layers > 2 {
		return wrong("Layers", fmt.Sprintf("is %d", ins.Layers), "give 1 or 2 coil sides in a slot")
	}
	return firstOf(
		within("LinerMM", " mm", ins.LinerMM, 0, longestMM, true),
		within("WedgeMM", " mm", ins.WedgeMM, 0, longestMM, true),
		within("SeparatorMM", " mm", ins.SeparatorMM, 0, longestMM, true))
}

// finite says that v is an ordinary number above zero.
func finite(v float64) bool { return v > 0 && !math.IsInf(v, 1) }
