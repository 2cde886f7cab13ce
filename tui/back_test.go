package tui

import (
	"testing"

	"slotwright/tui/session"

	"github.com/stretchr/testify/assert"
)

// One key, named in the bottom line, goes from why to a field and back; an open value is left first,
// and after another screen was chosen there is no way back.
func TestFromWhyToAFieldAndBack(t *testing.T) {
	m := opened(session.NewExample(), 100, 30, "Trials", "")
	on := func() string { return m.view().Name() }
	for range 6 {
		m.press("down")
	}
	m.press("y down down enter")
	assert.Equal(t, "Machine", on())
	assert.Contains(t, m.View(), "this is one of the fields that it goes by")
	m.press("space")
	m.press("esc")
	assert.Equal(t, "Machine", on(), "the value is left first")
	m.press("esc")
	assert.Equal(t, "Trials", on())
	m.press("esc")
	assert.Equal(t, "Trials", on())
	m.press("y enter")
	assert.NotEqual(t, "Trials", on())
	m.press("shift+tab tab esc")
	assert.NotEqual(t, "Trials", on(), "another screen was chosen since")
}
