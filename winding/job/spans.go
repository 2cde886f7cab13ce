package job

import (
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// keyParts is the key of an expression, split at its dots; where all of it is, and where its last part
// is.
func (r *reader) keyParts(e *unstable.Node) (parts []string, where, last span) {
	where.from = -1
	for it := e.Key(); it.Next(); {
		n := it.Node()
		parts = append(parts, string(n.Data))
		last = span{r.base + int(n.Raw.Offset), r.base + int(n.Raw.Offset+n.Raw.Length)}
		if where.from < 0 {
			where.from = last.from
		}
	}
	where.to = last.to
	return parts, where, last
}

// valueSpan is where the value of a key is.
func (r *reader) valueSpan(e *unstable.Node, key span) span {
	text, from := r.d.text, key.to
	for from < len(text) && text[from] != '=' {
		from++
	}
	from++
	for from < len(text) && (text[from] == ' ' || text[from] == '\t') {
		from++
	}
	to := r.base + int(e.Raw.Offset+e.Raw.Length)
	if to <= from {
		to = lineEnd(text, from)
	}
	for to > from && strings.IndexByte(" \t\r\n", text[to-1]) >= 0 {
		to--
	}
	return span{min(from, len(text)), to}
}

// typedText is a value as a person would type it in a form.
func typedText(v *unstable.Node, text string, s span) string {
	switch v.Kind {
	case unstable.String:
		return string(v.Data)
	case unstable.Integer, unstable.Float:
		return strings.ReplaceAll(text[s.from:s.to], "_", "")
	case unstable.Array:
		return strings.Trim(text[s.from:s.to], "[] \r\n\t")
	default:
		return text[s.from:s.to]
	}
}

// lineBegin is where the line of a byte begins.
func lineBegin(text string, at int) int {
	return strings.LastIndexByte(text[:min(at, len(text))], '\n') + 1
}

// lineEnd is the end of the line of a byte, before its newline (\n or \r\n).
func lineEnd(text string, at int) int {
	at = min(at, len(text))
	n := strings.IndexByte(text[at:], '\n')
	if n < 0 {
		return len(text)
	}
	if n > 0 && text[at+n-1] == '\r' {
		n--
	}
	return at + n
}

// nextLine is where the line after that of a byte begins.
func nextLine(text string, at int) int {
	at = min(at, len(text))
	if n := strings.IndexByte(text[at:], '\n'); n >= 0 {
		return at + n + 1
	}
	return len(text)
}
