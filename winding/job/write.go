package job

import (
	"regexp"
	"strings"
	"sync"

	"slotwright/winding/quantity"
	"slotwright/winding/text"
)

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
	if s, two := f.sidesOf(typed); two {
		return s.alone(u)
	}
	if c, cable := f.cablesOf(typed); cable {
		return c.alone(u)
	}
	if p, many := f.pairsOf(typed); many {
		if said, ok := f.Dim.Typed(p.unit); ok && p.unit != "" {
			return p.list, said
		}
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
	m := quantityForm().FindStringSubmatch(plainUnit.Replace(typed))
	bare := m[1] + m[2]
	if m[4] != "" {
		bare += " ±" + m[4]
		if strings.TrimSpace(m[5]) == "%" {
			bare += "%"
		}
	}
	return bare, said
}

// Patterns are compiled when first wanted: many starts want none.
var (
	plainNumber = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[-+]?(0|[1-9][0-9]*)(\.[0-9]+)?$`) })
	plainList   = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`^(0|[1-9][0-9]*)( *, *(0|[1-9][0-9]*))* *,?$`)
	})
)

// toml is a typed value as the file writes it: numbers and lists of them bare, with a decimal point,
// everything else in quotes.
func (f *Input) toml(typed string) string {
	switch f.Kind {
	case Number, Whole:
		if n := strings.Replace(typed, ",", ".", 1); plainNumber().MatchString(n) {
			if _, err := parseNumber(typed); err == nil {
				return n
			}
		}
	case List:
		if bare := strings.Trim(typed, "[] "); plainList().MatchString(bare) {
			return "[" + bare + "]"
		}
	}
	return basicString(typed)
}

// basicString is text in TOML's double quotes. strconv.Quote writes \x and \a, which TOML does not
// have. What steers a terminal is written as \u, so that any program can show the file.
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
		case text.Steers(r):
			b.WriteString(text.Escaped(r))
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// placeholder matches a key left empty in a comment: "# bore_mm = # a note". Its groups are the whole,
// and the note.
func placeholder(prefix string, keys []string) *regexp.Regexp {
	return regexp.MustCompile(`(?m)^(#[ \t]*` + regexp.QuoteMeta(prefix) + `(?:` + anyOf(keys) + `)[ \t]*=[ \t]*(#[^\r\n]*)?)\r?$`)
}

// unreadable matches the beginning of a piece that gives a key something that is not TOML.
func unreadable(prefix string, keys []string) *regexp.Regexp {
	return regexp.MustCompile(`^[ \t]*` + regexp.QuoteMeta(prefix) + `(?:` + anyOf(keys) + `)[ \t]*=`)
}

func anyOf(keys []string) string {
	quoted := make([]string, len(keys))
	for i, k := range keys {
		quoted[i] = regexp.QuoteMeta(k)
	}
	return strings.Join(quoted, "|")
}
