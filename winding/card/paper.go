package card

import (
	"regexp"
	"strings"
	"sync"
	"unicode"

	"slotwright/winding/quantity"
	"slotwright/winding/text"
)

// width is the columns of a sheet, narrowest the fewest that it can be wrapped to for a screen.
const (
	width     = 80
	narrowest = 60
)

// paper takes text line by line: it converts it to ASCII when asked, wraps it, and keeps blanks off the
// ends of lines.
type paper struct {
	b     strings.Builder
	ascii bool
	units quantity.Choice
	wide  int  // columns
	blank bool // the last line was blank
}

func newPaper(ascii bool, units quantity.Choice, wide int) *paper {
	if wide <= 0 {
		wide = width
	}
	return &paper{ascii: ascii, units: units, wide: min(width, max(narrowest, wide)), blank: true}
}

// String is the sheet, ending with one newline.
func (p *paper) String() string { return strings.TrimRight(p.b.String(), "\n") + "\n" }

// clean makes text fit to print: nothing a printer would act on, ASCII when asked.
func (p *paper) clean(s string) string {
	if s = text.Clean(s); p.ascii {
		return text.ASCII(s)
	}
	return s
}

// folded reports whether the paper is narrower than a sheet.
func (p *paper) folded() bool { return p.wide < width }

// raw writes one line that fits once it is clean; a longer one is wrapped.
func (p *paper) raw(s string) {
	s = strings.TrimRightFunc(p.clean(s), unicode.IsSpace)
	if text.Width(s) > p.wide {
		indent := len(s) - len(strings.TrimLeft(s, " "))
		p.hang(strings.Repeat(" ", min(indent, p.wide/2)), strings.TrimLeft(s, " "))
		return
	}
	p.b.WriteString(s + "\n")
	p.blank = s == ""
}

// gap is one blank line, never two together.
func (p *paper) gap() {
	if !p.blank {
		p.raw("")
	}
}

// rule is a line across.
func (p *paper) rule(r rune) { p.raw(strings.Repeat(string(r), p.wide)) }

// title heads the sheet.
func (p *paper) title(kind, name string) {
	p.rule('=')
	p.hang("  ", kind)
	p.hang("  ", verbatim(name))
	p.rule('=')
}

// section is a heading with room above it.
func (p *paper) section(name string) {
	p.gap()
	p.raw("")
	p.rule('-')
	p.hang("  ", name)
	p.rule('-')
	p.gap()
}

// heading is a smaller one.
func (p *paper) heading(name string) {
	p.gap()
	p.hang("  ", name)
	p.gap()
}

// say wraps a text at an indent; a newline in it begins a paragraph.
func (p *paper) say(indent int, words string) {
	for _, part := range strings.Split(words, "\n") {
		if strings.TrimSpace(part) != "" {
			p.hang(strings.Repeat(" ", indent), part)
		}
	}
}

// glue keeps a number and its unit on one line: it is between them while a text is wrapped.
const glue = "\ue000"

var glued = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`([\d_]) (mm²?|in|m|ft|kg|lb|V|A|Ω|[mM]Ω|°[CF]|deg[CF]|[mM]?ohm|rpm|%|W|K/W|°F/W|Hz|Ah|m/s)\b`)
})

// Text between these is written as it is, not converted to the chosen units: what was typed, the name
// of a wire, a size in both units.
const asIs, asIsEnds = "\ue001", "\ue002"

// verbatim keeps words as they are.
func verbatim(words string) string { return asIs + words + asIsEnds }

// inUnits is words with their numbers in the chosen units, except for the verbatim parts.
func (p *paper) inUnits(words string) string {
	var b strings.Builder
	for i, part := range strings.Split(words, asIs) {
		kept, rest, marked := strings.Cut(part, asIsEnds)
		if i == 0 || !marked {
			kept, rest = "", part
		}
		b.WriteString(kept + p.units.Words(rest))
	}
	return b.String()
}

// hang writes a mark and wraps the words beside it, further lines under the words.
func (p *paper) hang(mark, words string) {
	mark, words = p.clean(mark), p.inUnits(words)
	at := text.Width(mark)
	lines := text.Wrap(glued().ReplaceAllString(p.clean(words), "${1}"+glue+"${2}"), p.wide-at)
	for i, line := range lines {
		line = strings.ReplaceAll(line, glue, " ")
		lead := mark
		if i > 0 {
			lead = strings.Repeat(" ", at)
		}
		p.b.WriteString(strings.TrimRight(lead+line, " ") + "\n")
	}
	p.blank = false
}

// labelWidth is the column in which values begin.
const labelWidth = 29

// pair is a label and its value.
func (p *paper) pair(label, value string) {
	p.hang("  "+text.Pad(p.clean(p.inUnits(label)), labelWidth-3)+" ", value)
}
