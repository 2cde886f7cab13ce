//go:build !windows

package running

import "golang.org/x/sys/unix"

// exists reports whether there is a process with this number, ours or another's.
func exists(pid int) bool {
	err := unix.Kill(pid, 0)
	return pid > 0 && (err == nil || err == unix.EPERM)
}
