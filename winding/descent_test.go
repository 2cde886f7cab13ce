package winding

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// By hand, 100 kWh being asked: a direction ends with the third size in a row that is past the best,
// brings no more than the one before and less than 50; whatever breaks the row begins it anew.
func TestThreeThinnerSizesInARowThatBringLessEndADirection(t *testing.T) {
	type size struct {
		brings float64
		passed bool
	}
	ends := func(list ...size) int {
		d := descent{before: 1000, asked: 100}
		for i, s := range list {
			if d.take(s.brings, s.passed); d.over() {
				return i + 1
			}
		}
		return 0
	}
	assert.Equal(t, 3, ends(size{40, true}, size{30, true}, size{20, true}, size{10, true}), "the third, not the second nor the fourth")
	assert.Equal(t, 0, ends(size{40, true}, size{30, true}), "two are too few")
	assert.Equal(t, 3, ends(size{40, true}, size{40, true}, size{40, true}), "no more is enough")
	assert.Equal(t, 6, ends(size{40, true}, size{30, true}, size{31, true}, size{30, true}, size{29, true}, size{28, true}), "one that brings more begins anew")
	assert.Equal(t, 4, ends(size{50, true}, size{49, true}, size{48, true}, size{47, true}), "half of what is asked is not less than half")
	assert.Equal(t, 4, ends(size{40, false}, size{39, true}, size{38, true}, size{37, true}), "short of the best it may still rise")
}
