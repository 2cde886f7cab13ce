package winding

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The root is large: a newcomer finds a file by the map in DEVELOPERS.md, or not at all.
func TestTheMapNamesEveryFile(t *testing.T) {
	text, err := os.ReadFile("../DEVELOPERS.md")
	require.NoError(t, err)
	files, err := os.ReadDir(".")
	require.NoError(t, err)
	words := strings.Fields(string(text))
	for _, f := range files {
		name := f.Name()
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") || strings.HasPrefix(name, "findings_") {
			continue
		}
		assert.True(t, slices.Contains(words, name), "%s has no place in the map", name)
	}
}
