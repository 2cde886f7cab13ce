// Package recovery remembers what must outlive the program without being in a job file:
// unsaved work, so that a killed session offers it back, which windows are open on which
// job, and which job was open last.
//
// Each session writes files of its own, and takes away only those and what it was offered:
//
//	open-JOB-SESSION      a window is open on the job; without text
//	unsaved-JOB-SESSION   the unsaved work of a session
//	last                  the path of the job that was open last
//	recent                the paths of those before it, a line each
//	units                 the units that were chosen last, inches and °F by their words
//
// The first two begin with a line that says whose they are, see Copy.
package recovery

import (
	"encoding/hex"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/adrg/xdg"
)

// Store is a folder of such files. The zero Store remembers nothing, and is content.
type Store struct {
	Dir string
	// missing says why there is no folder where there should be one.
	missing string
}

// Default is the store in the person's state folder ($XDG_STATE_HOME and the like).
func Default() Store {
	if runtime.GOOS != "windows" && os.Getenv("HOME") == "" && !filepath.IsAbs(os.Getenv("XDG_STATE_HOME")) {
		return Store{missing: "neither HOME nor XDG_STATE_HOME says where"}
	}
	return Store{Dir: filepath.Join(xdg.StateHome, "slotwright")}
}

// SetLast remembers the job that is open.
func (s Store) SetLast(path string) error {
	abs, err := filepath.Abs(path)
	if err != nil {
		return err
	}
	if !strings.Contains(abs, "\n") {
		s.remember(abs)
	}
	return s.write("last", abs+"\n")
}

// SetUnits remembers the units that a person chose. That it could not be is no loss.
func (s Store) SetUnits(u quantity.Choice) {
	words := "mm"
	if u.Inch {
		words = "inch"
	}
	if u.Fahrenheit {
		words += " fahrenheit"
	}
	_ = s.write("units", words+"\n")
}

// Units are those that were chosen last; chosen is false where nobody ever did.
func (s Store) Units() (u quantity.Choice, chosen bool) {
	if s.Dir == "" {
		return u, false
	}
	data, err := job.ReadRegular(filepath.Join(s.Dir, "units"), 1<<10)
	words := strings.Fields(string(data))
	return quantity.Choice{Inch: slices.Contains(words, "inch"), Fahrenheit: slices.Contains(words, "fahrenheit")}, err == nil && len(words) > 0
}

// maxRecent is how many jobs are remembered.
const maxRecent = 12

// remember puts a job first in the list of recent ones. That it could not be is no loss.
func (s Store) remember(abs string) {
	list := []string{abs}
	for _, p := range s.recent() {
		if p != abs && len(list) < maxRecent {
			list = append(list, p)
		}
	}
	_ = s.write("recent", strings.Join(list, "\n")+"\n")
}

func (s Store) recent() []string {
	if s.Dir == "" {
		return nil
	}
	data, err := job.ReadRegular(filepath.Join(s.Dir, "recent"), 1<<17)
	if err != nil {
		return nil
	}
	return strings.FieldsFunc(string(data), func(r rune) bool { return r == '\n' })
}

// Recent are the jobs opened or saved last that are still there, the last first.
func (s Store) Recent() []string {
	var list []string
	for _, p := range s.recent() {
		if _, err := os.Stat(p); err == nil {
			list = append(list, p)
		}
	}
	return list
}

// Gone is the path of the job that was open last, when that is not there any more; else "".
func (s Store) Gone() string {
	if s.Dir == "" {
		return ""
	}
	data, err := job.ReadRegular(filepath.Join(s.Dir, "last"), 1<<16)
	path := strings.TrimSuffix(string(data), "\n")
	if err != nil || path == "" {
		return ""
	}
	if _, err := os.Stat(path); err == nil {
		return ""
	}
	return path
}

// Last is the job that was open last, "" when there is none or it is gone and nothing of
// it was kept.
func (s Store) Last() string {
	if s.Dir == "" {
		return ""
	}
	data, err := job.ReadRegular(filepath.Join(s.Dir, "last"), 1<<16)
	path := strings.TrimSuffix(string(data), "\n")
	if err != nil || path == "" {
		return ""
	}
	if _, err := os.Stat(path); err != nil {
		if copies, _ := s.Offers(path); len(copies) == 0 {
			return ""
		}
	}
	return path
}

// write puts a file into the folder.
func (s Store) write(name, text string) error {
	if s.missing != "" {
		return errors.New(s.missing)
	}
	if s.Dir == "" {
		return nil
	}
	if err := os.MkdirAll(s.Dir, 0o700); err != nil {
		if deeper := errors.Unwrap(err); deeper != nil {
			err = deeper
		}
		return &job.FileError{Reason: err.Error(), Path: s.Dir, Err: err}
	}
	_, err := job.Write(filepath.Join(s.Dir, name), text, job.Mark{}, job.Everything)
	return err
}

// nameOf is a piece of a file name that any path maps to, and only that one: the path
// without its links, so that two ways to a file are one.
func nameOf(path string) string {
	sum := job.SumOf(whole(path))
	return hex.EncodeToString(sum[:8])
}

// whole is a path from the root on, without links; "" (the example) stays.
func whole(path string) string {
	if path == "" {
		return ""
	}
	if abs, err := filepath.Abs(path); err == nil {
		path = abs
	}
	if real, err := filepath.EvalSymlinks(path); err == nil {
		return real
	}
	if dir, err := filepath.EvalSymlinks(filepath.Dir(path)); err == nil {
		return filepath.Join(dir, filepath.Base(path))
	}
	return path
}
