package tui

import (
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/winding/job"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// top is the first line of the frame in w columns, without styles.
func (m *Model) top(w int) string {
	m.Update(tea.WindowSizeMsg{Width: w, Height: 24})
	line, _, _ := strings.Cut(ansi.Strip(m.View()), "\n")
	return line
}

// One line names the screen, the job and whether it is saved; the least informative parts are dropped
// first, "not saved" never. The tabs stay in place.
func TestBar(t *testing.T) {
	m := New(session.New(job.Parse(job.Example().Text()), "/home/hub/quick-mill-by-the-weir.toml", job.Mark{}), recovery.Store{})
	tabs := " [Machine] Trials Layout Curves Drive Card Wound Shelf "
	m.show(0)
	for _, row := range []struct {
		w    int
		want []string
		not  []string
	}{
		{200, []string{" Slotwright  " + tabs[1:], "Mill-race alternator  quick-mill-by-the-weir.toml"}, nil},
		{120, []string{" Slotwright  " + tabs[1:], "Mill-race al", "quick-mill-by-the-weir.toml"}, nil},
		{100, []string{tabs, "Mill-race al", "quick-mill-by-the-weir.toml"}, []string{"Slotwright"}},
		{80, []string{tabs, "  quick-mill-by-the-we"}, []string{"Slotwright", "Mill-race"}},
		{60, []string{" [Machine] Trials Layout Curves Drive Card ▸", "  quick-mil…"}, []string{"Wound"}},
	} {
		saved := m.top(row.w)
		for _, text := range row.want {
			assert.Contains(t, saved, text, "%d", row.w)
		}
		for _, text := range row.not {
			assert.NotContains(t, saved, text, "%d", row.w)
		}
		m.press("ctrl+end") // a place where nothing is being given
		m.s.StepTurns(1)
		changed := m.top(row.w)
		assert.True(t, strings.HasSuffix(changed, "• not saved"), changed)
		assert.Equal(t, ansi.Cut(saved, 0, row.w-12-12)[:30], ansi.Cut(changed, 0, row.w-12-12)[:30])
		m.s.Undo()
	}
	m = New(session.NewExample(), recovery.Store{})
	assert.True(t, strings.HasSuffix(m.top(80), "  invented example"), m.top(80))
	m.s.StepTurns(1)
	assert.True(t, strings.HasSuffix(m.top(80), "  example • not saved"), m.top(80))
	assert.True(t, strings.HasSuffix(m.top(60), " • not saved"), m.top(60))
}

// A click on the first or last letter of a visible tab selects it, at every size; nothing else of the
// line is clickable.
func TestClickingOnTabs(t *testing.T) {
	for _, size := range sizes {
		m := opened(session.NewExample(), size[0], size[1], "Trials", "")
		for _, name := range m.tabNames() {
			for _, end := range []int{0, len(name) - 1} {
				line := m.top(size[0])
				at := strings.Index(line, " "+name+" ")
				if at < 0 {
					continue
				}
				m.Update(tea.MouseMsg{X: kit.Width(line[:at+1]) + end, Y: 0, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
				require.Equal(t, name, m.view().Name(), "%v", size)
				m.bring(m.active + 1)
			}
		}
		was := m.active
		for _, at := range []int{0, size[0] - 1} {
			m.Update(tea.MouseMsg{X: at, Y: 1, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
			m.Update(tea.MouseMsg{X: size[0] - 1, Y: 0, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
			require.Equal(t, was, m.active)
		}
	}
}
