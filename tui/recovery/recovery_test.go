package recovery

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"slotwright/winding/job"
	"slotwright/winding/job/running"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// gone is a program that has ended: a child process that was waited for.
func gone(t testing.TB) running.Program {
	t.Helper()
	cmd := exec.Command(os.Args[0], "-test.run", "^$")
	require.NoError(t, cmd.Run())
	p := running.Self()
	p.PID = cmd.Process.Pid
	require.Equal(t, running.Ended, p.State())
	return p
}

// left is the copy that a killed session left behind.
func left(t testing.TB, s Store, path, text string, kept time.Time) {
	t.Helper()
	c := Copy{Job: whole(path), By: gone(t), Kept: kept, Base: job.MarkOf("before"), Text: text}
	require.NoError(t, s.write("unsaved-"+nameOf(path)+"-"+c.By.Short()+"-"+kept.Format("150405"), c.encode()))
}

func files(t testing.TB, s Store) []string { t.Helper(); return s.names("") }

func TestWorkOfEndedSessionsIsOffered(t *testing.T) {
	s := Store{Dir: filepath.Join(t.TempDir(), "state")}
	at := time.Date(2026, 5, 2, 14, 2, 0, 0, time.UTC)
	left(t, s, "a.toml", "older", at)
	left(t, s, "a.toml", "newer", at.Add(time.Hour))
	left(t, s, "", "example", at)
	abs, err := filepath.Abs("a.toml")
	require.NoError(t, err)
	copies, damaged := s.Offers(abs)
	assert.Empty(t, damaged)
	require.Len(t, copies, 2, "the same file by its whole path")
	assert.Equal(t, "newer", copies[0].Text)
	assert.True(t, copies[0].Kept.Equal(at.Add(time.Hour)))
	assert.Equal(t, job.MarkOf("before"), copies[0].Base)
	assert.Equal(t, abs, copies[0].Job)
	require.NoError(t, s.Discard(copies[0]))
	copies, _ = s.Offers("a.toml")
	require.Len(t, copies, 1)
	assert.Equal(t, "older", copies[0].Text)
	copies, _ = s.Offers("")
	assert.Len(t, copies, 1)
	copies, _ = s.Offers("b.toml")
	assert.Empty(t, copies)
}

// A session's work is its own while it lives, and no other session touches it.
func TestSessionsKeepOutOfEachOthersWay(t *testing.T) {
	s := Store{Dir: filepath.Join(t.TempDir(), "state")}
	first, err := s.Begin("j.toml")
	require.NoError(t, err)
	assert.Empty(t, first.Others())
	second, err := s.Begin("j.toml")
	require.NoError(t, err)
	require.Len(t, second.Others(), 1, "the second sees the first")
	assert.Equal(t, os.Getpid(), second.Others()[0].By.PID)
	assert.Len(t, first.Others(), 1, "and the first the second")

	require.NoError(t, first.Put("mine", job.Mark{}))
	copies, _ := s.Offers("j.toml")
	assert.Empty(t, copies, "living work is not offered")
	require.NoError(t, second.Drop())
	require.NoError(t, second.Move("k.toml"))
	second.End()
	assert.Empty(t, first.Others())
	require.NoError(t, first.PutLast("mine too", job.Mark{}))
	copies, _ = s.Offers("j.toml")
	require.Len(t, copies, 1, "work of a session that said it ends is offered at once")
	assert.Equal(t, "mine too", copies[0].Text)
	require.NoError(t, first.Drop())
	first.End()
	assert.Empty(t, files(t, s), "nothing stays behind")
}

// Two examples are two separate jobs.
func TestExamplesDoNotShareACopy(t *testing.T) {
	s := Store{Dir: filepath.Join(t.TempDir(), "state")}
	a, err := s.Begin("")
	require.NoError(t, err)
	b, err := s.Begin("")
	require.NoError(t, err)
	require.NoError(t, a.PutLast("a", job.Mark{}))
	require.NoError(t, b.PutLast("b", job.Mark{}))
	copies, _ := s.Offers("")
	assert.Len(t, copies, 2)
}

