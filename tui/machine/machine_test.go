package machine

import (
	"cmp"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding"
	"slotwright/winding/job"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// doubtful maps the jobs of testdata/doubtful to sessions on them.
func doubtful(t *testing.T) map[string]*session.Session {
	paths, err := filepath.Glob("../../testdata/doubtful/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	list := map[string]*session.Session{}
	for _, p := range paths {
		text, err := os.ReadFile(p)
		require.NoError(t, err)
		list[filepath.Base(p)] = session.New(job.Parse(string(text)), "", job.Mark{})
	}
	return list
}

// Doubts are shown at their field, in its line and in the box; mere notes are not.
func TestDoubtsStandAtTheirField(t *testing.T) {
	said := 0
	for name, s := range doubtful(t) {
		for _, v := range []*View{NewMachine(), NewDrive()} {
			tuitest.Draw(t, v, s, 120, 37)
			for _, f := range s.Outcome().Findings {
				v.form = v.form.FocusID(f.Path)
				if v.form.Focused().ID != f.Path {
					continue
				}
				row := v.form.Focused()
				if f.Severity < winding.Doubt {
					assert.NotContains(t, row.Warning, f.Text, name)
					continue
				}
				said++
				assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, 200, 57)), row.Warning[:30], name)
				assert.NotEmpty(t, row.Warning, name)
			}
		}
	}
	assert.Positive(t, said, "some doubt is about a field of these screens")
}

// Nothing about magnets is asked of a wound rotor.
func TestAWoundRotorIsAskedNothingOfMagnets(t *testing.T) {
	for kind, asked := range map[string]bool{"wound": false, "magnets": true} {
		s := session.New(job.Parse("format = 1\n[field]\nkind = \""+kind+"\"\n"), "", job.Mark{})
		v := NewMachine()
		v.first = false
		labels := ""
		for _, r := range v.rows(s) {
			labels += r.Label + "\n"
		}
		for _, label := range []string{"Number of magnets", "Magnet thickness", "Remanence"} {
			assert.Equal(t, asked, strings.Contains(labels, label+"\n"), "%s: %s", kind, label)
		}
	}
}

// Impossible values are marked ✗ at their field, as among the findings.
func TestWhatCannotBeIsMarkedSo(t *testing.T) {
	text, err := os.ReadFile("../../testdata/jobs/trial-coil.toml")
	require.NoError(t, err)
	s, v := session.New(job.Parse(strings.Replace(string(text), "0.6235", "623.5", 1)), "", job.Mark{}), NewMachine()
	tuitest.Draw(t, v, s, 120, 37)
	v.form = v.form.FocusID("coil[0].voltage")
	row := v.form.Focused()
	require.Equal(t, "coil[0].voltage", row.ID)
	assert.True(t, row.Grave)
	assert.Regexp(t, `623\.5.*✗`, tuitest.Draw(t, v, s, 120, 37))
}

// No row of a job without doubts carries a warning.
func TestNothingIsDoubtedWithoutReason(t *testing.T) {
	s, v := session.NewExample(), NewMachine()
	tuitest.Draw(t, v, s, 120, 37)
	doubts := map[string]bool{}
	for _, f := range s.Outcome().Findings {
		doubts[f.Path] = doubts[f.Path] || f.Severity >= winding.Doubt
	}
	for _, r := range v.form.Rows {
		assert.Equal(t, doubts[r.ID], r.Warning != "", r.ID)
	}
}

// Every field of the file's tables is a row with its unit, its help and its origin.
func TestRowsAreTheFieldsOfTheFile(t *testing.T) {
	s, v := session.NewExample(), NewMachine()
	tuitest.Draw(t, v, s, 120, 37)
	v.form = v.form.FocusID("machine.bore")
	row := v.form.Focused()
	assert.Equal(t, "mm", row.Unit)
	f, _ := job.InputAt("machine.bore")
	assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, 80, 21)), f.Help+" "+f.How)
	assert.Equal(t, kit.Measured, markOf("85"))
	assert.Equal(t, kit.Guessed, markOf("~85"))
	s.Type("machine.bore", "8x5")
	tuitest.Draw(t, v, s, 120, 37)
	assert.Contains(t, v.form.Focused().Error, "8x5")
	where, _, _ := strings.Cut(s.Problems()[0], ":")
	assert.Contains(t, tuitest.Draw(t, v, s, 120, 37), where, "also under what follows")
	s.Units.Inch = true
	s.Type("machine.bore", "")
	tuitest.Draw(t, v, s, 120, 37)
	assert.Equal(t, "in", v.form.Focused().Unit, "an empty field asks in the unit liked")
}

