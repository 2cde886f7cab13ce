package wants

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What begins with "needs" and is no reason that a field of the job removes: those of a record stand
// beside its own fields, the last is a caution.
var noField = []string{
	"needs the speed at that reading", "needs the speed of that hour", "needs the amps of that hour",
	"needs the temperature after an hour, or the ohms then", "needs the cold ohms too",
	"needs the wire used up, by length or by weight",
	"needs a battery management system that can stop the charge; when it does, the machine runs unloaded and its voltage rises",
}

// Every reason in the source that begins with "needs" leads to a field or is listed as one that does
// not, and each in the list is still one that the source gives.
func TestEveryNeedLeadsToAField(t *testing.T) {
	given := needsInTheSource(t)
	require.Greater(t, len(given), 60)
	for why := range given {
		assert.True(t, fieldsOf[why] != nil || slices.Contains(noField, why), "%q is not in fieldsOf", why)
	}
	for _, why := range slices.Concat(slices.Collect(maps.Keys(fieldsOf)), noField) {
		assert.True(t, given[why], "%q is no reason any more", why)
	}
	blank := job.Job{Trials: []job.Trial{{}}}
	for why, fields := range fieldsOf {
		path, ok := FieldFor(&blank, why, 0)
		_, known := job.InputAt(path)
		assert.True(t, ok && known, "%s: %s", why, path)
		for _, field := range fields {
			_, known := job.InputAt(strings.Replace(field, "[]", "[0]", 1))
			assert.True(t, known || field == wayToVolts, "%s: %s", why, field)
		}
	}
}

// needsInTheSource are the texts of package winding and those below it that begin with "needs", or with
// it after a colon; the two that explain a layout do not.
func needsInTheSource(t *testing.T) map[string]bool {
	given, files := map[string]bool{}, token.NewFileSet()
	require.NoError(t, filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || d.Name() == "needs.go" {
			return err
		}
		f, err := parser.ParseFile(files, path, nil, parser.SkipObjectResolution)
		require.NoError(t, err)
		ast.Inspect(f, func(n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
				text, err := strconv.Unquote(lit.Value)
				require.NoError(t, err)
				if strings.HasPrefix(text, "needs ") || strings.Contains(text, ": needs the ") {
					given[text] = true
				}
			}
			return true
		})
		return nil
	}))
	return given
}

// The field is the first of those needed that has no value, not one that was given already.
func TestANeedLeadsToWhatIsMissing(t *testing.T) {
	of := func(text string) *job.Job { j := job.Parse(text).Job(); return &j }
	bore := of("[machine]\nbore_mm = 90\n[[trial]]\n[[trial]]\n")
	old := of("[old]\nturns = 9\ngauge = \"1.6 mm\"\n[[trial]]\n[[trial]]\nturns = 20\n")
	field := of("[field]\nkind = \"wound\"\n[[spin]]\nspeed_rpm = 900\nline_v = 9\nfield_a = 2\n")
	wind := of("[drive]\nkind = \"wind\"\n")
	for _, c := range []struct {
		job       *job.Job
		why, path string
	}{
		{&job.Job{}, "needs the bore and the stack", "machine.bore"},
		{bore, "needs the bore and the stack", "machine.stack"},
		{old, "needs the old winding's ohms, turns and wire", "old.lead"},
		{old, "needs turns and wire, old and new", "trial[1].gauge"},
		{bore, "needs the turns", "trial[1].turns"},
		{&job.Job{}, "needs the old winding's turns", "old.turns"},
		{field, "needs spin-up readings at two field currents", "spin[1].speed"},
		{&job.Job{}, "needs the usual speed", "drive.kind"},
		{wind, "needs the usual speed", "drive.rotor"},
		{wind, "needs the volts and a top speed", "drive.rotor"},
	} {
		path, ok := FieldFor(c.job, c.why, 1)
		assert.True(t, ok, c.why)
		assert.Equal(t, c.path, path, c.why)
	}
	for _, why := range []string{"", "it never begins to charge", "needs the cold ohms too"} {
		_, ok := FieldFor(bore, why, 0)
		assert.False(t, ok, why)
	}
}
