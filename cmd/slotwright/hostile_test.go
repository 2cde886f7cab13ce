package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"slotwright/winding/text"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// steers finds a character in an answer that would control the terminal.
func steers(answer string) bool {
	return strings.ContainsFunc(answer, func(r rune) bool { return r != '\n' && r != '\t' && text.Steers(r) })
}

// Nothing in a file, a file's name or a flag reaches the terminal as a control character, an escape or
// a change of direction; nor does it enter JSON unescaped.
func TestNothingFromOutsideSteersTheTerminal(t *testing.T) {
	dir := t.TempDir()
	nasty := "\x1b]0;t\x07\u202e\u009b2J\u2066\U000e0041"
	said := `\u001b]0;t\u0007\u202e\u009b2J\u2066\U000e0041`
	texts := map[string]string{
		"value.toml": "[machine]\nslots = \"" + said + "\"\n",
		"raw.toml":   "[machine]\nslots = " + nasty + "\n" + nasty + "\n",
		"key.toml":   "\"" + said + "\" = 1\n\"a\u202eb\" = 2\n",
		"table.toml": "[\"" + said + "\"]\n[\"a\u202eb\"]\nx = 1\n",
		"word.toml":  "[machine]\ncooling = \"" + said + "\"\n[[trial]]\ngauge = \"" + said + "\"\n",
		"trial.toml": "name = \"" + said + "\"\nnotes = \"" + said + "\"\n[target]\nreference = \"" + said + "x\"\n[machine]\nslots = 36\npoles = 7\n[[trial]]\nname = \"" + said + "\"\nnote = \"" + said + "\"\nturns = 11\ngauge = \"18 AWG\"\n",
	}
	if runtime.GOOS != "windows" {
		texts[nasty+"\nx.toml"] = "[machine]\nslots = 0\n"
	}
	for name, text := range texts {
		path := filepath.Join(dir, name)
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
		for _, args := range [][]string{{"check"}, {"check", "--json"}, {"report"}, {"report", "--json"}, {"card"}, {"card", "--json"}, {"card", "--trial", nasty}, {"card", "--ascii"}, {"new"}, {"new", "--json"}} {
			_, out, errs := command(append(args, path)...)
			assert.Falsef(t, steers(out), "%q %v: %q", name, args, out)
			assert.Falsef(t, steers(errs), "%q %v: %q", name, args, errs)
			assert.NotEmpty(t, out+errs)
			if strings.HasPrefix(out, "{") {
				assert.True(t, json.Valid([]byte(out)))
			}
		}
	}
	for _, args := range [][]string{{nasty}, {nasty, nasty}, {"--" + nasty}, {"check", "none" + nasty}, {"new", filepath.Join("none", nasty)}, {"wire", nasty}, {"wire", "18", "--build", nasty},
		{"wire", "18", "--equals", nasty}, {"wire", "18", "--temp", nasty}, {"layout", "--slots", nasty}, {"layout", "--kind", nasty}, {"help", nasty}, {"card", "--trial", nasty}} {
		_, out, errs := command(args...)
		assert.Falsef(t, steers(out+errs), "%q: %q %q", args, out, errs)
		assert.NotEmpty(t, out+errs)
	}
	// JSON is lossless: it reads back as it was.
	v := answer(t, "report", "--json", filepath.Join(dir, "trial.toml"))
	assert.Equal(t, nasty, v["trials"].([]any)[0].(map[string]any)["name"])
}

// An answer that cannot be written is a failure, for every verb.
func TestAnswersThatCannotBeWritten(t *testing.T) {
	closed, err := os.Create(filepath.Join(t.TempDir(), "x"))
	require.NoError(t, err)
	require.NoError(t, closed.Close())
	ways := map[string]*os.File{"closed": closed}
	if full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0); err == nil {
		defer full.Close()
		ways["full"] = full
	}
	for way, to := range ways {
		for _, args := range [][]string{{"report"}, {"report", "--json"}, {"card"}, {"card", "--json"}, {"wire", "18"}, {"wire", "18", "--json"}, {"layout", "--slots", "36", "--poles", "12", "--span", "3"},
			{"check", "../../testdata/jobs/water.toml"}, {"check", "--json", "../../testdata/jobs/water.toml"}, {"help"}, {"help", "card"}, {"--help"}} {
			var errs bytes.Buffer
			code := run(context.Background(), args, streams{strings.NewReader(""), to, &errs})
			assert.Equal(t, 1, code, "%s %v", way, args)
			assert.Contains(t, errs.String(), "the answer could not be written: ", "%s %v", way, args)
			assert.NotContains(t, errs.String(), "Try:", way)
		}
	}
}

