package drawing

import (
	"fmt"
	"strings"

	"slotwright/winding/quantity"
)

// Paper is a size of sheet, upright, in mm.
type Paper struct {
	Name          string
	Width, Height float64
}

// The papers there are: A4 of ISO 216, Letter of ANSI/ASME Y14.1 (8.5 x 11 in).
var (
	A4     = Paper{"A4", 210, 297}
	Letter = Paper{"Letter", 215.9, 279.4}
)

// ParsePaper reads a paper's name, in any case.
func ParsePaper(name string) (Paper, error) {
	for _, p := range []Paper{A4, Letter} {
		if strings.EqualFold(name, p.Name) {
			return p, nil
		}
	}
	return Paper{}, fmt.Errorf("read %q, expected a4 or letter", name)
}

// PaperFor is the paper when none is asked for: Letter where figures are in inches, else A4.
func PaperFor(units quantity.Choice) Paper {
	if units.Inch {
		return Letter
	}
	return A4
}

// across is the paper in landscape.
func (p Paper) across() Paper { return Paper{p.Name, p.Height, p.Width} }

// marginMM is what a desk printer cannot reach, with some to spare (common practice, no source).
const marginMM = 10

// inside is the printable part of the paper.
func (p Paper) inside() box {
	return box{marginMM, marginMM, p.Width - marginMM, p.Height - marginMM}
}
