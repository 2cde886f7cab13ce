package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"slotwright/winding/layout"
	"slotwright/winding/text"

	"github.com/spf13/cobra"
)

// laidOut is the JSON answer of layout.
type laidOut struct {
	Slots          int                `json:"slots"`
	Poles          int                `json:"poles"`
	Phases         int                `json:"phases"`
	Span           int                `json:"span_slots"`
	Layers         int                `json:"layers"`
	Sets           int                `json:"sets"`
	Kind           string             `json:"kind"`
	SlotAngle      float64            `json:"slot_angle_deg"`
	Kw1            float64            `json:"kw1"`
	Harmonics      map[string]float64 `json:"kw"`
	CircuitChoices []int              `json:"circuits_allowed"`
	Coils          []coilLine         `json:"coils"`
	Joins          []string           `json:"joins"`
	Leads          []string           `json:"leads"`
	Nodes          []string           `json:"nodes"`
	Steps          []string           `json:"steps"`
	Notes          []layout.Note      `json:"notes"`
}

type coilLine struct {
	Number  int    `json:"coil"`
	Start   int    `json:"start_slot"`
	Finish  int    `json:"finish_slot"`
	Turns   int    `json:"turns"`
	Sense   int    `json:"sense"`
	Phase   string `json:"phase"`
	Group   int    `json:"group"`
	Circuit int    `json:"circuit"`
}

// layoutWish is what the verb was asked for.
type layoutWish struct {
	spec            layout.Spec
	circuits, turns int
	kind            string
	delta, asJSON   bool
}

// newLayout is the verb that lays a winding out without a job.
func newLayout(s streams) *cobra.Command {
	var w layoutWish
	c := &cobra.Command{
		Use:   "layout --slots Q --poles 2P --span Y",
		Short: "Which coil lies in which slot, factors and joins, without a job",
		Long: "Which coil lies in which slot, factors and joins, without a job. --slots, --poles and --span must be\n" +
			"given. A winding that cannot be is said to be so, with the reason, and it ends with 1.",
		Example: "  slotwright layout --slots 36 --poles 12 --span 3\n  slotwright layout --slots 12 --poles 10 --span 1 --json",
		RunE: func(c *cobra.Command, _ []string) error {
			for _, name := range []string{"slots", "poles", "span"} {
				if f := c.Flag(name); !f.Changed {
					return fmt.Errorf("--%s: not given, expected %s: %s", name, f.Usage, "slotwright layout --slots 36 --poles 12 --span 3")
				}
			}
			return w.answer(s.out)
		},
	}
	f := c.Flags()
	f.IntVar(&w.spec.Slots, "slots", 0, "slots of the stator")
	f.IntVar(&w.spec.Poles, "poles", 0, "poles of the rotor")
	f.IntVar(&w.spec.Span, "span", 0, "coil span in slots")
	f.IntVar(&w.spec.Layers, "layers", 2, "coil sides in a slot, 1 or 2")
	f.IntVar(&w.spec.Phases, "phases", 3, "1, 2 or 3")
	f.IntVar(&w.spec.Sets, "sets", 1, "1, or 2 three-phase sets 30 degrees apart")
	f.IntVar(&w.circuits, "circuits", 1, "parallel circuits in a phase")
	f.IntVar(&w.turns, "turns", 1, "turns per coil, for the winding steps")
	f.StringVar(&w.kind, "kind", "lap", "lap, concentric or wave")
	f.BoolVar(&w.delta, "delta", false, "joined in delta instead of star")
	f.BoolVar(&w.asJSON, "json", false, "answer in JSON")
	return c
}

// answer writes the layout that was asked for. An unknown word is bad usage; an impossible winding,
// whichever of its numbers is to blame, is a problem of the job.
func (w *layoutWish) answer(out io.Writer) error {
	kinds := []layout.Kind{layout.Lap, layout.Concentric, layout.Wave}
	at := slices.IndexFunc(kinds, func(k layout.Kind) bool { return k.String() == w.kind })
	if at < 0 {
		return fmt.Errorf("--kind: read %q, expected lap, concentric or wave", w.kind)
	}
	w.spec.Kind = kinds[at]
	l, err := w.layOut()
	if err != nil {
		return jobProblem{text: err.Error()}
	}
	conn := layout.Star
	if w.delta {
		conn = layout.Delta
	}
	a := describeLayout(l, conn)
	if w.asJSON {
		return printJSON(out, a)
	}
	a.print(out, l)
	return nil
}

