package winding

import (
	"fmt"
	"math"

	"slotwright/winding/quantity"
)

// Verdict says how a trial's figure compares with the reference's.
type Verdict int

const (
	// Unsaid: the reference itself, a figure with no better side, or no figure.
	Unsaid Verdict = iota
	// Same: within half a per cent, or within the unit's useful precision.
	Same
	// Better for this job than the reference.
	Better
	// Worse for this job than the reference.
	Worse
	// Past: over a limit, whatever the reference does.
	Past
)

// String is the word for it.
func (v Verdict) String() string {
	return [...]string{"", "same", "better", "worse", "past the limit"}[v]
}

// MarshalText makes JSON carry the word.
func (v Verdict) MarshalText() ([]byte, error) { return []byte(v.String()), nil }

// Cell is one trial's figure in a row of the comparison.
type Cell struct {
	Figure  quantity.Figure `json:"value"`
	Verdict Verdict         `json:"verdict,omitempty"`
	// Percent is the difference from the reference's figure in per cent of that; missing where that
	// means nothing, as for temperatures.
	Percent quantity.Figure `json:"percent,omitzero"`
	// Difference is the difference from the reference's figure in the row's unit.
	Difference quantity.Figure `json:"difference,omitzero"`
	// Burns is set where the winding finds no steady temperature in the row's condition: it does not
	// survive that current.
	Burns bool `json:"burns,omitempty"`
	// Held is set where the regulator holds the row's net amps: more would flow without it.
	Held bool `json:"held,omitempty"`
	// Unwound says why the winding cannot be wound, for a row whose figure requires that; "" otherwise.
	Unwound string `json:"-"`
}

// Row is one figure of every trial, side by side.
type Row struct {
	ID    string `json:"id"`
	Group string `json:"group"`
	Label string `json:"label"`
	// Dim is the unit the values are in, and those they can be shown in.
	Dim quantity.Dimension `json:"-"`
	// Unit is the unit the values are in, for JSON; none for a fraction.
	Unit   string `json:"unit,omitempty"`
	Digits int    `json:"-"` // significant figures that mean something
	// Help says in a line what the number means.
	Help string `json:"help"`
	// Mend says what to change where the figure is past its limit.
	Mend  string `json:"-"`
	Cells []Cell `json:"cells"`
	// Key marks the rows a small screen shows first.
	Key bool `json:"-"`
}

// pastLimit marks amps over the trial's own limit in a condition.
func pastLimit(condition int) func(*Outcome, *TrialOutcome) bool {
	return func(_ *Outcome, t *TrialOutcome) bool { return t.overIn(condition) }
}

// nothingAt marks a trial that leaves the battery nothing in a condition, or less than nothing where
// the rotor takes more than comes in. In a light wind none needs to charge.
func nothingAt(condition int) func(*Outcome, *TrialOutcome) bool {
	return func(_ *Outcome, t *TrialOutcome) bool {
		if condition == slow && t.inWind() {
			return false
		}
		net := [conditionCount]*quantity.Figure{&t.AmpsSlow, &t.AmpsUsual, &t.AmpsTop}[condition]
		gross := [conditionCount]*quantity.Figure{&t.BridgeSlow, &t.BridgeUsual, &t.BridgeTop}[condition]
		return gross.Known() && net.Known() && net.Value <= 0
	}
}

// compare sets the figures of the grid side by side.
func compare(o *Outcome, wind bool) []Row {
	rows := []Row{}
	if len(o.Trials) == 0 {
		return rows
	}
	for i := range trialOutputs {
		f := &trialOutputs[i]
		if f.Show != InGrid && f.Show != First || f.Again(&o.Machine) {
			continue
		}
		r := o.Row(f, wind)
		if f.IfAny && !anyKnown(r.Cells) {
			continue
		}
		r.Key = f.Show == First && (f.Group != "Drive" || anyKnown(r.Cells))
		rows = append(rows, r)
	}
	return rows
}

// alike reports whether two values are the same to a person: within half a per cent, or within half of
// the last digit written of either. The second test decides where one of them is 0, of which there is
// no per cent.
func alike(a, b float64, u quantity.Unit, digits int) bool {
	apart := math.Abs(a - b)
	return apart <= 0.005*math.Abs(b) || apart < min(u.Worth(a, digits), u.Worth(b, digits))/2
}

