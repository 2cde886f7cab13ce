package job

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const small = `# my stator
format = 1
name = "Pump alternator"   # from the shed

[machine]
slots = 36
poles = 12
bore_in = 3.5
stack_mm = "~38 ±0.5"

[[trial]]
name = "A"
turns = 11
gauge = "18 AWG"

[[trial]] # thin
name = "B"
turns = 26
gauge = "0.75 mm over"
strands = 2
`

func TestReadsValuesWithTheirUnitsAndMarks(t *testing.T) {
	d := Parse(small)
	require.Empty(t, d.Problems())
	j := d.Job()
	assert.Equal(t, "Pump alternator", j.Name)
	assert.InDelta(t, 88.9, j.Machine.BoreMM.Value, 1e-9, "3.5 in")
	assert.Equal(t, quantity.Reading{Value: 38, PlusMinus: 0.5, Origin: quantity.Guessed}, j.Machine.StackMM)
	require.Len(t, j.Trials, 2)
	assert.Equal(t, "18 AWG", j.Trials[0].Gauge.String())
	assert.Equal(t, "0.75 mm over", j.Trials[1].Gauge.String())
	assert.Equal(t, 2.0, j.Trials[1].Strands.Value)
	assert.Equal(t, quantity.Absent, j.Machine.AirGapMM.Origin)
}

func TestQuantities(t *testing.T) {
	for text, want := range map[string]typedNumber{
		"38": {value: 38}, "~38": {value: 38, guessed: true}, " ~ 38 mm ±0.5 ": {value: 38, plusMinus: 0.5, guessed: true, unit: "mm"},
		"1,2": {value: 1.2}, "200 ±2%": {value: 200, plusMinus: 4}, "12 +- 1": {value: 12, plusMinus: 1}, "-5 °C": {value: -5, unit: "degC"},
		"1e3": {value: 1000}, "0.25 Ω": {value: .25, unit: "ohm"}, "38 ±0.5 mm": {value: 38, plusMinus: .5, unit: "mm"},
		"16 mm²": {value: 16, unit: "mm2"}, "~0.1in2 ± 0.01 in²": {value: .1, plusMinus: .01, guessed: true, unit: "in2"},
	} {
		q, err := parseQuantity(text)
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, q, text)
		}
	}
	for _, text := range []string{"", "abc", "1,000", "1.2.3", "--4", "nan", "inf", "5 mm ±1 in", "±3", "~", "1e999", "3 4", "3 -4", "3 mm 4 ±"} {
		_, err := parseQuantity(text)
		assert.Error(t, err, text)
	}
}

func TestEditsKeepEverythingElse(t *testing.T) {
	d := Parse(small)
	n := d.Set("trial[1].turns", "27", quantity.Choice{})
	assert.Equal(t, strings.Replace(small, "turns = 26", "turns = 27", 1), n.Text())
	assert.Equal(t, 26.0, d.Job().Trials[1].Turns.Value, "the document before is the undo")

	n = d.Set("machine.bore", "89 mm", quantity.Choice{})
	assert.Equal(t, strings.Replace(small, "bore_in = 3.5", "bore_mm = 89", 1), n.Text(), "a typed unit becomes the key's")
	n = d.Set("machine.bore", "~3.4 ±0.1", quantity.Choice{})
	assert.Contains(t, n.Text(), `bore_in = "~3.4 ±0.1"`)
	assert.Equal(t, quantity.Guessed, n.Job().Machine.BoreMM.Origin)

	n = d.Set("machine.bore", "eighty", quantity.Choice{})
	text, _, ok := n.Typed("machine.bore")
	assert.True(t, ok)
	assert.Equal(t, "eighty", text, "nothing typed is lost")
	p, ok := n.ProblemAt("machine.bore")
	require.True(t, ok)
	assert.Equal(t, 8, p.Line)
	assert.Equal(t, small, n.Set("machine.bore", "3.5", quantity.Choice{}).Text(), "and it can be mended")
}

