package tui

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"slotwright/tui/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tourStep is a step of the README's tour, named a key of it.
var (
	tourStep = regexp.MustCompile(`(?m)^([2-6])\. (.+\n(?:   .+\n)*)`)
	named    = regexp.MustCompile("`([^`]+)`")
)

// asKey is a key as the README writes it by its name here.
var asKey = map[string]string{"→": "right", "↓": "down"}

// The README's tour works as typed: every key that its steps name, pressed in the order of the text,
// has a visible effect, and none is swallowed by a value being typed.
func TestTheTourIsTrueAsTyped(t *testing.T) {
	text, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	steps := tourStep.FindAllStringSubmatch(string(text), -1)
	require.Len(t, steps, 5)
	t.Chdir(t.TempDir())
	for _, size := range [][2]int{{80, 24}, {120, 40}} {
		m := opened(session.NewExample(), size[0], size[1], "Trials", "")
		pressed := 0
		for _, step := range steps {
			for _, k := range named.FindAllStringSubmatch(step[2], -1) {
				key := k[1]
				if is, ok := asKey[key]; ok {
					key = is
				}
				if key != "enter" && (m.picked != nil || m.helping || m.then != nil) {
					m.press("esc") // what a list or a page shows is left by hand
				}
				if len(key) == 1 && m.view().Typing(m.s) {
					m.bring(1) // the step says so: letters are shorter where they begin no value
				}
				m.s.ClearMessage()
				before := m.View() + m.s.Document().Text()
				cmd := m.press(key)
				assert.True(t, before != m.View()+m.s.Document().Text() || cmd != nil, "step %s: %s does nothing", step[1], key)
				if m.prompt != nil && key != "ctrl+e" && key != "ctrl+s" {
					m.press("esc")
				}
				pressed++
			}
		}
		assert.Greater(t, pressed, 35)
	}
}

// A tour that does not work as typed would be noticed: the tour with letters typed into a value.
func TestATourThatIsNotTrueIsSeen(t *testing.T) {
	m := opened(session.NewExample(), 80, 24, "Machine", "")
	before := m.active
	m.press("w")
	assert.Equal(t, before, m.active)
	assert.Nil(t, m.prompt, "w is text on Machine, as step 5 says")
	assert.True(t, strings.HasPrefix(m.s.Job().Name, "w"))
}
