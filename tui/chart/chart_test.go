package chart

import (
	"fmt"
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

// sampleChart has four bent lines, all kinds of marks and a cursor. The numbers are
// invented.
func sampleChart(w, h int) Chart {
	var series []Series
	for k := range 4 {
		var points []XY
		for x := 0.0; x <= 900; x += 10 {
			rise := max(0, x-200-60*float64(k)) * (0.02 + 0.01*float64(k))
			points = append(points, XY{x, 12 * (1 - math.Exp(-rise/6))})
		}
		series = append(series, Series{Letter: string(rune('A' + k)), Name: fmt.Sprintf("%d × 0.7 mm", 48-k*6), Points: points})
	}
	return Chart{
		Width: w, Height: h, X: Axis{Label: "speed", Unit: "rpm"}, Y: Axis{Label: "current", Unit: "A", Zero: true},
		Series: series, Markers: []Marker{{X: 500, Y: 8, Label: "crossing"}},
		VLines: []Limit{{At: 210, Label: "cut-in"}}, HLines: []Limit{{At: 10, Label: "limit 10 A", Role: kit.Warning}},
		Cursor: &Cursor{X: 650, Label: "650 rpm"},
	}
}

func TestChartGolden(t *testing.T) {
	tuitest.GoldenLines(t, "chart-60x14", sampleChart(60, 14).Lines(kit.Theme{}))
	tuitest.GoldenLines(t, "chart-60x14-ascii", sampleChart(60, 14).Lines(kit.Theme{ASCII: true}))
	tuitest.GoldenStyled(t, "chart-60x14-styles", strings.Join(sampleChart(60, 14).Lines(kit.Theme{Colour: true}), "\n"))
	tuitest.GoldenLines(t, "chart-100x30", sampleChart(100, 30).Lines(kit.Theme{}))
	readings := Chart{Width: 60, Height: 14, X: Axis{Label: "speed", Unit: "rpm"}, Y: Axis{Unit: "V"}, Series: []Series{
		{Letter: "p", Name: "predicted", Points: []XY{{0, 0}, {1000, 20}}},
		{Letter: "m", Name: "measured", NoLine: true, Points: []XY{{300, 6.2}, {600, 11.5}, {900, 17}}},
	}}
	tuitest.GoldenLines(t, "chart-readings", readings.Lines(kit.Theme{}))
}

func TestChartSizes(t *testing.T) {
	step := 1
	if testing.Short() {
		step = 6
	}
	for w := 1; w <= 220; w += step {
		for h := 1; h <= 70; h += 1 + step*2 {
			th := kit.Theme{Colour: w%2 == 0, ASCII: w%3 == 0}
			tuitest.CheckLines(t, sampleChart(w, h).Lines(th), w, h)
			require.False(t, t.Failed(), "%d x %d", w, h)
		}
	}
}

func TestChartColourOnlyAddsSequences(t *testing.T) {
	for _, ascii := range []bool{false, true} {
		coloured := strings.Join(sampleChart(90, 20).Lines(kit.Theme{Colour: true, ASCII: ascii}), "\n")
		plain := strings.Join(sampleChart(90, 20).Lines(kit.Theme{ASCII: ascii}), "\n")
		assert.Equal(t, plain, ansi.Strip(coloured))
	}
}

// Whatever is charted, the chart has its size, and labels are whole or absent.
func TestChartTakesAnything(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	odd := []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, 1, -1, 1e300, -1e300, math.MaxFloat64, -math.MaxFloat64, 1e-300, 5, 100, 1234567}
	value := func() float64 {
		if rng.IntN(3) == 0 {
			return odd[rng.IntN(len(odd))]
		}
		return rng.NormFloat64() * math.Pow(10, float64(rng.IntN(8)-3))
	}
	for range 3000 {
		ch := Chart{Width: rng.IntN(120), Height: rng.IntN(40), X: Axis{Label: "x", Unit: "Ω", Min: value(), Max: value()}, Y: Axis{Zero: rng.IntN(2) == 0}}
		if rng.IntN(2) == 0 {
			ch.X.Min, ch.X.Max = 0, 0
		}
		for range rng.IntN(7) {
			s := Series{Letter: string(rune('A' + rng.IntN(26))), Name: strings.Repeat("n", rng.IntN(30)), Marks: rng.IntN(4) == 0}
			for range rng.IntN(6) {
				s.Points = append(s.Points, XY{value(), value()})
			}
			ch.Series = append(ch.Series, s)
		}
		for range rng.IntN(4) {
			ch.Markers = append(ch.Markers, Marker{X: value(), Y: value(), Label: "mark"})
			ch.VLines = append(ch.VLines, Limit{At: value(), Label: "upright"})
			ch.HLines = append(ch.HLines, Limit{At: value(), Label: "level"})
		}
		ch.Cursor = &Cursor{X: value(), Label: "here"}
		lines := ch.Lines(kit.Theme{})
		tuitest.CheckLines(t, lines, ch.Width, ch.Height)
		require.False(t, t.Failed(), "%+v", ch)
		text := strings.Join(lines, "\n")
		require.NotContains(t, text, "NaN")
		require.NotContains(t, text, "Inf")
	}
}

