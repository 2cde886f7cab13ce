// Package recovery remembers what must outlive the program without being in a job file:
// unsaved work, so that a killed session offers it back, and which job was open last.
package recovery

import (
	"crypto/sha256"
	"encoding/hex"
	"os"
	"path/filepath"
	"strings"

	"slotwright/winding/job"

	"github.com/adrg/xdg"
)

// Store is a folder of such files. The zero Store remembers nothing.
type Store struct{ Dir string }

// Default is the store in the person's state folder ($XDG_STATE_HOME and the like).
func Default() Store { return Store{filepath.Join(xdg.StateHome, "slotwright")} }

// SetLast remembers the job that is open.
func (s Store) SetLast(path string) {
	if abs, err := filepath.Abs(path); err == nil {
		s.write("last", abs+"\n")
	}
}

// Last is the job that was open last, "" when there is none or it is gone.
func (s Store) Last() string {
	text, ok := s.read("last")
	path := strings.TrimSpace(text)
	if !ok || path == "" {
		return ""
	}
	if _, err := os.Stat(path); err != nil {
		return ""
	}
	return path
}

// Put keeps unsaved work on a file ("" for the example); Drop forgets it.
func (s Store) Put(path, text string) { s.write(nameFor(path), text) }

// Drop forgets the unsaved work on a file.
func (s Store) Drop(path string) {
	if s.Dir != "" {
		_ = os.Remove(filepath.Join(s.Dir, nameFor(path)))
	}
}

// Recovered is the unsaved work on a file that an earlier session left behind.
func (s Store) Recovered(path string) (text string, ok bool) { return s.read(nameFor(path)) }

// nameFor is a file name that any path maps to, and only that one.
func nameFor(path string) string {
	if abs, err := filepath.Abs(path); err == nil && path != "" {
		path = abs
	}
	sum := sha256.Sum256([]byte(path))
	return "unsaved-" + hex.EncodeToString(sum[:8]) + ".toml"
}

func (s Store) write(name, text string) {
	if s.Dir == "" {
		return
	}
	if err := os.MkdirAll(s.Dir, 0o700); err != nil {
		return // a read-only home must not stop the work
	}
	_, _ = job.Save(filepath.Join(s.Dir, name), text, job.Mark{}, false)
}

func (s Store) read(name string) (string, bool) {
	if s.Dir == "" {
		return "", false
	}
	data, err := os.ReadFile(filepath.Join(s.Dir, name))
	if err != nil || len(data) > job.MaxBytes {
		return "", false
	}
	return string(data), true
}
