package winding

import (
	"testing"

	"slotwright/winding/published"
)

// The constants of the main job, besides the defaults of the schema, written out.
func TestConstants(t *testing.T) {
	const (
		practice = published.Practice
		choice   = published.Choice
	)
	published.Constants(t, []published.Constant{
		{What: "spin-up readings that contradict, a part", Want: 0.10, Have: spinsApart, Source: practice},
		{What: "V of a silicon diode without current", Want: 0.75, Have: siliconVolts, Source: practice},
		{What: "V of a schottky diode without current", Want: 0.40, Have: schottkyVolts, Source: practice},
		{What: "Ω of a diode", Want: 0.004, Have: defaultDiodeOhms, Source: practice},
		{What: "°C of a cable", Want: 40, Have: defaultCableC, Source: practice},
		{What: "power of the speed that drag goes by", Want: 1.5, Have: defaultIronPower, Source: practice + ": between hysteresis (1) and eddy currents (2)"},
		{What: "°C at the plate's amps", Want: 100, Have: plateC, Source: practice},
		{What: "light wind, m/s", Want: 3.5, Have: lightWind, Source: practice},
		{What: "gap longer by saturation", Want: 0.299 / 0.170, Have: saturated, Source: "Sarafianos et al. 2015, a 180 A claw-pole machine"},
		{What: "copper fill that is believed", Want: 0.60, Have: believableCopperFill, Source: practice},
		{What: "wire fill of perfect packing", Want: 1.1547, Have: hexagonalWireFill, Source: "2/√3"},
		{What: "Hz that are many", Want: 1000, Have: manyHertz, Source: practice},
		{What: "V rms between leads that ordinary insulation stands", Want: 250, Have: ordinaryInsulation, Source: practice},
		{What: "hottest winding, °C", Want: 300, Have: hottest, Source: practice},
		{What: "K within which a temperature is steady", Want: 0.01, Have: steadyWithin, Source: choice},
		{What: "longest step of a temperature that is not solved, K, from the point before", Want: 0.02, Have: stepOfBefore, Source: choice},
		{What: "… from two at this speed", Want: 0.2, Have: stepOfTwo, Source: choice},
		{What: "… how many times longer for what is only compared", Want: 10, Have: stepCompared, Source: choice},
		{What: "speeds of a curve", Want: 49, Have: curvePoints, Source: choice},
		{What: "samples of a trial for its drive", Want: 48, Have: driveSamples, Source: choice},
		{What: "m/s between winds", Want: 0.5, Have: windStep, Source: choice},
		{What: "usual speed of any alternator, rpm, at the most", Want: 10000, Have: fastestUsual, Source: practice},
		{What: "usual speed over that from which it charges, at the most", Want: 10, Have: fastFor, Source: practice},
		{What: "slow drive, rpm, at the most", Want: 500, Have: slowDrive, Source: practice},
		{What: "how many times as fast a drive backwards would be, at least", Want: 1.5, Have: leastTimes, Source: practice},
		{What: "… and how many times as much it would bring", Want: 10, Have: paltryTimes, Source: practice},
		{What: "W that are little", Want: 20, Have: paltryWatts, Source: practice},
		{What: "m in a foot", Want: 0.3048, Have: metresPerFoot, Source: "by definition, 1959"},
		{What: "kg in a pound", Want: 0.45359237, Have: kilogramPerPound, Source: "by definition, 1959"},
	})
}
