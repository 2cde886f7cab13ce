package curves

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// saying is one sentence and how much it matters.
type saying struct {
	text string
	role kit.Role
}

// sayings are the sentences in at most h lines, the most important first. One that
// does not fit whole is left out.
func (v *View) sayings(s *session.Session, w, h int) []string {
	t := s.Theme
	var lines []string
	for _, say := range v.sentences(s) {
		text := say.text
		if mark := strings.TrimSpace(t.Mark(say.role)); mark != "" {
			text = mark + " " + text
		}
		more := t.WrapPaint(say.role, text, w)
		if len(lines)+len(more) > h {
			continue
		}
		lines = append(lines, more...)
	}
	return lines
}

// sentences are what the curves say, the chosen quantity's own first.
func (v *View) sentences(s *session.Session) []saying {
	var out []saying
	add := func(role kit.Role, text string) {
		if text != "" {
			out = append(out, saying{text, role})
		}
	}
	for i := range s.Outcome().Trials {
		if t := &s.Outcome().Trials[i]; !hasCurve(t) && !empty(t) {
			add(kit.Warning, t.Name+" has no curve: "+whyNone(t)+".")
		}
	}
	add(kit.Broken, runaway(s))
	switch v.quantity {
	case ofEfficiency:
		add(kit.Plain, best(s))
	case ofWinding:
		add(kit.Plain, warmth(s))
	case ofOpenVolts:
		for _, c := range s.Outcome().Cautions {
			if c.Topic == "voltage" {
				add(kit.Warning, s.Units.WordsOfRule(c.Text))
			}
		}
	}
	add(kit.Broken, overClass(s))
	add(kit.Warning, limits(s))
	add(kit.Plain, sentence(beginnings(s)))
	add(kit.Plain, sentence(gains(s)))
	add(kit.Plain, sentence(crossings(s)))
	add(kit.Plain, wanted(s))
	add(kit.Plain, runs(s))
	if v.quantity != ofEfficiency {
		add(kit.Plain, best(s))
	}
	if v.quantity != ofWinding {
		add(kit.Plain, warmth(s))
	}
	add(kit.Dim, "Every curve is at the temperature the winding settles at, "+held(s)+". Design estimates, not a rating.")
	return out
}

// named is a trial's figure, for listing in order; to is where what begins there ends, rpm, 0 where it
// does not.
type named struct {
	name   string
	figure quantity.Figure
	to     float64
}

// gather takes a figure of every trial that has a curve, the lowest first and missing
// ones last.
func gather(s *session.Session, of func(*winding.TrialOutcome) quantity.Figure) (known, missing []named) {
	for i := range s.Outcome().Trials {
		t := &s.Outcome().Trials[i]
		if !hasCurve(t) {
			continue
		}
		n := named{name: letters(s)[i], figure: of(t)}
		if n.figure.Known() {
			known = append(known, n)
		} else {
			missing = append(missing, n)
		}
	}
	slices.SortStableFunc(known, func(a, b named) int { return cmp.Compare(a.figure.Value, b.figure.Value) })
	return known, missing
}

// ofAlternator is the unit of every speed here: it says whose speed it is.
const ofAlternator = "alternator rpm"

// list writes figures one after another, the unit behind the first only: "B from 333
// alternator rpm, A from 529 to 640".
func list(figures []named, before string) string {
	text := ""
	for i, n := range figures {
		part := n.name + before + rpmText(n.figure.Value)
		if n.to > 0 {
			part += " to " + rpmText(n.to)
		}
		if i == 0 {
			part += " " + ofAlternator
		}
		text = join(text, ", ", part)
	}
	return text
}

func join(a, by, b string) string {
	switch {
	case a == "":
		return b
	case b == "":
		return a
	}
	return a + by + b
}

// sentence ends a text with a stop, and capitalises a word at its beginning.
func sentence(text string) string {
	if text == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + strings.TrimSuffix(text[size:], ".") + "."
}
