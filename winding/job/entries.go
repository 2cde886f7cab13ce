package job

import "strings"

// Add gives the document with one more entry of a table that comes many times: with
// the values of entry from, or empty when from is less than 0. It is d when there are
// as many as there may be.
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
	for _, s := range d.sections {
		if s.table == table {
			at = s.last
		}
	}
	if line, mark, open := d.open(); open {
		return d.refuse("the text that begins in line %d is never ended, and this would become part of it; put %s where it ends, with an editor", line, mark)
	}
	if at < 0 {
		return Parse(d.mark + d.apart() + d.lined(block))
	}
	return Parse(d.mark + d.text[:at] + d.lined("\n\n"+strings.TrimRight(block, "\n")) + d.text[at:])
}

// Remove gives the document without entry i of a table that comes many times.
// Comments after its last key belong to what follows and stay.
func (d Document) Remove(table string, i int) Document {
	for k, s := range d.sections {
		if s.table != table || s.index != i {
			continue
		}
		if line, mark, open := d.open(); open && k == len(d.sections)-1 {
			return d.refuse("the text that begins in line %d is never ended, and is not to be lost; put %s where it ends, with an editor", line, mark)
		}
		rest := strings.TrimLeft(d.text[s.last:], "\r\n")
		before := d.text[:s.header.from]
		if rest == "" {
			before = strings.TrimRight(before, "\r\n") + d.newline()
		}
		return Parse(d.mark + before + rest)
	}
	return d
}