// Keys fill in: words with blanks, choices both ways round, emptying, moving.
func TestFillingIn(t *testing.T) {
	s, v := session.NewExample(), NewMachine()
	press := func(keys string) { tuitest.Press(t, v, s, 80, 21, keys) }
	press("ctrl+home a space b")
	assert.Equal(t, "a b", s.Job().Name, "typing replaces")
	assert.True(t, v.Editing(s))
	press("enter")
	assert.NotEqual(t, "name", v.form.Focused().ID)
	press("up enter up space c")
	assert.Equal(t, "a bc", s.Job().Name, "enter passes what is there, a blank edits it")
	press("esc")
	assert.Equal(t, "a b", s.Job().Name, "esc leaves it as it was")
	press("pgdown")
	assert.Equal(t, "machine.slots", v.form.Focused().ID, "a section is one key away")
	press("down pgup pgup")
	assert.Equal(t, "name", v.form.Focused().ID)
	v.form = v.form.FocusID("machine.kind")
	words := v.form.Focused().Choices
	for _, step := range []struct{ keys, want string }{{"right", words[1]}, {"right", words[2]}, {"left", words[1]}, {"left", words[0]}, {"left", words[len(words)-1]}} {
		press(step.keys)
		assert.Equal(t, step.want, v.form.Focused().Text)
		kind, _, _ := s.Document().Typed("machine.kind")
		assert.Equal(t, step.want, kind, "the job has it")
	}
	press("w")
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "concentric", "the list has them all")
	press("enter")
	assert.Equal(t, "wave", s.Job().Machine.Kind)
	press("end")
	assert.Equal(t, v.form.Rows[len(v.form.Rows)-1].ID, v.form.Focused().ID)
	press("ctrl+home")
	assert.Equal(t, v.form.Rows[0].ID, v.form.Focused().ID)
	assert.False(t, v.Key(s, tuitest.KeyMsg("f5")))
}

// A table that may occur several times has one more empty row, up to its maximum.
func TestOneMoreToBegin(t *testing.T) {
	s, v := session.New(job.Parse("format = 1\n[machine]\nslots = 36\n"), "", job.Mark{}), NewMachine()
	first := ""
	groups := func() (n int) {
		tuitest.Draw(t, v, s, 120, 37)
		seen := map[string]bool{}
		for _, r := range v.form.Rows {
			if strings.HasPrefix(r.ID, "spin[") {
				seen[r.Group], first = true, cmp.Or(first, r.ID)
			}
		}
		return len(seen)
	}
	assert.Equal(t, 1, groups())
	s.Type(first, "500")
	assert.Equal(t, 2, groups())
}

// An accepted choice may add fields: the next field is the first of those.
func TestTakingAChoiceGoesOnToTheFieldsItBrings(t *testing.T) {
	s, v := session.New(job.Parse(""), "", job.Mark{}), NewMachine()
	tuitest.Draw(t, v, s, 80, 21)
	require.True(t, v.first, "a blank job asks for the first things")
	require.True(t, v.GoTo(s, "drive.kind"))
	tuitest.Press(t, v, s, 80, 21, "e enter")
	assert.Equal(t, "drive.through", v.form.Focused().ID)
	tuitest.Press(t, v, s, 80, 21, "b enter")
	assert.Equal(t, "drive.driver", v.form.Focused().ID)
}

// Fields that mean nothing in a job are hidden: a wound rotor has no magnets. Values typed nevertheless
// are shown, so that they can be corrected.
func TestFieldsThatDoNotApplyAreNotShown(t *testing.T) {
	shown := func(s *session.Session) map[string]bool {
		v := NewMachine()
		tuitest.Draw(t, v, s, 120, 37)
		list := map[string]bool{}
		for _, r := range v.form.Rows {
			list[r.ID] = true
		}
		return list
	}
	for kind, want := range map[string]bool{"wound": false, "magnets": true} {
		s := session.New(job.Parse("format = 1\n[machine]\nslots = 12\n[field]\nkind = \""+kind+"\"\n"), "", job.Mark{})
		assert.Equal(t, want, shown(s)["field.remanence"], kind)
		assert.Equal(t, !want, shown(s)["field.coil"], kind)
		assert.Equal(t, !want, shown(s)["spin[0].field"], kind)
	}
	assert.True(t, shown(session.NewExample())["field.remanence"], "the example names magnets that might take the coil's place")
	assert.False(t, shown(session.NewExample())["field.leakage"])
}

