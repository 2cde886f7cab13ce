package layout

import (
	"fmt"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"
	"slotwright/winding/layout"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// changed is the example with values set: "machine.slots", "27" and so on in pairs.
func changed(pairs ...string) *session.Session {
	s := session.NewExample()
	for i := 0; i < len(pairs); i += 2 {
		s.Edit(s.Document().Set(pairs[i], pairs[i+1], s.Units))
	}
	return s
}

// fractional is 27 slots with 6 poles in two layers, q = 3/2, joined in delta.
func fractional() *session.Session {
	return changed("machine.slots", "27", "machine.poles", "6", "machine.layers", "2", "machine.span", "4",
		"trial[0].connection", "delta", "trial[0].turns", "12")
}

// stators are the jobs whose frames are drawn.
var stators = map[string]func() *session.Session{
	"example":    func() *session.Session { return changed() },
	"fractional": fractional,
	"tooth": func() *session.Session {
		return changed("machine.slots", "12", "machine.poles", "10", "machine.layers", "2", "machine.span", "1")
	},
	"tall": func() *session.Session {
		return changed("machine.slots", "48", "machine.poles", "4", "machine.layers", "2", "machine.span", "10", "trial[0].circuits", "2")
	},
	"nested": func() *session.Session {
		return changed("machine.slots", "24", "machine.poles", "4", "machine.kind", "concentric", "machine.span", "6")
	},
	"sets": func() *session.Session {
		return changed("machine.slots", "72", "machine.poles", "12", "machine.sets", "2", "machine.span", "6")
	},
	"wave":   func() *session.Session { return changed("machine.kind", "wave") },
	"single": func() *session.Session { return changed("machine.phases", "1") },
	"large": func() *session.Session {
		return changed("machine.slots", "144", "machine.poles", "40", "machine.layers", "2", "machine.span", "4")
	},
	"noturns": func() *session.Session { return changed("trial[0].turns", "") },
	"broken":  func() *session.Session { return changed("machine.slots", "35") },
	"badspan": func() *session.Session { return changed("machine.span", "6") },
	"nothing": func() *session.Session { return session.New(job.Parse("format = 1\n"), "", job.Mark{}) },
	"notrial": func() *session.Session {
		return session.New(job.Parse("format = 1\n[machine]\nslots = 36\npoles = 12\n"), "", job.Mark{})
	},
}

// body is the rectangle that a view has in a terminal of w by h.
func body(w, h int) kit.Rect { return kit.Rect{Y: 2, W: w, H: h - 3} }

// frame draws a view and checks its size.
func frame(t *testing.T, v *View, s *session.Session, r kit.Rect) string {
	t.Helper()
	screen := kit.NewScreen(s.Theme, r.W, r.H)
	v.SetSize(s, r)
	for _, b := range v.Draw(s) {
		tuitest.CheckLines(t, b.Lines, b.Rect.W, b.Rect.H)
		b.Rect.Y -= r.Y
		assert.LessOrEqual(t, b.Rect.Y+b.Rect.H, r.H)
		assert.LessOrEqual(t, b.Rect.X+b.Rect.W, r.W)
		screen.Put(b)
	}
	return screen.String()
}

// press presses keys in the rectangle the view has, or a small one.
func press(v *View, s *session.Session, keys ...string) {
	if v.at.Empty() {
		v.SetSize(s, body(80, 24))
	}
	for _, k := range keys {
		v.Key(s, tuitest.KeyMsg(k))
		v.SetSize(s, v.at)
	}
}

// TestFrames compares the pictures of what the frames of the whole screen do not show: other stators,
// other lists, one phase.
func TestFrames(t *testing.T) {
	for _, c := range []struct {
		what, stator string
		w, h         int
		keys         string
	}{
		{"seam", "example", 80, 24, "end"},
		{"leads", "example", 80, 24, "l"},
		{"factors", "example", 80, 24, "f"},
		{"remarks", "example", 80, 24, "r"},
		{"phase", "example", 80, 24, "3"},
		{"spans", "fractional", 80, 24, "s up"},
		{"joins", "fractional", 80, 24, "j n n"},
		{"fractional", "fractional", 120, 40, "n f"},
		{"tooth", "tooth", 80, 24, "n"},
		{"tall", "tall", 80, 24, ""},
		{"circuits", "tall", 80, 24, "s pgdown pgdown pgdown"},
		{"nested", "nested", 80, 24, "n"},
		{"wave", "wave", 80, 24, "n"},
		{"sets", "sets", 120, 40, "n"},
		{"large", "large", 200, 60, "n"},
		{"badspan", "badspan", 80, 24, ""},
	} {
		s, v := stators[c.stator](), New()
		r := body(c.w, c.h)
		frame(t, v, s, r)
		press(v, s, strings.Fields(c.keys)...)
		tuitest.Golden(t, fmt.Sprintf("layout-%s-%dx%d", c.what, c.w, c.h), frame(t, v, s, r))
	}
}

// ASCII draws the same, and colour adds only colour.
func TestThemes(t *testing.T) {
	for name, make := range stators {
		s := make()
		plain := frame(t, New(), s, body(100, 30))
		s.Theme = kit.Theme{Colour: true}
		assert.Equal(t, strings.Fields(plain), strings.Fields(ansi.Strip(frame(t, New(), s, body(100, 30)))), name)
		s.Theme = kit.Theme{ASCII: true}
		tuitest.CheckASCII(t, frame(t, New(), s, body(100, 30)))
	}
}

// Every panel of every stator at every size, in every theme.
func TestEverySize(t *testing.T) {
	for name, make := range stators {
		s, v := make(), New()
		n := 0
		for w := 80; w <= 200; w += 15 {
			for h := 21; h <= 60; h += 4 {
				n++
				s.Theme = kit.Theme{Colour: n%2 == 0, ASCII: n%3 == 0}
				press(v, s, []string{"v", "n", "n", "down", "V", "1", "pgdown", "0", "end", "n", "3", "up", "home", "]", "p", "["}[n%16])
				frame(t, v, s, kit.Rect{W: w, H: h})
				if t.Failed() {
					t.Fatalf("%s at %dx%d", name, w, h)
				}
			}
		}
	}
}

func TestWalking(t *testing.T) {
	s, v := fractional(), New()
	d := v.sheet(s)
	total := len(d.steps)
	require.Equal(t, 27, total)
	for i := range total {
		assert.Equal(t, i, v.step)
		text := strings.Join(strings.Fields(frame(t, v, s, body(80, 24))), " ")
		assert.Contains(t, text, fmt.Sprintf("Step %d of %d. Phase %s: %s.", i+1, total, d.steps[i].Name, d.steps[i].String()))
		press(v, s, "n")
	}
	assert.Equal(t, total-1, v.step, "it stays on the last")
	press(v, s, "home")
	assert.Zero(t, v.step)
	press(v, s, "left")
	assert.Zero(t, v.step)
	press(v, s, "2")
	assert.Equal(t, 1, v.sheet(s).steps[v.step].Phase)
	press(v, s, "end")
	assert.Equal(t, 1, v.sheet(s).steps[v.step].Phase, "the last of V, not of all")
	assert.Equal(t, total/3*2-1, v.step)
}

// Both slots of the current coil are in sight at every step, marked IN and OUT.
func TestTheCurrentCoilIsInSight(t *testing.T) {
	for name, make := range stators {
		s, v := make(), New()
		d := v.sheet(s)
		for range d.steps {
			text := frame(t, v, s, body(80, 24))
			for _, word := range []string{"IN", "OUT"} {
				found := false
				for _, line := range strings.Split(text, "\n") {
					found = found || (strings.HasPrefix(strings.TrimSpace(line), "now ") && strings.Contains(line, word))
				}
				require.True(t, found, "%s step %d: no %s in\n%s", name, v.step, word, text)
			}
			press(v, s, "n")
		}
	}
}

// A span chosen in the comparison becomes the trial's, and undo restores the old one.
func TestTakingASpan(t *testing.T) {
	s, v := fractional(), New()
	press(v, s, "s", "up")
	press(v, s, "enter")
	assert.Equal(t, 3, s.Job().Trials[0].Span.Whole())
	assert.Equal(t, 3, v.sheet(s).plan.Spec().Span)
	s.Undo()
	assert.Equal(t, 4, v.sheet(s).plan.Spec().Span)
	press(v, s, "s", "pgdown", "pgdown", "pgdown", "enter")
	assert.Equal(t, 3, s.Job().Trials[0].Circuits.Whole(), "the last row is the most circuits")
}

// Another list is read from its top.
func TestListsBeginAtTheirTop(t *testing.T) {
	s, v := fractional(), New()
	press(v, s, "r", "down", "down")
	require.Equal(t, 2, v.scroll.Top)
	press(v, s, "f")
	assert.Zero(t, v.scroll.Top)
	press(v, s, "r", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown")
	end := v.scroll.Top
	press(v, s, "down")
	assert.Equal(t, end, v.scroll.Top, "and no further than its end")
}

func TestWithoutALayoutTheReasonIsShown(t *testing.T) {
	for name, want := range map[string]string{
		"broken": "35 slots with 12 poles have no balanced three-phase layout", "badspan": "voltages cancel",
		"nothing": "no trial", "notrial": "no trial",
	} {
		s, v := stators[name](), New()
		text := strings.Join(strings.Fields(frame(t, v, s, body(80, 24))), " ")
		assert.Contains(t, text, want, name)
		for _, b := range v.Bindings(s) {
			press(v, s, b.Keys()...)
			frame(t, v, s, body(80, 24))
		}
	}
}

// A span that gives no layout can be corrected on the spot.
func TestMendingASpan(t *testing.T) {
	s, v := stators["badspan"](), New()
	require.Nil(t, v.sheet(s).plan)
	press(v, s, "enter")
	require.NotNil(t, v.sheet(s).plan)
	assert.Equal(t, 3, s.Job().Trials[0].Span.Whole(), "the strongest is marked")
}

// Every slot's coil sides are in the picture, with every coil's number under them.
func TestEverySideIsWritten(t *testing.T) {
	for name, make := range stators {
		s, v := make(), New()
		d := v.sheet(s)
		if d.plan == nil {
			continue
		}
		p := v.newStrip(s.Theme, d, true)
		p.shown = func(layout.Coil) bool { return true }
		p.n, p.pitch = d.plan.Spec().Slots, 5
		_, p.lanes = arcs(d.plan.Coils(), p.n, 0, p.n)
		lines := p.lines(d.plan.Coils())
		require.Len(t, lines, p.rows(), name)
		for slot := 1; slot <= p.n; slot++ {
			for _, side := range d.plan.Slot(slot) {
				row := p.lanes + 1 + 2*rowOf(side)
				at := func(line string) string { return strings.TrimSpace(string([]rune(line)[p.x(slot-1) : p.x(slot-1)+4])) }
				assert.Equal(t, d.plan.PhaseName(side.Set, side.Phase)+map[int]string{1: "+", -1: "−"}[side.Sign], at(lines[row]), "%s slot %d", name, slot)
				assert.Equal(t, fmt.Sprint(side.Coil), at(lines[row+1]), "%s slot %d", name, slot)
			}
		}
	}
}

// Lanes: no two coils in one lane overlap, and all are in sight.
func TestArcsDoNotOverlap(t *testing.T) {
	for name, make := range stators {
		s, v := make(), New()
		d := v.sheet(s)
		if d.plan == nil {
			continue
		}
		slots := d.plan.Spec().Slots
		list, lanes := arcs(d.plan.Coils(), slots, 5, min(slots, 17))
		for i, a := range list {
			assert.Less(t, a.lane, lanes)
			for _, b := range list[:i] {
				assert.False(t, a.lane == b.lane && a.from < b.to && b.from < a.to, "%s: coils %d and %d", name, a.coil.Number, b.coil.Number)
			}
		}
	}
}

func BenchmarkDraw(b *testing.B) {
	s, v := stators["example"](), New()
	for b.Loop() {
		v.SetSize(s, body(120, 40))
		v.Draw(s)
	}
}
