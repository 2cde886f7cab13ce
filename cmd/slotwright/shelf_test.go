package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/winding/text"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A name that contains a line end does not produce a second message.
func TestNamesOnTheShelfStayInTheirLine(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"a\nslotwright: b.txt", "c\nslotwright: d.toml"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte{0xff}, 0o600))
	}
	code, _, errs := command("shelf", dir)
	assert.Equal(t, 0, code)
	assert.Contains(t, errs, `left out a\u000aslotwright: b.txt: `)
	assert.Contains(t, errs, `c\u000aslotwright: d.toml cannot be used: `)
	assert.Equal(t, 2, strings.Count(errs, "\n"), errs)
}

func TestShelf(t *testing.T) {
	code, out, errs := command("shelf", "../../testdata/shelf", "--sort", "state", "--reverse", "--ascii")
	require.Equal(t, 0, code, errs)
	lines := strings.Split(out, "\n")
	assert.Regexp(t, `^First from the.. 36/12 +A +1-4 +1 x 16 AWG +22 +431 +2025-09-01 proved +proved.toml$`, lines[1], out)
	assert.Regexp(t, `^ +A +1-4 +1 x 16 AWG +21 +~429 +2025-06-20 wound +proved.toml$`, lines[2], "wound before")
	assert.Contains(t, errs, "unreadable.toml cannot be used: ")
	assert.Contains(t, errs, "left out notes.txt: its name does not end in .toml")
	assert.Contains(t, out, "3 of 4 jobs; 1 cannot be used\n")
	assert.Contains(t, out, "slots full, wire of 1 to 1.5 mm bare: fill 0.70 +/-0.02")
	assert.Contains(t, out, "(your last 2 jobs)")
	assert.NotRegexp(t, `[^\n -~]`, out)
	for _, l := range lines {
		if !strings.Contains(l, "cannot be used") && !strings.Contains(l, "mean turn") {
			assert.LessOrEqual(t, text.Width(l), 90, l)
		}
	}
	code, out, _ = command("shelf", "../../testdata/shelf", "--find", "mast")
	assert.Equal(t, 0, code)
	assert.Contains(t, out, "1 of 4 jobs\n")
	code, out, _ = command("shelf", "../../testdata/shelf", "--state", "planned", "--json")
	assert.Equal(t, 0, code)
	assert.Contains(t, out, `"name": "notes.txt"`)
	assert.Contains(t, out, `"from": "planned"`)
	assert.NotContains(t, out, "proved.toml")
	code, _, errs = command("shelf", "../../testdata/shelf", "--state", "lost")
	assert.Equal(t, 2, code)
	assert.Contains(t, errs, `--state: read "lost", expected one of planned, wound, proved`)
	code, _, errs = command("shelf", "../../testdata/shelf", "--sort", "colour")
	assert.Equal(t, 2, code)
	assert.Contains(t, errs, `--sort: read "colour", expected one of file, machine`)
	code, _, errs = command("shelf", "nowhere")
	assert.Equal(t, 1, code)
	assert.Contains(t, errs, "there is no such folder")
}

func TestNewFromAnotherJob(t *testing.T) {
	path := filepath.Join(t.TempDir(), "fifth.toml")
	code, _, errs := command("new", path, "--from", "../../testdata/shelf/proved.toml")
	require.Equal(t, 0, code, errs)
	made, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(made), `name = "fifth"`)
	dir := t.TempDir()
	for _, f := range []string{"proved.toml", "wound.toml"} {
		text, err := os.ReadFile("../../testdata/shelf/" + f)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, f), text, 0o600))
	}
	_, out, _ := command("new", filepath.Join(dir, "third.toml"), "--from", filepath.Join(dir, "wound.toml"))
	assert.Contains(t, out, "left empty; type in what you want of it")
	assert.Contains(t, out, "  Fill limit ~0.70 ±0.02 (your last 2 jobs)\n")
	_, out, _ = command("new", filepath.Join(dir, "blank.toml"))
	assert.Contains(t, out, "wire of 1 to 1.5 mm bare: fill 0.70", "which wire is not known yet")
	_, out, _ = command("new", filepath.Join(dir, "fourth.toml"), "--from", filepath.Join(dir, "wound.toml"), "--json")
	assert.Contains(t, out, `"path": "slot.fill_limit"`)

	assert.NotContains(t, string(made), "[[wound]]")
	code, out, _ = command("check", path)
	assert.Equal(t, 0, code, out)
	code, _, errs = command("new", path, "--from", "../../testdata/shelf/proved.toml")
	assert.Equal(t, 1, code, "what is there is not written over")
	assert.Contains(t, errs, "already")
}

// A form feed is written only at the start of a sheet, and only on request.
func TestPages(t *testing.T) {
	_, out, _ := command("card", "--pages")
	sheets := strings.Split(out, "\f")
	require.Len(t, sheets, 2)
	assert.True(t, strings.HasPrefix(sheets[1], "WINDING CARD, TRIAL A"))
	_, out, _ = command("card")
	assert.NotContains(t, out, "\f")
	assert.Equal(t, "a\n\fb", harmless("a\n\fb"))
	assert.NotContains(t, harmless("a\fb"), "\f")
}

func TestReportBySection(t *testing.T) {
	code, out, errs := command("report", "--section", "losses,inputs")
	require.Equal(t, 0, code, errs)
	assert.Contains(t, out, "WHERE EACH TRIAL REALLY RUNS")
	assert.Contains(t, out, "WHERE EACH INPUT CAME FROM")
	assert.NotContains(t, out, "THE MACHINE")
	code, _, errs = command("report", "--section", "nothing")
	assert.Equal(t, 2, code)
	assert.Contains(t, errs, `--section: read "nothing", expected one of machine, old`)
	code, out, _ = command("report", "--help")
	assert.Equal(t, 0, code)
	assert.Contains(t, out, "  losses ")
}

// Singular and plural are right.
func TestLayoutCountsInWords(t *testing.T) {
	_, out, _ := command("layout", "--slots", "12", "--poles", "12", "--span", "1", "--phases", "1", "--layers", "1")
	assert.Contains(t, out, "12 slots, 12 poles, 1 phase, span 1, 1 layer, lap; 1 slot per pole and phase\n")
	_, out, _ = command("layout", "--slots", "12", "--poles", "10", "--span", "1")
	assert.Contains(t, out, "3 phases, span 1, 2 layers, lap; 2/5 slots per pole and phase\n")
}
