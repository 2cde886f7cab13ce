//go:build !windows

package main

import (
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"slotwright/tui/recovery"
	"slotwright/winding/job"

	"github.com/creack/pty"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

// binary is the command, built once for the tests that need it running.
var binary = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "slotwright-test")
	if err != nil {
		return "", err
	}
	bin := filepath.Join(dir, "slotwright")
	out, err := exec.Command("go", "build", "-o", bin, ".").CombinedOutput()
	if err != nil {
		return "", fmt.Errorf("%w: %s", err, out)
	}
	return bin, nil
})

func TestMain(m *testing.M) {
	code := m.Run()
	if bin, err := binaryIfBuilt(); err == nil && bin != "" {
		_ = os.RemoveAll(filepath.Dir(bin))
	}
	os.Exit(code)
}

var built bool

func binaryIfBuilt() (string, error) {
	if !built {
		return "", nil
	}
	return binary()
}

// window is the built program on a pseudo-terminal.
type window struct {
	t    testing.TB
	cmd  *exec.Cmd
	term *os.File
	done chan struct{}

	mu   sync.Mutex
	seen strings.Builder
}

func start(t testing.TB, state string, size pty.Winsize, args ...string) *window {
	t.Helper()
	if testing.Short() {
		t.Skip("builds the command and needs a pseudo-terminal")
	}
	built = true
	bin, err := binary()
	require.NoError(t, err)
	w := &window{t: t, cmd: exec.Command(bin, args...), done: make(chan struct{})}
	w.cmd.Env = append(os.Environ(), "TERM=xterm-256color", "CI=", "XDG_STATE_HOME="+state)
	term, err := pty.StartWithSize(w.cmd, &size)
	require.NoError(t, err)
	// Read without blocking, so that closing the terminal does close it.
	fd, err := unix.Dup(int(term.Fd()))
	require.NoError(t, err)
	require.NoError(t, term.Close())
	require.NoError(t, unix.SetNonblock(fd, true))
	w.term = os.NewFile(uintptr(fd), "terminal")
	go func() {
		defer close(w.done)
		buf := make([]byte, 1<<16)
		for {
			n, err := w.term.Read(buf)
			w.mu.Lock()
			w.seen.Write(buf[:n])
			w.mu.Unlock()
			if err != nil {
				return
			}
		}
	}()
	t.Cleanup(func() { w.kill(syscall.SIGKILL) })
	return w
}

func (w *window) text() string {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.seen.String()
}

// see waits for one of several texts and returns which.
func (w *window) see(texts ...string) string {
	w.t.Helper()
	for begin := time.Now(); time.Since(begin) < 30*time.Second; time.Sleep(time.Millisecond) {
		have := w.text()
		for _, text := range texts {
			if strings.Contains(have, text) {
				return text
			}
		}
	}
	w.t.Fatalf("waited for %q, saw %q", texts, w.text())
	return ""
}

func (w *window) keys(text string) { _, _ = io.WriteString(w.term, text) }

func (w *window) kill(sig syscall.Signal) (code int) {
	if w.cmd.ProcessState != nil {
		return w.cmd.ProcessState.ExitCode()
	}
	_ = w.cmd.Process.Signal(sig)
	return w.wait()
}

func (w *window) wait() (code int) {
	_ = w.cmd.Wait()
	select { // what it said last is still on its way
	case <-w.done:
	case <-time.After(2 * time.Second):
	}
	_ = w.term.Close()
	<-w.done
	return w.cmd.ProcessState.ExitCode()
}

var usual = pty.Winsize{Cols: 100, Rows: 30}

// desk is a job's file and a state folder for killed programs.
type desk struct {
	dir, path, state string
	store            recovery.Store
}

func newDesk(t testing.TB) desk {
	t.Helper()
	dir := t.TempDir()
	d := desk{filepath.Join(dir, "jobs"), filepath.Join(dir, "jobs", "j.toml"), filepath.Join(dir, "state"), recovery.Store{}}
	d.store.Dir = filepath.Join(d.state, "slotwright")
	require.NoError(t, os.Mkdir(d.dir, 0o755))
	require.NoError(t, os.WriteFile(d.path, []byte(job.Example().Text()), 0o644))
	return d
}

