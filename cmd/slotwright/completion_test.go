package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/tui"
	"slotwright/tui/kit"
	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/winding/job"

	"github.com/muesli/termenv"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The script printed for a shell is accepted by that shell, where it is installed.
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

// Verbs, jobs and colours complete; verbs that take no file offer none.
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

// The manual is generated from the commands: every verb has its page, which lists its options.
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
	page := filepath.Join(dir, "slotwright-new.1")
	require.NoError(t, os.WriteFile(page, []byte("older"), 0o644))
	code, _, _ = command("man", dir)
	assert.Equal(t, 0, code, "an older page is replaced")
	text, err := os.ReadFile(page)
	require.NoError(t, err)
	assert.Contains(t, string(text), ".SH SYNOPSIS")
	require.NoError(t, os.Remove(page))
	require.NoError(t, os.Mkdir(page, 0o755))
	for folder, want := range map[string]string{
		filepath.Join(dir, "none"):         "there is no folder " + filepath.Join(dir, "none") + "; make it first",
		filepath.Join(dir, "slotwright.1"): "a part of the path is a file, not a folder",
		dir:                                "read a folder, expected an ordinary file",
	} {
		code, _, errs := command("man", folder)
		assert.Equal(t, 1, code)
		assert.Contains(t, errs, "slotwright: "+want)
		assert.Equal(t, 1, strings.Count(errs, "\n"), errs)
	}
	code, _, errs := command("man", "")
	assert.Equal(t, 2, code)
	assert.Contains(t, errs, "expected a folder")
}

// The requested colours are used, else those that suit the terminal's background. They are fixed ones
// where there are 256.
func TestColours(t *testing.T) {
	for _, c := range []struct {
		theme, background, terminal string
		able                        termenv.Profile
		want                        string
	}{
		{"", "", "xterm", termenv.ANSI, "for any background"}, {"", "0;15", "xterm", termenv.ANSI256, "for a light background"},
		{"dark", "0;15", "xterm", termenv.TrueColor, "for a dark background"}, {"contrast", "", "xterm", termenv.ANSI, "high contrast"},
		{"none", "", "xterm", termenv.ANSI, "none"}, {"", "0;15", "xterm", termenv.Ascii, "none"}, {"light", "", "xterm", termenv.Ascii, "for a light background"},
		{"", "", "linux", termenv.ANSI, "for a dark background"}, {"light", "", "linux", termenv.ANSI, "for a light background"},
	} {
		th, err := appearance{theme: c.theme}.colours(c.able, c.background, c.terminal)
		assert.NoError(t, err)
		assert.Equal(t, c.want, th.LookName(), c)
		assert.Equal(t, c.able == termenv.ANSI256 || c.able == termenv.TrueColor, th.Fixed, c)
	}
	_, err := appearance{theme: "mauve"}.colours(termenv.ANSI, "", "")
	assert.ErrorContains(t, err, "expected "+strings.Join(kit.LookNames(), ", "))
}

// What was saved is reported at the end; a job only looked at is not reported as saved.
func TestOnlyWhatWasSavedIsSaidToBe(t *testing.T) {
	t.Chdir(t.TempDir())
	require.NoError(t, os.WriteFile("mill.toml", []byte(job.Example().Text()), 0o600))
	end := func(edit bool) string {
		doc, mark, err := job.Load("mill.toml")
		require.NoError(t, err)
		open := session.New(doc, "mill.toml", mark)
		if edit {
			open.StepTurns(1)
			require.NoError(t, open.Save("", 0))
		}
		var out strings.Builder
		require.NoError(t, leave(t.Context(), streams{out: &out}, tui.New(open, recovery.Store{Dir: t.TempDir()}), nil))
		return out.String()
	}
	assert.Empty(t, end(false))
	assert.Equal(t, "saved: mill.toml\n", end(true))
}
