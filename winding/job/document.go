package job

import (
	"slices"
	"sort"
	"strings"
	"unicode/utf8"

	"slotwright/winding/quantity"
)

// span is a piece of the text, in bytes.
type span struct{ from, to int }

// entry is one key and its value in the text.
type entry struct {
	key, value span   // of the key its last part, without the table before a dot
	line       span   // from the whole key to the end of the value's line
	own        bool   // nothing else is on the line: it is not in an inline table
	typed      string // the value as a person would type it
	field      *Input // nil: no such key
	unit       quantity.Unit
	index      int
}

// section is a table's header and what follows under it.
type section struct {
	table  string
	under  string // the table that it is part of, as trial is for [trial.more]; else ""
	index  int
	header span
	end    int // up to the next header, or the end of the text
	last   int // end of the line of its last key, or of its header
}

// Document is a job file's text and its meaning. It is a value: every edit gives a new one, and the old
// one is the undo.
type Document struct {
	mark     string // a byte order mark, when the file begins with one
	text     string // without it
	job      Job
	problems []Problem
	more     int // how many more problems there are
	entries  map[string]entry
	sections []section
	homes    map[string]home // tables written as name = { } or name.key =
	faults   []fault
	blocks   []span // values of more than one line, of any key
	lines    []int  // where each line begins
	refused  string // why the last edit was not taken
}

const byteOrderMark = "\ufeff"

// Parse reads a job file. It never fails: what cannot be read is in Problems, and everything else is in
// Job.
func Parse(text string) Document {
	d := Document{homes: map[string]home{}}
	d.text = strings.TrimPrefix(text, byteOrderMark)
	d.mark = text[:len(text)-len(d.text)]
	d.lines = append(make([]int, 0, 1+strings.Count(d.text, "\n")), 0)
	for i := range len(d.text) {
		if d.text[i] == '\n' {
			d.lines = append(d.lines, i+1)
		}
	}
	d.entries = make(map[string]entry, min(len(d.lines), len(Fields)))
	r := reader{d: &d, seen: map[string]int{}}
	r.run()
	slices.SortStableFunc(d.problems, func(a, b Problem) int {
		if a.Line != b.Line {
			return a.Line - b.Line
		}
		return a.Column - b.Column
	})
	return d
}

// Text is the file.
func (d Document) Text() string { return d.mark + d.text }

// Job is what the file says, without what could not be read.
func (d Document) Job() Job { return d.job }

// Problems are the parts that cannot be used, in the file's order: the first 50 that were found.
func (d Document) Problems() []Problem { return d.problems }

// More is how many problems there are beyond those in Problems.
func (d Document) More() int { return d.more }

// ProblemAt finds what is wrong with the value at a path.
func (d Document) ProblemAt(path string) (Problem, bool) {
	for _, p := range d.problems {
		if p.Path == path && path != "" {
			return p, true
		}
	}
	return Problem{}, false
}

// Typed is the value at a path as typed, with the unit of its key (without a name where what was typed
// has its own); ok is false when the file does not have it.
func (d Document) Typed(path string) (text string, u quantity.Unit, ok bool) {
	e, ok := d.entries[path]
	if in, known := InputAt(path); known && in.saysItself(e.typed) {
		e.unit.Name = ""
	}
	return e.typed, e.unit, ok
}

// Where is the place of a path in the file: of its value when it has one, else of its table, else 1:1.
func (d Document) Where(path string) (line, column int) {
	if e, ok := d.entries[path]; ok {
		return d.place(e.value.from)
	}
	table, _, _ := strings.Cut(path, ".")
	name, index := splitIndex(table)
	for _, s := range d.sections {
		if s.table == name && s.index == index {
			return d.place(s.header.from)
		}
	}
	if h, ok := d.homes[name]; ok {
		return d.place(max(h.braces.from, lineBegin(d.text, h.last)))
	}
	return 1, 1
}

// place is the line and the column, in characters, of a byte.
func (d Document) place(at int) (line, column int) {
	n := sort.Search(len(d.lines), func(i int) bool { return d.lines[i] > at }) - 1
	return n + 1, utf8.RuneCountInString(d.text[d.lines[n]:min(at, len(d.text))]) + 1
}

// Count is the number of entries of a table that may come many times.
func (d Document) Count(table string) int {
	n := 0
	for _, s := range d.sections {
		if s.table == table {
			n++
		}
	}
	return n
}
