package shelf

import (
	"fmt"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// Hint is a value that a bench's records have for a field that a job leaves empty.
type Hint struct {
	// Path is the field: "slot.fill_limit".
	Path string `json:"path"`
	// Label is its name on the screen.
	Label string `json:"label"`
	// Value is in the field's base unit, with its ±; its Why says where it is from.
	Value quantity.Figure `json:"value"`
	// Typed is what to type for it, marked as a guess: "~0.63 ±0.03".
	Typed string `json:"typed"`
}

// The fields that records can have something for.
const (
	fillLimit = "slot.fill_limit"
	meanTurn  = "machine.mean_turn"
	rise      = "machine.rise"
)

// Offered reports whether records can have something for a field.
func Offered(path string) bool { return path == fillLimit || path == meanTurn || path == rise }

// Offers is what the records have for a job: the fill that its wire reaches, the mean turn corrected by
// this hand's deviation, the rise per watt of such a machine. Only empty fields are offered something,
// and nothing is put in.
func (b *Bench) Offers(j job.Job) []Hint {
	var list []Hint
	bench := winding.Prepare(j)
	var t winding.TrialOutcome
	if i := bench.Reference(); i < len(j.Trials) {
		t = bench.Static(j.Trials[i])
	}
	if !j.Slot.FillLimit.Given() && t.BareMM.Known() {
		list = offer(list, fillLimit, b.fillOf(t.BareMM.Value), 2)
	}
	if !j.Machine.MeanTurnMM.Given() && b.MeanTurnOff.Known() && t.MeanTurnMM.Known() {
		off := b.MeanTurnOff
		turn := quantity.Of(t.MeanTurnMM.Value * (1 + off.Value/100))
		turn.PlusMinus = t.MeanTurnMM.Value * off.PlusMinus / 100
		list = offer(list, meanTurn, turn.Because(off.Why), 3)
	}
	if !j.Machine.KelvinPerWatt.Given() {
		list = offer(list, rise, b.riseOf(kinOf(&j.Machine)), 2)
	}
	return list
}

// offer adds a value that is known.
func offer(list []Hint, path string, f quantity.Figure, figures int) []Hint {
	field, ok := job.InputAt(path)
	if !ok || !f.Known() {
		return list
	}
	guess := f
	guess.Origin = quantity.Guessed
	unit := quantity.None[0]
	if len(field.Dim) > 0 {
		unit = field.Dim[0]
	}
	return append(list, Hint{path, field.Label, f, guess.Text(unit, figures)})
}

// fillOf is the fill that this hand reaches with a wire of a bare diameter, mm.
func (b *Bench) fillOf(bareMM float64) quantity.Figure {
	for _, l := range b.Fills {
		if bareMM >= l.FromMM && bareMM < l.ToMM {
			return l.Fill
		}
	}
	return quantity.Missing("nothing is recorded of such wire yet")
}

// riseOf is the rise per watt of a kind of machine.
func (b *Bench) riseOf(k kin) quantity.Figure {
	for _, r := range b.Rises {
		if r.kin.like(k) {
			return r.RisePerWatt
		}
	}
	return quantity.Missing("nothing is recorded of such a machine yet")
}

// String is the offer in a line: "Fill limit ~0.63 ±0.03 (your last 5 jobs)".
func (o Hint) String() string {
	unit := ""
	if f, ok := job.InputAt(o.Path); ok && len(f.Dim) > 0 && f.Dim[0].Name != "" {
		unit = " " + f.Dim[0].Name
	}
	return fmt.Sprintf("%s %s%s (%s)", o.Label, o.Typed, unit, o.Value.Why)
}
