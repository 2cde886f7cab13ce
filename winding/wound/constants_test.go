package wound

import (
	"testing"

	"slotwright/winding/published"
)

// Limits of the trade that no table has.
func TestConstants(t *testing.T) {
	const (
		practice = published.Practice
		choice   = published.Choice
	)
	published.Constants(t, []published.Constant{
		{What: "pairs of volts off their mean, a part", Want: 0.015, Have: VoltsBalance, Source: practice},
		{What: "ohms or volts far off, %", Want: 10, Have: farOff, Source: practice},
		{What: "warmer than was guessed, %", Want: 25, Have: muchWarmer, Source: practice},
		{What: "times as warm as any cooling makes", Want: 2.5, Have: shortOver, Source: practice},
		{What: "all pairs off together, a part", Want: 0.25, Have: offTogether, Source: practice},
		{What: "volts that a phase with a turned coil lacks, a part", Want: 0.1, Have: fewVolts, Source: practice},
		{What: "times the plan that no join makes", Want: 20, Have: farBeyond, Source: practice},
		{What: "turns miscounted, a part", Want: 0.3, Have: mostMiscounted, Source: practice},
		{What: "coils of a phase up to which one changes the shares most", Want: 4, Have: fewCoils, Source: choice},
		{What: "faults as near as the nearest, in squares of the room", Want: 0.25, Have: asNear, Source: choice},
	})
}
