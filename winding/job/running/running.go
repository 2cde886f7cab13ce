// Package running knows which running program made a file, and whether it still runs: so that two
// windows on one job know of each other, and what a killed program left behind can be distinguished
// from what belongs to a living one.
package running

import (
	"fmt"
	"hash/fnv"
	"os"
	"sync"
)

// Program is one run of a program. A process number is reused, after a restart of the computer or
// sooner; together with the moment it began it is unique.
type Program struct {
	PID int `json:"pid"`
	// Began is a token for the moment the process began, "" where the system does not give it. It is
	// only ever compared.
	Began string `json:"began"`
	Host  string `json:"host"`
}

// State is whether a program runs.
type State int

const (
	// Ended programs do not come back.
	Ended State = iota
	// Runs: it is alive on this computer.
	Runs
	// Elsewhere: it ran on another computer, about which nothing is known here.
	Elsewhere
)

// Self is this program.
var Self = sync.OnceValue(func() Program {
	host, _ := os.Hostname()
	began, _ := began(os.Getpid())
	return Program{os.Getpid(), began, host}
})

// State finds out whether the program runs.
func (p Program) State() State {
	if p.Host != Self().Host {
		return Elsewhere
	}
	now, alive := began(p.PID)
	if !alive || (now != "" && p.Began != "" && now != p.Began) {
		return Ended
	}
	return Runs
}

// Short is the program in a few letters for a file name, the same on every call: its computer, its
// number and its beginning.
func (p Program) Short() string {
	return fmt.Sprintf("%08x-%d-%08x", hash(p.Host), p.PID, hash(p.Began))
}

// EndedShort reports whether the program named by Short ran on this computer and has ended. It is false
// for everything that Short did not write.
func EndedShort(short string) bool {
	var host, start uint32
	var pid int
	if n, err := fmt.Sscanf(short, "%08x-%d-%08x", &host, &pid, &start); n != 3 || err != nil || pid <= 0 {
		return false
	}
	if host != hash(Self().Host) || short != fmt.Sprintf("%08x-%d-%08x", host, pid, start) {
		return false
	}
	now, alive := began(pid)
	return !alive || (now != "" && hash(now) != start)
}

func hash(s string) uint32 {
	h := fnv.New32a()
	_, _ = h.Write([]byte(s))
	return h.Sum32()
}
