package main

import (
	"encoding/json"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/winding/text"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "rewrite the golden reports")

// answer runs a verb that must succeed and reads its JSON.
func answer(t *testing.T, args ...string) map[string]any {
	t.Helper()
	code, out, errs := command(args...)
	require.Equal(t, 0, code, errs)
	var v map[string]any
	require.NoError(t, json.Unmarshal([]byte(out), &v))
	return v
}

// 18 AWG: 1.024 mm, 40.3 mil, 20.95 Ω/km; 40 AWG: 3.1 mil (ASTM B258, NBS Handbook 100).
func TestWire(t *testing.T) {
	v := answer(t, "wire", "18awg", "--json")
	assert.InDelta(t, 1.024, v["bare_mm"], 0.0005)
	assert.InDelta(t, 0.0403, v["bare_in"], 1e-9)
	assert.InEpsilon(t, 20.95, v["ohms_per_km_20c"], 0.001)
	v = answer(t, "wire", "40", "awg", "--json")
	assert.InDelta(t, 0.0031, v["bare_in"], 1e-9)
	code, out, _ := command("wire", "0.75 mm over", "--build", "grade1")
	assert.Equal(t, 0, code)
	assert.Contains(t, out, "over enamel")
	for _, bad := range [][]string{{"wire"}, {"wire", "18 AXG"}, {"wire", "18", "--build", "thick"}, {"wire", "18", "--metal", "gold"},
		{"wire", "18", "--temp", "9999"}, {"wire", "18", "--equals", "xyz"}} {
		code, out, errs := command(bad...)
		assert.Equal(t, 2, code, bad)
		assert.Empty(t, out)
		assert.NotEmpty(t, errs)
	}
}

// 36/12 at full pitch has factor 1; 12/10 tooth coils 0.933 (testdata/layout).
func TestLayout(t *testing.T) {
	v := answer(t, "layout", "--slots", "36", "--poles", "12", "--span", "3", "--json")
	assert.InDelta(t, 1, v["kw1"], 1e-9)
	assert.Len(t, v["coils"], 36)
	v = answer(t, "layout", "--slots", "12", "--poles", "10", "--span", "1", "--json")
	assert.InDelta(t, 0.9330, v["kw1"], 0.00005)
	code, out, _ := command("layout", "--slots", "24", "--poles", "4", "--span", "6", "--layers", "1", "--circuits", "2", "--delta", "--turns", "11")
	assert.Equal(t, 0, code)
	assert.Contains(t, out, "11 turns")
	assert.Contains(t, out, "delta U1-W2")
	code, _, errs := command("layout", "--slots", "36", "--poles", "18", "--span", "2")
	assert.Equal(t, 1, code)
	assert.Contains(t, errs, "nearest that work")
	code, _, _ = command("layout", "--slots", "36")
	assert.Equal(t, 2, code)
}

func TestReportAndCard(t *testing.T) {
	v := answer(t, "report", "--json")
	trials := v["trials"].([]any)
	require.Len(t, trials, 3)
	for _, key := range []string{"cut_in_rpm", "phase_ohms_20c", "bare_mm", "kw1", "volts_line_rms_per_rpm", "at_speeds", "curve", "operating", "limits", "buy"} {
		assert.Contains(t, trials[0], key)
	}
	point := trials[1].(map[string]any)["at_speeds"].([]any)[1].(map[string]any)
	assert.Greater(t, point["amps_dc"], 1.0)
	assert.Equal(t, true, v["invented"])

	code, out, _ := command("card", "--trial", "B", "--ascii")
	assert.Equal(t, 0, code)
	assert.Contains(t, out, "TRIAL B")
	for _, r := range out {
		assert.Less(t, r, rune(0x7f))
	}
	code, _, errs := command("card", "--trial", "Z")
	assert.Equal(t, 2, code)
	assert.Contains(t, errs, "expected one of A B C")
	nameless := filepath.Join(t.TempDir(), "nameless.toml")
	require.NoError(t, os.WriteFile(nameless, []byte("[[trial]]\nturns = 5\n"), 0o600))
	code, _, errs = command("card", nameless, "--trial", "A")
	assert.Equal(t, 2, code)
	assert.Contains(t, errs, "no trial of the job has a name")
	card := answer(t, "card", "--trial", "b", "--json")
	assert.Contains(t, card["card"], "TRIAL B")
	code, _, errs = command("report", "../../testdata/broken/several.toml")
	assert.Equal(t, 1, code)
	assert.Contains(t, errs, "and 2 more")
}

func TestNew(t *testing.T) {
	path := filepath.Join(t.TempDir(), "my stator.toml")
	code, out, errs := command("new", path)
	require.Equal(t, 0, code, errs)
	assert.Contains(t, out, path)
	code, out, _ = command("check", path)
	assert.Equal(t, 0, code)
	assert.Contains(t, out, "nothing wrong")
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(before), `name = "my stator"`)
	code, _, errs = command("new", path)
	assert.Equal(t, 1, code, "what is there is not written over")
	assert.Contains(t, errs, "already")
	after, _ := os.ReadFile(path)
	assert.Equal(t, before, after)
}

