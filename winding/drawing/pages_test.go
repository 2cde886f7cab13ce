package drawing

import (
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "rewrite the golden drawing")

// machine is a job to draw: its layout, and the trial's connection and circuits.
type machine struct {
	name                               string
	slots, poles, phases, layers, span int
	sets, circuits                     int
	kind, connection                   string
}

// machines are layouts of every kind; the first six are those reviewed by eye.
var machines = []machine{
	{name: "36/12 lap", slots: 36, poles: 12, phases: 3, layers: 2, span: 3},
	{name: "12/10 tooth coils", slots: 12, poles: 10, phases: 3, layers: 2, span: 1, connection: "delta"},
	{name: "24/4 concentric", slots: 24, poles: 4, phases: 3, layers: 2, span: 5, kind: "concentric", circuits: 2},
	{name: "12/12 one phase", slots: 12, poles: 12, phases: 1, layers: 2, span: 1},
	{name: "27/6 fractional", slots: 27, poles: 6, phases: 3, layers: 2, span: 4},
	{name: "48/8 two sets", slots: 48, poles: 8, phases: 3, layers: 2, span: 5, sets: 2},
	{name: "36/12 one layer", slots: 36, poles: 12, phases: 3, layers: 1, span: 3, circuits: 6},
	{name: "36/4 one layer concentric", slots: 36, poles: 4, phases: 3, layers: 1, span: 9, kind: "concentric"},
	{name: "36/6 wave", slots: 36, poles: 6, phases: 3, layers: 1, span: 6, kind: "wave"},
	{name: "48/4 long span, delta", slots: 48, poles: 4, phases: 3, layers: 2, span: 10, connection: "delta", circuits: 4},
	{name: "72/24 tooth coils of a second kind", slots: 72, poles: 60, phases: 3, layers: 2, span: 1},
	{name: "6/2", slots: 6, poles: 2, phases: 3, layers: 2, span: 2},
	{name: "3/2", slots: 3, poles: 2, phases: 3, layers: 2, span: 1},
	{name: "48/8 two sets, delta", slots: 48, poles: 8, phases: 3, layers: 2, span: 6, sets: 2, connection: "delta", circuits: 2},
	{name: "96/8", slots: 96, poles: 8, phases: 3, layers: 2, span: 10, circuits: 8},
	{name: "120/20", slots: 120, poles: 20, phases: 3, layers: 2, span: 6},
	{name: "360/40", slots: 360, poles: 40, phases: 3, layers: 2, span: 9},
}

// text is the machine as a job file, added to the job that all share.
func (m machine) text(t *testing.T) string {
	t.Helper()
	base, err := os.ReadFile("../../testdata/jobs/wind-good.toml")
	require.NoError(t, err)
	text := string(base)
	set := func(key, value string) {
		line := regexp.MustCompile(`(?m)^` + key + ` = .*$`)
		require.Regexp(t, line, text)
		text = line.ReplaceAllString(text, key+" = "+value)
	}
	set("slots", fmt.Sprintf("%d\nphases = %d\nsets = %d", m.slots, m.phases, max(1, m.sets)))
	set("poles", fmt.Sprint(m.poles))
	set("layers", fmt.Sprint(m.layers))
	set("span", fmt.Sprintf("%d\nkind = %q", m.span, orElse(m.kind, "lap")))
	set("turns", fmt.Sprintf("9\nconnection = %q\ncircuits = %d", orElse(m.connection, "star"), max(1, m.circuits)))
	return text
}

