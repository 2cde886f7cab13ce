package layout

import (
	"fmt"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/layout"
	"slotwright/winding/text"
)

// Draw fills the rectangle: the facts, the stator unrolled, the step in words, the
// lists.
func (v *View) Draw(s *session.Session) []kit.Block {
	t, d := s.Theme, &v.kept
	if d.plan == nil {
		return v.noLayout(s, d, v.at)
	}
	a := v.areas(t, d)
	head := v.facts(t, d, a.facts.W)
	head[factsHeight-1] = v.legend(t, d, a.facts.W, v.omitted)
	blocks := []kit.Block{
		kit.Bare(t, a.facts, head), kit.Bare(t, a.picture, centred(v.drawn, a.picture.W)), kit.Bare(t, a.said, v.sentence(t, d, a.said.W)),
	}
	blocks = append(blocks, kit.Bare(t, a.notes, v.notes(t, d, a.notes.W)))
	for _, p := range v.arranged(a.lists) {
		blocks = append(blocks, v.drawPanel(s, d, p.panel, p.at))
	}
	return blocks
}

// factsHeight is that of the facts and the legend.
const factsHeight = 3

// areas are the screen's rectangles from top to bottom.
type areas struct{ facts, picture, said, lists, notes kit.Rect }

func (v *View) areas(t kit.Theme, d *sheet) (a areas) {
	var rest kit.Rect
	a.facts, rest = v.at.SplitTop(factsHeight)
	a.picture, rest = rest.SplitTop(len(v.drawn))
	a.said, rest = rest.SplitTop(len(v.sentence(t, d, v.at.W)))
	a.lists, a.notes = rest.SplitBottom(len(v.notes(t, d, v.at.W)))
	return a
}

// leastPicture is the height of one coil over two layers of sides.
const leastPicture = 5

// leastPanels is the height kept for the lists: on a small screen more for those that do not follow the
// picture.
func (v *View) leastPanels(h int) int {
	switch {
	case h >= 26:
		return max(7, 2*h/5)
	case v.panel == coilsPanel || v.panel == joinsPanel:
		return 6
	default:
		return 10
	}
}

// centred puts a picture in the middle of the width, all lines alike.
func centred(lines []string, w int) []string {
	widest := 0
	for _, l := range lines {
		widest = max(widest, kit.Width(l))
	}
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = strings.Repeat(" ", max(0, (w-widest)/2)) + l
	}
	return out
}

// facts are the two lines that describe this winding; the third is left empty.
func (v *View) facts(t kit.Theme, d *sheet, w int) []string {
	sp := d.plan.Spec()
	first := []string{
		text.Count(sp.Slots, "slot"), text.Count(sp.Poles, "pole"), phasesText(sp), layersText(sp.Layers), sp.Kind.String(),
		fmt.Sprintf("span %d (slot 1 to %d)", sp.Span, sp.Span+1),
	}
	if sp.Kind == layout.Concentric {
		first[5] = fmt.Sprintf("mean span %.3g", d.plan.MeanSpan())
	}
	others := ""
	if d.several {
		others = "[ ] other trials"
	}
	per := perText(d.plan)
	if w < 100 {
		per, _, _ = strings.Cut(per, " slot")
	}
	joined := d.connected.String() + ", " + text.Count(d.plan.Circuits(), "circuit") + " a phase"
	if sp.Phases < 3 {
		joined = text.Count(d.plan.Circuits(), "circuit")
	}
	factor := fmt.Sprintf("kw1 %.4f", d.plan.Factor(1))
	if w >= 120 {
		factor = "winding factor " + factor
	}
	second := []string{
		joined,
		coilsText(d),
		factor, per,
		fmt.Sprintf("%.4g° electrical a slot", d.plan.SlotAngleDeg()),
	}
	return []string{
		t.Fit(hinted(t, t.Paint(kit.Title, "Trial "+kit.Clean(d.name))+"  "+fill(t, first, w-8-kit.Width(d.name)), others, w), w),
		t.Fit(hinted(t, fill(t, second, w), "W drawing", w), w), "",
	}
}

// hinted is a line with a hint about keys at its end, where there is room.
func hinted(t kit.Theme, line, hint string, w int) string {
	if hint == "" || kit.Width(line)+len(hint)+2 > w {
		return line
	}
	return kit.Bar(t, w, line, t.Paint(kit.Dim, hint))
}

// perText is the slots per pole and phase.
func perText(l *layout.Layout) string {
	q, den := l.SlotsPerPolePhase()
	switch {
	case den > 1:
		return fmt.Sprintf("q = %d/%d slots a pole and phase", q, den)
	case q == 1:
		return "q = 1 slot a pole and phase"
	default:
		return fmt.Sprintf("q = %d slots a pole and phase", q)
	}
}

