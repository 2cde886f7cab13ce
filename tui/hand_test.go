package tui

import (
	"fmt"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"slotwright/tui/kit"
	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

// A hand types whole jobs into the program on a terminal in the process, as a person would: only keys
// that the screen names, with a look at the screen after each of them, counting the keys by purpose.

// watched is the program with a window: the number of keys it has taken, and its last picture.
type watched struct {
	*Model
	mu    sync.Mutex
	keys  int
	frame string
	took  chan struct{} // closed at the next key
}

func (w *watched) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	_, cmd := w.Model.Update(msg)
	w.mu.Lock()
	defer w.mu.Unlock()
	if _, ok := msg.(tea.KeyMsg); ok {
		w.keys++
		close(w.took)
		w.took = make(chan struct{})
	}
	w.frame = w.Model.View()
	return w, cmd
}

func (w *watched) View() string { return w.Model.View() }

// shown is the last picture, as text, how many keys were taken before it, and what the next
// key closes.
func (w *watched) shown() (frame string, keys int, next <-chan struct{}) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return plainLines(w.frame), w.keys, w.took
}

// plainLines is a frame as a terminal shows it: no styles, no blanks at line ends.
func plainLines(frame string) string {
	lines := strings.Split(ansi.Strip(frame), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.TrimRight(strings.Join(lines, "\n"), "\n")
}

// hand is the simulated person at the keys.
type hand struct {
	t     *testing.T
	st    *tuitest.Stage
	w     *watched
	sent  int
	phase string
	count map[string]int
	order []string
	// learned is the help of each screen where it had to be consulted.
	learned map[string]string
}

// newHand starts the program on a session in an empty folder.
func newHand(t *testing.T, s *session.Session, w, h int) *hand {
	t.Helper()
	t.Chdir(t.TempDir())
	m := &watched{Model: New(s, recovery.Store{Dir: t.TempDir()}), took: make(chan struct{})}
	hd := &hand{t: t, w: m, count: map[string]int{}, learned: map[string]string{}}
	hd.st = tuitest.Start(t, m, w, h)
	hd.st.WaitFor("Machine")
	return hd
}

// begins names the purpose of the keys from now on.
func (h *hand) begins(phase string) {
	h.phase = phase
	h.order = append(h.order, phase)
}

// total is the number of keys pressed.
func (h *hand) total() int { return h.sent }

// told is the count of keys by purpose.
func (h *hand) told() string {
	var list []string
	for _, p := range h.order {
		list = append(list, fmt.Sprintf("%s %d", p, h.count[p]))
	}
	return fmt.Sprintf("%d keys: %s", h.sent, strings.Join(list, ", "))
}

// settle waits until all keys have been taken and the terminal shows their effect.
func (h *hand) settle() {
	h.t.Helper()
	for _, keys, next := h.w.shown(); keys < h.sent; _, keys, next = h.w.shown() {
		select {
		case <-next:
		case <-time.After(20 * time.Second):
			h.t.Fatalf("key %d of %d was never taken:\n%s", keys+1, h.sent, h.st.Screen())
		}
	}
	h.st.WaitUntil("for the screen to follow", func(screen string) bool {
		frame, _, _ := h.w.shown()
		return strings.TrimRight(screen, "\n ") == frame
	})
}

func (h *hand) pressed(n int) {
	h.sent += n
	h.count[h.phase] += n
	h.t.Helper()
	h.settle()
}

// key presses keys by name: those that the screen names at that moment, or else its help.
func (h *hand) key(names ...string) {
	h.t.Helper()
	for _, name := range names {
		if !tells(name, h.st.Screen()) && !tells(name, h.learned[h.tab()]) {
			h.learn()
			require.True(h.t, tells(name, h.learned[h.tab()]), "neither the screen nor its help names %q:\n%s", name, h.st.Screen())
		}
		h.st.Key(name)
		h.pressed(1)
	}
}

// tab is the screen that is up.
func (h *hand) tab() string {
	_, rest, _ := strings.Cut(h.st.Screen(), "[")
	name, _, _ := strings.Cut(rest, "]")
	return name
}

// learn reads the help of the screen that is up, from its beginning to its end.
func (h *hand) learn() {
	h.t.Helper()
	tab, phase := h.tab(), h.phase
	h.phase = "reading the help"
	if h.count[h.phase] == 0 {
		h.order = append(h.order, h.phase)
	}
	ask := "?"
	if !tells(ask, h.st.Screen()) {
		ask = "f1"
	}
	require.True(h.t, tells(ask, h.st.Screen()), "the screen does not name its help:\n%s", h.st.Screen())
	h.st.Key(ask)
	h.pressed(1)
	for last := ""; last != h.st.Screen(); {
		last = h.st.Screen()
		h.learned[tab] += last
		h.st.Key("pgdown")
		h.pressed(1)
	}
	h.st.Key("esc")
	h.pressed(1)
	h.phase = phase
}

// tells reports whether a text names a key: a line of keys, the foot of a box, the help.
func tells(key, text string) bool {
	return regexp.MustCompile(`(?m)(^|[\s─,(▸│])` + regexp.QuoteMeta(kit.KeyName(kit.Theme{}, key)) + `[ ,]`).MatchString(text)
}

// letters types text.
func (h *hand) letters(text string) {
	h.t.Helper()
	for _, r := range text {
		h.st.Type(string(r))
		h.pressed(1)
	}
}

// give types values, each accepted with enter, which moves to the next field.
func (h *hand) give(values ...string) {
	h.t.Helper()
	for _, v := range values {
		h.letters(v)
		h.key("enter")
	}
}

// at asserts which field is marked.
func (h *hand) at(label string) {
	h.t.Helper()
	require.Contains(h.t, h.st.Screen(), "▸ "+label)
}

// to moves to a field with a key, pressed as often as needed.
func (h *hand) to(key, label string) {
	h.t.Helper()
	for range 90 {
		if regexp.MustCompile(`▸ (\+ )?` + regexp.QuoteMeta(label) + `( |$)`).MatchString(h.st.Screen()) {
			return
		}
		h.key(key)
	}
	h.t.Fatalf("%q is not to be reached with %s:\n%s", label, key, h.st.Screen())
}

// command runs a command by its name.
func (h *hand) command(part string) {
	h.t.Helper()
	if tells(":", h.st.Screen()) {
		h.key(":")
	} else {
		h.key("ctrl+p")
	}
	h.letters(part)
	h.key("enter")
}

// sees asserts what the screen shows, with lines joined and blanks collapsed.
func (h *hand) sees(patterns ...string) {
	h.t.Helper()
	for _, p := range patterns {
		is := regexp.MustCompile(p)
		h.st.WaitUntil("to see "+p, func(screen string) bool { return is.MatchString(tuitest.Words(screen)) })
	}
}

// screen opens a screen with the key that the line of keys names.
func (h *hand) screen(name string) {
	h.t.Helper()
	for range 12 {
		if strings.Contains(h.st.Screen(), "["+name+"]") {
			return
		}
		h.key("tab")
	}
	h.t.Fatalf("there is no screen %q:\n%s", name, h.st.Screen())
}

// leaves ends the program, with the key for leaving, and returns its model.
func (h *hand) leaves() *Model {
	h.t.Helper()
	h.t.Log(h.told())
	return h.st.Quit().(*watched).Model
}
