package main

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"slotwright/winding/job"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// spoken is one answer in JSON: the request and the schema that applies.
type spoken struct {
	args   []string
	schema string
	code   int
	out    string
}

// jobFiles are jobs of every kind: an empty one, the template, the ones in testdata.
func jobFiles(t *testing.T) (good, broken []string) {
	t.Helper()
	empty, template := filepath.Join(t.TempDir(), "empty.toml"), filepath.Join(t.TempDir(), "template.toml")
	require.NoError(t, os.WriteFile(empty, []byte("format = 1\n"), 0o600))
	bare := filepath.Join(t.TempDir(), "bare.toml")
	require.NoError(t, os.WriteFile(bare, []byte("format = 1\n[[trial]]\nname = \"A\"\n"), 0o600))
	code, _, errs := command("new", template)
	require.Equal(t, 0, code, errs)
	good = []string{empty, bare, template}
	for _, dir := range []string{"jobs", "doubtful"} {
		files, err := filepath.Glob("../../testdata/" + dir + "/*.toml")
		require.NoError(t, err)
		require.NotEmpty(t, files)
		good = append(good, files...)
	}
	broken, err := filepath.Glob("../../testdata/broken/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, broken)
	return good, broken
}

// third is every third of some files.
func third(files []string) (some []string) {
	for i := 0; i < len(files); i += 3 {
		some = append(some, files[i])
	}
	return some
}

// everyAnswer asks every verb about every job, in short about every third.
func everyAnswer(t *testing.T) []spoken {
	t.Helper()
	good, broken := jobFiles(t)
	list := []spoken{
		{args: []string{"report"}, schema: "report"}, {args: []string{"card"}, schema: "card"}, {args: []string{"card", "--trial", "B"}, schema: "card"},
		{args: []string{"card", "--trial", "Z"}, schema: "problems", code: 2}, {args: []string{"report", "none.toml"}, schema: "problems", code: 1},
		{args: []string{"check", "none.toml"}, schema: "problems", code: 1}, {args: []string{"card", good[0]}, schema: "problems", code: 1},
		{args: []string{"new", filepath.Join(t.TempDir(), "a.toml")}, schema: "new"}, {args: []string{"new", good[0]}, schema: "problems", code: 1},
		{args: []string{"draw", good[3], "--out", filepath.Join(t.TempDir(), "a")}, schema: "draw"}, {args: []string{"draw", good[1], "--out", filepath.Join(t.TempDir(), "b")}, schema: "draw"},
		{args: []string{"draw", good[0]}, schema: "problems", code: 1}, {args: []string{"draw", good[3], "--paper", "a3"}, schema: "problems", code: 2},
		{args: []string{"wire", "18 AXG"}, schema: "problems", code: 2}, {args: []string{"layout", "--slots", "36"}, schema: "problems", code: 2},
		{args: []string{"layout", "--slots", "36", "--poles", "18", "--span", "2"}, schema: "problems", code: 1},
	}
	if testing.Short() {
		good, broken = append(good[:3:3], third(good[3:])...), third(broken)
	}
	for _, path := range good {
		list = append(list, spoken{args: []string{"report", path}, schema: "report"}, spoken{args: []string{"check", path}, schema: "check"})
	}
	for _, path := range good {
		if filepath.Base(filepath.Dir(path)) == "jobs" || filepath.Base(path) == "bare.toml" {
			list = append(list, spoken{args: []string{"card", path}, schema: "card"})
		}
	}
	for _, path := range broken {
		list = append(list, spoken{args: []string{"check", path}, schema: "check", code: 1},
			spoken{args: []string{"report", path}, schema: "problems", code: 1}, spoken{args: []string{"card", path}, schema: "problems", code: 1})
	}
	for _, wire := range []string{"18awg", "40 awg", "19 swg", "0.75 mm over", "0.0403 in", "7/0 swg", "0.02 mm"} {
		list = append(list, spoken{args: []string{"wire", wire, "--temp", "120"}, schema: "wire"})
	}
	for _, l := range []string{"--slots 36 --poles 12 --span 3", "--slots 12 --poles 10 --span 1", "--slots 24 --poles 4 --span 6 --layers 1 --circuits 2 --delta --turns 11",
		"--slots 48 --poles 8 --span 5 --sets 2", "--slots 4 --poles 4 --span 1 --phases 1", "--slots 3 --poles 2 --span 1"} {
		list = append(list, spoken{args: append([]string{"layout"}, strings.Fields(l)...), schema: "layout"})
	}
	list = append(list, spoken{args: []string{"shelf", "../../testdata/shelf"}, schema: "shelf"}, spoken{args: []string{"shelf", "../../testdata/jobs", "--find", "hub"}, schema: "shelf"},
		spoken{args: []string{"shelf", t.TempDir()}, schema: "shelf"}, spoken{args: []string{"shelf", "nowhere"}, schema: "problems", code: 1},
		spoken{args: []string{"report", "../../testdata/shelf/proved.toml"}, schema: "report"}, spoken{args: []string{"report", "--section", "nothing"}, schema: "problems", code: 2},
		spoken{args: []string{"new", filepath.Join(t.TempDir(), "b.toml"), "--from", "../../testdata/shelf/proved.toml"}, schema: "new"},
		spoken{args: []string{"new", filepath.Join(t.TempDir(), "c.toml"), "--from", broken[0]}, schema: "problems", code: 1})
	for i := range list {
		code, out, errs := command(append(list[i].args, "--json")...)
		require.Equal(t, list[i].code, code, "%v: %s", list[i].args, errs)
		list[i].out = out
	}
	return list
}

// aNumber is a number in JSON text outside its strings.
var (
	quoted    = regexp.MustCompile(`"(?:[^"\\]|\\.)*"`)
	aNumber   = regexp.MustCompile(`-?[0-9][0-9.eE+-]*`)
	snakeCase = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)
)

