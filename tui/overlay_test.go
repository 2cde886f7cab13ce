package tui

import (
	"regexp"
	"strings"
	"testing"

	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Commands are found by their synonyms; each synonym leads to exactly one command.
func TestCommandsAreFoundByOtherWords(t *testing.T) {
	m := opened(session.NewExample(), 100, 30, "Trials", "")
	for typed, want := range map[string]string{
		"quit": "Leave", "exit": "Leave", "redo": "Do again", "export": "Write the winding card", "theme": "Colours", "fahrenheit": "°F",
		"clone": "Duplicate", "explain": "Why the marked figure", "heavier": "thicker", "load": "Open another job", "warn": "called out",
	} {
		m.press("ctrl+p " + strings.Join(strings.Split(typed, ""), " "))
		list := m.list.Matching()
		require.NotEmpty(t, list, typed)
		found := false
		for _, o := range list {
			found = found || strings.Contains(o.Label, want)
		}
		assert.True(t, found, "%s: %v", typed, list)
		m.press("esc")
	}
	labels := ""
	for _, d := range m.commands() {
		labels += strings.ToLower(d.name) + "\n"
	}
	for words, ours := range others {
		assert.Contains(t, labels, strings.ToLower(ours), words)
	}
}

// The label that a screen shows before a field, typed as shown with its colon, finds the field. A word
// with which all labels begin finds only fields that have it in their name.
func TestFieldsAreFoundByWhatStandsOnTheScreen(t *testing.T) {
	blank := opened(blankJob(), 100, 30, "Machine", "")
	example := opened(session.NewExample(), 100, 30, "Machine", "")
	for _, c := range []struct {
		m           *Model
		typed, want string
	}{
		{example, "drive: power", "What turns it: power at Usual"}, {example, "Drive power", "What turns it: power at Usual"}, {example, "what turns it: POWER", "What turns it: power at Usual"},
		{example, "old winding: lead to lead, at", "Old winding: lead to lead, at"}, {example, "what it charges: rest voltage", "Rest voltage"},
		{blank, "trial winding: turns", "A turns"}, {blank, "spin-up reading: volts", "Spin-up reading 1: volts"}, {blank, "old winding: connection", "Old winding: connection"},
	} {
		c.m.press("ctrl+p")
		c.m.list.Typed = c.typed
		labels := ""
		for _, o := range c.m.list.Matching() {
			labels += o.Lead + o.Label + "\n"
		}
		assert.Contains(t, labels, "Field: "+c.want+"\n", c.typed)
		c.m.press("esc")
	}
	all := len(example.fields())
	example.press("ctrl+p f i e l d")
	found := example.list.Matching()
	require.NotEmpty(t, found)
	assert.Less(t, len(found), all/4)
	for _, o := range found {
		assert.Contains(t, strings.ToLower(o.Label+o.Note+o.Also), "field", "not by what stands before it")
	}
}

// A field's full name goes to the field, on every screen, before any command that begins with it; a
// screen's name goes to the screen, even if a field has the same name.
func TestAFieldsWholeNameGoesToIt(t *testing.T) {
	for _, screen := range []string{"Machine", "Trials", "Curves"} {
		for typed, want := range map[string]string{"slot area": "slot.area", "fill limit": "slot.fill_limit", "Poles": "machine.poles", "drive: power": "drive.power"} {
			m := opened(session.NewExample(), 100, 30, screen, "")
			before := m.s.Document().Text()
			m.press("ctrl+p")
			m.gets(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(typed), Paste: true})
			m.press("enter")
			assert.Equal(t, before, m.s.Document().Text(), "%s: %s", screen, typed)
			in, _ := job.InputAt(want)
			assert.Regexp(t, "▸ "+regexp.QuoteMeta(in.Label), plainLines(m.View()), "%s: %s", screen, typed)
		}
		m := opened(session.NewExample(), 100, 30, screen, "ctrl+p D r i v e enter")
		assert.Equal(t, "Drive", m.view().Name())
	}
}

