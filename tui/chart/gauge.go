package chart

import (
	"math"
	"strings"

	"slotwright/tui/kit"
)

// Gauge is a bar of exactly w cells that is full at the value full, with a mark at
// limit (0 or beyond full: none). What lies beyond the limit is drawn with another
// character in the Broken role; a value beyond full ends in an arrow. A value
// that is negative or not finite, and a full that is not positive, show an empty
// bar.
func Gauge(t kit.Theme, w int, value, limit, full float64, role kit.Role) string {
	if w <= 0 {
		return ""
	}
	if !(full > 0) || math.IsInf(full, 0) || !(value >= 0) || math.IsInf(value, 0) {
		value, full = 0, 1
	}
	g := t.Glyphs()
	n := int(math.Round(min(value/full, 1) * float64(w)))
	if value > 0 {
		n = max(n, 1)
	}
	at := -1
	if limit > 0 && limit <= full {
		at = min(int(math.Round(limit/full*float64(w))), w-1)
	}
	over := ""
	within := n
	if at >= 0 && value > limit {
		within = min(n, at)
		over = strings.Repeat(overRune(t), max(1, n-at))
	}
	bar := []string{strings.Repeat(g.Full, within), over, strings.Repeat(g.Empty, max(0, w-within-len([]rune(over))))}
	cells := []rune(strings.Join(bar, ""))[:w]
	if at >= 0 && over == "" {
		cells[at] = []rune(g.Limit)[0]
	}
	if value > full {
		cells[w-1] = []rune(g.MoreRight)[0]
	}
	return paintGauge(t, cells, within, within+len([]rune(over)), role)
}

func overRune(t kit.Theme) string {
	if t.ASCII {
		return "X"
	}
	return "▓"
}

// paintGauge gives the filled part, the part over the limit and the rest their roles.
func paintGauge(t kit.Theme, cells []rune, within, over int, role kit.Role) string {
	within, over = min(within, len(cells)), min(over, len(cells))
	return t.Style(role).Render(string(cells[:within])) +
		t.Style(kit.Broken).Render(string(cells[within:over])) +
		t.Style(kit.Border).Render(string(cells[over:]))
}