// Labels crowded into one place: each is whole or absent.
func TestLabelsNeverCollide(t *testing.T) {
	ch := Chart{Width: 60, Height: 16, X: Axis{Max: 100}, Y: Axis{Max: 10}}
	for i := range 12 {
		ch.Markers = append(ch.Markers, Marker{X: 50 + float64(i), Y: 5, Label: fmt.Sprintf("<%02d>", i)})
		ch.VLines = append(ch.VLines, Limit{At: 20 + float64(i)/2, Label: fmt.Sprintf("{%02d}", i)})
	}
	text := strings.Join(ch.Lines(kit.Theme{}), "\n")
	assert.Equal(t, strings.Count(text, "<"), strings.Count(text, ">"))
	whole := 0
	for i := range 12 {
		whole += strings.Count(text, fmt.Sprintf("<%02d>", i)) + strings.Count(text, fmt.Sprintf("{%02d}", i))
	}
	assert.Equal(t, strings.Count(text, "<")+strings.Count(text, "{"), whole)
	assert.Greater(t, whole, 6)
}

// Every line has its letter near its end, even if lines end together.
func TestEveryLineHasItsLetter(t *testing.T) {
	ch := Chart{Width: 60, Height: 16, X: Axis{Max: 10}, Y: Axis{Max: 10}}
	for i := range 4 {
		ch.Series = append(ch.Series, Series{Letter: string(rune('P' + i)), Points: []XY{{0, float64(i)}, {10, 5}, {math.NaN(), 0}}})
	}
	lines := ch.Lines(kit.Theme{})
	text := strings.Join(lines[1:], "\n")
	for i := range 4 {
		assert.Contains(t, text, string(rune('P'+i)))
	}
	gone := Chart{Width: 60, Height: 16, X: Axis{Max: 10}, Y: Axis{Max: 10}, Series: []Series{{Letter: "Q", Points: []XY{{0, 0}, {10, 40}}}}}
	assert.Contains(t, strings.Join(gone.Lines(kit.Theme{})[1:], "\n"), "Q", "a line that leaves the chart is named where it does")
}

func TestEmptyAndFlatCharts(t *testing.T) {
	for _, points := range [][]XY{nil, {{3, 4}}, {{0, 5}, {10, 5}}, {{math.NaN(), 1}}, {{7, 0}, {7, 9}}, {{0, 1e-12}, {1, 1e-12}}, {{1e9, 1}, {1e9 + 1e-6, 2}}} {
		ch := Chart{Width: 60, Height: 14, Series: []Series{{Letter: "A", Points: points}}}
		lines := ch.Lines(kit.Theme{})
		tuitest.CheckLines(t, lines, 60, 14)
		assert.Contains(t, strings.Join(lines, ""), "┤")
	}
}

