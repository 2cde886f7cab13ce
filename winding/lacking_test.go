package winding_test

import (
	"os"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Where it is not known how fast the machine turns, each figure says which of drive, ratio and speeds
// is missing; a flux that only lacks sizes asks for these.
func TestAMissingSpeedSaysWhatItLacks(t *testing.T) {
	const ratio, turned = "needs the ratio, both pulleys or the teeth of both wheels", "needs what turns it"
	engine := parsed(t, "engine.toml")
	without := func(d job.Document, paths ...string) winding.Outcome {
		for _, path := range paths {
			d = d.Clear(path)
		}
		return winding.Evaluate(d.Job())
	}
	why := func(want string, figures ...quantity.Figure) {
		t.Helper()
		for _, f := range figures {
			assert.False(t, f.Known())
			assert.Equal(t, want, f.Why)
		}
	}
	o := without(engine, "drive.driver", "drive.driven").Trials[0]
	why(ratio, o.AmpsUsual, o.RunsTop, o.HottestC, o.ACFactor, o.DumpWatts, o.BrakePeakNm)
	o = without(engine, "drive.driver", "drive.driven", "drive.kind").Trials[0]
	why(turned, o.AmpsUsual, o.DumpWatts)
	o = without(engine, "drive.slow", "drive.usual", "drive.top").Trials[0]
	why("needs the drive's usual speed and power, or two points of its power curve", o.AmpsUsual)
	o = without(parsed(t, "wind-wound-rotor.toml"), "drive.ratio").Trials[0]
	why(ratio, o.AmpsUsual, o.OpenAtTopVolts)

	o = without(parsed(t, "wind-trap.toml"), "machine.stack").Trials[0]
	why("needs the gap, the bore, the stack and the poles", o.LinePerRPM, o.CutInRPM)
}

func parsed(t *testing.T, name string) job.Document {
	t.Helper()
	text, err := os.ReadFile("../testdata/jobs/" + name)
	require.NoError(t, err)
	return job.Parse(string(text))
}