func TestUsage(t *testing.T) {
	code, out, _ := command("help")
	assert.Equal(t, 0, code)
	for _, verb := range []string{"new", "check", "report", "card", "wire", "layout"} {
		assert.Contains(t, out, "  "+verb)
	}
	code, _, errs := command("a.toml", "b.toml")
	assert.Equal(t, 2, code)
	assert.Contains(t, errs, "slotwright: ")
	code, _, errs = command("../../testdata/jobs/water.toml")
	assert.Equal(t, 2, code, "no terminal here")
	assert.Contains(t, errs, "needs a terminal")
}

// Usage errors name what was typed and what was expected, in our own words and no library's.
func TestUsageErrors(t *testing.T) {
	for line, want := range map[string]string{
		"layout --slots abc":         `--slots: read "abc", expected a whole number`,
		"layout --slots 36 --span 3": "--poles: not given, expected poles of the rotor",
		"layout x":                   `layout: read "x", expected options only`,
		"wire":                       "wire: nothing given, expected GAUGE",
		"wire 18 --temp":             "--temp: nothing behind it, expected a number",
		"wire 18 --temp warm":        `--temp: read "warm", expected a number`,
		"wire 18 --tmp 3":            "read the option --tmp, expected one of --ascii --build",
		"wire 18 -z":                 "read the option -z, expected one of --ascii --build",
		"wire 18 ---z":               "read the option ---z, expected one of --ascii --build",
		"card a.toml b.toml":         `card: read "b.toml" after "a.toml", expected nothing more`,
		"check":                      "check: nothing given, expected JOB",
		"report --json=maybe":        `--json: read "maybe", expected true or false`,
		"chekc a.toml":               `read "chekc", expected a verb or one job: did you mean check?`,
		"a.toml b.toml":              `read "b.toml" after "a.toml", expected one job at most, or a verb first: card, check`,
		"wire 18 --temp 999 --ascii": "expected -60 to 300 degC",
	} {
		code, out, errs := command(strings.Fields(line)...)
		assert.Equal(t, 2, code, line)
		assert.Empty(t, out, line)
		assert.Contains(t, errs, want, line)
		assert.NotRegexp(t, `strconv|arg\(s\)|flag`, errs, line)
	}
	code, _, errs := command(strings.Fields("layout --slots 36 --poles 12 --span 3 --phases 4")...)
	assert.Equal(t, 1, code)
	assert.Contains(t, errs, "nearest that work: 3 phases\n")
}

func TestVersion(t *testing.T) {
	code, out, _ := command("--version")
	assert.Equal(t, 0, code)
	assert.Regexp(t, `^slotwright \S.*go1\.`, out)
}

