package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"

	"slotwright/tui"
	"slotwright/tui/kit"
	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/winding/job"
	"slotwright/winding/text"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// appearance is the flags of the screen.
type appearance struct {
	ascii, example, mouse bool
	theme                 string
}

// colours is the theme asked for, else by what the terminal says of its background. Where the
// terminal has no colour, or none is wanted, there is none unless one is asked for.
func (a appearance) colours(able termenv.Profile, background, terminal string) (kit.Theme, error) {
	t := kit.Theme{Colour: able != termenv.Ascii, Fixed: able == termenv.ANSI256 || able == termenv.TrueColor, ASCII: a.ascii || plainLocale()}
	if a.theme == "" && terminal == "linux" { // the kernel's own text screen is black
		t.Look = kit.DarkBackground
	}
	if a.theme == "" {
		return t.On(background), nil
	}
	t, ok := t.WithLook(a.theme)
	if !ok {
		return t, fmt.Errorf("--theme: read %q, expected %s", a.theme, strings.Join(kit.LookNames(), ", "))
	}
	return t, nil
}

// openScreen runs the workbench until it is left.
func openScreen(ctx context.Context, s streams, args []string, look appearance) error {
	theme, err := look.colours(lipgloss.ColorProfile(), os.Getenv("COLORFGBG"), os.Getenv("TERM"))
	if err != nil {
		return err
	}
	if !isTerminal(s.out) || os.Getenv("TERM") == "dumb" {
		return errors.New("the screen needs a terminal; for text use a verb: slotwright report JOB, slotwright card JOB")
	}
	store := recovery.Default()
	open, err := openSession(argument(args), store, look.example)
	if err != nil {
		return err
	}
	open.Theme = theme
	model := tui.New(open, store)
	model.Tidily()
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer stop()
	sleeper := &suspender{mouse: look.mouse, keep: model.Keep}
	options := []tea.ProgramOption{tea.WithAltScreen(), tea.WithContext(ctx), tea.WithoutSignalHandler(), tea.WithFilter(sleeper.filter)}
	if look.mouse {
		model.UseMouse()
		options = append(options, tea.WithMouseCellMotion())
	}
	sleeper.program = tea.NewProgram(model, options...)
	defer sleeper.watch()()
	_, err = sleeper.program.Run()
	return leave(ctx, s, model, err)
}

// leave says how the screen ended and what has become of unsaved work.
func leave(ctx context.Context, s streams, model *tui.Model, err error) error {
	kept := ""
	if ctx.Err() != nil || err != nil {
		if kept, _ = model.KeepUnsaved(); kept != "" {
			kept = "; " + kept
		}
	}
	parting, open := model.End(), model.Session()
	switch {
	case ctx.Err() != nil:
		return jobProblem{text: "ended by a signal" + kept}
	case errors.Is(err, tea.ErrProgramPanic):
		return jobProblem{text: "the program failed, which is a fault in it" + kept}
	case err != nil:
		return jobProblem{text: "the screen failed: " + err.Error() + kept}
	case parting != "":
		fmt.Fprintln(s.out, parting)
	case open.Saved() && !open.Dirty():
		fmt.Fprintln(s.out, "saved: "+text.Visible(open.Path))
	}
	return nil
}

// openSession is the job to show: the one named, else the last one, else the example.
func openSession(path string, store recovery.Store, example bool) (*session.Session, error) {
	bare := path == "" && !example
	if bare {
		path = store.Last()
	}
	copies, _ := store.Offers("")
	if path == "" || example || (bare && len(copies) > 0) {
		s := session.NewExample()
		if bare && path != "" {
			s.Say("your last job, once this is answered: slotwright " + shellWord(path))
		} else if gone := store.Gone(); bare && gone != "" {
			s.Warn("your last job is not there any more: " + text.Visible(gone) + ". This is the built-in example")
		}
		return s, nil
	}
	job.Sweep(filepath.Dir(path))
	d, mark, err := job.Load(path)
	if errors.Is(err, fs.ErrNotExist) {
		if kept, _ := store.Offers(path); len(kept) == 0 {
			return nil, jobProblem{text: err.Error() + "; to begin one: slotwright new " + shellWord(path)}
		}
		// The file is gone, the work on it is not: it is offered on an empty page.
		s := session.New(job.Parse(""), path, job.Mark{})
		s.Warn("the file is gone: " + path)
		return s, nil
	}
	if err != nil {
		return nil, jobProblem{text: err.Error()}
	}
	_ = store.SetLast(path) // that nothing can be kept is said on the screen
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
