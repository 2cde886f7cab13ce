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

// Tabs is one line of w cells naming several views, the active one (counted from 0)
// in brackets. When all do not fit, those around the active one are shown, with
// marks that there are more.
func Tabs(t Theme, w int, names []string, active int) string {
	if len(names) == 0 {
		return t.Fit("", w)
	}
	active = clamp(active, 0, len(names)-1)
	from, to := tabsShown(t, w, names, active)
	g := t.Glyphs()
	var b strings.Builder
	b.WriteString(pick(from > 0, t.Paint(Dim, g.MoreLeft), " "))
	for i := from; i < to; i++ {
		if i == active {
			b.WriteString(" [" + t.Paint(Chosen, names[i]) + "]")
			continue
		}
		b.WriteString("  " + t.Paint(Dim, names[i]) + " ")
	}
	b.WriteString(pick(to < len(names), " "+t.Paint(Dim, g.MoreRight), ""))
	return t.Fit(b.String(), w)
}

// TabAt is the tab at column x of the line that [Tabs] draws.
func TabAt(t Theme, w int, names []string, active, x int) (i int, ok bool) {
	if len(names) == 0 {
		return 0, false
	}
	from, to := tabsShown(t, w, names, clamp(active, 0, len(names)-1))
	at := 1
	for i := from; i < to; i++ {
		next := at + tabWidth(t, names[i])
		if x >= at && x < next {
			return i, true
		}
		at = next
	}
	return 0, false
}

func tabWidth(t Theme, name string) int { return Width(t.Text(name)) + 3 }

// tabsShown are the tabs, from and to (not included), that fit w cells around the active one.
func tabsShown(t Theme, w int, names []string, active int) (from, to int) {
	from, to = active, active+1
	used := tabWidth(t, names[active]) + 4
	for grown := true; grown; {
		grown = false
		if to < len(names) && used+tabWidth(t, names[to]) <= w {
			used, to, grown = used+tabWidth(t, names[to]), to+1, true
		}
		if from > 0 && used+tabWidth(t, names[from-1]) <= w {
			used, from, grown = used+tabWidth(t, names[from-1]), from-1, true
		}
	}
	return from, to
}

// StatusKeys names as many bindings as fit w cells, in their order: "key label",
// two spaces apart. Those without a label and those that do nothing now are left out.
// The result may be shorter than w.
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