// Each field without a value or a default is marked as needed.
func TestNeededFieldsAreMarked(t *testing.T) {
	s := session.New(job.Parse("format = 1\n[machine]\nslots = 12\n"), "", job.Mark{})
	v := NewMachine()
	for _, size := range [][2]int{{60, 17}, {80, 21}, {120, 37}} {
		frame := tuitest.Draw(t, v, s, size[0], size[1])
		assert.Contains(t, frame, "○", size)
		assert.Contains(t, frame, "poles", size)
	}
	needed := map[string]bool{}
	for _, r := range v.form.Rows {
		needed[r.ID] = r.Needed
	}
	assert.True(t, needed["machine.poles"])
	assert.False(t, needed["machine.slots"], "it is said")
	assert.False(t, needed["machine.phases"], "a default stands in")
	assert.Regexp(t, `○ the layout: which coil lies where +│\n.*│   poles +│\n`, tuitest.Draw(t, v, s, 120, 37), "listed by what they unlock, one under the other")
}

// The alternative ways to volts are presented as such: one is enough, and once it is begun only its
// fields are waited for.
func TestOneWayToVoltsIsEnough(t *testing.T) {
	s, v := session.New(job.Parse(job.Template("")), "", job.Mark{}), NewMachine()
	s.Type("old.turns", "9")
	frame := tuitest.Draw(t, v, s, 200, 57)
	for _, said := range []string{"one of these is enough:", "• spin the old winding up", "• lay a trial coil", "• the speed at which the old winding began"} {
		assert.Contains(t, frame, said)
	}
	s.Type("spin[0].speed", "600")
	frame = tuitest.Draw(t, v, s, 200, 57)
	assert.NotContains(t, frame, "one of these is enough:")
	for _, first := range waiting(s) {
		assert.NotContains(t, first.Path, "coil[0]")
	}
}

// Known figures of the first trial are listed, and so are the fields still waited for.
func TestWhatFollowsIsAList(t *testing.T) {
	s, v := session.NewExample(), NewMachine()
	tuitest.Draw(t, v, s, 120, 50)
	tuitest.Press(t, v, s, 120, 50, "ctrl+f")
	frame := tuitest.Draw(t, v, s, 120, 50)
	assert.Regexp(t, `│ Known of trial A +│\n`, frame)
	assert.Regexp(t, `│ +wire fill +~?0\.\d+ +│\n`, frame)
}

// An unreadable value is reported once: at its field.
func TestARefusalIsSaidOnce(t *testing.T) {
	for _, size := range [][2]int{{80, 21}, {100, 27}, {120, 37}, {200, 57}} {
		s, v := session.New(job.Parse(job.Template("")), "", job.Mark{}), NewMachine()
		tuitest.Draw(t, v, s, size[0], size[1])
		tuitest.Press(t, v, s, size[0], size[1], "3 x")
		frame := tuitest.Words(tuitest.Draw(t, v, s, size[0], size[1]))
		assert.Equal(t, 1, strings.Count(frame, `read "3x"`), size)
		assert.NotContains(t, frame, "cannot be used", size)
		tuitest.Press(t, v, s, size[0], size[1], "enter")
		frame = tuitest.Words(tuitest.Draw(t, v, s, size[0], size[1]))
		assert.Equal(t, 1, strings.Count(frame, `read "3x"`), size)
		assert.Contains(t, frame, "one value", size)
	}
}

