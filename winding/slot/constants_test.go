package slot

import (
	"testing"

	trade "slotwright/winding/published"
)

func TestConstants(t *testing.T) {
	const choice = trade.Choice
	trade.Constants(t, []trade.Constant{
		{What: "depth of a slot over its width", Want: 2, Have: DefaultDepthPerWidth, Source: trade.Practice},
		{What: "mouth to spare below which it goes slowly, mm", Want: 0.3, Have: EasyMouthSpareMM, Source: trade.Practice},
		{What: "what a turn may be over and still fit", Want: 1e-9, Have: FitTolerance, Source: choice},
		{What: "permeability of space, H/m", Want: 1.25663706212e-6, Have: mu0, Source: "CODATA 2018"},
		{What: "thinnest wire packed, mm", Want: 0.005, Have: thinnestMM, Source: choice},
		{What: "most wires packed", Want: 20000, Have: MostCircles, Source: choice},
		{What: "longest side, mm", Want: 1000, Have: longestMM, Source: choice},
		{What: "largest slot, mm²", Want: 100000, Have: largestMM2, Source: choice},
		{What: "flattest slot", Want: 0.1, Have: leastRatio, Source: choice},
		{What: "deepest slot", Want: 20, Have: greatestRatio, Source: choice},
		{What: "straight pieces of a round bottom", Want: 24, Have: arcSteps, Source: choice},
		{What: "steps of the bound", Want: 64, Have: boundSteps, Source: choice},
		{What: "slack of the bound", Want: 1 + 5e-4, Have: chordSlack, Source: choice},
	})
}
