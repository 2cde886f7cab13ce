package job

import (
	"fmt"
	"strconv"
	"strings"
)

// PathAt is the field's place in entry i of its table: "trial[1].turns", or
// "machine.bore" in a table that comes once.
func (f *Input) PathAt(i int) string {
	if t, ok := TableOf(f.Table); ok && t.Many() {
		return fmt.Sprintf("%s[%d].%s", f.Table, i, f.Name)
	}
	return f.Path()
}

// splitIndex takes "trial[1]" apart; a name without an index has 0.
func splitIndex(s string) (string, int) {
	open := strings.IndexByte(s, '[')
	if open < 0 || !strings.HasSuffix(s, "]") {
		return s, 0
	}
	n, err := strconv.Atoi(s[open+1 : len(s)-1])
	if err != nil {
		return s, 0
	}
	return s[:open], n
}
