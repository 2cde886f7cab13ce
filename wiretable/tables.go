package wiretable

import "math"

// rowStatus says where a table row comes from.
type rowStatus uint8

const (
	published         rowStatus = iota // entered as printed in a published copy
	maximumFromMemory                  // nominal printed, maximum from memory
	maximumComputed                    // nominal printed, maximum by rule
	fromMemory                         // not checked against a copy
	computed                           // by a rule that fits the printed rows
)

// Ends of the gauges in the unit Gauge.n counts: half steps for AWG (0000 is
// -3, so -6), whole steps for SWG (7/0 is -6).
const (
	awgFirst = -6
	awgLast  = 100
	swgFirst = -6
	swgLast  = 50
)

const mmPerMil = mmPerInch / 1000

// awgMM and swgMM hold every bare diameter, so that a look-up costs an index.
var (
	awgMM = fillAWG()
	swgMM = fillSWG()
)

func fillAWG() (mm [awgLast - awgFirst + 1]float64) {
	for i := range mm {
		if i%2 == 0 {
			mm[i] = float64(awgHundredthMil[i/2]) / 100 * mmPerMil
			continue
		}
		mm[i] = awgFormulaMM(float64(i+awgFirst) / 2)
	}
	return mm
}

func fillSWG() (mm [swgLast - swgFirst + 1]float64) {
	for i := range mm {
		mm[i] = float64(swgTenthMil[i]) / 10 * mmPerMil
	}
	return mm
}

// awgFormulaMM is the unrounded diameter of the American wire gauge in mm,
// 0.127·92^((36-n)/39) (ASTM B258): 39 equal ratios between No. 36 at 5 mil and
// No. 0000, which is n = -3, at 460 mil.
func awgFormulaMM(n float64) float64 {
	return 5 * mmPerMil * math.Pow(92, (36-n)/39)
}
