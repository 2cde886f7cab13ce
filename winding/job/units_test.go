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
		"[machine]\nambient_f = 70\nbore_mm = 90\n":                         {Fahrenheit: true},
	} {
		assert.Equal(t, want, Parse(text).Units(), text)
	}
}
