package winding

import (
	"reflect"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// Every figure of the outcome has its line in the table, and no figure is missing.
func TestEveryFigureIsDescribed(t *testing.T) {
	for name, of := range map[string]struct {
		t    reflect.Type
		byID map[string]*Output
	}{
		"trial": {reflect.TypeFor[TrialOutcome](), trialByID}, "machine": {reflect.TypeFor[MachineOutcome](), machineByID},
		"point": {reflect.TypeFor[RunPoint](), pointByID},
	} {
		keys(of.t, "", nil, func(id string, _ []int, kind reflect.Type) {
			if kind == figureType || name == "point" {
				assert.Contains(t, of.byID, id, "%s: a figure without a line in the table", name)
			}
		})
	}
}

func TestLinesSayEnough(t *testing.T) {
	for _, table := range [][]Output{trialOutputs, machineOutputs, pointOutputs} {
		for _, o := range table {
			assert.NotEmpty(t, o.Label, o.ID)
			assert.NotEmpty(t, o.Meaning, o.ID)
			assert.NotEmpty(t, o.Dim, o.ID)
			assert.LessOrEqual(t, len([]rune(o.Label)), 26, "%s: the grid's labels are 26 wide", o.ID)
			assert.Equal(t, o.past == nil, o.Mend == "", "%s: a limit and what to do about it belong together", o.ID)
			if o.Spread == Counted {
				assert.Zero(t, o.Better == Less, "%s: a count", o.ID)
			}
		}
	}
}

// A ± on every reading must reach every figure that is said to follow: those that stay at ±0 are the
// ones that no reading affects.
func TestEveryFollowedFigureMoves(t *testing.T) {
	j := job.Example().Job()
	j.Battery.RestVolts = quantity.Known(12.6)
	j.Slot.MouthMM = quantity.Known(3)
	j.Old.LeadOhms = quantity.Known(0.17)
	j.Target.SlowRPM, j.Target.TopRPM = quantity.Known(300), quantity.Known(900)
	setEvery(reflect.ValueOf(&j).Elem())
	o := Evaluate(j)
	// What no reading with a ± enters: wires are taken as typed, the density that governs the
	// limit goes by their area, and these are ratios of turns and wire alone.
	still := map[string]bool{"bare_mm": true, "overall_mm": true, "conductor_area_mm2": true, "conductor_area_cmil": true,
		"copper_per_slot_mm2": true, "density_a_per_mm2_per_dc_amp": true, "against_old.volts": true, "against_old.copper": true,
		"against_old.ohms": true, "limit_amps_dc": true, "against_old.cut_in": true}
	for _, f := range followedOfTrial {
		if fig := f.Of(&o.Trials[0]); fig.Known() && !still[f.ID] {
			assert.Positive(t, fig.PlusMinus, f.ID)
		}
	}
}

// setEvery gives every reading of a job a tolerance of 1 %.
func setEvery(v reflect.Value) {
	switch {
	case v.Type() == readingType:
		if r := v.Interface().(quantity.Reading); r.Given() {
			r.PlusMinus = r.Value * 0.01
			v.Set(reflect.ValueOf(r))
		}
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			if v.Field(i).CanSet() {
				setEvery(v.Field(i))
			}
		}
	case v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.Struct:
		for i := range v.Len() {
			setEvery(v.Index(i))
		}
	}
}
