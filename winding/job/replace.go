package job

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"

	"slotwright/winding/job/running"
)

// Temporary files are in the folder of the file they become, because only within a disk is a rename
// atomic. Their names say which program made them and do not grow with the file's own name, which may
// be as long as a name can be.
const temporary = ".slotwright-"

// replace replaces a file's content: a temporary file in the same folder, written through to the disk,
// takes its name. old is the existing file, nil when there is none. lost says what of the old file
// could not be kept.
func replace(path string, data []byte, old fs.FileInfo) (lost string, err error) {
	dir := filepath.Dir(path)
	f, err := openTemporary(dir, old == nil)
	if err != nil {
		return "", err
	}
	name := f.Name()
	defer func() {
		if err != nil {
			_ = f.Close()
			_ = os.Remove(name)
		}
	}()
	if _, err = f.Write(data); err != nil {
		return "", err
	}
	if lost, err = inherit(f, path, old); err != nil {
		return "", err
	}
	if err = f.Sync(); err != nil {
		return "", err
	}
	if err = f.Close(); err != nil {
		return "", err
	}
	if err = rename(name, path); err != nil {
		return "", err
	}
	syncFolder(dir)
	return lost, nil
}

// openTemporary makes a new temporary file in a folder. One that will be a new file gets the mode of
// new files; one that replaces another is private until it has the other's mode.
func openTemporary(dir string, fresh bool) (*os.File, error) {
	mode := fs.FileMode(0o600)
	if fresh {
		mode = 0o666
	}
	for range 100 {
		name := filepath.Join(dir, fmt.Sprintf("%s%s-%08x", temporary, running.Self().Short(), rand.Uint32()))
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
	}
	return nil, fs.ErrExist
}

// Sweep removes the temporary files that programs of ours left in a folder when they were killed. Those
// of a program that still runs, or that ran on another computer, stay.
func Sweep(dir string) {
	names, err := filepath.Glob(filepath.Join(escapeGlob(dir), temporary+"*"))
	if err != nil {
		return
	}
	for _, name := range names {
		short := strings.TrimPrefix(filepath.Base(name), temporary)
		if end := strings.LastIndexByte(short, '-'); end > 0 && running.EndedShort(short[:end]) {
			_ = os.Remove(name)
		}
	}
}

// escapeGlob makes a folder's name literal in a pattern.
func escapeGlob(dir string) string {
	return strings.NewReplacer(`\`, `\\`, `[`, `\[`, `*`, `\*`, `?`, `\?`).Replace(dir)
}
