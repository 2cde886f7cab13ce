package main

import (
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

// No verb asks the terminal anything: a terminal that does not answer would cost five
// seconds, and a late answer would be typed into a field.
func TestNoVerbAsksTheTerminal(t *testing.T) {
	if testing.Short() || runtime.GOOS == "windows" {
		t.Skip("builds the command and needs a pseudo-terminal")
	}
	bin := filepath.Join(t.TempDir(), "slotwright")
	out, err := exec.Command("go", "build", "-o", bin, ".").CombinedOutput()
	require.NoError(t, err, "%s", out)
	for _, args := range [][]string{{"wire", "18"}, {"report"}, {"--example"}} {
		cmd := exec.Command(bin, args...)
		cmd.Env = append(os.Environ(), "TERM=xterm-256color", "CI=", "XDG_STATE_HOME="+t.TempDir())
		term, err := pty.StartWithSize(cmd, &pty.Winsize{Cols: 100, Rows: 30})
		require.NoError(t, err)
		said := make(chan string, 1)
		go func() {
			var b strings.Builder
			buf := make([]byte, 4096)
			for {
				n, err := term.Read(buf)
				b.Write(buf[:n])
				if err != nil || strings.Contains(b.String(), "charging begins") {
					break
				}
			}
			said <- b.String()
		}()
		select {
		case text := <-said:
			assert.NotContains(t, text, "\x1b]11;?", args)
			assert.NotContains(t, text, "\x1b[6n", args)
			assert.NotEmpty(t, text)
		case <-time.After(20 * time.Second):
			t.Errorf("%v: nothing came", args)
		}
		_, _ = io.WriteString(term, "q")
		_ = cmd.Process.Kill()
		_ = cmd.Wait()
		_ = term.Close()
	}
}
