package job

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A file that does not say its form is one of form 1, the only one there has been: it opens, and
// neither reading nor editing touches it. One of a form that is not known yet is refused with
// its place, and its text stays as it is.
func TestFormats(t *testing.T) {
	path := filepath.Join(t.TempDir(), "old.toml")
	text := "# from the first year\nname = \"Old\"\n[machine]\nslots = 36\n"
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	d, mark, err := Load(path)
	require.NoError(t, err)
	assert.Empty(t, d.Problems())
	assert.Equal(t, 36.0, d.Job().Machine.Slots.Value)
	edited := d.Set("machine.poles", "12", quantity.Choice{})
	onDisk, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, text, string(onDisk))
	_, err = Save(path, edited.Text(), mark, 0)
	require.NoError(t, err)
	again, _, err := Load(path)
	require.NoError(t, err)
	assert.Equal(t, 12.0, again.Job().Machine.Poles.Value)
	assert.Contains(t, again.Text(), "# from the first year\n")

	later := Parse("format = 2\nname = \"Later\"\n")
	require.Len(t, later.Problems(), 1)
	assert.Contains(t, later.Problems()[0].Error(), "expected 1; a higher one was written by a newer Slotwright")
	assert.Equal(t, "format = 2\nname = \"Later\"\n", later.Text())
}

// Nothing that has been written as form 1 has to be brought up: every key that it has is still
// taken as it stands. testdata/format-1-keys.txt has them, one a line, as of the day this test
// was written; none was renamed or dropped before. A key that must go needs a form 2, and a
// way from here to there.
func TestKeysOfFormat1AreTaken(t *testing.T) {
	list, err := os.ReadFile("testdata/format-1-keys.txt")
	require.NoError(t, err)
	keys := strings.Fields(string(list))
	require.Greater(t, len(keys), 150)
	for _, key := range keys {
		_, ok := byKey[key]
		assert.True(t, ok, "%s is not read any more", key)
	}
}
