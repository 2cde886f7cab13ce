package card

import (
	"regexp"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// metric finds a number in a unit that a person who likes inches and °F did not ask for.
var metric = regexp.MustCompile(`\d ?(mm²?|°C|kg|K/W|m|kelvin\w*)($|[^\w²/·])`)

// inBothUnits is what may stand all the same: a size of wire for the caliper in both units, a
// length and a weight of wire to buy in both, a maker's own number behind the one that was
// asked for.
var inBothUnits = regexp.MustCompile(`[\d.]+ mm, [\d.]+ in|[\d.]+ m, ~?[\d.]+ ft|[\d.]+ kg, ~?[\d.]+ lb|°F \([^)]*°C\)|for each kelvin \(1\.8 °F\)|IEC [\d.]+ mm|[\d.]+ mm over`)

// names are the sizes of wire of a job as it calls them.
func names(j *job.Job) []string {
	var list []string
	for _, w := range append([]job.Wound{j.Old.Wound}, wounds(j)...) {
		for _, p := range w.Bundle().Parts() {
			list = append(list, p.Gauge.String())
		}
	}
	return list
}

func wounds(j *job.Job) []job.Wound {
	var list []job.Wound
	for _, t := range j.Trials {
		list = append(list, t.Wound)
	}
	for _, r := range j.AsWound {
		list = append(list, r.Wound)
	}
	return list
}

// With inches and °F chosen no card and no report has a number in another unit, but for the
// inputs, which stand as they were typed, and names of wire.
func TestNoUnitThatWasNotChosen(t *testing.T) {
	opt := Options{Units: quantity.Choice{Inch: true, Fahrenheit: true}}
	for _, s := range Sections() {
		if s.Name != "inputs" {
			opt.Sections = append(opt.Sections, s.Name)
		}
	}
	some := 0
	for name, w := range jobs(t) {
		j := w.b.Job()
		for what, text := range w.texts(opt) {
			text = inBothUnits.ReplaceAllString(flat(text), "")
			for _, size := range names(&j) {
				text = strings.ReplaceAll(text, size, "")
			}
			for _, own := range []string{j.Name, flat(j.Notes)} {
				text = strings.ReplaceAll(text, own, "")
			}
			for _, at := range metric.FindAllStringIndex(text, -1) {
				assert.Fail(t, "not the unit that was chosen", "%s, %s: %s", name, what, text[max(0, at[0]-60):min(len(text), at[1]+30)])
			}
			some++
		}
	}
	require.Greater(t, some, 60)
}

// The line that keeps cells from being charged in the frost is in the unit that the person reads,
// with the maker's own beside it; the mouth's room and the degrees of a class too.
func TestSentencesInTheUnitsChosen(t *testing.T) {
	w := jobs(t)["../../testdata/jobs/pedals.toml"]
	text := flat(Text(w.b, &w.o, 0, Options{Units: quantity.Choice{Inch: true, Fahrenheit: true}}))
	assert.Contains(t, text, "No charging with cells below 32 °F (0 °C), and only slowly below 77 °F (25 °C): at most 0.1 A for each Ah up to 50 °F (10 °C), 0.2 A up to 77 °F (25 °C)")
	assert.Regexp(t, `passes the mouth with 0\.\d+ in to spare`, text)
	assert.Contains(t, flat(Text(w.b, &w.o, 0, Options{})), "No charging with cells below 0 °C, and only slowly below 25 °C: at most")
}

// What was read with magnets is not said to lack a field current, and one slot is no slots.
func TestWordsOfTheReport(t *testing.T) {
	w := workOut("[machine]\nslots = 18\npoles = 12\nbore_mm = 114\nstack_mm = 32\n[field]\nkind = \"magnets\"\n[[coil]]\nturns = 20\nspan = 1\nvoltage_v = 2.19\nspeed_rpm = 600\n[[trial]]\nname = \"A\"\nturns = 60\ngauge = \"18 AWG\"\n")
	text := flat(Report(w.b, &w.o, Options{}))
	require.Contains(t, text, "Trial coil 20 turns over 1 slot, ")
	assert.NotContains(t, strings.ToLower(text), "field current:")
	assert.NotContains(t, text, "no field current given")
	assert.Equal(t, "magnets need none", w.o.Machine.FieldAmps.Why)
	assert.Contains(t, text, "open at top speed V DC")
	assert.Contains(t, text, "two leads, 1000 rpm V AC")
}

// A trial of which neither turns nor wire are said has nothing worked out that could be better
// or worse than another's.
func TestAnEmptyTrialIsNotCompared(t *testing.T) {
	text := job.Example().Text() + "\n[[trial]]\nname = \"E\"\n"
	w := workOut(text)
	last := len(w.o.Trials) - 1
	require.Equal(t, "E", w.o.Trials[last].Name)
	for _, r := range w.o.Comparison {
		c := r.Cells[last]
		assert.NotContains(t, []winding.Verdict{winding.Better, winding.Worse, winding.Past}, c.Verdict, r.ID)
		assert.False(t, c.Percent.Known(), r.ID)
	}
	assert.False(t, w.o.Trials[last].MostVolts.Known())
}

// A winding that can be wound but brings less than was wanted says so where it says that it is
// ready, and so does one that brings nothing at the slow speed. The figure is the trial's own.
func TestReadySaysWhatItBrings(t *testing.T) {
	text := job.Example().Text()
	w := workOut(text)
	wanted := w.b.Job().Target.Amps
	require.True(t, wanted.Given())
	for i, tr := range w.o.Trials {
		first := flat(sheets(&w, i)[0])
		ready := strings.Contains(first, "READY TO WIND") && !strings.Contains(first, "NOT READY")
		short := tr.AmpsUsual.Value < wanted.Value
		assert.Equal(t, ready && short, strings.Contains(first, "It brings "+quantity.Number(tr.AmpsUsual.Value, 3)+" A of the "+quantity.Number(wanted.Value, quantity.AsGiven)+" A wanted"), tr.Name)
		assert.Equal(t, ready && tr.AmpsSlow.Value <= 0, strings.Contains(first, "Nothing comes in at "), tr.Name)
	}
}
