package tuitest

import (
	"fmt"
	"html"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
)

// The cell of a picture, in pixels.
const (
	cellW = 8.4
	cellH = 17
)

// Ground is the background of a picture: its two colours, and those of the named styles.
type Ground struct {
	Back, Fore string
	palette    map[string]string
}

// The grounds: a dark one, that of the README's pictures, and black and white with the colours
// of xterm (XTerm-col.ad of xterm, from memory).
var (
	Dark = Ground{"#14171c", "#d5d9e0", map[string]string{
		"red": "#e05561", "blue": "#6f8cff", "magenta": "#d670d6", "cyan": "#4fb7c5", "green": "#8cc265", "yellow": "#d6b44a",
		"grey": "#9aa0a8", "black": "#c8ccd2", "bright red": "#ff616e", "bright green": "#87ff87", "bright yellow": "#f0d060", "bright blue": "#7f9cff",
		"bright magenta": "#ff80ff", "bright cyan": "#70d8e0", "bright white": "#ffffff",
	}}
	Black = Ground{"#000000", "#e5e5e5", xterm}
	White = Ground{"#ffffff", "#000000", xterm}
)

var xterm = map[string]string{
	"black": "#000000", "red": "#cd0000", "green": "#00cd00", "yellow": "#cdcd00", "blue": "#0000ee", "magenta": "#cd00cd", "cyan": "#00cdcd",
	"grey": "#7f7f7f", "bright red": "#ff0000", "bright green": "#00ff00", "bright yellow": "#ffff00", "bright blue": "#5c5cff", "bright magenta": "#ff00ff", "bright cyan": "#00ffff", "bright white": "#ffffff",
}

// SVG is a frame of w x h cells as a picture: the very characters of the screen, each run of a style a
// text of its own, so that it looks the same with any fixed-width font.
func SVG(frame string, w, h int) string { return Dark.SVG(frame, w, h) }

// SVG is a frame as a picture on this ground.
func (g Ground) SVG(frame string, w, h int) string {
	var b strings.Builder
	width, height := float64(w)*cellW+24, h*cellH+24
	fmt.Fprintf(&b, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0f\" height=\"%d\" viewBox=\"0 0 %.0f %d\">\n", width, height, width, height)
	fmt.Fprintf(&b, "<rect width=\"%.0f\" height=\"%d\" rx=\"6\" fill=\"%s\"/>\n", width, height, g.Back)
	fmt.Fprintf(&b, "<g font-family=\"DejaVu Sans Mono, Menlo, Consolas, monospace\" font-size=\"14\" fill=\"%s\" xml:space=\"preserve\">\n", g.Fore)
	for y, line := range strings.Split(frame, "\n") {
		for _, r := range cells(line) {
			g.writeRun(&b, r, y)
		}
	}
	b.WriteString("</g>\n</svg>\n")
	return b.String()
}

// piece is text of one style from a column on.
type piece struct {
	at, w       int
	text, style string
}

// cells are the pieces of a line; unstyled blanks separate them, so that the picture stays small and
// every piece in its place.
func cells(line string) (list []piece) {
	var state byte
	style, x := "", 0
	for len(line) > 0 {
		seq, w, n, next := ansi.DecodeSequence(line, state, nil)
		if strings.HasPrefix(seq, "\x1b[") {
			style = restyled(style, seq)
		} else if w > 0 && (seq != " " || strings.Contains(style, "reversed")) {
			if last := len(list) - 1; last >= 0 && list[last].style == style && list[last].at+list[last].w == x {
				list[last].text, list[last].w = list[last].text+seq, list[last].w+w
			} else {
				list = append(list, piece{x, w, seq, style})
			}
		}
		line, state, x = line[n:], next, x+w
	}
	return list
}

// writeRun draws a piece in row y.
func (g Ground) writeRun(b *strings.Builder, p piece, y int) {
	x, top := 12+float64(p.at)*cellW, 12+y*cellH
	wide := float64(p.w) * cellW
	fill, more := "", ""
	rest := p.style
	for _, word := range []string{"bold", "faint", "underlined", "reversed"} {
		if strings.Contains(rest, word) {
			rest = strings.TrimSpace(strings.Replace(rest, word, "", 1))
			more += map[string]string{"bold": ` font-weight="bold"`, "faint": ` opacity="0.6"`, "underlined": ` text-decoration="underline"`}[word]
		}
	}
	if c := g.hex(strings.Join(strings.Fields(rest), " ")); c != "" {
		fill = fmt.Sprintf(" fill=%q", c)
	}
	if strings.Contains(p.style, "reversed") {
		fmt.Fprintf(b, "<rect x=\"%.1f\" y=\"%d\" width=\"%.1f\" height=\"%d\" fill=\"%s\"/>\n", x, top, wide, cellH, g.behind(strings.Join(strings.Fields(rest), " ")))
		fill = fmt.Sprintf(" fill=%q", g.Back)
	}
	fmt.Fprintf(b, "<text x=\"%.1f\" y=\"%d\" textLength=\"%.1f\"%s%s>%s</text>\n", x, top+13, wide, fill, more, html.EscapeString(p.text))
}

// behind is what is drawn behind reversed text: its own colour, else the ground's other.
func (g Ground) behind(colour string) string {
	if c := g.hex(colour); c != "" {
		return c
	}
	return g.Fore
}

// hex is a colour in words as a picture has it, "" for the ground's own.
func (g Ground) hex(colour string) string {
	if n, ok := strings.CutPrefix(colour, "fixed "); ok {
		i, _ := strconv.Atoi(n)
		return Fixed(i)
	}
	return g.palette[colour]
}

// Fixed is colour n, 16 to 255, of a terminal of 256: a cube of six levels a primary, then 24
// greys (256colres.h of xterm, from memory).
func Fixed(n int) string {
	if n >= 232 {
		grey := 8 + 10*(n-232)
		return fmt.Sprintf("#%02x%02x%02x", grey, grey, grey)
	}
	level := func(i int) int {
		if i == 0 {
			return 0
		}
		return 55 + 40*i
	}
	n -= 16
	return fmt.Sprintf("#%02x%02x%02x", level(n/36), level(n/6%6), level(n%6))
}

// Picture compares a frame's picture with testdata/pictures/<name>.svg, and with
// the flag -update writes it there.
func Picture(t testing.TB, name, frame string, w, h int) {
	t.Helper()
	CheckFrame(t, frame, w, h)
	path := filepath.Join(moduleRoot(t), "testdata", "pictures", name+".svg")
	got := SVG(frame, w, h)
	if updating() {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if data, err := os.ReadFile(path); err != nil || strings.ReplaceAll(string(data), "\r\n", "\n") != got {
		t.Errorf("the picture %s is not what the program shows now (%v): make it anew with .ci/pictures", path, err)
	}
}
