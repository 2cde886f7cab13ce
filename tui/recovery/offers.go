package recovery

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/job/running"
)

// Damaged is a copy that cannot be given back. It is left where it is.
type Damaged struct {
	File string
	Why  error
}

// Offers is the unsaved work on a job left by sessions that have ended, the newest first. What a
// running session keeps is its own. Damaged copies are listed separately, and never given back.
func (s Store) Offers(path string) (copies []Copy, damaged []Damaged) {
	for _, name := range s.names("unsaved-" + nameOf(path)) {
		c, err := s.readCopy(name)
		if err == nil && strings.TrimSpace(c.Text) == "" {
			err = errNoText
		}
		switch {
		case err != nil:
			damaged = append(damaged, Damaged{filepath.Join(s.Dir, name), err})
		case c.State() != running.Runs:
			copies = append(copies, c)
		}
	}
	slices.SortStableFunc(copies, func(a, b Copy) int { return b.Kept.Compare(a.Kept) })
	return copies, damaged
}

// Discard removes a copy that was offered.
func (s Store) Discard(c Copy) error { return os.Remove(c.File) }

func (s Store) readCopy(name string) (Copy, error) {
	file := filepath.Join(s.Dir, name)
	data, err := job.ReadRegular(file, maxCopy)
	if err != nil {
		return Copy{}, err
	}
	c, err := decode(string(data))
	c.File = file
	return c, err
}
