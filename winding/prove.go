package winding

import "math"

// What a finished winding is held to, from print: testdata/bench has the rows.

const (
	// BalanceLimit is how far the ohms of a pair of leads may be from their mean, as a part
	// of it, in a random-wound winding (ANSI/EASA AR100-2020, as quoted by PdMA 2021).
	BalanceLimit = 0.02
	// InsulationVolts is the DC voltage to test insulation to iron with, in a winding of less
	// than 1000 V (IEEE 43, as quoted by Keysight 2014).
	InsulationVolts = 500.0

	insulationMegohms40 = 5.0  // random-wound, one minute, 40 °C (AR100-2020, IEEE 43-2013)
	insulationHalves    = 10.0 // kelvins that halve it (IEEE 43-2013)
)

// InsulationMegohms is the least that a random-wound winding should have to iron after a
// minute, in MΩ, at a winding temperature in °C: 5 at 40 °C, twice that for every 10 K
// colder (ANSI/EASA AR100-2020, IEEE 43-2013).
func InsulationMegohms(c float64) float64 {
	return insulationMegohms40 * math.Exp2((40-c)/insulationHalves)
}
