package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/tui/kit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is printed for a shell is a script that this shell takes, where it is installed.
func TestCompletion(t *testing.T) {
	for _, shell := range shells {
		code, out, errs := command("completion", shell)
		require.Equal(t, 0, code, errs)
		assert.Contains(t, out, "slotwright")
		path, err := exec.LookPath(shell)
		if err != nil {
			continue
		}
		check := exec.Command(path, "-n")
		check.Stdin = strings.NewReader(out)
		said, err := check.CombinedOutput()
		assert.NoError(t, err, "%s: %s", shell, said)
	}
	code, _, errs := command("completion", "powder")
	assert.Equal(t, 2, code)
	assert.Contains(t, errs, "expected bash, zsh, fish")
}

// Verbs, jobs and colours complete; what takes no file offers none.
func TestWhatCompletes(t *testing.T) {
	for typed, want := range map[string]string{
		"card ": "toml", " ": "report", "--theme ": "contrast", "completion ": "fish", "wire ": ":4",
	} {
		args := append([]string{"__complete"}, strings.Fields(typed)...)
		code, out, _ := command(append(args, "")...)
		assert.Equal(t, 0, code, typed)
		assert.Contains(t, out, want, typed)
	}
}

// The manual is made from the commands: every verb has its page, and each says its options.
func TestManual(t *testing.T) {
	code, out, _ := command("man")
	assert.Equal(t, 0, code)
	assert.Contains(t, out, ".TH \"SLOTWRIGHT\"")
	assert.Contains(t, out, "theme")
	dir := t.TempDir()
	code, out, _ = command("man", dir)
	assert.Equal(t, 0, code, out)
	for _, verb := range []string{"", "-new", "-check", "-report", "-card", "-wire", "-layout", "-completion", "-man"} {
		page, err := os.ReadFile(filepath.Join(dir, "slotwright"+verb+".1"))
		require.NoError(t, err)
		assert.Contains(t, string(page), ".SH SYNOPSIS", verb)
	}
	code, _, errs := command("man", filepath.Join(dir, "none"))
	assert.Equal(t, 1, code)
	assert.Contains(t, errs, "no such folder")
}

// The colours asked for hold; else those the terminal's background suggests.
func TestColours(t *testing.T) {
	for _, c := range []struct {
		theme, terminal string
		able            bool
		want            string
	}{
		{"", "", true, "for any background"}, {"", "0;15", true, "for a light background"}, {"dark", "0;15", true, "for a dark background"},
		{"contrast", "", true, "high contrast"}, {"none", "", true, "none"}, {"", "0;15", false, "none"}, {"light", "", false, "for a light background"},
	} {
		th, err := appearance{theme: c.theme}.colours(c.able, c.terminal)
		assert.NoError(t, err)
		assert.Equal(t, c.want, th.LookName(), c)
	}
	_, err := appearance{theme: "mauve"}.colours(true, "")
	assert.ErrorContains(t, err, "expected "+strings.Join(kit.LookNames(), ", "))
}