// Every answer conforms to its schema, and to what is promised of all answers.
func TestAnswersHoldToTheContract(t *testing.T) {
	schemas := map[string]*jsonschema.Schema{}
	for verb := range answers {
		schemas[verb] = schema(t, verb)
	}
	missing := 0
	for _, s := range everyAnswer(t) {
		v, err := jsonschema.UnmarshalJSON(strings.NewReader(s.out))
		require.NoError(t, err, s.args)
		assert.NoError(t, schemas[s.schema].Validate(v), "%v", s.args)
		for _, n := range aNumber.FindAllString(quoted.ReplaceAllString(s.out, ""), -1) {
			digits := strings.TrimLeft(strings.ReplaceAll(strings.Split(strings.TrimPrefix(n, "-"), "e")[0], ".", ""), "0")
			assert.LessOrEqual(t, len(strings.TrimRight(digits, "0")), jsonDigits, "%v: %s", s.args, n)
			assert.False(t, strings.HasPrefix(n, "-0") && strings.Trim(n, "-0.") == "", "%v: %s", s.args, n)
		}
		walk(v, "answer", func(key string, v any) { missing += holds(t, s.args, key, v) })
	}
	assert.Greater(t, missing, 100, "an empty job has more figures missing than that")
}

// holds checks one value under its key; it returns 1 for a missing figure.
func holds(t *testing.T, args []string, key string, v any) int {
	t.Helper()
	assert.Regexp(t, snakeCase, key, "%v", args)
	switch v := v.(type) {
	case string:
		assert.NotEmpty(t, v, "%v: %s is a word or is absent", args, key)
	case json.Number:
		if slices.Contains(neverNone, key) {
			assert.NotEqual(t, "0", v.String(), "%v: %s is absent when it is not known", args, key)
		}
		assert.True(t, hasUnit(key), "%v: %s is a number without a unit in its key", args, key)
	case map[string]any:
		value, figure := v["value"]
		if _, why := v["why"]; figure && value == nil {
			assert.True(t, why, "%v: %s is missing without a reason", args, key)
			return 1
		}
	}
	return 0
}

