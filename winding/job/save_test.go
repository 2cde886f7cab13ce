package job

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"slotwright/winding/job/running"
	"slotwright/winding/text"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// folder is a folder with a job in it.
func folder(t *testing.T) (dir, path string, mark Mark) {
	t.Helper()
	dir = t.TempDir()
	path = filepath.Join(dir, "j.toml")
	require.NoError(t, os.WriteFile(path, []byte(small), 0o640))
	return dir, path, MarkOf(small)
}

// holds fails unless the folder has just these files.
func holds(t *testing.T, dir string, names ...string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	var have []string
	for _, e := range entries {
		have = append(have, e.Name())
	}
	assert.ElementsMatch(t, names, have)
}

// refused fails unless saving was refused with a sentence that has the reason first and
// the path after it, and the file is as it was.
func refused(t *testing.T, err error, path, reason string) {
	t.Helper()
	require.Error(t, err)
	var file *FileError
	require.ErrorAs(t, err, &file)
	assert.Contains(t, file.Reason, reason)
	assert.True(t, strings.HasSuffix(err.Error(), ": "+text.Visible(path)), err.Error())
}

func read(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(data)
}

func TestSaveAsksBeforeItWritesOver(t *testing.T) {
	dir, path, mark := folder(t)
	_, err := Save(path, "# new\n", Mark{}, 0)
	refused(t, err, path, "was changed by something else")
	require.ErrorIs(t, err, ErrChanged)

	require.NoError(t, os.Chmod(path, 0o444))
	_, err = Save(path, "# new\n", mark, 0)
	refused(t, err, path, "read-only")
	require.ErrorIs(t, err, ErrReadOnly)
	assert.Equal(t, small, read(t, path))
	saved, err := Save(path, "# new\n", mark, OverReadOnly)
	require.NoError(t, err)
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Zero(t, info.Mode().Perm()&0o222, "it stays read-only")

	require.NoError(t, os.Chmod(path, 0o644))
	require.NoError(t, os.Remove(path))
	_, err = Save(path, "# newer\n", saved.Mark, 0)
	refused(t, err, path, "gone")
	require.ErrorIs(t, err, ErrGone)
	_, err = Save(path, "# newer\n", saved.Mark, Anew)
	require.NoError(t, err)
	assert.Equal(t, "# newer\n", read(t, path))
	holds(t, dir, "j.toml")
}

func TestSaveSaysWhatIsInItsWay(t *testing.T) {
	dir, path, mark := folder(t)
	_, err := Save(filepath.Join(dir, "no", "such", "x.toml"), small, Mark{}, 0)
	refused(t, err, filepath.Join(dir, "no", "such", "x.toml"), "there is no folder "+filepath.Join(dir, "no"))
	_, err = Save(filepath.Join(path, "x.toml"), small, Mark{}, 0)
	refused(t, err, filepath.Join(path, "x.toml"), "is a file, not a folder")
	_, err = Save("", small, Mark{}, 0)
	refused(t, err, "", "expected a file name")
	_, err = Save(dir+string(filepath.Separator), small, Mark{}, 0)
	refused(t, err, dir+string(filepath.Separator), "expected a file name")
	_, err = Save(filepath.Join(dir, strings.Repeat("a", 300)), small, Mark{}, 0)
	refused(t, err, filepath.Join(dir, strings.Repeat("a", 300)), "too long")
	_, err = Save(path, small+strings.Repeat("#", MaxBytes), mark, 0)
	refused(t, err, path, "nothing was written")

	// The place was taken by a folder while the job was open.
	require.NoError(t, os.Remove(path))
	require.NoError(t, os.Mkdir(path, 0o755))
	_, err = Save(path, small, mark, Everything)
	refused(t, err, path, "read a folder")
	require.ErrorIs(t, err, ErrKind)

	// Its folder has vanished.
	sub := filepath.Join(dir, "sub")
	require.NoError(t, os.Mkdir(sub, 0o755))
	_, err = Save(filepath.Join(sub, "j.toml"), small, Mark{}, 0)
	require.NoError(t, err)
	require.NoError(t, os.RemoveAll(sub))
	_, err = Save(filepath.Join(sub, "j.toml"), small, mark, Anew)
	refused(t, err, filepath.Join(sub, "j.toml"), "no folder "+sub)
}

// Whatever a file may be called, it is saved, opened and named.
func TestOddFileNames(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{
		strings.Repeat("a", 250) + ".toml", strings.Repeat("é", 125) + ".toml", "⚡🧲.toml", "-dash.toml", "a b\tc.toml", "new\nline.toml", "\x1b]0;x\a.toml", "[x]*?.toml", "~", ".hidden", "a%sb.toml",
	} {
		path := filepath.Join(dir, name)
		_, err := Save(path, small, Mark{}, 0)
		if runtime.GOOS == "windows" && err != nil {
			continue
		}
		require.NoError(t, err, "%q", name)
		d, mark, err := Load(path)
		require.NoError(t, err)
		_, err = Save(path, d.Text()+"# x\n", mark, 0)
		require.NoError(t, err)
		_, err = Save(path, small, Mark{}, 0)
		assert.NotContains(t, err.Error(), "\x1b")
		assert.NotContains(t, err.Error(), "\n")
	}
}

