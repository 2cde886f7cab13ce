package job

import (
	"regexp"
	"strconv"
	"strings"

	"slotwright/winding/quantity"
)

// Set gives the document in which a path has the value a person typed. A unit typed
// behind a number ("1.5 in") becomes the key's; a bare number keeps the key's unit,
// or takes the person's choice when the file does not have the key yet. What cannot
// be read is kept as text, and is a problem. An empty value clears the path.
func (d Document) Set(path, typed string, choice quantity.Choice) Document {
	f, ok := InputAt(path)
	if !ok {
		return d
	}
	if strings.TrimSpace(typed) == "" {
		return d.Clear(path)
	}
	if f.Kind != Text { // the blank between two words comes before the second word
		typed = strings.TrimSpace(typed)
	}
	e, there := d.entries[path]
	u := choice.For(f.Dim)
	if there {
		u = e.unit
	}
	typed, u = f.ownUnit(typed, u)
	value := f.toml(typed)
	if !there {
		return d.insert(path, f, f.lineKey(u), value)
	}
	text := d.text[:e.value.from] + value + d.text[e.value.to:]
	if last := f.lineKey(u); f.Kind == Number && u.Suffix != e.unit.Suffix {
		text = d.text[:e.key.from] + last + d.text[e.key.to:e.value.from] + value + d.text[e.value.to:]
	}
	return Parse(text)
}

// lineKey is the key to write, with its unit.
func (f *Input) lineKey(u quantity.Unit) string {
	if f.Kind != Number {
		return f.Name
	}
	return f.key(u)
}

// ownUnit takes a known unit off a typed number and returns it.
func (f *Input) ownUnit(typed string, u quantity.Unit) (string, quantity.Unit) {
	if f.Kind != Number && f.Kind != Whole {
		return typed, u
	}
	q, err := parseQuantity(typed)
	if err != nil || q.unit == "" {
		return typed, u
	}
	said, ok := f.Dim.Typed(q.unit)
	if !ok {
		return typed, u
	}
	m := quantityForm.FindStringSubmatch(plainUnit.Replace(typed))
	bare := m[1] + m[2]
	if m[4] != "" {
		bare += " ±" + m[4]
		if strings.TrimSpace(m[5]) == "%" {
			bare += "%"
		}
	}
	return bare, said
}

var plainNumber = regexp.MustCompile(`^[-+]?(0|[1-9][0-9]*)(\.[0-9]+)?$`)

// toml is a typed value as the file writes it: numbers and lists of them bare, with
// a decimal point, everything else in quotes.
func (f *Input) toml(typed string) string {
	switch f.Kind {
	case Number, Whole:
		if n := strings.Replace(typed, ",", ".", 1); plainNumber.MatchString(n) {
			if _, err := parseNumber(typed); err == nil {
				return n
			}
		}
	case List:
		if _, bad := f.list(typed); bad == nil {
			return "[" + strings.Trim(typed, "[] ") + "]"
		}
	}
	return basicString(typed)
}

