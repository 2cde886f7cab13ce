package drive

import (
	"math"
	"strconv"
	"testing"

	"slotwright/winding/published"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// workedCase is a row of testdata/drive/drive_cases.csv; each names its source.
type workedCase struct {
	id, topic, output string
	in                map[string]float64
	want              float64
}

func workedCases(t *testing.T) []workedCase {
	var cases []workedCase
	for _, row := range published.Rows(t, "drive/drive_cases.csv") {
		value := row["recomputed_value"] // all figures
		if value == "" {
			value = row["published_value"]
		}
		if want, err := strconv.ParseFloat(value, 64); err == nil {
			cases = append(cases, workedCase{row["id"], row["topic"], row["output"], row.Inputs("inputs"), want})
		}
	}
	return cases
}

// swept makes wind power of a case for a Cp that is given or comes from the axial
// induction factor, Cp = 4a(1−a)².
func swept(in map[string]float64) float64 {
	cp, ok := in["Cp"]
	if !ok {
		cp = 1
		if a, ok := in["a"]; ok {
			cp = 4 * a * (1 - a) * (1 - a)
		}
	}
	// At its best tip-speed ratio a rotor has its peak Cp. Some rows are for all of the
	// wind's power, which no rotor takes: from a rotor at Betz's bound, scaled.
	best := Rotor{DiameterM: in["D_m"], PeakCp: Betz, PeakLambda: 6}
	return cp / Betz * best.Watts(in["v_mps"], best.RPM(in["v_mps"], 6), in["rho"])
}

func orNaN(v float64, err error) float64 {
	if err != nil {
		return math.NaN()
	}
	return v
}

// answers computes each kind of row with the package; nil: not this package's.
func answer(c workedCase) (float64, bool) {
	in := c.in
	turns := func(t Transmission) float64 {
		r, err := t.Turns()
		if err != nil {
			return math.NaN()
		}
		return r
	}
	switch c.topic + " " + c.output {
	case "belt N4_rpm":
		if _, two := in["slip1"]; two && in["d4_mm"] > 0 {
			return in["N1_rpm"] * turns(Transmission{Kind: Belt, DriverMM: in["d1_mm"], DrivenMM: in["d2_mm"], Slip: in["slip1"]}) *
				turns(Transmission{Kind: Belt, DriverMM: in["d3_mm"], DrivenMM: in["d4_mm"], Slip: in["slip2"]}), true
		}
		return in["N1_rpm"] * turns(Transmission{Kind: Belt, DriverMM: in["d1_cm"], DrivenMM: in["d2_cm"], Slip: in["slip1"]}) *
			turns(Transmission{Kind: Belt, DriverMM: in["d3_cm"], DrivenMM: in["d4_cm"], Slip: in["slip2"]}), true
	case "belt N2_rpm":
		return in["N1_rpm"] * turns(Transmission{Kind: Belt, DriverMM: in["d1_cm"], DrivenMM: in["d2_cm"], Slip: in["slip"]}), true
	case "belt d2_cm", "belt d2_m":
		thick, unit := in["belt_thickness_cm"], "d1_cm"
		if c.output == "d2_m" {
			unit = "d1_m"
		}
		return orNaN(PulleyFor(AlternatorEnd, in["N2_rpm"]/in["N1_rpm"], in[unit]+thick, in["slip"])) - thick, true
	case "belt belt_speed_ft_per_min":
		return BeltSpeed(in["d1_in"]*25.4, in["N1_rpm"]) * 60 / 0.3048, true
	case "belt centre_distance_in":
		return orNaN(CentreFor(in["D1_in"], in["D2_in"], in["belt_length_in"])), true
	case "belt contact_angle_deg":
		return orNaN(OpenBelt{in["D1_in"], in["D2_in"], in["centre_distance_in"]}.WrapDegrees()), true
	case "chain teeth2":
		return orNaN(PulleyFor(AlternatorEnd, in["N2_rpm"]/in["N1_rpm"], in["teeth1"], 0)), true
	case "gear N3_rpm":
		return in["N1_rpm"] * turns(Transmission{Kind: Gear, DriverTeeth: in["z1"], DrivenTeeth: in["z2"]}) *
			turns(Transmission{Kind: Gear, DriverTeeth: in["z2"], DrivenTeeth: in["z3"]}), true
	case "pedalling wheel_rpm":
		return in["cadence_rpm"] * turns(Transmission{Kind: Chain, DriverTeeth: in["chainring"], DrivenTeeth: in["sprocket"]}), true
	case "belt ratio":
		return 1 / turns(Transmission{Kind: Belt, DriverMM: in["D1_in"], DrivenMM: in["D2_in"]}), true
	case "pedalling roller_rpm":
		return in["cadence_rpm"] * turns(Transmission{Kind: Chain, DriverTeeth: in["chainring"], DrivenTeeth: in["sprocket"]}) *
			turns(Transmission{Kind: Belt, DriverMM: in["wheel_diameter_mm"], DrivenMM: in["roller_diameter_mm"]}), true
	case "pedalling crank_torque_Nm":
		return Yielding{UsualRPM: in["cadence_rpm"], UsualWatts: in["power_W"]}.Torque(in["cadence_rpm"]), true
	}
	return answerWind(c)
}

// answerWind is answer for wind, air and years.
func answerWind(c workedCase) (float64, bool) {
	in := c.in
	switch c.topic + " " + c.output {
	case "wind-torque torque_MNm":
		r := Rotor{DiameterM: 2 * in["R_m"], PeakCp: Betz}
		r.PeakLambda = r.Lambda(in["v_mps"], in["N_rpm"])
		return r.Torque(in["v_mps"], in["N_rpm"], AirDensity(0, in["T_K"]-273.15)) * in["Cp"] / Betz / 1e6, true
	case "wind-power Cp":
		if in["P_kW"] == 0 {
			return 0, false // an exercise on the induction factor
		}
		return in["P_kW"] * 1000 / swept(in), true
	case "wind-power efficiency":
		in["v_mps"] = in["v_kmh"] / 3.6
		return in["P_elec_kW"] * 1000 / swept(in), true
	case "wind-power D_m":
		in["D_m"] = 1
		return math.Sqrt(in["P_elec_kW"] * 1000 / in["eta_gearbox"] / in["eta_gen"] / swept(in)), true
	case "tip-speed lambda":
		return Rotor{DiameterM: in["D_m"]}.Lambda(in["v_mps"], in["omega_rad_per_s"]*30/math.Pi), true
	case "betz Cp_max":
		return Betz, true
	case "rayleigh mean_power_density_W_per_m2":
		return Rayleigh(in["v_mean_mps"]).CubeWatts(0.5*in["rho"], 0, 20*in["v_mean_mps"]), true
	case "wind-power P_wind_kW", "wind-power P_kW":
		if in["D_m"] == 0 {
			return 0, false
		}
		return swept(in) / 1000, true
	case "wind-power P_W":
		return swept(in), true
	case "wind-power P_MW":
		return swept(in) / 1e6, true
	case "tip-speed rotor_rpm":
		return Rotor{DiameterM: in["D_m"]}.RPM(in["v_mps"], in["lambda"]), true
	case "air-density rho_kg_per_m3":
		if h, ok := in["altitude_m"]; ok {
			return AirDensity(h, StandardC(h)), true
		}
		return AirDensity(0, in["T_C"]) * gasConstant / in["R"], true
	case "rayleigh mean_cube_ratio":
		return Weibull{5, 2}.MeanCube(), true
	case "weibull mean_cube_ratio":
		return Weibull{5, in["k"]}.MeanCube(), true
	case "rayleigh P_exceed":
		return Weibull{in["v_mean_mps"], 2}.Above(in["v_mps"]), true
	case "rayleigh annual_energy_kWh":
		w := Weibull{in["v_mean_mps"], 2}
		return 8.760 * w.MeanWatts(func(v float64) float64 {
			in["v_mps"] = v
			return swept(in)
		}, 0, w.Mean, 2*w.Mean, 4*w.Mean, 8*w.Mean), true
	}
	return 0, false
}

// notOurs are rows that this package has no formula for, and why.
var notOurs = map[string]string{
	"DR017": "belt friction: what a belt can pull", "DR027": "wind shear with height", "DR029": "axial induction",
	"DR031": "a generator's efficiency", "DR034": "rule of thumb for blades", "DR043": "mass flow",
}

func TestWorkedExamples(t *testing.T) {
	tried := 0
	for _, c := range workedCases(t) {
		got, ok := answer(c)
		if !ok {
			assert.Contains(t, notOurs, c.id, "%s %s has no answer", c.topic, c.output)
			continue
		}
		tried++
		tolerance := 1e-4 // the rows' inputs have four and five figures
		switch {
		case c.output == "centre_distance_in":
			tolerance = 1e-3 // the book's formula is an approximation of the exact length
		case c.id == "DR033":
			tolerance = 3e-4 // the book has R = 287
		case c.id == "DR069":
			tolerance = 6e-4 // the book takes 27 °C as 300 K
		}
		assert.InEpsilon(t, c.want, got, tolerance, "%s %s %s", c.id, c.topic, c.output)
	}
	assert.Greater(t, tried, 55, "rows that this package answers")
}

// Common practice, no source: a road-vehicle alternator runs at 2 to 3 times engine speed.
func TestEngineTimesThree(t *testing.T) {
	up, err := Transmission{Kind: Belt, DriverMM: 180, DrivenMM: 60}.Turns()
	require.NoError(t, err)
	assert.InEpsilon(t, 1800, 600*up, 1e-12)
	assert.InEpsilon(t, 15000, 5000*up, 1e-12)
}
