package kit

import (
	"fmt"
	"strings"
)

func sizeText(w, h int) string { return fmt.Sprintf("%d×%d", max(0, w), max(0, h)) }

// Bar is one line of w cells with text at both ends. When both do not fit, the right
// one goes first, then the left one is cut.
func Bar(t Theme, w int, left, right string) string {
	left, n := t.cut(left, w)
	right, m := t.cut(right, w)
	if m > 0 && n+m+2 > w && n > 0 {
		right, m = "", 0
	}
	return left + spaces(w-n-m) + right
}

// Tabs is one line of w cells naming several things, the active one (counted from 0) in
// brackets, for names of several words.
func Tabs(t Theme, w int, names []string, active int) string {
	return TabRow{Names: names, Active: active, Loose: true}.Draw(t, w)
}

// TabRow names several things, the active one (counted from 0) in brackets. When all do not
// fit, those around the active one are shown, with marks that there are more.
type TabRow struct {
	Names  []string
	Active int
	// Loose keeps the cells of the brackets free around every name, so that no name moves when the
	// active one changes.
	Loose bool
}

// Draw is the row, filled to w cells.
func (r TabRow) Draw(t Theme, w int) string {
	if len(r.Names) == 0 {
		return t.Fit("", w)
	}
	r.Active = clamp(r.Active, 0, len(r.Names)-1)
	from, to := r.shown(t, w)
	g := t.Glyphs()
	var b strings.Builder
	b.WriteString(pick(from > 0, t.Paint(Dim, g.MoreLeft), pick(r.Loose, " ", "")))
	for i := from; i < to; i++ {
		open, shut, role := pick(r.Loose, " ", ""), pick(r.Loose, " ", ""), Dim
		if i == r.Active {
			open, shut, role = "[", "]", Key
		}
		b.WriteString(" " + open + t.Paint(role, r.Names[i]) + shut)
	}
	b.WriteString(pick(to < len(r.Names), " "+t.Paint(Dim, g.MoreRight), ""))
	return t.Fit(b.String(), w)
}

// At is the tab at column x of the row in w cells.
func (r TabRow) At(t Theme, w, x int) (i int, ok bool) {
	if len(r.Names) == 0 {
		return 0, false
	}
	r.Active = clamp(r.Active, 0, len(r.Names)-1)
	from, to := r.shown(t, w)
	at := pickInt(from > 0 || r.Loose, 1, 0)
	for i := from; i < to; i++ {
		next := at + r.width(t, i)
		if x >= at && x < next {
			return i, true
		}
		at = next
	}
	return 0, false
}

// Width is how many cells the whole row takes.
func (r TabRow) Width(t Theme) int {
	n := pickInt(r.Loose, 1, 0)
	for i := range r.Names {
		n += r.width(t, i)
	}
	return n
}

// width is that of a name, the blank before it and the brackets or their room.
func (r TabRow) width(t Theme, i int) int {
	return Width(t.Text(r.Names[i])) + pickInt(r.Loose || i == r.Active, 3, 1)
}

// shown are the tabs, from and to (not included), that fit w cells around the active one.
func (r TabRow) shown(t Theme, w int) (from, to int) {
	if r.Width(t) <= w {
		return 0, len(r.Names)
	}
	from, to = r.Active, r.Active+1
	used := r.width(t, r.Active) + 4
	for grown := true; grown; {
		grown = false
		if to < len(r.Names) && used+r.width(t, to) <= w {
			used, to, grown = used+r.width(t, to), to+1, true
		}
		if from > 0 && used+r.width(t, from-1) <= w {
			used, from, grown = used+r.width(t, from-1), from-1, true
		}
	}
	return from, to
}

// StatusKeys names as many bindings as fit w cells, in their order: "key label", two spaces apart.
// Those without a label and those that do nothing now are left out. The result may be shorter than w.
func StatusKeys(t Theme, w int, bindings []Binding) string {
	var b strings.Builder
	used := 0
	for _, k := range bindings {
		if k.Label == "" || !k.Enabled() || len(k.Keys()) == 0 {
			continue
		}
		name, label := KeyName(t, k.Keys()[0]), t.Text(k.Label)
		n := Width(name) + 1 + Width(label)
		if used > 0 {
			n += 2
		}
		if used+n > w {
			break
		}
		if used > 0 {
			b.WriteString("  ")
		}
		b.WriteString(t.Style(Key).Render(name) + " " + t.Style(Dim).Render(label))
		used += n
	}
	return b.String()
}

// StatusLine is the bottom line of w cells: a message if there is one, then as
// many keys as still fit.
func StatusLine(t Theme, w int, message string, bindings []Binding) string {
	if message == "" {
		return t.Fit(StatusKeys(t, w, bindings), w)
	}
	message, n := t.cut(message, w)
	return t.Fit(message+"  "+StatusKeys(t, w-n-2, bindings), w)
}

func pick(yes bool, a, b string) string {
	if yes {
		return a
	}
	return b
}

func pickInt(yes bool, a, b int) int {
	if yes {
		return a
	}
	return b
}
