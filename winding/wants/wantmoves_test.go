package wants_test

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Fields that describe the magnets are left out of the first things only where they change no figure:
// in every job with a rotor of magnets, and in that job with a trial coil, remanence and thickness are
// asked for, or another value of them leaves every figure as it is.
func TestMagnetsLeaveTheFirstThingsOnlyWhereTheyMoveNothing(t *testing.T) {
	jobs, err := filepath.Glob("../../testdata/jobs/*.toml")
	require.NoError(t, err)
	asks, moves := 0, 0
	for _, path := range jobs {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		given := job.Parse(string(text)).Job()
		if given.Field.Kind != job.FieldMagnets {
			continue
		}
		coil := given
		coil.Coils = []job.CoilReading{{Turns: quantity.Known(10), RPM: quantity.Known(600), Volts: quantity.Known(0.8)}}
		bare := coil
		bare.Old, bare.Spins, bare.Shorts, bare.Amps = job.OldWinding{State: job.StateGone}, nil, nil, nil
		for _, j := range []job.Job{given, coil, bare} {
			for field, of := range map[string]func(*job.Job) *quantity.Reading{
				"field.remanence": func(j *job.Job) *quantity.Reading { return &j.Field.RemanenceTesla },
				"field.magnet":    func(j *job.Job) *quantity.Reading { return &j.Field.MagnetMM },
			} {
				a, b := j, j
				*of(&a), *of(&b) = quantity.Known(1.1), quantity.Known(1.3)
				if field == "field.magnet" {
					*of(&a), *of(&b) = quantity.Known(5), quantity.Known(8)
				}
				differ := differing(winding.Prepare(a).WithoutOffers().Outcome(), winding.Prepare(b).WithoutOffers().Outcome())
				there, _ := asked(&j, field)
				if there {
					asks++
				} else {
					assert.Empty(t, differ, "%s: %s is not asked for and moves figures", filepath.Base(path), field)
				}
				if differ != "" {
					moves++
				}
			}
		}
	}
	assert.Greater(t, asks, 5)
	assert.Greater(t, moves, 5)
}

// differing is the first figure in which two outcomes differ, "" for none.
func differing(a, b winding.Outcome) string {
	apart := func(x, y quantity.Figure) bool {
		return x.Known() != y.Known() || x.Known() && math.Abs(x.Value-y.Value) > 1e-9*math.Abs(x.Value)
	}
	for _, f := range winding.MachineOutputs() {
		if apart(f.OfMachine(&a.Machine), f.OfMachine(&b.Machine)) {
			return f.ID
		}
	}
	for _, f := range winding.Outputs() {
		for i := range a.Trials {
			if apart(f.Of(&a.Trials[i]), f.Of(&b.Trials[i])) {
				return f.ID
			}
		}
	}
	return ""
}
