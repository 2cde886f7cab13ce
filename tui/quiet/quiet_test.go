package quiet_test

import (
	"bytes"
	"go/parser"
	"go/token"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/creack/pty"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// query is the question about the background colour (xterm control sequences, OSC 11).
const query = "\x1b]11;?"

// build compiles one of the commands in testdata.
func build(t *testing.T, name string) string {
	t.Helper()
	if testing.Short() {
		t.Skip("builds a command")
	}
	bin := filepath.Join(t.TempDir(), name)
	out, err := exec.Command("go", "build", "-o", bin, "./testdata/"+name).CombinedOutput()
	require.NoError(t, err, "%s", out)
	return bin
}

// environment is the test's own with the given TERM, and without variables that keep termenv quiet
// anyway.
func environment(extra ...string) []string {
	var env []string
	for _, e := range os.Environ() {
		name, _, _ := strings.Cut(e, "=")
		switch name {
		case "TERM", "CI", "NO_COLOR", "CLICOLOR", "CLICOLOR_FORCE", "COLORTERM", "GODEBUG":
		default:
			env = append(env, e)
		}
	}
	return append(env, extra...)
}

// onTerminal runs a command on a pseudo-terminal that never answers and returns its output up to the
// word "ready" or the query, whichever comes first.
func onTerminal(t *testing.T, bin string) string {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("no pseudo-terminals here")
	}
	cmd := exec.Command(bin)
	cmd.Env = environment("TERM=xterm-256color")
	term, err := pty.Start(cmd)
	require.NoError(t, err)
	defer func() {
		_ = cmd.Process.Kill()
		_ = cmd.Wait()
		_ = term.Close()
	}()
	require.NoError(t, term.SetReadDeadline(time.Now().Add(10*time.Second)))
	var got bytes.Buffer
	chunk := make([]byte, 256)
	for !bytes.Contains(got.Bytes(), []byte("set=")) && !bytes.Contains(got.Bytes(), []byte(query)) {
		n, err := term.Read(chunk)
		got.Write(chunk[:n])
		if err == io.EOF || err != nil {
			break
		}
	}
	return got.String()
}

func TestNoQueryOnATerminal(t *testing.T) {
	got := onTerminal(t, build(t, "hushed"))
	assert.NotContains(t, got, query)
	assert.NotContains(t, got, "\x1b[6n")
	assert.Contains(t, got, `ready TERM="xterm-256color" set=true`)
}

// Without quiet the question is asked: the test above can fail.
func TestQueryWithoutQuiet(t *testing.T) {
	assert.Contains(t, onTerminal(t, build(t, "loud")), query)
}

func TestRestoreWithoutTERM(t *testing.T) {
	cmd := exec.Command(build(t, "hushed"))
	cmd.Env = environment()
	out, err := cmd.Output()
	require.NoError(t, err)
	assert.Equal(t, "ready TERM=\"\" set=false\n", string(out))
}

// Order is everything: quiet must be initialised before anything that reads TERM.
func TestInitialisedFirst(t *testing.T) {
	cmd := exec.Command(build(t, "hushed"))
	cmd.Env = environment("TERM=xterm", "GODEBUG=inittrace=1")
	var trace bytes.Buffer
	cmd.Stderr = &trace
	require.NoError(t, cmd.Run())
	place := func(path string) int { return strings.Index(trace.String(), "init "+path+" @") }
	us := place("slotwright/tui/quiet")
	require.GreaterOrEqual(t, us, 0, "%s", trace.String())
	for _, later := range []string{"os", "github.com/muesli/termenv", "github.com/charmbracelet/bubbletea"} {
		if at := place(later); later != "github.com/muesli/termenv" || at >= 0 {
			assert.Greater(t, at, us, later)
		}
	}
}

func TestImportsSyscallAlone(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "quiet.go", nil, parser.ImportsOnly)
	require.NoError(t, err)
	require.Len(t, file.Imports, 1)
	assert.Equal(t, `"syscall"`, file.Imports[0].Path.Value)
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	assert.ElementsMatch(t, []string{"quiet.go", "quiet_test.go"}, files, "a new file may import more")
}