// With a why page, the ladder or a value open over the table, all commands of the screen are still
// available, and running one closes the overlay.
func TestCommandsUnderWhatLiesOver(t *testing.T) {
	bare := len(opened(session.NewExample(), 100, 30, "Trials", "").commands())
	for _, keys := range []string{"y", "e", "enter", "down"} {
		m := opened(session.NewExample(), 100, 30, "Trials", keys)
		assert.Len(t, m.commands(), bare, keys)
		m.press("ctrl+p s t a r space t o enter")
		assert.Equal(t, "delta", m.s.Job().Trials[0].Connection.String(), keys)
		assert.Contains(t, m.View(), "charging begins", keys)
		assert.False(t, m.view().Typing(m.s), keys)
	}
}

// Findings use the chosen units: the example's third trial reaches 168 °C, which is 334 °F.
func TestFindingsInTheUnitsChosen(t *testing.T) {
	m := opened(session.NewExample(), 120, 40, "Trials", "")
	m.press("d")
	m.press("!")
	m.fit()
	frame := tuitest.Words(m.View())
	assert.Contains(t, frame, "reaches a mean of 334 °F; class F allows 293 °F")
}

// A screen's name goes to that screen, from any screen. Its commands that begin with its name are
// listed after it and change nothing unless chosen.
func TestAScreensNameGoesThere(t *testing.T) {
	screens := New(session.NewExample(), recovery.Store{}).views
	for _, from := range screens {
		for _, to := range screens {
			m := opened(session.NewExample(), 100, 30, from.Name(), "")
			was := m.s.Document().Text()
			m.press("ctrl+p " + strings.Join(strings.Split(strings.ToLower(to.Name()), ""), " ") + " enter")
			assert.Equal(t, to.Name(), m.view().Name(), "from %s", from.Name())
			assert.Equal(t, was, m.s.Document().Text())
		}
	}
}

// A field is found by its name from any screen, even if the list of first things lacks it; each listed
// field has a screen.
func TestAFieldIsFoundByItsName(t *testing.T) {
	for typed, label := range map[string]string{"rise per": "Rise per watt", "air gap": "Air gap", "capacity": "Capacity"} {
		for _, from := range []string{"Trials", "Layout", "Card"} {
			m := opened(session.NewExample(), 100, 30, from, "")
			was := m.s.Document().Text()
			m.press("ctrl+p")
			for _, r := range typed {
				m.press(strings.ReplaceAll(string(r), " ", "space"))
			}
			m.press("enter")
			assert.Contains(t, m.View(), "▸ "+label, "%s from %s", typed, from)
			assert.Equal(t, was, m.s.Document().Text())
		}
	}
	m := opened(session.NewExample(), 100, 30, "Trials", "")
	list := m.fields()
	require.Greater(t, len(list), 60)
	for _, d := range list {
		m.s.ClearMessage()
		d.do()
		assert.NotContains(t, m.s.Message().Text, "no screen has this field", d.name)
		assert.NotContains(t, d.name, "…", "a field that goes on from another is named with it")
	}
}

// A partial name finds the closest match, field or command: a field whose name begins with it before a
// command that contains it later, and the shorter of two names that begin with it. Matches on other
// screens come after those on this one.
func TestThePartOfANameFindsWhatItMatchesBest(t *testing.T) {
	for _, c := range []struct{ screen, typed, first string }{
		{"Trials", "slot ar", "Field: Slot area"}, {"Trials", "fill", "Field: Fill limit"}, {"Layout", "slots", "Field: Slots"},
		{"Trials", "slot sh", "Field: Shape"}, {"Curves", "drive: po", "Field: What turns it: power at Usual"},
		{"Trials", "slot area u", "Slot area up a step"}, {"Trials", "fewer", "One turn fewer"},
		{"Trials", "limit", "Field: Fill limit"}, {"Machine", "trial", "Go to Trials"}, {"Card", "lay", "Go to Layout"},
	} {
		m := opened(session.NewExample(), 100, 30, c.screen, "ctrl+p")
		m.list.Typed = c.typed
		found := m.list.Matching()
		require.NotEmpty(t, found, c.typed)
		assert.Equal(t, c.first, found[0].Lead+found[0].Label, "%s: %s", c.screen, c.typed)
	}
}
