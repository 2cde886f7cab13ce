package winding

import (
	"math"

	"slotwright/winding/quantity"
)

// Verdict says how a trial's figure stands against the reference's.
type Verdict int

const (
	// Unsaid: the reference itself, a figure with no better side, or none at all.
	Unsaid Verdict = iota
	// Same: within half a percent.
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
	Verdict Verdict         `json:"verdict"`
	// Percent is how far it is from the reference's figure, in percent of that;
	// missing where that means nothing, as for temperatures.
	Percent quantity.Figure `json:"percent"`
	// Difference is how far it is in the row's unit.
	Difference quantity.Figure `json:"difference"`
}

// Row is one figure of every trial, side by side.
type Row struct {
	ID    string `json:"id"`
	Group string `json:"group"`
	Label string `json:"label"`
	// Dim is the unit the values are in, and those they can be shown in.
	Dim quantity.Dimension `json:"-"`
	// Unit is the base unit's name, for JSON.
	Unit   string `json:"unit"`
	Digits int    `json:"-"` // significant figures that mean something
	// Help says in a line what the number means.
	Help  string `json:"help"`
	Cells []Cell `json:"cells"`
	// Key marks the rows a small screen shows first.
	Key bool `json:"-"`
}

// wish is which side of a figure is better.
type wish int

const (
	neither wish = iota
	less
	more
)

// measure is one row's recipe.
type measure struct {
	id, group, label string
	dim              quantity.Dimension
	digits           int
	want             wish
	key              bool
	help             string
	get              func(*TrialOutcome) quantity.Figure
	past             func(*Bench, *TrialOutcome) bool
}

// measures is every row, in the order a rewinder asks.
var measures = []measure{
	{"wire_fill", "Fit", "wire fill", quantity.None, 2, neither, true, "Turns × strands × overall diameter² over the lined slot's area. The limit is yours to set.", func(t *TrialOutcome) quantity.Figure { return t.WireFill }, func(_ *Bench, t *TrialOutcome) bool { return t.WireFill.Value > t.FillLimit.Value }},
	{"turns_that_fit", "Fit", "turns that fit", quantity.None, 0, neither, true, "Most whole turns of this wire within the fill limit.", func(t *TrialOutcome) quantity.Figure { return t.TurnsThatFit }, func(_ *Bench, t *TrialOutcome) bool {
		return t.Turns.Known() && t.Turns.Value > t.TurnsThatFit.Value
	}},
	{"copper_fill", "Fit", "copper fill", quantity.None, 2, more, false, "Bare metal over the bare slot.", func(t *TrialOutcome) quantity.Figure { return t.CopperFill }, nil},
	{"mouth_spare", "Fit", "mouth to spare", quantity.Millimetres, 2, neither, false, "Lined mouth less the wire's diameter: below zero it cannot be put in.", func(t *TrialOutcome) quantity.Figure { return t.MouthSpareMM }, func(_ *Bench, t *TrialOutcome) bool { return t.MouthSpareMM.Value <= 0 }},
	{"copper_per_slot", "Fit", "metal per slot", quantity.SquareMM, 3, more, false, "Bare metal in one slot: more means less heat for the same watts.", func(t *TrialOutcome) quantity.Figure { return t.CopperPerSlotMM2 }, nil},
	{"kw1", "Volts", "winding factor", quantity.None, 4, more, false, "How much of the turns the working wave finds, from the coils themselves.", func(t *TrialOutcome) quantity.Figure { return t.Kw1 }, nil},
	{"series_turns", "Volts", "turns in series", quantity.None, 0, neither, false, "In each phase, from lead to star point.", func(t *TrialOutcome) quantity.Figure { return t.SeriesTurns }, nil},
	{"volts_per_1000", "Volts", "lead to lead at 1000 rpm", quantity.Volts, 3, neither, true, "Volts rms between two leads at 1000 rpm, nothing connected.", func(t *TrialOutcome) quantity.Figure { return t.LinePer1000RPM }, nil},
	{"cut_in", "Volts", "charging begins", quantity.RPM, 3, less, true, "Speed at which the first amps reach the battery.", func(t *TrialOutcome) quantity.Figure { return t.CutInRPM }, func(b *Bench, t *TrialOutcome) bool {
		return b.speeds.slow.Known() && t.CutInRPM.Value > b.speeds.slow.Value
	}},
	{"open_top", "Volts", "open at top speed", quantity.Volts, 3, less, false, "Peak DC unloaded at the top speed: what diodes and fingers meet when the battery comes off.", func(t *TrialOutcome) quantity.Figure { return t.OpenAtTopVolts }, func(b *Bench, t *TrialOutcome) bool {
		r := b.job.Battery.DiodeReverseVolts
		return r.Given() && t.OpenAtTopVolts.Value > r.Value
	}},
	{"amps_slow", "Amps", "amps, slow speed", quantity.Amps, 3, more, true, "DC amps into the battery at the slow speed, winding warm.", func(t *TrialOutcome) quantity.Figure { return t.AmpsSlow }, nil},
	{"amps_usual", "Amps", "amps, usual speed", quantity.Amps, 3, more, true, "DC amps into the battery at the usual speed, winding warm.", func(t *TrialOutcome) quantity.Figure { return t.AmpsUsual }, pastLimit(func(t *TrialOutcome) quantity.Figure { return t.AmpsUsual })},
	{"amps_top", "Amps", "amps, top speed", quantity.Amps, 3, more, true, "DC amps into the battery at the top speed, winding warm.", func(t *TrialOutcome) quantity.Figure { return t.AmpsTop }, pastLimit(func(t *TrialOutcome) quantity.Figure { return t.AmpsTop })},
	{"target_rpm", "Amps", "amps wanted from", quantity.RPM, 3, less, false, "Speed at which the amps wanted are reached.", func(t *TrialOutcome) quantity.Figure { return t.TargetRPM }, nil},
	{"cross_rpm", "Amps", "crosses reference", quantity.RPM, 3, neither, false, "Speed at which this trial's curve crosses the reference's: below it one charges more, above it the other.", func(t *TrialOutcome) quantity.Figure { return t.CrossRPM }, nil},
	{"limit_amps", "Limits", "current limit", quantity.Amps, 3, more, true, "The lowest of the limits by density, heat and temperature, DC side.", func(t *TrialOutcome) quantity.Figure { return t.LimitAmps }, nil},
	{"hot_usual", "Limits", "winding, usual", quantity.Celsius, 3, less, false, "Temperature it comes to at the usual speed.", func(t *TrialOutcome) quantity.Figure { return t.HotUsualC }, func(b *Bench, t *TrialOutcome) bool { return t.HotUsualC.Value > b.air.classC }},
	{"hot_top", "Limits", "winding, top", quantity.Celsius, 3, less, false, "Temperature it comes to at the top speed.", func(t *TrialOutcome) quantity.Figure { return t.HotTopC }, func(b *Bench, t *TrialOutcome) bool { return t.HotTopC.Value > b.air.classC }},
	{"efficiency", "Limits", "efficiency, usual", quantity.None, 2, more, false, "Battery watts over shaft watts at the usual speed.", func(t *TrialOutcome) quantity.Figure { return t.Efficiency }, nil},
	{"lead_ohms", "Ohms", "lead to lead 20 °C", quantity.Ohms, 3, less, true, "What the meter should show between two leads, cold.", func(t *TrialOutcome) quantity.Figure { return t.LeadOhms20 }, nil},
	{"phase_mh", "Ohms", "inductance, phase", quantity.Millihenry, 3, less, false, "It sets the ceiling of the current at high speed.", func(t *TrialOutcome) quantity.Figure { return t.PhaseMilliHenries }, nil},
	{"mean_turn", "Ohms", "mean turn", quantity.Millimetres, 3, neither, false, "Length of a middling turn.", func(t *TrialOutcome) quantity.Figure { return t.MeanTurnMM }, nil},
	{"wire_kg", "Wire", "wire to buy", quantity.Kilograms, 3, less, true, "With the allowance for leads and a coil gone wrong.", func(t *TrialOutcome) quantity.Figure { return t.kgToBuy() }, nil},
	{"year_kwh", "Drive", "a year's energy", quantity.Only("kWh"), 3, more, true, "Into the battery in a year of the stated wind.", func(t *TrialOutcome) quantity.Figure { return t.YearKWh }, nil},
}