// Between the first things and all fields the marked field stays marked, or else the nearest one before
// it that is in both.
func TestEveryFieldIsTurnedToAtTheSamePlace(t *testing.T) {
	s, v := session.New(job.Parse(job.Template("")), "", job.Mark{}), NewMachine()
	tuitest.Draw(t, v, s, 120, 37)
	for from, to := range map[string]string{"slot.area": "slot.area", "trial[0].turns": "coil[0].field", "drive.kind": "machine.air_gap"} {
		v.first = true
		v.SetSize(s, v.at)
		v.form = v.form.FocusID(from)
		require.Equal(t, from, v.form.Focused().ID)
		tuitest.Press(t, v, s, 120, 37, "ctrl+f")
		assert.Equal(t, to, v.form.Focused().ID)
	}
	v.form = v.form.FocusID("machine.drag")
	require.Equal(t, "machine.drag", v.form.Focused().ID)
	tuitest.Press(t, v, s, 120, 37, "ctrl+f")
	assert.Equal(t, "machine.air_gap", v.form.Focused().ID)
}

// The marks of fields are explained where they first occur, and a field with choices says how to list
// them and how to skip.
func TestMarksAndChoicesAreExplainedOnTheScreen(t *testing.T) {
	for _, size := range [][2]int{{80, 21}, {100, 27}, {120, 37}, {200, 57}} {
		s, v := session.New(job.Parse(job.Template("")), "", job.Mark{}), NewMachine()
		frame := tuitest.Words(tuitest.Draw(t, v, s, size[0], size[1]))
		assert.Contains(t, frame, "○ waited for ◆ measured ~ guessed", size)
		require.True(t, v.GoTo(s, "field.kind"))
		frame = tuitest.Words(tuitest.Draw(t, v, s, size[0], size[1]))
		assert.Contains(t, frame, "Space lists the choices, enter goes on.", size)
	}
}

// Figures that rest on a guess are marked, as on Trials.
func TestWhatFollowsMarksAGuess(t *testing.T) {
	s := session.NewExample()
	line := known(s, 1000)
	for _, r := range s.Outcome().Comparison {
		c := r.Cells[s.Trial]
		if r.Key && c.Figure.Known() {
			guess := s.Figure(c.Figure, r.Dim, r.Digits).Mark == kit.Guessed
			assert.Equal(t, guess, strings.Contains(line, r.Label+" "+session.Rough), r.Label)
		}
	}
	assert.Contains(t, line, session.Rough)
}

// One enter skips a field, whatever its default; figures typed on a list that is skipped go to the
// field below, and an unusable value stays, marked and reported, while the next value goes into the
// next field.
func TestOneEnterPassesAndNothingTypedIsLost(t *testing.T) {
	s, v := session.New(job.Parse(job.Template("")), "", job.Mark{}), NewMachine()
	press := func(keys string) { tuitest.Press(t, v, s, 100, 30, keys) }
	tuitest.Draw(t, v, s, 100, 30)
	press("3 6 enter 1 2 enter enter enter enter")
	assert.Equal(t, "machine.rotor", v.form.Focused().ID, "phases, span and layers are passed by an enter each")
	press("9")
	assert.Contains(t, s.Message().Text, "figures are for Diameter at the gap")
	press("2 enter")
	assert.Equal(t, 92.0, s.Job().Machine.BoreMM.Value)
	assert.Empty(t, s.Job().Machine.Rotor)
	press("3 x enter 8 4 enter")
	assert.Contains(t, s.Problems()[0], `"3x"`)
	assert.Equal(t, 84.0, s.Job().Slot.AreaMM2.Value, "the next value is in the next field")
	v.form = v.form.FocusID("machine.stack").By(0)
	assert.Equal(t, "3x", v.form.Focused().Text)
	s.ClearMessage()
	press("space y enter")
	assert.True(t, s.Message().Bad)
	assert.Contains(t, s.Message().Text, `Stack: "3xy" cannot be used and stays there`)
	press("up space z down")
	assert.Contains(t, s.Message().Text, `Stack: "3xyz"`, "whichever key takes it")
	v.form = v.form.FocusID("field.kind")
	press("3 . 4 enter")
	assert.Contains(t, s.Message().Text, `Rotor: "3.4" cannot be used`, "a list that is waited for keeps them")
	press("up")
	assert.Equal(t, "3.4", v.form.Focused().Text)
	press("w enter")
	assert.Equal(t, "wound", s.Job().Field.Kind)
	assert.Equal(t, "field.coil", v.form.Focused().ID)
}

