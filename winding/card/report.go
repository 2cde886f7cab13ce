package card

import (
	"slices"
	"strings"

	"slotwright/winding"
)

// Section is a part of the report that can be asked for by name.
type Section struct {
	Name string
	// About is what is in it, in a few words.
	About string
	write func(w *writer)
}

// sections is the report, in its order.
var sections = []Section{
	{"machine", "iron, slot and flux", (*writer).machine},
	{"old", "the old winding", (*writer).oldWinding},
	{"trials", "each trial in words", (*writer).windings},
	{"compared", "trials side by side", (*writer).comparison},
	{"figures", "more figures, side by side", (*writer).moreFigures},
	{"limits", "current limits, with reasons and sources", (*writer).allLimits},
	{"losses", "where each trial really runs, and where the watts go", (*writer).allOperating},
	{"speeds", "held at the job's own speeds", (*writer).allSpeeds},
	{"battery", "battery, fuse, cable and diodes", (*writer).battery},
	{"drive", "trial and drive", (*writer).allDrives},
	{"layout", "what to know of the coil list", (*writer).allLayouts},
	{"wound", "what was really put in, and what it read", (*writer).asWound},
	{"findings", "what is called out", func(w *writer) { w.findings("") }},
	{"cautions", "what can hurt a person", (*writer).cautions},
	{"inputs", "where each input came from", (*writer).inputs},
	{"derived", "where each figure came from", (*writer).allDerivations},
	{"words", "what the rows mean", (*writer).rowHelp},
}

// Sections is every part of the report, in its order.
func Sections() []Section { return sections }

// Report is every figure of every trial, side by side, with its unit, how it compares with the
// reference, the limits with their reasons and sources, the job's own speeds, findings and cautions; or
// only the sections asked for, in the report's order. Width and ends of lines are as for [Text].
func Report(b *winding.Bench, o *winding.Outcome, opt Options) string {
	w := newWriter(b, o, opt)
	blocks := [][]string{w.block(func() {
		w.title("REPORT", jobName(o))
		w.preface()
	})}
	for _, s := range sections {
		if len(opt.Sections) == 0 || slices.Contains(opt.Sections, s.Name) {
			blocks = append(blocks, trimmed(w.block(func() { s.write(w) })))
		}
	}
	blocks = append(blocks, w.block(w.close))
	if opt.Pages {
		return join(pages(blocks, pageLines), true)
	}
	for i, part := range blocks {
		blocks[i] = append(part, "")
	}
	return strings.TrimRight(join(blocks, false), "\n") + "\n"
}

// trimmed is lines without blank ones at the ends.
func trimmed(lines []string) []string {
	for len(lines) > 0 && lines[0] == "" {
		lines = lines[1:]
	}
	for len(lines) > 0 && lines[len(lines)-1] == "" {
		lines = lines[:len(lines)-1]
	}
	return lines
}

// allLayouts is what to know of each trial's layout, where it differs from the one before.
func (w *writer) allLayouts() {
	w.section("ABOUT THE LAYOUT")
	said := map[string]bool{}
	for i := range w.o.Trials {
		lines := w.block(func() { w.layoutNotes(i) })
		whole := strings.Join(lines, "\n")
		if !said[whole] {
			w.heading("Trial " + w.o.Trials[i].Name)
			for _, l := range lines {
				w.raw(l)
			}
		}
		said[whole] = true
	}
	w.ifNoTrials()
}

// layoutNotes is what to know of a layout before winding it.
func (w *writer) layoutNotes(trial int) {
	plan, why := w.b.Plan(trial)
	if plan == nil {
		w.say(2, notKnown(why))
		return
	}
	if plan.Balance().Equal {
		w.say(2, "The phases balance: equal voltages at equal angles.")
		w.gap()
	}
	for _, n := range winding.NotesOf(plan, w.job.Field.Kind, w.o.Trials[trial].Connection) {
		mark := "  -  "
		if n.Caution {
			mark = "  !  "
		}
		w.hang(mark, n.Topic+": "+n.Text)
		w.say(5, "source: "+n.Source)
		w.gap()
	}
}

// allDerivations says where each trial's figures came from.
func (w *writer) allDerivations() {
	w.section("WHERE EACH FIGURE CAME FROM")
	for i := range w.o.Trials {
		w.heading("Trial " + w.o.Trials[i].Name)
		w.derivations(&w.o.Trials[i])
	}
	w.ifNoTrials()
}
