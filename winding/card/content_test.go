package card

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/text"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// section is the part of a text under a heading.
func section(t *testing.T, text, heading string) string {
	t.Helper()
	rule := strings.Repeat("-", width) + "\n"
	_, after, found := strings.Cut(text, rule+"  "+heading)
	require.True(t, found, heading)
	_, after, _ = strings.Cut(after, "\n"+rule)
	body, _, _ := strings.Cut(after, rule)
	return body
}

// Every value of the file is listed as typed, with its label; guesses are called so.
func TestInputsAsTyped(t *testing.T) {
	for name, w := range jobs(t) {
		body := flat(section(t, Report(w.b, &w.o, Options{Document: &w.d}), "WHERE EACH INPUT CAME FROM"))
		for i := range job.Fields {
			f := &job.Fields[i]
			for n := range max(1, w.d.Count(f.Table)) {
				typed, _, ok := w.d.Typed(f.PathAt(n))
				if ok && f.Name != "format" && f.Path() != "notes" && text.Width(typed) < 30 {
					require.Contains(t, body, flat(f.Label+" "+typed), name+" "+f.PathAt(n))
				}
			}
		}
	}
	w := workOut(job.Example().Text())
	body := flat(section(t, Report(w.b, &w.o, Options{Document: &w.d}), "WHERE EACH INPUT CAME FROM"))
	for _, want := range []string{"Mean turn ~185 mm (guessed)", "Air gap 0.40 ±0.05 mm (measured)", "Turns 17 (chosen)", "Wire 1.80 mm over"} {
		assert.Contains(t, body, want)
	}
}

func TestABadInputSaysSo(t *testing.T) {
	w := workOut("[machine]\nbore_mm = \"wide\"\n[[trial]]\nname = \"A\"\n")
	assert.Contains(t, flat(Report(w.b, &w.o, Options{Document: &w.d})), "Diameter at the gap wide (NOT USED: expected a number")
}

func TestUnits(t *testing.T) {
	w := workOut(job.Example().Text())
	units := quantity.Choice{Inch: true, Fahrenheit: true}
	machine := flat(section(t, Report(w.b, &w.o, Options{Units: units}), "THE MACHINE"))
	assert.Contains(t, machine, "Bore 3.504 in") // 89 / 25.4
	assert.Contains(t, machine, "Air around it 68 °F")
	assert.Contains(t, machine, "Air gap 0.01575 ±0.00197 in")
	inch := flat(Text(w.b, &w.o, 0, Options{Units: units}))
	for _, want := range []string{"Ω at 68 °F", "straight 2.01 in", " ft, ", "CUT insulation, in inches."} { // 51 mm
		assert.Contains(t, inch, want)
	}
	ascii := Text(w.b, &w.o, 0, Options{ASCII: true})
	for _, want := range []string{"degC", "ohm", "+/-", "1 x 15 AWG"} {
		assert.Contains(t, ascii, want)
	}
}

// Findings and cautions are in the report word for word; the worst of a trial on its card.
func TestFindings(t *testing.T) {
	for name, w := range jobs(t) {
		report := flat(Report(w.b, &w.o, Options{}))
		for _, c := range w.o.Cautions {
			require.Contains(t, report, flat(c.Text), name)
		}
		for _, f := range w.o.Findings {
			require.Contains(t, report, flat(about(f)+f.Text), name)
			require.Contains(t, report, flat(f.Fix), name)
		}
		for i, tr := range w.o.Trials {
			if stand := newWriter(w.b, &w.o, Options{}).against(tr.Name); len(stand) > 0 {
				require.Contains(t, flat(sheets(&w, i)[0]), flat(title(stand[0].Text)), name)
				for _, f := range stand {
					require.True(t, f.Trial == "" || f.Trial == tr.Name, name)
				}
			}
		}
	}
}

func about(f winding.Finding) string {
	if f.Trial == "" {
		return ""
	}
	return "trial " + f.Trial + ": "
}

// The report has every row of the comparison with every trial's figure and verdict.
func TestReportRows(t *testing.T) {
	for name, w := range jobs(t) {
		side := section(t, Report(w.b, &w.o, Options{}), "SIDE BY SIDE")
		for _, r := range w.o.Comparison {
			require.Contains(t, side, "  "+r.Label, name)
		}
		words := map[winding.Verdict]string{winding.Better: "better", winding.Worse: "worse", winding.Same: "same", winding.Past: "PAST"}
		for v, word := range words {
			want := 0
			for _, r := range w.o.Comparison {
				for _, c := range r.Cells {
					if c.Verdict == v {
						want++
					}
				}
			}
			_, table, _ := strings.Cut(side, "limit.\n") // below the words about it
			require.Equal(t, want, strings.Count(table, word), "%s: %s", name, word)
		}
	}
}

// Below the comparison stands every figure that is for the report alone, once, where any trial has it, but for
// those of a condition that is shown as another.
func TestMoreFiguresAreThoseOfTheReportAlone(t *testing.T) {
	shown, again := 0, 0
	for name, w := range jobs(t) {
		if len(w.o.Trials) == 0 {
			continue
		}
		more := "\n" + strings.ReplaceAll(section(t, Report(w.b, &w.o, Options{}), "MORE FIGURES"), "\n", " \n")
		row, times := newWriter(w.b, &w.o, Options{}), map[string]int{}
		for _, o := range winding.Outputs() {
			label := row.withUnit(o.LabelFor(&w.o.Machine), quantity.Choice{}.For(o.DimFor(row.windy())).Name)
			times[label] += 0
			for i := range w.o.Trials {
				if o.Show != winding.InReport || !o.Of(&w.o.Trials[i]).Known() {
					continue
				}
				if o.Again(&w.o.Machine) {
					again++
				} else {
					times[label] = 1
				}
			}
		}
		for label, want := range times {
			shown += want
			assert.Equal(t, want, strings.Count(more, "\n  "+label+" "), "%s: %s", name, label)
		}
	}
	assert.Greater(t, shown, 100)
	assert.Positive(t, again)
}