func TestNewKeysFindTheirPlace(t *testing.T) {
	d := Parse(small)
	n := d.Set("machine.air_gap", "0.4", quantity.Choice{})
	assert.Equal(t, strings.Replace(small, "±0.5\"\n", "±0.5\"\nair_gap_mm = 0.4\n", 1), n.Text(), "at the end of its table")
	n = d.Set("slot.mouth", "0.1", quantity.Choice{Inch: true})
	assert.Equal(t, small+"\n[slot]\nmouth_in = 0.1\n", n.Text(), "with its table when there is none, in the unit liked")
	assert.InDelta(t, 2.54, n.Job().Slot.MouthMM.Value, 1e-12)
	n = d.Set("spin[0].speed", "1500", quantity.Choice{})
	assert.Equal(t, 1500.0, n.Job().Spins[0].RPM.Value)
	n = n.Set("notes", "odd \"thing\"\tC:\\x", quantity.Choice{})
	assert.Empty(t, n.Problems())
	assert.Equal(t, "odd \"thing\"\tC:\\x", n.Job().Notes)
}

func TestPlaceholdersAreFilledAndEmptied(t *testing.T) {
	d := Parse("[machine]\n# Bore. Inside.\n# bore_mm =   # caliper\n\n# stack_mm =\n")
	n := d.Set("machine.bore", "80.50", quantity.Choice{})
	assert.Equal(t, "[machine]\n# Bore. Inside.\nbore_mm = 80.50 # caliper\n\n# stack_mm =\n", n.Text())
	back := n.Clear("machine.bore")
	assert.Equal(t, "[machine]\n# Bore. Inside.\n# bore_mm = # caliper\n\n# stack_mm =\n", back.Text())
	assert.Equal(t, n.Text(), back.Set("machine.bore", "80.50", quantity.Choice{}).Text(), "there and back")
	assert.False(t, back.Job().Machine.BoreMM.Given())
}

// A line that is not TOML is mended by typing the value in the form.
func TestUnreadableLinesAreMended(t *testing.T) {
	d := Parse("[machine]\nbore_mm = 0,5 # caliper\nslots = 36\n")
	require.Len(t, d.Problems(), 1)
	assert.Equal(t, 36.0, d.Job().Machine.Slots.Value, "the rest is read")
	n := d.Set("machine.bore", "50", quantity.Choice{})
	assert.Empty(t, n.Problems())
	assert.Equal(t, "[machine]\nbore_mm = 50\nslots = 36\n", n.Text())
}

func TestTrialsComeAndGo(t *testing.T) {
	d := Parse(small)
	n := d.Add("trial", 1)
	require.Len(t, n.Job().Trials, 3)
	assert.Equal(t, n.Job().Trials[1], n.Job().Trials[2])
	n = n.Set("trial[2].name", "C", quantity.Choice{}).Set("trial[2].turns", "30", quantity.Choice{})
	assert.Equal(t, 26.0, n.Job().Trials[1].Turns.Value)
	assert.Equal(t, 30.0, n.Job().Trials[2].Turns.Value)
	assert.Equal(t, small, n.Remove("trial", 2).Text())
	less := n.Remove("trial", 0)
	require.Len(t, less.Job().Trials, 2)
	assert.Equal(t, "B", less.Job().Trials[0].Name)
	full := n.Add("trial", 0)
	assert.Equal(t, full.Text(), full.Add("trial", 0).Text(), "no more than four")
	assert.Empty(t, full.Problems())
}