// 0 success, 1 a problem in the job or while running, 2 bad usage.
func TestExitCodes(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	require.NoError(t, os.WriteFile("ab.toml", []byte("[machine]\nslots = 36\npoles = 7\n[target]\nreference = \"Zebra\"\n[[trial]]\nname = \"A\"\n"), 0o600))
	lay := func(more ...string) []string {
		return append([]string{"layout", "--slots", "36", "--poles", "12", "--span", "3"}, more...)
	}
	for _, c := range []struct {
		code int
		says string
		args []string
	}{
		{0, `no trial "Zebra"`, []string{"check", "ab.toml"}},
		{0, "TRIAL B", []string{"card", "--trial", "b"}},
		{2, "expected one of A B", []string{"card", "--trial", "Z"}},
		{1, "circuits: read -1", lay("--circuits", "-1")},
		{1, "turns per coil: read 0", lay("--circuits", "2", "--turns", "0")},
		{1, "turns per coil: read 0", lay("--turns", "0")},
		{1, "turns per coil: read -3", lay("--turns", "-3")},
		{1, "slots: read 0", lay("--slots", "0")},
		{2, `--kind: read "round"`, lay("--kind", "round")},
		{1, "circuits: read 7", lay("--circuits", "7")},
		{1, "span: read 40", []string{"layout", "--slots", "36", "--poles", "12", "--span", "40"}},
		{2, `read "chekc", expected a verb`, []string{"chekc", "ab.toml"}},
		{1, "there is no folder no;", []string{"new", filepath.Join("no", "such", "dir.toml")}},
		{1, "expected a file name", []string{"new", ""}},
		{1, "read a folder", []string{"new", "."}},
		{1, "there is such a file already", []string{"new", "ab.toml"}},
		{0, "slotwright ./-dash.toml", []string{"new", "--", "-dash.toml"}},
		{0, "slotwright 'a b.toml'", []string{"new", "a b.toml"}},
		{1, "there is no such file: none.toml", []string{"check", "none.toml"}},
		{1, "read a folder", []string{"report", "."}},
	} {
		code, out, errs := command(c.args...)
		assert.Equal(t, c.code, code, "%v: %s", c.args, errs)
		assert.Contains(t, out+errs, c.says, "%v", c.args)
	}
}

// Singular and plural are right.
func TestCheckCounts(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x.toml")
	require.NoError(t, os.WriteFile(path, []byte("[target]\nreference = \"Z\"\n[[trial]]\nname = \"A\"\n"), 0o600))
	_, out, _ := command("check", path)
	assert.Contains(t, out, "1 thing to look at")
	require.NoError(t, os.WriteFile(path, []byte(strings.Repeat("word\n", 80)), 0o600))
	code, _, errs := command("check", path)
	assert.Equal(t, 1, code)
	assert.Contains(t, errs, "30 more problems")
	assert.Equal(t, 51, strings.Count(errs, "\n"))
	_, out, _ = command("check", "--json", path)
	assert.Contains(t, out, `"more_problems": 30`)
	_, _, errs = command("report", path)
	assert.Contains(t, errs, "and 79 more")
}

// FuzzArguments: any command line is answered with a defined exit code and some output, and without
// control characters. j.toml is a job, x.toml a broken one.
func FuzzArguments(f *testing.F) {
	for _, line := range []string{
		"wire|18 AWG|--temp|120", "wire|0.75|mm|over", "wire|2 x 18 AWG|--json|--build|grade 2", "wire|18|--equals|2 x",
		"layout|--slots|36|--poles|12|--span|3|--circuits|-1", "layout|--slots=12|--poles=10|--span=1|--json", "layout|--coils|1-4 5-8",
		"card|--trial|b|--ascii", "card|j.toml|--pages|--inch", "check|\x1b[2J.toml", "check|x.toml|--json", "check|j.toml", "report|/dev/zero",
		"report|j.toml|--section|losses,inputs", "report|--json|x.toml", "new|a.toml|--from|j.toml", "new|--|-a.toml", "draw|j.toml|--sheet|slot|--out|o.svg",
		"shelf|.|--sort|date", "completion|bash", "man", "help|card", "--version", "--theme|none", "j.toml|j.toml", "-h", "--", "",
	} {
		f.Add(strings.ReplaceAll(line, "|", "\x00"))
	}
	whole, err := os.ReadFile("../../testdata/jobs/water.toml")
	require.NoError(f, err)
	f.Fuzz(func(t *testing.T, line string) {
		for _, writes := range []string{"new", "draw", "man"} {
			if strings.Contains(line, writes) && (strings.ContainsAny(line, `/\`) || strings.Contains(line, "..")) {
				return // it must write only in the test's own folder
			}
		}
		t.Chdir(t.TempDir())
		t.Setenv("XDG_STATE_HOME", t.TempDir())
		require.NoError(t, os.WriteFile("j.toml", whole, 0o600))
		require.NoError(t, os.WriteFile("x.toml", []byte("[machine]\nslots = x\npoles = \"\x1b[2J\"\n[slot\n"), 0o600))
		args := strings.Split(line, "\x00")
		code, out, errs := command(args...)
		if code < 0 || code > 2 || out+errs == "" || (code == 2) != strings.Contains(errs, "Try: ") {
			t.Fatalf("%q: %d %q %q", args, code, out, errs)
		}
		if steers(strings.ReplaceAll(out, "\n\f", "\n")) || steers(errs) {
			t.Fatalf("%q steers: %q %q", args, out, errs)
		}
	})
}
