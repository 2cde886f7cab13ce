package job

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

// atOnce fails the test when something blocks, as reading a pipe would.
func atOnce(t *testing.T, what string, do func()) {
	t.Helper()
	done := make(chan struct{})
	go func() { defer close(done); do() }()
	select {
	case <-done:
	case <-time.After(5 * time.Second):
		t.Fatalf("%s waits", what)
	}
}

// Pipes and devices are refused at once, as a job to read and as a place to save to, also
// when they have taken a job's place while it was open.
func TestPipesAndDevicesAreRefused(t *testing.T) {
	dir, path, mark := folder(t)
	pipe := filepath.Join(dir, "pipe")
	require.NoError(t, unix.Mkfifo(pipe, 0o600))
	atOnce(t, "a pipe", func() {
		_, _, err := Load(pipe)
		refused(t, err, pipe, "a pipe")
		require.NoError(t, os.Remove(path))
		require.NoError(t, os.Symlink(pipe, path))
		_, err = Save(path, small, mark, 0)
		refused(t, err, path, "a pipe")
		_, err = Save(path, small, mark, Everything)
		refused(t, err, path, "a pipe")
		// It becomes a pipe between the look and the opening.
		_, err = os.OpenFile(pipe, os.O_RDONLY|openAtOnce, 0)
		assert.NoError(t, err)
	})
	// Devices are only examined: a test that went wrong must not write over one.
	for _, dev := range []string{"/dev/zero", "/dev/null", "/dev/tty"} {
		if _, err := os.Stat(dev); err != nil {
			continue
		}
		atOnce(t, dev, func() {
			_, _, err := Load(dev)
			refused(t, err, dev, "a device")
		})
	}
	own := filepath.Join(dir, "zero")
	if err := unix.Mknod(own, unix.S_IFCHR|0o600, int(unix.Mkdev(1, 5))); err != nil {
		t.Skipf("no device of one's own to save to: %v", err)
	}
	atOnce(t, own, func() {
		_, err := Save(own, small, Mark{}, Everything)
		refused(t, err, own, "a device")
	})
	holds(t, dir, "j.toml", "pipe", "zero")
}

// Links are followed, wherever they lead, and stay links.
func TestLinksAreFollowed(t *testing.T) {
	dir, path, mark := folder(t)
	sub := filepath.Join(dir, "sub")
	require.NoError(t, os.Mkdir(sub, 0o755))
	link, second, dangling := filepath.Join(sub, "l"), filepath.Join(dir, "l2"), filepath.Join(dir, "l3")
	require.NoError(t, os.Symlink("../j.toml", link))
	require.NoError(t, os.Symlink("sub/l", second))
	require.NoError(t, os.Symlink("sub/new.toml", dangling))
	_, err := Save(second, "# 2\n", mark, 0)
	require.NoError(t, err)
	assert.Equal(t, "# 2\n", read(t, path))
	_, err = Save(dangling, "# 3\n", Mark{}, 0)
	require.NoError(t, err)
	assert.Equal(t, "# 3\n", read(t, filepath.Join(sub, "new.toml")))
	for _, l := range []string{link, second, dangling} {
		info, err := os.Lstat(l)
		require.NoError(t, err)
		assert.NotZero(t, info.Mode()&os.ModeSymlink, l)
	}
	require.NoError(t, os.Symlink("round", filepath.Join(dir, "round")))
	_, err = Save(filepath.Join(dir, "round"), small, Mark{}, 0)
	refused(t, err, filepath.Join(dir, "round"), "circle")
}

// Mode, owner and attributes stay; what cannot stay is said.
func TestSaveKeepsWhatTheFileWas(t *testing.T) {
	_, path, mark := folder(t)
	require.NoError(t, os.Chmod(path, 0o640|os.ModeSetuid))
	attributes := unix.Setxattr(path, "user.note", []byte("mine"), 0) == nil
	owned := os.Geteuid() == 0 && os.Chown(path, 1234, 1235) == nil
	if owned {
		require.NoError(t, os.Chmod(path, 0o640|os.ModeSetuid), "chown took it off")
	}
	saved, err := Save(path, "# 2\n", mark, 0)
	require.NoError(t, err)
	assert.Empty(t, saved.Lost)
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, 0o640|os.ModeSetuid, info.Mode())
	if attributes {
		value := make([]byte, 10)
		n, err := unix.Getxattr(path, "user.note", value)
		require.NoError(t, err)
		assert.Equal(t, "mine", string(value[:n]))
	}
	if owned {
		stat := info.Sys().(*syscall.Stat_t)
		assert.Equal(t, [2]uint32{1234, 1235}, [2]uint32{stat.Uid, stat.Gid})
	}
	t.Logf("attributes tried: %v, owner tried: %v", attributes, owned)

	other := path + "-other"
	require.NoError(t, os.Link(path, other))
	saved, err = Save(path, "# 3\n", saved.Mark, 0)
	require.NoError(t, err)
	assert.Contains(t, saved.Lost, "hard links")
	assert.Equal(t, "# 2\n", read(t, other))
}

