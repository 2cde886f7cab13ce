package job

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// Obstacles to saving that the person may override, see Consent.
var (
	// ErrChanged says that the file on disk is not the one that was read.
	ErrChanged = errors.New("the file was changed by something else since it was opened; save under another name, or open it again")
	// ErrGone says that the file that was read no longer exists.
	ErrGone = errors.New("the file is gone; save again to write it anew")
	// ErrReadOnly says that the file is marked read-only, or is not ours to write.
	ErrReadOnly = errors.New("the file is marked read-only; nothing was written")
	// ErrKind says that the path is not that of an ordinary file.
	ErrKind = errors.New("not an ordinary file")
)

// Consent is what the person has agreed to beforehand.
type Consent uint8

const (
	// OverChanged overwrites what something else has written since.
	OverChanged Consent = 1 << iota
	// Anew writes a file that has gone.
	Anew
	// OverReadOnly overwrites a file that is marked read-only, or is not ours to write; it keeps the
	// mark.
	OverReadOnly
)

// Everything agrees to all of it: for the program's own files.
const Everything = OverChanged | Anew | OverReadOnly

// Saved is the result of saving.
type Saved struct {
	// Mark is that of the file as it is now.
	Mark Mark
	// Lost says in words what could not be carried over from the old file, "" when
	// nothing is: its other names (hard links), its owner, its attributes.
	Lost string
}

// Save writes the text to the path, atomically: a reader, or a power cut, finds the old file or the new
// one, never half of one. Without OverChanged the file must still be what the mark says (or not exist,
// for the zero mark). A link is followed and stays; mode, owner and attributes are those of the old
// file. The error is a *FileError; for what Consent can allow, errors.Is finds ErrChanged, ErrGone or
// ErrReadOnly. When there is an error nothing was written.
func Save(path, text string, mark Mark, agreed Consent) (Saved, error) {
	if err := CheckText(text); err != nil { // it could not be opened again
		return Saved{}, &FileError{"nothing was written: " + err.Error(), path, err}
	}
	return Write(path, text, mark, agreed)
}

// Write is Save for what is not a job, such as a winding card.
func Write(path, text string, mark Mark, agreed Consent) (Saved, error) {
	target, err := follow(path)
	if err != nil {
		return Saved{}, plainError(path, err)
	}
	old, err := os.Stat(target)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		old = nil
		if mark.there && agreed&Anew == 0 {
			if why := missing(target); strings.Contains(why, "no folder") {
				return Saved{}, &FileError{why, path, err}
			}
			return Saved{}, &FileError{ErrGone.Error(), path, ErrGone}
		}
	case err != nil:
		return Saved{}, plainError(path, err)
	default:
		if err := mayReplace(path, target, old, mark, agreed); err != nil {
			return Saved{}, err
		}
	}
	Sweep(filepath.Dir(target))
	lost, err := replace(target, []byte(text), old)
	if err != nil {
		return Saved{}, plainError(path, err)
	}
	return Saved{MarkOf(text), lost}, nil
}

// mayReplace says why an existing file must not be overwritten.
func mayReplace(path, target string, old fs.FileInfo, mark Mark, agreed Consent) error {
	if err := ordinary(path, old); err != nil {
		return err
	}
	if agreed&OverChanged == 0 {
		data, err := ReadRegular(target, MaxBytes)
		if err != nil {
			return plainError(path, err)
		}
		if MarkOf(string(data)) != mark {
			return &FileError{ErrChanged.Error(), path, ErrChanged}
		}
	}
	switch err := mayWrite(target, old); {
	case err == nil, errors.Is(err, ErrReadOnly) && agreed&OverReadOnly != 0:
		return nil
	default:
		return plainError(path, err)
	}
}

// follow is where a path leads through links, even when nothing exists there yet.
func follow(path string) (string, error) {
	if path == "" || strings.HasSuffix(path, string(filepath.Separator)) {
		return "", &FileError{"read the name of a folder, expected a file name", path, ErrKind}
	}
	for range 40 {
		info, err := lstat(path)
		if err != nil || info.Mode()&fs.ModeSymlink == 0 {
			return path, nil // any other fault shows when it is used
		}
		to, err := os.Readlink(path)
		if err != nil {
			return "", err
		}
		if !filepath.IsAbs(to) {
			// Through its folder's own links, as the system would go.
			dir, err := filepath.EvalSymlinks(filepath.Dir(path))
			if err != nil {
				return "", err
			}
			to = filepath.Join(dir, to)
		}
		path = to
	}
	return "", &FileError{"the links go round in a circle", path, ErrKind}
}
