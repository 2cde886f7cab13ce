package kit_test

import (
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"

	"slotwright/tui/kit"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFit(t *testing.T) {
	th, ascii := kit.Theme{}, kit.Theme{ASCII: true}
	assert.Equal(t, "ab  ", th.Fit("ab", 4))
	assert.Equal(t, "  ab", th.FitRight("ab", 4))
	assert.Equal(t, " ab  ", th.FitCentre("ab", 5))
	assert.Equal(t, "123…", th.Fit("12345", 4))
	assert.Equal(t, "123_", ascii.FitRight("12345", 4))
	assert.Equal(t, "", th.Fit("abc", 0))
	assert.Equal(t, "", th.Fit("abc", -3))
	assert.Equal(t, "日… ", th.Fit("日本語", 4), "a character of two cells does not stick out")
	assert.Equal(t, "0.5 mohm ", ascii.Fit("0.5 mΩ", 9))
	assert.Equal(t, "2.5 mm2 ? 20 degC +/-3", ascii.Text("2.5 mm² 日 20 °C ±3"))
	assert.Equal(t, "a    b c", th.Fit("a\tb\nc", 8))
	assert.NotContains(t, th.Fit("\x1b]0;title\x07\x1b[2Jred", 30), "\x1b")
}

func TestStylesAreClosedAndNest(t *testing.T) {
	th := kit.Theme{Colour: true}
	assert.True(t, strings.HasSuffix(th.Fit("\x1b[1mbold", 4), "\x1b[0m"))
	assert.Equal(t, "\x1b[1ma\x1b[1;31mb\x1b[0m\x1b[1mc\x1b[0m", th.Paint(kit.Title, "a"+th.Paint(kit.Broken, "b")+"c"))
	assert.Equal(t, "", th.Paint(kit.Title, ""))
	assert.Equal(t, "x", kit.Theme{}.Paint(kit.Broken, "x"))
	assert.Equal(t, "x", th.Style(kit.Role(200)).Render("x"))
	cut := th.Fit(th.Paint(kit.Broken, "long text"), 4)
	assert.Equal(t, "lon…", ansi.Strip(cut))
	assert.True(t, strings.HasSuffix(cut, "\x1b[0m"))
}

// Only attributes and the 16 colours: nothing outside the terminal's palette.
func TestSixteenColoursOnly(t *testing.T) {
	th := kit.Theme{Colour: true}
	for r := kit.Plain; r <= kit.PhaseW; r++ {
		on := th.Style(r).Start()
		assert.NotContains(t, on, "38;", "role %d", r)
		assert.NotContains(t, on, "48;", "role %d", r)
	}
	assert.Equal(t, kit.Series1, kit.Series(0))
	assert.Equal(t, kit.Series1, kit.Series(6))
	assert.Equal(t, kit.Series1, kit.Series(-1))
	assert.Equal(t, kit.PhaseW, kit.Phase(2))
	assert.Equal(t, kit.PhaseU, kit.Phase(3))
}

func TestClean(t *testing.T) {
	assert.Equal(t, "red a b", kit.Clean("\x1b[31mred\x1b[0m a\nb"))
	th := kit.Theme{Colour: true}
	assert.Equal(t, "\x1b[1mbold\x1b[0m  ", th.Fit("\x1b[1mb\x1b[2Jo\ald\x1b[0m", 6), "styles stay, all else goes")
}

func TestWrap(t *testing.T) {
	th := kit.Theme{}
	assert.Equal(t, []string{"one two", "three"}, th.Wrap("one two three", 8))
	assert.Equal(t, []string{"abcd", "efgh"}, th.Wrap("abcdefgh", 4))
	assert.Equal(t, []string{"a", "", "b"}, th.Wrap("a\n\nb", 9))
	assert.Nil(t, th.Wrap("", 9))
	assert.Nil(t, th.Wrap("abc", 0))
}

// FuzzFit: whatever comes in, the result has its width, is valid UTF-8 and holds no control other than
// styles.
func FuzzFit(f *testing.F) {
	for _, s := range []string{"", "abc", "\x1b[1mx", "日本", "a\u0300b", "\x1b]11;?\x07", "\xff\xfe", "👩‍🚀x", "\x1b[1;31", "tab\tnew\nline", "\x1b\x1b[0m", "\u009b31m", "🇩🇪🇩"} {
		f.Add(s, 7)
	}
	f.Fuzz(func(t *testing.T, s string, w int) {
		w = max(-2, min(w, 60))
		for _, th := range []kit.Theme{{Colour: true}, {ASCII: true}} {
			for _, out := range []string{th.Fit(s, w), th.FitRight(s, w), th.FitCentre(s, w)} {
				require.Equal(t, max(w, 0), ansi.StringWidth(out), "%q -> %q", s, out)
				require.True(t, utf8.ValidString(out))
				requireHarmless(t, out)
			}
			for _, line := range th.Wrap(s, w) {
				require.LessOrEqual(t, ansi.StringWidth(line), w, "%q -> %q", s, line)
				requireHarmless(t, line)
			}
		}
		clean := kit.Clean(s)
		require.NotContains(t, clean, "\x1b")
		requireHarmless(t, clean)
		require.Equal(t, clean, kit.Clean(clean))
	})
}

func requireHarmless(t *testing.T, s string) {
	t.Helper()
	rest := s
	for {
		i := strings.IndexByte(rest, 0x1b)
		if i < 0 {
			break
		}
		end := strings.IndexByte(rest[i:], 'm')
		require.Positive(t, end, "%q", s)
		require.Empty(t, strings.Trim(rest[i+2:i+end], "0123456789;:"), "%q", s)
		rest = rest[:i] + rest[i+end+1:]
	}
	for _, r := range rest {
		require.False(t, r < 0x20 || r >= 0x7f && r < 0xa0, "%q", s)
	}
}

func TestRectsCoverWithoutOverlap(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		whole := kit.Rect{X: rng.IntN(5), Y: rng.IntN(5), W: rng.IntN(40), H: rng.IntN(20)}
		n := rng.IntN(50) - 5
		a, b := whole.SplitTop(n)
		c, d := whole.SplitBottom(n)
		e, f := whole.SplitLeft(n)
		g, h := whole.SplitRight(n)
		for _, pair := range [][2]kit.Rect{{a, b}, {c, d}, {e, f}, {g, h}} {
			requireParts(t, whole, pair[:], whole.W*whole.H)
		}
		weights := make([]int, 1+rng.IntN(4))
		for i := range weights {
			weights[i] = rng.IntN(4)
		}
		gap := rng.IntN(3)
		free := max(0, whole.W-gap*(len(weights)-1))
		requireParts(t, whole, whole.Columns(gap, weights...), free*whole.H)
		free = max(0, whole.H-gap*(len(weights)-1))
		requireParts(t, whole, whole.Rows(gap, weights...), free*whole.W)
		in := whole.Inset(rng.IntN(30), rng.IntN(30))
		requireParts(t, whole, []kit.Rect{in}, in.W*in.H)
		mid := whole.Centre(rng.IntN(60)-3, rng.IntN(30)-3)
		requireParts(t, whole, []kit.Rect{mid}, mid.W*mid.H)
	}
	assert.Empty(t, kit.Rect{W: 9, H: 9}.Columns(1))
}

// requireParts requires that parts lie inside the whole, do not overlap, and hold cells cells.
func requireParts(t *testing.T, whole kit.Rect, parts []kit.Rect, cells int) {
	t.Helper()
	sum := 0
	seen := map[[2]int]bool{}
	for _, p := range parts {
		require.True(t, p.W >= 0 && p.H >= 0 && p.X >= whole.X && p.Y >= whole.Y && p.X+p.W <= whole.X+whole.W && p.Y+p.H <= whole.Y+whole.H, "%v in %v", p, whole)
		sum += p.W * p.H
		for x := p.X; x < p.X+p.W; x++ {
			for y := p.Y; y < p.Y+p.H; y++ {
				require.False(t, seen[[2]int{x, y}], "%v overlap", parts)
				seen[[2]int{x, y}] = true
			}
		}
	}
	require.Equal(t, cells, sum, "%v of %v", parts, whole)
}
