// Package recovery remembers what must outlive the program without being in a job file: unsaved work,
// so that a killed session offers it back, which windows are open on which job, and which job was open
// last.
//
// Each session writes files of its own, and removes only those and what it was offered:
//
//	open-JOB-SESSION      a window is open on the job; without text
//	unsaved-JOB-SESSION   the unsaved work of a session
//	last                  the path of the job that was open last
//	recent                the paths of those before it, a line each
//	units                 the units that were chosen last, inches and °F by their words, then a line for each
//	                      of the jobs in which they were chosen last: the words, a tab, its path
//
// The first two begin with a line that identifies their session, see Copy.
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

// Store is a folder of such files. The zero Store remembers nothing, without error.
type Store struct {
	Dir string
	// Inch and Fahrenheit are the units set for every job at the start, nil where they are not set.
	Inch, Fahrenheit *bool
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

// unitsFile is the file of the units, mostUnits how many jobs it has a line for.
const (
	unitsFile = "units"
	mostUnits = 50
)

// SetUnits remembers the units that a person chose while a job was open, "" for one that has no file. A
// failure is no loss.
func (s Store) SetUnits(path string, u quantity.Choice) {
	lines := []string{unitWords(u)}
	at := whole(path)
	if at != "" && !strings.ContainsAny(at, "\n\t") {
		lines = append(lines, unitWords(u)+"\t"+at)
	}
	for i, line := range s.unitLines() {
		if _, of, _ := strings.Cut(line, "\t"); i > 0 && of != at && len(lines) <= mostUnits {
			lines = append(lines, line)
		}
	}
	_ = s.write(unitsFile, strings.Join(lines, "\n")+"\n")
}

// Units are those in which a job is shown: set for every job, else chosen while it was open, else those
// of most of its values; where none has a unit, those that were chosen last.
func (s Store) Units(path string, d job.Document) quantity.Choice {
	u := s.unitsOf(path, d)
	if s.Inch != nil {
		u.Inch = *s.Inch
	}
	if s.Fahrenheit != nil {
		u.Fahrenheit = *s.Fahrenheit
	}
	return u
}

func (s Store) unitsOf(path string, d job.Document) quantity.Choice {
	lines, at := s.unitLines(), whole(path)
	for i, line := range lines {
		if words, of, _ := strings.Cut(line, "\t"); i > 0 && of == at {
			return unitsSaid(words)
		}
	}
	if len(lines) == 0 {
		return d.Units(quantity.Choice{})
	}
	return d.Units(unitsSaid(lines[0]))
}

// unitLines are the lines of the units file; none where nobody ever chose.
func (s Store) unitLines() []string {
	if s.Dir == "" {
		return nil
	}
	data, err := job.ReadRegular(filepath.Join(s.Dir, unitsFile), 1<<19)
	if err != nil {
		return nil
	}
	return strings.FieldsFunc(string(data), func(r rune) bool { return r == '\n' })
}

func unitWords(u quantity.Choice) string {
	words := "mm"
	if u.Inch {
		words = "inch"
	}
	if u.Fahrenheit {
		words += " fahrenheit"
	}
	return words
}

func unitsSaid(line string) quantity.Choice {
	words := strings.Fields(line)
	return quantity.Choice{Inch: slices.Contains(words, "inch"), Fahrenheit: slices.Contains(words, "fahrenheit")}
}

// maxRecent is how many jobs are remembered.
const maxRecent = 12

// remember puts a job first in the list of recent ones. A failure is no loss.
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

// Recent are the jobs opened or saved last that still exist, the last first.
func (s Store) Recent() []string {
	var list []string
	for _, p := range s.recent() {
		if _, err := os.Stat(p); err == nil {
			list = append(list, p)
		}
	}
	return list
}

// Gone is the path of the job that was open last, if it no longer exists; else "".
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

// Last is the job that was open last, "" when there is none or it is gone and nothing of it was kept.
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

// nameOf maps a path, without its links, to a unique piece of a file name, so that two ways to a file
// are one.
func nameOf(path string) string {
	sum := job.SumOf(whole(path))
	return hex.EncodeToString(sum[:8])
}

// whole is an absolute path without links; "" (the example) stays.
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
