// Package card is the Card screen: the winding card, or the report, as it will be written, to read
// before it is printed.
package card

import (
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/card"
	"slotwright/winding/quantity"

	tea "github.com/charmbracelet/bubbletea"
)

// View is the Card screen.
type View struct {
	report bool
	at     kit.Rect
	scroll kit.Scroll
	// lines is the text as last made; it is remade only when what it depends on has changed.
	from  key
	lines []string
	// weighed are the lines as they are drawn: what decides bolder than what explains it.
	weighed []string
}

// key is everything that the text depends on.
type key struct {
	text   string
	trial  int
	report bool
	units  quantity.Choice
	theme  kit.Theme
	wide   int
}

// New is the screen.
func New() *View { return &View{} }

// Name is on the tab.
func (v *View) Name() string { return "Card" }

// Typing is never true here.
func (v *View) Typing(*session.Session) bool { return false }

// Bindings are the keys of the screen.
func (v *View) Bindings(s *session.Session) []kit.Binding {
	const group = "Card"
	return append([]kit.Binding{
		kit.Bind(group, "] right", "trial", "The next trial's card.", func() { step(s, 1) }),
		kit.Bind(group, "[ left", "", "The card of the trial before.", func() { step(s, -1) }),
		kit.Bind(group, "r", "report/card", "The report with every figure of every trial, or the card.", func() { v.report = !v.report }),
	}, v.scroll.Bindings("Reading", "read on")...)
}

// step chooses the next trial, or the one before; at the end it says so.
func step(s *session.Session, by int) {
	was := s.Trial
	if s.Choose(s.Trial + by); s.Trial == was && len(s.Outcome().Trials) > 0 {
		s.Say("trial " + s.Outcome().Trials[was].Name + " is the " + map[int]string{1: "last", -1: "first"}[by])
	}
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	_, used := kit.Press(v.Bindings(s), msg)
	return used
}

// SetSize makes the text, and shows a new one from its top.
func (v *View) SetSize(s *session.Session, r kit.Rect) {
	v.at = r
	if len(s.Outcome().Trials) == 0 {
		v.lines = nil
		return
	}
	if k := v.key(s); v.from.trial != k.trial || v.from.report != k.report {
		v.scroll = kit.Scroll{}
	}
	v.make(s)
	_, body, _ := v.areas()
	v.scroll.SetSize(v.pages()*body.H, len(v.lines))
}

// pages is the number of pages side by side, read on from one to the next.
func (v *View) pages() int { return max(1, min(2, (v.at.W+1)/(boxed+1))) }

// areas are the whole drawing's rectangle, that of the text or of its first page, and that for words of
// the trade beside or under it. The card is 80 columns wide: on a narrow screen they take all of it,
// without a border, under a title line; on a narrower one the card is wrapped.
func (v *View) areas() (all, body, words kit.Rect) {
	if v.pages() == 1 && v.at.W >= boxed+1+aside {
		all = v.at.Centre(boxed+1+aside, v.at.H)
		all, words = all.SplitLeft(boxed)
		_, words = words.SplitLeft(1)
		return all, kit.Inner(all), words
	}
	rest := v.at
	if v.at.H >= footed {
		rest, words = v.at.SplitBottom(max(1, v.at.H/12))
	}
	if v.at.W < boxed {
		_, body = rest.SplitTop(1)
		return rest, body, words
	}
	all = rest.Centre(v.pages()*(boxed+1)-1, rest.H)
	words.X, words.W = all.X+2, all.W-2
	first, _ := all.SplitLeft(boxed)
	return all, kit.Inner(first), words
}

// footed is the height from which there is a line for words at the foot, aside the width of a box for
// them beside the card.
const (
	footed = 22
	aside  = 44
)

