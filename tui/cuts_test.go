package tui

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A text may be cut where it is shown whole elsewhere, but not its numbers and units: on every screen
// of every stored job, at every size that screens are drawn for, and after one key that shows more.
func TestNoNumberAndNoUnitIsCut(t *testing.T) {
	tuitest.OneGoroutine(t)
	for _, p := range storedJobs(t, 'c') {
		for _, size := range append(slices.Clone(sizes), [2]int{80, 23}) {
			noCutsIn(t, p, size, size[0] == 100)
		}
	}
}

// The same at random sizes, from the smallest that is drawn to larger than most screens: `SIZES=2000 go
// test -run AnySize -timeout 1h ./tui` for many.
func TestNoNumberAndNoUnitIsCutAtAnySize(t *testing.T) {
	tuitest.OneGoroutine(t)
	n := 40
	if testing.Short() {
		n = 12
	}
	if set := os.Getenv("SIZES"); set != "" {
		var err error
		n, err = strconv.Atoi(set)
		require.NoError(t, err)
	}
	random := rand.New(rand.NewPCG(60, 220))
	paths := storedJobs(t, 'z')
	for range n {
		size := [2]int{60 + random.IntN(161), 20 + random.IntN(51)}
		noCutsIn(t, paths[random.IntN(len(paths))], size, random.IntN(2) == 0)
	}
}

// storedJobs are the paths of all stored jobs and "" for the example; in short only those up to a letter.
func storedJobs(t *testing.T, last byte) []string {
	t.Helper()
	paths, err := filepath.Glob("../testdata/jobs/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	if testing.Short() {
		paths = slices.DeleteFunc(paths, func(p string) bool { return filepath.Base(p)[0] > last })
	}
	return append(paths, "")
}

// noCutsIn checks every screen of a job at a size; path "" is the example.
func noCutsIn(t *testing.T, path string, size [2]int, inch bool) {
	t.Helper()
	text := []byte(job.Example().Text())
	if path != "" {
		var err error
		text, err = os.ReadFile(path)
		require.NoError(t, err)
	}
	s := session.New(job.Parse(string(text)), "", job.Mark{})
	s.Units.Inch = inch
	m := opened(s, size[0], size[1], "", "")
	for i, name := range m.tabNames() {
		if name == "Shelf" && path != "" {
			continue // it lists the same whatever is open
		}
		for _, keys := range more[name] {
			m.bring(i)
			m.press(keys)
			for left, whole := range cutsIn(m) {
				assert.True(t, wordsOnly(whole, left) || typedText(s, whole), "%s, %s after %q at %v, inches %v: %q of %q", filepath.Base(path), name, keys, size, inch, left, whole)
			}
		}
	}
}

// more are keys that show more on a screen, pressed one after another.
var more = map[string][]string{
	"Machine": {"", "ctrl+f", "pgdown pgdown", "pgdown pgdown", "ctrl+end"}, "Trials": {"", "v", "v", "v m", "e", "esc y", "esc"},
	"Layout": {"", "s", "f", "j"}, "Curves": {"", "y", "y", "y", "y", "v", "end"}, "Drive": {"", "ctrl+g", "ctrl+w"},
	"Card": {""}, "Wound": {"", "ctrl+end"}, "Shelf": {"", onShelf, "f9"},
}

// cutsIn maps what is left of each text cut in the frame to the whole text.
func cutsIn(m *Model) map[string]string {
	cuts := map[string]string{}
	kit.OnCut = func(whole, left string) {
		cuts[strings.TrimSpace(ansi.Strip(left))] = strings.TrimSpace(ansi.Strip(whole))
	}
	frame := ansi.Strip(m.View())
	kit.OnCut = nil
	for left := range cuts {
		if !strings.HasSuffix(left, "…") || !strings.Contains(frame, left) {
			delete(cuts, left) // tried, and not shown
		}
	}
	return cuts
}

// unit is a unit as labels and figures have it.
const unit = `(?:A|V|V AC|V DC|W|Ω|mH|mm²|mm|in²|in|m|kg|lb|rpm|alt\. rpm|m/s|mph|°C|°F|K/W|%|Hz|N·m|lb·ft|T|mWb|Ah|kWh|s|AWG|SWG|mm over|mm²)`

var (
	unitOfNumber = regexp.MustCompile(`^\s?` + unit + `(?:[\s,;.)]|$)`)
	unitOfLabel  = regexp.MustCompile(`(?:,|  ) ?` + unit + `$`)
	columnsOf    = regexp.MustCompile(`\S {2,}\S`)
)

// wordsOnly reports whether only words were cut from a text: no number in its middle or from its
// unit, no label from its unit, and no figure from the end of a row of a table.
func wordsOnly(whole, left string) bool {
	kept := strings.TrimSuffix(left, "…")
	rest := strings.TrimPrefix(whole, kept)
	before := []rune(strings.TrimRight(kept, " "))
	switch {
	case rest == whole, len(before) == 0:
		return !strings.ContainsFunc(whole, unicode.IsDigit)
	case unitOfLabel.MatchString(whole):
		return false
	case columnsOf.MatchString(whole) && strings.ContainsFunc(rest, unicode.IsDigit):
		return false
	}
	last := before[len(before)-1]
	if !unicode.IsDigit(last) && last != '.' && last != ',' {
		return !unitOfNumber.MatchString(rest) || !inUnit(kept)
	}
	first, _ := firstRune(rest)
	return !unicode.IsDigit(first) && first != '.' && !unitOfNumber.MatchString(rest)
}

// inUnit reports whether a text ends in the middle of a unit behind a number.
var cutUnit = regexp.MustCompile(`\d\s?\S{1,3}$`)

func inUnit(kept string) bool { return cutUnit.MatchString(kept) }

func firstRune(s string) (rune, bool) {
	for _, r := range s {
		return r, true
	}
	return 0, false
}

// typedText reports whether a text is a person's own: the job's name, its notes.
func typedText(s *session.Session, text string) bool {
	j := s.Job()
	for _, own := range []string{j.Name, j.Notes} {
		if own != "" && strings.Contains(strings.ReplaceAll(own, "\n", " "), text) {
			return true
		}
	}
	return false
}

// What counts as cut.
func TestWhatIsCut(t *testing.T) {
	for _, c := range [][2]string{
		{"net amps, engine 1500 rpm, A", "net amps, engine 1500 rpm,…"}, {"held, battery at 13.6 V, A", "held, battery at 13.6 V…"},
		{"plan 1×0.75 mm", "plan 1×0.75 …"}, {"17 turns 15 AWG", "17 turns 1…"}, {"17 turns 15 AWG", "17 turns 15…"},
		{"A  547  9.6  927", "A  547  9.6…"}, {"Held at 1500 alt. rpm, 13.6 V", "Held at 1500 alt. rpm, 1…"}, {"unloaded, V DC", "unloaded, V …"}, {"iron and drag, W", "iron and drag,…"}, {"Mean turn   (from ohms)   mm", "Mean turn   (from ohms)   m…"},
	} {
		assert.False(t, wordsOnly(c[0], c[1]), "%q", c)
	}
	for _, c := range [][2]string{{"(as the trial)", "(as the tr…"}, {"a guess, which sets no limits", "a guess, which…"}, {"36 slots and 12 poles", "36 slots and…"}, {"+ away from you, − back", "+ a…"}} {
		assert.True(t, wordsOnly(c[0], c[1]), "%q", c)
	}
}
