package job

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a person reads off a rule or a meter is understood; what could mean two things is not.
func TestNumbersAsTheyStandOnRules(t *testing.T) {
	for text, want := range map[string]float64{
		"7/16": 0.4375, "1 3/16": 1.1875, "1-3/16": 1.1875, `7/16"`: 0.4375, "~7/16 in": 0.4375,
		"0,204": 0.204, "0,204 ohm": 0.204, "1,2": 1.2, "-0,125": -0.125,
	} {
		q, err := parseQuantity(text)
		require.NoError(t, err, text)
		assert.InDelta(t, want, q.value, 1e-12, text)
	}
	for _, text := range []string{"1,204", "7/0", "7/16/2", "/16", "7/", "1 2"} {
		_, err := parseQuantity(text)
		assert.Error(t, err, text)
	}
}

// Counts that are told in volts or as a throw are answered by how to count.
func TestCountsAreAnsweredByWhatToCount(t *testing.T) {
	for _, c := range []struct{ text, says string }{
		{"[battery]\ncells = \"24 V\"\n", "24 V is 12 or 8"},
		{"[machine]\nspan = \"3 slots\"\n", "throw of 1 to 4 is 3"},
	} {
		p := Parse("format = 1\n" + c.text).Problems()
		require.Len(t, p, 1, c.text)
		assert.Contains(t, p[0].Error(), c.says)
	}
}

// What is counted has no ±; the turns of an old coil, which are guessed from what was cut, do.
func TestACountHasNoPlusMinus(t *testing.T) {
	for key, typed := range map[string]string{"machine.slots": "36±1", "machine.poles": "12 ± 10 %", "battery.cells": "6±1"} {
		table, name, _ := strings.Cut(key, ".")
		d := Parse("format = 1\n[" + table + "]\n" + name + " = \"" + typed + "\"\n")
		require.Len(t, d.Problems(), 1, key)
		assert.Contains(t, d.Problems()[0].Error(), "a count, which has no ±", key)
		assert.Contains(t, d.Problems()[0].Error(), "alone", key)
	}
	d := Parse("format = 1\n[machine]\nslots = \"~36\"\n[old]\nturns = \"11 ±1\"\n")
	assert.Empty(t, d.Problems())
	assert.InDelta(t, 1, d.Job().Old.Turns.PlusMinus, 0)
}
