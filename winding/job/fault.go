package job

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"sync"
)

// fault is a piece of the text that is not TOML.
type fault struct {
	span        // from the line it begins on to where reading continues
	at   int    // where to point
	open string // what is opened and never closed, "" when that is not the fault
}

// looksNew matches a line that most likely begins something new: key = or [table].
var looksNew = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^[ \t]*(?:[A-Za-z][\w.-]*[ \t]*=|\[{1,2}[ \t]*[A-Za-z][\w. -]*\]{1,2}[ \t]*(?:#|\r?$))`)
})

// faultAt finds out what is wrong with the expression that begins at a byte, from where the parser gave
// up. Something opened and never closed is blamed where it opens: the parser only notices lines later,
// or at the end of the file.
func faultAt(text string, begin, gaveUp int, thorough bool) fault {
	line := lineEnd(text, begin)
	f := fault{span: span{lineBegin(text, begin), line}, at: min(max(gaveUp, begin), line)}
	if !thorough || (begin < len(text) && text[begin] == '[') {
		return f // a table's header is one line
	}
	s := scan{text: text, at: begin}
	s.expression()
	switch {
	case s.open != "" && gaveUp <= s.from:
		// The parser stopped before reaching it: the quote is in a line of prose.
	case s.open == "":
		f.to = lineEnd(text, max(s.at, begin))
		f.at = min(max(gaveUp, begin), f.to)
		if top := lineBegin(text, f.at); top > begin && len(s.ways) > 0 && looksNew().MatchString(text[top:lineEnd(text, top)]) {
			f.open, f.at, f.to = "[", s.ways[0], lineEnd(text, s.ways[0])
		}
	case len(s.open) == 3:
		f.open, f.at, f.to = s.open, s.from, len(text)
	default:
		f.open, f.at, f.to = s.open, s.from, lineEnd(text, s.from)
	}
	return f
}

// scan walks one key = value without judging it, to find what stays open.
type scan struct {
	text string
	at   int
	deep []int  // where each bracket that is open now opened
	ways []int  // where lists opened
	open string // what is never closed: """, ''', ", ', [ or {
	from int    // where that opens
}

// expression walks to the end of the line on which everything opened is closed again.
func (s *scan) expression() {
	for s.at < len(s.text) && s.open == "" {
		switch c := s.text[s.at]; c {
		case '\n':
			if len(s.deep) == 0 {
				return
			}
		case '#':
			s.at = lineEnd(s.text, s.at)
			continue
		case '"', '\'':
			s.quoted(c)
			continue
		case '[', '{':
			s.deep = append(s.deep, s.at)
			if c == '[' {
				s.ways = append(s.ways, s.at)
			}
		case ']', '}':
			if len(s.deep) == 0 {
				return
			}
			s.deep = s.deep[:len(s.deep)-1]
		}
		s.at++
	}
	if s.open == "" && len(s.deep) > 0 {
		s.from = s.deep[0]
		s.open = s.text[s.from : s.from+1]
	}
}

// quoted walks over a text in quotes.
func (s *scan) quoted(quote byte) {
	mark := string(quote)
	if triple := strings.Repeat(mark, 3); strings.HasPrefix(s.text[s.at:], triple) {
		mark = triple
	}
	begin := s.at
	for i := begin + len(mark); i < len(s.text); i++ {
		switch {
		case s.text[i] == '\\' && quote == '"':
			i++
		case s.text[i] == '\n' && len(mark) == 1:
			s.open, s.from, s.at = mark, begin, i
			return
		case strings.HasPrefix(s.text[i:], mark):
			s.at = i + len(mark)
			return
		}
	}
	s.open, s.from, s.at = mark, begin, len(s.text)
}

// closedBy is what would close what was opened, and how to say so.
var closedBy = map[string][2]string{
	`"""`: {`a text that ends with """`, `put """ where it ends; until then all that stands below is taken for it`},
	`'''`: {`a text that ends with '''`, `put ''' where it ends; until then all that stands below is taken for it`},
	`"`:   {"a text that ends with a quote", `put " at both ends`},
	`'`:   {"a text that ends with a quote", `put ' at both ends`},
	"[":   {"a list that ends with ]", "write ] behind its last value"},
	"{":   {"a table that ends with }", "write } behind its last value"},
}

// syntax records a piece that is not TOML, in words for somebody who never heard of it.
func (r *reader) syntax(f fault, err error) {
	line := r.d.text[lineBegin(r.d.text, f.at):lineEnd(r.d.text, f.at)]
	text := strings.TrimRight(line, " \t\r")
	read, expected, fix := quote(text), "key = value", ""
	value := strings.TrimSpace(text[strings.IndexByte(text, '=')+1:])
	switch {
	case f.open != "":
		expected, fix = closedBy[f.open][0], closedBy[f.open][1]
	case strings.HasPrefix(strings.TrimSpace(text), "[") && !strings.Contains(text, "]"):
		expected, fix = "a table name in brackets", "write "+strings.TrimSpace(text)+"]"
	case !strings.Contains(text, "="):
		fix = "put # in front if it is a note"
	case value == "" || strings.HasPrefix(value, "#"):
		expected, fix = "a value after =", "write the value, or put # in front of the line to leave it empty"
	case commaNumber(value):
		expected, fix = "a number with a decimal point", "write "+strings.Replace(strings.Fields(value)[0], ",", ".", 1)
	case !strings.ContainsAny(value[:1], `"'[{0123456789+-.`):
		expected, fix = "a number, or text in quotes", fmt.Sprintf("write \"%s\"", strings.Fields(value)[0])
	default:
		fix = "text and numbers with a unit or a mark (~ ±) go in quotes; the reader says: " + err.Error()
	}
	r.problem(f.at, "", read, expected, fix)
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
