package winding_test

import (
	"testing"

	"slotwright/winding"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// At 2500 m a guessed rise is 15 % higher, with a fan as well as without; a typed one is as measured there.
func TestAGuessedRiseGoesByTheAirOfThePlace(t *testing.T) {
	for _, cooling := range []string{"open", "closed", "fan"} {
		low := load(t, "hub-in-wind.toml")
		low.Machine.Cooling = cooling
		high := low
		high.Drive.AltitudeM = quantity.Known(2500)
		a, b := winding.Evaluate(low).Machine.RisePerWatt, winding.Evaluate(high).Machine.RisePerWatt
		assert.InEpsilon(t, 1.15*a.Value, b.Value, 1e-9, cooling)

		low.Machine.KelvinPerWatt, high.Machine.KelvinPerWatt = quantity.Known(0.7), quantity.Known(0.7)
		a, b = winding.Evaluate(low).Machine.RisePerWatt, winding.Evaluate(high).Machine.RisePerWatt
		assert.Equal(t, a.Value, b.Value, cooling)
	}
}