func TestTemplateIsCleanAndComplete(t *testing.T) {
	text := Template("New job")
	d := Parse(text)
	require.Empty(t, d.Problems())
	assert.Len(t, d.Job().Trials, 1, "others are copies of one that is wound")
	for i := range Fields {
		f := &Fields[i]
		assert.Contains(t, text, "\n"+placeholderOrKey(f), f.Path())
	}
	// Every field can be set in it, lands on its placeholder and reads back.
	for i := range Fields {
		f := &Fields[i]
		if f.Name == "format" {
			continue
		}
		v := sample(f)
		n := d.Set(f.PathAt(0), v, quantity.Choice{})
		assert.Empty(t, n.Problems(), "%s = %s", f.Path(), v)
		got, _, ok := n.Typed(f.PathAt(0))
		assert.True(t, ok, f.Path())
		assert.Equal(t, v, got, f.Path())
		table, _ := TableOf(f.Table)
		if !table.Many() || f.Table == "trial" {
			assert.Equal(t, strings.Count(d.Text(), "\n"), strings.Count(n.Text(), "\n"), "%s took its placeholder", f.Path())
		}
	}
	for _, line := range strings.Split(text, "\n") {
		assert.LessOrEqual(t, len([]rune(line)), 90, line)
	}
}

func placeholderOrKey(f *Input) string {
	switch f.Path() {
	case "format", "name", "trial.name":
		return f.Name + " ="
	}
	return "# " + f.Keys()[0] + " ="
}

// sample is some value a field takes.
func sample(f *Input) string {
	switch f.Kind {
	case Word:
		return f.Words[len(f.Words)-1]
	case Text:
		return "B"
	case Wire:
		return "18 AWG"
	case List:
		return "12, 10"
	}
	if f.Allowed != nil {
		return quantity.Number(f.Allowed[0], quantity.AsGiven)
	}
	if f.Kind == Whole {
		return quantity.Number(f.Min, quantity.AsGiven)
	}
	return quantity.Number((f.Min+f.Max)/2, quantity.AsGiven)
}

// A label that goes on from the field above it says both where it stands alone.
func TestALabelIsSaidWhole(t *testing.T) {
	for path, want := range map[string]string{
		"old.lead_at": "Lead to lead, at", "old.also_strands": "Second wire, strands", "old.inductance_other": "Inductance, other set",
		"wound[1].warm_air": "After an hour, in air of", "old.turns": "Turns",
	} {
		in, ok := InputAt(path)
		require.True(t, ok, path)
		assert.Equal(t, want, in.WholeLabel())
	}
	for i := range Fields {
		assert.NotContains(t, Fields[i].WholeLabel(), "…")
	}
	assert.Equal(t, "Old winding, Lead to lead, at", Place("old.lead_at"))
}

func TestSchemaIsSound(t *testing.T) {
	seen := map[string]bool{}
	for i := range Fields {
		f := &Fields[i]
		assert.False(t, seen[f.Path()], "%s twice", f.Path())
		seen[f.Path()] = true
		assert.NotEmpty(t, f.Label, f.Path())
		assert.NotEmpty(t, f.Help, f.Path())
		assert.LessOrEqual(t, f.Min, f.Max, f.Path())
		_, ok := TableOf(f.Table)
		assert.True(t, ok, f.Table)
		for k, g := range InputsOf(f.Table) {
			for _, h := range InputsOf(f.Table)[k+1:] {
				for _, key := range h.Keys() {
					assert.NotContains(t, g.Keys(), key, "%s and %s share a key", g.Path(), h.Path())
				}
			}
		}
	}
}

