package job

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"slotwright/winding/quantity"
	words "slotwright/winding/text"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// times is how often a random test is run: EDITS=50000 go test -run Random ./winding/job
func times(t *testing.T, usual int) int {
	t.Helper()
	if n, err := strconv.Atoi(os.Getenv("EDITS")); err == nil {
		return n
	}
	if testing.Short() {
		return usual / 4
	}
	return usual
}

// jobTexts are the stored jobs, the template, and the same things written in other ways.
func jobTexts(t testing.TB) []string {
	t.Helper()
	files, err := filepath.Glob("../../testdata/jobs/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	texts := []string{small, Template("x"), exampleText, "", "# nothing yet\n",
		"machine = { slots = 36, poles = 12, span = 3 }\nslot = { area_mm2 = 55 }\n\n[[trial]]\nname = \"A\"\n",
		"machine = {}\nname = \"x\" # y\ndrive = {\n  kind = \"wind\", # a comment\n  rotor_m = 1.8,\n}\n[target]\n# amps =\n",
		"machine.slots = 36 # counted\nmachine.\"poles\" = 12\nslot.area_mm2 = 55\n[[trial]]\nname = 'A'\nturns = \"~11\"\n",
		"\ufeffname = \"x\"\r\n[machine]\r\n# bore_mm = # caliper\r\nslots = 36\r\n\r\n[[trial]]\r\nname = \"A\"\r\n",
		"[old]\ncoil_turns = [\n  12, # outer\n  10,\n]\nturns = 11\n",
		"name = \"\"\"\nlong\n\"\"\"\nnotes = '''a\n# bore_mm =\nb'''\n[machine]\nslots = 36",
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		texts = append(texts, string(text))
	}
	return texts
}

// somePath is a path there is or could be; someValue a thing a person might type there.
func somePath(r *rand.Rand, d Document) string {
	f := &Fields[r.IntN(len(Fields))]
	table, _ := TableOf(f.Table)
	if !table.Many() {
		return f.Path()
	}
	return f.PathAt(r.IntN(min(d.Count(f.Table)+1, table.Most)))
}

