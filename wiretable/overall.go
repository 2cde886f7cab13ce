package wiretable

import "sort"

// Overall is a diameter over the enamel.
//
// Nominal: MW 1000 prints it. IEC 60317-0-1 prints a minimum increase and a maximum overall, and the
// nominal is taken midway between the two. Maximum: the largest overall diameter that the standard
// allows; it is what must pass a slot mouth.
//
// Between two table rows both are linear in the bare diameter; the rows are so close that the error is
// below the last digit printed. Thinner than the thinnest row the ratio of overall to bare is held,
// thicker than the thickest the increase is held, and Basis says "extrapolated".
type Overall struct {
	NominalMM float64
	MaxMM     float64
	// Basis says where the figures come from: a table row, between rows, or
	// beyond the table.
	Basis string
}

// point is one row of a build: the diameters in mm, and where they come from.
type point struct {
	bareMM    float64
	nominalMM float64
	maxMM     float64
	basis     string
}

// curve is the rows of one build from thin to thick.
type curve struct {
	points  []point
	between string
	thinner string
	thicker string
}

var curves = fillCurves()

// onRowMM is how near a bare diameter must be to a row to be that row: far below what any gauge of the
// table resolves, far above rounding of floats.
const onRowMM = 1e-7

const bareWireBasis = "bare wire, no enamel"

// overallFor finds the overall diameter of a bare one in a build.
func overallFor(b Build, bareMM float64) Overall {
	if b >= BareWire {
		return Overall{NominalMM: bareMM, MaxMM: bareMM, Basis: bareWireBasis}
	}
	c := &curves[b]
	i := c.seek(bareMM, func(p *point) float64 { return p.bareMM })
	if i < len(c.points) && c.points[i].bareMM-bareMM < onRowMM {
		return c.points[i].overall()
	}
	if i > 0 && bareMM-c.points[i-1].bareMM < onRowMM {
		return c.points[i-1].overall()
	}
	switch i {
	case 0:
		ratio := bareMM / c.points[0].bareMM
		return Overall{ratio * c.points[0].nominalMM, ratio * c.points[0].maxMM, c.thinner}
	case len(c.points):
		last := &c.points[i-1]
		more := bareMM - last.bareMM
		return Overall{last.nominalMM + more, last.maxMM + more, c.thicker}
	}
	lo, hi := &c.points[i-1], &c.points[i]
	t := (bareMM - lo.bareMM) / (hi.bareMM - lo.bareMM)
	return Overall{
		NominalMM: lo.nominalMM + t*(hi.nominalMM-lo.nominalMM),
		MaxMM:     lo.maxMM + t*(hi.maxMM-lo.maxMM),
		Basis:     c.between,
	}
}

// bareUnder is the inverse of overallFor: the bare diameter whose nominal overall is the one given.
func bareUnder(b Build, overallMM float64) float64 {
	if b >= BareWire {
		return overallMM
	}
	c := &curves[b]
	i := c.seek(overallMM, func(p *point) float64 { return p.nominalMM })
	switch i {
	case 0:
		return overallMM * c.points[0].bareMM / c.points[0].nominalMM
	case len(c.points):
		last := &c.points[i-1]
		return last.bareMM + overallMM - last.nominalMM
	}
	lo, hi := &c.points[i-1], &c.points[i]
	t := (overallMM - lo.nominalMM) / (hi.nominalMM - lo.nominalMM)
	return lo.bareMM + t*(hi.bareMM-lo.bareMM)
}

// beyondRows reports an overall diameter outside the rows of a build.
func beyondRows(b Build, overallMM float64) bool {
	if b >= BareWire {
		return false
	}
	rows := curves[b].points
	return overallMM < rows[0].nominalMM-onRowMM || overallMM > rows[len(rows)-1].nominalMM+onRowMM
}

// seek is the index of the first row not below mm in the given column.
func (c *curve) seek(mm float64, column func(*point) float64) int {
	return sort.Search(len(c.points), func(i int) bool { return column(&c.points[i]) >= mm })
}

func (p *point) overall() Overall {
	return Overall{NominalMM: p.nominalMM, MaxMM: p.maxMM, Basis: p.basis}
}