func orElse(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

// drawn returns the pages of a job's first trial.
func drawn(t *testing.T, text string, opt Options, sheets ...Sheet) (*winding.Bench, *winding.Outcome, []*Page) {
	t.Helper()
	d := job.Parse(text)
	require.Empty(t, d.Problems())
	b := winding.Prepare(d.Job())
	o := b.Outcome()
	if len(sheets) == 0 {
		sheets = All
	}
	return b, &o, Pages(b, &o, 0, sheets, opt)
}

// laid returns the pages of a machine without what only the amps need, which takes longer.
func laid(t *testing.T, m machine, opt Options, sheets ...Sheet) (*winding.Bench, *winding.Outcome, []*Page) {
	t.Helper()
	d := job.Parse(m.text(t))
	require.Empty(t, d.Problems())
	b := winding.Prepare(d.Job())
	o := winding.Outcome{Job: d.Job().Name, Trials: []winding.TrialOutcome{b.Static(d.Job().Trials[0])}}
	return b, &o, Pages(b, &o, 0, sheets, opt)
}

// holdsTogether checks what every page promises.
func holdsTogether(t *testing.T, p *Page) string {
	t.Helper()
	var texts []part
	for _, one := range p.parts {
		if !one.box.within(p.paper.inside().grown(0.5)) {
			t.Errorf("%s %d: %v of %+v leaves the page", p.Sheet, p.Number, one.box, one.element)
		}
		if one.words != "" {
			texts = append(texts, one)
		}
	}
	for i := range texts {
		for j := range i {
			if texts[i].box.meets(texts[j].box) {
				t.Errorf("%s %d: %q meets %q", p.Sheet, p.Number, texts[i].words, texts[j].words)
			}
		}
	}
	svg, err := p.SVG()
	require.NoError(t, err)
	wellFormed(t, svg)
	return svg
}

// What a page is made of, and references that would leave it.
var (
	elements = regexp.MustCompile(`^(svg|title|desc|g|rect|path|circle|text)$`)
	reaches  = regexp.MustCompile(`(?i)href|^on|style|src`)
	refers   = regexp.MustCompile(`(?i)url\(|:|NaN|Inf`)
)

// wellFormed parses the SVG as XML, and checks that it contains only elements that we draw with.
func wellFormed(t *testing.T, svg string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(svg))
	d.Strict = true
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		require.NoError(t, err)
		if e, ok := token.(xml.StartElement); ok {
			if !elements.MatchString(e.Name.Local) {
				t.Errorf("an element %q", e.Name.Local)
			}
			for _, a := range e.Attr {
				if reaches.MatchString(a.Name.Local) || a.Name.Local != "xmlns" && refers.MatchString(a.Value) {
					t.Errorf("an attribute %s=%q", a.Name.Local, a.Value)
				}
			}
		}
	}
}

func TestPagesHoldTogether(t *testing.T) {
	for _, m := range machines {
		t.Run(m.name, func(t *testing.T) {
			for _, opt := range []Options{{Paper: A4}, {Paper: Letter, Units: quantity.Choice{Inch: true}, ASCII: true}} {
				_, _, pages := laid(t, m, opt, Unrolled, Face, Slot)
				for _, p := range pages {
					svg := holdsTogether(t, p)
					assert.Contains(t, svg, "Design estimate, not a rating")
					assert.Contains(t, svg, fmt.Sprintf(">%d of %d<", p.Number, p.Of))
					if opt.ASCII {
						assert.NotRegexp(t, `[^\n -~]`, svg)
					}
				}
			}
		})
	}
}