// turns is the number of turns of trial A in the file, and the highest in the copies.
func (d desk) turns(t testing.TB) (file, kept float64) {
	t.Helper()
	doc, _, err := job.Load(d.path)
	require.NoError(t, err)
	require.Empty(t, doc.Problems(), "the file is whole")
	file = doc.Job().Trials[0].Turns.Value
	copies, damaged := d.store.Offers(d.path)
	require.Empty(t, damaged, "no copy is damaged")
	for _, c := range copies {
		kept = max(kept, job.Parse(c.Text).Job().Trials[0].Turns.Value)
	}
	return file, kept
}

// answers are the keys that restore the most turns. Killed between keeping and dropping, a session may
// leave a copy that is older than the file or than another copy.
func (d desk) answers(file, kept float64) (keys string) {
	text, _ := os.ReadFile(d.path)
	copies, _ := d.store.Offers(d.path)
	for _, c := range copies {
		switch {
		case c.Text == string(text): // is not asked about
		case kept > file && job.Parse(c.Text).Job().Trials[0].Turns.Value == kept:
			return keys + "b"
		default:
			keys += "d"
		}
	}
	return keys
}

// litter lists what should not be left in the folders.
func (d desk) litter(t testing.TB) (list []string) {
	t.Helper()
	for _, dir := range []string{d.dir, d.store.Dir} {
		found, err := filepath.Glob(filepath.Join(dir, ".*"))
		require.NoError(t, err)
		list = append(list, found...)
	}
	return list
}

// Killed at any moment, even while saving, the program leaves a whole file and loses nothing that was
// saved or kept, and the next start removes what is left over. KILLS=2000 go test -run
// TestKilledAtAnyMoment -timeout 1h ./cmd/slotwright
func TestKilledAtAnyMoment(t *testing.T) {
	kills := 12
	if n, err := strconv.Atoi(os.Getenv("KILLS")); err == nil {
		kills = n
	}
	r := rand.New(rand.NewPCG(7, 8))
	d := newDesk(t)
	var saves, offers, left, waited int
	for n := range kills {
		if n%200 == 199 { // the turns of a coil are not without end
			d = newDesk(t)
		}
		file, kept := d.turns(t)
		answers := d.answers(file, kept)
		w := start(t, d.state, usual, d.path)
		if answers != "" {
			w.see("Unsaved work")
			offers++
			require.Empty(t, d.litter(t), "kill %d: swept at the start", n)
			w.keys(answers)
		}
		w.see("charging begins")
		best := max(file, kept)
		for range 1 + r.IntN(6) {
			w.keys("+")
			time.Sleep(time.Duration(r.IntN(8)) * time.Millisecond)
			if r.IntN(3) == 0 {
				w.keys("\x13")
				saves++
				time.Sleep(time.Duration(r.IntN(4000)) * time.Microsecond)
			}
		}
		if r.IntN(10) == 0 { // a second after the first change it is kept
			waited++
			w.keys("+")
			time.Sleep(1500 * time.Millisecond)
			file, kept = d.turnsOfTheLiving(t)
			require.Greater(t, max(file, kept), best, "kill %d", n)
			best = max(file, kept)
		}
		w.kill(syscall.SIGKILL)
		left += len(d.litter(t))
		file, kept = d.turns(t)
		require.GreaterOrEqual(t, max(file, kept), best, "kill %d", n)
	}
	w := start(t, d.state, usual, d.path)
	w.see("charging begins", "Unsaved work")
	assert.Empty(t, d.litter(t))
	t.Logf("%d kills, %d saves asked for, %d offers; %d times waited to be kept; %d temporary files left by kills, all swept", kills, saves, offers, waited, left)
}