func someValue(r *rand.Rand, f *Input) string {
	odd := []string{"x", "~38 ±0.5", "0,5", "1,000", "12, 10, 8", "12 10", "[3, 4]", "18 AWG", "0.75 mm over", "star", "\"", `\`, "'''", `"""`,
		"# no", "}", "]", "a = 1", "line\nbreak", "tab\there", "\x1b]0;t\a", "\u202eright", "3.5 in", "-0", "é°Ω²", "200 ±2%", "1e3", "[machine]"}
	switch r.IntN(3) {
	case 0:
		return odd[r.IntN(len(odd))]
	case 1:
		return strconv.Itoa(r.IntN(100))
	}
	return sample(f)
}

// unbroken fails the test when an edit changed anything but the value at the path.
func unbroken(t *testing.T, before, after Document, path, typed string) {
	t.Helper()
	for p, e := range before.entries {
		if got, u, ok := after.Typed(p); p != path && (!ok || got != e.typed || u.Suffix != e.unit.Suffix) {
			t.Fatalf("set %s to %q: %s was %q, is %q (%v) in\n%s", path, typed, p, e.typed, got, ok, after.Text())
		}
	}
	if len(after.problems) > len(before.problems)+1 {
		t.Fatalf("set %s to %q: %d problems became %d: %v in\n%s", path, typed, len(before.problems), len(after.problems), after.problems, after.Text())
	}
	// Every line but one is there as it was, in its order; at most four are new.
	old, now := strings.SplitAfter(before.Text(), "\n"), strings.SplitAfter(after.Text(), "\n")
	i, j := 0, 0
	for i < len(old) && j < len(now) && old[i] == now[j] {
		i, j = i+1, j+1
	}
	m, n := len(old), len(now)
	for m > i && n > j && old[m-1] == now[n-1] {
		m, n = m-1, n-1
	}
	own := 0
	if e, ok := before.entries[path]; ok {
		own = strings.Count(before.text[e.value.from:e.value.to], "\n")
	}
	for _, f := range before.faults {
		own = max(own, strings.Count(before.text[f.from:f.to], "\n"))
	}
	if m-i > 3+own || n-j > 5 {
		t.Fatalf("set %s to %q: lines %q became %q", path, typed, old[i:m], now[j:n])
	}
}

// Random edits, one upon the other, of whole jobs: each is taken, or refused with a reason
// and then changes nothing; everything else in the text is as it was.
func TestRandomEditsOfWholeJobs(t *testing.T) {
	texts := jobTexts(t)
	r := rand.New(rand.NewPCG(1, 2))
	var d Document
	taken, refused := 0, 0
	for i := range times(t, 6000) {
		if i%20 == 0 {
			d = Parse(texts[r.IntN(len(texts))])
		}
		path := somePath(r, d)
		f, _ := InputAt(path)
		typed := someValue(r, f)
		if r.IntN(8) == 0 {
			typed = ""
		}
		n := d.Set(path, typed, quantity.Choice{Inch: r.IntN(2) == 0})
		if why := n.Refused(); why != "" {
			refused++
			require.Equal(t, d.Text(), n.Text(), why)
			t.Fatalf("set %s to %q was refused in a whole job: %s\n%s", path, typed, why, d.Text())
		}
		taken++
		unbroken(t, d, n, path, typed)
		got, u, ok := n.Typed(path)
		want, wantUnit := strings.TrimSpace(typed), u
		if f.Kind == Text {
			want = typed
		} else if want, wantUnit = f.ownUnit(want, u); wantUnit.Suffix != u.Suffix {
			t.Fatalf("set %s to %q: the unit is %s", path, typed, u.Suffix)
		}
		same := got == want || got == strings.Replace(want, ",", ".", 1) || (f.Kind == List && got == strings.Trim(want, "[] "))
		if strings.TrimSpace(typed) == "" {
			same = strings.TrimSpace(got) == ""
		} else if !ok {
			same = false
		}
		if !same {
			t.Fatalf("set %s to %q: reads %q in\n%s", path, typed, got, n.Text())
		}
		d = n
	}
	t.Logf("%d edits taken, %d refused", taken, refused)
}

// The same on jobs that something has been done to: what cannot be done is refused.
func TestRandomEditsOfBrokenJobs(t *testing.T) {
	texts := jobTexts(t)
	r := rand.New(rand.NewPCG(3, 4))
	taken, refused := 0, 0
	for range times(t, 4000) {
		d := Parse(mutated(r, mutated(r, texts[r.IntN(len(texts))])))
		path := somePath(r, d)
		f, _ := InputAt(path)
		typed := someValue(r, f)
		n := d.Set(path, typed, quantity.Choice{})
		if n.Refused() != "" {
			refused++
			require.Equal(t, d.Text(), n.Text())
			continue
		}
		taken++
		unbroken(t, d, n, path, typed)
		if _, _, ok := n.Typed(path); !ok && strings.TrimSpace(typed) != "" {
			t.Fatalf("set %s to %q: neither taken nor refused:\n%s\n---\n%s", path, typed, d.Text(), n.Text())
		}
	}
	t.Logf("%d edits taken, %d refused", taken, refused)
	assert.Less(t, refused, taken/4, "most can be taken")
}

// mutated is a text with one small accident.
func mutated(r *rand.Rand, text string) string {
	if text == "" {
		return text
	}
	lines := strings.SplitAfter(text, "\n")
	i := r.IntN(len(lines))
	bits := []string{`"`, `"""`, `'`, "[", "]", "{", "}", "=", "#", "\x01", ",", "±", " x ", "\r", "\ufeff", "1.2.3", "."}
	switch line := lines[i]; r.IntN(5) {
	case 0: // left out
		lines[i] = ""
	case 1: // cut short
		lines[i] = line[:r.IntN(len(line)+1)]
	case 2: // twice
		lines[i] = line + line
	case 3:
		at := r.IntN(len(line) + 1)
		lines[i] = line[:at] + bits[r.IntN(len(bits))] + line[at:]
	default:
		k := r.IntN(len(lines))
		lines[i], lines[k] = lines[k], lines[i]
	}
	return strings.ToValidUTF8(strings.Join(lines, ""), "?")
}

func TestInlineTablesAreEditedInTheirBraces(t *testing.T) {
	d := Parse("machine = { slots = 36, poles = 12, span = 3 } # iron\nslot = { area_mm2 = 55 }\n")
	require.Empty(t, d.Problems())
	n := d.Set("slot.fill_limit", "0.69", quantity.Choice{}).Set("slot.fill_limit", "0.68", quantity.Choice{}).Set("machine.bore", "3.5 in", quantity.Choice{})
	assert.Equal(t, "machine = { slots = 36, poles = 12, span = 3, bore_in = 3.5 } # iron\nslot = { area_mm2 = 55, fill_limit = 0.68 }\n", n.Text())
	assert.Empty(t, n.Problems())
	n = n.Set("machine.bore", "88.9 mm", quantity.Choice{})
	assert.Contains(t, n.Text(), "bore_mm = 88.9 }")
	assert.False(t, n.Clear("machine.bore").Job().Machine.BoreMM.Given())
	assert.Equal(t, "machine = { slots = 36 }\n", Parse("machine = {}\n").Set("machine.slots", "36", quantity.Choice{}).Text())
	line, column := n.Where("slot.mouth")
	assert.Equal(t, [2]int{2, 8}, [2]int{line, column}, "a key that is not there is looked for in the braces")
}

func TestDottedKeysAreEditedInTheirForm(t *testing.T) {
	d := Parse("machine.slots = 36\nmachine.bore_in = 3.5 # c\n\n[[trial]]\nname = \"A\"\n")
	require.Empty(t, d.Problems())
	n := d.Set("machine.poles", "12", quantity.Choice{}).Set("machine.bore", "89 mm", quantity.Choice{})
	assert.Equal(t, "machine.slots = 36\nmachine.bore_mm = 89 # c\nmachine.poles = 12\n\n[[trial]]\nname = \"A\"\n", n.Text())
	c := n.Clear("machine.bore")
	assert.Contains(t, c.Text(), "# machine.bore_mm = # c\n")
	assert.Equal(t, n.Text(), c.Set("machine.bore", "89", quantity.Choice{}).Text(), "there and back")
}

// Forms in which a table that may come many times cannot be edited are named on reading.
func TestFormsThatAreRefusedAreNamed(t *testing.T) {
	for text, want := range map[string]string{
		"spin = { speed_rpm = 5 }\n":                      "[[spin]]",
		"trial.name = \"A\"\n":                            "[[trial]]",
		"trial = [ { name = \"A\" } ]\n":                  "[[trial]]",
		"machine = { slots = 3 }\nmachine.poles = 4\n":    "at most 1",
		"machine = { slots = 3 }\n[machine]\npoles = 4\n": "at most 1",
		"\"machine.slots\" = 3\n":                         "a key of this table",
	} {
		d := Parse(text)
		if assert.Len(t, d.Problems(), 1, text) {
			assert.Contains(t, d.Problems()[0].Error(), want)
		}
	}
}

// Nothing is written behind a text that is never closed: it would become part of it.
func TestNoEditDisappearsInAnOpenText(t *testing.T) {
	text := "name = \"x\"\n[machine]\nslots = 36\n[target]\nreference = \"\"\"\nA\n[slot]\narea_mm2 = 5\n"
	d := Parse(text)
	require.Len(t, d.Problems(), 1)
	n := d.Set("slot.mouth", "2", quantity.Choice{})
	assert.Equal(t, text, n.Text())
	assert.Contains(t, n.Refused(), "line 5")
	assert.Contains(t, d.Add("trial", -1).Refused(), "line 5")
	n = d.Set("machine.poles", "12", quantity.Choice{})
	assert.Empty(t, n.Refused(), "above it all is well")
	assert.Equal(t, 12.0, n.Job().Machine.Poles.Value)
}

// What is opened and never closed is told once, where it opens.
func TestOpenThingsAreToldWhereTheyOpen(t *testing.T) {
	for text, want := range map[string]string{
		"[machine]\nslots = 36\n\n[old]\ncoil_turns = [12, 10\nturns = 11\n\n[target]\ncurrent_a = 5\n# end\n": `5:14: `,
		"[machine]\nslots = 36\n\nkind = \"\"\"lap\nturns = 11\n\n[target]\ncurrent_a = 5\n# end\n":            `4:8: `,
		"x = '''\n\n\n\n# end\n": `1:5: `,
		"machine = { slots = 36\npoles = 12\n[target]\ncurrent_a=5\n": `1:11: `,
		"name = \"abc\n[target]\ncurrent_a=5\n":                       `1:8: `,
	} {
		d := Parse(text)
		n := 0
		for _, p := range d.Problems() {
			if strings.HasPrefix(p.Error(), want) {
				n++
				assert.Contains(t, p.Expected, "ends with", text)
			}
			assert.NotContains(t, p.Read, "end\"", text)
		}
		assert.Equal(t, 1, n, "%s: %v", text, d.Problems())
		assert.LessOrEqual(t, len(d.Problems()), 2, "%s: %v", text, d.Problems())
	}
	d := Parse("[machine]\nslots = 36\n[slot\narea_mm2 = 5\n[target]\ncurrent_a = 5\n")
	assert.Len(t, d.Problems(), 1, "whose the keys below a broken header are is not known")
	assert.Equal(t, "[machine]\nslots = 36\npoles = 12\n[slot\narea_mm2 = 5\n[target]\ncurrent_a = 5\n", d.Set("machine.poles", "12", quantity.Choice{}).Text())
	d = Parse("[old]\ncoil_turns = [12, 10\nturns = 11\n[target]\ncurrent_a = 5\n")
	assert.Equal(t, 11.0, d.Job().Old.Turns.Value, "the lines below are read")
	assert.Equal(t, 5.0, d.Job().Target.Amps.Value)
}

// However much is wrong, the first fifty are reported, the rest is counted, and everything that can be
// read is read.
func TestProblemsAreCapped(t *testing.T) {
	var b strings.Builder
	for i := range 300 {
		fmt.Fprintf(&b, "word %d\n", i)
	}
	d := Parse(b.String() + "[machine]\nslots = 36\n")
	assert.Len(t, d.Problems(), 50)
	assert.Equal(t, 250, d.More())
	assert.Equal(t, 36.0, d.Job().Machine.Slots.Value)
}

// Every problem is told within the line it is on, wherever a line is broken.
func TestProblemsAreToldWithinTheirLine(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	texts := jobTexts(t)
	hurts := []func(string) string{
		func(l string) string { return l[:len(l)-1] + " x\n" },
		func(l string) string { k, _, _ := strings.Cut(l, "="); return k + "\n" },
		func(l string) string { k, _, _ := strings.Cut(l, "="); return k + "= \n" },
		func(l string) string { k, _, _ := strings.Cut(l, "="); return k + "= \"abc\n" },
		func(l string) string { k, _, _ := strings.Cut(l, "="); return k + "= 0,5 # é\n" },
		func(l string) string { k, _, _ := strings.Cut(l, "="); return k + "= [1, 2\n" },
		func(l string) string { k, _, _ := strings.Cut(l, "="); return k + "= é\n" },
		func(l string) string { k, _, _ := strings.Cut(l, "="); return k + "= 2020-01-01\n" },
		func(l string) string { k, v, _ := strings.Cut(l, "="); return "zz" + k + "=" + v },
		func(l string) string { k, v, _ := strings.Cut(l, "="); return k + "\x02=" + v },
		func(l string) string { k, v, _ := strings.Cut(l, "="); return k + "\x1b[2J=" + v },
		func(l string) string { return "ünklar " + l },
	}
	said := 0
	for range times(t, 3000) {
		text := texts[r.IntN(len(texts))]
		if len(Parse(text).Problems()) > 0 || strings.Contains(text, "'''") || strings.Contains(text, "{\n") {
			continue
		}
		lines := strings.SplitAfter(text, "\n")
		i := r.IntN(len(lines))
		l := lines[i]
		if !strings.HasSuffix(l, "\n") || strings.HasPrefix(l, "#") || !strings.Contains(l, "=") || strings.Contains(l, "[\n") || strings.Contains(l, "{") {
			continue
		}
		lines[i] = hurts[r.IntN(len(hurts))](l)
		d := Parse(strings.Join(lines, ""))
		for _, p := range d.Problems() {
			said++
			line, col := strings.TrimRight(lines[i], "\r\n"), p.Column
			if p.Line != i+1 || col < 1 || col > len([]rune(line))+1 {
				t.Fatalf("line %d became %q and is told as %v in\n%s", i+1, lines[i], p, d.Text())
			}
			if strings.ContainsFunc(p.Error(), words.Steers) {
				t.Fatalf("%q steers", p.Error())
			}
		}
	}
	assert.Greater(t, said, 20)
}

// A file within the limit is read in time that grows linearly with its length, whatever is in it. Each
// of these once took quadratic time, 20 s and more, or unbounded memory, when places were counted from
// the line's beginning for each problem.
func TestHostileFilesAreReadInStep(t *testing.T) {
	keys := func(n int) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, "k%d=1,", i)
		}
		return b.String()
	}
	for name, text := range map[string]func(n int) string{
		"a long line": func(n int) string { return "machine = {" + keys(8*n) + "x=1}\n" },
		"one key twice": func(n int) string {
			return "machine = {" + strings.Repeat("x=1,", 5*n) + strings.Repeat("slots=1,", 8*n) + "poles=2}\n"
		},
		"bad lines":   func(n int) string { return strings.Repeat("abc def\n", 12*n) },
		"open lists":  func(n int) string { return strings.Repeat("a = [1\n", 12*n) },
		"a long key":  func(n int) string { return strings.Repeat("k", 100*n) + " = 1\n" },
		"many trials": func(n int) string { return strings.Repeat("[[trial]]\n", 10*n) },
		"deep":        func(n int) string { return "a = " + strings.Repeat("[", 50*n) },
		"deeper":      func(n int) string { return "a = " + strings.Repeat("{a=", 30*n) },
	} {
		n := readAndEdit(text(10000))
		assert.LessOrEqual(t, len(n.Problems()), maxProblems, name)
		for _, p := range n.Problems() {
			assert.LessOrEqual(t, len(p.Error()), 2000, name)
		}
		assertInStep(t, name, text)
	}
}