func TestTicks(t *testing.T) {
	for _, c := range []struct {
		lo, hi float64
		n      int
		want   []float64
	}{
		{0, 10, 6, []float64{0, 2, 4, 6, 8, 10}},
		{0, 10, 3, []float64{0, 5, 10}},
		{-1, 1, 5, []float64{-1, -0.5, 0, 0.5, 1}},
		{3, 997, 5, []float64{200, 400, 600, 800}},
		{0, 0.3, 4, []float64{0, 0.1, 0.2, 0.3}},
	} {
		got, _ := Ticks(c.lo, c.hi, c.n)
		assert.InDeltaSlice(t, c.want, got, 1e-12)
	}
	rng := rand.New(rand.NewPCG(7, 8))
	for range 5000 {
		lo := rng.NormFloat64() * math.Pow(10, float64(rng.IntN(12)-6))
		hi := lo + rng.Float64()*math.Pow(10, float64(rng.IntN(12)-6))
		n := 2 + rng.IntN(10)
		ticks, step := Ticks(lo, hi, n)
		require.LessOrEqual(t, len(ticks), n)
		if step == 0 {
			continue
		}
		mantissa := step / math.Pow(10, math.Floor(math.Log10(step)+1e-9))
		require.True(t, math.Abs(mantissa-1) < 1e-6 || math.Abs(mantissa-2) < 1e-6 || math.Abs(mantissa-5) < 1e-6, "%g", step)
		seen := map[string]bool{}
		for _, v := range ticks {
			require.True(t, v >= lo-step*1e-6 && v <= hi+step*1e-6)
			if math.Abs(lo) < 1e5 && step >= 1e-4 {
				text := TickText(v, step)
				require.False(t, seen[text], "%g to %g: %s twice", lo, hi, text)
				seen[text] = true
			}
		}
	}
	for _, bad := range [][2]float64{{1, 1}, {2, 1}, {math.NaN(), 1}, {0, math.Inf(1)}, {-math.MaxFloat64, math.MaxFloat64}} {
		ticks, step := Ticks(bad[0], bad[1], 5)
		assert.Empty(t, ticks)
		assert.Zero(t, step)
	}
}

func TestTickText(t *testing.T) {
	assert.Equal(t, "0", TickText(math.Copysign(0, -1), 1))
	assert.Equal(t, "0.25", TickText(0.25, 0.05))
	assert.Equal(t, "-1.5", TickText(-1.5, 0.5))
	assert.Equal(t, "200000", TickText(200000, 50000))
	assert.Equal(t, "2e+06", TickText(2e6, 1e6))
}

func BenchmarkChart(b *testing.B) {
	ch := sampleChart(100, 30)
	for name, th := range map[string]kit.Theme{"colour": {Colour: true}, "ascii": {ASCII: true}} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				ch.Lines(th)
			}
		})
	}
}

// Two labels on a line have a blank between them, and letters at the lines' ends are in the order of
// the lines, even if these end in one cell.
func TestLabelsStandApartAndLettersInOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for range 300 {
		ch := sampleChart(60+r.IntN(60), 9+r.IntN(20))
		ch.Markers, ch.VLines = nil, nil
		for i := range 6 {
			ch.Markers = append(ch.Markers, Marker{X: 900 * r.Float64(), Y: 12 * r.Float64(), Label: fmt.Sprintf("<m%d>", i)})
			ch.VLines = append(ch.VLines, Limit{At: 900 * r.Float64(), Label: fmt.Sprintf("<v%d>", i)})
		}
		for _, line := range ch.Lines(kit.Theme{}) {
			require.NotContains(t, line, "><")
		}
	}
	for range 300 {
		ends := []float64{10 * r.Float64(), 10 * r.Float64(), 10 * r.Float64(), 10 * r.Float64()}
		ch := Chart{Width: 60, Height: 8 + r.IntN(12), X: Axis{Min: 0, Max: 1}, Y: Axis{Min: 0, Max: 10}}
		for i, y := range ends {
			ch.Series = append(ch.Series, Series{Letter: string(rune('A' + i)), Points: []XY{{0, 0}, {1, y}}})
		}
		at := map[string]int{}
		for row, line := range ch.Lines(kit.Theme{}) {
			for i := range ends {
				if letter := string(rune('A' + i)); row > 1 && strings.Contains(line, letter) {
					at[letter] = row
				}
			}
		}
		for i := range ends {
			for k := range ends {
				if ends[i] > ends[k]+0.8 {
					require.Less(t, at[string(rune('A'+i))], at[string(rune('A'+k))], "%v", ends)
				}
			}
		}
	}
}

