package tuitest

import (
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
)

// Draw gives a view a rectangle of w x h cells, checks that it fills its blocks exactly and stays
// within, and returns the frame.
func Draw(t testing.TB, v session.View, s *session.Session, w, h int) string {
	t.Helper()
	screen := kit.NewScreen(s.Theme, w, h)
	v.SetSize(s, screen.Rect())
	for _, b := range v.Draw(s) {
		CheckLines(t, b.Lines, b.Rect.W, b.Rect.H)
		if b.Rect.X < 0 || b.Rect.Y < 0 || b.Rect.X+b.Rect.W > w || b.Rect.Y+b.Rect.H > h {
			t.Errorf("a block at %+v leaves the %d x %d cells", b.Rect, w, h)
		}
		screen.Put(b)
	}
	return screen.String()
}

// Press presses keys on a view, named with blanks between them, in the rectangle of w x h
// cells.
func Press(t testing.TB, v session.View, s *session.Session, w, h int, keys string) {
	t.Helper()
	for _, k := range strings.Fields(keys) {
		if k == "space" {
			k = " "
		}
		v.SetSize(s, kit.Rect{W: w, H: h})
		if !v.Key(s, KeyMsg(k)) {
			t.Errorf("%q means nothing here", k)
		}
	}
	v.SetSize(s, kit.Rect{W: w, H: h})
}

// Words is a frame's text without borders and with single blanks, so that a wrapped sentence can be
// found.
func Words(frame string) string {
	return strings.Join(strings.Fields(strings.NewReplacer("│", " ", "┃", " ", "║", " ").Replace(frame)), " ")
}
