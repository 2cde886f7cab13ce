package job

import "slotwright/winding/quantity"

// measuredAlike are the lengths that one person takes with the same calipers: paper, wedge and gap are
// often known in the other unit.
var measuredAlike = map[string]bool{
	"machine.bore": true, "machine.stack": true, "machine.outside": true,
	"slot.top": true, "slot.bottom": true, "slot.depth": true, "slot.tooth": true, "slot.mouth": true,
}

// atRest are the temperatures of a winding at rest: room temperatures, as a rule.
var atRest = map[string]bool{"old.lead_at": true, "wound.lead_at": true}

// Between these a number is a room temperature in °F, 10 to 43 °C, and none of a winding at rest in °C.
const restFrom, restTo = 50, 110

// warmAtRest records the temperatures of windings at rest that are far too warm in °C, but plausible in
// °F, in a job whose lengths are in inches.
func (r *reader) warmAtRest() {
	if !r.d.Units(quantity.Choice{}).Inch {
		return
	}
	for _, path := range r.order {
		e := r.d.entries[path]
		if !atRest[Unindexed(path)] || e.unit.Suffix != quantity.Celsius[0].Suffix {
			continue
		}
		table, i, _ := SplitPath(path)
		at := r.d.job.Old.LeadOhmsC
		if table == "wound" && i < len(r.d.job.AsWound) {
			at = r.d.job.AsWound[i].LeadOhmsC
		}
		if at.Given() && at.Value >= restFrom && at.Value <= restTo {
			r.d.job.WarmAtRest = append(r.d.job.WarmAtRest, path)
		}
	}
}

// loneLengths records the one length in mm among two or more in inches.
func (r *reader) loneLengths() {
	inches, alone := 0, []string{}
	for _, path := range r.order {
		switch e := r.d.entries[path]; {
		case !measuredAlike[path]:
		case e.unit.Suffix == quantity.Millimetres[1].Suffix || e.unit.Suffix == "mil":
			inches++
		default:
			alone = append(alone, path)
		}
	}
	if inches >= 2 && len(alone) == 1 {
		r.d.job.LoneMillimetres = alone
	}
}
