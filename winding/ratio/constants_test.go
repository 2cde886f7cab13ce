package ratio

import (
	"testing"

	"slotwright/winding/published"
)

func TestConstants(t *testing.T) {
	const practice = published.Practice
	published.Constants(t, []published.Constant{
		{What: "efficiency of a belt", Want: 0.95, Have: defaultBeltEfficiency, Source: "V-belts 0.92 to 0.95, US DOE tip sheet and field literature"},
		{What: "efficiency of a chain or gear", Want: 0.97, Have: defaultChainEfficiency, Source: practice},
		{What: "pulleys apart, a part", Want: 0.05, Have: saidApart, Source: practice},
		{What: "tachometers and pulleys apart, a part", Want: 0.10, Have: readApart, Source: practice},
	})
}
