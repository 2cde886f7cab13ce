package job

import (
	"errors"
	"fmt"
	"sort"
	"strings"

	"slotwright/winding/text"
	"slotwright/wiretable"

	"github.com/pelletier/go-toml/v2/unstable"
)

// maxProblems is how many problems are reported one by one; the rest are only counted. Someone with
// more reads the first ones and corrects what they have in common.
const maxProblems = 50

// noTable is the name of a table whose name cannot be read.
const noTable = "["

// reader walks the text once with the TOML parser, which gives the place of every key and value, and
// then puts the values into the job. Where the text is not TOML it continues behind the bad piece.
type reader struct {
	d     *Document
	data  []byte // the text
	p     unstable.Parser
	base  int // where the parser's text begins in ours
	table string
	index int
	known bool           // the table we are in is one of ours
	seen  map[string]int // how often each table came
	order []string       // paths in the order of the file
	said  []span         // every key with its value, also unknown and repeated ones
}

func (r *reader) run() {
	r.known, r.data = true, []byte(r.d.text)
	for at := 0; at < len(r.d.text); {
		at = r.walk(at)
	}
	r.closeSections()
	for i := range Tables {
		if t := &Tables[i]; t.grow != nil {
			t.grow(&r.d.job, r.seen[t.Name])
		}
	}
	for _, path := range r.order {
		r.put(r.d.entries[path], path)
	}
	r.loneLengths()
	r.warmAtRest()
}

// walk reads from a byte on until the syntax fails, and returns where to continue: behind what is
// wrong, or at the end.
func (r *reader) walk(from int) int {
	p := &r.p
	p.Reset(r.data[from:])
	r.base = from
	done := from // behind the last expression that could be read
	for p.NextExpression() {
		switch e := p.Expression(); e.Kind {
		case unstable.Table, unstable.ArrayTable:
			done = nextLine(r.d.text, r.header(e))
		case unstable.KeyValue:
			value := r.keyValue(e, nil)
			r.said = append(r.said, span{value.from, lineEnd(r.d.text, value.to)})
			done = nextLine(r.d.text, value.to)
		}
	}
	err := p.Error()
	if err == nil {
		return len(r.d.text)
	}
	at := len(r.data) - from
	var bad *unstable.ParserError
	if errors.As(err, &bad) && len(bad.Highlight) > 0 {
		at = int(p.Range(bad.Highlight).Offset)
	}
	f := faultAt(r.d.text, r.firstUnread(done, from+at), from+at, len(r.d.faults) < maxProblems)
	r.syntax(f, err)
	r.d.faults = append(r.d.faults, f)
	if strings.HasPrefix(strings.TrimLeft(r.d.text[f.from:f.to], " \t"), "[") {
		// A table whose name cannot be read: it is not known whose keys follow.
		r.table, r.known = noTable, false
		r.d.sections = append(r.d.sections, section{table: noTable, header: f.span})
	}
	return nextLine(r.d.text, f.to)
}

// firstUnread is where the expression begins in which the parser gave up: at the first line behind the
// last good one that is neither empty nor a comment, unless it is the comment that is wrong.
func (r *reader) firstUnread(done, gaveUp int) int {
	text := r.d.text
	for done < len(text) {
		end := lineEnd(text, done)
		line := strings.TrimLeft(text[done:end], " \t")
		if line != "" && (line[0] != '#' || gaveUp <= end) {
			return end - len(line)
		}
		next := nextLine(text, done)
		if next >= len(text) {
			break
		}
		done = next
	}
	return min(done, len(text))
}

// header takes in a [table] or [[table]] line and returns where its name ends.
func (r *reader) header(e *unstable.Node) (end int) {
	parts, where, _ := r.keyParts(e)
	name := strings.Join(parts, ".")
	r.table, r.index, r.known = name, r.seen[name], false
	r.seen[name]++
	s := section{table: name, index: r.index, header: span{lineBegin(r.d.text, where.from), where.to}}
	if len(parts) > 1 {
		s.under = parts[0]
	}
	r.d.sections = append(r.d.sections, s)
	t, ok := TableOf(name)
	switch {
	case !ok || name == "" || len(parts) > 1:
		fix := "leave it out, or put # in front of its lines"
		if near, ok := nearest(name, tableNames()); ok {
			fix = fmt.Sprintf("did you mean [%s]?", near)
		}
		r.problem(where.from, "", "["+shorten(name, 40)+"]", "a table of a job file", fix)
	case t.Many() && e.Kind == unstable.Table:
		r.known = true
		r.problem(where.from, "", "["+name+"]", "[["+name+"]], because there may be several", "write two brackets on each side")
	case !t.Many() && e.Kind == unstable.ArrayTable:
		r.known = r.index == 0
		r.problem(where.from, "", "[["+name+"]]", "["+name+"], because there is one", "write one bracket on each side")
	case r.index >= t.Most:
		r.seen[name]--
		r.problem(where.from, "", fmt.Sprintf("%d times [%s]", r.index+1, name), fmt.Sprintf("at most %d", t.Most), "join them, or put # in front of one")
	default:
		r.known = true
	}
	return where.to
}

func tableNames() []string {
	names := []string{}
	for _, t := range Tables[1:] {
		names = append(names, t.Name)
	}
	return names
}