// Draw fills the rectangle.
func (v *View) Draw(s *session.Session) []kit.Block {
	t := s.Theme
	if len(s.Outcome().Trials) == 0 {
		return []kit.Block{kit.Bare(t, v.at, t.Wrap("No trial yet, so no card. Make one on the Trials screen with n.", v.at.W))}
	}
	title := "Trial " + s.Outcome().Trials[s.Trial].Name + ", as it will be written"
	writes := "w writes it, W the drawing"
	if v.report {
		title, writes = "Report", "w writes the card, W the drawing"
	}
	all, body, words := v.areas()
	blocks := v.explained(t, v.pages()*body.H, words)
	if v.at.W >= boxed {
		shown := v.scroll.Window(t, v.weighed, body.W, v.pages()*body.H)
		for page := range v.pages() {
			box, rest := all.SplitLeft(boxed)
			_, all = rest.SplitLeft(1)
			blocks = append(blocks, kit.Panel{Title: title, Note: writes}.Draw(t, box, shown[page*body.H:][:body.H]))
			title, writes = "Read on", ""
		}
		return blocks
	}
	head, _ := v.at.SplitTop(1)
	return append(blocks,
		kit.Bare(t, head, []string{kit.Bar(t, head.W, t.Paint(kit.Title, title), t.Paint(kit.Dim, writes))}),
		kit.Bare(t, body, v.page(t, body)))
}

// explained is the meanings of the words of the trade now in view, as many as fit.
func (v *View) explained(t kit.Theme, h int, r kit.Rect) []kit.Block {
	if r.H == 0 {
		return nil
	}
	top := max(0, min(v.scroll.Top, len(v.lines)-h))
	terms := session.Explained(strings.Join(v.lines[top:min(len(v.lines), top+h)], "\n"))
	w := r.W
	if r.H > footed/2 {
		w = kit.Inner(r).W
	}
	if v.pages() > 1 {
		return []kit.Block{kit.Bare(t, r, inOne(t, terms, w, r.H))}
	}
	var lines []string
	for _, says := range terms {
		lines = append(lines, t.WrapPaint(kit.Hint, says, w)...)
	}
	if r.H > footed/2 {
		return []kit.Block{kit.Box(t, r, "Words on this page", lines)}
	}
	return []kit.Block{kit.Bare(t, r, lines[:min(len(lines), r.H)])}
}

// inOne is as many of the terms, run on, as fit in h lines.
func inOne(t kit.Theme, terms []string, w, h int) (lines []string) {
	text := ""
	for _, says := range terms {
		if text += " " + says; len(t.Wrap(text[1:], w)) > h {
			break
		}
		lines = t.WrapPaint(kit.Hint, text[1:], w)
	}
	return lines
}

// boxed is the width from which the card is in a box with a scroll bar.
const boxed = 88

// paper is the columns of a card.
const paper = 80

// page is the part of the text that shows, without a scroll bar.
func (v *View) page(t kit.Theme, r kit.Rect) []string {
	top := max(0, min(v.scroll.Top, len(v.lines)-r.H))
	out := make([]string, 0, r.H)
	for _, line := range v.weighed[top:min(len(v.lines), top+r.H)] {
		out = append(out, t.Fit(line, r.W))
	}
	return out
}

// key is what the text now depends on.
func (v *View) key(s *session.Session) key {
	return key{s.Document().Text(), s.Trial, v.report, s.Units, s.Theme, min(paper, v.at.W)}
}

// make writes the text when something it depends on has changed.
func (v *View) make(s *session.Session) {
	k := v.key(s)
	if v.lines != nil && v.from == k {
		return
	}
	doc := s.Document()
	opt := card.Options{ASCII: s.Theme.ASCII, Units: s.Units, Document: &doc, Width: k.wide}
	text := ""
	if v.report {
		text = card.Report(s.Bench(), s.Outcome(), opt)
	} else {
		text = card.Text(s.Bench(), s.Outcome(), s.Trial, opt)
	}
	v.from, v.lines = k, strings.Split(strings.TrimRight(text, "\n"), "\n")
	v.weighed = make([]string, len(v.lines))
	for i, line := range v.lines {
		v.weighed[i] = weigh(s.Theme, line)
	}
}
