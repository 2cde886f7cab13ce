package job

import (
	"fmt"
	"slices"
	"strings"

	"slotwright/winding/quantity"
)

// Set gives the document in which a path has the value a person typed. A unit typed behind a number
// ("1.5 in") becomes the key's; a bare number keeps the key's unit, or takes the person's choice when
// the file does not have the key yet. What cannot be read is kept as text, and is a problem. An empty
// value clears the path.
//
// An edit that the text does not allow leaves the document as it is, with the reason in Refused;
// nothing but the value at the path ever changes.
func (d Document) Set(path, typed string, choice quantity.Choice) Document {
	f, ok := InputAt(path)
	if !ok {
		return d.refuse("a job has no %s", path)
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
	typed, u = f.ownUnit(f.fromHertz(typed, &d.job), u)
	value := f.toml(typed)
	if !there {
		return d.insert(path, f, f.lineKey(u), value)
	}
	text := d.text[:e.value.from] + value + d.text[e.value.to:]
	if last := f.lineKey(u); f.Kind == Number && u.Suffix != e.unit.Suffix {
		text = d.text[:e.key.from] + last + d.text[e.key.to:e.value.from] + value + d.text[e.value.to:]
	}
	return d.become(text, path)
}

// Refused says why the edit that gave this document changed nothing, "" when it did.
func (d Document) Refused() string { return d.refused }

func (d Document) refuse(format string, args ...any) Document {
	d.refused = fmt.Sprintf(format, args...)
	return d
}

// become is the document with another text, in which nothing but the value at a path may read
// differently than before. That is checked: a text that is not quite TOML can be misunderstood.
func (d Document) become(text, path string) Document {
	n := Parse(d.mark + text)
	for p, e := range d.entries {
		if m, ok := n.entries[p]; p != path && (!ok || m.typed != e.typed || m.unit.Suffix != e.unit.Suffix) {
			return d.refuse("%s cannot be written without changing %s; mend the problems in the file first, with an editor", path, p)
		}
	}
	if len(n.faults) > len(d.faults) || len(n.entries) > len(d.entries)+1 || len(n.problems)+n.more > len(d.problems)+d.more+1 {
		return d.refuse("%s cannot be written here; mend the problems in the file first, with an editor", path)
	}
	return n
}

// open is the fault that swallows everything to the end of the file, if there is one.
func (d Document) open() (line int, mark string, ok bool) {
	for _, f := range d.faults {
		if f.open != "" && f.to == len(d.text) && len(f.open) == 3 {
			line, _ = d.place(f.at)
			return line, f.open, true
		}
	}
	return 0, "", false
}

// append is the document with a block at its end, a blank line before it.
func (d Document) append(block, path string) Document {
	if line, mark, ok := d.open(); ok {
		return d.refuse("the text that begins in line %d is never ended, and this would become part of it; put %s where it ends, with an editor", line, mark)
	}
	return d.become(d.apart()+d.lined(block), path)
}

// apart is the text with an empty line at its end, ready for a block.
func (d Document) apart() string {
	text, line := d.text, d.newline()
	if text != "" && !strings.HasSuffix(text, "\n") {
		text += line
	}
	if text != "" && !strings.HasSuffix(text, "\n\n") && !strings.HasSuffix(text, "\n\r\n") {
		text += line
	}
	return text
}

// newline is how the file ends its lines.
func (d Document) newline() string {
	if n := strings.IndexByte(d.text, '\n'); n > 0 && d.text[n-1] == '\r' {
		return "\r\n"
	}
	return "\n"
}

// lined is new text with its lines ended as the file's are.
func (d Document) lined(text string) string { return strings.ReplaceAll(text, "\n", d.newline()) }

// insert writes a key that does not exist yet: over its placeholder, else at the end of its table, else
// with its table at the end of the file.
func (d Document) insert(path string, f *Input, key, value string) Document {
	line := key + " = " + value
	table, index := splitIndex(strings.TrimSuffix(strings.TrimSuffix(path, f.Name), "."))
	t, _ := TableOf(table)
	if index >= t.Most || (t.Many() && index > d.Count(table)) {
		return d.refuse("there is no %s %d to write to", strings.ToLower(t.Title), index+1)
	}
	at, found := d.region(table, index)
	if !found {
		open, shut := "[", "]"
		if t.Many() {
			open, shut = "[[", "]]"
		}
		return d.append(open+table+shut+"\n"+line+"\n", path)
	}
	if at.braces.to > 0 {
		return d.become(d.intoBraces(at, line), path)
	}
	line = at.prefix + line
	if broken, ok := d.brokenLine(at, f); ok {
		return d.become(d.text[:broken.from]+line+d.text[broken.to:], path)
	}
	if m := d.placeholder(at, f); m != nil {
		if m[4] >= 0 {
			line += " " + d.text[at.from+m[4]:at.from+m[5]]
		}
		return d.become(d.text[:at.from+m[2]]+line+d.text[at.from+m[3]:], path)
	}
	if at.last == 0 { // the top of a file without keys
		return d.become(line+d.newline()+d.text, path)
	}
	return d.become(d.text[:at.last]+d.newline()+line+d.text[at.last:], path)
}

// intoBraces is the text with one more key = value in an inline table.
func (d Document) intoBraces(h site, line string) string {
	if h.last == h.braces.from+1 {
		return d.text[:h.last] + " " + line + " " + strings.TrimLeft(d.text[h.last:], " \t")
	}
	return d.text[:h.last] + ", " + line + d.text[h.last:]
}

// site is where a table's keys are.
type site struct {
	home
	from, end int
}

// region finds where a table's keys are, and the end of its last line.
func (d Document) region(table string, index int) (at site, found bool) {
	for _, s := range d.sections {
		if s.table == table && s.index == index {
			return site{home{last: s.last}, min(nextLine(d.text, s.header.to), s.end), s.end}, true
		}
	}
	top := len(d.text)
	if len(d.sections) > 0 {
		top = d.sections[0].header.from
	}
	if h, ok := d.homes[table]; ok && index == 0 {
		return site{h, 0, top}, true
	}
	if table != "" {
		return site{}, false
	}
	last := 0
	for _, e := range d.entries {
		if e.field.Table == "" && e.own {
			last = max(last, e.line.to)
		}
	}
	return site{home{last: last}, 0, top}, true
}

// brokenLine is the piece that gives a key something that is not TOML.
func (d Document) brokenLine(at site, f *Input) (span, bool) {
	begins := unreadable(at.prefix, f.Keys())
	for _, b := range d.faults {
		if b.from >= at.from && b.from < at.end && len(b.open) < 3 && begins.MatchString(d.text[b.from:b.to]) {
			return b.span, true
		}
	}
	return span{}, false
}

// maxPlaceholders is how many possible placeholder lines of one key are examined.
const maxPlaceholders = 100

// placeholder finds the first line left for a key: the extent of the whole and of its parts, from where
// the table's keys are; nil when there is none.
func (d Document) placeholder(at site, f *Input) []int {
	for _, m := range placeholder(at.prefix, f.Keys()).FindAllStringSubmatchIndex(d.text[at.from:at.end], maxPlaceholders) {
		if !d.inside(at.from + m[0]) {
			return m
		}
	}
	return nil
}

// inside reports whether a byte is in a piece that is not TOML, or in a multi-line value, where what
// looks like a placeholder is none.
func (d Document) inside(at int) bool {
	in := func(s span) bool { return at >= s.from && at < s.to }
	return slices.ContainsFunc(d.blocks, in) || slices.ContainsFunc(d.faults, func(f fault) bool { return in(f.span) })
}

// Clear gives the document without a path. Its line stays as a placeholder, with the comment that was
// on it.
func (d Document) Clear(path string) Document {
	e, ok := d.entries[path]
	if !ok {
		return d
	}
	begin := lineBegin(d.text, e.line.from)
	if !e.own || strings.TrimSpace(d.text[begin:e.line.from]) != "" {
		// Inside an inline table: moving its keys out first would move comments; an empty text is read
		// as not given.
		return d.become(d.text[:e.value.from]+`""`+d.text[e.value.to:], path)
	}
	after := d.text[e.value.to:e.line.to]
	return d.become(d.text[:begin]+"# "+d.text[e.line.from:e.key.to]+" ="+strings.TrimRight(after, " \t")+d.text[e.line.to:], path)
}
