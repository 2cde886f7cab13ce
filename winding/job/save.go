package job

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"
)

// MaxBytes is the largest file that is read as a job.
const MaxBytes = 1 << 20

// Mark is what a file was when it was read, to see whether somebody else has changed
// it since.
type Mark struct {
	there bool
	sum   [sha256.Size]byte
}

// ErrChanged says that the file on disk is not the one that was read.
var ErrChanged = errors.New("the file was changed by something else since it was opened; save under another name, or open it again")

// Load reads a job file. The error is one of the file system, or says that it is not
// text; what is wrong inside the text is in the Document's Problems.
func Load(path string) (Document, Mark, error) {
	info, err := os.Stat(path)
	if err != nil {
		return Document{}, Mark{}, plainError(path, err)
	}
	if info.IsDir() {
		return Document{}, Mark{}, fmt.Errorf("%s: read a folder, expected a job file", path)
	}
	if info.Size() > MaxBytes {
		return Document{}, Mark{}, fmt.Errorf("%s: read %d bytes, expected a job file of at most %d", path, info.Size(), MaxBytes)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return Document{}, Mark{}, plainError(path, err)
	}
	if !utf8.Valid(data) || strings.IndexByte(string(data), 0) >= 0 {
		return Document{}, Mark{}, fmt.Errorf("%s: read bytes that are not UTF-8 text, expected a job file; save it as UTF-8", path)
	}
	return Parse(string(data)), Mark{true, sha256.Sum256(data)}, nil
}

// Save writes the text to the path, atomically: a reader, or a power cut, finds the
// old file or the new one, never half of one. With check, the file must still be what
// the mark says (or not be there, for the zero mark); else the error is ErrChanged
// and nothing is written. It returns the mark of what is there now.
func Save(path, text string, mark Mark, check bool) (Mark, error) {
	target, err := filepath.EvalSymlinks(path)
	if errors.Is(err, fs.ErrNotExist) {
		target = path
	} else if err != nil {
		return mark, plainError(path, err)
	}
	if check {
		now, err := markOf(target)
		if err != nil {
			return mark, err
		}
		if now != mark {
			return mark, fmt.Errorf("%s: %w", path, ErrChanged)
		}
	}
	if err := replaceFile(target, []byte(text)); err != nil {
		return mark, plainError(path, err)
	}
	return Mark{true, sha256.Sum256([]byte(text))}, nil
}

func markOf(path string) (Mark, error) {
	data, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return Mark{}, nil
	}
	if err != nil {
		return Mark{}, plainError(path, err)
	}
	return Mark{true, sha256.Sum256(data)}, nil
}

// plainError says what went wrong with a file without the name of a system call.
func plainError(path string, err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: there is no such file", path)
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("%s: not allowed; check who owns the file and its folder", path)
	}
	var p *fs.PathError
	if errors.As(err, &p) {
		err = p.Err
	}
	return fmt.Errorf("%s: %w", path, err)
}
