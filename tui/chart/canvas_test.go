package chart

import (
	"math"
	"math/bits"
	"math/rand/v2"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/tuitest"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// allDots are all dots set, as x, y pairs.
func (c *Canvas) allDots() [][2]int {
	var out [][2]int
	for y := range 4 * c.h {
		for x := range 2 * c.w {
			if c.cells[y/4*c.w+x/2].dots&dotBits[y%4][x%2] != 0 {
				out = append(out, [2]int{x, y})
			}
		}
	}
	return out
}

func dotCanvas(w, h int) *Canvas {
	c := New(kit.Theme{}, w, h)
	c.View(0, float64(4*h-1), float64(2*w-1), 0) // data = dots, y down
	return c
}

func TestLineCoversItsDots(t *testing.T) {
	c := dotCanvas(4, 2)
	c.Line(XY{0, 0}, XY{7, 7}, kit.Plain, Solid)
	for i, d := range c.allDots() {
		assert.Equal(t, [2]int{i, i}, d)
	}
	assert.Len(t, c.allDots(), 8)
	assert.Equal(t, []string{"⠑⢄  ", "  ⠑⢄"}, c.Lines())

	c = dotCanvas(4, 1)
	c.Line(XY{7, 2}, XY{0, 2}, kit.Plain, Solid)
	assert.Equal(t, []string{"⠤⠤⠤⠤"}, c.Lines())
	c = dotCanvas(1, 1)
	c.Line(XY{1, 3}, XY{1, 3}, kit.Plain, Solid)
	assert.Equal(t, []string{"⢀"}, c.Lines())
}

// A line has as many dots as its longer side, whichever way it is drawn, and each
// touches the next.
func TestLineIsConnected(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		c := dotCanvas(20, 10)
		a := XY{float64(rng.IntN(40)), float64(rng.IntN(40))}
		b := XY{float64(rng.IntN(40)), float64(rng.IntN(40))}
		c.Line(a, b, kit.Plain, Solid)
		want := int(max(math.Abs(a.X-b.X), math.Abs(a.Y-b.Y))) + 1
		require.Len(t, c.allDots(), want, "%v %v", a, b)
	}
}

func TestClippingKeepsTheSlope(t *testing.T) {
	whole := dotCanvas(30, 15)
	whole.Line(XY{-300, -140}, XY{400, 250}, kit.Plain, Solid)
	for _, d := range whole.allDots() {
		want := -140 + (float64(d[0])+300)*390/700
		assert.InDelta(t, want, float64(d[1]), 1.01, "%v", d)
	}
	require.Greater(t, len(whole.allDots()), 50)

	c := New(kit.Theme{}, 10, 5)
	c.Area(kit.Rect{X: 2, Y: 1, W: 5, H: 3})
	for _, p := range []XY{{-9, 0.3}, {0.5, 99}, {1e300, -1e300}, {0.2, -7}, {math.MaxFloat64, 0.5}} {
		c.Line(XY{-0.5, 0.5}, p, kit.Plain, Solid)
		c.Line(p, XY{0.5, 0.5}, kit.Plain, Dashed)
	}
	c.Disc(XY{0.5, 0.5}, 3, kit.Plain)
	for _, d := range c.allDots() {
		require.True(t, d[0] >= 4 && d[0] < 14 && d[1] >= 4 && d[1] < 16, "%v", d)
	}
	assert.NotEmpty(t, c.allDots())
}

func TestPolylineGapsAndSinglePoints(t *testing.T) {
	nan := math.NaN()
	c := dotCanvas(6, 1)
	c.polyline([]XY{{0, 0}, {2, 0}, {nan, 0}, {5, math.Inf(1)}, {6, 0}, {nan, nan}, {9, 0}, {11, 0}}, kit.Plain, Solid)
	assert.Equal(t, [][2]int{{0, 0}, {1, 0}, {2, 0}, {6, 0}, {9, 0}, {10, 0}, {11, 0}}, c.allDots())
	c = dotCanvas(6, 1)
	c.polyline([]XY{{3, 1}}, kit.Plain, Dashed)
	assert.Equal(t, [][2]int{{3, 1}}, c.allDots())
	c = dotCanvas(6, 1)
	c.polyline(nil, kit.Plain, Solid)
	c.Line(XY{nan, 0}, XY{3, 0}, kit.Plain, Solid)
	c.Dot(XY{0, nan}, kit.Plain)
	c.Disc(XY{nan, 0}, 1, kit.Plain)
	c.Disc(XY{3, 1}, nan, kit.Plain)
	assert.Empty(t, c.allDots())
}

// The texture continues through points that lie close together.
func TestTextureDoesNotRestartAtPoints(t *testing.T) {
	for _, x := range []Texture{Solid, Dashed, Dotted, DashDot} {
		whole, parts := dotCanvas(30, 1), dotCanvas(30, 1)
		whole.Line(XY{0, 1}, XY{59, 1}, kit.Plain, x)
		var points []XY
		for i := 0.0; i < 59.1; i += 0.25 {
			points = append(points, XY{i, 1})
		}
		parts.polyline(points, kit.Plain, x)
		assert.Equal(t, whole.Lines(), parts.Lines(), "%d", x)
	}
	seen := map[string]bool{}
	for i := range 4 {
		c := dotCanvas(10, 1)
		c.Line(XY{0, 2}, XY{19, 2}, kit.Plain, SeriesTexture(i))
		seen[c.Lines()[0]] = true
	}
	assert.Len(t, seen, 4, "all textures look different")
}

