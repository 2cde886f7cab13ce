package tui

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The number of keys from a blank job to the first net amps, with the values one has at the bench, a
// bare enter only to accept a dim number, and no enter between the letter of a list and a figure.

// A wheel hub turned by the wind: 12 slots, 14 poles, magnets round the outside.
func TestKeysFromABlankHubToNetAmps(t *testing.T) {
	h := newHand(t, blankJob(), 100, 30)
	h.begins("iron")
	h.give("12", "14", "", "", "")
	h.at("Rotor runs")
	h.give("o80", "30", "70")
	h.begins("old winding")
	h.give("40")
	h.at("Old winding: wire")
	h.give("0.8mm", ".9", "m300", "12")
	h.begins("first trial")
	h.at("Trial winding: turns")
	h.give("40", "0.6mm")
	h.begins("gap and wind")
	h.give(".8", "", "w2")
	h.sees(`net amps, wind 5 m/s +~\d`)
	assert.LessOrEqual(t, h.total(), 55)
	j := h.leaves().s.Job()
	assert.Equal(t, "outside", j.Machine.Rotor)
	assert.Equal(t, "magnets", j.Field.Kind)
	assert.Equal(t, "wind", j.Drive.Kind)
	assert.Equal(t, 80.0, j.Machine.BoreMM.Value)
	assert.Equal(t, 300.0, j.Spins[0].RPM.Value)
	assert.Equal(t, 2.0, j.Drive.RotorM.Value)
}

// A claw-pole alternator behind an engine and a belt, with its plate: 56 figures and letters to type in
// 23 fields, an enter after each, and one where the defaults of phases and span hold.
func TestKeysFromABlankClawPoleToNetAmps(t *testing.T) {
	h := newHand(t, blankJob(), 100, 30)
	h.begins("iron")
	h.give("36", "12", "", "", "1", "92", "36", "84")
	h.begins("old winding")
	h.give("9", "1.6mm")
	h.sees(`Old winding: wire +1\.6mm +◆ single `)
	h.give(".18", "w3.4", "1000", "14", "3")
	h.begins("first trial")
	h.at("Trial winding: turns")
	h.give("18", "a17")
	h.begins("gap and plate")
	h.give(".4", "14", "35", "4000")
	h.begins("engine and belt")
	h.at("Drive")
	h.give("e", "b140", "60", "500")
	h.sees(`net(?: amps)?, engine 500 rpm +~\d`)
	assert.LessOrEqual(t, h.total(), 81)
	j := h.leaves().s.Job()
	assert.Equal(t, "wound", j.Field.Kind)
	assert.Equal(t, 3.4, j.Field.Ohms.Value)
	assert.Equal(t, "belt", j.Drive.Transmission)
	assert.Equal(t, 140.0, j.Drive.DriverMM.Value)
	assert.Equal(t, "17 AWG", j.Trials[0].Gauge.String())
}

// The connection of the old winding is asked before its ohms: one letter makes it a delta, whose
// correct ohms are then no longer doubted; a figure typed there skips it for the ohms.
func TestTheOldConnectionIsAskedBeforeItsOhms(t *testing.T) {
	h := newHand(t, blankJob(), 100, 30)
	h.begins("iron")
	h.give("36", "12", "", "", "1", "92", "36", "84")
	h.begins("old winding")
	h.give("9", "1.6 mm")
	h.at("Old winding: connection")
	h.sees(`Old winding: connection ◂ \(star\)`)
	h.give("d.042", "w3.4")
	h.screen("Machine")
	m := h.leaves()
	j := m.s.Job()
	assert.Equal(t, "delta", j.Old.Connection.String())
	assert.Equal(t, 0.042, j.Old.LeadOhms.Value)
	for _, f := range m.s.Outcome().Findings {
		assert.NotContains(t, f.Text, "the old winding's ohms make its mean turn")
	}
}

// Strands are typed with the wire: 2 x 0.8 mm is two in hand, whose field then is among the first
// things; a wire alone says that it is taken as single.
func TestStrandsAreTypedWithTheWire(t *testing.T) {
	h := newHand(t, blankJob(), 100, 30)
	h.begins("wire")
	h.to("down", "Old winding: wire")
	h.give("2x0.8mm")
	h.sees(`Old winding: wire +0\.8mm +◆`, `Old winding: strands +2 +◆`)
	h.to("up", "Old winding: strands")
	h.key("ctrl+k")
	h.sees(`Old winding: wire +0\.8mm +◆ single `)
	assert.False(t, h.leaves().s.Job().Old.Strands.Given())
}