// Every job can be drawn: what is missing is stated on the page.
func TestEveryJobIsDrawn(t *testing.T) {
	files, err := filepath.Glob("../../testdata/*/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	none := 0
	for _, path := range files {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		d := job.Parse(string(text))
		if len(d.Problems()) > 0 || len(d.Job().Trials) == 0 {
			continue
		}
		_, _, pages := drawn(t, string(text), Options{Paper: A4})
		for _, p := range pages {
			svg := holdsTogether(t, p)
			if p.NotDrawn != "" {
				none++
				assert.Contains(t, svg, "Not drawn: ", path)
			}
		}
	}
	assert.Positive(t, none, "a job without slots has no winding to draw")
}

// counted is the number of occurrences of each id in some pages.
func counted(t *testing.T, pages []*Page) map[string]int {
	t.Helper()
	ids := map[string]int{}
	for _, p := range pages {
		svg, err := p.SVG()
		require.NoError(t, err)
		for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(svg, -1) {
			ids[m[1]]++
		}
	}
	return ids
}

// Everything that is wound is drawn exactly once: slots, coils with their numbers, joins, every end of
// every lead, leads by name, nodes.
func TestEverythingIsThereOnce(t *testing.T) {
	for _, m := range machines {
		t.Run(m.name, func(t *testing.T) {
			b, o, pages := laid(t, m, Options{Paper: A4}, Unrolled)
			plan, why := b.Plan(0)
			require.NotNil(t, plan, why)
			want := map[string]int{}
			for n := 1; n <= m.slots; n++ {
				want[fmt.Sprintf("slot-%d", n)] = 1
			}
			for _, c := range plan.Coils() {
				want[fmt.Sprintf("coil-%d", c.Number)] = 1
				want[fmt.Sprintf("number-%d", c.Number)] = 1
			}
			wiring := plan.Wiring(o.Trials[0].Connection)
			for i := range wiring.Joins {
				want[fmt.Sprintf("join-%d", i+1)] = 1
			}
			for _, l := range wiring.Leads {
				want["lead-"+l.Name] = 1
				for i := range l.Ends {
					want[fmt.Sprintf("end-%s-%d", l.Name, i+1)] = 1
				}
			}
			for i := range wiring.Nodes {
				want[fmt.Sprintf("node-%d", i+1)] = 1
				want[fmt.Sprintf("name-node-%d", i+1)] = 1
			}
			got := counted(t, pages)
			for id := range got {
				if strings.HasPrefix(id, "circuits-") { // the bar of a lead's circuits
					delete(got, id)
				}
			}
			assert.Equal(t, want, got)
			if m.slots <= slotsOnFace {
				_, _, pages = laid(t, m, Options{Paper: A4}, Face)
				got = counted(t, pages)
				for n := 1; n <= m.slots; n++ {
					assert.Equal(t, 1, got[fmt.Sprintf("slot-%d", n)])
					assert.Equal(t, 1, got[fmt.Sprintf("face-slot-%d", n)])
				}
				for n := 1; n <= m.poles; n++ {
					assert.Equal(t, 1, got[fmt.Sprintf("pole-%d", n)])
				}
			}
		})
	}
}

// No two tails share a position, no two tracks overlap: lines that are not joined only cross.
func TestLinesOnlyCross(t *testing.T) {
	for _, m := range machines {
		b, o, _ := laid(t, m, Options{Paper: A4}, Face)
		plan, _ := b.Plan(0)
		u := newUnroll(plan, o.Trials[0].Connection, (&canvas{paper: A4.across()}).room())
		var at []float64
		for _, n := range u.nets {
			at = append(at, n.tails...)
		}
		for i := range at {
			for j := range i {
				d := wrapped(at[i]-at[j], u.length())
				assert.Greater(t, min(d, u.length()-d), 0.5, "%s: tails %g and %g", m.name, at[i], at[j])
			}
		}
		for i := range u.nets {
			for j := range i {
				a, c := &u.nets[i], &u.nets[j]
				if a.track >= 0 && a.track == c.track {
					assert.False(t, u.busy([]*net{a}, c), "%s: %s and %s share a track", m.name, a.id, c.id)
				}
			}
		}
		assert.Greater(t, u.trackStep, 1.0, "%s: tracks are too close to tell apart", m.name)
		assert.Greater(t, u.bottomY-u.topY, 30.0, m.name)
	}
}

// The picture agrees with the coil list: a coil's line goes down in its start slot, and its arrow
// points the way the phase's current flows.
func TestCoilsLieInTheirSlots(t *testing.T) {
	for _, m := range machines {
		b, o, _ := laid(t, m, Options{Paper: A4}, Face)
		plan, _ := b.Plan(0)
		u := newUnroll(plan, o.Trials[0].Connection, (&canvas{paper: A4.across()}).room())
		for i := range u.coils {
			c := &u.coils[i]
			slotAt := func(e layout.End) int { return int(wrapped(c.side(e), u.length())/u.pitch) + 1 }
			assert.Equal(t, c.Start, slotAt(layout.Start), "%s: coil %d", m.name, c.Number)
			assert.Equal(t, c.Finish, slotAt(layout.Finish), "%s: coil %d", m.name, c.Number)
			for _, s := range plan.Slot(c.Start) {
				if s.Coil == c.Number && s.End == layout.Start {
					assert.Equal(t, s.Sign > 0, c.downward(layout.Start), "%s: coil %d", m.name, c.Number)
				}
			}
			line := u.shape(c)
			assert.InDelta(t, u.tailOf(layout.EndRef{Coil: c.Number, End: layout.Start}),
				wrapped(line[b2i(!c.startsLeft)*(len(line)-1)].x, u.length()), 1e-9, "%s: coil %d", m.name, c.Number)
		}
	}
}

// Two runs give the same bytes.
func TestTheSameEveryTime(t *testing.T) {
	text := machines[5].text(t)
	for range 2 {
		_, _, a := drawn(t, text, Options{Paper: A4})
		_, _, b := drawn(t, text, Options{Paper: A4})
		for i := range a {
			one, err := a[i].SVG()
			require.NoError(t, err)
			other, err := b[i].SVG()
			require.NoError(t, err)
			assert.Equal(t, one, other)
		}
	}
}

// The unrolled winding with 12 slots, 10 poles and tooth coils in delta, as last reviewed.
func TestGoldenDrawing(t *testing.T) {
	const golden = "../../testdata/drawings/unrolled-12-10.svg"
	_, _, pages := laid(t, machines[1], Options{Paper: A4}, Unrolled)
	svg, err := pages[0].SVG()
	require.NoError(t, err)
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(golden), 0o755))
		require.NoError(t, os.WriteFile(golden, []byte(svg), 0o600))
		return
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err)
	assert.Equal(t, strings.ReplaceAll(string(want), "\r\n", "\n"), svg)
}
