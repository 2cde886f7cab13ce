package job

import (
	"errors"
	"io/fs"
	"path/filepath"
	"syscall"

	"slotwright/winding/text"
)

// FileError says why a file cannot be read or written: the reason first, because lines are cut at their
// end, and the path after it.
type FileError struct {
	Reason, Path string
	Err          error // for errors.Is; may be nil
}

// Error is one sentence, safe to write to a terminal.
func (e *FileError) Error() string { return e.Reason + ": " + text.Visible(e.Path) }

// Unwrap gives the cause, for errors.Is.
func (e *FileError) Unwrap() error { return e.Err }

// plainWords are the failures a person can do something about.
var plainWords = []struct {
	err  error
	says string
}{
	{syscall.ENOSPC, "the disk is full; make room, or choose another place"},
	{syscall.EDQUOT, "your share of the disk is used up; make room, or choose another place"},
	{syscall.EFBIG, "the file would be larger than is allowed here; choose another place"},
	{syscall.EROFS, "this disk can only be read; choose another place"},
	{syscall.ENAMETOOLONG, "the file name is too long; choose a shorter one"},
	{syscall.ENOTDIR, "a part of the path is a file, not a folder"},
	{syscall.EISDIR, "read a folder, expected a file"},
	{syscall.ELOOP, "the links go round in a circle"},
	{fs.ErrPermission, "not allowed; check who owns the file and its folder"},
}

// plainError says what went wrong with a file without the name of a system call.
func plainError(path string, err error) error {
	var done *FileError
	if err == nil || errors.As(err, &done) {
		return err
	}
	if errors.Is(err, fs.ErrNotExist) {
		return &FileError{missing(path), path, err}
	}
	for _, w := range plainWords {
		if errors.Is(err, w.err) {
			return &FileError{w.says, path, err}
		}
	}
	if deeper := errors.Unwrap(err); deeper != nil {
		return &FileError{deeper.Error(), path, err}
	}
	return &FileError{err.Error(), path, err}
}

// missing names the first part of a path that does not exist: the folder, or the file.
func missing(path string) string {
	if path == "" {
		return "read no name, expected a file name"
	}
	gone := ""
	for dir := filepath.Dir(path); ; dir = filepath.Dir(dir) {
		if _, err := lstat(dir); err == nil || dir == filepath.Dir(dir) {
			break
		}
		gone = dir
	}
	if gone != "" {
		return "there is no folder " + text.Visible(gone) + "; make it first, or choose another place"
	}
	return "there is no such file"
}
