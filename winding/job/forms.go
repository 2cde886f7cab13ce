package job

import (
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// A table that comes once may be written in three ways:
//
//	[machine]                  machine = { slots = 36 }      machine.slots = 36
//	slots = 36
//
// home is where the keys of a table are that is written in one of the latter two.
type home struct {
	braces span   // of machine = { … }; zero for dotted keys
	last   int    // behind the last value in the braces, or at the end of the last dotted line
	prefix string // "machine." before each dotted key, as the file writes it
}

// standing is where a key is: in which entry of which table, under which keys.
type standing struct {
	table string
	index int
	keys  []string
}

// whose finds the table that a key belongs to; ok is false when that is none of ours, which has then
// been reported.
func (r *reader) whose(keys []string, where, value span, inBraces bool) (in standing, ok bool) {
	in = standing{r.table, r.index, keys}
	t, named := TableOf(keys[0])
	if r.table != "" || len(keys) != 2 || !named || !r.known {
		return in, r.known
	}
	in = standing{keys[0], 0, keys[1:]}
	if inBraces {
		h, open := r.d.homes[t.Name]
		if ok = open && h.braces.from < where.from && where.to <= h.braces.to; ok {
			h.last = value.to
			r.d.homes[t.Name] = h
		}
		return in, ok
	}
	return in, r.dotted(t, where, value)
}

// dotted takes in the home of a key with its table before a dot.
func (r *reader) dotted(t *Table, where, value span) bool {
	h, open := r.d.homes[t.Name]
	if !open || h.braces.to > 0 {
		if !r.opens(t, where.from, "keys with a dot") {
			return false
		}
		dot := where.from + strings.LastIndexByte(r.d.text[where.from:where.to], '.') + 1
		h = home{prefix: r.d.text[where.from:dot]}
	}
	h.last = lineEnd(r.d.text, value.to)
	r.d.homes[t.Name] = h
	return true
}

// inline takes in the contents of the braces of key = { … }.
func (r *reader) inline(v *unstable.Node, keys []string, where, braces span) {
	if t, named := TableOf(keys[0]); r.table == "" && r.known && len(keys) == 1 && named && keys[0] != "" {
		if !r.opens(t, where.from, "braces") {
			return
		}
		r.d.homes[t.Name] = home{braces: braces, last: braces.from + 1}
	}
	if !r.known {
		return
	}
	for c := v.Children(); c.Next(); {
		r.keyValue(c.Node(), keys)
	}
}

// opens counts a table written in another form than its header, and refuses it where that is not
// allowed.
func (r *reader) opens(t *Table, at int, form string) bool {
	if t.Many() {
		r.problem(at, "", fmt.Sprintf("%s in %s", t.Name, form), "[["+t.Name+"]] on a line before each, and its keys below", "write it so")
		return false
	}
	if r.seen[t.Name]++; r.seen[t.Name] > 1 {
		r.problem(at, "", fmt.Sprintf("%d times %s", r.seen[t.Name], t.Name), "at most 1", "join them, or put # in front of one")
		return false
	}
	return true
}
