package tuitest

import (
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// echo shows its size and the keys it got.
type echo struct {
	w, h int
	keys []string
}

func (e echo) Init() tea.Cmd { return nil }

func (e echo) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		e.w, e.h = msg.Width, msg.Height
	case tea.KeyMsg:
		if msg.String() == "ctrl+c" {
			return e, tea.Quit
		}
		e.keys = append(append([]string(nil), e.keys...), msg.String())
	}
	return e, nil
}

func (e echo) View() string {
	last := e.keys[max(0, len(e.keys)-5):]
	return fmt.Sprintf("size %dx%d\n\x1b[1mkeys\x1b[0m %d\n%s.", e.w, e.h, len(e.keys), strings.Join(last, " "))
}

func TestStageRunsAProgram(t *testing.T) {
	s := Start(t, echo{}, 40, 6)
	s.WaitFor("size 40x6")
	s.Type("aΩ")
	s.WaitFor("a Ω.")
	s.Raw("jj")
	s.WaitFor("jj.")
	s.Paste("18 AWG\nx")
	s.WaitFor("[18 AWG")
	s.WaitGone("jj.")
	assert.Contains(t, s.Styled(), "\x1b[1m")
	s.Resize(60, 8)
	s.WaitFor("size 60x8")
	s.Key("ctrl+c")
	final := s.Ended().(echo)
	assert.Equal(t, []string{"a", "Ω", "jj", "[18 AWG\nx]"}, final.keys)
}

func TestQuitGivesTheModel(t *testing.T) {
	s := Start(t, echo{}, 20, 4)
	s.Key("x")
	s.WaitFor("keys 1")
	assert.Equal(t, 20, s.Quit().(echo).w)
}

// Every key name must come back as the same name through bubbletea's own reader.
func TestKeyNames(t *testing.T) {
	s := Start(t, echo{}, 60, 4)
	n := 0
	for name := range namedKeys {
		if name == "space" {
			continue
		}
		s.Key(name)
		n++
		s.WaitFor(fmt.Sprintf("keys %d\n", n))
		require.Contains(t, s.Screen(), name+".")
	}
	s.Key("ctrl+s", "alt+x", "q")
	s.WaitFor("ctrl+s alt+x q.")
	_, ok := keyBytes("no such key")
	assert.False(t, ok)
}

// witness records failures instead of failing.
type witness struct {
	testing.TB
	failures int
}

func (w *witness) Errorf(string, ...any) { w.failures++ }
func (w *witness) Helper()               {}

func TestChecksCanFail(t *testing.T) {
	w := &witness{TB: t}
	CheckFrame(w, "abc\nd", 3, 2)
	CheckLines(w, []string{"abc", "d  "}, 3, 2)
	require.Zero(t, w.failures)
	CheckFrame(w, "abcd\nd", 3, 2)
	CheckFrame(w, "abc", 3, 2)
	CheckLines(w, []string{"abc", "d"}, 3, 2)
	CheckLines(w, []string{"abc"}, 3, 2)
	assert.Equal(t, 4, w.failures)
}

func TestSnapshotSeesEverything(t *testing.T) {
	type inner struct {
		n    *witness
		list []int
		by   map[string]float64
	}
	make := func() *inner {
		return &inner{&witness{}, []int{1, 2}, map[string]float64{"a": 1, "b": 2}}
	}
	same := Snapshot(make())
	assert.Equal(t, same, Snapshot(make()))
	for _, change := range []func(*inner){
		func(v *inner) { v.n.failures = 1 }, func(v *inner) { v.n = nil }, func(v *inner) { v.list[1] = 3 },
		func(v *inner) { v.list = v.list[:1] }, func(v *inner) { v.by["b"] = 3 }, func(v *inner) { v.by = nil },
	} {
		v := make()
		change(v)
		assert.NotEqual(t, same, Snapshot(v))
	}
}

func TestRuns(t *testing.T) {
	for line, want := range map[string][]Run{
		"plain":                                   nil,
		"a\x1b[1;36mbc\x1b[0m d\x1b[7m \x1b[0m":   {{1, 3, "bold cyan"}, {5, 6, "reversed"}},
		"\x1b[2ma b\x1b[0m\x1b[2mc   \x1b[0m":     {{0, 4, "faint"}},
		"\x1b[1mä\x1b[33m日\x1b[0m\x1b[1mx\x1b[0m": {{0, 1, "bold"}, {1, 3, "bold yellow"}, {3, 4, "bold"}},
		"\x1b[38mx\x1b[0m":                        {{0, 1, "unknown 38"}},
	} {
		assert.Equal(t, want, Runs(line), "%q", line)
	}
}
