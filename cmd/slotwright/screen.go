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
	inch, fahrenheit      bool
	flagged               func(name string) bool // whether a flag was typed
	theme                 string
}

// colours is the theme asked for, else chosen by what the terminal says of its background. Where the
// terminal has no colour, or none is wanted, there is none unless one is asked for.
func (a appearance) colours(able termenv.Profile, background, terminal string) (kit.Theme, error) {
	t := kit.Theme{Colour: able != termenv.Ascii, Fixed: able == termenv.ANSI256 || able == termenv.TrueColor, ASCII: a.ascii || plainLocale()}
	if a.theme == "" && terminal == "linux" { // the kernel's own text console is black
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

// units are set for every job that is opened, where they were asked for.
func (a appearance) units(store recovery.Store) recovery.Store {
	if a.flagged != nil && a.flagged("inch") {
		store.Inch = &a.inch
	}
	if a.flagged != nil && a.flagged("fahrenheit") {
		store.Fahrenheit = &a.fahrenheit
	}
	return store
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
	store := look.units(recovery.Default())
	begin, err := openSession(argument(args), store, look.example)
	if err != nil {
		return err
	}
	model := &opening{begin: func() *tui.Model {
		open := begin()
		open.Theme, open.Units = theme, store.Units(open.Path, open.Document())
		open.ChooseForemost()
		m := tui.New(open, store)
		m.Tidily()
		if look.mouse {
			m.UseMouse()
		}
		return m
	}}
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer stop()
	sleeper := &suspender{mouse: look.mouse, keep: func() { model.Keep() }}
	options := []tea.ProgramOption{tea.WithAltScreen(), tea.WithContext(ctx), tea.WithoutSignalHandler(), tea.WithFilter(sleeper.filter)}
	if look.mouse {
		options = append(options, tea.WithMouseCellMotion())
	}
	sleeper.program = tea.NewProgram(model, options...)
	defer sleeper.watch()()
	if _, err = sleeper.program.Run(); model.Model == nil {
		return notOpened(err)
	}
	return leave(ctx, s, model.Model, err)
}

// opening is the program from its first moment on. The library writes what is drawn sixty times a
// second and no sooner, counted from when it took the terminal: the job is evaluated in that first
// sixtieth of a second, not before it.
type opening struct {
	begin func() *tui.Model
	*tui.Model
}

// Init is called once the terminal is taken, before anything is drawn.
func (o *opening) Init() tea.Cmd {
	o.Model = o.begin()
	return o.Model.Init()
}

// notOpened is the error of a screen that ended before there was a job in it.
func notOpened(err error) error {
	if errors.Is(err, tea.ErrProgramPanic) {
		return jobProblem{text: "the program failed while it opened the job, which is a fault in it"}
	}
	return jobProblem{text: fmt.Sprintf("the screen failed: %v", err)}
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

// openSession is the job to show: the one named, else the last one, else the example. Errors of its
// file are reported at once; it is evaluated when begin is called.
func openSession(path string, store recovery.Store, example bool) (begin func() *session.Session, err error) {
	bare := path == "" && !example
	if bare {
		path = store.Last()
	}
	copies, _ := store.Offers("")
	if path == "" || example || (bare && len(copies) > 0) {
		return func() *session.Session { return exampleInstead(bare, path, store) }, nil
	}
	job.Sweep(filepath.Dir(path))
	d, mark, err := job.Load(path)
	if errors.Is(err, fs.ErrNotExist) {
		if kept, _ := store.Offers(path); len(kept) == 0 {
			return nil, jobProblem{text: err.Error() + "; to begin one: slotwright new " + shellWord(path)}
		}
		// The file is gone, the work on it is not: it is offered on an empty page.
		return func() *session.Session {
			s := session.New(job.Parse(""), path, job.Mark{})
			s.Warn("the file is gone: " + path)
			return s
		}, nil
	}
	if err != nil {
		return nil, jobProblem{text: err.Error()}
	}
	return func() *session.Session {
		_ = store.SetLast(path) // that nothing can be kept is said on the screen
		return session.New(d, path, mark)
	}, nil
}

// exampleInstead is the built-in example, and why it is not the job that was open last.
func exampleInstead(bare bool, last string, store recovery.Store) *session.Session {
	s := session.NewExample()
	if bare && last != "" {
		s.Say("your last job, once this is answered: slotwright " + shellWord(last))
	} else if gone := store.Gone(); bare && gone != "" {
		s.Warn("your last job is not there any more: " + text.Visible(gone) + ". This is the built-in example")
	}
	return s
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