func TestInventedSaysSo(t *testing.T) {
	w := workOut(job.Example().Text())
	w.o.Invented = true
	assert.Contains(t, Text(w.b, &w.o, 0, Options{}), "INVENTED EXAMPLE")
	assert.Contains(t, Report(w.b, &w.o, Options{}), "INVENTED EXAMPLE")
	w.o.Invented = false
	assert.NotContains(t, Text(w.b, &w.o, 0, Options{}), "INVENTED EXAMPLE")
}

// Where it really runs: every loss of each condition is in the report, and the drive's watts are those
// of the losses and the battery together.
func TestWhereTheWattsGo(t *testing.T) {
	tables := 0
	for name, w := range jobs(t) {
		report := section(t, Report(w.b, &w.o, Options{}), "WHERE EACH TRIAL REALLY RUNS")
		for i := range w.o.Trials {
			tr := &w.o.Trials[i]
			if len(tr.Operating) == 0 {
				require.Contains(t, flat(report), "not known: ", name)
				continue
			}
			tables++
			list := newWriter(w.b, &w.o, Options{}).ownConditions(tr)
			for _, o := range list {
				lost := o.BeltWatts + o.IronWatts + o.CopperWatts + o.DiodeWatts + o.CableWatts + o.FieldWatts + o.ControllerWatts
				// The solver's own balance is good to a part in a thousand.
				require.InDelta(t, o.DriveWatts, lost+o.NetWatts, 0.002*o.DriveWatts+0.01, "%s, %s, %s", name, tr.Name, o.Condition)
			}
			for label, of := range map[string]func(*winding.Operating) float64{
				"copper, W": func(o *winding.Operating) float64 { return o.CopperWatts }, "alternator turns, rpm": func(o *winding.Operating) float64 { return o.RPM },
				"net into the battery, W": func(o *winding.Operating) float64 { return o.NetWatts }, "net amps, A": func(o *winding.Operating) float64 { return o.NetAmps },
			} {
				if !w.o.Machine.ChargingVolts.Known() { // a lamp or a converter
					label = strings.Replace(label, "net into the battery", "into the load", 1)
				}
				u, any := quantity.Watts[0], false
				switch label[len(label)-1:] {
				case "A":
					u = quantity.Amps[0]
				case "m":
					u = quantity.RPM[0]
				}
				want := label
				for _, o := range list {
					any = any || of(o) != 0
					want += " " + quantity.File.Value(of(o), u, 3)
				}
				if any {
					require.Contains(t, flat(report), want, name)
				}
			}
		}
	}
	assert.Greater(t, tables, 10)
}

// Net amps below nothing keep their sign, in both alphabets.
func TestNetAmpsBelowNothing(t *testing.T) {
	w := workOut(job.Example().Text())
	tr := &w.o.Trials[0]
	require.Less(t, tr.AmpsSlow.Value, -1.0)
	for _, ascii := range []bool{false, true} {
		first := flat(Text(w.b, &w.o, 0, Options{ASCII: ascii}))
		assert.Contains(t, first, fmt.Sprintf("net amps, wheel 45 rpm ~-%.2f A", -tr.AmpsSlow.Value))
		losses := flat(Report(w.b, &w.o, Options{ASCII: ascii, Sections: []string{"losses"}}))
		assert.Contains(t, losses, fmt.Sprintf("net amps, A -%.2f", -tr.AmpsSlow.Value))
	}
}

// The most volts anywhere are a second figure only where they are more than the open volts at
// top speed; where those are missing they stand alone.
func TestMostVoltsAreSaidWhereTheyAreMore(t *testing.T) {
	w := &writer{paper: newPaper(false, quantity.Choice{}, 0)}
	of := func(v float64) quantity.Figure { return quantity.Of(v, quantity.Measured) }
	none := quantity.Missing("nobody knows")
	for _, c := range []struct {
		most, top quantity.Figure
		said      bool
	}{
		{of(40), of(40), false}, {of(41), of(40), true}, {of(40), none, true}, {none, of(40), false}, {none, none, false},
	} {
		var trial winding.TrialOutcome
		trial.MostVolts, trial.OpenAtTopVolts = c.most, c.top
		got := w.highest(&trial)
		assert.Equal(t, c.said, got != "", "%v over %v: %q", c.most, c.top, got)
	}
}

// What a controller in series is taken for stands below its watts, in the report and nowhere without it.
func TestTheReportSaysWhatTheControllerIsTakenFor(t *testing.T) {
	text, err := os.ReadFile("../../testdata/jobs/wind-held.toml")
	require.NoError(t, err)
	w := workOut(string(text))
	said := "taken as one that drops volts and burns them; " + winding.IfItSwitches
	assert.Contains(t, flat(Report(w.b, &w.o, Options{})), said)
	w = workOut(strings.Replace(string(text), "[battery]", "[battery]\nheld_by = \"shunt\"", 1))
	require.Equal(t, job.HeldByShunt, w.b.Job().Battery.HeldBy)
	assert.NotContains(t, flat(Report(w.b, &w.o, Options{})), said)
}
