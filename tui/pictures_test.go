package tui

import (
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
)

// The pictures of the README match what the program shows.
func TestPictures(t *testing.T) {
	draw := func(name string, s *session.Session, w, h int, screen, keys string) {
		s.Theme = kit.Theme{Colour: true, Look: kit.DarkBackground}
		tuitest.Picture(t, name, opened(s, w, h, screen, keys).View(), w, h)
	}
	draw("trials", session.NewExample(), 100, 30, "Trials", "")
	draw("curves", session.NewExample(), 100, 30, "Curves", "")
	draw("first-things", session.New(job.Parse(""), "", job.Mark{}), 80, 24, "Machine", "4 2 enter 1 4 enter enter 3 enter enter 9 5 enter 3 4")
	draw("commands", session.NewExample(), 80, 24, "Layout", "ctrl+p c a r d")
}

// A picture contains every character of its frame in its place, and the styles.
func TestAPictureIsItsFrame(t *testing.T) {
	svg := tuitest.SVG("ab \x1b[1;94mc<\x1b[0m\n  \x1b[7m \x1b[0m", 6, 2)
	assert.Contains(t, svg, `<text x="12.0" y="25" textLength="16.8">ab</text>`)
	assert.Contains(t, svg, `<text x="37.2" y="25" textLength="16.8" fill="#7f9cff" font-weight="bold">c&lt;</text>`)
	assert.Contains(t, svg, `<rect x="28.8" y="29" width="8.4" height="17" fill="#d5d9e0"/>`)
}
