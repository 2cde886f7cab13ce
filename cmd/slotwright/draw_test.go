package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// One page goes into the file named, several into files whose names begin with it.
func TestDraw(t *testing.T) {
	dir := t.TempDir()
	job := "../../testdata/jobs/wind-good.toml"
	one := filepath.Join(dir, "wall.svg")
	code, out, errs := command("draw", job, "--sheet", "face", "--trial", "B", "--paper", "LETTER", "--out", one)
	require.Equal(t, 0, code, errs)
	assert.Equal(t, "Wrote "+one+"\n", out)
	text, err := os.ReadFile(one)
	require.NoError(t, err)
	assert.Contains(t, string(text), `width="215.9mm"`)
	assert.Contains(t, string(text), "trial B: Stator from the connection end")

	v := answer(t, "draw", job, "--out", one, "--json")
	assert.Equal(t, "A", v["trial"])
	sheets := v["sheets"].([]any)
	require.Len(t, sheets, 4)
	for i, name := range []string{"unrolled", "face", "slot", "amps"} {
		page := sheets[i].(map[string]any)
		assert.Equal(t, name, page["sheet"])
		assert.Equal(t, filepath.Join(dir, "wall-"+name+".svg"), page["written"])
		assert.FileExists(t, page["written"].(string))
	}
	code, _, errs = command("draw", job, "--out", one, "--ascii", "--inch")
	require.Equal(t, 0, code, "drawings are drawn again: %s", errs)
	text, err = os.ReadFile(filepath.Join(dir, "wall-slot.svg"))
	require.NoError(t, err)
	assert.NotRegexp(t, `[^\n -~]`, string(text))
	assert.Contains(t, string(text), "0.2756 in")
	assert.Contains(t, string(text), `width="215.9mm"`, "who measures in inches has Letter")
}

// Without --out the files are named after the job, in the working folder.
func TestDrawNamesFilesAfterTheJob(t *testing.T) {
	job, err := filepath.Abs("../../testdata/jobs/water.toml")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	code, out, errs := command("draw", job, "--sheet", "slot")
	require.Equal(t, 0, code, errs)
	assert.Equal(t, "Wrote water-slot.svg\n", out)
	assert.FileExists(t, "water-slot.svg")
}

// A file that is no drawing is not overwritten, and then no page is written.
func TestDrawSparesOtherFiles(t *testing.T) {
	dir := t.TempDir()
	mine := filepath.Join(dir, "a-slot.svg")
	require.NoError(t, os.WriteFile(mine, []byte("<svg>my own</svg>"), 0o600))
	code, out, errs := command("draw", "../../testdata/jobs/water.toml", "--out", filepath.Join(dir, "a"))
	assert.Equal(t, 1, code)
	assert.Empty(t, out)
	assert.Contains(t, errs, "there is such a file already and it is no drawing of ours")
	left, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Len(t, left, 1)
}

// A job without slots has nothing to unroll: the page says so, and so does the answer.
func TestDrawSaysWhatIsMissing(t *testing.T) {
	file := filepath.Join(t.TempDir(), "a.svg")
	code, out, errs := command("draw", "../../testdata/jobs/car-stator-13-to-30.toml", "--sheet", "unrolled", "--out", file)
	require.Equal(t, 0, code, errs)
	assert.Contains(t, out, "a.svg, without a drawing: needs the number of slots and poles")
}

func TestDrawUsage(t *testing.T) {
	job := "../../testdata/jobs/water.toml"
	for line, want := range map[string]string{
		"draw":                          "draw: nothing given, expected JOB",
		"draw " + job + " --sheet side": `--sheet: read "side", expected unrolled, face, slot, amps or all`,
		"draw " + job + " --paper a3":   `--paper: read "a3", expected a4 or letter`,
		"draw " + job + " " + job:       "expected nothing more",
		"draw " + job + " --trial Z":    "expected one of",
	} {
		code, out, errs := command(strings.Fields(line)...)
		assert.Equal(t, 2, code, line)
		assert.Empty(t, out)
		assert.Contains(t, errs, want)
	}
	for line, want := range map[string]string{
		"draw none.toml": "none.toml",
		"draw " + job + " --sheet slot --out /no/x.svg": "/no/x.svg",
	} {
		code, _, errs := command(strings.Fields(line)...)
		assert.Equal(t, 1, code, line)
		assert.Contains(t, errs, want)
	}
}
