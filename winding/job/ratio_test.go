package job

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// How a ratio was written is kept with it: turns that were counted, of the whole; stages, each with its
// own slip; sizes of two wheels, which are a stage.
func TestTheFormOfARatioIsKept(t *testing.T) {
	for typed, want := range map[string]RatioForm{
		"6": {}, "3 1/2": {}, "~6 ±0.1": {}, "1:3": {Sides: true}, "1/3": {Sides: true, Slash: true}, "2:5": {Sides: true}, "4:10": {Sides: true},
		"5:10": {Stages: 1, Sides: true}, "100/600": {Stages: 1, Sides: true, Slash: true}, "14:48 ±1 %": {Stages: 1, Sides: true},
		"6 x 5.714": {Stages: 2}, "3 × 1:2.5": {Stages: 2, Sides: true}, "48/14 x 48:12": {Stages: 2, Sides: true, Slash: true}, "2*2*2": {Stages: 3},
	} {
		assert.Equal(t, want, Parse("[drive]\nratio = \""+typed+"\"\n").Job().Drive.RatioAs, typed)
	}
	assert.Equal(t, RatioForm{}, Parse("[drive]\nratio = 6\nslip = 0.02\n").Job().Drive.RatioAs)
}
