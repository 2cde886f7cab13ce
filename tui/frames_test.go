package tui

import (
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
)

// sizes are the terminals that every screen is drawn for.
var sizes = [][2]int{{60, 20}, {80, 24}, {100, 30}, {120, 40}, {200, 60}}

// framesOf draws every screen of the example in a theme and in units, by name.
func framesOf(change func(*session.Session), size [2]int) map[string]string {
	s := session.NewExample()
	change(s)
	m := opened(s, size[0], size[1], "", "")
	frames := map[string]string{}
	for i, name := range m.tabNames() {
		m.bring(i)
		frames[strings.ToLower(name)] = m.View()
	}
	return frames
}

func themed(t kit.Theme) func(*session.Session) {
	return func(s *session.Session) { s.Theme = t }
}

// Pictures of every screen at the five sizes, and the styles of two of them.
func TestFrames(t *testing.T) {
	for _, size := range sizes {
		for name, frame := range framesOf(themed(kit.Theme{}), size) {
			tuitest.CheckFrame(t, frame, size[0], size[1])
			tuitest.Golden(t, fmt.Sprintf("screen-%s-%dx%d", name, size[0], size[1]), frame)
		}
	}
	coloured := framesOf(themed(kit.Theme{Colour: true}), sizes[1])
	for _, name := range []string{"trials", "machine"} {
		tuitest.GoldenStyled(t, "screen-"+name+"-80x24-styles", coloured[name])
	}
}

// Colour adds sequences and nothing else, on every screen.
func TestColourOnlyAddsSequences(t *testing.T) {
	for _, size := range sizes {
		plain := framesOf(themed(kit.Theme{}), size)
		for name, frame := range framesOf(themed(kit.Theme{Colour: true}), size) {
			assert.Equal(t, uncoloured(plain[name]), uncoloured(frame), "%s %v", name, size)
			assert.NotEqual(t, plain[name], frame)
		}
	}
}

// uncoloured is a frame without styles, blanks at line ends and the text cursor, which in
// colour is a reversed cell.
func uncoloured(frame string) []string {
	lines := strings.Split(strings.ReplaceAll(ansi.Strip(frame), kit.Theme{}.Glyphs().Cursor, " "), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return lines
}

// In ASCII every screen says what it otherwise says: every byte is ASCII, and the words are those of
// the plain frame, transliterated.
func TestASCIIIsThePlainFrameFolded(t *testing.T) {
	for _, size := range sizes {
		plain := framesOf(themed(kit.Theme{}), size)
		for name, frame := range framesOf(themed(kit.Theme{ASCII: true}), size) {
			tuitest.CheckASCII(t, frame)
			tuitest.CheckFrame(t, frame, size[0], size[1])
			if size[0] == 200 { // nothing is cut there, so that a longer spelling costs no word
				assert.Equal(t, words(folded(plain[name])), words(frame), "%s %v", name, size)
			}
		}
	}
}

// folded is a frame with its glyphs and signs in ASCII.
func folded(frame string) string {
	from, to := reflect.ValueOf(kit.Theme{}.Glyphs()).Elem(), reflect.ValueOf(kit.Theme{ASCII: true}.Glyphs()).Elem()
	var pairs []string
	for i := range from.NumField() {
		pairs = append(pairs, from.Field(i).String(), to.Field(i).String())
	}
	return kit.Theme{ASCII: true}.Text(strings.NewReplacer(pairs...).Replace(frame))
}

// word has at least two letters; anything shorter is a mark, a sign or a trial.
var word = regexp.MustCompile(`[A-Za-z][A-Za-z'-]*[A-Za-z]`)

// line is a piece of the third trial's curve as ASCII draws it, with its letter at the end.
var line = regexp.MustCompile(`^o[o-]*C?$`)

// words are the distinct words of a frame, without numbers and marks: where they wrap or stand may
// differ where another spelling is wider.
func words(frame string) map[string]bool {
	list := map[string]bool{}
	for _, w := range word.FindAllString(frame, -1) {
		if !line.MatchString(w) {
			list[w] = true
		}
	}
	return list
}

// An inch screen is the millimetre screen with its figures converted: the same words except for the
// units of length, area and mass, and switching back restores it exactly.
func TestInchIsMillimetresConverted(t *testing.T) {
	size := sizes[4]
	mm := framesOf(func(*session.Session) {}, size)
	for name, inch := range framesOf(func(s *session.Session) { s.Units.Inch = true }, size) {
		was, is := words(mm[name]), words(inch)
		for _, unit := range []string{"mm", "kg", "in", "lb", "ft", "inches"} {
			delete(was, unit)
			delete(is, unit)
		}
		assert.Equal(t, was, is, name)
	}
	m := opened(session.NewExample(), 120, 40, "Trials", "")
	before := m.View()
	m.press("i")
	inch := m.View()
	m.press("i")
	m.s.ClearMessage()
	m.fit()
	assert.NotEqual(t, before, inch)
	assert.Equal(t, before, m.View())
}
