package winding

import (
	"errors"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// coilSet is a layout and what every figure takes from it. Without slots and poles
// there is no layout, and the winding is known only relative to another one of the
// same kind: coil count and factor then cancel, and stand as 1.
type coilSet struct {
	plan     *layout.Layout
	why      string  // why there is no plan
	relative bool    // no slots or poles given: only ratios mean anything
	perPhase float64 // coils of a phase, of one set
	// effective is N·kw and series N, per phase, at the trial's turns and circuits.
	effective, series float64
	// slotTurns is the most turns of any coil, what has to go into a slot side.
	slotTurns float64
	kw        [6]float64 // of harmonics
	span      float64    // mean span of the coils, slots
	circuits  int
	choices   []int // circuits that the layout allows
}

// harmonics is the orders that are shown.
var harmonics = [6]int{1, 3, 5, 7, 11, 13}

// layOut makes the layout of a key with one turn a coil.
func (b *Bench) layOut(k layoutKey) coilSet {
	m := b.job.Machine
	if !m.Slots.Given() || !m.Poles.Given() {
		return coilSet{relative: true, perPhase: 1, span: float64(k.span), kw: [6]float64{1},
			why: "needs the number of slots and poles"}
	}
	plan, err := layout.New(layout.Spec{
		Slots: m.Slots.Whole(), Poles: m.Poles.Whole(), Phases: b.phases, Sets: b.sets,
		Span: k.span, Layers: k.layers, Kind: kindOf(k.kind),
	})
	if err != nil {
		return coilSet{why: layoutReason(err)}
	}
	c := coilSet{plan: plan, perPhase: float64(plan.CoilsPerPhase()), span: plan.MeanSpan(), choices: plan.CircuitChoices()}
	for i, h := range harmonics {
		c.kw[i] = plan.Factor(h)
	}
	return c
}

func kindOf(word string) layout.Kind {
	for _, k := range []layout.Kind{layout.Concentric, layout.Wave} {
		if word == k.String() {
			return k
		}
	}
	return layout.Lap
}

// layoutReason is the layout's error without the name of its package.
func layoutReason(err error) string {
	var bad *layout.SpecError
	if errors.As(err, &bad) {
		return strings.TrimPrefix(bad.Error(), "layout: ")
	}
	return strings.TrimPrefix(err.Error(), "layout: ")
}

// coils is the coil set of a trial with its turns and circuits. Equal turns need
// nothing new of the layout; unequal ones are carried through its coil list.
func (b *Bench) coils(t job.Trial) coilSet {
	k := b.keyOf(t)
	c, ok := b.layouts[k]
	if !ok {
		c = b.layOut(k)
	}
	c.circuits = max(1, int(t.Circuits.Or(1)))
	if len(t.CoilTurns) > 0 {
		return c.withCoilTurns(t.CoilTurns)
	}
	turns := t.Turns.Or(0)
	c.slotTurns = turns
	c.series = turns * c.perPhase / float64(c.circuits)
	c.effective = c.series * c.kw[0]
	return c
}

// withCoilTurns carries unequal turns within a group into factor and series turns.
func (c coilSet) withCoilTurns(turns []int) coilSet {
	most, sum := 0, 0
	for _, n := range turns {
		most = max(most, n)
		sum += n
	}
	c.slotTurns = float64(most)
	if c.plan == nil {
		c.series = float64(sum) / float64(len(turns)) * c.perPhase / float64(c.circuits)
		c.effective = c.series * c.kw[0]
		return c
	}
	plan, err := c.plan.WithGroupTurns(turns)
	if err != nil {
		return coilSet{why: layoutReason(err), circuits: c.circuits}
	}
	c.plan, c.choices = plan, plan.CircuitChoices()
	for i, h := range harmonics {
		c.kw[i] = plan.Factor(h)
	}
	c.series = float64(plan.PhaseTurns(0, 0)) / float64(c.circuits)
	c.effective = c.series * c.kw[0]
	return c
}

// wired is the layout with the trial's turns and circuits, for drawing and winding.
func (b *Bench) wired(t job.Trial) (*layout.Layout, string) {
	c := b.coils(t)
	if c.plan == nil {
		return nil, c.why
	}
	plan := c.plan
	if len(t.CoilTurns) == 0 && t.Turns.Given() {
		var err error
		if plan, err = plan.WithTurns(t.Turns.Whole()); err != nil {
			return nil, layoutReason(err)
		}
	}
	if c.circuits == 1 {
		return plan, ""
	}
	split, err := plan.WithCircuits(c.circuits)
	if err != nil {
		return nil, layoutReason(err)
	}
	return split, ""
}

// figures is the coil set for the outcome.
func (c coilSet) figures(turns quantity.Reading) Coils {
	if c.plan == nil {
		no := quantity.Missing(c.why)
		return Coils{no, no, no, no, no, no, no, no, nil}
	}
	kw := func(i int) quantity.Figure { return quantity.Of(c.kw[i]) }
	f := Coils{
		Kw1: kw(0), Kw3: kw(1), Kw5: kw(2), Kw7: kw(3), Kw11: kw(4), Kw13: kw(5),
		CoilsPerPhase: quantity.Of(c.perPhase), SeriesTurns: quantity.Missing("needs the turns"),
		CircuitChoices: c.choices,
	}
	if c.series > 0 {
		f.SeriesTurns = quantity.Of(c.series, turns.Origin)
	}
	return f
}