// walk visits every value with its key; the values within a figure are visited with the figure's key.
func walk(v any, key string, visit func(key string, v any)) {
	visit(key, v)
	switch v := v.(type) {
	case map[string]any:
		for k, child := range v {
			switch _, figure := v["from"]; {
			case k == "value" && figure, k == "plus_minus":
				visit(key, child)
			case key == "kw":
				walk(child, "kw", visit)
			default:
				walk(child, k, visit)
			}
		}
	case []any:
		for _, child := range v {
			walk(child, key, visit)
		}
	}
}

// unitWords are the units as keys spell them.
var unitWords = strings.Fields(`mm mm2 in cmil m metres feet kg lb km 1000ft a amps amp v volts w kwh rpm hertz ohms 20c c mwb t mh s seconds nm
	percent deg x`)

// countsAndRatios are the keys of plain numbers: counts, places, and ratios of like to like.
// value, percent and difference stand in a row that names its unit.
var countsAndRatios = strings.Fields(`format page pages pieces read expected line column more_problems reference value difference
	turns_per_coil strands circuits layers wires_per_slot turns_that_fit most_wires_that_pack coils_per_phase series_turns circuits_allowed spools
	slots poles phases sets span_slots coil start_slot finish_slot turns sense group circuit driven_teeth_for_wanted_ratio
	wire_fill round_fill copper_fill fill_limit kw kw1 kw3 kw5 kw7 kw11 kw13 ac_factor_top ac_factor_top_twice_the_strands allowance
	efficiency efficiency_usual net_efficiency tip_speed_ratio cp magnets_over_wound drive_ratio wanted_ratio copper cut_in`)

// neverNone are the counts and positions that are at least 1: a 0 would mean unknown.
var neverNone = strings.Fields("format line column page pages strands circuits layers span_slots slots poles phases sets coil start_slot finish_slot group circuit")

func hasUnit(key string) bool {
	if slices.Contains(countsAndRatios, key) {
		return true
	}
	return slices.ContainsFunc(strings.Split(key, "_"), func(w string) bool { return slices.Contains(unitWords, w) })
}

func TestNumbersAreRounded(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, printJSON(&b, struct {
		A, B, C, D, E, F float64
		S                string
	}{12.600000000000001, math.Copysign(0, -1), 6.1e-17, -4557505.23, 0.000012345678, -1e-13, `a "1.23456789" \`}))
	assert.JSONEq(t, `{"format":1,"A":12.6,"B":0,"C":0,"D":-4557510,"E":0.0000123457,"F":0,"S":"a \"1.23456789\" \\"}`, b.String())
	assert.NotContains(t, b.String(), "-0")
	assert.Error(t, printJSON(&b, struct{ A float64 }{math.NaN()}))
	assert.Error(t, printJSON(&b, struct{ A float64 }{math.Inf(-1)}))
}

// If the winding's temperature is not computed, it is null at every point, including those where the
// machine really runs; if it is, they are numbers.
func TestTemperatureNotFollowedIsNull(t *testing.T) {
	var keep []string
	for _, line := range strings.Split(job.Example().Text(), "\n") {
		if !strings.HasPrefix(line, "bore_mm") && !strings.HasPrefix(line, "stack_mm") {
			keep = append(keep, line)
		}
	}
	path := filepath.Join(t.TempDir(), "no-size.toml")
	require.NoError(t, os.WriteFile(path, []byte(strings.Join(keep, "\n")), 0o600))
	for _, c := range []struct {
		args []string
		null bool
	}{{[]string{"report", path, "--json"}, true}, {[]string{"report", "--json"}, false}} {
		trial := answer(t, c.args...)["trials"].([]any)[0].(map[string]any)
		for _, key := range []string{"operating", "curve", "at_speeds", "drive_points"} {
			points := trial[key].([]any)
			require.NotEmpty(t, points, key)
			for _, p := range points {
				celsius, there := p.(map[string]any)["winding_c"]
				assert.True(t, there, key)
				assert.Equal(t, c.null, celsius == nil, "%s %v", key, c.args)
			}
		}
	}
}
