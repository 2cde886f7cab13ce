package tuitest

import (
	"io"
	"strings"
	"sync"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/vt"
)

// patience is how long a wait lasts before it fails the test. It is long because the machine may be
// busy; a wait that is met returns at once.
const patience = 10 * time.Second

// Stage is a program running on a terminal in the process. Use it from the test's own
// goroutine only.
type Stage struct {
	t       testing.TB
	program *tea.Program
	input   *io.PipeWriter
	screen  *screen
	done    chan struct{} // closed when the program has ended
	final   tea.Model     // valid after done
	err     error         // valid after done
}

// Start runs a model on a terminal of w x h cells, in the alternate screen, until Quit or the
// end of the test. Options come after stage's own and may override them.
func Start(t testing.TB, m tea.Model, w, h int, opts ...tea.ProgramOption) *Stage {
	t.Helper()
	in, input := io.Pipe()
	s := &Stage{t: t, input: input, screen: newScreen(w, h), done: make(chan struct{})}
	all := append([]tea.ProgramOption{
		tea.WithInput(in), tea.WithOutput(s.screen), tea.WithAltScreen(), tea.WithFPS(120), tea.WithoutSignalHandler(),
	}, opts...)
	s.program = tea.NewProgram(m, all...)
	go func() {
		s.final, s.err = s.program.Run()
		_ = in.CloseWithError(io.ErrClosedPipe) // a key typed now must not wait for ever
		close(s.done)
		s.screen.wake()
	}()
	t.Cleanup(func() {
		s.program.Kill()
		<-s.done
		s.screen.close()
	})
	s.program.Send(tea.WindowSizeMsg{Width: w, Height: h})
	return s
}

// Type sends text as if typed, one key message a rune.
func (s *Stage) Type(text string) {
	s.t.Helper()
	for _, r := range text {
		s.Raw(string(r))
	}
}

// Raw sends bytes in one write, as a terminal would that is typed on fast.
func (s *Stage) Raw(text string) {
	s.t.Helper()
	if _, err := io.WriteString(s.input, text); err != nil {
		s.t.Fatalf("stage: typing %q: the program has ended (%v)", text, err)
	}
}

// Paste sends text as a bracketed paste.
func (s *Stage) Paste(text string) {
	s.t.Helper()
	s.Raw("\x1b[200~" + text + "\x1b[201~")
}

// Key presses keys by their tea names: "down", "ctrl+s", "alt+x", "shift+tab", "j".
func (s *Stage) Key(names ...string) {
	s.t.Helper()
	for _, name := range names {
		b, ok := keyBytes(name)
		if !ok {
			s.t.Fatalf("stage: no key named %q", name)
		}
		s.Raw(b)
	}
}

// Resize changes the terminal's size.
func (s *Stage) Resize(w, h int) {
	s.screen.resize(w, h)
	s.program.Send(tea.WindowSizeMsg{Width: w, Height: h})
}

// Send gives the program a message.
func (s *Stage) Send(msg tea.Msg) { s.program.Send(msg) }

// Screen is what the terminal shows now, as text, without blanks at line ends.
func (s *Stage) Screen() string { return s.screen.text() }

// Styled is what the terminal shows now, with SGR sequences.
func (s *Stage) Styled() string { return s.screen.styled() }

// WaitFor waits until the screen shows a text.
func (s *Stage) WaitFor(text string) {
	s.t.Helper()
	s.WaitUntil("to see "+text, func(screen string) bool { return strings.Contains(screen, text) })
}

// WaitGone waits until the screen no longer shows a text.
func (s *Stage) WaitGone(text string) {
	s.t.Helper()
	s.WaitUntil("not to see "+text, func(screen string) bool { return !strings.Contains(screen, text) })
}

// WaitUntil waits until the screen meets a condition, and fails the test, showing the
// screen, when it does not within ten seconds or when the program ends first.
func (s *Stage) WaitUntil(what string, met func(screen string) bool) {
	s.t.Helper()
	deadline := time.NewTimer(patience)
	defer deadline.Stop()
	for {
		changed := s.screen.changed()
		if met(s.Screen()) {
			return
		}
		select {
		case <-changed:
		case <-s.done:
			if !met(s.Screen()) {
				s.t.Fatalf("stage: waiting %s: the program ended (%v). Screen:\n%s", what, s.err, s.Screen())
			}
			return
		case <-deadline.C:
			s.t.Fatalf("stage: waited %s %s in vain. Screen:\n%s", patience, what, s.Screen())
		}
	}
}

// Quit ends the program and gives the final model.
func (s *Stage) Quit() tea.Model {
	s.t.Helper()
	s.program.Quit()
	return s.Ended()
}

// Ended waits for the program to end by itself and gives the final model.
func (s *Stage) Ended() tea.Model {
	s.t.Helper()
	select {
	case <-s.done:
	case <-time.After(patience):
		s.t.Fatalf("stage: the program has not ended within %s. Screen:\n%s", patience, s.Screen())
	}
	if s.err != nil {
		s.t.Fatalf("stage: the program ended with %v", s.err)
	}
	return s.final
}

// screen is the terminal: the emulator behind a lock. Its replies to queries are drained, since a query
// would otherwise block the program's output.
type screen struct {
	mu   sync.Mutex
	emu  *vt.Emulator
	next chan struct{} // closed at the next change
}

func newScreen(w, h int) *screen {
	s := &screen{emu: vt.NewEmulator(w, h), next: make(chan struct{})}
	go func() { _, _ = io.Copy(io.Discard, s.emu) }()
	return s
}

// Write is where the program's output arrives.
func (s *screen) Write(p []byte) (int, error) {
	s.mu.Lock()
	n, err := s.emu.Write(p)
	s.mu.Unlock()
	s.wake()
	return n, err
}

// wake lets waiters look again.
func (s *screen) wake() {
	s.mu.Lock()
	defer s.mu.Unlock()
	close(s.next)
	s.next = make(chan struct{})
}

func (s *screen) changed() <-chan struct{} {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.next
}

func (s *screen) resize(w, h int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.emu.Resize(w, h)
}

func (s *screen) text() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return trimLines(s.emu.String())
}

func (s *screen) styled() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.emu.Render()
}

// close ends the draining goroutine. The emulator's own Close would race with its Read.
func (s *screen) close() {
	if c, ok := s.emu.InputPipe().(io.Closer); ok {
		_ = c.Close()
	}
}
