package drawing

import (
	"encoding/xml"
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// jobText is a job of testdata.
func jobText(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile("../../testdata/jobs/" + name)
	require.NoError(t, err)
	return string(text)
}

// said is every text of a page.
func said(p *Page) []string {
	var all []string
	for _, one := range p.parts {
		if one.words != "" {
			all = append(all, one.words)
		}
	}
	return all
}

// path is the box of the path with an id.
func path(t *testing.T, p *Page, id string) box {
	t.Helper()
	for _, one := range p.parts {
		if e, ok := one.element.(pathElement); ok && e.ID == id {
			return one.box.grown(-float64(e.Width) / 2)
		}
	}
	t.Fatalf("no path %q", id)
	return box{}
}

// A slot 7 mm wide at the mouth, 10 mm at the bottom, 24 mm deep with a neck of 1 mm, and 18 wires of
// 1.224 mm: drawn and labelled with these sizes.
func TestSlotIsToScale(t *testing.T) {
	for _, units := range []quantity.Choice{{}, {Inch: true}} {
		_, o, pages := drawn(t, jobText(t, "wind-good.toml"), Options{Paper: A4, Units: units}, Slot)
		p := pages[0]
		scale := 0.0
		for _, s := range said(p) {
			if words, ok := strings.CutPrefix(s, "Scale "); ok {
				scale = map[string]float64{"6 : 1": 6, "5 : 1": 5, "8 : 1": 8}[words]
			}
		}
		require.Positive(t, scale)
		wall := path(t, p, "wall")
		assert.InDelta(t, 10*scale, wall.width(), 1e-6)
		assert.InDelta(t, 25*scale, wall.height(), 1e-6)
		rings := 0
		for _, one := range p.parts {
			if e, ok := one.element.(circleElement); ok {
				rings++
				assert.InDelta(t, scale*o.Trials[0].OverallMM.Value, one.box.width(), 1e-6, "over the enamel, the line's width in it")
				assert.Equal(t, "white", e.Fill)
			}
		}
		assert.Equal(t, 18, rings)
		want := []string{"7 mm", "10 mm", "24 mm", "3 mm", "~1 mm"}
		if units.Inch {
			want = []string{"0.2756 in", "0.3937 in", "0.9449 in", "0.1181 in", "~0.03937 in"}
		}
		for _, w := range want {
			assert.Contains(t, said(p), w)
		}
	}
}

// A slot of which only the area is known (72 mm², 2.6 times as deep as wide) is drawn as its stand-in:
// 5.262 mm wide, 13.68 mm deep.
func TestSlotThatWasNotMeasured(t *testing.T) {
	_, _, pages := drawn(t, job.Example().Text(), Options{Paper: A4}, Slot)
	require.Empty(t, pages[0].NotDrawn)
	assert.Contains(t, strings.Join(said(pages[0]), " "), "Only the area is given")
	assert.Contains(t, said(pages[0]), "~5.26 mm")
	assert.Contains(t, said(pages[0]), "~13.68 mm")
}

// The diagram agrees with the outcome: every curve point and operating point is where the axes say, and
// the table has the speeds and amps. The wound rotor's field current is drawn from the battery, so that
// net amps differ from the bridge's.
func TestAmpsAreWhereTheAxesSay(t *testing.T) {
	ampsAgree(t, "wind-good.toml", 700, 0, 25)
	ampsAgree(t, "water.toml", 1000, -4, 10)
}

// ampsAgree checks the diagram of a job whose axes end at those numbers.
func ampsAgree(t *testing.T, name string, rpm, low, high float64) {
	t.Helper()
	_, o, pages := drawn(t, jobText(t, name), Options{Paper: A4}, Amps)
	p := pages[0]
	plot := path(t, p, "plot")
	for _, end := range []float64{rpm, low, high} {
		assert.Contains(t, said(p), fmt.Sprint(end))
	}
	at := func(x, y float64) point {
		return point{plot.x0 + x/rpm*plot.width(), plot.y1 - (y-low)/(high-low)*plot.height()}
	}
	for i, tr := range o.Trials {
		var line []point
		for _, one := range p.parts {
			if e, ok := one.element.(pathElement); ok && e.ID == idOf("trial", i+1) {
				line = one.lines[0]
			}
		}
		curve := slices.DeleteFunc(slices.Clone(tr.Curve), func(p winding.RunPoint) bool { return p.TooHot })
		require.Len(t, line, len(curve))
		for n, c := range curve {
			want := at(c.RPM, c.NetAmps)
			assert.InDelta(t, want.x, line[n].x, 1e-6)
			assert.InDelta(t, want.y, line[n].y, 1e-6)
		}
		for _, run := range tr.Operating {
			want, found := at(run.RPM, run.NetAmps), false
			for _, one := range p.parts {
				m := one.box.middle()
				found = found || one.words == "" && one.box.width() < 4 && math.Hypot(m.x-want.x, m.y-want.y) < 0.3
			}
			assert.True(t, found, "%s of trial %s has no mark", run.Condition, tr.Name)
		}
	}
	usual := o.Trials[0].Operating[1]
	require.Less(t, usual.NetAmps, 10.0, "as it is written below")
	assert.Contains(t, said(p), fmt.Sprintf("%.0f rpm, %.2f A", usual.RPM, usual.NetAmps))
	assert.NotEqual(t, trialPen(0), trialPen(1))
}

// Where a winding has no steady temperature the curve does not continue with amps at a made-up one, and
// the page says so.
func TestNoCurveWhereAWindingBurns(t *testing.T) {
	const says = "No curve where a winding burns."
	burnt := 0
	for _, name := range []string{"wind-12v-gale.toml", "engine-alternator-short.toml", "wind-good.toml"} {
		_, o, pages := drawn(t, jobText(t, name), Options{Paper: A4}, Amps)
		burns := false
		for i, tr := range o.Trials {
			cool := 0
			for _, p := range tr.Curve {
				if burns = burns || p.TooHot; !p.TooHot {
					cool++
				}
			}
			for _, one := range pages[0].parts {
				if e, ok := one.element.(pathElement); ok && e.ID == idOf("trial", i+1) {
					assert.Len(t, one.lines[0], cool, name)
				}
			}
		}
		assert.Equal(t, burns, strings.Contains(strings.Join(said(pages[0]), " "), says), name)
		if burns {
			burnt++
		}
	}
	assert.Positive(t, burnt)
}

// A trial that does not charge says why in the table.
func TestTrialWithoutACurve(t *testing.T) {
	text := strings.Replace(jobText(t, "wind-good.toml"), "turns = 11\n", "", 1)
	_, o, pages := drawn(t, text, Options{Paper: A4}, Amps)
	require.NotEmpty(t, o.Trials[1].NoCharging)
	assert.Contains(t, strings.Join(said(pages[0]), "|"), "not drawn: "+o.Trials[1].NoCharging[:10])
	holdsTogether(t, pages[0])
}

// Paper is in mm: the size of the sheet and its view are one to one.
func TestPaperIsToSize(t *testing.T) {
	for _, paper := range []Paper{A4, Letter} {
		_, _, pages := laid(t, machines[0], Options{Paper: paper}, Unrolled, Face)
		for i, want := range []Paper{paper.across(), paper} {
			var got struct {
				Width   string `xml:"width,attr"`
				Height  string `xml:"height,attr"`
				ViewBox string `xml:"viewBox,attr"`
			}
			svg, err := pages[i].SVG()
			require.NoError(t, err)
			require.NoError(t, xml.Unmarshal([]byte(svg), &got))
			assert.Equal(t, mm(want.Width)+"mm", got.Width)
			assert.Equal(t, mm(want.Height)+"mm", got.Height)
			assert.Equal(t, "0 0 "+mm(want.Width)+" "+mm(want.Height), got.ViewBox)
		}
	}
}

// Phases are distinguishable without colour, and so are the sets.
func TestPensAreToldApart(t *testing.T) {
	seen := map[pen]bool{}
	for set := range 2 {
		for phase := range 3 {
			seen[phasePen(set, phase)] = true
		}
	}
	assert.Len(t, seen, 6)
	_, _, pages := laid(t, machines[5], Options{Paper: A4}, All[:3]...)
	for _, p := range pages {
		svg, err := p.SVG()
		require.NoError(t, err)
		assert.NotRegexp(t, `(fill|stroke)="(#|rgb|[a-z]*(red|blue|green|gr[ae]y))`, svg)
	}
}

// pagesOf is a sheet of a job in testdata, and every word on it.
func pagesOf(t *testing.T, file string, sheet Sheet) (pages []*Page, says string) {
	t.Helper()
	text, err := os.ReadFile("../../testdata/jobs/" + file + ".toml")
	require.NoError(t, err)
	b := winding.Prepare(job.Parse(string(text)).Job())
	o := b.Outcome()
	paper, err := ParsePaper("a4")
	require.NoError(t, err)
	pages = Pages(b, &o, 0, []Sheet{sheet}, Options{Paper: paper})
	for _, p := range pages {
		svg, err := p.SVG()
		require.NoError(t, err)
		for _, m := range regexp.MustCompile(`<text[^>]*>([^<]*)<`).FindAllStringSubmatch(svg, -1) {
			says += m[1] + " "
		}
	}
	return pages, says
}

// slotsAcross is the horizontal position of the slots' numbers 1 and 2 on a page.
func slotsAcross(t *testing.T, p *Page) (one, two float64) {
	t.Helper()
	svg, err := p.SVG()
	require.NoError(t, err)
	for i, x := range []*float64{&one, &two} {
		m := regexp.MustCompile(fmt.Sprintf(`<text[^>]*id="slot-%d"[^>]*>`, i+1)).FindString(svg)
		at := regexp.MustCompile(`\bx="([\d.]+)"`).FindStringSubmatch(m)
		require.NotNil(t, at, m)
		_, err := fmt.Sscan(at[1], x)
		require.NoError(t, err)
	}
	return one, two
}

// With the rotor outside, slot numbers that count clockwise from the connection end, which is at the
// top, run to the left as seen from the gap; with the rotor inside, to the right.
func TestRotorOutsideIsSeenFromThere(t *testing.T) {
	pages, says := pagesOf(t, "hub-outside", Unrolled)
	one, two := slotsAcross(t, pages[0])
	assert.Greater(t, one, two)
	assert.Contains(t, says, "Seen from outside")
	pages, says = pagesOf(t, "wind-good", Unrolled)
	one, two = slotsAcross(t, pages[0])
	assert.Less(t, one, two)
	assert.Contains(t, says, "Seen from the bore")
}

// The slots of a stator inside its rotor open outwards: mouth beyond bottom.
func TestFaceOpensToTheRotor(t *testing.T) {
	within, without := faceView{scale: 1}, faceView{scale: 1, kind: outside}
	within.plan, without.plan = planOf(t, "wind-good"), planOf(t, "hub-outside")
	away := func(v *faceView, r float64) float64 { p := v.at(r, 0); return math.Hypot(p.x, p.y) }
	assert.Less(t, away(&within, rBore), away(&within, rBottom))
	assert.Greater(t, away(&without, rBore), away(&without, rBottom))
	assert.Greater(t, away(&without, rHigh), away(&without, rLow), "what lies at the mouth is the outer one")
	assert.Less(t, rHub, away(&without, rAbove)-1.5, "the letters of the bottom side are in the iron")
	assert.Greater(t, rPolesOut-2, away(&without, rBelow), "pole pitches lie outside")
}

func planOf(t *testing.T, file string) *layout.Layout {
	t.Helper()
	text, err := os.ReadFile("../../testdata/jobs/" + file + ".toml")
	require.NoError(t, err)
	plan, why := winding.Prepare(job.Parse(string(text)).Job()).Plan(0)
	require.NotNil(t, plan, why)
	return plan
}

// Flat coils are drawn as coils with gaps between them: no slot, mouth, liner or tooth is mentioned,
// and their two sides are as wide as measured.
func TestFlatCoilsAreDrawnAsCoils(t *testing.T) {
	for _, sheet := range []Sheet{Unrolled, Face, Slot} {
		_, says := pagesOf(t, "axial-air-core", sheet)
		for _, no := range []string{"slot", "mouth", "iner", "wedge", "tooth", "bore", "layer"} {
			assert.NotContains(t, says, no, string(sheet))
		}
	}
	_, says := pagesOf(t, "axial-air-core", Slot)
	assert.Contains(t, says, "13 mm 50 mm Scale", "twice 25, measured")
	pages, says := pagesOf(t, "axial-air-core", Face)
	svg, err := pages[0].SVG()
	require.NoError(t, err)
	assert.Equal(t, 9, strings.Count(svg, `id="face-coil-`))
	assert.Equal(t, 9, strings.Count(svg, `id="face-hole-`))
	assert.Contains(t, says, "9 flat coils, 12 poles")
}

// The title block gives the turns of each coil of a group, and names two phases as such.
func TestBlockNamesTurnsAndPhases(t *testing.T) {
	_, says := pagesOf(t, "two-phase", Unrolled)
	assert.Contains(t, says, "two phases, apart")
	text := "[machine]\nslots = 24\npoles = 4\nlayers = 1\nkind = \"concentric\"\n[[trial]]\nname = \"A\"\ncoil_turns = [12, 10]\n"
	b := winding.Prepare(job.Parse(text).Job())
	o := b.Outcome()
	assert.Equal(t, "12, 10", turnsOf(b, &o, 0))
}
