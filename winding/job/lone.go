package job

import "slotwright/winding/quantity"

// measuredAlike are the lengths that one person takes with the same calipers: paper, wedge and
// gap are often known in the other unit.
var measuredAlike = map[string]bool{
	"machine.bore": true, "machine.stack": true, "machine.outside": true,
	"slot.top": true, "slot.bottom": true, "slot.depth": true, "slot.tooth": true, "slot.mouth": true,
}

// loneLengths notes the one length in mm among two or more in inches.
func (r *reader) loneLengths() {
	inches, alone := 0, []string{}
	for _, path := range r.order {
		switch e := r.d.entries[path]; {
		case !measuredAlike[path]:
		case e.unit.Suffix == quantity.Millimetres[1].Suffix:
			inches++
		default:
			alone = append(alone, path)
		}
	}
	if inches >= 2 && len(alone) == 1 {
		r.d.job.LoneMillimetres = alone
	}
}