// A new file has the mode that new files have.
func TestNewFilesAreAsOthersMakeThem(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "x")
	require.NoError(t, os.WriteFile(filepath.Join(dir, "like"), nil, 0o666))
	_, err := Save(path, small, Mark{}, 0)
	require.NoError(t, err)
	like, err := os.Stat(filepath.Join(dir, "like"))
	require.NoError(t, err)
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, like.Mode(), info.Mode())
}

// No room: the old file is whole, nothing is left, and it works once there is room.
func TestFullDisk(t *testing.T) {
	dir := t.TempDir()
	if err := unix.Mount("none", dir, "tmpfs", 0, "size=16k"); err != nil {
		t.Skipf("no disk to fill: %v", err)
	}
	defer func() { _ = unix.Unmount(dir, unix.MNT_DETACH) }()
	path := filepath.Join(dir, "j.toml")
	saved, err := Save(path, small, Mark{}, 0)
	require.NoError(t, err)
	filler := filepath.Join(dir, "filler")
	_ = os.WriteFile(filler, make([]byte, 1<<20), 0o600)
	_, err = Save(path, small+strings.Repeat("# more\n", 1000), saved.Mark, 0)
	refused(t, err, path, "the disk is full")
	assert.Equal(t, small, read(t, path))
	holds(t, dir, "j.toml", "filler")
	require.NoError(t, os.Remove(filler))
	_, err = Save(path, small+"# more\n", saved.Mark, 0)
	require.NoError(t, err)

	require.NoError(t, unix.Mount("none", dir, "tmpfs", unix.MS_REMOUNT|unix.MS_RDONLY, ""))
	for _, agreed := range []Consent{0, OverReadOnly} { // nobody is asked what would be in vain
		_, err = Save(path, small, MarkOf(small+"# more\n"), agreed)
		refused(t, err, path, "can only be read")
		require.NotErrorIs(t, err, ErrReadOnly)
	}
}

// asAnybody does something without root's rights, in a thread of its own that ends with it.
func asAnybody(t *testing.T, do func()) {
	t.Helper()
	if os.Geteuid() != 0 {
		do()
		return
	}
	over := make(chan unix.Errno)
	go func() {
		runtime.LockOSThread() // never unlocked: the thread ends with this function
		const nobody = 65534
		_, _, e := unix.RawSyscall(unix.SYS_SETRESUID, nobody, nobody, nobody)
		if e == 0 {
			do()
		}
		over <- e
	}()
	require.Zero(t, <-over, "root's rights could not be put down")
}

// A folder that one may not write in is said to be so at once; a file that is somebody else's is
// not said to be marked.
func TestWhatIsSomebodyElses(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "j.toml")
	require.NoError(t, os.WriteFile(path, []byte(small), 0o444))
	for d := dir; d != os.TempDir() && d != "/"; d = filepath.Dir(d) {
		require.NoError(t, os.Chmod(d, 0o755))
	}
	require.NoError(t, os.Chmod(dir, 0o555))
	var err error
	for _, agreed := range []Consent{0, OverReadOnly} {
		asAnybody(t, func() { _, err = Save(path, "# new\n", MarkOf(small), agreed) })
		refused(t, err, path, "not allowed; check who owns the file and its folder")
		require.NotErrorIs(t, err, ErrReadOnly, "nobody is asked what would be in vain")
	}
	require.NoError(t, os.Chmod(dir, 0o777))
	if os.Geteuid() != 0 {
		return // it is our own
	}
	require.NoError(t, os.Chmod(path, 0o644))
	asAnybody(t, func() { _, err = Save(path, "# new\n", MarkOf(small), 0) })
	refused(t, err, path, "not yours to write")
	require.ErrorIs(t, err, ErrReadOnly)
	assert.Equal(t, small, read(t, path))
	var saved Saved
	asAnybody(t, func() { saved, err = Save(path, "# new\n", MarkOf(small), OverReadOnly) })
	require.NoError(t, err)
	assert.Contains(t, saved.Lost, "its owner is now you")
}
