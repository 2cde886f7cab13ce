package card

import (
	"fmt"
	"strings"

	"slotwright/winding/text"
)

// pageLines is the lines of a sheet: 66 at six to the inch are 11 inches, which fits A4 too.
const pageLines = 66

// sheetLines is the number of lines of a sheet; unlimited on a wrapped one, which is not printed.
func (w *writer) sheetLines() int {
	if w.folded() {
		return 1 << 20
	}
	return pageLines
}

// labelled is the column in which a sheet's text begins, after its word in capitals.
const labelled = 10

// block is the lines that f writes, kept separate.
func (w *writer) block(f func()) []string {
	before := w.paper
	w.paper = newPaper(before.ascii, before.units, w.wide)
	f()
	written := w.paper.b.String()
	w.paper = before
	if written == "" {
		return nil
	}
	return strings.Split(strings.TrimRight(written, "\n"), "\n")
}

// entry is a word in capitals and the text behind it.
func (w *writer) entry(label, words string) {
	w.hang(text.Pad(w.clean(label), labelled), words)
}

// more continues an entry.
func (w *writer) more(words string) { w.entry("", words) }

// sheetHead is the top of a sheet: what it is, of which job, which sheet of how many.
func (w *writer) sheetHead(kind string, sheet, of int) []string {
	return w.block(func() {
		right := fmt.Sprintf("sheet %d of %d", sheet, of)
		room := w.wide - len(right) - 2
		w.raw(text.Fit(w.clean(kind), room, "") + "  " + right)
	})
}

// pages sets blocks on sheets of at most so many lines, a blank line between two; a block longer than a
// sheet continues on the next.
func pages(blocks [][]string, lines int) [][]string {
	var list [][]string
	var sheet []string
	for _, b := range blocks {
		if len(b) == 0 {
			continue
		}
		if len(sheet) > 0 && len(sheet)+1+len(b) > lines {
			list, sheet = append(list, sheet), nil
		}
		if len(sheet) > 0 {
			sheet = append(sheet, "")
		}
		for len(b) > lines {
			list, b = append(list, b[:lines]), b[lines:]
		}
		sheet = append(sheet, b...)
	}
	if len(sheet) > 0 {
		list = append(list, sheet)
	}
	return list
}

// join puts sheets one after the other: with a form feed between them for a printer, else
// with a blank line.
func join(sheets [][]string, feed bool) string {
	between := "\n"
	if feed {
		between = "\f"
	}
	parts := make([]string, len(sheets))
	for i, s := range sheets {
		parts[i] = strings.Join(s, "\n") + "\n"
	}
	return strings.Join(parts, between)
}
