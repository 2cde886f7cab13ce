package tui

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
)

// many is how many events are tried: EVENTS=1000000 for the long run.
func many() int {
	if n, err := strconv.Atoi(os.Getenv("EVENTS")); err == nil {
		return n
	}
	if testing.Short() {
		return 3000
	}
	return 20_000
}

// pressed are the keys that may be pressed; letters and signs come in addition.
var pressed = strings.Fields(`up down left right home end pgup pgdown enter enter enter esc tab shift+tab backspace delete f1 f2 f3 f4
ctrl+c ctrl+d ctrl+e ctrl+f ctrl+g ctrl+k ctrl+l ctrl+n ctrl+o ctrl+p ctrl+q ctrl+s ctrl+t ctrl+u ctrl+w ctrl+y ctrl+z ctrl+home ctrl+end ctrl+left ctrl+right`)

// typedSigns have no slash and no ~: saved files stay in the test's own folder.
const typedSigns = "0123456789.,+-±[]<>?:!=_ abcdefghijklmnopqrstuvwxyzAFGU\"'µ日é"

var pasted = []string{"18 AWG", "0.75 mm over", "42", "-1", "1e99", "nan", "inf", "concentric", "12, 10, 8", "3.5 in", "a\nb\tc", "\x1b[31mx", strings.Repeat("9", 400), ""}

// event is one action of a person or a terminal.
func event(r *rand.Rand, w, h int) tea.Msg {
	switch n := r.IntN(100); {
	case n < 45:
		return tuitest.KeyMsg(pressed[r.IntN(len(pressed))])
	case n < 88:
		signs := []rune(typedSigns)
		return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{signs[r.IntN(len(signs))]}}
	case n < 91:
		return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(pasted[r.IntN(len(pasted))]), Paste: r.IntN(3) > 0}
	case n < 96:
		buttons := []tea.MouseButton{tea.MouseButtonLeft, tea.MouseButtonWheelUp, tea.MouseButtonWheelDown, tea.MouseButtonRight}
		return tea.MouseMsg{X: r.IntN(w+4) - 2, Y: r.IntN(h+4) - 2, Button: buttons[r.IntN(len(buttons))], Action: tea.MouseAction(r.IntN(3))}
	}
	if r.IntN(3) > 0 { // sizes at which there is something to see come more often
		return tea.WindowSizeMsg{Width: needW + r.IntN(240), Height: needH + r.IntN(80)}
	}
	return tea.WindowSizeMsg{Width: 1 + r.IntN(300), Height: 1 + r.IntN(100)}
}

// beside answers some of the background requests: often at once, at times many events later and in any
// order, as on a busy machine. While more than 20 wait, it goes on answering.
func beside(l *tuitest.Loop, r *rand.Rand) (run int) {
	for l.Waiting() > 0 && (l.Waiting() > 20 || r.IntN(4) > 0) {
		l.Run(r.IntN(l.Waiting()))
		run++
	}
	return run
}

// newFolder is where the next rounds work: another job to open, and room for what is kept.
func newFolder(t *testing.T) string {
	dir := t.TempDir()
	t.Chdir(dir)
	require.NoError(t, os.WriteFile("other.toml", []byte(job.Example().Text()), 0o600))
	return dir
}

var noNumber = regexp.MustCompile(`NaN|[+-]Inf`)

// Random keys, pastes, mouse events and sizes, with background work done sooner or later: no panic, no
// NaN or Inf shown, no frame larger than the terminal, and what was saved is what the program has.
func TestRandomHands(t *testing.T) {
	tuitest.OneGoroutine(t)
	const each = 500
	answers, dir := 0, ""
	for round := range (many() + each - 1) / each {
		if round%20 == 0 { // or the shelf works out hundreds of files at every look
			dir = newFolder(t)
		}
		r := rand.New(rand.NewPCG(uint64(round), 7))
		start := session.NewExample()
		if round%3 == 1 {
			start = session.New(job.Parse(job.Template("")), "", job.Mark{})
		}
		m := New(start, recovery.Store{Dir: filepath.Join(dir, "state")})
		m.tick = atOnce
		w, h := 80, 24
		l := &tuitest.Loop{Model: m}
		l.Send(tea.WindowSizeMsg{Width: w, Height: h})
		for i := range each {
			msg := event(r, w, h)
			if size, ok := msg.(tea.WindowSizeMsg); ok {
				w, h = size.Width, size.Height
			}
			l.Send(msg)
			answers += beside(l, r)
			if _, ok := msg.(tea.WindowSizeMsg); ok || i%25 == 0 {
				frame := m.View()
				tuitest.CheckFrame(t, frame, w, h)
				require.NotRegexp(t, noNumber, frame, "nobody typed these capitals")
				require.False(t, t.Failed(), "round %d, event %d: %#v", round, i, msg)
			}
			if m.s.Path != "" && !m.s.Dirty() {
				text, err := os.ReadFile(m.s.Path)
				require.NoError(t, err)
				require.Equal(t, string(text), m.s.Document().Text(), "round %d, event %d", round, i)
			}
		}
		l.Settle(t)
		m.End()
	}
	require.Greater(t, answers, many()/100, "work beside the keys is what this is about, too")
}

// Keys that change a winding with its ladder open, while ladders of earlier windings really are worked
// out in goroutines of their own as in the program: the race detector sees what both touch.
func TestKeysWhileLaddersAreWorkedOut(t *testing.T) {
	m := opened(session.NewExample(), 100, 30, "Trials", "e")
	m.tick = atOnce
	l := &tuitest.Loop{Model: m}
	r := rand.New(rand.NewPCG(3, 7))
	keys := strings.Fields("+ + - ] [ > < T m right left up down enter e y v i d n ctrl+z ctrl+z ctrl+y ctrl+k esc tab shift+tab")
	answers := 0
	for i := range 300 {
		l.Send(tuitest.KeyMsg(keys[r.IntN(len(keys))]))
		l.Begin()
		tuitest.CheckFrame(t, m.View(), 100, 30)
		answers += l.Take(i%50 == 49)
	}
	for l.Begin(); l.Take(true) > 0; l.Begin() {
		answers++
	}
	require.Greater(t, answers, 30)
}
