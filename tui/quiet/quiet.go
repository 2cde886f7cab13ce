// Package quiet keeps the program from asking the terminal questions before it has started.
//
// Linking bubbletea v1 is enough to send OSC 11 ("what is your background colour?") from a package
// initialiser, for every verb of the command, and to wait up to five seconds for a terminal that does
// not answer. A late answer is then typed into whatever field has the focus. There is no option to turn
// that off, but termenv asks nothing when TERM is "dumb". So this package sets TERM to "dumb" before
// bubbletea initialises, and [Restore] puts the person's own value back; package tui calls it in its
// own init.
//
// It works because of a rule of the language: of the packages that are ready to be initialised, the one
// whose import path sorts first goes first. A package that imports syscall alone is ready before time,
// hence before os and everything that depends on os.
//
// This package must never import anything but syscall: one more import and the five seconds are back. A
// test checks that.
package quiet

import "syscall"

var (
	savedTERM string
	hadTERM   bool
	restored  bool
)

func init() {
	savedTERM, hadTERM = syscall.Getenv("TERM")
	_ = syscall.Setenv("TERM", "dumb")
}

// Restore gives TERM the value it had when the process started, or removes it
// if there was none. It acts once: later calls leave TERM alone. Call it from
// an init that runs after bubbletea's, that is, from a package that imports
// both; it is not safe to call from two goroutines at once.
func Restore() {
	if restored {
		return
	}
	restored = true
	if hadTERM {
		_ = syscall.Setenv("TERM", savedTERM)
		return
	}
	_ = syscall.Unsetenv("TERM")
}
