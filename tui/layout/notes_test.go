package layout

import (
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
)

// single is one phase in 24 slots, coils both ways.
func single() *session.Session {
	return session.New(job.Parse("format = 1\n[machine]\nslots = 24\npoles = 8\nphases = 1\n[[trial]]\nname = \"A\"\nturns = 10\ngauge = \"19 SWG\"\n"), "", job.Mark{})
}

// The winding direction of a coil is a whole word at every screen size.
func TestTheWayIsAWord(t *testing.T) {
	for _, size := range [][2]int{{60, 20}, {80, 24}, {100, 30}, {120, 40}, {200, 60}} {
		v := New()
		got := frame(t, v, single(), body(size[0], size[1]))
		assert.Contains(t, got, "clockwise ", size)
		assert.NotRegexp(t, `anticl\.|clockw\.`, got, size)
	}
}

// The terms of the facts are explained: under the lists where there is room, otherwise, and where all
// lists show, at the end of the remarks, and never in both places.
func TestTheWordsAreExplained(t *testing.T) {
	const span, q, kw = "Span 3: the two sides of a coil lie 3 slots apart, its throw is 1 to 4.", "q: slots of one phase under one pole.", "kw1: the part of the turns"
	all := frame(t, New(), session.NewExample(), body(200, 60))
	for _, want := range []string{"Span 3: the two sides of a coil lie 3 slots apart, its", q, kw} {
		assert.Equal(t, 1, strings.Count(all, want), want)
	}
	for _, size := range [][2]int{{100, 30}, {120, 40}} {
		got := tuitest.Words(frame(t, New(), session.NewExample(), body(size[0], size[1])))
		for _, want := range []string{span, q, kw} {
			assert.Contains(t, got, want, size)
		}
	}
	s, v := session.NewExample(), New()
	r := body(80, 24)
	frame(t, v, s, r)
	press(v, s, "r")
	seen := ""
	for range 40 {
		seen += frame(t, v, s, r)
		press(v, s, "down")
	}
	for _, want := range []string{"Span 3: the two sides", "q: slots of one phase", "kw1: the part", "Single layer: one coil side", "U1 begins"} {
		assert.Contains(t, seen, want)
	}
}

// One phase has no keys for others, and star and delta are not mentioned.
func TestOnePhaseHasNoOthers(t *testing.T) {
	s, v := single(), New()
	got := frame(t, v, s, body(120, 40))
	for _, b := range v.Bindings(s) {
		assert.NotContains(t, []string{"0", "1", "2", "3"}, strings.Join(b.Keys(), " "))
	}
	press(v, s, "f")
	got += frame(t, v, s, body(120, 40))
	assert.NotRegexp(t, `\bstar\b|\bdelta\b`, got)
	assert.Contains(t, kit.Clean(got), "U1")
}

// Where there is no layout enter goes to the field that it waits for.
func TestEnterGoesToWhatTheLayoutWaitsFor(t *testing.T) {
	s, v := session.New(job.Parse("format = 1\n[machine]\nbore_mm = 90\n[[trial]]\nname = \"A\"\nturns = 10\n"), "", job.Mark{}), New()
	assert.Contains(t, tuitest.Words(frame(t, v, s, body(80, 24))), "Enter goes to the field that is missing.")
	press(v, s, "enter")
	went, ok := s.Going()
	assert.True(t, ok)
	assert.Equal(t, "machine.slots", went)
}

// A flat stator has no slots; their equivalent has the same name here as on the card.
func TestAFlatStatorsSlotsAreGaps(t *testing.T) {
	const words, text = "Slot: here the gap between two flat coils", "format = 1\n[machine]\nslots = 9\npoles = 12\nspan = 1\nlayers = 2\n%s[[trial]]\nname = \"A\"\nturns = 80\ngauge = \"1 mm\"\n"
	for stator, want := range map[string]bool{"stator = \"flat\"\n": true, "": false} {
		s := session.New(job.Parse(strings.Replace(text, "%s", stator, 1)), "", job.Mark{})
		got := tuitest.Words(frame(t, New(), s, body(120, 40)))
		assert.Equal(t, want, strings.Contains(got, words), stator)
	}
}
