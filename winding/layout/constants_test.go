package layout

import (
	"testing"

	"slotwright/winding/published"
)

func TestConstants(t *testing.T) {
	const choice = published.Choice
	published.Constants(t, []published.Constant{
		{What: "a subharmonic that is told, of the working wave", Want: 0.05, Have: subharmonicShare, Source: published.Practice},
		{What: "kw3 that is told for a delta", Want: 0.05, Have: thirdInDelta, Source: published.Practice},
		{What: "kw1 that is called weak", Want: 0.80, Have: weakFactor, Source: published.Practice},
		{What: "phases that are equal, %", Want: 1e-6, Have: equalPercent, Source: choice},
		{What: "most slots", Want: 1200, Have: MaxSlots, Source: choice},
		{What: "most poles", Want: 1200, Have: MaxPoles, Source: choice},
		{What: "most turns", Want: 1e6, Have: MaxTurns, Source: choice},
		{What: "slots either way that are tried for one that works", Want: 24, Have: nearSlots, Source: choice},
		{What: "poles either way that are tried for one that works", Want: 16, Have: nearPoles, Source: choice},
	})
}