// Temporary files of killed programs are swept when the folder is next saved in; nothing
// else is.
func TestSaveSweepsLitter(t *testing.T) {
	dir, path, mark := folder(t)
	dead := running.Self()
	dead.PID, dead.Began = 1<<22-1, "never"
	elsewhere := dead
	elsewhere.Host += "x"
	litter := filepath.Join(dir, temporary+dead.Short()+"-0000abcd")
	kept := []string{temporary + running.Self().Short() + "-0000abcd", temporary + elsewhere.Short() + "-0000abcd", temporary + "notes", ".j.toml1234"}
	for _, name := range append(kept, filepath.Base(litter)) {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), nil, 0o600))
	}
	_, err := Save(path, small+"#\n", mark, 0)
	require.NoError(t, err)
	holds(t, dir, append(kept, "j.toml")...)
}

// Only plain files are read, and no more of them than a job may have.
func TestOnlyPlainFilesAreRead(t *testing.T) {
	dir := t.TempDir()
	_, err := ReadText(dir)
	refused(t, err, dir, "a folder")
	big := filepath.Join(dir, "big")
	f, err := os.Create(big)
	require.NoError(t, err)
	require.NoError(t, f.Truncate(1<<40))
	_ = f.Close()
	_, err = ReadText(big)
	refused(t, err, big, "at most")
	bin := filepath.Join(dir, "bin")
	for _, data := range []string{"a\xffb", "a\x00b", "\xfe\xff\x00a"} {
		require.NoError(t, os.WriteFile(bin, []byte(data), 0o600))
		_, err = ReadText(bin)
		refused(t, err, bin, "UTF-8")
	}
}

// Whatever was typed is written so that nothing in the file steers a terminal, and reads
// back the same.
func TestStringsAreWrittenHarmlessly(t *testing.T) {
	for _, s := range []string{"\x1b[2J\a", "a\u202eb\u2066", "q\"\\\n\t\r\x7f", "\u009b", "\U000e0041é👩‍🔧"} {
		written := "name = " + basicString(s) + "\n"
		assert.False(t, strings.ContainsFunc(strings.TrimSuffix(written, "\n"), text.Steers), "%q", written)
		d := Parse(written)
		require.Empty(t, d.Problems(), written)
		assert.Equal(t, s, d.Job().Name)
	}
}

func TestMarksAreWrittenAndRead(t *testing.T) {
	for _, m := range []Mark{{}, MarkOf(""), MarkOf("x")} {
		got, ok := ParseMark(m.String())
		assert.True(t, ok)
		assert.Equal(t, m, got)
	}
	for _, s := range []string{"x", "00", strings.Repeat("0", 66)} {
		_, ok := ParseMark(s)
		assert.False(t, ok, s)
	}
	assert.True(t, errors.Is(&FileError{Err: ErrGone}, ErrGone))
}

// A ± that is more than the number or than all there may be says nothing, and minus nothing is
// not a number that a person means.
func TestReadingsThatCannotBe(t *testing.T) {
	for _, v := range []string{"80 ±1e300%", "80 ±5000", "80 ±1e308", "80 ±101%", "~80 ±200 %", "20 ±500", "20 ±20.5", "~20 mm ±500"} {
		d := Parse("[machine]\nbore_mm = \"" + v + "\"\n")
		if assert.Len(t, d.Problems(), 1, v) {
			assert.Contains(t, d.Problems()[0].Error(), "2:11: machine.bore: read \""+v+"\", expected a ±")
		}
	}
	for _, v := range []string{"80 ±100%", "80 ±0.5", "0.5 ±0.5"} {
		assert.Empty(t, Parse("[machine]\nair_gap_mm = \""+strings.Replace(v, "80", "0.8", 1)+"\"\n").Problems(), v)
	}
	for v, wrong := range map[string]int{"5 ±10": 0, "0 ±3": 0, "-5 ±10": 0, "5 ±500": 1, "5 ±150%": 1} {
		assert.Len(t, Parse("[machine]\nambient_c = \""+v+"\"\n").Problems(), wrong, "a temperature may be on either side of nothing: %s", v)
	}
	for _, v := range []string{"-0", "-0.0", "\"-0\"", "\"~-0 ±1\""} {
		d := Parse("[slot]\nliner_mm = " + v + "\n[machine]\nambient_c = " + v + "\n")
		require.Len(t, d.Problems(), 2, v)
		assert.Contains(t, d.Problems()[0].Error(), "write 0, without a sign")
	}
}