func TestSaveIsAtomicAndCareful(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "job.toml")
	saved, err := Save(path, small, Mark{}, 0)
	require.NoError(t, err)
	require.NoError(t, os.Chmod(path, 0o600))
	d, loaded, err := Load(path)
	require.NoError(t, err)
	assert.Equal(t, saved.Mark, loaded)
	assert.Equal(t, small, d.Text())

	link := filepath.Join(dir, "link.toml")
	require.NoError(t, os.Symlink(path, link))
	saved, err = Save(link, small+"# more\n", saved.Mark, 0)
	require.NoError(t, err)
	info, err := os.Lstat(link)
	require.NoError(t, err)
	assert.NotZero(t, info.Mode()&os.ModeSymlink, "the link stays a link")
	info, err = os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o600), info.Mode().Perm(), "the mode stays")

	require.NoError(t, os.WriteFile(path, []byte("# mine\n"), 0o600))
	_, err = Save(path, small, saved.Mark, 0)
	assert.ErrorIs(t, err, ErrChanged)
	data, _ := os.ReadFile(path)
	assert.Equal(t, "# mine\n", string(data), "what somebody else wrote is not lost")

	_, err = Save(filepath.Join(dir, "none", "job.toml"), small, Mark{}, 0)
	assert.ErrorContains(t, err, "there is no folder "+filepath.Join(dir, "none"))
	files, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Len(t, files, 2, "no temporary files are left")
}

func TestLoadRefusesWhatIsNoJob(t *testing.T) {
	dir := t.TempDir()
	_, _, err := Load(dir)
	assert.ErrorContains(t, err, "a folder")
	bin := filepath.Join(dir, "x")
	require.NoError(t, os.WriteFile(bin, []byte{0xff, 0xfe, 0}, 0o600))
	_, _, err = Load(bin)
	assert.ErrorContains(t, err, "UTF-8")
	require.NoError(t, os.WriteFile(bin, make([]byte, MaxBytes+1), 0o600))
	_, _, err = Load(bin)
	assert.ErrorContains(t, err, "at most")
	_, _, err = Load(filepath.Join(dir, "nothing"))
	assert.ErrorContains(t, err, "no such file")
}

// FuzzParse: any text gives a document, never a panic; problems have a place inside
// the text; and edits of it leave a document that says what was typed.
func FuzzParse(f *testing.F) {
	f.Add(small)
	f.Add(Template("x"))
	f.Add("a = {b = 1, c = [1,\n2]}\n[[trial]]\n[trial]\nturns=0,5\n\"")
	f.Add("machine = { bore_mm = 5, slots = 3.5 }\r\n[slot\n= 3")
	f.Fuzz(func(t *testing.T, text string) {
		d := Parse(text)
		for _, p := range d.Problems() {
			if p.Line < 1 || p.Line > strings.Count(d.Text(), "\n")+1 || p.Column < 1 {
				t.Fatalf("a problem outside the text: %+v", p)
			}
		}
		if len(d.Problems()) > 0 {
			return
		}
		n := d.Set("machine.bore", "77", quantity.Choice{})
		if got := n.Job().Machine.BoreMM.Value; got != 77 && got != 77*25.4 {
			t.Fatalf("set 77, read %v in\n%s", got, n.Text())
		}
		if len(n.Problems()) > 0 {
			t.Fatalf("an edit made a problem: %v in\n%s", n.Problems(), n.Text())
		}
		if n.Clear("machine.bore").Job().Machine.BoreMM.Given() {
			t.Fatalf("cleared, still there:\n%s", n.Clear("machine.bore").Text())
		}
	})
}

// A unit on a count is answered by what to do: there is no key that carries one.
func TestAUnitOnACount(t *testing.T) {
	d := Parse("[old]\nturns = \"0.9 over\"\n")
	require.NotEmpty(t, d.Problems())
	p := d.Problems()[0]
	assert.Contains(t, p.Text(), "expected a number without a unit; write the number alone")
}

// What was just wound is told without spoiling it: only what came out is cut or scraped.
func TestNobodyCutsWhatWasJustWound(t *testing.T) {
	for _, name := range []string{"turns", "coil_turns", "gauge", "strands", "metal"} {
		old, ok := InputAt("old." + name)
		require.True(t, ok)
		wound, ok := InputAt("wound[0]." + name)
		require.True(t, ok)
		assert.NotRegexp(t, "Cut|Burn|Scrape", wound.How, name)
		assert.NotEmpty(t, old.How, name)
	}
}
