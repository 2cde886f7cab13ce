//go:build !windows

package job

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"

	"golang.org/x/sys/unix"
)

// openAtOnce keeps the opening of a pipe from waiting for its other end.
const openAtOnce = unix.O_NONBLOCK

// mayWrite says why a file must not be written: its disk is read-only or its folder is not ours to
// write in, which no consent changes; or it is marked read-only or not ours to write, which is
// ErrReadOnly.
func mayWrite(path string, info fs.FileInfo) error {
	err := unix.Access(path, unix.W_OK)
	if errors.Is(err, unix.EROFS) {
		return err
	}
	if in := unix.Access(filepath.Dir(path), unix.W_OK|unix.X_OK); in != nil {
		return in
	}
	if info.Mode().Perm()&0o222 == 0 {
		return ErrReadOnly
	}
	if err != nil {
		return &FileError{"the file is not yours to write; nothing was written", path, ErrReadOnly}
	}
	return nil
}

// inherit gives the new file what the old one had besides its text.
func inherit(f *os.File, path string, old fs.FileInfo) (lost string, err error) {
	if old == nil {
		return "", nil
	}
	var missed []string
	was, ok := old.Sys().(*syscall.Stat_t)
	if ok && (int(was.Uid) != os.Geteuid() || int(was.Gid) != os.Getegid()) && f.Chown(int(was.Uid), int(was.Gid)) != nil {
		missed = append(missed, "its owner is now you")
	}
	// After the owner, since changing that clears special bits.
	if err := f.Chmod(old.Mode() & (fs.ModePerm | fs.ModeSetuid | fs.ModeSetgid | fs.ModeSticky)); err != nil {
		return "", err
	}
	if !copyAttributes(f, path) {
		missed = append(missed, "it lost its extended attributes")
	}
	if ok && was.Nlink > 1 {
		missed = append(missed, "its other names (hard links) keep the old text")
	}
	return strings.Join(missed, "; "), nil
}

func rename(from, to string) error { return os.Rename(from, to) }

// syncFolder writes the new name through to the disk; where that is not possible the rename is still
// atomic.
func syncFolder(dir string) {
	if d, err := os.Open(dir); err == nil {
		_ = d.Sync()
		_ = d.Close()
	}
}
