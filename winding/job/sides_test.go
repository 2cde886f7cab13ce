package job

import (
	"testing"

	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// A file whose slot's area is width × depth is read like the same input on the screen: the same
// parallel slot, in any unit, with its marks and tolerances. The file stays as it is, and so does one
// that gives another shape.
func TestAFileWithWidthTimesDepthIsReadAsBoth(t *testing.T) {
	for _, line := range []string{
		`area_mm2 = "4.2 x 11"`, `area_mm2 = "~4.2 x 11"`, `area_mm2 = "4.2 x ~11"`, `area_mm2 = "4.2 ±0.1 × 11 ±0.2"`,
		`area_mm2 = "4.2 x 11 ±0.1"`, `area_in2 = "7/16 x 15/16"`, "area_mm2 = \"4.2 x 11\"\nshape = \"area\"",
	} {
		text := "# mine\n[slot]\nmouth_mm = 2.4\n" + line + "\n"
		d := Parse(text)
		assert.Empty(t, d.Problems(), line)
		assert.Equal(t, text, d.Text())
		typed, _, _, ok := d.Shaped()
		assert.True(t, ok, line)
		want, got := typed.Job().Slot, d.Job().Slot.AsMeasured()
		assert.True(t, got.BySides, line)
		assert.InEpsilon(t, want.TopMM.Value, got.TopMM.Value, 1e-9, line)
		assert.InEpsilon(t, want.DepthMM.Value, got.DepthMM.Value, 1e-9, line)
		got.TopMM.Value, got.DepthMM.Value, got.BySides = want.TopMM.Value, want.DepthMM.Value, false
		assert.Equal(t, want, got, line)
		assert.Equal(t, got, got.AsMeasured(), "once is enough")
	}
	for _, text := range []string{"[slot]\narea_mm2 = 46\n", "[slot]\narea_mm2 = \"4.2 x 11\"\nshape = \"round\"\n", "[slot]\narea_mm2 = \"0 x 11\"\n"} {
		s := Parse(text).Job().Slot
		assert.Equal(t, s, s.AsMeasured(), text)
	}
	s := Parse("[slot]\narea_mm2 = \"4.2 x 11\"\n").Set(areaOfSlot, "46", quantity.Choice{}).Job().Slot
	assert.Equal(t, s, s.AsMeasured(), "nothing is left of what was there before")
}
