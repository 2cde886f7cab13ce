package machine

import (
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
)

// Text being typed is shown as typed, letter by letter, with the caret behind it, however the job
// writes it down: two sides of a slot, units, ±, hertz, strands, stages of a ratio.
func TestNothingIsRewrittenWhileItIsTyped(t *testing.T) {
	values := []string{"4.2x11", "5X10", "5*10", "5×10", "8x9 mm", "7/16 x 15/16 in", "2x0.8", "48:14 x 180:55", "3.5 mm2 ±0.1", "50mm ±1", "1 1/2 in", "40 Hz", " ~12  ft", "18 awg", "20 °F"}
	for _, v := range []*View{NewMachine(), NewDrive()} {
		s := session.New(job.Parse("format = 1\n[machine]\npoles = 12\n[slot]\narea_mm2 = 4\n[old]\nturns = 4\n[[spin]]\nspeed_rpm = 4\n[field]\nkind = \"wound\"\n[drive]\nkind = \"wind\"\nthrough = \"belt\"\n"), "", job.Mark{})
		tuitest.Draw(t, v, s, 120, 40)
		v.first = false
		tuitest.Draw(t, v, s, 120, 40)
		for _, row := range v.form.Rows {
			if row.Adds || len(row.Choices) > 0 {
				continue
			}
			for _, value := range values {
				v.form = v.form.FocusID(row.ID)
				typed := strings.TrimLeft(value, " ")
				for i, letter := range strings.Split(typed, "") {
					v.Key(s, tuitest.KeyMsg(letter))
					v.SetSize(s, v.at)
					so := strings.Join(strings.Split(typed, "")[:i+1], "")
					if !assert.Equal(t, so, v.form.Focused().Text, row.ID) {
						return
					}
					assert.Equal(t, i+1, v.form.Cursor, row.ID)
				}
				v.Key(s, tuitest.KeyMsg("esc"))
				v.SetSize(s, v.at)
				assert.Equal(t, row.Text, v.form.FocusID(row.ID).Focused().Text, row.ID)
			}
		}
	}
}

// While a value is typed with its unit, no other unit is shown behind it; once accepted, the value's
// is.
func TestTheUnitTypedStandsAlone(t *testing.T) {
	s, v := session.New(job.Parse("format = 1\n[machine]\nbore_in = 6\n"), "", job.Mark{}), NewMachine()
	tuitest.Draw(t, v, s, 120, 40)
	v.form = v.form.FocusID("machine.bore")
	tuitest.Press(t, v, s, 120, 40, "5 0")
	assert.Equal(t, "in", v.form.Focused().Unit)
	tuitest.Press(t, v, s, 120, 40, "m m")
	assert.Equal(t, "", v.form.Focused().Unit)
	tuitest.Press(t, v, s, 120, 40, "enter up")
	assert.Equal(t, "mm", v.form.Focused().Unit)
	assert.Equal(t, "50", v.form.Focused().Text)
}