// basicString is text in TOML's double quotes. strconv.Quote writes \x and \a, which
// TOML does not know, so control characters are written as \u here.
func basicString(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteString(`\t`)
		case r < ' ' || r == 0x7f:
			b.WriteString(`\u` + strconv.FormatInt(0x10000+int64(r), 16)[1:])
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// placeholder is a key left empty in a comment: "# bore_mm =   # a note".
func placeholder(keys []string) *regexp.Regexp {
	return regexp.MustCompile(`(?m)^#[ \t]*(?:` + anyOf(keys) + `)[ \t]*=[ \t]*(#[^\n]*)?$`)
}

// brokenAt reports whether the line that a byte is in could not be read.
func (d Document) brokenAt(at int) bool {
	line, _ := d.place(at)
	for _, p := range d.problems {
		if p.Line == line && p.Path == "" {
			return true
		}
	}
	return false
}

// unreadable is a line that gives a key something that is not TOML.
func unreadable(keys []string) *regexp.Regexp {
	return regexp.MustCompile(`(?m)^[ \t]*(?:` + anyOf(keys) + `)[ \t]*=[^\n]*$`)
}

func anyOf(keys []string) string {
	quoted := make([]string, len(keys))
	for i, k := range keys {
		quoted[i] = regexp.QuoteMeta(k)
	}
	return strings.Join(quoted, "|")
}

// insert writes a key that is not there yet: over its placeholder, else at the end of
// its table, else with its table at the end of the file.
func (d Document) insert(path string, f *Input, key, value string) Document {
	line := key + " = " + value
	table, index := splitIndex(strings.TrimSuffix(strings.TrimSuffix(path, f.Name), "."))
	from, end, last, found := d.region(table, index)
	if !found {
		if t, ok := TableOf(table); ok && t.Many() {
			return Parse(d.withBlock("[[" + table + "]]\n" + line + "\n"))
		}
		return Parse(d.withBlock("[" + table + "]\n" + line + "\n"))
	}
	// A line that begins with the key and is not an entry could not be read: mend it.
	if m := unreadable(f.Keys()).FindStringIndex(d.text[from:end]); m != nil && d.brokenAt(from+m[0]) {
		return Parse(d.text[:from+m[0]] + line + d.text[from+m[1]:])
	}
	if m := placeholder(f.Keys()).FindStringSubmatchIndex(d.text[from:end]); m != nil {
		if m[2] >= 0 {
			line += " " + d.text[from+m[2]:from+m[3]]
		}
		return Parse(d.text[:from+m[0]] + line + d.text[from+m[1]:])
	}
	if last == 0 { // the top of a file without keys
		return Parse(line + "\n" + d.text)
	}
	return Parse(d.text[:last] + "\n" + line + d.text[last:])
}

// region is where a table's keys stand, and the end of its last line.
func (d Document) region(table string, index int) (from, end, last int, found bool) {
	for _, s := range d.sections {
		if s.table == table && s.index == index {
			return min(lineEnd(d.text, s.header.to)+1, s.end), s.end, s.last, true
		}
	}
	if table != "" {
		return 0, 0, 0, false
	}
	end = len(d.text)
	if len(d.sections) > 0 {
		end = d.sections[0].header.from
	}
	for _, e := range d.entries {
		if e.field != nil && e.field.Table == "" {
			last = max(last, lineEnd(d.text, e.value.to))
		}
	}
	return 0, end, last, true
}

// withBlock is the text with a table added at its end, a blank line before it.
func (d Document) withBlock(block string) string {
	text := strings.TrimRight(d.text, "\n")
	if text != "" {
		text += "\n\n"
	}
	return text + block
}

// Clear gives the document that does not say a path any more. Its line stays as a
// placeholder, with the comment that stood on it.
func (d Document) Clear(path string) Document {
	e, ok := d.entries[path]
	if !ok {
		return d
	}
	begin := e.key.from
	for begin > 0 && d.text[begin-1] != '\n' {
		begin--
	}
	after := d.text[e.value.to:lineEnd(d.text, e.value.to)]
	if strings.TrimSpace(d.text[begin:e.key.from]) != "" || strings.ContainsAny(strings.TrimSpace(after), "},") {
		// Inside an inline table: write its keys out first would move comments; an
		// empty text is read as not said.
		return Parse(d.text[:e.value.from] + `""` + d.text[e.value.to:])
	}
	return Parse(d.text[:begin] + "# " + d.text[e.key.from:e.key.to] + " =" + strings.TrimRight(after, " \t\r") + d.text[e.value.to+len(after):])
}

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
	if at < 0 {
		return Parse(d.withBlock(block))
	}
	return Parse(d.text[:at] + "\n\n" + strings.TrimRight(block, "\n") + d.text[at:])
}

// Remove gives the document without entry i of a table that comes many times.
// Comments after its last key belong to what follows and stay.
func (d Document) Remove(table string, i int) Document {
	for _, s := range d.sections {
		if s.table == table && s.index == i {
			rest := strings.TrimLeft(d.text[s.last:], "\n")
			before := d.text[:s.header.from]
			if rest == "" {
				return Parse(strings.TrimRight(before, "\n") + "\n")
			}
			return Parse(before + rest)
		}
	}
	return d
}
