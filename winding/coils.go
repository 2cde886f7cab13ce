package winding

import (
	"errors"
	"strings"
	"sync"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// layoutKey is what a layout depends on, turns apart.
type layoutKey struct {
	span, layers int
	kind         string
}

// layouts makes the machine's layouts, each once, when first wanted. Benches of one machine share those
// made.
type layouts struct {
	machine machine
	made    *madeLayouts
}

// madeLayouts is safe for several goroutines.
type madeLayouts struct {
	sync.Mutex
	of map[layoutKey]coilSet
}

// Coils is what the layout makes of the turns.
type Coils struct {
	Kw1           quantity.Figure `json:"kw1"`
	Kw3           quantity.Figure `json:"kw3"`
	Kw5           quantity.Figure `json:"kw5"`
	Kw7           quantity.Figure `json:"kw7"`
	Kw11          quantity.Figure `json:"kw11"`
	Kw13          quantity.Figure `json:"kw13"`
	CoilsPerPhase quantity.Figure `json:"coils_per_phase"`
	// SeriesTurns is N, in series in each phase.
	SeriesTurns quantity.Figure `json:"series_turns"`
	// CircuitChoices is the circuits this layout allows.
	CircuitChoices []int `json:"circuits_allowed,omitempty"`
}

// newLayouts makes none yet.
func newLayouts(m machine) layouts {
	return layouts{machine: m, made: &madeLayouts{of: map[layoutKey]coilSet{}}}
}

// own is the machine's own layout: that of a trial with nothing of its own.
func (l *layouts) own() coilSet { return l.plain(l.key(job.Trial{})) }

// coilSet is a layout and what every figure takes from it. Without slots and poles there is no layout,
// and the winding is known only relative to another of the same kind: coil count and factor then
// cancel, and are set to 1.
type coilSet struct {
	plan     *layout.Layout
	why      string  // why there is no plan
	relative bool    // no slots or poles given: only ratios mean anything
	perPhase float64 // coils of a phase, of one set
	// effective is N·kw and series N, per phase, at the trial's turns and circuits.
	effective, series float64
	// slotTurns is the most turns of any coil: what has to fit a slot side.
	slotTurns float64
	kw        [len(layout.Harmonics)]float64
	waves     layout.GapWaves // all waves of the gap
	span      float64         // mean span of the coils, slots
	circuits  int
	choices   []int    // circuits that the layout allows
	iron      *machine // the machine the coils are on
	lie       lying    // how the sides lie in a slot
	// together is the correlation of the currents of two sides in a slot, -1 to 1.
	together float64
	// wound is the share of the coils that the slots could hold which exists; 0 counts as 1.
	wound float64
}

// woundPart is wound, 1 unless some coils are left out.
func (c *coilSet) woundPart() float64 {
	if c.wound == 0 {
		return 1
	}
	return c.wound
}

// lying is how the coil sides lie in a slot.
type lying int

const (
	alone   lying = iota + 1 // one side per slot
	stacked                  // one over the other
	beside                   // each against its own tooth
)

// lyingOf is how the coils of a key lie.
func lyingOf(k layoutKey) lying {
	switch {
	case k.layers == 1:
		return alone
	case k.span == 1:
		return beside
	default:
		return stacked
	}
}

// key is what a trial's layout depends on, its own values before the machine's.
func (l *layouts) key(t job.Trial) layoutKey {
	m := l.machine
	k := layoutKey{span: t.Span.Whole(), layers: t.Layers.Whole(), kind: t.Kind}
	if k.span == 0 {
		k.span = m.Span.Whole()
	}
	if k.layers == 0 {
		k.layers = int(m.Layers.Or(2))
	}
	if k.kind == "" {
		k.kind = m.Kind
	}
	if k.kind == "" {
		k.kind = layout.Lap.String()
	}
	if k.span == 0 {
		k.span = fullPitch(m.Machine)
	}
	if m.flat() { // the only possible ones
		k = layoutKey{span: 1, layers: 2, kind: layout.Lap.String()}
	}
	return k
}

// fullPitch is the span nearest to a pole pitch, 0 when slots or poles are not known. Half a slot is
// rounded down, as winders do: the shorter coil is easier to put in.
func fullPitch(m job.Machine) int {
	q, p := m.Slots.Whole(), m.Poles.Whole()
	if q == 0 || p == 0 {
		return 0
	}
	return max(1, (2*q+p-1)/(2*p))
}

// plain is the layout of a key with one turn per coil.
func (l *layouts) plain(k layoutKey) coilSet {
	l.made.Lock()
	defer l.made.Unlock()
	c, ok := l.made.of[k]
	if !ok {
		c = l.layOut(k)
		l.made.of[k] = c
	}
	return c
}

// layOut makes the layout of a key with one turn per coil.
func (l *layouts) layOut(k layoutKey) coilSet {
	m := l.machine
	if !m.Slots.Given() || !m.Poles.Given() {
		return coilSet{relative: true, perPhase: 1, span: float64(k.span), kw: [len(layout.Harmonics)]float64{1}, waves: layout.WorkingWave(m.sets), lie: lyingOf(k), together: 1,
			why: "needs the number of slots and poles"}
	}
	phases, sets := m.laidOut()
	plan, err := layout.New(layout.Spec{
		Slots: m.Slots.Whole(), Poles: m.Poles.Whole(), Phases: phases, Sets: sets,
		Span: k.span, Layers: k.layers, Kind: kindOf(k.kind),
	})
	all := 1
	if err == nil {
		all = len(plan.Coils())
		plan, err = plan.Without(m.DeadSlots, m.BareTeeth)
	}
	if err != nil {
		return coilSet{why: layoutReason(err), lie: lyingOf(k), together: 1}
	}
	c := coilSet{iron: &m, perPhase: float64(plan.CoilsPerPhase()), lie: lyingOf(k), together: plan.Together(), wound: float64(len(plan.Coils())) / float64(all)}
	return c.on(plan)
}

// on is the coil set with a plan, and what is read off its coils whatever their turns: factors, mean
// span, waves of the gap, circuits.
func (c coilSet) on(plan *layout.Layout) coilSet {
	c.plan, c.choices, c.waves, c.span = plan, plan.CircuitChoices(), c.iron.waves(plan), plan.MeanSpan()
	for i, h := range layout.Harmonics {
		c.kw[i] = c.iron.factor(plan, h)
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

// layoutReason is the layout's error without its package name.
func layoutReason(err error) string {
	var bad *layout.SpecError
	if errors.As(err, &bad) {
		return strings.TrimPrefix(bad.Error(), "layout: ")
	}
	return strings.TrimPrefix(err.Error(), "layout: ")
}

// coils is the coil set of a trial with its turns and circuits. Equal turns need nothing new of the
// layout; unequal ones go through its coil list.
func (l *layouts) coils(t job.Trial) coilSet {
	c := l.plain(l.key(t))
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

// withCoilTurns applies unequal turns within a group to factor and series turns.
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
		return coilSet{why: layoutReason(err), circuits: c.circuits, lie: c.lie, together: 1}
	}
	c = c.on(plan)
	c.series = float64(plan.PhaseTurns(0, 0)) / float64(c.circuits)
	c.effective = c.series * c.kw[0]
	return c
}

// wired is the layout with the trial's turns and circuits, for drawing and winding.
func (l *layouts) wired(t job.Trial) (*layout.Layout, string) {
	c := l.coils(t)
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
func (c *coilSet) figures(turns quantity.Reading) Coils {
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

// candidate is a winding to be worked out: what a person would wind, and its coils.
type candidate struct {
	trial job.Trial
	coils coilSet
	key   layoutKey
}

// candidate lays a trial out.
func (l *layouts) candidate(t job.Trial) candidate {
	return candidate{trial: t, coils: l.coils(t), key: l.key(t)}
}

// candidateOn is a trial on an existing coil list: turns, circuits and factors are the list's own.
func candidateOn(t job.Trial, plan *layout.Layout, m machine) candidate {
	spec := plan.Spec()
	key := layoutKey{span: spec.Span, layers: spec.Layers, kind: spec.Kind.String()}
	c := coilSet{iron: &m, perPhase: float64(plan.CoilsPerPhase()), circuits: plan.Circuits(), lie: lyingOf(key), together: plan.Together()}.on(plan)
	turns, coils := 0.0, plan.Coils()
	for _, coil := range coils {
		turns += float64(coil.Turns)
		c.slotTurns = max(c.slotTurns, float64(coil.Turns))
	}
	c.series = turns / float64(spec.Phases*spec.Sets) / float64(c.circuits)
	c.effective = c.series * c.kw[0]
	t.Turns = quantity.Reading{Value: turns / float64(max(1, len(coils))), Origin: quantity.Derived}
	t.Circuits = quantity.Known(float64(c.circuits))
	return candidate{trial: t, coils: c, key: key}
}
