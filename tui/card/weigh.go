package card

import (
	"strings"
	"unicode"

	"slotwright/tui/kit"
)

// weigh is a line of the card as the screen shows it: its leading capitals bolder than the rest, so
// that the eye finds TURNS, OHMS and whether it is READY at all, a caution marked as one, and rules
// lighter. Paper has only capitals for that.
func weigh(t kit.Theme, line string) string {
	if strings.Trim(line, "-=") == "" {
		return t.Paint(kit.Border, line)
	}
	mark, rest, caution := strings.Cut(line, "! ")
	if !caution || mark != "" {
		mark, rest = "", line
	} else {
		mark = t.Paint(kit.Warning, "!") + " "
	}
	n := capitals(rest)
	if heading := strings.TrimLeft(rest, " "); len(rest)-len(heading) == headingIn && capitals(heading) == len(heading) {
		n = len(rest)
	}
	return mark + t.Paint(kit.Title, rest[:n]) + t.Text(rest[n:])
}

// headingIn is the indent of the report's headings, which are all capitals.
const headingIn = 2

// capitals is the length of a line's leading words in capitals, 0 where the first is no word of two
// letters; a trial's letter may be the last.
func capitals(line string) (n int) {
	for at := 0; at < len(line); {
		word := line[at:]
		if i := strings.IndexByte(word, ' '); i >= 0 {
			word = word[:i]
		}
		letters := strings.Trim(word, ",.:;")
		after := line[at+len(word):]
		alone := len(letters) == 1 && n > 0 && (after == "" || strings.HasPrefix(after, "  "))
		if len(letters) < 2 && !alone || strings.IndexFunc(letters, notCapital) >= 0 {
			return n
		}
		n = at + len(word)
		at = n + 1
		if at < len(line) && line[at] == ' ' {
			return n // what follows is the value
		}
	}
	return n
}

func notCapital(r rune) bool { return !unicode.IsUpper(r) }
