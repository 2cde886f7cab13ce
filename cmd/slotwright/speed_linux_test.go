package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/creack/pty"
	"github.com/stretchr/testify/require"
)

// bare is a minimal program of the same library.
const bare = `package main

import tea "github.com/charmbracelet/bubbletea"

type model struct{}

func (model) Init() tea.Cmd                         { return nil }
func (m model) Update(tea.Msg) (tea.Model, tea.Cmd) { return m, nil }
func (model) View() string                          { return "charging begins" }

func main() { tea.NewProgram(model{}, tea.WithAltScreen()).Run() }
`

// BenchmarkStart runs the screen and the bare program alternately: milliseconds from the start to the
// first frame, its processor time, the resident memory after two seconds, and the processor time of
// those two idle seconds. The terminal answers queries.
func BenchmarkStart(b *testing.B) {
	dir := b.TempDir()
	source := filepath.Join(dir, "main.go")
	require.NoError(b, os.WriteFile(source, []byte(bare), 0o644))
	programs := []string{filepath.Join(dir, "slotwright"), filepath.Join(dir, "bare")}
	for i, what := range []string{".", source} {
		build := exec.Command("go", "build", "-trimpath", "-ldflags", "-s -w", "-o", programs[i], what)
		build.Env = append(os.Environ(), "CGO_ENABLED=0") // as released
		out, err := build.CombinedOutput()
		require.NoError(b, err, "%s", out)
		info, err := os.Stat(programs[i])
		require.NoError(b, err)
		b.Logf("%s: %.2f MB", filepath.Base(programs[i]), float64(info.Size())/1e6)
	}
	seen := map[string][]float64{}
	for b.Loop() {
		for _, bin := range programs {
			for what, v := range oneStart(b, bin) {
				key := what + "-" + filepath.Base(bin)
				seen[key] = append(seen[key], v)
			}
		}
	}
	for key, list := range seen {
		slices.Sort(list)
		b.ReportMetric(list[len(list)/2], key)
	}
}

// oneStart starts a program and returns its measurements.
func oneStart(b *testing.B, bin string) map[string]float64 {
	cmd := exec.Command(bin)
	cmd.Env = append(os.Environ(), "TERM=xterm-256color", "CI=", "XDG_STATE_HOME="+b.TempDir())
	from := time.Now()
	term, err := pty.StartWithSize(cmd, &pty.Winsize{Cols: 120, Rows: 40})
	require.NoError(b, err)
	shown := make(chan time.Time, 1)
	go func() {
		var text strings.Builder
		buf := make([]byte, 1<<16)
		told, asked := false, false
		for {
			n, err := term.Read(buf)
			text.Write(buf[:n])
			if !asked && strings.Contains(text.String(), "\x1b[6n") {
				asked = true
				_, _ = term.WriteString("\x1b]11;rgb:0000/0000/0000\x1b\\\x1b[1;1R")
			}
			if !told && strings.Contains(text.String(), "charging begins") {
				told = true
				shown <- time.Now()
			}
			if err != nil {
				return
			}
		}
	}()
	took := map[string]float64{}
	select {
	case at := <-shown:
		took["ms"] = float64(at.Sub(from).Microseconds()) / 1000
	case <-time.After(20 * time.Second):
		b.Fatalf("%s showed nothing", bin)
	}
	took["start-cpu-ms"] = ticks(b, cmd.Process.Pid)
	time.Sleep(2 * time.Second)
	took["idle-cpu-%"] = (ticks(b, cmd.Process.Pid) - took["start-cpu-ms"]) / 20
	took["resident-MB"] = resident(b, cmd.Process.Pid)
	_ = cmd.Process.Kill()
	_ = cmd.Wait()
	_ = term.Close()
	return took
}

// ticks is the processor time of a program so far, ms, as the scheduler counts it.
func ticks(b *testing.B, pid int) float64 {
	tasks, err := filepath.Glob(fmt.Sprintf("/proc/%d/task/*/schedstat", pid))
	require.NoError(b, err)
	sum := 0.0
	for _, task := range tasks {
		text, err := os.ReadFile(task)
		require.NoError(b, err)
		var ns float64
		_, err = fmt.Sscan(string(text), &ns)
		require.NoError(b, err)
		sum += ns / 1e6
	}
	return sum
}

// resident is a program's resident memory, MB.
func resident(b *testing.B, pid int) float64 {
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	require.NoError(b, err)
	_, after, ok := strings.Cut(string(text), "VmRSS:")
	require.True(b, ok)
	var kb float64
	_, err = fmt.Sscan(after, &kb)
	require.NoError(b, err)
	return kb / 1000
}
