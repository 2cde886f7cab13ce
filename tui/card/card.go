// Package card is the Card screen: the winding card, or the report, as it will be
// written, to read before it is printed.
package card

import (
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/card"

	tea "github.com/charmbracelet/bubbletea"
)

// View is the Card screen.
type View struct {
	report bool
	scroll kit.Scroll
	height int
	// made is the text as last made, and from what: it is only made anew when that
	// changed.
	made  string
	from  key
	lines []string
}

// key is all that the text depends on.
type key struct {
	text   string
	trial  int
	report bool
	units  any
	ascii  bool
}

// New is the screen.
func New() *View { return &View{} }

// Name stands on the tab.
func (v *View) Name() string { return "Card" }

// Typing is never so here.
func (v *View) Typing(*session.Session) bool { return false }

// Bindings are the keys of the screen.
func (v *View) Bindings(*session.Session) []kit.Binding {
	return []kit.Binding{
		{ID: "next", Keys: []string{"]", "right"}, Label: "trial", Help: "The next trial's card.", Group: "Card"},
		{ID: "back", Keys: []string{"[", "left"}, Help: "The card of the trial before.", Group: "Card"},
		{ID: "report", Keys: []string{"r"}, Label: "report/card", Help: "The report with every figure of every trial, or the card.", Group: "Card"},
		{ID: "scroll", Keys: []string{"down", "up", "pgdown", "pgup", "home", "end"}, Label: "read on", Help: "Read on.", Group: "Card"},
	}
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	n := len(s.Outcome().Trials)
	switch msg.String() {
	case "]", "right":
		s.Trial = min(n-1, s.Trial+1)
	case "[", "left":
		s.Trial = max(0, s.Trial-1)
	case "r":
		v.report = !v.report
	default:
		next, used := v.scroll.Key(msg.String(), v.height, len(v.lines))
		v.scroll = next
		return used
	}
	s.Trial = max(0, s.Trial)
	v.scroll = kit.Scroll{}
	return true
}

// Draw fills the rectangle.
func (v *View) Draw(s *session.Session, r kit.Rect) []kit.Block {
	t := s.Theme
	if len(s.Outcome().Trials) == 0 {
		return []kit.Block{kit.Bare(t, r, t.Wrap("No trial yet, so no card. Make one on the Trials screen with n.", r.W))}
	}
	title := "Winding card, trial " + s.Outcome().Trials[s.Trial].Name
	if v.report {
		title = "Report"
	}
	v.make(s)
	if r.W < boxed { // the card is 80 columns wide: all of them, without a border
		head, body := r.SplitTop(1)
		v.height = body.H
		return []kit.Block{
			kit.Bare(t, head, []string{t.Fit(t.Paint(kit.Title, title), head.W)}),
			kit.Bare(t, body, v.page(t, body)),
		}
	}
	r = r.Centre(min(r.W, boxed), r.H)
	in := kit.Inner(r)
	v.height = in.H
	return []kit.Block{kit.Panel{Title: title}.Draw(t, r, v.scroll.Window(t, v.lines, in.W, in.H))}
}

// boxed is the width from which the card stands in a box with a scroll bar.
const boxed = 88

// page is the part of the text that shows, without a scroll bar.
func (v *View) page(t kit.Theme, r kit.Rect) []string {
	top := max(0, min(v.scroll.Top, len(v.lines)-r.H))
	out := make([]string, 0, r.H)
	for _, line := range v.lines[top:min(len(v.lines), top+r.H)] {
		out = append(out, t.Fit(line, r.W))
	}
	return out
}

// make writes the text when something it depends on has changed.
func (v *View) make(s *session.Session) {
	k := key{s.Document().Text(), s.Trial, v.report, s.Units, s.Theme.ASCII}
	if v.made != "" && v.from == k {
		return
	}
	doc := s.Document()
	opt := card.Options{ASCII: s.Theme.ASCII, Units: s.Units, Document: &doc}
	if v.report {
		v.made = card.Report(s.Bench(), s.Outcome(), opt)
	} else {
		v.made = card.Text(s.Bench(), s.Outcome(), s.Trial, opt)
	}
	v.from, v.lines = k, strings.Split(strings.TrimRight(v.made, "\n"), "\n")
}
