package shelf

import (
	"os"
	"testing"

	"slotwright/tui/tuitest"
	"slotwright/winding/quantity"
	"slotwright/winding/shelf"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// If two jobs have the same name and there is no room for the column of files, their files replace the
// names.
func TestJobsOfTheSameNameAreToldApart(t *testing.T) {
	s, v, _ := onShelf(t, 80, 21)
	text, err := os.ReadFile("planned.toml")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile("planned-2.toml", text, 0o600))
	tuitest.Press(t, v, s, 80, 21, "f8")
	tuitest.Work(t, s)
	frame := tuitest.Draw(t, v, s, 80, 21)
	assert.Contains(t, frame, "planned.toml  ")
	assert.Contains(t, frame, "planned-2.toml  ")
	assert.Contains(t, frame, "First from the yard", "a name that is one job's stays")
	wide := tuitest.Draw(t, v, s, 120, 37)
	assert.Regexp(t, `Fourth from the yard .* planned-2\.toml`, wide)
}

// What the bench learns is in the preferred units.
func TestTheBenchIsSaidInTheUnitsLiked(t *testing.T) {
	b := &shelf.Bench{Fills: []shelf.Lesson{{FromMM: 1, ToMM: 1.5, Fill: quantity.Of(0.7)}}, Rises: []shelf.Warmth{{Machine: "mill", RisePerWatt: quantity.Of(0.9)}}}
	assert.Contains(t, learned(quantity.Choice{}, b)[0], "1.00 to 1.50 mm bare")
	assert.Contains(t, learned(quantity.Choice{}, b)[1], "mill: 0.90 K/W")
	liked := learned(quantity.Choice{Inch: true, Fahrenheit: true}, b)
	assert.Contains(t, liked[0], "0.0394 to 0.0591 in bare", "1 and 1.5 over 25.4")
	assert.Contains(t, liked[1], "mill: 1.6 °F/W", "0.9 times 1.8")
}
