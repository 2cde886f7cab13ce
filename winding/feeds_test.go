package winding

import (
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// A battery is named by its nominal volts; assumed values are marked, and another load is named.
func TestWhatItFeeds(t *testing.T) {
	said := func(change func(*job.BatterySpec)) string {
		j := job.Job{}
		change(&j.Battery)
		return Evaluate(j).Machine.Feeds
	}
	for want, change := range map[string]func(*job.BatterySpec){
		"~12 V flooded battery (not given)": func(*job.BatterySpec) {},
		"24 V LFP battery, 100 Ah": func(g *job.BatterySpec) {
			g.Chemistry, g.Cells, g.CapacityAh = "lfp", quantity.Known(8), quantity.Known(100)
		},
		"6 V gel battery": func(g *job.BatterySpec) { g.Chemistry, g.Cells = "gel", quantity.Known(3) },
		"13.4 V custom battery": func(g *job.BatterySpec) {
			g.Chemistry, g.Cells, g.RestVolts = "custom", quantity.Known(11), quantity.Known(13.4)
		},
		"resistor of 3.5 Ω":              func(g *job.BatterySpec) { g.Load, g.ResistorOhms = "resistor", quantity.Known(3.5) },
		"resistor, its ohms not given":   func(g *job.BatterySpec) { g.Load = "resistor" },
		"converter holding 48 V":         func(g *job.BatterySpec) { g.Load, g.BusVolts = "bus", quantity.Known(48) },
		"converter, its volts not given": func(g *job.BatterySpec) { g.Load = "bus" },
		"battery, its volts not known":   func(g *job.BatterySpec) { g.Chemistry = "custom" },
	} {
		assert.Equal(t, want, said(change))
	}
}