// The ticks of an axis of free range are a whole number of rows apart, whatever is drawn and whatever
// the chart's height, unless it has so few rows that they would take up too much of it.
func TestTicksUpAreEvenlyApart(t *testing.T) {
	even := 0
	for rows := 4; rows <= 60; rows++ {
		for _, top := range []float64{0.37, 1, 8.6, 9, 47, 132, 1234} {
			for _, low := range []float64{0, -2.31} {
				a := Axis{Zero: true}
				lo, hi, ticks, step := a.level(span{low, top}, rows, false)
				require.NotEmpty(t, ticks)
				assert.LessOrEqual(t, lo, low)
				assert.GreaterOrEqual(t, hi, top)
				assert.Contains(t, ticks, 0.0)
				assert.GreaterOrEqual(t, len(ticks), min(5, rows/5), "%d rows, %g to %g", rows, low, top)
				if apart := step / (hi - lo) * float64(4*rows-1) / 4; math.Abs(apart-math.Round(apart)) < 1e-9 {
					even++
				}
			}
		}
	}
	assert.Greater(t, even, 57*14*3/4)
}

// A tall chart has ticks enough to be read off: of 40 rows and more at least four are on it, whatever is drawn.
func TestATallChartHasTicksEnough(t *testing.T) {
	for rows := 40; rows <= 60; rows++ {
		for top := 1.0; top < 10; top += 0.1 {
			_, _, ticks, _ := Axis{Zero: true}.level(span{0, top}, rows, false)
			assert.GreaterOrEqual(t, len(ticks), 4, "%g on %d rows: %v", top, rows, ticks)
		}
	}
}

// A line is thin between the ends of its thin stretches, and as heavy as before behind each.
func TestALineIsThinInItsStretchesAlone(t *testing.T) {
	line := Series{Points: []XY{{0, 1}, {50, 1}, {100, 1}}, Thin: [][2]float64{{20, 40}, {60, 70}}}
	ch := Chart{Width: 110, Height: 9, X: Axis{Min: 0, Max: 100}, Y: Axis{Min: 0, Max: 2}, Series: []Series{line}}
	p := plot{Chart: ch, c: New(kit.Theme{}, ch.Width, ch.Height)}
	p.layout()
	p.drawSeries()
	heavy, thin := 0, 0
	for col := p.area.X; col < p.area.X+p.area.W; col++ {
		_, row, _ := p.c.CellOf(XY{0, 1})
		dots := bits.OnesCount8(p.c.cells[row*p.c.w+col].dots)
		x := 100 * (float64(col-p.area.X) + 0.5) / float64(p.area.W)
		switch {
		case x > 21 && x < 39 || x > 61 && x < 69:
			thin++
			assert.Less(t, dots, 2, "at %g", x)
		case x < 19 || x > 41 && x < 59 || x > 71 && x < 99:
			heavy++
			assert.Equal(t, 2, dots, "at %g", x)
		}
	}
	assert.Greater(t, thin, 15)
	assert.Greater(t, heavy, 50)
}
