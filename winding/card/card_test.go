package card

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"unicode"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/text"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the golden cards anew")

// worked is a job with everything worked out.
type worked struct {
	d job.Document
	b *winding.Bench
	o winding.Outcome
}

func workOut(text string) worked {
	w := worked{d: job.Parse(text)}
	w.b = winding.Prepare(w.d.Job())
	w.o = w.b.Outcome()
	return w
}

// ways is every way to set a text.
func (w *worked) ways() map[string]Options {
	inch := quantity.Choice{Inch: true, Fahrenheit: true}
	return map[string]Options{
		"": {Document: &w.d}, "-ascii": {Document: &w.d, ASCII: true},
		"-inch": {Document: &w.d, Units: inch}, "-ascii-inch": {Document: &w.d, ASCII: true, Units: inch},
		"-no-document": {},
	}
}

// tangled has what the example has not: delta, two circuits, nested coils of unequal
// turns, two sizes in hand, four trials, two layers. Invented.
const tangled = `
format = 1
name = "Tangle, Ø 120 — Prüfstück"
notes = "first line\nsecond line ` + "\\u0007" + ` with a bell"
[machine]
slots = 72
poles = 12
bore_mm = 100
stack_mm = 40
kind = "concentric"
[slot]
area_mm2 = 90
[field]
gap_flux_t = 0.6
[drive]
kind = "wind"
rotor_m = 2.0
ratio = 3
[[trial]]
name = "A"
gauge = "0.8 mm"
connection = "delta"
circuits = 2
coil_turns = [12, 10]
layers = 1
[[trial]]
name = "B"
turns = 14
gauge = "0.6 mm"
strands = 2
also_gauge = "0.5 mm"
also_strands = 1
kind = "lap"
layers = 2
[[trial]]
name = "C"
turns = 4000
gauge = "12 AWG"
[[trial]]
name = "D"
`

// jobs is every job the properties are held against, worked out once.
func jobs(t *testing.T) map[string]worked {
	t.Helper()
	once.Do(func() { everyJob = workOutAll(t) })
	return everyJob
}

var (
	once     sync.Once
	everyJob map[string]worked
)

func workOutAll(t *testing.T) map[string]worked {
	t.Helper()
	all := map[string]worked{
		"example": workOut(job.Example().Text()), "empty": workOut(""), "template": workOut(job.Template("new")),
		"tangled":      workOut(tangled),
		"two sets":     workOut("[machine]\nslots = 72\npoles = 12\nsets = 2\nlayers = 1\n[[trial]]\nname = \"A\"\nturns = 5\ngauge = \"1 mm\"\n"),
		"only a trial": workOut("[[trial]]\nname = \"" + strings.Repeat("長い", 60) + "\"\n"),
	}
	for _, folder := range []string{"jobs", "doubtful", "broken"} {
		files, err := filepath.Glob("../../testdata/" + folder + "/*.toml")
		require.NoError(t, err)
		for _, f := range files {
			text, err := os.ReadFile(f)
			require.NoError(t, err)
			all[f] = workOut(string(text))
		}
	}
	return all
}

// texts is every card and the report of a job, set one way.
func (w *worked) texts(opt Options) map[string]string {
	all := map[string]string{"report": Report(w.b, &w.o, opt), "no such trial": Text(w.b, &w.o, 99, opt)}
	for i, t := range w.o.Trials {
		all["card "+t.Name] = Text(w.b, &w.o, i, opt)
	}
	return all
}

func notPlain(r rune) bool { return r != '\n' && (r < ' ' || r > '~') }

var notANumber = regexp.MustCompile(`(?i)\bnan\b|[+-]inf\b|\binf\b|%!`)

func TestEveryTextIsFitToPrint(t *testing.T) {
	for name, w := range jobs(t) {
		for way, opt := range w.ways() {
			for which, sheet := range w.texts(opt) {
				at := name + way + " " + which
				require.True(t, strings.HasSuffix(sheet, "\n") && !strings.HasSuffix(sheet, "\n\n"), at)
				for n, line := range strings.Split(sheet, "\n") {
					require.LessOrEqualf(t, text.Width(line), width, "%s line %d: %s", at, n+1, line)
					require.Equalf(t, strings.TrimRight(line, " \t"), line, "%s line %d ends in a blank", at, n+1)
					require.Falsef(t, strings.ContainsFunc(line, unicode.IsControl), "%s line %d has a control character", at, n+1)
				}
				computed, _, _ := strings.Cut(sheet, "WHERE EACH INPUT CAME FROM") // what was typed may be anything
				require.NotRegexp(t, notANumber, computed, at)
				if opt.ASCII {
					require.False(t, strings.ContainsFunc(sheet, notPlain), at)
				}
			}
		}
	}
}

