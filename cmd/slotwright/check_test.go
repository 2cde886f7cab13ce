package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// command runs the whole command in the process.
func command(args ...string) (code int, out, errs string) {
	var o, e bytes.Buffer
	code = run(context.Background(), args, streams{strings.NewReader(""), &o, &e})
	return code, o.String(), e.String()
}

// The first line of every file in testdata/broken says which line is wrong and gives a piece of the
// expected message.
func TestCheckFindsWhatIsBroken(t *testing.T) {
	files, err := filepath.Glob("../../testdata/broken/*.toml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 20)
	for _, path := range files {
		t.Run(filepath.Base(path), func(t *testing.T) {
			before, err := os.ReadFile(path)
			require.NoError(t, err)
			first, _, _ := strings.Cut(string(before), "\n")
			var line int
			_, err = fmt.Sscanf(first, "# expect line %d:", &line)
			require.NoError(t, err, first)
			_, want, _ := strings.Cut(first, ": ")

			code, _, errs := command("check", path)
			assert.Equal(t, 1, code)
			assert.Contains(t, errs, fmt.Sprintf("%s:%d:", path, line))
			assert.Contains(t, errs, want)
			sayWhatWasRead(t, strings.Split(string(before), "\n"), errs)
			for _, inside := range []string{"strconv", "go-toml", "unstable", "struct", "panic", "%!"} {
				assert.NotContains(t, errs, inside, "words of the program's inside")
			}
			code, out, _ := command("check", path, "--json")
			assert.Equal(t, 1, code)
			assert.Contains(t, out, fmt.Sprintf(`"line": %d`, line))

			after, err := os.ReadFile(path)
			require.NoError(t, err)
			assert.Equal(t, string(before), string(after), "the file is untouched")
		})
	}
}

// problem is a line of the answer: position, what was read and what was expected.
var problem = regexp.MustCompile(`(?m):(\d+):\d+: .*?read (.+?), expected .`)

// sayWhatWasRead asserts that each problem quotes text of its own line of the file, or names the
// brackets there.
func sayWhatWasRead(t *testing.T, lines []string, errs string) {
	t.Helper()
	found := problem.FindAllStringSubmatch(errs, -1)
	require.NotEmpty(t, found, errs)
	for _, m := range found {
		at, err := strconv.Atoi(m[1])
		require.NoError(t, err)
		read := strings.TrimSuffix(m[2], " again")
		if quoted, ok := strings.CutPrefix(read, `"`); ok {
			read = strings.TrimSuffix(quoted, `"`)
		} else {
			read = read[strings.IndexByte(read, '['):] // "2 times [machine]"
		}
		assert.NotEmpty(t, read, m[0])
		assert.Contains(t, lines[at-1], read, m[0])
	}
}

func TestSeveralProblemsAreAllSaid(t *testing.T) {
	_, _, errs := command("check", "../../testdata/broken/several.toml")
	for _, line := range []int{3, 4, 5} {
		assert.Contains(t, errs, fmt.Sprintf("several.toml:%d:", line))
	}
}

func TestDoubtfulJobsAreUsable(t *testing.T) {
	for name, want := range map[string]string{
		"odd-poles.toml":   "poles come in pairs",
		"too-full.toml":    "cannot be",
		"thick-wire.toml":  "does not pass",
		"no-layout.toml":   "no balanced three-phase layout",
		"over-limit.toml":  "over the limit",
		"slow-cut-in.toml": "charging begins at",
	} {
		code, out, errs := command("check", "../../testdata/doubtful/"+name)
		assert.Equal(t, 0, code, "%s: %s", name, errs)
		assert.Contains(t, out, want, name)
		assert.Contains(t, out, "doubtful", name)
	}
}

func TestFilesThatAreNoJobs(t *testing.T) {
	code, _, errs := command("check", "../../testdata/none.toml")
	assert.Equal(t, 1, code)
	assert.Contains(t, errs, "there is no such file")
	code, _, errs = command("check")
	assert.Equal(t, 2, code, errs)
}
