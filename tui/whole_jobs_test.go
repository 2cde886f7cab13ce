package tui

import (
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whole jobs, from a blank one to a card on disk, typed as a person would. The machines are
// invented; what the screen says of them is held to what can be worked out beside it, in each
// test's comment, from these:
//
//   - volts go as turns where iron, layout and field stay;
//   - resistivity of copper at 20 °C 0.017241 Ω·mm²/m (IEC 60028), a gauge's diameter
//     0.127 mm × 92^((36 − n)/39) (ASTM B258);
//   - a rotor coil of 3.4 Ω at 20 °C takes (13.6 − 1) / (3.4 × 1.236) = 3.0 A at 80 °C, one of 4.1 Ω
//     2.5 A: what they had at the readings;
//   - a bridge conducts from where the peak between two leads passes the battery and two
//     diodes; a silicon diode begins at 0.7 to 0.9 V (from memory); a charged lead cell
//     rests at 2.10 V (from memory).

func blankJob() *session.Session {
	return session.New(job.Parse(job.Template("")), "", job.Mark{})
}

// cardAndFile names and saves the job, writes the card of the chosen trial, and gives both as
// they are on disk, blanks made one.
func (h *hand) cardAndFile(name, trial string) (card string, j job.Job) {
	h.t.Helper()
	h.begins("save")
	h.key("ctrl+s")
	h.sees("Save the job as")
	h.letters(name)
	h.key("enter")
	h.sees("saved to " + name + `\.toml`)
	h.begins("card")
	h.command("winding card")
	h.sees("Write the winding card of trial " + trial)
	h.key("enter")
	h.sees("card written to")
	text, err := os.ReadFile(name + "-card-" + strings.ToLower(trial) + ".txt")
	require.NoError(h.t, err)
	d, _, err := job.Load(name + ".toml")
	require.NoError(h.t, err)
	require.Empty(h.t, d.Problems())
	return tuitest.Words(string(text)), d.Job()
}

// number is the figure that follows a row's label on the screen, in the given column.
func (h *hand) number(label string, column int) float64 {
	h.t.Helper()
	for _, line := range strings.Split(h.st.Screen(), "\n") {
		if _, after, ok := strings.Cut(line, label); ok {
			list := regexp.MustCompile(`(^|\s)~?(\d[\d.]*)`).FindAllStringSubmatch(after, -1)
			require.Greater(h.t, len(list), column, line)
			v, err := strconv.ParseFloat(list[column][2], 64)
			require.NoError(h.t, err)
			return v
		}
	}
	h.t.Fatalf("no row %q:\n%s", label, h.st.Screen())
	return 0
}

// A claw-pole alternator of 36 slots and 12 poles behind an engine. Old: 9 turns of 1.6 mm, 14.0 V at
// 1000 rpm and 3 A, 0.18 Ω. 18 turns: 28.0 V. The battery at rest, 12.78 V, drives (12.78 − 1) / (3.4 ×
// 1.236) = 2.80 A, which makes 0.966 of the flux (2x/(1 + x), the iron half full): charging from (12.78
// + 2 × 0.7 … 0.9) / (√2 × 0.028 × 0.966) = 371 … 381 rpm; of 17 AWG (1.150 mm, 1.038 mm²) 0.18 × 18/9
// × 2.011/1.038 = 0.697 Ω. 24 turns of 19 AWG (0.912 mm, 0.653 mm²): 37.3 V and 0.18 × 24/9 ×
// 2.011/0.653 = 1.478 Ω. One slot to a pole and phase at full pitch: winding factor 1. 36 slots with
// one coil side each: 18 coils, 6 to a phase. 500 rpm × 140/60 less 2 % of slip = 1143 rpm.
func TestAClawPoleFromBlankToCard(t *testing.T) {
	h := newHand(t, blankJob(), 100, 30)
	h.begins("readings")
	h.at("Slots")
	h.give("36", "12", "")
	h.at("Span")
	h.give("3", "1", "92", "36", "84", "9", "1.6 mm", "0.18", "w", "3.4", "1000", "14", "3")
	h.begins("first trial")
	h.at("Trial winding: turns")
	h.give("18", "17 AWG")
	h.sees("wire fill", `turns that fit`, `leads, 1000 rpm 28\.0 V`, "current limit", "wire to buy")
	assert.Less(t, h.total(), 70, "from nothing to the first full column")
	h.begins("drive and battery")
	h.at("Air gap")
	h.give("0.4", "14", "35", "4000", "e", "b", "140", "60", "500", "900", "1500", "800")
	h.at("Battery")
	h.give("a", "6")
	h.sees("next: tab, Trials", `Cells 6 ◆ 12\.78 V`)
	h.begins("second trial")
	h.screen("Trials")
	h.key("n")
	h.give("24", "19 AWG")
	assert.InDelta(t, 28.0, h.number("two leads, 1000 rpm, V AC", 1), 0.05)
	assert.InDelta(t, 37.3, h.number("two leads, 1000 rpm, V AC", 2), 0.05)
	assert.InDelta(t, 0.697, h.number("lead to lead 20 °C, Ω", 1), 0.007)
	assert.InDelta(t, 1.478, h.number("lead to lead 20 °C, Ω", 2), 0.015)
	assert.InDelta(t, 376, h.number("charging begins, alt. rpm", 1), 5)
	h.sees(`slow 1143`, `●B`)
	h.begins("layout")
	h.screen("Layout")
	h.sees(`kw1[^\d]+1\.000`)
	card, j := h.cardAndFile("claw", "B")
	assert.Contains(t, card, "WINDING CARD, TRIAL B")
	assert.Contains(t, card, "24 in each coil")
	assert.Contains(t, card, "COILS 18, 6 in each phase, throw slot 1 to 4")
	assert.Regexp(t, `WIRE 1 × 19 AWG`, card)
	assert.Regexp(t, `OHMS before varnish: ~?1\.4[678]`, card)
	assert.NotContains(t, card, "Missing")
	assert.Equal(t, "engine", j.Drive.Kind)
	assert.Equal(t, 0.18, j.Old.LeadOhms.Value)
	assert.Equal(t, "19 AWG", j.Trials[1].Gauge.String())
	assert.Equal(t, "claw", j.Name, "a job without a name has its file's")
	assert.Equal(t, 3.4, j.Field.Ohms.Value)
	h.leaves()
}

// A wheel hub: 27 slots, 30 poles, magnets round the outside, a coil on each tooth; pedals
// through a chain. Old: 20 turns, 6.0 V at 100 rpm. 30 turns: 90.0 V at 1000 rpm; charging from
// (12.6 + 1.4 … 1.8) / (√2 × 0.090) = 110 … 113 rpm. Three coils side by side to a phase at 12
// electrical degrees beyond opposite, 168° a slot: pitch factor sin 84° = 0.995, spread of
// nine by 20/3°: sin 30° / (9 sin 10/3°) = 0.955 taken as star of slots, together 0.945 to 0.95.
// 60 rpm × 44/14 = 189 rpm.
func TestAHubFromBlankToCard(t *testing.T) {
	h := newHand(t, blankJob(), 100, 30)
	h.begins("readings")
	h.give("27", "30", "", "1", "")
	h.at("Rotor runs")
	h.give("o", "200", "22", "70", "20", "0.8 mm", "0.9", "m", "100", "6")
	h.begins("first trial")
	h.at("Trial winding: turns")
	h.give("30", "0.7 mm")
	h.begins("drive and battery")
	h.give("0.6", "", "p", "c", "44", "14", "40", "60", "90", "100")
	h.sees("next: tab, Trials")
	h.screen("Trials")
	assert.InDelta(t, 90.0, h.number("two leads, 1000 rpm, V AC", 1), 0.05)
	assert.InDelta(t, 111.5, h.number("charging begins, alt. rpm", 1), 2)
	h.sees("usual 189", "full effort")
	h.screen("Layout")
	h.sees(`kw1[^\d]+0\.94`)
	card, j := h.cardAndFile("hub", "A")
	assert.Contains(t, card, "30 in each coil")
	assert.Contains(t, card, "COILS 27, 9 in each phase, throw slot 1 to 2")
	assert.Regexp(t, `WIRE 1 × 0\.7`, card)
	assert.Equal(t, "outside", j.Machine.Rotor)
	assert.Equal(t, "magnets", j.Field.Kind)
	assert.Equal(t, 44.0, j.Drive.DriverTeeth.Value)
	h.leaves()
}

// Nine flat coils between two rings of twelve magnets, cast, in the wind, onto 48 V. Magnets of
// 1.25 T and 10 mm face each other 18 mm apart: 1.25 × 20/(20 + 1.05 × 18) = 0.643 T at a
// magnet; the fundamental of 80 % cover is 4/π × sin 72° = 1.211 of it, a tenth leaks: 0.708 T.
// At 1000 rpm the circle of 240 mm runs 12.57 m/s past 46 mm of it: 0.409 V peak in a wire. A coil's
// sides are 42 mm apart of a pole's 62.8 mm, sin 60.2° = 0.868, and 24 mm wide, 68.8 electrical
// degrees, 0.941: 0.668 V a turn, × 60 × 3 / √2 × √3 = 147 V between leads. Room of a coil's
// side 24 × 13 = 312 mm²; 1.5 mm with enamel is about 1.58 (IEC 60317-0-1, from memory): 60 × 1.58²/312
// = 0.48. 24 lead cells rest at 50.4 V.
func TestAFlatStatorFromBlankToCard(t *testing.T) {
	h := newHand(t, blankJob(), 100, 30)
	h.begins("readings")
	h.key("up")
	h.at("Stator")
	h.give("f", "9", "12", "")
	h.at("Diameter at the gap")
	h.give("240", "46", "18", "24", "13")
	h.to("down", "Rotor")
	h.give("m")
	h.to("down", "Remanence")
	h.give("1.25", "10")
	h.begins("first trial")
	h.at("Trial winding: turns")
	h.give("60", "1.5 mm")
	h.begins("drive and battery")
	h.give("9", "w", "2.4")
	h.to("down", "Cells")
	h.give("24")
	h.sees("next: tab, Trials", `50\.4`)
	h.screen("Trials")
	assert.InEpsilon(t, 147, h.number("two leads, 1000 rpm, V AC", 0), 0.04)
	assert.InDelta(t, 0.48, h.number("wire fill", 0), 0.011)
	v := h.number("two leads, 1000 rpm, V AC", 0)
	assert.InEpsilon(t, (50.4+1.6)/(1.4142*v/1000), h.number("charging begins, alt. rpm", 0), 0.015)
	h.sees("wind 5 m/s")
	card, j := h.cardAndFile("cast", "A")
	assert.Contains(t, card, "60 in each coil")
	assert.Contains(t, card, "9, 3 in each phase")
	assert.Equal(t, "flat", j.Machine.Stator)
	assert.Equal(t, 24.0, j.Battery.Cells.Value)
	assert.Equal(t, 2.4, j.Drive.RotorM.Value)
	h.leaves()
}

// A single phase of twelve slots and twelve magnets. Old: 40 turns, 12.0 V at 800 rpm, so 26 turns
// give 15 × 26/40 = 9.75 V at 1000 rpm, 13.79 V peak. A bridge begins at (12.6 + 2 × 0.7 … 0.9) /
// 13.79 = 1015 … 1044 rpm. A doubler charges each of its capacitors, half of the battery, through one diode: at
// exactly half of that. Half wave has one diode and the whole battery: (12.6 + 0.7 … 0.9)/13.79 = 965 … 979.
func TestASinglePhaseFromBlankToCard(t *testing.T) {
	h := newHand(t, blankJob(), 100, 30)
	h.begins("readings")
	h.give("12", "12", "1", "1")
	h.to("down", "Diameter at the gap")
	h.give("100", "25", "90", "40", "0.9 mm", "0.7", "m", "800", "12")
	h.begins("first trial")
	h.at("Trial winding: turns")
	h.give("26", "0.9 mm")
	h.begins("drive and battery")
	h.give("0.8", "", "e")
	h.key("down")
	h.give("500", "700", "1100", "300")
	h.at("Rectifier")
	begins := map[string]float64{}
	for _, kind := range []string{"bridge", "doubler", "half-wave", "doubler"} {
		h.to("up", "Rectifier")
		h.give(kind[:1])
		h.screen("Trials")
		begins[kind] = h.number("charging begins, alt. rpm", 1)
		assert.InDelta(t, 9.75, h.number("two leads, 1000 rpm, V AC", 1), 0.01)
		h.screen("Machine")
	}
	assert.InDelta(t, 1029, begins["bridge"], 16)
	assert.InDelta(t, begins["bridge"]/2, begins["doubler"], 1)
	assert.InDelta(t, 972, begins["half-wave"], 8)
	card, j := h.cardAndFile("single", "A")
	assert.Contains(t, card, "26 in each coil")
	assert.Contains(t, card, "the doubler: one lead to where its two diodes meet")
	assert.NotContains(t, card, "to the bridge")
	assert.NotRegexp(t, `JOINED star`, card)
	assert.Equal(t, 1.0, j.Machine.Phases.Value)
	assert.Equal(t, "doubler", j.Battery.Rectifier)
	h.leaves()
}

// A stripped stator of 36 slots and 12 poles, of which nothing is known but ten turns of hook-up
// wire laid into it: 0.85 V at 600 rpm with 2.5 A in the rotor. Six coils of 20 turns in series to a phase at
// full pitch: 120 × 0.85/10 / 0.6 = 17.0 V at 1000 rpm, × √3 = 29.4 V between leads. A water wheel of 60 rpm,
// geared up 1 to 10: 600 rpm.
func TestAStrippedStatorFromBlankToCard(t *testing.T) {
	h := newHand(t, blankJob(), 100, 30)
	h.begins("readings")
	h.give("36", "12", "", "3", "1", "89", "33", "72")
	h.to("down", "Rotor")
	h.give("w", "4.1")
	h.to("down", "Trial coil: turns")
	h.give("10", "600", "0.85", "2.5")
	h.begins("first trial")
	h.at("Trial winding: turns")
	h.give("20", "17 AWG")
	h.begins("drive and battery")
	h.give("0.4", "wa", "g", "100", "10", "45", "60", "85", "320")
	h.screen("Trials")
	assert.InDelta(t, 29.4, h.number("two leads, 1000 rpm, V AC", 0), 0.4)
	h.sees("usual 600", "wheel 45 rpm")
	card, j := h.cardAndFile("mill", "A")
	assert.Contains(t, card, "20 in each coil")
	assert.Regexp(t, `WIRE 1 × 17 AWG`, card)
	assert.NotContains(t, card, "Missing")
	assert.Equal(t, "water", j.Drive.Kind)
	require.Len(t, j.Coils, 1)
	assert.Equal(t, 0.85, j.Coils[0].Volts.Value)
	assert.Empty(t, j.Spins)
	h.leaves()
}
