package job

import (
	"slices"
	"strings"
)

// Add gives the document with one more entry of a table that may come many times: with the values of
// entry from, or empty when from is less than 0. It is d when there are as many as there may be.
func (d Document) Add(table string, from int) Document {
	t, ok := TableOf(table)
	if !ok || !t.Many() || d.Count(table) >= t.Most {
		return d
	}
	block := "[[" + table + "]]\n"
	if from >= 0 {
		for _, f := range InputsOf(table) {
			if e, ok := d.entries[f.PathAt(from)]; ok {
				block += d.text[e.key.from:e.key.to] + " = " + d.text[e.value.from:e.value.to] + "\n"
			}
		}
	}
	at := -1
	for _, run := range d.sectionsOf(table, d.Count(table)-1) {
		at = run.to
	}
	if line, mark, open := d.open(); open {
		return d.refuse("the text that begins in line %d is never ended, and this would become part of it; put %s where it ends, with an editor", line, mark)
	}
	if at < 0 {
		return Parse(d.mark + d.apart() + d.lined(block))
	}
	return Parse(d.mark + d.text[:at] + d.lined("\n\n"+strings.TrimRight(block, "\n")) + d.text[at:])
}

// Remove gives the document without entry i of a table that may come many times, nor any table under it
// ([trial.more] behind a [[trial]]), which would pass to the entry before. Comments after its last key
// belong to what follows and stay.
func (d Document) Remove(table string, i int) Document {
	runs := d.sectionsOf(table, i)
	if len(runs) == 0 {
		return d
	}
	last := runs[len(runs)-1]
	if line, mark, open := d.open(); open && last.to == d.sections[len(d.sections)-1].last {
		return d.refuse("the text that begins in line %d is never ended, and is not to be lost; put %s where it ends, with an editor", line, mark)
	}
	text := d.text
	for _, run := range slices.Backward(runs) {
		rest := strings.TrimLeft(text[run.to:], "\r\n")
		text = text[:run.from]
		if rest == "" {
			text = strings.TrimRight(text, "\r\n") + d.newline()
		}
		text += rest
	}
	return Parse(d.mark + text)
}

// sectionsOf is where entry i of a table that may come many times is, with the tables under it, which
// may be anywhere before the next entry: pieces of the text in their order, from a header to the last
// key. None when there is no such entry.
func (d Document) sectionsOf(table string, i int) (runs []span) {
	own, going := false, false // going: the section before was one of them
	for _, s := range d.sections {
		if s.table == table {
			own = s.index == i
		}
		switch mine := own && (s.table == table || s.under == table); {
		case mine && going:
			runs[len(runs)-1].to = s.last
		case mine:
			runs = append(runs, span{s.header.from, s.last})
			going = true
		default:
			going = false
		}
	}
	return runs
}