// turnsOfTheLiving also looks into the copies of sessions that still run.
func (d desk) turnsOfTheLiving(t testing.TB) (file, kept float64) {
	t.Helper()
	file, _ = d.turns(t)
	names, err := filepath.Glob(filepath.Join(d.store.Dir, "unsaved-*"))
	require.NoError(t, err)
	for _, name := range names {
		data, err := os.ReadFile(name)
		require.NoError(t, err)
		kept = max(kept, job.Parse(string(data)).Job().Trials[0].Turns.Value)
	}
	return file, kept
}

// A signal while "Unsaved work" is asked, or a closed terminal, leaves the question for the next start,
// and says so.
func TestSignalsWhileTheOfferIsUp(t *testing.T) {
	d := newDesk(t)
	w := start(t, d.state, usual, d.path)
	w.see("charging begins")
	w.keys("+")
	w.see("not saved")
	time.Sleep(1500 * time.Millisecond)
	w.kill(syscall.SIGKILL)
	_, kept := d.turns(t)
	require.Positive(t, kept)
	for _, sig := range []syscall.Signal{syscall.SIGHUP, syscall.SIGTERM, syscall.SIGINT, 0} {
		w = start(t, d.state, usual, d.path)
		w.see("Unsaved work")
		if sig == 0 {
			_ = w.term.Close() // the terminal is gone
			_ = w.cmd.Wait()
		} else {
			assert.Equal(t, 1, w.kill(sig))
			assert.Contains(t, w.text(), "offered again next time")
		}
		_, again := d.turns(t)
		assert.InDelta(t, kept, again, 0, sig.String())
	}
	w = start(t, d.state, pty.Winsize{Cols: 50, Rows: 12}, d.path)
	w.see("Unsaved work")
	time.Sleep(100 * time.Millisecond)
	w.keys("\x03")
	assert.Equal(t, 0, w.wait())
	assert.Contains(t, w.text(), "offered again next time")
	_, again := d.turns(t)
	assert.InDelta(t, kept, again, 0)
}

// Work on the example is offered by the bare command, whatever was opened in between.
func TestWorkOnTheExampleIsOfferedByTheBareCommand(t *testing.T) {
	d := newDesk(t)
	w := start(t, d.state, usual, "--example")
	w.see("charging begins")
	w.keys("+")
	w.see("not saved")
	time.Sleep(1500 * time.Millisecond)
	w.kill(syscall.SIGKILL)
	w = start(t, d.state, usual, d.path)
	w.see("charging begins")
	w.keys("q")
	assert.Equal(t, 0, w.wait())
	w = start(t, d.state, usual)
	w.see("Unsaved work")
	w.keys("d")
	w.see("charging begins")
	w.keys("q")
	assert.Equal(t, 0, w.wait())
	w = start(t, d.state, usual)
	w.see("j.toml")
}

// A pipe or device in place of a job is refused at once by every verb and the screen; and one that
// replaces an open job does not block saving.
func TestPipesDoNotHoldTheProgramUp(t *testing.T) {
	d := newDesk(t)
	pipe := filepath.Join(d.dir, "pipe")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	for _, file := range []string{pipe, "/dev/zero"} {
		for _, verb := range []string{"check", "report", "card"} {
			done := make(chan int, 1)
			go func() { code, _, _ := command(verb, file); done <- code }()
			select {
			case code := <-done:
				assert.Equal(t, 1, code, "%s %s", verb, file)
			case <-time.After(5 * time.Second):
				t.Fatalf("%s %s waits", verb, file)
			}
		}
		w := start(t, d.state, usual, file)
		assert.Equal(t, 1, w.wait())
		assert.Contains(t, w.text(), "expected an ordinary file")
	}
	w := start(t, d.state, usual, d.path)
	w.see("charging begins")
	w.keys("+")
	w.see("not saved")
	require.NoError(t, os.Remove(d.path))
	require.NoError(t, os.Rename(pipe, d.path))
	w.keys("\x13")
	w.see("expected an ordinary file")
	assert.Equal(t, 1, w.kill(syscall.SIGTERM))
	assert.Contains(t, w.text(), "offered again next time")
}
