package drive

import (
	"fmt"
	"math"
)

// Touch limits: above 60 V DC or 25 V AC parts that can be touched need protection (IEC 61140), 50 V AC
// is the limit of extra-low voltage (IEC 60364-4-41; IEC vocabulary). At a bench use 60 V DC and 50 V
// AC, and local codes before both.
const (
	TouchDC = 60.0 // V, free of ripple
	TouchAC = 50.0 // V rms
)

// diodeReserve is the largest share of a diode's reverse rating to use: half is left for the surge of a
// load that comes off (common practice, no source).
const diodeReserve = 0.5

// OpenCircuit is an alternator at its top speed with nothing connected, as when a
// battery comes off.
type OpenCircuit struct {
	LineRMS float64 `json:"line_volts_rms"` // between leads
	PeakDC  float64 `json:"peak_dc_volts"`  // behind the bridge, √2 of it
	// TouchRPM is the speed from which it is hazardous: 60 V DC or 50 V AC.
	TouchRPM  float64 `json:"touch_rpm"`
	Hazardous bool    `json:"hazardous"`
	// DiodeShare is PeakDC over the reverse rating; above 0.5 there is no reserve for a load that comes
	// off, at 1 the diodes break down. 0 when there is no rating.
	DiodeShare   float64 `json:"diode_share"`
	DiodesTight  bool    `json:"diodes_tight"`
	DiodesBroken bool    `json:"diodes_broken"`
	// InsulationShare is LineRMS over what the insulation is rated for, V rms; 0 when there
	// is no rating.
	InsulationShare float64 `json:"insulation_share"`
}

// OpenAt is the open circuit at a speed. lineRMSPerRPM is no-load volts between leads per rpm,
// diodeVolts the reverse rating of a diode and insulationVolts the wire's or system's, 0 when not
// known. In a bridge each diode sees the whole of PeakDC in reverse.
func OpenAt(rpm, lineRMSPerRPM, diodeVolts, insulationVolts float64) (OpenCircuit, error) {
	for _, v := range []float64{rpm, lineRMSPerRPM, diodeVolts, insulationVolts} {
		if !(v >= 0 && v <= 1e6) {
			return OpenCircuit{}, fmt.Errorf("open circuit: read %g, expected speed, volts per rpm and ratings of 0 to 1e6", v)
		}
	}
	o := OpenCircuit{LineRMS: lineRMSPerRPM * rpm}
	o.PeakDC = math.Sqrt2 * o.LineRMS
	if lineRMSPerRPM > 1e-12 {
		o.TouchRPM = min(TouchAC, TouchDC/math.Sqrt2) / lineRMSPerRPM
		o.Hazardous = rpm > o.TouchRPM
	}
	if diodeVolts > 0 {
		o.DiodeShare = o.PeakDC / diodeVolts
		o.DiodesTight, o.DiodesBroken = o.DiodeShare > diodeReserve, o.DiodeShare >= 1
	}
	if insulationVolts > 0 {
		o.InsulationShare = o.LineRMS / insulationVolts
	}
	return o, nil
}
