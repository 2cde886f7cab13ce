package drawing

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Neither a folder nor a PDF's name is accepted for a drawing; anything else is.
func TestNamesThatCanBeNoDrawing(t *testing.T) {
	dir := t.TempDir()
	for name, why := range map[string]string{
		dir: "this is a folder", filepath.Join(dir, "none") + string(filepath.Separator): "this is a folder",
		"wall.pdf": "drawings are SVG", "wall.PDF": "drawings are SVG",
	} {
		_, err := Files(nil, name)
		require.ErrorIs(t, err, job.ErrKind, name)
		assert.ErrorContains(t, err, why, name)
	}
	for _, name := range []string{"wall", "wall.svg", "wall.pdf.svg", filepath.Join(dir, "pdf")} {
		_, err := Files(nil, name)
		assert.NoError(t, err, name)
	}
}

// A drawing identifies itself at its head. A file that has these words further on is something else: a
// drawing pasted into another page is that page.
func TestOnlyAHeadMakesADrawing(t *testing.T) {
	file := filepath.Join(t.TempDir(), "a.svg")
	_, _, pages := drawn(t, machines[0].text(t), Options{Paper: A4}, Face)
	files, err := Files(pages, file)
	require.NoError(t, err)
	older, err := Older(files)
	require.NoError(t, err)
	assert.Empty(t, older)
	require.NoError(t, Save(files))
	older, err = Older(files)
	require.NoError(t, err)
	assert.Equal(t, []string{file}, older)
	require.NoError(t, Save(files), "drawn over")

	mine := "<svg>" + strings.Repeat("my own ", 1000) + files[0].svg + "</svg>"
	require.NoError(t, os.WriteFile(file, []byte(mine), 0o600))
	_, err = Older(files)
	assert.ErrorIs(t, err, job.ErrChanged)
	require.ErrorIs(t, Save(files), job.ErrChanged)
	left, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, mine, string(left))
}
