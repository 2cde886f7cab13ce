package card

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"slotwright/winding/job"

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
	assert.Contains(t, sheet, "bridge, held to 20 A by a regulator; ROTOR at most 2.4 A; turned by")
	assert.Contains(t, sheet, "REGULATOR: it is what protects this winding; without it 25.8 A would flow.")

	free := workOut(strings.Replace(string(text), "most_current", "# most_current", 1))
	sheet = flat(Text(free.b, &free.o, 0, Options{}))
	assert.NotContains(t, sheet, "held to")
	assert.NotContains(t, sheet, "REGULATOR")
}

// The card states the rotor's intended current where that is not what the battery drives: with another
// the winding does not perform as planned. If the battery feeds the rotor, nothing has to be set.
func TestTheCardTellsOfTheFieldCurrent(t *testing.T) {
	text, err := os.ReadFile("../../testdata/jobs/engine-held.toml")
	require.NoError(t, err)
	free := strings.Replace(string(text), "most_current", "# most_current", 1)
	require.Contains(t, free, "current_a = 2.4\n")
	for said, want := range map[string]string{
		"current_a = 1.2": "; ROTOR set to 1.2 A; turned by",
		"supply_v = 6":    "; ROTOR fed from 6 V of its own; turned by",
		"":                "",
	} {
		d := strings.Replace(free, "current_a = 2.4\n", said+"\n", 1)
		require.Empty(t, job.Parse(d).Problems(), said)
		w := workOut(d)
		sheet := flat(Text(w.b, &w.o, 0, Options{}))
		if want == "" {
			assert.NotContains(t, sheet, "ROTOR")
			continue
		}
		assert.Contains(t, sheet, want)
	}
}

// Legs find their own speed against each winding: the first run states it, since nobody pedals at the
// usual speed against a winding that holds them below it.
func TestTheFirstRunTellsTheSpeedThatLegsComeTo(t *testing.T) {
	text := strings.Replace(job.Example().Text(), `kind = "water"`, `kind = "pedals"`, 1)
	w := workOut(text)
	p := w.o.Trials[1].Operating[1]
	require.Positive(t, p.DriveRPM)
	sheet := flat(Text(w.b, &w.o, 1, Options{}))
	assert.Contains(t, sheet, fmt.Sprintf("net amps, full effort ~%.2f A, %.0f rpm", p.NetAmps, p.DriveRPM))
}