// Rows that appear or disappear do not move the values of others: neither those of a flat stator, nor
// the old winding's, nor a throw behind a span.
func TestNoRowMovesTheValuesOfOthers(t *testing.T) {
	for _, w := range []int{80, 100, 120} {
		s, v := session.New(job.Parse(job.Template("")), "", job.Mark{}), NewMachine()
		frame := tuitest.Draw(t, v, s, w, 70)
		at := func(frame string) (value, unit int) {
			for _, line := range strings.Split(frame, "\n") {
				if before, _, ok := strings.Cut(line, "(3)"); ok && strings.Contains(line, "Phases") {
					value = kit.Width(before)
				}
				if before, _, ok := strings.Cut(line, " mm "); ok && strings.Contains(line, "  Stack") {
					unit = kit.Width(before)
				}
			}
			return value, unit
		}
		value, unit := at(frame)
		require.Positive(t, value)
		for _, say := range [][2]string{{"machine.span", "1"}, {"machine.span", "10"}, {"old.turns", "9"}, {"field.kind", "wound"}, {"field.kind", "magnets"}, {"drive.kind", "engine"}, {"drive.through", "chain"}} {
			s.Type(say[0], say[1])
			is, behind := at(tuitest.Draw(t, v, s, w, 70))
			assert.Equal(t, value, is, "%d: %v", w, say)
			assert.Equal(t, unit, behind, "%d: %v", w, say)
		}
	}
}

// If the old winding is gone, the first things ask nothing about it, and offer no reading of it.
func TestAnOldWindingMayBeGone(t *testing.T) {
	s, v := session.New(job.Parse(job.Template("")), "", job.Mark{}), NewMachine()
	tuitest.Draw(t, v, s, 100, 30)
	v.form = v.form.FocusID("old.state")
	tuitest.Press(t, v, s, 100, 30, "g enter")
	assert.Equal(t, "gone", s.Job().Old.State)
	assert.Equal(t, "field.kind", v.form.Focused().ID, "the next that is asked")
	shown := func(path string) bool { return v.form.FocusID(path).Focused().ID == path }
	assert.False(t, shown("old.turns") || shown("spin[0].line") || shown("old.lead"))
	assert.True(t, shown("coil[0].turns") && shown("slot.area"))
	tuitest.Press(t, v, s, 100, 30, "ctrl+f")
	assert.False(t, shown("old.turns") || shown("spin[0]") || shown("amps[0]") || shown("short[0]"))
	assert.True(t, shown("old.state") && shown("coil[0].turns"))
}

// A second reading of each kind is begun from the first things, at their end, out of the way.
func TestMoreReadingsStandBelowTheFirstThings(t *testing.T) {
	s, v := session.New(job.Parse(job.Template("")), "", job.Mark{}), NewMachine()
	tuitest.Draw(t, v, s, 100, 30)
	last := func() string { return v.form.Rows[len(v.form.Rows)-1].ID }
	for _, say := range [][2]string{{"old.turns", "9"}, {"field.kind", "wound"}, {"spin[0].speed", "1000"}, {"spin[0].line", "14"}, {"spin[0].field", "3"}} {
		s.Type(say[0], say[1])
	}
	tuitest.Draw(t, v, s, 100, 30)
	assert.Equal(t, "short[0]", last())
	v.form = v.form.FocusID("spin[1]")
	require.True(t, v.form.Focused().Adds)
	tuitest.Press(t, v, s, 100, 30, "8 0 0 enter 1 1 enter")
	require.Len(t, s.Job().Spins, 2)
	assert.Equal(t, 11.0, s.Job().Spins[1].LineVolts.Value)
	assert.Equal(t, "spin[2]", v.form.FocusID("spin[2]").Focused().ID, "and one more")
	tuitest.Press(t, v, s, 100, 30, "end 9 0 0 enter 2 0 enter")
	assert.Equal(t, 20.0, s.Job().Shorts[0].LineAmps.Value)
}

