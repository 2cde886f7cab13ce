package card

import (
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/text"

	"github.com/stretchr/testify/assert"
)

func TestFigures(t *testing.T) {
	w := &writer{opt: Options{Units: quantity.Choice{Inch: true}}}
	assert.Equal(t, "~1.00 ±0.02 in", w.amount(quantity.Figure{Value: 25.4, PlusMinus: 0.508, Origin: quantity.Guessed}, quantity.Millimetres, 3))
	assert.Equal(t, "not known: needs the wire", w.amount(quantity.Figure{Why: "needs the wire"}, quantity.Millimetres, 3))
	f := Options{Units: quantity.Choice{Fahrenheit: true}}
	w.opt = f
	// A tolerance in kelvin has no offset: 10 K are 18 °F of difference.
	assert.Equal(t, "212 ±18 °F", w.amount(quantity.Figure{Value: 100, PlusMinus: 10, Origin: quantity.Derived}, quantity.Celsius, 3))
}

func FuzzCard(f *testing.F) {
	for _, s := range []string{"", "plain", "two\nlines", "\x1b[31mred\x1b[0m", "長い名前", "\u202eright to left", strings.Repeat("m", 200), "\xff\xfe"} {
		f.Add(s, s, true)
	}
	f.Fuzz(func(t *testing.T, name, notes string, ascii bool) {
		j := job.Example().Job()
		j.Trials = j.Trials[:1]
		j.Name, j.Notes, j.Trials[0].Name, j.Trials[0].Note = name, notes, name, notes
		b := winding.Prepare(j)
		o := winding.Outcome{Job: name, Trials: []winding.TrialOutcome{b.Static(j.Trials[0])}}
		for _, sheet := range []string{Text(b, &o, 0, Options{ASCII: ascii}), Report(b, &o, Options{ASCII: ascii})} {
			for _, line := range strings.Split(sheet, "\n") {
				assert.LessOrEqual(t, text.Width(line), width)
				assert.NotRegexp(t, `[\x00-\x1f\x7f]|[ \t]$`, line)
			}
			if ascii {
				assert.NotRegexp(t, `[^\n -~]`, sheet)
			}
		}
	})
}

func BenchmarkText(b *testing.B) {
	w := workOut(job.Example().Text())
	for b.Loop() {
		Text(w.b, &w.o, 0, Options{Document: &w.d})
	}
}

func BenchmarkReport(b *testing.B) {
	w := workOut(job.Example().Text())
	for b.Loop() {
		Report(w.b, &w.o, Options{Document: &w.d})
	}
}
