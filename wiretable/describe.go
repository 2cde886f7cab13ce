package wiretable

import "strings"

// Description is everything about one wire, as a supplier's table has it. JSON keys
// carry their unit.
type Description struct {
	Gauge string `json:"gauge"`
	Build string `json:"build"`
	Metal string `json:"metal"`
	// Basis says where the diameter comes from, OverallBasis the one over the enamel.
	Basis           string  `json:"basis"`
	BareMM          float64 `json:"bare_mm"`
	BareInch        float64 `json:"bare_in"`
	OverallMM       float64 `json:"overall_mm"`
	OverallMaxMM    float64 `json:"overall_max_mm"`
	OverallInch     float64 `json:"overall_in"`
	OverallBasis    string  `json:"overall_basis"`
	AreaMM2         float64 `json:"area_mm2"`
	AreaCmil        float64 `json:"area_cmil"`
	TempC           float64 `json:"temp_c"`
	OhmsPerKm20     float64 `json:"ohms_per_km_20c"`
	OhmsPer1000Ft20 float64 `json:"ohms_per_1000ft_20c"`
	OhmsPerKmTemp   float64 `json:"ohms_per_km_temp"`
	KgPerKm         float64 `json:"kg_per_km"`
	LbPer1000Ft     float64 `json:"lb_per_1000ft"`
	MetresPerKg     float64 `json:"metres_per_kg"`

	Thicker string `json:"thicker,omitempty"`
	Thinner string `json:"thinner,omitempty"`
	// Nearest is the nearest size of each of the other tables, by its name in lower case.
	Nearest map[string]string `json:"nearest"`
	// Equal is bundles of thinner wire with nearly the same area.
	Equal []Equal `json:"equal_area"`
}

// Equal is a bundle that can replace a wire.
type Equal struct {
	Bundle  string  `json:"bundle"`
	AreaMM2 float64 `json:"area_mm2"`
	// Percent is how much more metal it has.
	Percent float64 `json:"area_percent"`
	// RoomPercent is how much more room it takes in the slot, by its overall
	// diameters squared.
	RoomPercent float64 `json:"room_percent"`
}

const (
	footMetres = 0.3048     // exact
	poundKg    = 0.45359237 // exact
)

// Describe collects what is known of a wire in a build and metal, its resistance also at a temperature,
// and substitutes in the given system of 1 to 6 strands within 4 % of area.
func Describe(g Gauge, b Build, m Metal, tempC float64, equals System) Description {
	o, area := g.OverallMM(b), g.AreaMM2(b)
	ohms, kg := OhmsPerMetre(area, m, 20), KgPerMetre(area, m)
	d := Description{
		Gauge: g.String(), Build: b.String(), Metal: m.String(), Basis: g.BasisIn(b), OverallBasis: o.Basis,
		BareMM: g.BareMM(b), BareInch: g.BareMM(b) / mmPerInch,
		OverallMM: o.NominalMM, OverallMaxMM: o.MaxMM, OverallInch: o.NominalMM / mmPerInch,
		AreaMM2: area, AreaCmil: sq(g.BareMM(b) / mmPerInch * 1000), TempC: tempC,
		OhmsPerKm20: ohms * 1000, OhmsPer1000Ft20: ohms * 1000 * footMetres,
		OhmsPerKmTemp: OhmsPerMetre(area, m, tempC) * 1000,
		KgPerKm:       kg * 1000, LbPer1000Ft: kg * 1000 * footMetres / poundKg, MetresPerKg: 1 / kg,
		Nearest: map[string]string{}, Equal: []Equal{},
	}
	if t, ok := g.ThickerIn(b); ok {
		d.Thicker = t.String()
	}
	if t, ok := g.ThinnerIn(b); ok {
		d.Thinner = t.String()
	}
	for _, s := range []System{AWG, SWG, IEC} {
		if n := g.NearestIn(s, b); !n.IsZero() && n != g {
			d.Nearest[strings.ToLower(s.String())] = n.String()
		}
	}
	room := sq(o.NominalMM)
	for _, s := range Substitutes(Of(1, g), SubstituteOptions{System: equals, Build: b, MaxStrands: 6, Tolerance: 0.04, Limit: 12}) {
		d.Equal = append(d.Equal, Equal{s.Bundle.String(), s.AreaMM2, 100 * s.ErrorFraction, 100 * (s.SquareMM2/room - 1)})
	}
	return d
}

func sq(x float64) float64 { return x * x }
