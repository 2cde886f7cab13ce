package battery

import (
	"testing"

	"slotwright/winding/published"

	"github.com/stretchr/testify/assert"
)

func TestConstants(t *testing.T) {
	const (
		remco = "Remco battery guide: lead-acid at 25 °C, float 2.25 to 2.30, absorption 2.40 to 2.45 V a cell, at most 0.3 A for each Ah"
		lfp   = "a maker's guide to 12.8 V lithium iron phosphate: absorption 14.2, float 13.5 V"
		apl   = "a maker's manual, APL48-50LFP: 0.5 A for each Ah"
	)
	rows := []published.Constant{
		{What: "copper of a cable, Ω·m", Want: 1.7241e-8, Have: copperOhmM, Source: "IEC 60028"},
		{What: "copper of a cable, inferred zero", Want: 234.5, Have: copperZeroC, Source: "IEC 60028"},
		{What: "share of a fuse for what never stops", Want: 1.25, Have: continuous, Source: "U.S. National Electrical Code 210.20 and 215.3, from memory"},
		{What: "smallest battery, Ah", Want: 0.001, Have: smallestAh, Source: published.Choice},
		{What: "most V a cell, flooded", Want: 2.45, Have: mostPerCell[Flooded], Source: remco},
		{What: "most V a cell, agm", Want: 2.45, Have: mostPerCell[AGM], Source: remco},
		{What: "most V a cell, gel", Want: 2.40, Have: mostPerCell[Gel], Source: published.Memory},
		{What: "most V a cell, lfp", Want: 3.65, Have: mostPerCell[LFP], Source: "several makers"},
	}
	for _, c := range []struct {
		kind                    Chemistry
		rest, absorption, float float64
		rate, ohmAh, cells      float64
		source, rateSource      string
	}{
		{Flooded, 2.10, 2.42, 2.27, 0.2, 0.08, 6, remco, published.Practice},
		{AGM, 2.13, 2.42, 2.27, 0.3, 0.06, 6, remco, remco},
		{Gel, 2.13, 2.35, 2.25, 0.2, 0.08, 6, published.Memory, published.Memory},
		{LFP, 3.30, 3.55, 3.375, 0.5, 0.05, 4, lfp, apl},
		{Custom, 0, 0, 0, 0, 0, 0, "given by the person", "given by the person"},
	} {
		have, name := cells[c.kind], c.kind.String()
		rows = append(rows,
			published.Constant{What: name + ", V a cell at rest", Want: c.rest, Have: have.rest, Source: published.Memory},
			published.Constant{What: name + ", V a cell at absorption", Want: c.absorption, Have: have.absorption, Source: c.source},
			published.Constant{What: name + ", V a cell at float", Want: c.float, Have: have.float, Source: c.source},
			published.Constant{What: name + ", A for each Ah", Want: c.rate, Have: have.rate, Source: c.rateSource},
			published.Constant{What: name + ", Ω·Ah a cell", Want: c.ohmAh, Have: have.ohmAh, Source: published.Practice},
			published.Constant{What: name + ", cells of a 12 V battery", Want: c.cells, Have: float64(CellsOf12V(c.kind)), Source: "the makers' labels"})
	}
	published.Constants(t, rows)
	assert.Len(t, cells, len(Chemistries()))
}

// Every common fuse size, and the current up to which each is recommended: 1/1.25 of it. Common
// practice, no source.
func TestEverySizeOfFuse(t *testing.T) {
	shop := []float64{1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 125, 150, 175, 200, 250, 300, 400, 500}
	assert.Equal(t, shop, fuses[:])
	last := 0.0
	for _, size := range shop {
		assert.Equal(t, size, FuseAmps(0.8*size), "%g A carry 0.8 of it for ever", size)
		assert.Equal(t, size, FuseAmps(0.8*last+0.01), "just over what the size before carries")
		last = size
	}
	assert.Zero(t, FuseAmps(401), "no such fuse")
}