// A bare number for a wire names the gauge it is taken as; where other sizes are in use the screen
// asks, as on Trials, keeping what was typed, and esc leaves the field as it was.
func TestABareWireIsSaidOrAskedBack(t *testing.T) {
	s, v := session.New(job.Parse("format = 1\n[[trial]]\nname = \"A\"\n"), "", job.Mark{}), NewMachine()
	give := func(path, keys string) {
		tuitest.Draw(t, v, s, 100, 27)
		require.True(t, v.GoTo(s, path))
		s.ClearMessage()
		tuitest.Press(t, v, s, 100, 27, keys)
	}
	give("old.gauge", "1 6 enter")
	assert.Equal(t, "16 = 16 AWG, bare 1.29 mm", s.Message().Text)
	assert.Equal(t, "16 AWG", s.Job().Old.Gauge.String())
	give("old.gauge", "1 . 2 5 space m m enter")
	for _, way := range []string{"enter", "down", "up"} {
		give("old.gauge", "1 "+way)
		assert.Contains(t, s.Message().Text, "1 of which sizes? Write 1 AWG, 1 SWG, 1 mm (bare) or 1 mm over", way)
		assert.True(t, v.Editing(s), "what was typed stays open")
		tuitest.Press(t, v, s, 100, 27, "esc")
		assert.Equal(t, "1.25 mm", s.Job().Old.Gauge.String())
	}
	give("old.gauge", "1 enter space m m enter")
	assert.Equal(t, "1 mm", s.Job().Old.Gauge.String())
	assert.False(t, v.Editing(s))
	give("old.gauge", "1 4 enter 5 6 enter")
	assert.Contains(t, s.Message().Text, "56 of which sizes? Write 56 AWG", "figures replace what was asked back")
	tuitest.Press(t, v, s, 100, 27, "0 . 8 space m m enter")
	assert.Equal(t, "0.8 mm", s.Job().Old.Gauge.String())
	give("old.turns", "7 enter")
	give("old.gauge", "1 4 enter esc")
	give("old.turns", "space 2 enter")
	assert.Equal(t, 72.0, s.Job().Old.Turns.Value, "esc ends it: what is opened later is not replaced")
}

// A figure after the letters that select a choice accepts it, as enter does, and goes to the field
// below, even if all came in one read; one that is part of a choice stays with it, and so does text
// that selects none.
func TestAFigureBehindALetterOfAList(t *testing.T) {
	for _, keys := range [][]tea.KeyMsg{{runes("w"), runes("3"), runes("."), runes("4")}, {runes("w3.4")}, {runes("wo"), runes("3.4")}} {
		s, v := session.New(job.Parse(job.Template("")), "", job.Mark{}), NewMachine()
		tuitest.Draw(t, v, s, 100, 27)
		require.True(t, v.GoTo(s, "field.kind"))
		for _, k := range keys {
			v.Key(s, k)
			tuitest.Draw(t, v, s, 100, 27)
		}
		tuitest.Press(t, v, s, 100, 27, "enter")
		assert.Equal(t, "wound", s.Job().Field.Kind)
		assert.Equal(t, 3.4, s.Job().Field.Ohms.Value)
		assert.Equal(t, "spin[0].speed", v.form.Focused().ID)
	}
	s, v := session.New(job.Parse(job.Template("")), "", job.Mark{}), NewMachine()
	tuitest.Draw(t, v, s, 100, 27)
	require.True(t, v.GoTo(s, "field.kind"))
	tuitest.Press(t, v, s, 100, 27, "x 3 enter")
	p, bad := s.Document().ProblemAt("field.kind")
	require.True(t, bad, "no choice has an x: it stays as it was typed")
	assert.Contains(t, p.Read, "x3")
	require.True(t, v.GoTo(s, "drive.through"))
	tuitest.Press(t, v, s, 100, 27, "a 2 0 enter") // a wire: chain and gear contain an a, and so do the words beside the list
	p, bad = s.Document().ProblemAt("drive.through")
	require.True(t, bad, "no choice begins with an a: it stays as it was typed")
	assert.Contains(t, p.Read, "a20")
	assert.False(t, s.Job().Battery.Cells.Given())
	s.Edit(s.Document().Clear("drive.through"))
	require.True(t, v.GoTo(s, "drive.kind"))
	tuitest.Press(t, v, s, 100, 27, "w 2 . 4 enter")
	assert.Equal(t, "wind", s.Job().Drive.Kind, "what enter would take")
	assert.Equal(t, 2.4, s.Job().Drive.RotorM.Value, "a field that came with it")
}

func runes(text string) tea.KeyMsg { return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text)} }
