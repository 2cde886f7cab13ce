//go:build windows

package job

import (
	"io/fs"
	"os"

	"github.com/natefinch/atomic"
)

// openAtOnce has no meaning here: pipes do not occur among files.
const openAtOnce = 0

// mayWrite is ErrReadOnly for a file marked read-only.
func mayWrite(_ string, info fs.FileInfo) error {
	if info.Mode().Perm()&0o200 == 0 {
		return ErrReadOnly
	}
	return nil
}

// inherit leaves owner and rights to the folder, as is usual on this system.
func inherit(*os.File, string, fs.FileInfo) (lost string, err error) { return "", nil }

// rename is MoveFileEx, which replaces what is there.
func rename(from, to string) error { return atomic.ReplaceFile(from, to) }

func syncFolder(string) {}