// keyValue takes in key = value and returns where the value is; outer is the keys of the inline tables
// around it.
func (r *reader) keyValue(e *unstable.Node, outer []string) span {
	parts, where, last := r.keyParts(e)
	v := e.Value()
	keys := append(outer[:len(outer):len(outer)], parts...)
	value := r.valueSpan(e, where)
	if strings.IndexByte(r.d.text[value.from:value.to], '\n') >= 0 {
		r.d.blocks = append(r.d.blocks, value)
	}
	if v.Kind == unstable.InlineTable {
		r.inline(v, keys, where, value)
		return value
	}
	in, ok := r.whose(keys, where, value, len(outer) > 0)
	if !ok {
		return value // the table itself is the problem
	}
	key := strings.Join(in.keys, ".")
	k, ok := byKey[join(in.table, key)]
	if !ok || len(in.keys) > 1 || strings.Contains(key, ".") {
		r.unknown(where.from, in.table, key)
		return value
	}
	ent := entry{
		key: last, value: value, typed: typedText(v, r.d.text, value), index: in.index, field: k.field, unit: *k.unit,
		own: len(outer) == 0, line: span{from: where.from},
	}
	r.enter(ent, key, v)
	return value
}

// enter takes in an entry, unless its key has come before.
func (r *reader) enter(ent entry, key string, v *unstable.Node) {
	path := ent.field.PathAt(ent.index)
	if before, twice := r.d.entries[path]; twice {
		if r.full() {
			return
		}
		line, _ := r.d.place(before.key.from)
		r.problem(ent.line.from, path, quote(key)+" again", fmt.Sprintf("it once; line %d has it already", line), "keep one of them")
		return
	}
	ent.line.to = lineEnd(r.d.text, ent.value.to)
	if bad := wrongType(ent.field, v); bad != "" {
		r.problem(ent.value.from, path, quote(ent.typed), ent.field.Range(ent.unit), bad)
	} else {
		r.order = append(r.order, path)
	}
	r.d.entries[path] = ent
}

// wrongType says what is wrong with the kind of a value, "" when nothing is.
func wrongType(f *Input, v *unstable.Node) string {
	switch v.Kind {
	case unstable.String, unstable.Integer:
		return ""
	case unstable.Float:
		if f.Kind == Text || f.Kind == Wire || f.Kind == Word {
			return "put it in quotes"
		}
		return ""
	case unstable.Array:
		if f.Kind == List {
			return ""
		}
		return "one value, without brackets"
	default:
		return "this kind of value has no place here"
	}
}

// unknown reports a key that no table has, and which was probably meant.
func (r *reader) unknown(at int, table, key string) {
	if r.full() {
		return
	}
	if t, ok := TableOf(key); ok && table == "" && key != "" {
		form := "[" + key + "] on a line, and its keys below"
		if t.Many() {
			form = "[[" + key + "]] on a line before each, and its keys below"
		}
		r.problem(at, "", quote(key), form, "write it so")
		return
	}
	var keys []string
	for _, f := range InputsOf(table) {
		if f.Name == key || (f.Kind == Number && strings.HasPrefix(key, f.Name+"_")) {
			r.problem(at, "", quote(key), "its unit in the key", "write "+strings.Join(f.Keys(), " or "))
			return
		}
		keys = append(keys, f.Keys()...)
	}
	fix := "leave it out, or put # in front to keep it as a note"
	if near, ok := nearest(key, keys); ok {
		fix = fmt.Sprintf("did you mean %s?", near)
	}
	for i := range Tables {
		if k, ok := byKey[join(Tables[i].Name, key)]; ok && Tables[i].Name != table {
			fix = fmt.Sprintf("%s belongs under [%s]", k.field.Name, Tables[i].Name)
			break
		}
	}
	r.problem(at, "", quote(key), "a key of this table", fix)
}

// put stores the value of an entry in the job. An empty text counts as not given.
func (r *reader) put(e entry, path string) {
	if strings.TrimSpace(e.typed) == "" {
		return
	}
	if bad := e.field.store(&r.d.job, e.index, e.typed, e.unit); bad != nil {
		r.problem(e.value.from, path, bad.read, bad.expected, bad.fix)
		return
	}
	if e.field.Kind == Wire && wiretable.BareNumber(e.typed) {
		r.d.job.BareGauges = append(r.d.job.BareGauges, path)
	}
}

// full counts one more problem once the limit is reached.
func (r *reader) full() bool {
	if len(r.d.problems) < maxProblems {
		return false
	}
	r.d.more++
	return true
}

func (r *reader) problem(at int, path, read, expected, fix string) {
	if r.full() {
		return
	}
	line, column := r.d.place(at)
	r.d.problems = append(r.d.problems, Problem{line, column, path, told(read), told(expected), told(fix)})
}

// told is part of a problem's sentence, safe to show and of limited length.
func told(s string) string { return shorten(text.Visible(s), 240) }

// closeSections finds where each table ends, and its last key, or line that may be one.
func (r *reader) closeSections() {
	sections := r.d.sections
	for i := range sections {
		sections[i].end = len(r.d.text)
		if i+1 < len(sections) {
			sections[i].end = sections[i+1].header.from
		}
		sections[i].last = lineEnd(r.d.text, sections[i].header.to)
	}
	reach := func(from, to int) {
		after := sort.Search(len(sections), func(i int) bool { return sections[i].header.from > from })
		if after > 0 {
			s := &sections[after-1]
			s.last = max(s.last, to)
		}
	}
	for _, s := range r.said {
		reach(s.from, s.to)
	}
	for _, f := range r.d.faults {
		if f.to < len(r.d.text) {
			reach(f.from, f.to)
		}
	}
}
