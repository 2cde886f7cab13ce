package recovery

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestUnsavedWorkIsKeptByFile(t *testing.T) {
	s := Store{filepath.Join(t.TempDir(), "state")}
	_, ok := s.Recovered("a.toml")
	assert.False(t, ok)
	s.Put("a.toml", "one")
	s.Put("b.toml", "two")
	s.Put("", "example")
	text, ok := s.Recovered("a.toml")
	assert.True(t, ok)
	assert.Equal(t, "one", text)
	abs, err := filepath.Abs("a.toml")
	require.NoError(t, err)
	text, _ = s.Recovered(abs)
	assert.Equal(t, "one", text, "the same file by its whole path")
	s.Drop("a.toml")
	_, ok = s.Recovered("a.toml")
	assert.False(t, ok)
	text, _ = s.Recovered("")
	assert.Equal(t, "example", text)
}

func TestLastJobIsForgottenWhenGone(t *testing.T) {
	dir := t.TempDir()
	s := Store{dir}
	assert.Empty(t, s.Last())
	path := filepath.Join(dir, "job.toml")
	require.NoError(t, os.WriteFile(path, nil, 0o600))
	s.SetLast(path)
	assert.Equal(t, path, s.Last())
	require.NoError(t, os.Remove(path))
	assert.Empty(t, s.Last())
}

func TestNoFolderNoHarm(t *testing.T) {
	s := Store{filepath.Join(string([]byte{0}), "x")}
	s.Put("a", "b")
	s.SetLast("a")
	_, ok := s.Recovered("a")
	assert.False(t, ok)
	Store{}.Put("a", "b")
	assert.Empty(t, Store{}.Last())
}
