package running

import (
	"fmt"

	"golang.org/x/sys/windows"
)

// began is when a process began, and whether it is alive.
func began(pid int) (token string, alive bool) {
	h, err := windows.OpenProcess(windows.PROCESS_QUERY_LIMITED_INFORMATION, false, uint32(pid))
	if err != nil {
		return "", err == windows.ERROR_ACCESS_DENIED
	}
	defer windows.CloseHandle(h)
	var start, exit, kernel, user windows.Filetime
	if windows.GetProcessTimes(h, &start, &exit, &kernel, &user) != nil {
		return "", true
	}
	return fmt.Sprint(start.Nanoseconds()), exit.HighDateTime == 0 && exit.LowDateTime == 0
}
