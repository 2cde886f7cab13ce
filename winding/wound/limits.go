package wound

import (
	"math"

	"slotwright/winding/quantity"
)

// Published limits for a finished winding: testdata/bench has the rows.

const (
	// BalanceLimit is how far the ohms of a pair of leads may be from their mean, relative, in a
	// random-wound winding (ANSI/EASA AR100-2020, as quoted by PdMA 2021).
	BalanceLimit = 0.02
	// VoltsBalance is how far the volts of a pair of leads may be from their mean, relative, read with
	// one meter at one speed (common practice, no source; pairs.go has the reason).
	VoltsBalance = 0.015
	// InsulationVolts is the DC voltage to test insulation to iron with, in a winding of less
	// than 1000 V (IEEE 43, as quoted by Keysight 2014).
	InsulationVolts = 500.0

	// farOff is how far, in per cent, a finished winding's ohms or volts may be from the prediction before
	// that is reported (common practice, no source).
	farOff = 10.0
	// muchWarmer is by how much more, in per cent, a finished winding may rise per watt than was guessed
	// (common practice, no source).
	muchWarmer = 25.0

	// ProofLimit is how far the ohms or volts of a finished winding may be from a prediction of unknown
	// ±, ProofLeast the least that is always allowed, for meter, speed and hand, both relative (common
	// practice, no source).
	ProofLimit = farOff / 100
	ProofLeast = 0.05

	insulationMegohms40 = 5.0  // random-wound, one minute, 40 °C (AR100-2020, IEEE 43-2013)
	insulationHalves    = 10.0 // kelvins that halve it (IEEE 43-2013)
)

// InsulationMegohms is the least that a random-wound winding should have to iron after a
// minute, in MΩ, at a winding temperature in °C: 5 at 40 °C, twice that for every 10 K
// colder (ANSI/EASA AR100-2020, IEEE 43-2013).
func InsulationMegohms(c float64) float64 {
	return insulationMegohms40 * math.Exp2((40-c)/insulationHalves)
}

// Between is the limits that a reading of a finished winding must lie in: the prediction's own
// uncertainty, but at least [ProofLeast], and [ProofLimit] where it is not known. part is the relative
// limit; ok is false for a figure that is not known.
func Between(f quantity.Figure) (low, high, part float64, ok bool) {
	if !f.Known() || f.Value <= 0 {
		return 0, 0, 0, false
	}
	if part = ProofLimit; f.PlusMinus > 0 {
		part = max(f.PlusMinus/f.Value, ProofLeast)
	}
	return f.Value * (1 - part), f.Value * (1 + part), part, true
}
