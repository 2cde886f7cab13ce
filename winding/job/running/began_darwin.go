package running

import (
	"fmt"

	"golang.org/x/sys/unix"
)

// began is when a process began, and whether it is alive.
func began(pid int) (token string, alive bool) {
	if !exists(pid) {
		return "", false
	}
	info, err := unix.SysctlKinfoProc("kern.proc.pid", pid)
	if err != nil {
		return "", true
	}
	at := info.Proc.P_starttime
	return fmt.Sprintf("%d.%d", at.Sec, at.Usec), true
}