// Under ViewSquare a disc is as wide as high in dots.
func TestADiscIsRound(t *testing.T) {
	for _, size := range [][2]int{{40, 20}, {80, 20}, {20, 30}} {
		c := New(kit.Theme{}, size[0], size[1])
		c.ViewSquare(-1, -1, 1, 1)
		c.Disc(XY{0, 0}, 1, kit.Plain)
		minX, maxX, minY, maxY := 999, 0, 999, 0
		for _, d := range c.allDots() {
			minX, maxX, minY, maxY = min(minX, d[0]), max(maxX, d[0]), min(minY, d[1]), max(maxY, d[1])
		}
		assert.InDelta(t, maxX-minX, maxY-minY, 1)
		assert.InDelta(t, min(2*size[0], 4*size[1])-3, maxX-minX, 1, "a dot less on each side")
	}
	c := New(kit.Theme{}, 4, 4)
	c.ViewSquare(-100, -100, 100, 100)
	c.Disc(XY{0, 0}, 0.1, kit.Plain)
	assert.NotEmpty(t, c.allDots(), "however small, it shows")
}

func TestTextAndRuns(t *testing.T) {
	c := New(kit.Theme{Colour: true}, 12, 2)
	c.View(0, 0, 23, 7)
	c.Line(XY{0, 2}, XY{23, 2}, kit.Series1, Solid)
	c.Text(2, 1, "a日Ω", kit.Broken)
	c.Text(5, 0, "mid", kit.Label)
	c.Text(-3, 0, "left", kit.Label)
	lines := c.Lines()
	assert.Equal(t, "t    mid    ", ansi.Strip(lines[0]))
	assert.Equal(t, "⠒⠒a?Ω⠒⠒⠒⠒⠒⠒⠒", ansi.Strip(lines[1]))
	assert.Equal(t, 3, strings.Count(lines[1], "\x1b[0m"), "one sequence a run: %q", lines[1])
	assert.True(t, c.Free(0, 0, 0))
	assert.False(t, c.Free(4, 0, 3))
	assert.False(t, c.Free(10, 0, 3))
	assert.False(t, c.Free(-1, 0, 1))

	c = New(kit.Theme{ASCII: true}, 12, 1)
	c.Text(8, 0, "5 Ωm", kit.Plain)
	c.Text(0, 9, "nowhere", kit.Plain)
	assert.Equal(t, []string{"        5 oh"}, c.Lines())
}

func TestASCIIShapes(t *testing.T) {
	for dots, r := range asciiShapes {
		require.True(t, r > ' ' && r < 0x7f)
		if bits.OnesCount8(uint8(dots)) == 8 {
			assert.Equal(t, '#', r)
		}
	}
	draw := func(ax, ay, bx, by float64) string {
		c := New(kit.Theme{ASCII: true}, 4, 2)
		c.View(0, 7, 7, 0)
		c.Line(XY{ax, ay}, XY{bx, by}, kit.Border, Solid)
		return strings.Join(c.Lines(), "/")
	}
	assert.Equal(t, `\\  /  \\`, draw(0, 0, 7, 7))
	assert.Equal(t, `  ///// `+` `, draw(0, 7, 7, 0)[:2]+"//"+draw(0, 7, 7, 0)[4:5]+"// "+" ")
	assert.Equal(t, "----/    ", draw(0, 1, 7, 1))
	assert.Equal(t, "|   /|   ", draw(0, 0, 0, 7))
}

func TestEmptyCanvases(t *testing.T) {
	for _, size := range [][2]int{{0, 0}, {-1, 5}, {5, 0}, {1, 1}} {
		c := New(kit.Theme{Colour: true}, size[0], size[1])
		c.ViewSquare(0, 0, 0, 0)
		c.Disc(XY{0, 0}, 1, kit.Plain)
		c.Line(XY{0, 0}, XY{1, 1}, kit.Plain, Solid)
		c.Text(0, 0, "", kit.Plain)
		tuitest.CheckLines(t, c.Lines(), size[0], max(0, size[1]))
	}
}

// Discs that touch are distinguishable, a large one is full, a tiny one is still a dot.
func TestDisc(t *testing.T) {
	c := New(kit.Theme{}, 20, 5)
	c.Area(kit.Rect{W: 20, H: 5})
	c.ViewSquare(0, 0, 40, 20)
	c.Disc(XY{10, 10}, 8, kit.Plain)
	c.Disc(XY{26, 10}, 8, kit.Plain)
	dots := map[[2]int]bool{}
	between := 0
	for _, d := range c.allDots() {
		dots[d] = true
		if d[0] == 18 || d[0] == 17 {
			between++
		}
	}
	assert.Greater(t, len(dots), 300)
	assert.LessOrEqual(t, between, 6, "they do not run into each other")
	c = New(kit.Theme{}, 20, 5)
	c.Area(kit.Rect{W: 20, H: 5})
	c.ViewSquare(0, 0, 40, 20)
	c.Disc(XY{10, 10}, 0.1, kit.Plain)
	assert.Len(t, c.allDots(), 1)
}
