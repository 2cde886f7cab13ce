package job

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestSplitPath(t *testing.T) {
	type parts struct {
		table string
		i     int
		field string
	}
	for path, want := range map[string]parts{
		"trial[1].turns": {"trial", 1, "turns"}, "machine.bore": {"machine", 0, "bore"}, "name": {"", 0, "name"},
		"trial[3]": {"trial", 3, ""}, "": {}, "trial[x].turns": {"trial[x]", 0, "turns"},
	} {
		table, i, field := SplitPath(path)
		assert.Equal(t, want, parts{table, i, field}, path)
	}
	assert.Equal(t, []string{"trial.turns", "machine.bore", "name"}, []string{Unindexed("trial[1].turns"), Unindexed("machine.bore"), Unindexed("name")})
	for i := range Fields { // every field is found again by its place in any entry
		f := &Fields[i]
		found, ok := InputAt(f.PathAt(3))
		assert.True(t, ok && found == f, f.Path())
	}
}
