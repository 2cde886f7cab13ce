package job

import (
	"encoding/hex"
	"errors"
	"fmt"
	"hash/fnv"
	"io"
	"io/fs"
	"os"
	"strings"
	"unicode/utf8"
)

// MaxBytes is the largest file that is read as a job. No more than one byte beyond it is ever read of
// anything.
const MaxBytes = 1 << 20

var lstat = os.Lstat

// Mark identifies a file's content when it was read, to see whether somebody else has changed it since.
// The zero Mark is of a file that does not exist.
type Mark struct {
	there bool
	sum   [sumSize]byte
}

const sumSize = 16 // bytes

// SumOf is a hash of a text, equal for two texts with a chance of one in 2^128: 128-bit FNV-1a, which
// detects an accident or an edit. It does not prevent anyone from making two texts with one sum; a hash
// that does (SHA-256 of the standard library) runs its self-tests at every start, and takes half a
// megabyte of memory.
func SumOf(text string) [sumSize]byte {
	h := fnv.New128a()
	_, _ = io.WriteString(h, text) // a hash never fails
	return [sumSize]byte(h.Sum(nil))
}

// MarkOf is the mark of a file that holds this text.
func MarkOf(text string) Mark { return Mark{true, SumOf(text)} }

// String is the mark as hexadecimal digits, "" for a file that is not there.
func (m Mark) String() string {
	if !m.there {
		return ""
	}
	return hex.EncodeToString(m.sum[:])
}

// ParseMark reads what String wrote; ok is false when it is no mark.
func ParseMark(s string) (m Mark, ok bool) {
	if s == "" {
		return Mark{}, true
	}
	b, err := hex.DecodeString(s)
	if err != nil || len(b) != sumSize {
		return Mark{}, false
	}
	return Mark{true, [sumSize]byte(b)}, true
}

// Load reads a job file. The error is a *FileError: the file cannot be read, or is not text; what is
// wrong inside the text is in the Document's Problems.
func Load(path string) (Document, Mark, error) {
	text, err := ReadText(path)
	if err != nil {
		return Document{}, Mark{}, err
	}
	return Parse(text), MarkOf(text), nil
}

// ReadText reads a text file of at most MaxBytes. Folders, pipes and devices are refused without being
// opened, so that nothing here blocks or reads without end.
func ReadText(path string) (string, error) {
	data, err := ReadRegular(path, MaxBytes)
	if err != nil {
		return "", err
	}
	if err := CheckText(string(data)); err != nil {
		return "", &FileError{err.Error(), path, err}
	}
	return string(data), nil
}

// CheckText says why something cannot be the text of a job file: too long, or not UTF-8 text. It is nil
// when it can.
func CheckText(text string) error {
	if len(text) > MaxBytes {
		return errors.New(tooLong(MaxBytes))
	}
	if !utf8.ValidString(text) || strings.IndexByte(text, 0) >= 0 {
		return errors.New("read bytes that are not UTF-8 text, expected a job file; save it as UTF-8")
	}
	return nil
}

// ReadRegular is the content of an ordinary file of at most so many bytes.
func ReadRegular(path string, most int) ([]byte, error) {
	info, err := os.Stat(path)
	if err == nil {
		err = ordinary(path, info)
	}
	if err != nil {
		return nil, plainError(path, err)
	}
	// It may have become something else since: do not wait for a pipe's other end.
	f, err := os.OpenFile(path, os.O_RDONLY|openAtOnce, 0)
	if err != nil {
		return nil, plainError(path, err)
	}
	defer f.Close()
	if info, err = f.Stat(); err == nil {
		err = ordinary(path, info)
	}
	if err != nil {
		return nil, plainError(path, err)
	}
	data, err := io.ReadAll(io.LimitReader(f, int64(most)+1))
	if err != nil {
		return nil, plainError(path, err)
	}
	if len(data) > most {
		return nil, &FileError{tooLong(most), path, nil}
	}
	return data, nil
}

// ordinary refuses what is not a plain file.
func ordinary(path string, info fs.FileInfo) error {
	what := ""
	switch mode := info.Mode(); {
	case mode.IsRegular():
		return nil
	case mode.IsDir():
		what = "a folder"
	case mode&fs.ModeNamedPipe != 0:
		what = "a pipe"
	case mode&fs.ModeSocket != 0:
		what = "a socket"
	default:
		what = "a device"
	}
	return &FileError{"read " + what + ", expected an ordinary file", path, ErrKind}
}

func tooLong(most int) string {
	return fmt.Sprintf("read more than %d bytes, expected a job file of at most that", most)
}