func TestEverySectionIsThere(t *testing.T) {
	card := []string{"WINDING CARD", "STATOR ", "FOR ", "WIRE ", "TURNS ", "COILS ", "JOINED ", "FORMER ", "ONE COIL", "BUY ", "FILL ", "OHMS ", "VOLTS ", "LIMITS ",
		"SLOTS ", "CUT ", "FIRST RUN", "IF OFF"}
	report := []string{"REPORT", "THE MACHINE", "OLD WINDING", "THE TRIALS", "SIDE BY SIDE", "MORE FIGURES", "CURRENT LIMITS, WITH REASONS AND SOURCES",
		"AT THE JOB'S SPEEDS", "BATTERY", "THE DRIVE", "ABOUT THE LAYOUT", "FINDINGS", "CAUTIONS", "WHERE EACH INPUT CAME FROM", "WHERE EACH FIGURE CAME FROM"}
	for name, w := range jobs(t) {
		for which, text := range w.texts(Options{Document: &w.d}) {
			switch which {
			case "no such trial":
				require.Contains(t, text, "There is no trial", name)
				continue
			case "report":
				for _, heading := range report {
					require.Containsf(t, text, "\n  "+heading, "%s %s", name, which)
				}
			default:
				for _, heading := range card {
					if heading == "SLOTS " && w.d.Job().Machine.Stator == "flat" {
						heading = "GAPS "
					}
					require.Containsf(t, "\n"+text, "\n"+heading, "%s %s", name, which)
				}
			}
			says := foot // on every sheet one
			if which == "report" {
				says = estimate
			}
			require.Contains(t, flat(text), says, name+" "+which)
		}
	}
}

// A form feed stands between sheets, on request only, and no sheet has more than 66 lines.
func TestSheets(t *testing.T) {
	for name, w := range jobs(t) {
		for way, opt := range w.ways() {
			plain := w.texts(opt)
			opt.Pages = true
			for which, all := range w.texts(opt) {
				sheets := strings.Split(all, "\f")
				for i, s := range sheets {
					require.LessOrEqualf(t, strings.Count(s, "\n"), pageLines, "%s%s %s, sheet %d", name, way, which, i+1)
				}
				require.NotContains(t, plain[which], "\f")
				if strings.HasPrefix(which, "card") {
					require.GreaterOrEqual(t, len(sheets), 2)
					_, last, _ := strings.Cut(sheets[len(sheets)-1], "\n")
					require.NotEqual(t, text.ASCII(estimate), flat(text.ASCII(last)), "%s %s: a sheet for the last words alone", name, which)
					require.Equal(t, strings.Join(sheets, "\n"), plain[which], name+way+which)
				}
			}
		}
	}
}

// A section that is asked for by name comes alone, as it stands in the whole.
func TestReportBySection(t *testing.T) {
	w := workOut(job.Example().Text())
	whole := Report(w.b, &w.o, Options{Document: &w.d})
	heads := map[string]bool{}
	for _, s := range Sections() {
		part := Report(w.b, &w.o, Options{Document: &w.d, Sections: []string{s.Name}})
		found := regexp.MustCompile(`(?m)^-{80}\n  (.*)\n-{80}$`).FindAllStringSubmatch(part, -1)
		require.Len(t, found, 1, s.Name)
		require.False(t, heads[found[0][1]], s.Name)
		heads[found[0][1]] = true
		_, body, _ := strings.Cut(part, found[0][0])
		body, _, _ = strings.Cut(body, estimate[:20])
		require.Contains(t, whole, strings.TrimSpace(body), s.Name)
		require.Less(t, len(part), len(whole)/2, s.Name)
	}
}

func TestGolden(t *testing.T) {
	w := workOut(job.Example().Text())
	for way, opt := range w.ways() {
		if opt.Document == nil {
			continue
		}
		for i, trial := range []string{"a", "b"} {
			golden(t, "trial-"+trial+way+".txt", Text(w.b, &w.o, i, opt))
		}
		golden(t, "report"+way+".txt", Report(w.b, &w.o, opt))
	}
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("../../testdata/cards", name)
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), got, "%s: if the change is meant, run go test ./winding/card -update", name)
}

// flat is a text with its lines run together, so that a wrapped sentence can be found.
func flat(text string) string { return strings.Join(strings.Fields(text), " ") }
