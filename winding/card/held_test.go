package card

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Who winds from the card is told of the regulator that the winding depends on, and of none where
// nothing holds the current.
func TestTheCardTellsOfTheRegulator(t *testing.T) {
	text, err := os.ReadFile("../../testdata/jobs/engine-held.toml")
	require.NoError(t, err)
	w := workOut(string(text))
	amps, guards := w.o.Trials[0].Unguarded()
	require.True(t, guards)
	assert.Greater(t, amps, w.o.Trials[0].LimitAmps.Value)
	sheet := flat(Text(w.b, &w.o, 0, Options{}))
	assert.Contains(t, sheet, "bridge, held to 20 A by a regulator; turned by")
	assert.Contains(t, sheet, "REGULATOR: it is what protects this winding; without it 25.8 A would flow.")

	free := workOut(strings.Replace(string(text), "most_current", "# most_current", 1))
	sheet = flat(Text(free.b, &free.o, 0, Options{}))
	assert.NotContains(t, sheet, "held to")
	assert.NotContains(t, sheet, "REGULATOR")
}