func readAndEdit(text string) Document {
	return Parse(text).Set("machine.bore", "5", quantity.Choice{})
}

// assertInStep holds that sixteen times the text takes far less than 256 times the time, by
// the processor's time and the quickest of up to eight rounds, so that a busy machine does not decide.
func assertInStep(t *testing.T, name string, text func(int) string) {
	t.Helper()
	const small, times, most = 500, 16, 90.0
	quickest := [2]time.Duration{time.Hour, time.Hour}
	for range 8 {
		for i, n := range []int{small, times * small} {
			s := text(n)
			rounds := min(4, times*small/n)
			began := spent()
			for range rounds {
				readAndEdit(s)
			}
			quickest[i] = min(quickest[i], (spent()-began)/time.Duration(rounds))
		}
		if quickest[1] < time.Duration(most*float64(quickest[0])) {
			return
		}
	}
	t.Errorf("%s: %v for %d, %v for %d times as much", name, quickest[0], small, quickest[1], times)
}

// What looks like a line left for a key is none inside a text of several lines, also of a
// key that no table has; and empty lines at the end of a file stay.
func TestNoEditGoesIntoAText(t *testing.T) {
	text := "[machine]\nzz = '''a\n# bore_mm =\nb'''\nslots = 36\n# bore_mm = # caliper\n\n\n\n"
	n := Parse(text).Set("machine.bore", "77", quantity.Choice{})
	assert.Equal(t, strings.Replace(text, "# bore_mm = #", "bore_mm = 77 #", 1), n.Text())
	n = Parse(text).Set("slot.mouth", "2", quantity.Choice{})
	assert.Equal(t, text+"[slot]\nmouth_mm = 2\n", n.Text())
	assert.Equal(t, text+"[[trial]]\n", Parse(text).Add("trial", -1).Text())
}
