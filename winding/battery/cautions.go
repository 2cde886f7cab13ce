package battery

import "fmt"

// mostPerCell is the highest voltage a cell may see on charge: lithium iron phosphate
// 3.65 V (several makers); lead-acid 2.45 V, the top of the absorption range at 25 °C
// (Remco battery guide), gel 2.40 V (from memory).
var mostPerCell = map[Chemistry]float64{Flooded: 2.45, AGM: 2.45, Gel: 2.40, LFP: 3.65}

// Cautions are warnings about a battery, short and concrete: for its kind, and for what in the spec is
// above a published limit. Local codes and the maker's data sheet decide.
func Cautions(s Spec) []string {
	list := []string{"fuse at the battery's positive post, sized below what the cable can carry: a short circuit draws hundreds of amperes"}
	switch s.Chemistry {
	case Flooded:
		list = append(list, "ventilate: on charge it gives off hydrogen, which a spark explodes; no flames, eyes covered, acid burns",
			"keep the plates under: charging above 2.40 V a cell uses up water")
	case AGM, Gel:
		list = append(list, "ventilate: overcharged, its valves let hydrogen out, and what is lost cannot be topped up")
	case LFP:
		list = append(list, "needs a battery management system that can stop the charge; when it does, the machine runs unloaded and its voltage rises",
			"no charging with cells below 0 °C, and only slowly below 25 °C: at most 0.1 A for each Ah up to 10 °C, 0.2 A up to 25 °C (a maker's manual)")
	default:
		list = append(list, "its own data sheet has the voltages, the charge limit and the temperatures it may be charged at")
	}
	switch s.Chemistry {
	case Flooded, AGM, Gel:
		list = append(list, "voltages are for 25 °C: 3 mV a cell less for each kelvin above that, as much more for each below")
	}
	return append(list, s.above()...)
}

// above lists what was given above a published limit.
func (s Spec) above() []string {
	var list []string
	if most, n := mostPerCell[s.Chemistry], float64(s.Cells); most > 0 && n > 0 {
		for _, v := range [...]struct {
			name  string
			value float64
		}{{"absorption", s.AbsorptionVolts}, {"float", s.FloatVolts}} {
			if v.value > most*n*(1+1e-9) {
				list = append(list, fmt.Sprintf("%s voltage of %.2f V is %.2f V a cell, above the %.2f V that %s takes", v.name, v.value, v.value/n, most, s.Chemistry))
			}
		}
	}
	if rate := cells[s.Chemistry].rate; rate > 0 && s.CapacityAh > 0 && s.MaxChargeAmps > rate*s.CapacityAh*(1+1e-9) {
		list = append(list, fmt.Sprintf("charge limit of %.4g A is above the %.4g A usual for %s of %.4g Ah", s.MaxChargeAmps, rate*s.CapacityAh, s.Chemistry, s.CapacityAh))
	}
	return list
}
