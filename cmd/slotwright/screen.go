package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"syscall"

	"slotwright/tui"
	"slotwright/tui/kit"
	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/winding/job"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// appearance is the flags of the screen.
type appearance struct{ ascii, example bool }

// openScreen runs the workbench until it is left.
func openScreen(ctx context.Context, s streams, args []string, look appearance) error {
	if !isTerminal(s.out) || os.Getenv("TERM") == "dumb" {
		return errors.New("the screen needs a terminal; for text use a verb: slotwright report JOB, slotwright card JOB")
	}
	store := recovery.Default()
	open, err := openSession(argument(args), store, look.example)
	if err != nil {
		return err
	}
	open.Theme = kit.Theme{Colour: lipgloss.ColorProfile() != termenv.Ascii, ASCII: look.ascii || plainLocale()}
	model := tui.New(open, store)
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer stop()
	_, err = tea.NewProgram(model, tea.WithAltScreen(), tea.WithContext(ctx), tea.WithoutSignalHandler()).Run()
	if ctx.Err() != nil || err != nil {
		model.KeepUnsaved()
	}
	if ctx.Err() != nil {
		return jobProblem{text: "ended by a signal; unsaved work is offered again next time"}
	}
	if err != nil {
		return fmt.Errorf("the screen failed (%w); unsaved work is offered again next time", err)
	}
	if open.Path != "" && !open.Dirty() {
		fmt.Fprintln(s.out, "saved: "+open.Path)
	}
	return nil
}

// openSession is the job to show: the one named, else the last one, else the example.
func openSession(path string, store recovery.Store, example bool) (*session.Session, error) {
	if path == "" && !example {
		path = store.Last()
	}
	if path == "" || example {
		return session.NewExample(), nil
	}
	d, mark, err := job.Load(path)
	if err != nil {
		if _, gone := os.Stat(path); gone != nil {
			return nil, jobProblem{text: err.Error() + "; to begin one: slotwright new " + path}
		}
		return nil, jobProblem{text: err.Error()}
	}
	store.SetLast(path)
	return session.New(d, path, mark), nil
}

// plainLocale reports whether the environment says that only ASCII can be shown.
func plainLocale() bool {
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := os.Getenv(name); v != "" {
			return v == "C" || v == "POSIX"
		}
	}
	return false
}
