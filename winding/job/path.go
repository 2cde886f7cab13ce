package job

import (
	"fmt"
	"strconv"
	"strings"
)

// PathAt is the field's path in entry i of its table: "trial[1].turns", or "machine.bore" in a table
// that comes once.
func (f *Input) PathAt(i int) string {
	if t, ok := TableOf(f.Table); ok && t.Many() {
		return PathOf(f.Table, i, f.Name)
	}
	return f.Path()
}

// PathOf is the path of a field in entry i, from 0, of a table that may come many times:
// "trial[1].turns".
func PathOf(table string, i int, field string) string {
	return fmt.Sprintf("%s[%d].%s", table, i, field)
}

// SplitPath takes a path apart: "trial[1].turns" is trial, 1 and turns, "machine.bore" machine, 0 and
// bore, "name" is of no table, "trial[1]" of no field.
func SplitPath(path string) (table string, i int, field string) {
	before, field, dotted := strings.Cut(path, ".")
	if !dotted && !strings.HasSuffix(before, "]") {
		return "", 0, path
	}
	table, i = splitIndex(before)
	return table, i, field
}

// Unindexed is a path without the number of its entry: trial[1].turns → trial.turns.
func Unindexed(path string) string {
	table, _, field := SplitPath(path)
	return join(table, field)
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
