package tuitest

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
)

func init() {
	if flag.Lookup("update") == nil {
		flag.Bool("update", false, "rewrite the golden frames in testdata/frames")
	}
}

// updating reports whether the test was run with -update.
func updating() bool {
	f := flag.Lookup("update")
	return f != nil && f.Value.String() == "true"
}

// Golden compares a frame with testdata/frames/<name>.golden at the module's root, and with the flag
// -update writes it there: go test ./tui/kit -update. Blanks at line ends are left out. A person must
// be able to read the file: a frame in colour is for GoldenStyled.
func Golden(t testing.TB, name, frame string) {
	t.Helper()
	path := filepath.Join(moduleRoot(t), "testdata", "frames", name+".golden")
	got := trimLines(strings.ReplaceAll(frame, "\r\n", "\n")) + "\n"
	if strings.Contains(got, "\x1b") {
		t.Fatalf("golden frame %s has escape sequences", name)
	}
	if updating() {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("golden frame %s: %v; make it with -update and read it", name, err)
	}
	if want := strings.ReplaceAll(string(data), "\r\n", "\n"); want != got {
		t.Errorf("frame %s differs from %s (-update rewrites it).\n%s", name, path, difference(want, got))
	}
}

// GoldenLines is Golden for a block's lines.
func GoldenLines(t testing.TB, name string, lines []string) {
	t.Helper()
	Golden(t, name, strings.Join(lines, "\n"))
}

// CheckFrame requires exactly h lines of at most w cells.
func CheckFrame(t testing.TB, frame string, w, h int) {
	t.Helper()
	lines := strings.Split(frame, "\n")
	if h == 0 && frame == "" {
		return
	}
	if len(lines) != h {
		t.Errorf("frame has %d lines, wanted %d", len(lines), h)
	}
	for i, line := range lines {
		if n := ansi.StringWidth(line); n > w {
			t.Errorf("line %d is %d cells wide, wanted at most %d: %q", i, n, w, line)
		}
	}
}

// CheckLines requires exactly h lines of exactly w cells.
func CheckLines(t testing.TB, lines []string, w, h int) {
	t.Helper()
	if len(lines) != h {
		t.Errorf("%d lines, wanted %d", len(lines), h)
	}
	for i, line := range lines {
		if n := ansi.StringWidth(line); n != max(w, 0) || strings.ContainsAny(line, "\n\r\t") {
			t.Errorf("line %d is %d cells wide, wanted exactly %d: %q", i, n, w, line)
		}
	}
}

// CheckASCII requires a frame without a byte beyond ASCII and without escape sequences.
func CheckASCII(t testing.TB, frame string) {
	t.Helper()
	for _, line := range strings.Split(frame, "\n") {
		for i := range len(line) {
			if line[i] >= 0x7f || line[i] < ' ' {
				t.Errorf("byte %#x at %d of %q", line[i], i, line)
				return
			}
		}
	}
}

// trimLines takes blanks off line ends.
func trimLines(s string) string {
	lines := strings.Split(s, "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.Join(lines, "\n")
}

// difference shows both texts, the lines that differ marked.
func difference(want, got string) string {
	w, g := strings.Split(want, "\n"), strings.Split(got, "\n")
	var b strings.Builder
	for i := range max(len(w), len(g)) {
		var a, c string
		if i < len(w) {
			a = w[i]
		}
		if i < len(g) {
			c = g[i]
		}
		if a == c {
			b.WriteString("  " + c + "\n")
			continue
		}
		b.WriteString("- " + a + "\n+ " + c + "\n")
	}
	return b.String()
}

// moduleRoot is the folder of go.mod, found by walking up.
func moduleRoot(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Fatal("tuitest: no go.mod above the test's folder")
		}
		dir = up
	}
}
