package tuitest

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
)

// GoldenStyled is Golden for a frame in colour: the file has the frame as plain text, and under it its
// styles, a line for each styled line of the frame: the columns of each run and its style in words.
func GoldenStyled(t testing.TB, name, frame string) {
	t.Helper()
	text := ansi.Strip(frame) + "\n\nstyles\n"
	for i, line := range strings.Split(frame, "\n") {
		var runs []string
		for _, r := range Runs(line) {
			runs = append(runs, fmt.Sprintf("%d-%d %s", r.From+1, r.To, r.Style))
		}
		if runs != nil {
			text += fmt.Sprintf("line %d: %s\n", i+1, strings.Join(runs, ", "))
		}
	}
	Golden(t, name, strings.TrimSuffix(text, "\n"))
}

// Run is cells From to To (not included) of a line in one style, in words.
type Run struct {
	From, To int
	Style    string
}

// Runs are the styled cells of a line, neighbours of one style together; blanks count only
// where the style shows on them.
func Runs(line string) (list []Run) {
	var state byte
	style, x := "", 0
	for len(line) > 0 {
		seq, w, n, next := ansi.DecodeSequence(line, state, nil)
		switch {
		case strings.HasPrefix(seq, "\x1b["):
			style = restyled(style, seq)
		case w > 0 && style != "" && (seq != " " || strings.Contains(style, "reversed") || strings.Contains(style, "underlined")):
			if last := len(list) - 1; last >= 0 && list[last].Style == style && x-list[last].To <= 1 {
				list[last].To = x + w
			} else {
				list = append(list, Run{x, x + w, style})
			}
		}
		line, state, x = line[n:], next, x+w
	}
	return list
}

// styleWords are the attributes that screens use, by their numbers.
var styleWords = map[string]string{
	"1": "bold", "2": "faint", "4": "underlined", "7": "reversed",
	"31": "red", "32": "green", "33": "yellow", "34": "blue", "35": "magenta", "36": "cyan", "30": "black", "97": "bright white", "90": "grey", "91": "bright red", "92": "bright green", "93": "bright yellow", "94": "bright blue", "95": "bright magenta", "96": "bright cyan",
}

// restyled is a style after one more sequence; a colour of the 256 is "fixed 63".
func restyled(style, seq string) string {
	for _, p := range strings.Split(strings.ReplaceAll(strings.Trim(seq, "\x1b[m"), "38;5;", "fixed "), ";") {
		word, ok := styleWords[p]
		switch {
		case p == "0" || p == "":
			style = ""
			continue
		case strings.HasPrefix(p, "fixed "):
			word = p
		case !ok:
			word = "unknown " + p
		}
		if !strings.Contains(style, word) {
			style = strings.TrimSpace(style + " " + word)
		}
	}
	return style
}
