package card

import (
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sheets are those of a card.
func sheets(w *worked, trial int) []string {
	return strings.Split(Text(w.b, &w.o, trial, Options{Pages: true}), "\f")
}

// aCoil is a row of the coil list, wherever its column stands.
var aCoil = regexp.MustCompile(`\[ \] (\d?[UVW]1?) +(\d+) +(\d+) +(\d+) +(\d+|____) (cw|acw) +(\S+( at \d+)?)`)

// Every coil is in the list once with a box, in the order of the wire, with what it is
// joined to; every slot once in the table. Large machines have the list on sheet two.
func TestTheWholeLayoutIsOnTheCard(t *testing.T) {
	for name, w := range jobs(t) {
		for i := range w.o.Trials {
			plan, why := w.b.Plan(i)
			all := sheets(&w, i)
			if plan == nil {
				require.Contains(t, flat(all[0]), flat("coil list ("+why+")"), name)
				continue
			}
			rows := map[string]bool{}
			for _, s := range all {
				for _, m := range aCoil.FindAllStringSubmatch(s, -1) {
					rows[strings.Join(m[1:8], "|")] = true
				}
			}
			counted := w.d.Job().Trials[i].Turns.Given() || len(w.d.Job().Trials[i].CoilTurns) > 0
			for _, s := range plan.WindingOrder() {
				lead, turns, way, to := s.Name, "____", "acw", s.EndLead
				if s.Lead != "" {
					lead = s.Lead
				}
				if counted {
					turns = fmt.Sprint(s.Turns)
				}
				if s.Clockwise {
					way = "cw"
				}
				if to == "" {
					to = fmt.Sprintf("%d at %d", s.Next.Coil, s.Next.Slot)
				}
				require.True(t, rows[fmt.Sprintf("%s|%d|%d|%d|%s|%s|%s", lead, s.Coil, s.From, s.To, turns, way, to)], "%s: %s", name, s)
			}
			require.Len(t, rows, len(plan.WindingOrder()), name)
			require.Equal(t, plan.Spec().Slots <= mostSlots, aCoil.MatchString(all[0]), name)

			place := " slot "
			if w.d.Job().Machine.Stator == "flat" {
				place = " gap "
			}
			table := strings.Join(all[1:], "\n")
			for n := 1; n <= plan.Spec().Slots; n++ {
				require.Equal(t, 1, strings.Count(table, "\n"+slotRow(plan, n)+"  ")+strings.Count(table, "   "+slotRow(plan, n)+"  ")+
					strings.Count(table, "\n"+slotRow(plan, n)+"\n")+strings.Count(table, "   "+slotRow(plan, n)+"\n"), "%s: slot %d", name, n)
			}
			for _, n := range plan.Wiring(w.o.Trials[i].Connection).Nodes {
				require.Contains(t, flat(all[0]), "[ ] "+n.Name+": join "+n.Leads[0]+place, name)
			}
		}
	}
}

func TestSlotRows(t *testing.T) {
	w := workOut(job.Example().Text())
	plan, _ := w.b.Plan(0)
	// Slots 1 and 4 hold the two sides of coil 1 of phase U.
	assert.Equal(t, "[ ]   1  +U 1s", slotRow(plan, 1))
	assert.Equal(t, "[ ]   4  -U 1f", slotRow(plan, 4))
}

func TestDeltaAndCircuits(t *testing.T) {
	w := workOut(tangled)
	text := flat(Text(w.b, &w.o, 0, Options{}))
	for _, want := range []string{"TURNS 12, 10 in the coils of a group, outermost first", "JOINED delta, 2 circuits in each phase",
		"[ ] delta U1-W2: join U1 slot", "FORMER one for each kind of coil", "throws slot 1 to ", "the coil list is on sheet two"} {
		assert.Contains(t, text, want)
	}
	two := flat(Text(w.b, &w.o, 1, Options{}))
	assert.Contains(t, two, "0.6 mm: bare 0.600 mm, 0.0236 in")
	assert.Contains(t, two, "0.5 mm: bare 0.500 mm, 0.0197 in")
	assert.Contains(t, two, "STRANDS in hand 3")
}

// The figures to prove the winding by are those of the outcome, with room to write.
func TestExpectedReadings(t *testing.T) {
	w := workOut(strings.Replace(job.Example().Text(), `"~185"`, `"185 ±18"`, 1))
	for i := range 2 { // the third is above 1 Ω, with fewer decimals
		tr, m := &w.o.Trials[i], &w.o.Machine
		one := sheets(&w, i)[0]
		line := flat(one)
		off := tr.LeadOhmsT.PlusMinus
		require.Positive(t, off)
		assert.Contains(t, line, fmt.Sprintf("OHMS before varnish: %.3f Ω at 20 °C, %.3f Ω at %.0f °C; must read %.3f to %.3f (±%.0f %%), pairs within 2 %% of mean (EASA AR100)",
			tr.LeadOhms20.Value, tr.LeadOhmsT.Value, m.TestC.Value, tr.LeadOhmsT.Value-off, tr.LeadOhmsT.Value+off, 100*off/tr.LeadOhmsT.Value))
		require.Less(t, tr.LineAtTest.PlusMinus, 0.05*tr.LineAtTest.Value, "the least that meter, speed and hand are allowed")
		assert.Contains(t, line, fmt.Sprintf("VOLTS AC open, alternator %.0f rpm, rotor with ~%.2f A: %.1f V; must read %.1f to %.1f (±5 %%)", m.TestRPM.Value, m.FieldAmps.Value,
			tr.LineAtTest.Value, 0.95*tr.LineAtTest.Value, 1.05*tr.LineAtTest.Value))
		for _, pair := range []string{"U1-V1", "V1-W1", "W1-U1"} {
			assert.Equal(t, 2, strings.Count(one, " "+pair+" ________"), pair)
		}
		assert.Contains(t, line, "NOT MORE THAN "+fmt.Sprintf("%.2f A DC from the bridge (%s); FUSE ~%.0f A", tr.LimitAmps.Value, tr.LimitBy, tr.FuseAmps.Value))
	}
}

// The former, a coil and the wire to buy stand on sheet one as they were worked out.
func TestFormerIsOnSheetOne(t *testing.T) {
	w := workOut(strings.Replace(job.Example().Text(), `"~185"`, `"185 ±18"`, 1))
	one := flat(sheets(&w, 0)[0])
	for _, want := range []string{"TURNS 17 in each coil", "throw slot 1 to 4", "straight 51.0 mm, width 26.9 mm, corner radius 12.8 mm to the coil's middle: block smaller by half its build; once round 185 ±18 mm",
		"3.15 ±0.31 m of each strand, 0.0462 ±0.0045 kg without enamel", "15 AWG: 62.3 m, 0.915 kg bare, spools of 1 kg: 1"} {
		assert.Contains(t, one, want)
	}
}

func TestLeadPairs(t *testing.T) {
	for text, want := range map[string]string{
		"[machine]\nphases = 1\n[[trial]]\nname = \"A\"\n":                                               "U1-U2",
		"[machine]\nphases = 1\nslots = 24\npoles = 8\nlayers = 2\n[[trial]]\nname = \"A\"\nturns = 9\n": "U1-U2",
		"[machine]\nslots = 72\npoles = 12\nsets = 2\nlayers = 1\n[[trial]]\nname = \"A\"\nturns = 5\n":  "1U1-1V1, 1V1-1W1, 1W1-1U1, 2U1-2V1, 2V1-2W1, 2W1-2U1",
	} {
		w := workOut(text)
		plan, _ := w.b.Plan(0)
		assert.Equal(t, want, strings.Join(newWriter(w.b, &w.o, Options{}).pairs(plan), ", "), text)
	}
}

// What is missing is a line to write on, named on top; the program's own counts of one do
// not stand in for it.
func TestUnfinishedIsNotReady(t *testing.T) {
	for text, missing := range map[string]string{
		"[[trial]]\nname = \"A\"\n": "turns; wire; coil list",
		"[machine]\nslots = 36\npoles = 12\nlayers = 1\n[[trial]]\nname = \"A\"\ngauge = \"15 AWG\"\n": "turns; room in the slot",
		"[machine]\nslots = 12\npoles = 8\nspan = 1\n[slot]\narea_mm2 = 99\n[[trial]]\nname = \"A\"\n": "turns; wire; mean turn",
	} {
		w := workOut(text)
		all := Text(w.b, &w.o, 0, Options{})
		assert.Contains(t, flat(all), "NOT READY TO WIND. Missing: "+missing, text)
		assert.NotContains(t, all, "\nREADY", text)
		assert.Contains(t, all, "TURNS     ______ in each coil", text)
		for _, m := range aCoil.FindAllStringSubmatch(all, -1) {
			assert.Equal(t, "____", m[5], text)
		}
		assert.NotRegexp(t, `\b1 turn\b`, all, text)
	}
	// With the turns taken out of the example nothing that hangs on them is left.
	text := strings.Replace(job.Example().Text(), "turns = 17\n", "", 1)
	w := workOut(text)
	one := flat(sheets(&w, 0)[0])
	assert.Contains(t, one, "NOT READY TO WIND. Missing: turns.")
	for _, want := range []string{"ONE COIL ______ m of each strand, ______ kg", "FILL ______ of", "OHMS before varnish: ______ Ω", "open, alternator 600 rpm, rotor with ~2.31 A: ______ V", "[ ] 15 AWG: ______ m, ______ kg"} {
		assert.Contains(t, one, want)
	}
	assert.Contains(t, one, "straight 51.0 mm", "the former needs no turns")
}

// A winding that does not fit is not ready, whatever else is known of it.
func TestBrokenIsNotReady(t *testing.T) {
	w := workOut(strings.Replace(job.Example().Text(), "turns = 17\n", "turns = 60\n", 1))
	assert.Contains(t, flat(sheets(&w, 0)[0]), "NOT READY TO WIND. Wire fill")
	w = workOut(job.Example().Text())
	assert.Contains(t, sheets(&w, 1)[0], "\nREADY TO WIND")
}

// What could be wound and would bring nothing where it runs most of the time is not ready; a
// lesser doubt stands behind a READY, and nothing behind one without any.
func TestNoUseIsNotReady(t *testing.T) {
	all := jobs(t)
	w := all["../../testdata/jobs/wind-wound-rotor.toml"]
	require.Less(t, w.o.Trials[1].AmpsUsual.Value, 0.0)
	assert.Contains(t, flat(sheets(&w, 1)[0]), "NOT READY TO WIND. The rotor takes ")
	w = all["../../testdata/jobs/hub-outside.toml"]
	require.Zero(t, w.o.Trials[0].AmpsUsual.Value)
	assert.Contains(t, flat(sheets(&w, 0)[0]), "NOT READY TO WIND. Does not charge in the usual condition")
	w = workOut(job.Example().Text())
	assert.Contains(t, flat(sheets(&w, 0)[0]), "READY TO WIND, BUT: Charging begins at ")
	assert.Contains(t, sheets(&w, 1)[0], "\nREADY TO WIND. It brings ")
	for name, w := range all {
		for i := range w.o.Trials {
			if a := w.o.Trials[i].AmpsUsual; a.Known() && a.Value <= 0 {
				said := 0
				for _, f := range w.o.Findings {
					if f.NoUse && f.Trial == w.o.Trials[i].Name {
						said++
					}
				}
				assert.Equal(t, 1, said, "%s says once that trial %d is of no use", name, i)
				assert.NotContains(t, sheets(&w, i)[0], "\nREADY", name)
			}
		}
	}
}

// Which stator, what it charges, what turns it and how it is geared stand on sheet one.
func TestWhatItIsFor(t *testing.T) {
	all := jobs(t)
	of := func(file string) string {
		w := all["../../testdata/jobs/"+file+".toml"]
		return flat(sheets(&w, 0)[0])
	}
	for file, want := range map[string]string{
		"bus":                    "FOR converter holding ",
		"lamp-half-wave":         "FOR resistor of ",
		"doubler-6v":             "FOR 6 V ",
		"axial-air-core":         "FOR 48 V AGM battery, 200 Ah, bridge; turned by wind rotor 2.4 m, ",
		"hub-outside":            "turned by pedals, chain: alternator 6.00 turns to 1",
		"flywheel-ten-of-twelve": "STATOR 12 slots, 12 poles, rotor outside; 108 mm across at the mouths, stack 19 mm",
	} {
		assert.Contains(t, of(file), want, file)
	}
	assert.Contains(t, of("lamp-half-wave"), "[ ] out, to the diode: U1 slot 1")
	assert.Contains(t, of("doubler-6v"), "A DC from the doubler (")
	assert.Contains(t, of("bus"), "FUSE as the converter's sheet asks: ______ A")
	assert.Contains(t, of("lamp-half-wave"), "FUSE none: a lamp or heater")
	assert.Contains(t, of("flywheel-ten-of-twelve"), "BARE teeth: 3, 4 (tooth 1 is between slots 1 and 2).")
}

// Flat coils have no slot, mouth, liner, wedge or iron, on no sheet; they have a hole, cheeks,
// ties and mat.
func TestFlatCoilsHaveNoSlots(t *testing.T) {
	w := jobs(t)["../../testdata/jobs/axial-air-core.toml"]
	card := Text(w.b, &w.o, 0, Options{})
	for _, no := range []string{"throw slot", "slot", "SLOT", "mouth", "liner", "wedge", "TO IRON", "bore", "layer", "Bottom", "tooth"} {
		for _, line := range strings.Split(card, "\n") {
			if !strings.HasPrefix(line, "! ") && !strings.Contains(line, "liner, sleeving") && !strings.HasPrefix(line, "than the") { // a finding's words
				assert.NotContains(t, line, no)
			}
		}
	}
	// By hand: 1.5·2·(25 + 13) = 114 mm a tie, four a coil of nine; 240 ± (46 + 2·25) mm the mat.
	for _, want := range []string{"hole 46 mm by 30 mm, between cheeks 13 mm apart, the sides at most 25 mm wide", "gap 1", "GAPS", "tie, coil 36 114", "glass mat 2 336 144"} {
		assert.Contains(t, flat(card), want)
	}
}

// Two cards of one job differ where the winding does: the lines stand where they stood.
func TestCardsDiffCleanly(t *testing.T) {
	turns := func(now string) worked {
		return workOut(strings.Replace(job.Example().Text(), "turns = 17\n", "turns = "+now+"\n", 1))
	}
	w, less := turns("16"), turns("15") // of one fuse
	before, after := strings.Split(Text(w.b, &w.o, 0, Options{}), "\n"), strings.Split(Text(less.b, &less.o, 0, Options{}), "\n")
	require.Len(t, after, len(before))
	figures, coils := 0, 0
	for i := range before {
		switch {
		case before[i] == after[i]:
		case aCoil.MatchString(before[i]):
			coils++
			assert.Equal(t, strings.ReplaceAll(before[i], "   16 cw", "   15 cw"), after[i])
		default:
			figures++
		}
	}
	assert.Equal(t, 9, coils, "18 coils in two columns")
	assert.LessOrEqual(t, figures, 14)
}

// Cautions of the trial come before all others on sheet one; another trial's are not there.
func TestCautionsOfTheTrial(t *testing.T) {
	for name, w := range jobs(t) {
		for i, tr := range w.o.Trials {
			all := sheets(&w, i)
			whole := flat(strings.Join(all, "\n"))
			for _, c := range w.o.Cautions {
				if c.Topic != "estimate" {
					require.Equal(t, c.Trial == "" || c.Trial == tr.Name, strings.Contains(whole, flat(c.Text)), "%s %s: %s", name, tr.Name, c.Text)
				}
				if c.Topic == "voltage" && c.Trial == tr.Name {
					require.Contains(t, flat(all[0]), flat(c.Text), name)
				}
			}
		}
	}
}

// The fuse follows the most that can flow, for it guards the cable. Where that is far more than
// the winding may carry, sheet one says beside it that the fuse does not guard that.
func TestFuseBesideTheLimit(t *testing.T) {
	all := jobs(t)
	const says = "The fuse guards the cable, not the winding: "
	w := all["../../testdata/jobs/wind-good.toml"]
	require.Greater(t, w.o.Trials[0].FuseAmps.Value, 2*w.o.Trials[0].LimitAmps.Value)
	assert.Contains(t, flat(sheets(&w, 0)[0]), says+"furl below those amps. OPEN")
	engine, err := os.ReadFile("../../testdata/jobs/engine.toml")
	require.NoError(t, err)
	w = workOut(strings.Replace(string(engine), "cooling = \"fan\"", "cooling = \"fan\"\nambient_c = 50", 1))
	require.Greater(t, w.o.Trials[0].FuseAmps.Value, 2*w.o.Trials[0].LimitAmps.Value)
	assert.Contains(t, flat(sheets(&w, 0)[0]), says+"hold its amps back. OPEN")
	w = workOut(job.Example().Text())
	assert.NotContains(t, sheets(&w, 0)[0], says)
}

// A separator is cut where one is given, and none where its field is empty, which says that none
// will be used. wind-good: a stack of 40 mm, and 5 mm out of each end.
func TestSeparator(t *testing.T) {
	text, err := os.ReadFile("../../testdata/jobs/wind-good.toml")
	require.NoError(t, err)
	require.NotContains(t, string(text), "separator")
	without := workOut(string(text))
	assert.NotContains(t, Text(without.b, &without.o, 0, Options{}), "separator")

	with := workOut(strings.Replace(string(text), "[slot]", "[slot]\nseparator_mm = 0.3", 1))
	all := with.o.Trials[0].Cuts
	at := slices.IndexFunc(all, func(c winding.Cut) bool { return c.Name == "separator" })
	require.GreaterOrEqual(t, at, 0)
	assert.InDelta(t, 50, all[at].LengthMM.Value, 1e-9)
	assert.InDelta(t, 0.3, all[at].ThickMM.Value, 1e-9)
	assert.Contains(t, sheets(&with, 0)[1], "separator")
}

// A lamp is neither empty nor full and takes no charge: where a trial runs on one is told of the load.
func TestALampIsNotToldOfAsABattery(t *testing.T) {
	all := jobs(t)
	of := func(file string) string {
		w := all["../../testdata/jobs/"+file+".toml"]
		p := newWriter(w.b, &w.o, Options{})
		p.operating(&w.o.Trials[0])
		p.allSpeeds()
		return p.paper.b.String()
	}
	lamp := of("lamp-half-wave")
	assert.Contains(t, lamp, "into the load, W")
	assert.Contains(t, lamp, "load W")
	assert.NotContains(t, strings.ToLower(lamp), "battery")
	assert.Contains(t, of("pedals"), "battery nearly full, A")
}