// layOut is the winding.
func (w *layoutWish) layOut() (*layout.Layout, error) {
	l, err := layout.New(w.spec)
	if err != nil {
		return nil, err
	}
	if l, err = l.WithTurns(w.turns); err != nil || w.circuits == 1 {
		return l, err
	}
	return l.WithCircuits(w.circuits)
}

// describeLayout collects the answer.
func describeLayout(l *layout.Layout, conn layout.Connection) laidOut {
	spec := l.Spec()
	a := laidOut{
		Slots: spec.Slots, Poles: spec.Poles, Phases: spec.Phases, Span: spec.Span, Layers: spec.Layers, Sets: spec.Sets,
		Kind: spec.Kind.String(), SlotAngle: l.SlotAngleDeg(), Kw1: l.Factor(1), Harmonics: map[string]float64{},
		CircuitChoices: l.CircuitChoices(), Notes: l.Notes(),
		Coils: []coilLine{}, Joins: []string{}, Leads: []string{}, Nodes: []string{}, Steps: []string{},
	}
	for _, h := range layout.Harmonics {
		a.Harmonics[fmt.Sprint(h)] = l.Factor(h)
	}
	for _, c := range l.Coils() {
		a.Coils = append(a.Coils, coilLine{c.Number, c.Start, c.Finish, c.Turns, c.Sense, l.PhaseName(c.Set, c.Phase), c.Group, c.Circuit})
	}
	w := l.Wiring(conn)
	for _, j := range w.Joins {
		a.Joins = append(a.Joins, j.From.String()+" to "+j.To.String())
	}
	for _, lead := range w.Leads {
		ends := make([]string, len(lead.Ends))
		for i, e := range lead.Ends {
			ends[i] = e.String()
		}
		a.Leads = append(a.Leads, lead.Name+": "+strings.Join(ends, " with "))
	}
	for _, n := range w.Nodes {
		a.Nodes = append(a.Nodes, n.Name+": "+strings.Join(n.Leads, ", "))
	}
	for _, st := range l.WindingOrder() {
		a.Steps = append(a.Steps, st.String())
	}
	return a
}

func (a laidOut) print(w io.Writer, l *layout.Layout) {
	num, den := l.SlotsPerPolePhase()
	q := fmt.Sprint(num)
	if den != 1 {
		q = fmt.Sprintf("%d/%d", num, den)
	}
	fmt.Fprintf(w, "%s, %s, %s, span %d, %s, %s; %s per pole and phase\n", text.Count(a.Slots, "slot"), text.Count(a.Poles, "pole"), text.Count(a.Phases, "phase"), a.Span,
		text.Count(a.Layers, "layer"), a.Kind, text.Count(q, "slot"))
	fmt.Fprintf(w, "winding factor %.4f   3rd %.4f   5th %.4f   7th %.4f   11th %.4f   13th %.4f\n", a.Kw1, a.Harmonics["3"], a.Harmonics["5"], a.Harmonics["7"], a.Harmonics["11"], a.Harmonics["13"])
	fmt.Fprintf(w, "circuits allowed: %s\n\n", strings.Trim(fmt.Sprint(a.CircuitChoices), "[]"))
	for i, s := range a.Steps {
		fmt.Fprintf(w, "%3d. %s\n", i+1, s)
	}
	fmt.Fprintln(w)
	for _, lead := range a.Leads {
		fmt.Fprintln(w, lead)
	}
	for _, n := range a.Nodes {
		fmt.Fprintln(w, n)
	}
	fmt.Fprintln(w)
	for _, n := range a.Notes {
		fmt.Fprintf(w, "%s: %s\n    (%s)\n", n.Topic, n.Text, n.Source)
	}
}