// pastLimit marks amps over the trial's own limit.
func pastLimit(get func(*TrialOutcome) quantity.Figure) func(*Bench, *TrialOutcome) bool {
	return func(_ *Bench, t *TrialOutcome) bool {
		return t.LimitAmps.Known() && get(t).Value > t.LimitAmps.Value
	}
}

// kgToBuy adds up the sizes.
func (t *TrialOutcome) kgToBuy() quantity.Figure {
	if len(t.Buy) == 0 {
		return quantity.Missing("needs the wire")
	}
	sum := t.Buy[0].Kg
	for _, s := range t.Buy[1:] {
		sum = sum.With(s.Kg, func(a, b float64) float64 { return a + b })
	}
	return sum
}

// compare makes every row that any trial has a figure or a reason for.
func (b *Bench) compare(o *Outcome) []Row {
	rows := make([]Row, 0, len(measures))
	if len(o.Trials) == 0 {
		return rows
	}
	for i := range measures {
		m := &measures[i]
		r := Row{ID: m.id, Group: m.group, Label: m.label, Dim: m.dim, Unit: m.dim[0].Name, Digits: m.digits, Help: m.help,
			Cells: make([]Cell, len(o.Trials))}
		ref := m.get(&o.Trials[o.Reference])
		for k := range o.Trials {
			r.Cells[k] = b.judge(m, &o.Trials[k], ref, k == o.Reference)
		}
		r.Key = m.key && (m.group != "Drive" || anyKnown(r.Cells))
		rows = append(rows, r)
	}
	return rows
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

// judge is one cell: its figure, how far from the reference, and which is better.
func (b *Bench) judge(m *measure, t *TrialOutcome, ref quantity.Figure, isRef bool) Cell {
	c := Cell{Figure: m.get(t), Percent: quantity.Missing(""), Difference: quantity.Missing("")}
	if !c.Figure.Known() {
		return c
	}
	if !isRef && ref.Known() {
		c.Difference = quantity.Of(c.Figure.Value-ref.Value, c.Figure.Origin, ref.Origin)
		if ref.Value != 0 && m.dim[0].Suffix != "c" {
			c.Percent = quantity.Of(100*(c.Figure.Value/ref.Value-1), c.Figure.Origin, ref.Origin)
		}
	}
	switch {
	case m.past != nil && m.past(b, t):
		c.Verdict = Past
	case isRef || !ref.Known() || m.want == neither:
	case math.Abs(c.Figure.Value-ref.Value) <= 0.005*math.Abs(ref.Value):
		c.Verdict = Same
	case (c.Figure.Value < ref.Value) == (m.want == less):
		c.Verdict = Better
	default:
		c.Verdict = Worse
	}
	return c
}
