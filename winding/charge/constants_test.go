package charge

import (
	"testing"

	"slotwright/winding/published"
)

func TestConstants(t *testing.T) {
	const choice = published.Choice
	published.Constants(t, []published.Constant{
		{What: "kT/q a kelvin, V", Want: 1.380649e-23 / 1.602176634e-19, Have: voltsPerKelvin, Source: "SI, 2019, by definition"},
		{What: "strongest field", Want: 1e9, Have: fieldMax, Source: choice},
		{What: "least reactance", Want: 1e-9, Have: leastReactance, Source: choice},
		{What: "least current of a curved diode, A", Want: 1e-4, Have: leastDiodeAmps, Source: choice},
		{What: "pieces of a cycle at most", Want: 12, Have: maxPieces, Source: choice},
		{What: "steps to an event at most", Want: 10000, Have: maxSteps, Source: choice},
		{What: "least of the greatest line EMF, over the peak of a phase", Want: 1.5, Have: mayPulse, Source: "√3·cos 30°"},
		{What: "looks for an event at most", Want: 6, Have: maxLooks, Source: choice},
		{What: "rounds of Newton's method at most", Want: 12, Have: maxRounds, Source: choice},
		{What: "part of the miss two rounds before from which a search is given up", Want: 0.6, Have: stuck, Source: choice},
		{What: "squares of a mode's parts over the integral of its square at most", Want: 1000, Have: mostLost, Source: choice},
		{What: "miss from which one more round is the last", Want: 3e-7, Have: nearEnough, Source: choice},
	})
}
