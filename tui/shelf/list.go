package shelf

import (
	"cmp"
	"fmt"
	"path/filepath"
	"slices"

	"slotwright/tui/session"
	"slotwright/winding/shelf"
)

// listed is what is known of the folder.
type listed struct {
	folder string
	// all is every job as read, list what the search leaves, sorted.
	all, list []shelf.Entry
	bench     shelf.Bench
	left      []shelf.LeftOut
	wrong     string // why the folder could not be read
	reading   bool   // it is being read, for the first time or again
}

// reading is the result of reading the folder.
type reading struct {
	all   []shelf.Entry
	bench shelf.Bench
	left  []shelf.LeftOut
	wrong string
}

// read looks at a folder.
func read(folder string) reading {
	all, left, err := shelf.Read(folder)
	if err != nil {
		return reading{wrong: err.Error()}
	}
	return reading{all: all, bench: shelf.Learn(all), left: left}
}

// where is the folder that is listed.
func (v *View) where(s *session.Session) string {
	if v.folder != "" {
		return v.folder
	}
	return s.Folder()
}

// look asks for the folder to be read, unless it was, and takes in what has been read. It is read again
// when the open job was saved; the jobs stay meanwhile.
func (v *View) look(s *session.Session) {
	folder := v.where(s)
	about := fmt.Sprintf("%s\n%d\n%v", folder, v.again, s.Mark())
	s.Later("shelf", about, func() any { return read(folder) })
	value, done, wrong := s.Answer("shelf", about)
	if v.shown.folder != folder {
		v.shown = listed{folder: folder}
	}
	v.shown.reading = !done
	if found, ok := value.(reading); ok && done {
		v.shown.all, v.shown.bench, v.shown.left, v.shown.wrong = found.all, found.bench, found.left, found.wrong
	} else if wrong != "" {
		v.shown.wrong = wrong
	}
	v.shown.list = shelf.Sort(shelf.Find(v.shown.all, v.typed), v.by)
	if !v.least {
		slices.Reverse(v.shown.list)
	}
	slices.SortStableFunc(v.shown.list, func(a, b shelf.Entry) int { return cmp.Compare(min(1, len(a.Problem)), min(1, len(b.Problem))) })
	if i := v.focus(); i < len(v.shown.list) {
		v.marked = v.shown.list[i].File
	}
}

// focus is the index of the marked job, 0 where it is not listed.
func (v *View) focus() int {
	return max(0, slices.IndexFunc(v.shown.list, func(e shelf.Entry) bool { return e.File == v.marked }))
}

// entry is the marked job.
func (v *View) entry() (shelf.Entry, bool) {
	if i := v.focus(); i < len(v.shown.list) {
		return v.shown.list[i], true
	}
	return shelf.Entry{}, false
}

// path is the marked job's file.
func (v *View) path() string {
	e, _ := v.entry()
	return filepath.Join(v.shown.folder, e.File)
}
