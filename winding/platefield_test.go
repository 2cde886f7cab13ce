package winding_test

import (
	"fmt"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/wound"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A plate beside the single spin-up reading adds to what that reading says: that the rotor is fed with
// more than it was read with is reported, and a finished winding read at the current of the reading is
// judged more strictly than one at the current in service. Star connected as delta, 1/√3 of its volts,
// is then detected.
func TestAPlateKeepsTheCurrentThatWasRead(t *testing.T) {
	const text = "format = 1\n[machine]\nslots = 36\npoles = 12\nlayers = 1\nbore_mm = 93\nstack_mm = 25\nair_gap_mm = 0.35\n[slot]\narea_mm2 = 45\n[old]\nturns = 9\ngauge = \"1.4 mm\"\nlead_ohm = 0.16\n%s[field]\nkind = \"wound\"\ncoil_ohm = 4\n%s[battery]\nchemistry = \"agm\"\ncells = 12\n[[trial]]\nname = \"A\"\nturns = 19\ngauge = \"18 AWG\"\n[[spin]]\nspeed_rpm = 1000\nline_v = 10\nfield_a = 3\n[[wound]]\ntrial = \"A\"\nline_v = 12.2\nspeed_rpm = 1000\nfield_a = 3\n"
	const plate = "plate_current_a = 55\nplate_voltage_v = 14\nplate_speed_rpm = 6000\n"
	for _, with := range []string{"", plate} {
		o := winding.Evaluate(job.Parse(fmt.Sprintf(text, with, "")).Job())
		f := finding(&o, "field.current")
		require.NotNil(t, f, with)
		assert.Contains(t, f.Text, "was read at 3 A of field and the rotor will take 5.32 A")
		assert.Contains(t, f.Fix, "a rotor made for fewer volts burns")
		volts := o.Wound[0].LineVolts
		assert.InEpsilon(t, 10*19./9, volts.Expected.Value, 0.01)
		assert.Less(t, volts.Expected.PlusMinus/volts.Expected.Value, 0.2)
		assert.Equal(t, wound.Low, volts.Stand())

		held := winding.Evaluate(job.Parse(fmt.Sprintf(text, with, "current_a = 4\n")).Job())
		require.NotNil(t, finding(&held, "field.current"))
		assert.NotContains(t, finding(&held, "field.current").Fix, "burns", "what was said is not asked for")
	}
}