// A link to a job is the same job.
func TestALinkIsTheSameJob(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "j.toml")
	require.NoError(t, os.WriteFile(path, nil, 0o600))
	if err := os.Symlink(path, filepath.Join(dir, "l.toml")); err != nil {
		t.Skip("no links here")
	}
	s := Store{Dir: filepath.Join(dir, "state")}
	left(t, s, path, "work", time.Now())
	copies, _ := s.Offers(filepath.Join(dir, "l.toml"))
	assert.Len(t, copies, 1)
}

// Whatever has become of a copy, it is restored whole or not at all, and never deleted.
func TestDamagedCopiesAreNamedAndLeft(t *testing.T) {
	good := Copy{By: gone(t), Kept: time.Now(), Text: "name = \"x\"\n"}.encode()
	for what, data := range map[string]string{
		"random":    "\x8f\x01\x9cabc\xff",
		"nuls":      strings.Repeat("\x00", 3000),
		"nothing":   "",
		"no text":   Copy{By: gone(t)}.encode(),
		"blank":     Copy{By: gone(t), Text: " \n\n"}.encode(),
		"cut":       good[:len(good)-3],
		"longer":    good + "x",
		"a letter":  strings.Replace(good, `"x"`, `"y"`, 1),
		"no head":   "name = \"x\"\n",
		"a NUL":     Copy{By: gone(t), Text: "a\x00b"}.encode(),
		"not UTF-8": Copy{By: gone(t), Text: "a\xffb"}.encode(),
		"large":     Copy{By: gone(t), Text: strings.Repeat("#", job.MaxBytes+1)}.encode(),
		"larger":    Copy{By: gone(t), Text: strings.Repeat("#", 2*job.MaxBytes)}.encode(),
	} {
		s := Store{Dir: t.TempDir()}
		file := filepath.Join(s.Dir, "unsaved-"+nameOf("j.toml")+"-x")
		require.NoError(t, os.WriteFile(file, []byte(data), 0o600))
		copies, damaged := s.Offers("j.toml")
		assert.Empty(t, copies, what)
		if assert.Len(t, damaged, 1, what) {
			assert.Equal(t, file, damaged[0].File)
			assert.Error(t, damaged[0].Why)
		}
		k, err := s.Begin("j.toml")
		require.NoError(t, err)
		require.NoError(t, k.Drop())
		k.End()
		now, err := os.ReadFile(file)
		require.NoError(t, err, what)
		assert.Equal(t, data, string(now), what)
	}
}

func TestWorkThatCannotBeKeptSaysSo(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	s := Store{Dir: filepath.Join(file, "state")}
	k, err := s.Begin("a")
	assert.Error(t, err)
	assert.ErrorContains(t, k.Put("x", job.Mark{}), "state")
	assert.Error(t, s.SetLast("a"))
	_, err = Store{missing: "no home"}.Begin("a")
	assert.ErrorContains(t, err, "no home")
	s = Store{Dir: t.TempDir()}
	k, err = s.Begin("a")
	require.NoError(t, err)
	assert.Error(t, k.Put(strings.Repeat("#", job.MaxBytes+1), job.Mark{}), "what could not be given back is not kept as if it could")

	k, err = Store{}.Begin("a")
	require.NoError(t, err, "a store that is none remembers nothing, and is content")
	assert.NoError(t, k.Put("x", job.Mark{}))
	assert.NoError(t, k.Drop())
	assert.Empty(t, Store{}.Last())
}

func TestDefaultStoreNeedsAHome(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the state folder is not in HOME here")
	}
	t.Setenv("HOME", "")
	t.Setenv("XDG_STATE_HOME", "")
	assert.Empty(t, Default().Dir, "not a folder at the root of the disk")
	_, err := Default().Begin("a")
	assert.ErrorContains(t, err, "HOME")
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	assert.NotEmpty(t, Default().Dir)
}

func TestLastJobIsForgottenWhenGone(t *testing.T) {
	dir := t.TempDir()
	s := Store{Dir: filepath.Join(dir, "state")}
	assert.Empty(t, s.Last())
	path := filepath.Join(dir, "a job \n.toml")
	require.NoError(t, os.WriteFile(path, nil, 0o600))
	require.NoError(t, s.SetLast(path))
	assert.Equal(t, path, s.Last())
	require.NoError(t, os.Remove(path))
	assert.Empty(t, s.Last())
	left(t, s, path, "work", time.Now())
	assert.Equal(t, path, s.Last(), "but not while there is work on it")
}

