package job

import (
	"testing"

	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

func TestUnitsOfMostOfTheJob(t *testing.T) {
	for text, want := range map[string]quantity.Choice{
		"": {},
		"[machine]\nbore_mm = 90\nambient_c = 20\n":                         {},
		"[machine]\nbore_in = 4.5\nstack_in = 1.25\n[slot]\nmouth_mm = 3\n": {Inch: true},
		"[machine]\nbore_in = 4.5\nstack_mm = 30\n":                         {},
		"[machine]\nbore_in = 4.5\nair_gap_mil = 25\nstack_mm = 30\n":       {Inch: true},
		"[machine]\nambient_f = 70\nbore_mm = 90\n":                         {Fahrenheit: true},
	} {
		assert.Equal(t, want, Parse(text).Units(quantity.Choice{}), text)
	}
	liked := quantity.Choice{Inch: true, Fahrenheit: true}
	assert.Equal(t, liked, Parse("[machine]\nslots = 36\n").Units(liked), "nothing is typed in any unit")
	assert.Equal(t, quantity.Choice{Fahrenheit: true}, Parse("[machine]\nbore_mm = 90\n").Units(liked))
	assert.Equal(t, quantity.Choice{Inch: true}, Parse("[machine]\nambient_c = 20\n").Units(liked))
}
