package recovery

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"time"

	"slotwright/winding/job"
	"slotwright/winding/job/running"
)

// Keeper keeps the unsaved work of one session. It writes and removes only files of its own.
type Keeper struct {
	store   Store
	path    string
	session string // in the names of its files
	// Typing and Before go into the copies that are written: see [Copy].
	Typing, Before string
}

// Begin opens a session on a job ("" for the example) and makes it known to others. The
// error says why nothing can be kept; the Keeper may be used all the same.
func (s Store) Begin(path string) (*Keeper, error) {
	k := &Keeper{store: s, session: fmt.Sprintf("%s-%08x", running.Self().Short(), rand.Uint32())}
	s.sweep()
	return k, k.Move(path)
}

// Move switches to another file, as after saving under another name.
func (k *Keeper) Move(path string) error {
	k.remove(k.name("open"))
	k.remove(k.name("unsaved"))
	k.path = whole(path)
	return k.store.write(k.name("open"), k.copy("", job.Mark{}).encode())
}

// Put keeps the unsaved work. base is the mark of the file it began from.
func (k *Keeper) Put(text string, base job.Mark) error { return k.put(k.copy(text, base)) }

// PutLast keeps the unsaved work of a session that ends now: the next may have it at once.
func (k *Keeper) PutLast(text string, base job.Mark) error {
	c := k.copy(text, base)
	c.ended = true
	return k.put(c)
}

func (k *Keeper) put(c Copy) error {
	if err := job.CheckText(c.Text); err != nil {
		return err
	}
	return k.store.write(k.name("unsaved"), c.encode())
}

// Drop removes the unsaved work that this session kept.
func (k *Keeper) Drop() error { return k.remove(k.name("unsaved")) }

// End records that the session is over. What it kept stays.
func (k *Keeper) End() { _ = k.remove(k.name("open")) }

// Others are the other windows open on the job; their Kept is when they were opened.
func (k *Keeper) Others() []Copy {
	var list []Copy
	for _, name := range k.store.names("open-" + nameOf(k.path) + "-") {
		if name == k.name("open") {
			continue
		}
		if c, err := k.store.readCopy(name); err == nil && c.State() != running.Ended {
			list = append(list, c)
		}
	}
	return list
}

func (k *Keeper) copy(text string, base job.Mark) Copy {
	return Copy{Job: k.path, By: running.Self(), Kept: time.Now(), Base: base, Text: text, Typing: k.Typing, Before: k.Before}
}

func (k *Keeper) name(kind string) string { return kind + "-" + nameOf(k.path) + "-" + k.session }

func (k *Keeper) remove(name string) error {
	if k.store.Dir == "" {
		return nil
	}
	err := os.Remove(filepath.Join(k.store.Dir, name))
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, fs.ErrInvalid) {
		return nil
	}
	return err
}

// names lists the files whose names begin with a prefix.
func (s Store) names(prefix string) []string {
	if s.Dir == "" {
		return nil
	}
	entries, err := os.ReadDir(s.Dir)
	if err != nil {
		return nil
	}
	var list []string
	for _, e := range entries {
		if strings.HasPrefix(e.Name(), prefix) {
			list = append(list, e.Name())
		}
	}
	return list
}

// sweep removes the signs of windows that are gone, and temporary files of killed sessions. There is no
// work in either.
func (s Store) sweep() {
	if s.Dir == "" {
		return
	}
	job.Sweep(s.Dir)
	for _, name := range s.names("open-") {
		if c, err := s.readCopy(name); err == nil && c.State() == running.Ended {
			_ = os.Remove(filepath.Join(s.Dir, name))
		}
	}
}
