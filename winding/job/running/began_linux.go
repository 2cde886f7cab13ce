package running

import (
	"fmt"
	"os"
	"strings"
)

// began is when a process began, in ticks since the computer started (field 22 of proc_pid_stat(5)),
// and whether it is alive. One that has ended and only waits to be reaped (state Z or X) is not.
func began(pid int) (token string, alive bool) {
	data, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
	if err != nil {
		if _, noProc := os.Stat("/proc/self"); noProc != nil {
			return "", exists(pid)
		}
		return "", false
	}
	// The name in brackets may hold blanks and brackets: the fields follow the last one.
	_, rest, _ := cutLast(string(data), ") ")
	fields := strings.Fields(rest)
	if len(fields) < 20 {
		return "", exists(pid)
	}
	boot, _ := os.ReadFile("/proc/sys/kernel/random/boot_id")
	return strings.TrimSpace(string(boot)) + "." + fields[19], fields[0] != "Z" && fields[0] != "X"
}

func cutLast(s, sep string) (before, after string, ok bool) {
	i := strings.LastIndex(s, sep)
	if i < 0 {
		return s, "", false
	}
	return s[:i], s[i+len(sep):], true
}
