package job

import (
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// keyText is the key of an expression with dots between its parts, and its place.
func keyText(p *unstable.Parser, e *unstable.Node) (string, span) {
	var parts []string
	where := span{-1, 0}
	for it := e.Key(); it.Next(); {
		n := it.Node()
		parts = append(parts, string(n.Data))
		if where.from < 0 {
			where.from = int(n.Raw.Offset)
		}
		where.to = int(n.Raw.Offset + n.Raw.Length)
	}
	return strings.Join(parts, "."), where
}

// valueSpan is where the value of a key stands.
func valueSpan(text string, e *unstable.Node, key span) span {
	from := key.to
	for from < len(text) && text[from] != '=' {
		from++
	}
	from++
	for from < len(text) && (text[from] == ' ' || text[from] == '\t') {
		from++
	}
	to := int(e.Raw.Offset + e.Raw.Length)
	if to <= from {
		to = lineEnd(text, from)
	}
	for to > from && (text[to-1] == ' ' || text[to-1] == '\t' || text[to-1] == '\r' || text[to-1] == '\n') {
		to--
	}
	return span{from, to}
}

// typedText is a value as a person would type it in a form.
func typedText(v *unstable.Node, text string, s span) string {
	switch v.Kind {
	case unstable.String:
		return string(v.Data)
	case unstable.Integer, unstable.Float:
		return strings.ReplaceAll(text[s.from:s.to], "_", "")
	case unstable.Array:
		return strings.Trim(text[s.from:s.to], "[] \n\t")
	default:
		return text[s.from:s.to]
	}
}

// lineEnd is the end of the line a byte is in, before its newline.
func lineEnd(text string, at int) int {
	if n := strings.IndexByte(text[min(at, len(text)):], '\n'); n >= 0 {
		return at + n
	}
	return len(text)
}