// coilsText is how many coils of how many turns.
func coilsText(d *sheet) string {
	least, most := d.steps[0].Turns, d.steps[0].Turns
	for _, step := range d.steps {
		least, most = min(least, step.Turns), max(most, step.Turns)
	}
	if !d.turnsKnown {
		return text.Count(len(d.steps), "coil") + ", turns not given"
	}
	turns := turnsText(d, most)
	if least != most {
		turns = fmt.Sprintf("%d to %s", least, turns)
	}
	return text.Count(len(d.steps), "coil") + " of " + turns
}

// fill joins as many of the texts as fit.
func fill(t kit.Theme, texts []string, w int) string {
	line := ""
	for _, text := range texts {
		next := text
		if line != "" {
			next = line + ", " + text
		}
		if kit.Width(t.Text(next)) > w {
			break
		}
		line = next
	}
	return t.Text(line)
}

func phasesText(sp layout.Spec) string {
	if sp.Sets == 2 {
		return "2 sets of 3 phases"
	}
	return text.Count(sp.Phases, "phase")
}

func layersText(n int) string {
	if n == 2 {
		return "double layer"
	}
	return "single layer"
}

// turnsText is the turns of a coil, or that they are not given.
func turnsText(d *sheet, turns int) string {
	if !d.turnsKnown {
		return "turns not given"
	}
	return text.Count(turns, "turn")
}

// narrowLegend is the width below which the legend gives the viewing direction in fewer words.
const narrowLegend = 80

// legend says how to read the picture, and what of it is left out.
func (v *View) legend(t kit.Theme, d *sheet, w int, left string) string {
	view := "From the connection end, clockwise " + arrow(t, true)
	if w < narrowLegend {
		view = "Connection end, clockwise " + arrow(t, true)
	}
	if left != "" {
		view = t.Paint(kit.Warning, t.Mark(kit.Warning)+" "+left)
	}
	pens := ""
	for phase := range d.plan.Spec().Phases {
		look := penOf(t, phase)
		pens += "  " + t.Paint(kit.Phase(phase), string("UVW"[phase])) + " " + t.Paint(lineRole(t, phase), look.across+look.across)
	}
	line := view + pens
	for _, signs := range []string{"  + away from you, − back", "  + away − back"} {
		if signs = t.Text(signs); kit.Width(line)+kit.Width(signs) <= w {
			line += signs
			break
		}
	}
	extra := []string{"  heavy: this coil", "  1 2 3: one phase", "  7" + arrow(t, true) + ": coil 7, its wire goes clockwise", "  n p: next coil, coil before"}
	if v.phase > 0 {
		extra[1] = "  0: all phases"
	} else if d.plan.Spec().Phases == 1 {
		extra[1] = ""
	}
	for _, text := range extra {
		if kit.Width(line)+kit.Width(text) <= w {
			line += text
		}
	}
	return t.Fit(line, w)
}

// sentence is the current step in words, in as many lines as the longest step takes, so that the screen
// stays in place while walking.
func (v *View) sentence(t kit.Theme, d *sheet, w int) []string {
	longest := ""
	for i := range d.steps {
		if text := v.stepText(d, i); len(text) > len(longest) {
			longest = text
		}
	}
	need := min(4, len(t.Wrap(longest, w)))
	lines := t.WrapPaint(kit.Value, v.stepText(d, v.step), w)
	for len(lines) < need {
		lines = append(lines, "")
	}
	return lines[:need]
}

// stepText is a step as a sentence with its number.
func (v *View) stepText(d *sheet, i int) string {
	step := d.steps[i]
	text := step.String()
	if !d.turnsKnown {
		text = strings.Replace(text, " 1 turn,", " turns not given,", 1)
	}
	return fmt.Sprintf("Step %d of %d. Phase %s: %s.", i+1, len(d.steps), step.Name, text)
}

// noLayout says why there is nothing to show, and which spans would work.
func (v *View) noLayout(s *session.Session, d *sheet, r kit.Rect) []kit.Block {
	t := s.Theme
	lines := t.WrapPaint(kit.Warning, t.Mark(kit.Warning)+" No layout: "+d.why+".", r.W)
	if len(d.spans) > 0 || len(d.circuits) > 0 {
		lines = append(lines, "")
		lines = append(lines, t.WrapPaint(kit.Hint, "These would do; mark one with the arrow keys and press enter to give it to this trial.", r.W)...)
		top, rest := r.SplitTop(len(lines))
		return append([]kit.Block{kit.Bare(t, top, lines)}, v.drawPanel(s, d, spansPanel, rest))
	}
	lines = append(lines, "")
	hint := "The layout follows from slots, poles, layers and span of the screen Machine, and from what the trial has otherwise."
	if _, ok := v.waitsFor(s); ok {
		hint += " Enter goes to the field that is missing."
	}
	lines = append(lines, t.WrapPaint(kit.Hint, hint, r.W)...)
	return []kit.Block{kit.Bare(t, r, lines)}
}
