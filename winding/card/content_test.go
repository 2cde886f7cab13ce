package card

import (
	"fmt"
	"math"
	"strconv"
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

// Every coil is on the card once as a step with a box, every slot once, every joint.
func TestTheWholeLayoutIsOnTheCard(t *testing.T) {
	for name, w := range jobs(t) {
		for i := range w.o.Trials {
			plan, why := w.b.Plan(i)
			text := Text(w.b, &w.o, i, Options{})
			if plan == nil {
				require.Contains(t, flat(section(t, text, "WINDING ORDER")), flat("not known: "+why), name)
				continue
			}
			order := section(t, text, "WINDING ORDER")
			for _, s := range plan.WindingOrder() {
				require.Contains(t, flat(order), fmt.Sprintf("[ ] %d %s", s.Number, s), name)
			}
			require.Equal(t, len(plan.WindingOrder()), strings.Count(order, "[ ]"), name)
			require.Equal(t, plan.Spec().Slots, strings.Count(section(t, text, "SLOT TABLE"), "[ ]"), name)

			wiring := plan.Wiring(w.o.Trials[i].Connection)
			joints := flat(section(t, text, "JOINTS AND LEADS"))
			for _, j := range wiring.Joins {
				require.Contains(t, joints, j.From.String()+" to "+j.To.String(), name)
			}
			for _, n := range wiring.Nodes {
				require.Contains(t, joints, n.Name+": join "+strings.Join(n.Leads, " + "), name)
			}
			require.Equal(t, len(wiring.Joins)+len(wiring.Leads)+len(wiring.Nodes), strings.Count(joints, "[ ]"), name)
		}
	}
}

func TestSlotRows(t *testing.T) {
	w := workOut(job.Example().Text())
	table := section(t, Text(w.b, &w.o, 0, Options{}), "SLOT TABLE")
	// Slots 1 and 4 hold the two sides of coil 1 of phase U.
	assert.Contains(t, table, "[ ]     1  whole slot         +U        1  start       17\n")
	assert.Contains(t, table, "[ ]     4  whole slot         -U        1  finish      17\n")
}

func TestDeltaAndCircuits(t *testing.T) {
	w := workOut(tangled)
	text := flat(Text(w.b, &w.o, 0, Options{}))
	for _, want := range []string{"TURNS, coil by coil 12, 10 (outermost first)", "CONNECTION delta", "CIRCUITS 2 circuits in each phase",
		"delta U1-W2: join U1 + W2", "(circuit 2 of 2)"} {
		assert.Contains(t, text, want)
	}
	two := flat(Text(w.b, &w.o, 1, Options{}))
	assert.Contains(t, two, "0.6 mm: bare 0.600 mm, 0.0236 in")
	assert.Contains(t, two, "0.5 mm: bare 0.500 mm, 0.0197 in")
	assert.Contains(t, two, "STRANDS in hand 3")
}

// withSpread is a figure to three digits and how far it may be off to two.
func withSpread(f quantity.Figure) string {
	digits := func(v float64, n int) string {
		return strconv.FormatFloat(v, 'f', max(0, n-1-int(math.Floor(math.Log10(v)))), 64)
	}
	if f.PlusMinus == 0 {
		return digits(f.Value, 3)
	}
	return digits(f.Value, 3) + " ±" + digits(f.PlusMinus, 2)
}

// The figures to prove the winding by are those of the outcome, with room to write.
func TestExpectedReadings(t *testing.T) {
	w := workOut(job.Example().Text())
	for i := range w.o.Trials {
		tr, m := &w.o.Trials[i], &w.o.Machine
		body := section(t, Text(w.b, &w.o, i, Options{}), "EXPECTED READINGS")
		line := flat(body)
		assert.Contains(t, line, fmt.Sprintf("expected at 20 °C %s Ω", withSpread(tr.LeadOhms20)))
		assert.Contains(t, line, fmt.Sprintf("expected at %.0f °C %s Ω", m.TestC.Value, withSpread(tr.LeadOhmsT)))
		assert.Contains(t, line, fmt.Sprintf("expected at %.0f rpm %s V", m.TestRPM.Value, withSpread(tr.LineAtTest)))
		for _, pair := range []string{"U1 - V1", "V1 - W1", "W1 - U1"} {
			assert.Equal(t, 2, strings.Count(body, "[ ] "+pair+"            measured  ____________"), pair)
		}
	}
}

func TestLeadPairs(t *testing.T) {
	for text, want := range map[string]string{
		"[machine]\nphases = 1\n[[trial]]\nname = \"A\"\n":                                               "U1 - U2",
		"[machine]\nphases = 1\nslots = 24\npoles = 8\nlayers = 2\n[[trial]]\nname = \"A\"\nturns = 9\n": "U1 - U2",
		"[machine]\nslots = 72\npoles = 12\nsets = 2\nlayers = 1\n[[trial]]\nname = \"A\"\nturns = 5\n":  "1U1 - 1V1, 1V1 - 1W1, 1W1 - 1U1, 2U1 - 2V1, 2V1 - 2W1, 2W1 - 2U1",
	} {
		w := workOut(text)
		assert.Equal(t, want, strings.Join(newWriter(w.b, &w.o, Options{}).leadPairs(0), ", "), text)
	}
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
	body := flat(Text(w.b, &w.o, 1, Options{Document: &w.d}))
	for _, want := range []string{"Mean turn ~185 mm (guessed)", "Air gap 0.40 ±0.05 mm (measured)", "Turns 21 (chosen)", "Wire 1.80 mm over"} {
		assert.Contains(t, body, want)
	}
	assert.NotContains(t, section(t, body0(&w), "WHERE EACH INPUT CAME FROM"), "Trial winding 1", "the other trial is none of this card's business")
}

func body0(w *worked) string { return Text(w.b, &w.o, 1, Options{Document: &w.d}) }

func TestABadInputSaysSo(t *testing.T) {
	w := workOut("[machine]\nbore_mm = \"wide\"\n[[trial]]\nname = \"A\"\n")
	assert.Contains(t, flat(Text(w.b, &w.o, 0, Options{Document: &w.d})), "Bore wide (NOT USED: expected a number")
}

func TestUnits(t *testing.T) {
	w := workOut(job.Example().Text())
	inch := Text(w.b, &w.o, 0, Options{Units: quantity.Choice{Inch: true, Fahrenheit: true}})
	machine := flat(section(t, inch, "THE MACHINE"))
	assert.Contains(t, machine, "Bore 3.504 in") // 89 / 25.4
	assert.Contains(t, machine, "Air around it 68 °F")
	assert.Contains(t, machine, "Air gap 0.01575 ±0.002 in")
	assert.Contains(t, flat(inch), "expected at 68 °F")
	ascii := Text(w.b, &w.o, 0, Options{ASCII: true})
	for _, want := range []string{"mm2", "degC", "ohm", "+/-", "1 x 15 AWG", "sqrt"} {
		assert.Contains(t, ascii, want)
	}
}

// What is missing is named with its reason; nothing is left out.
func TestMissingSaysWhy(t *testing.T) {
	w := workOut("[[trial]]\nname = \"A\"\n")
	text := Text(w.b, &w.o, 0, Options{})
	tr := &w.o.Trials[0]
	for label, f := range map[string]quantity.Figure{"Wire fill": tr.WireFill, "Turns in series": tr.SeriesTurns, "Winding factor kw1": tr.Kw1, "Mean turn": tr.MeanTurnMM} {
		require.False(t, f.Known(), label)
		body := flat(section(t, text, "NEW WINDING"))
		require.Contains(t, body, label)
		require.Contains(t, body, ": "+f.Why, label)
	}
	assert.Contains(t, flat(section(t, text, "EXPECTED READINGS")), "not known: "+tr.LeadOhms20.Why)
	assert.Contains(t, flat(section(t, text, "CURRENT LIMITS")), "not known: "+tr.LimitAmps.Why)
}

// Cautions and findings are there word for word; the other trial's findings are not.
func TestCautionsAndFindings(t *testing.T) {
	for name, w := range jobs(t) {
		report := flat(Report(w.b, &w.o, Options{}))
		for _, c := range w.o.Cautions {
			require.Contains(t, report, flat(c.Text), name)
		}
		for _, f := range w.o.Findings {
			require.Contains(t, report, flat(f.Text), name)
			require.Contains(t, report, flat(f.Fix), name)
			for i, tr := range w.o.Trials {
				card := flat(section(t, Text(w.b, &w.o, i, Options{}), "FINDINGS"))
				require.Equal(t, f.Trial == "" || f.Trial == tr.Name, strings.Contains(card, flat(about(f)+f.Text)), "%s: %s", name, f.Text)
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

func TestInventedSaysSo(t *testing.T) {
	w := workOut(job.Example().Text())
	w.o.Invented = true
	assert.Contains(t, Text(w.b, &w.o, 0, Options{}), "INVENTED EXAMPLE")
	assert.Contains(t, Report(w.b, &w.o, Options{}), "INVENTED EXAMPLE")
	w.o.Invented = false
	assert.NotContains(t, Text(w.b, &w.o, 0, Options{}), "INVENTED EXAMPLE")
}

// The card of a trial has no caution, and no sentence, about another trial.
func TestACardIsAboutItsTrialOnly(t *testing.T) {
	left := 0
	for name, w := range jobs(t) {
		for i, tr := range w.o.Trials {
			card := flat(Text(w.b, &w.o, i, Options{Document: &w.d}))
			for _, c := range w.o.Cautions {
				own := c.Trial == "" || c.Trial == tr.Name
				if !own {
					left++
				}
				require.Equal(t, own, strings.Contains(card, flat(c.Text)), "%s, card of %s: %s", name, tr.Name, c.Text)
			}
		}
	}
	assert.Positive(t, left)
	w := workOut(job.Example().Text())
	for i, tr := range w.o.Trials {
		// Trial C is one of the example that is blamed for much.
		card, _, _ := strings.Cut(flat(Text(w.b, &w.o, i, Options{})), "WHERE EACH INPUT")
		if tr.Name != "C" {
			assert.NotContains(t, card, "trial C")
			assert.NotContains(t, card, "Trial C")
		}
	}
}

// Where it really runs: every loss of each condition is on the card and in the report, and
// the drive's watts are those of the losses and the battery together.
func TestWhereTheWattsGo(t *testing.T) {
	tables := 0
	for name, w := range jobs(t) {
		report := section(t, Report(w.b, &w.o, Options{}), "WHERE EACH TRIAL REALLY RUNS")
		for i := range w.o.Trials {
			tr := &w.o.Trials[i]
			charging := section(t, Text(w.b, &w.o, i, Options{}), "CHARGING")
			if len(tr.Operating) == 0 {
				require.Contains(t, flat(charging), "not known: ", name)
				continue
			}
			tables++
			list := newWriter(w.b, &w.o, Options{}).ownConditions(tr)
			for _, o := range list {
				lost := o.BeltWatts + o.IronWatts + o.CopperWatts + o.DiodeWatts + o.CableWatts + o.FieldWatts
				// The solver's own balance is good to a part in a thousand.
				require.InDelta(t, o.DriveWatts, lost+o.NetWatts, 0.002*o.DriveWatts+0.01, "%s, %s, %s", name, tr.Name, o.Condition)
			}
			for label, of := range map[string]func(*winding.Operating) float64{
				"copper, W": func(o *winding.Operating) float64 { return o.CopperWatts }, "alternator turns, rpm": func(o *winding.Operating) float64 { return o.RPM },
				"net into the battery, W": func(o *winding.Operating) float64 { return o.NetWatts }, "net amps, A": func(o *winding.Operating) float64 { return o.NetAmps },
			} {
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
					require.Contains(t, flat(charging), want, name)
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
		charging := flat(section(t, Text(w.b, &w.o, 0, Options{ASCII: ascii}), "CHARGING"))
		assert.Contains(t, charging, fmt.Sprintf("Net amps, wheel 45 rpm -%.2f A at ~%.2f V, bridge 0 A", -tr.AmpsSlow.Value, w.o.Machine.ChargingVolts.Value))
		assert.Contains(t, charging, fmt.Sprintf("net amps, A -%.2f", -tr.AmpsSlow.Value))
	}
}
