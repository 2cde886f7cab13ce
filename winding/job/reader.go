package job

import (
	"errors"
	"fmt"
	"sort"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// maxSyntaxErrors is where reading stops: a file with more is not a job file.
const maxSyntaxErrors = 20

// reader walks the text once with the TOML parser, which gives the place of every
// key and value, and then puts the values into the job.
type reader struct {
	d      *Document
	table  string
	index  int
	known  bool           // the table we are in is one of ours
	seen   map[string]int // how often a table came
	order  []string       // paths in the order of the file
	broken []Problem      // lines that are not TOML
}

func (r *reader) run() {
	data := []byte(r.d.text)
	r.known = true
	for range maxSyntaxErrors {
		at, failed := r.walk(data)
		if !failed {
			break
		}
		data = blankLine(data, at)
		r.restart()
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
	r.d.problems = append(r.d.problems, r.broken...)
}

// restart forgets everything but the lines that are not TOML: the text is read again
// without them.
func (r *reader) restart() {
	r.d.entries, r.d.sections, r.d.problems, r.order = map[string]entry{}, nil, nil, nil
	r.seen, r.table, r.index, r.known = map[string]int{}, "", 0, true
}

// walk reads the whole text; when the syntax fails it notes the problem and returns
// where.
func (r *reader) walk(data []byte) (at int, failed bool) {
	p := unstable.Parser{}
	p.Reset(data)
	for p.NextExpression() {
		switch e := p.Expression(); e.Kind {
		case unstable.Table, unstable.ArrayTable:
			r.header(&p, e)
		case unstable.KeyValue:
			r.keyValue(&p, e, nil)
		}
	}
	err := p.Error()
	if err == nil {
		return 0, false
	}
	var bad *unstable.ParserError
	if errors.As(err, &bad) && len(bad.Highlight) > 0 {
		at = int(p.Range(bad.Highlight).Offset)
	} else {
		at = len(data)
	}
	at = min(at, len(r.d.text))
	r.syntax(at, err)
	return at, true
}

// syntax notes a line that is not TOML, in words for somebody who never heard of it.
func (r *reader) syntax(at int, err error) {
	line, column := r.d.place(at)
	text := strings.TrimRight(r.lineText(line), " \t\r")
	p := Problem{Line: line, Column: column, Read: quote(text), Expected: "key = value", Fix: ""}
	value := strings.TrimSpace(text[strings.IndexByte(text, '=')+1:])
	switch {
	case strings.HasPrefix(strings.TrimSpace(text), "[") && !strings.Contains(text, "]"):
		p.Expected, p.Fix = "a table name in brackets", "write "+strings.TrimSpace(text)+"]"
	case !strings.Contains(text, "="):
		p.Fix = "put # in front if it is a note"
	case value == "" || strings.HasPrefix(value, "#"):
		p.Expected, p.Fix = "a value after =", "write the value, or put # in front of the line to leave it empty"
	case commaNumber(value):
		p.Expected, p.Fix = "a number with a decimal point", "write "+strings.Replace(strings.Fields(value)[0], ",", ".", 1)
	case strings.Count(value, `"`) == 1:
		p.Expected, p.Fix = "a text that ends with a quote", `put " at both ends`
	case !strings.ContainsAny(value[:1], `"'[{0123456789+-.`):
		p.Expected, p.Fix = "a number, or text in quotes", fmt.Sprintf("write \"%s\"", strings.Fields(value)[0])
	default:
		p.Fix = "text and numbers with a unit or a mark (~ ±) go in quotes; the reader says: " + err.Error()
	}
	r.broken = append(r.broken, p)
}

// commaNumber reports whether a value begins with a number that has a decimal comma.
func commaNumber(value string) bool {
	before, after, ok := strings.Cut(value, ",")
	if !ok || before == "" || after == "" {
		return false
	}
	_, err := strconv.ParseFloat(before, 64)
	return err == nil && after[0] >= '0' && after[0] <= '9'
}

func (r *reader) lineText(line int) string {
	from := r.d.lines[line-1]
	to := len(r.d.text)
	if line < len(r.d.lines) {
		to = r.d.lines[line] - 1
	}
	return r.d.text[from:max(from, to)]
}

// blankLine overwrites the line that holds a byte, so that every place stays.
func blankLine(data []byte, at int) []byte {
	at = min(at, len(data)-1)
	if at > 0 && data[at] == '\n' {
		at-- // the parser points at the end of the line it could not read
	}
	from, to := at, at
	for from > 0 && data[from-1] != '\n' {
		from--
	}
	for to < len(data) && data[to] != '\n' {
		to++
	}
	out := append([]byte{}, data...)
	for i := from; i < to; i++ {
		out[i] = ' '
	}
	return out
}

// header takes in a [table] or [[table]] line.
func (r *reader) header(p *unstable.Parser, e *unstable.Node) {
	name, where := keyText(p, e)
	r.table, r.index, r.known = name, r.seen[name], false
	r.seen[name]++
	begin := where.from
	for begin > 0 && r.d.text[begin-1] != '\n' {
		begin--
	}
	r.d.sections = append(r.d.sections, section{table: name, index: r.index, header: span{begin, where.to}})
	t, ok := TableOf(name)
	switch {
	case !ok || name == "":
		fix := "leave it out, or put # in front of its lines"
		if near, ok := nearest(name, tableNames()); ok {
			fix = fmt.Sprintf("did you mean [%s]?", near)
		}
		r.problem(where.from, "", "["+name+"]", "a table of a job file", fix)
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
}

func tableNames() []string {
	names := []string{}
	for _, t := range Tables[1:] {
		names = append(names, t.Name)
	}
	return names
}

// keyValue takes in key = value; outer is the keys of the inline tables around it.
func (r *reader) keyValue(p *unstable.Parser, e *unstable.Node, outer []string) {
	name, where := keyText(p, e)
	v := e.Value()
	keys := append(outer, strings.Split(name, ".")...)
	if v.Kind == unstable.InlineTable {
		for c := v.Children(); c.Next(); {
			r.keyValue(p, c.Node(), keys)
		}
		return
	}
	table, key := r.table, strings.Join(keys, ".")
	known := r.known
	index := r.index
	if table == "" && len(keys) == 2 {
		table, key, index = keys[0], keys[1], 0
		_, known = TableOf(table)
		r.seen[table] = max(r.seen[table], 1)
	}
	if !known {
		return // the table itself is the problem
	}
	ent := entry{key: where, index: index, value: valueSpan(r.d.text, e, where), typed: typedText(v, r.d.text, valueSpan(r.d.text, e, where))}
	k, ok := byKey[join(table, key)]
	if !ok {
		r.unknown(where.from, table, key)
		return
	}
	ent.field, ent.unit = k.field, k.unit
	path := k.field.PathAt(index)
	if before, twice := r.d.entries[path]; twice {
		line, _ := r.d.place(before.key.from)
		r.problem(where.from, path, quote(key)+" again", fmt.Sprintf("it once; line %d has it already", line), "keep one of them")
		return
	}
	if bad := wrongType(k.field, v); bad != "" {
		r.problem(ent.value.from, path, quote(ent.typed), k.field.Range(k.unit), bad)
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

// unknown notes a key that no table has, and which was meant.
func (r *reader) unknown(at int, table, key string) {
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

// put stores the value of an entry in the job. An empty text says nothing.
func (r *reader) put(e entry, path string) {
	if strings.TrimSpace(e.typed) == "" {
		return
	}
	if bad := e.field.store(&r.d.job, e.index, e.typed, e.unit); bad != nil {
		r.problem(e.value.from, path, bad.read, bad.expected, bad.fix)
	}
}

func (r *reader) problem(at int, path, read, expected, fix string) {
	line, column := r.d.place(at)
	r.d.problems = append(r.d.problems, Problem{line, column, path, read, expected, fix})
}

// closeSections finds where each table ends, and its last key.
func (r *reader) closeSections() {
	sections := r.d.sections
	for i := range sections {
		sections[i].end = len(r.d.text)
		if i+1 < len(sections) {
			sections[i].end = sections[i+1].header.from
		}
		sections[i].last = lineEnd(r.d.text, sections[i].header.to)
	}
	for _, e := range r.d.entries {
		after := sort.Search(len(sections), func(i int) bool { return sections[i].header.from > e.key.from })
		if after > 0 {
			s := &sections[after-1]
			s.last = max(s.last, lineEnd(r.d.text, e.value.to))
		}
	}
}
