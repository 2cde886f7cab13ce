package card

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Only the wheels by which the alternator's speed goes are told, and what was taken for them; what is
// typed beside and not used is never called measured.
func TestOnlyTheRatioThatIsUsedIsPrinted(t *testing.T) {
	const head = "format = 1\n[drive]\nkind = \"water\"\nusual_rpm = 25\npower_w = 85\n"
	const trial = "[[trial]]\nname = \"A\"\nturns = 10\n"
	for _, c := range []struct{ between, on, idle string }{
		{"through = \"belt\"\nratio = \"6 x 5.714\"\ndriver_mm = 600\ndriven_mm = 100\nslip = 0.02\n", "belt: alternator 32.9 turns to 1", "Pulley on drive 600 mm (not used: the ratio is used)"},
		{"through = \"belt\"\nratio = 34.3\nslip = 0.2\n", "belt: alternator 34.3 turns to 1", "Belt slip 0.2 (not used: the ratio is turns as counted, which have it in them)"},
		{"through = \"belt\"\ndriver_mm = 600\ndriven_mm = 100\nslip = 0.02\n", "belt 600 mm driving 100 mm: alternator 5.88 turns to 1", ""},
		{"through = \"chain\"\ndriver_mm = 600\ndriven_mm = 100\ndriver_teeth = 48\ndriven_teeth = 12\n", "chain 48 teeth driving 12: alternator 4.00 turns to 1", "Pulley on drive 600 mm (not used: the other wheels are used)"},
		{"through = \"belt\"\ndriver_mm = 600\ndriven_mm = 100\nslip = 0.02\ntach_drive_rpm = 25\ntach_alternator_rpm = 140\n", "belt: alternator 5.60 turns to 1", "Belt slip 0.02 (not used: the tachometer readings have it in them)"},
	} {
		w := workOut(head + c.between + trial)
		sheet := flat(Text(w.b, &w.o, 0, Options{}))
		assert.Contains(t, sheet, c.on, c.between)
		if !strings.Contains(c.on, "driving") {
			assert.NotContains(t, sheet, "belt 600 mm", c.between)
		}
		inputs := flat(section(t, Report(w.b, &w.o, Options{Document: &w.d}), "WHERE EACH INPUT CAME FROM"))
		assert.Equal(t, c.idle != "", strings.Contains(inputs, "not used"), c.between)
		assert.Contains(t, inputs, c.idle, c.between)
	}
	w := workOut(head + "through = \"belt\"\nratio = \"6 x 5.714\"\nslip = 0.02\n" + trial)
	report := flat(Report(w.b, &w.o, Options{Document: &w.d}))
	assert.Contains(t, report, "Turns per drive turn 32.9 (2 stages, belt: slip 4 %, loss 9.8 %)")
	assert.Contains(t, report, "Belt slip 0.02 (measured)")
}