// Marks and temporary files of killed sessions are swept; those of living ones stay.
func TestBeginSweepsWhatKilledSessionsLeft(t *testing.T) {
	s := Store{Dir: t.TempDir()}
	dead := gone(t)
	c := Copy{Job: whole("j"), By: dead}
	require.NoError(t, s.write("open-"+nameOf("j")+"-"+dead.Short(), c.encode()))
	temporary := filepath.Join(s.Dir, ".slotwright-"+dead.Short()+"-01234567")
	alive := filepath.Join(s.Dir, ".slotwright-"+running.Self().Short()+"-01234567")
	foreign := filepath.Join(s.Dir, ".slotwright-01234567")
	for _, f := range []string{temporary, alive, foreign} {
		require.NoError(t, os.WriteFile(f, nil, 0o600))
	}
	k, err := s.Begin("j")
	require.NoError(t, err)
	assert.Empty(t, k.Others())
	assert.NoFileExists(t, temporary)
	assert.FileExists(t, alive)
	assert.FileExists(t, foreign)
}

// FuzzDecode: only what encode wrote, byte for byte, is read as a copy.
func FuzzDecode(f *testing.F) {
	f.Add(Copy{Text: "a = 1\n"}.encode(), uint(3), byte(7))
	f.Add(headMark+"{}\n", uint(0), byte(0))
	f.Fuzz(func(t *testing.T, data string, at uint, flip byte) {
		c, err := decode(data)
		if err != nil {
			return
		}
		if job.CheckText(c.Text) != nil || !strings.HasSuffix(data, "\n"+c.Text) {
			t.Fatalf("%q was read as %q", data, c.Text)
		}
		begin := len(data) - len(c.Text)
		if flip == 0 || len(c.Text) == 0 {
			return
		}
		b := []byte(data)
		b[begin+int(at%uint(len(c.Text)))] ^= flip
		if _, err := decode(string(b)); err == nil {
			t.Fatalf("a changed letter was not noticed in %q", b)
		}
	})
}

// The units chosen while a job was open are its own at the next start; another job uses those it is
// typed in, and one in which nothing is typed those chosen last. A store without a folder remembers
// none.
func TestUnitsAreRemembered(t *testing.T) {
	s := Store{Dir: t.TempDir()}
	none, metric, inch := job.Parse(""), job.Parse("[machine]\nbore_mm = 90\nambient_c = 20\n"), job.Parse("[machine]\nbore_in = 4\nambient_f = 70\n")
	both := quantity.Choice{Inch: true, Fahrenheit: true}
	a, b := filepath.Join(s.Dir, "a.toml"), filepath.Join(s.Dir, "b.toml")
	assert.Equal(t, quantity.Choice{}, s.Units(a, none))
	assert.Equal(t, both, s.Units(a, inch))
	for _, want := range []quantity.Choice{{Inch: true}, {Fahrenheit: true}, both, {}} {
		s.SetUnits(a, want)
		assert.Equal(t, want, s.Units(a, metric))
		assert.Equal(t, want, s.Units(a, inch))
		assert.Equal(t, quantity.Choice{}, s.Units(b, metric), "another job")
		assert.Equal(t, both, s.Units(b, inch), "another job")
		assert.Equal(t, want, s.Units(b, none), "nothing says")
	}
	s.SetUnits(b, both)
	assert.Equal(t, quantity.Choice{}, s.Units(a, inch))
	assert.Equal(t, both, s.Units(b, metric))
	s.SetUnits("", quantity.Choice{Fahrenheit: true})
	assert.Equal(t, quantity.Choice{}, s.Units("", metric), "the example, or what has no file yet")
	assert.Equal(t, both, s.Units(b, metric))
	for i := range 3 * mostUnits {
		s.SetUnits(filepath.Join(s.Dir, fmt.Sprint(i)), both)
	}
	assert.Len(t, s.unitLines(), 1+mostUnits)
	Store{}.SetUnits(a, quantity.Choice{Inch: true})
	assert.Equal(t, quantity.Choice{}, Store{}.Units(a, none))
}