// Every verb answers in ASCII when asked to; JSON says the same in ASCII as without.
func TestASCIIEverywhere(t *testing.T) {
	for _, line := range []string{"wire 18 --temp 120", "layout --slots 36 --poles 12 --span 3", "check ../../testdata/jobs/water.toml", "report", "card --json", "report --json"} {
		code, out, errs := command(append(strings.Fields(line), "--ascii")...)
		assert.Equal(t, 0, code, errs)
		assert.NotRegexp(t, `[^\n -~]`, out, line)
	}
	plain, escaped := answer(t, "report", "--json"), answer(t, "report", "--json", "--ascii")
	assert.Equal(t, plain, escaped)
	_, out, _ := command("wire", "18", "--temp", "120", "--ascii")
	assert.Contains(t, out, "ohms at 20 degC   20.95 ohm/km")
	assert.Contains(t, out, "ohms at 120 degC  29.18 ohm/km")
}

// Keys are in small letters, as everywhere.
func TestKeysOfNotesAndNearest(t *testing.T) {
	note := answer(t, "layout", "--slots", "36", "--poles", "12", "--span", "3", "--json")["notes"].([]any)[0].(map[string]any)
	for _, key := range []string{"topic", "text", "source", "caution"} {
		assert.Contains(t, note, key)
	}
	assert.Equal(t, map[string]any{"swg": "19 SWG", "iec": "IEC 1 mm"}, answer(t, "wire", "18awg", "--json")["nearest"])
}

// The report of every job in testdata/jobs, as last reviewed.
func TestGoldenReports(t *testing.T) {
	jobs, err := filepath.Glob("../../testdata/jobs/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, jobs)
	for _, path := range jobs {
		code, out, errs := command("report", path)
		require.Equal(t, 0, code, errs)
		golden := filepath.Join("../../testdata/reports", strings.TrimSuffix(filepath.Base(path), ".toml")+".txt")
		if *update {
			require.NoError(t, os.MkdirAll(filepath.Dir(golden), 0o755))
			require.NoError(t, os.WriteFile(golden, []byte(out), 0o600))
			continue
		}
		want, err := os.ReadFile(golden)
		require.NoError(t, err)
		assert.Equal(t, strings.ReplaceAll(string(want), "\r\n", "\n"), out, path)
	}
}

// A path is printed so that the shell, given it back, finds that very file.
func TestPathsAreToldAsTheShellTakesThem(t *testing.T) {
	bash, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("no bash")
	}
	for _, path := range []string{"hub.toml", "-dash.toml", "a b.toml", "it's.toml", "a\nb.toml", "\x1b[2J'\\n.toml", "\u202eé.toml", "$HOME`x`"} {
		word := shellWord(path)
		assert.Equal(t, word, text.Visible(word), "it can be shown")
		c := exec.Command(bash, "-c", "printf %s "+word)
		c.Env = []string{"LC_ALL=C.UTF-8"}
		said, err := c.Output()
		require.NoError(t, err, word)
		assert.Equal(t, path, strings.TrimPrefix(string(said), "./"), word)
	}
}

// Wrong usage points to the help of the verb it was typed to.
func TestWrongUsePointsToItsHelp(t *testing.T) {
	for typed, want := range map[string]string{"card --trial Z": "Try: slotwright card --help\n", "layout": "Try: slotwright layout --help\n", "--nope": "Try: slotwright --help\n"} {
		code, _, errs := command(strings.Fields(typed)...)
		assert.Equal(t, 2, code, typed)
		assert.True(t, strings.HasSuffix(errs, "\n"+want), errs)
		code, out, _ := command(strings.Fields(strings.TrimPrefix(strings.TrimSpace(want), "Try: slotwright "))...)
		assert.Equal(t, 0, code, typed)
		assert.Contains(t, out, "Usage:")
	}
}

// Hazards are stated where people look first, as in the README.
func TestHelpAndManualSayWhatCanHurt(t *testing.T) {
	for _, args := range [][]string{{"--help"}, {"man"}} {
		code, out, _ := command(args...)
		assert.Zero(t, code)
		words := strings.Join(strings.Fields(out), " ")
		assert.Contains(t, words, "not a rating. Volts above 60 V DC or 50 V AC, turning rotors, magnets and batteries can hurt or kill", args)
	}
}
