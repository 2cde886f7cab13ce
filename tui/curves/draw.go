package curves

import (
	"slices"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/quantity"
)

// wideEnough is the width from which every value is shown beside the chart unasked.
const wideEnough = 100

// leastChart is the width the chart keeps beside the list of values.
const leastChart = 48

// leastWords is the height from which the sentences are under the list of values.
const leastWords = 7

// Draw fills the rectangle: the quantities, the chart, the table, what they say.
func (v *View) Draw(s *session.Session) []kit.Block {
	t, r := s.Theme, v.at
	if end := endOf(s); end <= 0 {
		return []kit.Block{kit.Bare(t, r, nothing(s, r.W))}
	}
	top, rest := r.SplitTop(1)
	table := v.table(s).Lines(t, r.W)
	blocks := []kit.Block{kit.Bare(t, top, []string{v.tabs(s, top.W)})}
	if side := v.panelWidth(s); v.panelWanted(r.W) && r.W-side >= leastChart && rest.H-len(table)-panelHeight >= leastWords {
		middle, under := rest.SplitBottom(len(table))
		chart, right := middle.SplitRight(side)
		box, words := right.SplitTop(panelHeight)
		words = words.Inset(2, 0)
		return append(blocks,
			kit.Bare(t, chart, v.picture(s, chart.W-1, chart.H)), v.panel(s, box),
			kit.Bare(t, words, v.sayings(s, words.W, words.H)), kit.Bare(t, under, table))
	}
	if v.panelWanted(r.W) && v.flipped && rest.H-len(table)-wordRows(r) < panelHeight {
		return append(blocks, v.middle(s, rest)...) // asked for: it is not to be cut
	}
	middle, foot := rest.SplitBottom(len(table) + wordRows(r))
	under, words := foot.SplitTop(len(table))
	blocks = append(blocks, kit.Bare(t, under, table), kit.Bare(t, words, v.sayings(s, words.W, words.H)))
	return append(blocks, v.middle(s, middle)...)
}

// panelWanted reports whether to show every value at the cursor: unasked on a wide screen, else when
// asked for.
func (v *View) panelWanted(w int) bool { return (w >= wideEnough) != v.flipped }

// wordRows is the number of lines for the sentences under the table: the jobs that matter most take
// three.
func wordRows(r kit.Rect) int {
	switch {
	case r.H >= 36:
		return 6
	case r.H >= 26:
		return 4
	default:
		return 3
	}
}

// tabs names the quantities.
func (v *View) tabs(s *session.Session, w int) string {
	names := make([]string, len(quantities))
	for i, q := range quantities {
		names[i] = q.tab
	}
	return kit.Tabs(s.Theme, w, names, v.quantity)
}

// middle is the chart, or when asked for every value at the cursor: beside it, or instead where there
// is no room for both.
func (v *View) middle(s *session.Session, r kit.Rect) []kit.Block {
	side := v.panelWidth(s)
	switch {
	case !v.panelWanted(r.W):
		return []kit.Block{kit.Bare(s.Theme, r, v.picture(s, r.W, r.H))}
	case r.W-side >= leastChart/2+4:
		chart, right := r.SplitRight(side)
		return []kit.Block{kit.Bare(s.Theme, chart, v.picture(s, chart.W-1, chart.H)), v.panel(s, right)}
	case v.flipped:
		return []kit.Block{v.panel(s, r)}
	}
	return []kit.Block{kit.Bare(s.Theme, r, v.picture(s, r.W, r.H))}
}

// panelHeight is that of the list of values in its box.
var panelHeight = len(quantities) + len(more) + 3

// panel is every value at the cursor in a box.
func (v *View) panel(s *session.Session, r kit.Rect) kit.Block {
	lines := v.values(s).Lines(s.Theme, kit.Inner(r).W)
	return kit.Panel{Title: "Held at " + rpmText(v.cursor(s)) + " alt. rpm, " + s.Text(s.Outcome().Machine.ChargingVolts, quantity.Volts, 3)}.Draw(s.Theme, r, lines)
}

// leastPanel is the panel's least width, which its title takes.
const leastPanel = 36

// panelWidth is the width that the list of values needs, wherever the cursor is.
func (v *View) panelWidth(s *session.Session) int {
	w := 0
	for _, q := range slices.Concat(quantities, more) {
		w = max(w, kit.Width(s.Theme.Text(q.label(s))))
	}
	each := 1 + max(leastValue, widest(s)+valueFrac+2) // the gap before it, and behind it a mark
	return max(leastPanel, 4+w+each*len(s.Outcome().Trials))
}

// nothing says why there is no curve at all.
func nothing(s *session.Session, w int) []string {
	t, trials := s.Theme, s.Outcome().Trials
	if len(trials) == 0 {
		return t.WrapPaint(kit.Hint, "No trial yet, so there is nothing to run. The Trials screen makes the first one.", w)
	}
	lines := []string{t.Fit(t.Paint(kit.Title, "No curve yet."), w), t.Fit("", w)}
	for i := range trials {
		lines = append(lines, t.WrapPaint(kit.Plain, trials[i].Name+": "+whyNone(&trials[i])+".", w)...)
	}
	lines = append(lines, t.Fit("", w))
	return append(lines, t.WrapPaint(kit.Hint, "A curve takes the turns and wire of a trial, the machine's poles and flux, and the battery. The Machine and Drive screens ask for them.", w)...)
}
