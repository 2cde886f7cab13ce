package job

import (
	"bytes"
	"os"

	"golang.org/x/sys/unix"
)

// copyAttributes gives a file the extended attributes of another; false when one of them could not be
// copied.
func copyAttributes(to *os.File, from string) bool {
	size, err := unix.Listxattr(from, nil)
	if err != nil || size == 0 {
		return true // none, or a disk without such attributes
	}
	names := make([]byte, size)
	if size, err = unix.Listxattr(from, names); err != nil {
		return false
	}
	whole := true
	for _, name := range bytes.Split(bytes.TrimRight(names[:size], "\x00"), []byte{0}) {
		whole = copyAttribute(to, from, string(name)) && whole
	}
	return whole
}

func copyAttribute(to *os.File, from, name string) bool {
	size, err := unix.Getxattr(from, name, nil)
	if err != nil {
		return false
	}
	value := make([]byte, size)
	if size, err = unix.Getxattr(from, name, value); err != nil {
		return false
	}
	return unix.Fsetxattr(int(to.Fd()), name, value[:size], 0) == nil
}
