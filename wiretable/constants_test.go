package wiretable

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every constant behind a figure of wire, written out, with its source.
func TestConstants(t *testing.T) {
	const choice = "our own choice"
	for _, c := range []struct {
		what       string
		want, have float64
		source     string
	}{
		{"copper, S/m at 20 °C", 58e6, copperSiemensPerM, "IEC 60028"},
		{"copper, kg/m³", 8890, copperDensity, "IEC 60028"},
		{"copper, inferred zero, °C", -234.5, copperZeroC, "IEEE Std 112; 20 − 1/0.00393, NBS Handbook 100"},
		{"copper, J/kgK", 385, copperSpecific, "handbooks, from memory"},
		{"aluminium, J/kgK", 897, aluminiumSpecific, "handbooks, from memory"},
		{"aluminium over copper, conductivity", 0.61, aluminiumShareIACS, "IEC 60889, from memory"},
		{"aluminium, kg/m³", 2703, aluminiumDensity, "IEC 60889, from memory"},
		{"aluminium, inferred zero, °C", -228.1, aluminiumZeroC, "IEC 60889, from memory"},
		{"reference temperature, °C", 20, referenceC, "IEC 60028"},
		{"permeability of space, H/m", 4e-7 * math.Pi, vacuumPermeability, "by definition until 2019"},
		{"mm in an inch", 25.4, mmPerInch, "by definition, 1959"},
		{"m in a foot", 0.3048, footMetres, "by definition, 1959"},
		{"kg in a pound", 0.45359237, poundKg, "by definition, 1959"},
		{"No. 36 AWG, mm", 0.127, awgFormulaMM(36), "ASTM B258: 0.005 in"},
		{"thinnest bare wire read, mm", 0.01, minBareMM, choice},
		{"thickest bare wire read, mm", 15, maxBareMM, choice},
		{"enamel over the thickest, mm", 1, enamelRoomMM, choice},
		{"demerit of a further strand", 0.15, strandDemerit, choice},
		{"demerit of a second size", 0.3, mixDemerit, choice},
		{"demerit of room", 1, roomDemerit, choice},
		{"thicker over thinner in one bundle, at most", 2, mixRatio, "common practice, no source"},
		{"strands in hand, at most", 6, mostStrands, "common practice, no source"},
		{"area of a stand-in, within", 0.03, usualTolerance, choice},
		{"area of a stand-in, at most within", 0.5, widestTolerance, choice},
		{"stand-ins listed", 24, usualSubstitutes, choice},
		{"strands of one kind that are read", 99, MaxBundleCount, choice},
	} {
		assert.Equal(t, c.want, c.have, "%s (%s)", c.what, c.source)
		assert.NotEmpty(t, c.source, c.what)
	}
}

// Four of 24 AWG for one of 18, heavy: MW 1000 prints 0.02224 and 0.0431 in over the enamel
// (testdata/wire/nema_build.csv), so they take 4·0.02224²/0.0431² = 1.065 of the room with
// 4·20.1²/40.3² = 0.995 of the metal.
func TestRoomOfStandIns(t *testing.T) {
	g := mustParse(t, "18 AWG")
	found := false
	for _, e := range Describe(g, Heavy, Copper, 20, AWG).Equal {
		b, err := ParseBundle(e.Bundle)
		assert.NoError(t, err)
		room := 0.0
		for _, s := range b.Parts() {
			room += float64(s.Count) * sq(s.Gauge.OverallMM(Heavy).NominalMM)
		}
		assert.InDelta(t, 100*(room/sq(g.OverallMM(Heavy).NominalMM)-1), e.RoomPercent, 1e-9, e.Bundle)
		assert.Less(t, math.Abs(e.RoomPercent), 40.0, "%s: so much wire of the same area takes nearly the same room", e.Bundle)
		if e.Bundle == "4 × 24 AWG" {
			found = true
			assert.InDelta(t, 100*(4*sq(0.02224)/sq(0.0431)-1), e.RoomPercent, 0.05)
			assert.InDelta(t, 100*(4*sq(20.1)/sq(40.3)-1), e.Percent, 0.05)
		}
	}
	assert.True(t, found)
}
