//go:build unix

package job

import (
	"syscall"
	"time"
)

// spent is the processor time of this process, which other programs on the machine do not lengthen.
func spent() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