// Fits reports whether the winding can be put into its slot, as far as is known: its turns within the
// fill limit, its wire through the mouth.
func (t *TrialOutcome) Fits() bool {
	return !t.tooMany() && !(t.MouthSpareMM.Known() && t.MouthSpareMM.Value <= 0)
}

// tooMany reports whether there are more turns than fit.
func (t *TrialOutcome) tooMany() bool {
	return t.Turns.Known() && t.TurnsThatFit.Known() && t.Turns.Value > t.TurnsThatFit.Value
}

// Row is a figure of every trial side by side; wind says that the drive is wind.
func (o *Outcome) Row(f *Output, wind bool) Row {
	dim := f.DimFor(wind)
	r := Row{ID: f.ID, Group: f.Group, Label: f.LabelFor(&o.Machine), Dim: dim, Unit: unitOf(dim), Digits: f.Digits, Help: f.meaningOn(&o.Machine), Mend: f.Mend,
		Cells: make([]Cell, len(o.Trials))}
	if o.Reversed != nil && f.Runs && r.Mend != "" {
		r.Mend = o.Reversed.Check
	}
	ref := f.Of(&o.Trials[o.Reference])
	for k := range o.Trials {
		r.Cells[k] = o.judge(f, dim, &o.Trials[k], ref, k == o.Reference)
		r.Cells[k].Burns, r.Cells[k].Held = f.Burns(&o.Trials[k]), f.Held(&o.Trials[k])
		if f.Runs && r.Cells[k].Figure.Known() {
			r.Cells[k].Unwound = o.Trials[k].CannotBeWound()
		}
	}
	return r
}

// meaningOn explains a figure for a machine: with a wound rotor, volts and cut-in are those of one
// field current.
func (f *Output) meaningOn(m *MachineOutcome) string {
	if f.ID == "cut_in_rpm" && m.restAmps > 0 {
		return fmt.Sprintf("%s With %.3g A in the rotor, which the battery at rest drives.", f.Meaning, m.restAmps)
	}
	if (f.ID == "volts_line_rms_per_1000rpm" || f.ID == "cut_in_rpm") && m.FieldAmps.Known() {
		return fmt.Sprintf("%s With %.3g A in the rotor.", f.Meaning, m.FieldAmps.Value)
	}
	return f.Meaning
}

// unitOf is the unit that values of a dimension are kept in; fractions, shown in per cent, have none.
func unitOf(dim quantity.Dimension) string {
	switch {
	case dim[0].Base(1) != 1:
		return ""
	case dim[0].Suffix == quantity.Volts[0].Suffix: // the JSON key says whether they are DC or rms
		return quantity.Volts[0].Name
	}
	return dim[0].Name
}

// anyKnown reports whether a trial has the figure.
func anyKnown(cells []Cell) bool {
	for _, c := range cells {
		if c.Figure.Known() {
			return true
		}
	}
	return false
}

// judge makes one cell: its figure, the difference from the reference, and which is better. Neither is
// better where one of the two cannot be wound at all.
func (o *Outcome) judge(m *Output, dim quantity.Dimension, t *TrialOutcome, ref quantity.Figure, isRef bool) Cell {
	c := Cell{Figure: m.Of(t), Percent: quantity.Missing(""), Difference: quantity.Missing("")}
	if !c.Figure.Known() {
		return c
	}
	if !t.Turns.Known() || !o.Trials[o.Reference].Turns.Known() {
		ref = quantity.Missing("") // what is not yet a winding has nothing to be compared
	}
	if !isRef && ref.Known() {
		c.Difference = quantity.Of(c.Figure.Value-ref.Value, c.Figure.Origin, ref.Origin)
		if ref.Value > 0 && !alike(ref.Value, 0, dim[0], m.Digits) && c.Figure.Value >= 0 && dim[0].Suffix != "c" { // a percentage of a negative value means nothing
			c.Percent = quantity.Of(100*(c.Figure.Value/ref.Value-1), c.Figure.Origin, ref.Origin)
		}
	}
	switch {
	case m.Past(o, t):
		c.Verdict = Past
	case isRef || !ref.Known() || m.Better == Neither || !t.Fits() || !o.Trials[o.Reference].Fits():
	case alike(c.Figure.Value, ref.Value, dim[0], m.Digits):
		c.Verdict = Same
	case (c.Figure.Value < ref.Value) == (m.Better == Less):
		c.Verdict = Better
	case !m.Past(o, &o.Trials[o.Reference]): // what the reference does not withstand is no yardstick
		c.Verdict = Worse
	}
	return c
}
