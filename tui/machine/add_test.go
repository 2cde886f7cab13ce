package machine

import (
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
)

// ids are the rows of a form that are about a table.
func ids(v *View, table string) (list []string) {
	for _, r := range v.form.Rows {
		if strings.HasPrefix(r.ID, table+"[") {
			list = append(list, r.ID)
		}
	}
	return list
}

// A missing reading takes one line, in which enter or its first value begins it.
func TestAReadingIsAdded(t *testing.T) {
	s, v := session.NewExample(), NewMachine()
	assert.NotContains(t, tuitest.Draw(t, v, s, 120, 90), "Amps reading 1", "no empty group")
	assert.Equal(t, []string{"amps[0]"}, ids(v, "amps"))
	for _, keys := range []string{"enter 9 0 0 enter", "9 0 0 enter", "space 9 0 0 enter"} {
		v.form = v.form.FocusID("amps[0]")
		assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "▸ + amps reading 1")
		tuitest.Press(t, v, s, 80, 21, keys)
		assert.Equal(t, 900.0, s.Job().Amps[0].RPM.Value, keys)
		assert.Equal(t, "amps[0].current", v.form.Focused().ID, "its next field")
		assert.Contains(t, ids(v, "amps"), "amps[1]", "one more may be added")
		s.Undo()
		v = NewMachine()
		tuitest.Draw(t, v, s, 80, 21)
	}
	v.form = v.form.FocusID("coil[0]")
	tuitest.Press(t, v, s, 80, 21, "enter down up ctrl+home end")
	assert.Contains(t, ids(v, "coil"), "coil[0].turns", "what was asked for stays")
	assert.True(t, v.GoTo(s, "short[1].line"), "a field that is not shown yet")
	assert.Equal(t, "short[1].line", v.form.Focused().ID)
	assert.False(t, v.GoTo(s, "short[7].line"), "not one after one that is not there")
	for _, r := range v.form.Rows {
		if r.Adds {
			assert.NotEmpty(t, r.Help)
			assert.Empty(t, r.Text)
		}
	}
}

// The first spin-up reading of a job that waits for one is shown unasked, and of nothing else.
func TestWhatIsWaitedForIsThere(t *testing.T) {
	s, v := session.New(job.Parse(job.Template("")), "", job.Mark{}), NewMachine()
	v.SetSize(s, kit.Rect{W: 80, H: 21})
	v.first = false
	v.SetSize(s, v.at)
	assert.Contains(t, ids(v, "spin"), "spin[0].line")
	assert.Equal(t, []string{"amps[0]"}, ids(v, "amps"))
}

// For a stripped stator a trial coil is asked for instead of the old winding; for a wound one, either,
// until one of the two is complete.
func TestATrialCoilTakesTheOldWindingsPlace(t *testing.T) {
	s, v := session.New(job.Parse(job.Template("")), "", job.Mark{}), NewMachine()
	asked := func(path string) bool {
		tuitest.Draw(t, v, s, 80, 21)
		return v.form.FocusID(path).Focused().ID == path
	}
	assert.True(t, asked("old.turns") && asked("coil[0].turns"), "not yet known which")
	s.Type("coil[0].turns", "10")
	assert.False(t, asked("old.turns") || asked("old.gauge") || asked("spin[0].line"))
	assert.True(t, asked("coil[0].voltage") && asked("coil[0].field"))
	s.Type("field.kind", "magnets")
	assert.False(t, asked("coil[0].field"))
	s.Undo()
	s.Undo()
	s.Type("old.turns", "8")
	assert.True(t, asked("coil[0].turns") && asked("spin[0].line"), "old turns alone are no volts")
	s.Type("spin[0].speed", "600")
	assert.True(t, asked("coil[0].turns"))
	assert.False(t, v.form.FocusID("coil[0].turns").Focused().Needed, "another way was begun")
	s.Type("spin[0].line", "9")
	assert.False(t, asked("coil[0].turns"))
}

// Volts typed where cells are asked for are noticed; star and delta apply to three phases only; dim
// values are shown whole where there is empty room behind them.
func TestWhatARowSays(t *testing.T) {
	s, v := session.NewExample(), NewDrive()
	s.Type("battery.cells", "24")
	// 24 cells of 2.1 V, rest of a charged lead cell: 50.4 V.
	assert.Regexp(t, `Cells +24 +◆ 50\.4`, tuitest.Draw(t, v, s, 80, 60))
	m := NewMachine()
	assert.Contains(t, tuitest.Draw(t, m, s, 80, 140), "(by size and cooling)")
	m.form = m.form.FocusID("old.connection")
	assert.Equal(t, "old.connection", m.form.Focused().ID)
	s.Type("old.connection", "")
	for _, phases := range []string{"1", "2"} {
		s.Type("machine.phases", phases)
		tuitest.Draw(t, m, s, 80, 140)
		assert.NotEqual(t, "old.connection", m.form.FocusID("old.connection").Focused().ID, phases)
	}
}

// Names of the resulting figures are whole at every width at which they are shown beside the form, the
// old winding's under its own heading.
func TestWhatFollowsIsReadWhole(t *testing.T) {
	for _, w := range []int{100, 110, 120, 160, 200} {
		frame := tuitest.Draw(t, NewMachine(), session.NewExample(), w, 50)
		for _, name := range []string{"with magnets: volts ×", "two leads, 1000 rpm", "The old winding"} {
			assert.Contains(t, frame, name, w)
		}
	}
}

// The first things end with where to go on.
func TestTheFirstThingsEndWithWhatComesNext(t *testing.T) {
	for _, w := range []int{80, 120} {
		s, v := session.NewExample(), NewMachine()
		tuitest.Draw(t, v, s, w, 30)
		tuitest.Press(t, v, s, w, 30, "ctrl+f end")
		assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, w, 30)), "next: tab, Trials")
		s.Type("slot.area", "")
		assert.NotContains(t, tuitest.Words(tuitest.Draw(t, v, s, w, 30)), "next: tab, Trials")
	}
}
