package card

import (
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// more is a figure that the comparison leaves out.
type more struct {
	label  string
	dim    quantity.Dimension
	digits int
	get    func(*winding.TrialOutcome) quantity.Figure
}

// moreList is every other figure of a trial.
var moreList = []more{
	{"bare diameter", quantity.Millimetres, 4, func(t *winding.TrialOutcome) quantity.Figure { return t.BareMM }},
	{"over the enamel", quantity.Millimetres, 4, func(t *winding.TrialOutcome) quantity.Figure { return t.OverallMM }},
	{"conductor area", quantity.SquareMM, 4, func(t *winding.TrialOutcome) quantity.Figure { return t.ConductorAreaMM2 }},
	{"conductor area", quantity.Only("cmil"), 4, func(t *winding.TrialOutcome) quantity.Figure { return t.ConductorAreaCmil }},
	{"wires in a slot", quantity.None, 0, func(t *winding.TrialOutcome) quantity.Figure { return t.Conductors }},
	{"most wires that pack", quantity.None, 0, func(t *winding.TrialOutcome) quantity.Figure { return t.MostThatPack }},
	{"fill of round wires", quantity.None, 2, func(t *winding.TrialOutcome) quantity.Figure { return t.RoundFill }},
	{"fill limit", quantity.None, 2, func(t *winding.TrialOutcome) quantity.Figure { return t.FillLimit }},
	{"coils in a phase", quantity.None, 0, func(t *winding.TrialOutcome) quantity.Figure { return t.CoilsPerPhase }},
	{"factor kw3", quantity.None, 4, func(t *winding.TrialOutcome) quantity.Figure { return t.Kw3 }},
	{"factor kw5", quantity.None, 4, func(t *winding.TrialOutcome) quantity.Figure { return t.Kw5 }},
	{"factor kw7", quantity.None, 4, func(t *winding.TrialOutcome) quantity.Figure { return t.Kw7 }},
	{"factor kw11", quantity.None, 4, func(t *winding.TrialOutcome) quantity.Figure { return t.Kw11 }},
	{"factor kw13", quantity.None, 4, func(t *winding.TrialOutcome) quantity.Figure { return t.Kw13 }},
	{"a phase, 20 °C", quantity.Ohms, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.PhaseOhms20 }},
	{"a phase, at the test", quantity.Ohms, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.PhaseOhmsT }},
	{"leads, at the test", quantity.Ohms, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.LeadOhmsT }},
	{"phase rms per 1 rpm", quantity.Volts, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.PhasePerRPM }},
	{"line rms per 1 rpm", quantity.Volts, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.LinePerRPM }},
	{"DC peak per 1 rpm", quantity.Volts, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.PeakDCPerRPM }},
	{"line rms, at the test", quantity.Volts, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.LineAtTest }},
	{"DC open in a gale", quantity.Volts, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.OpenAtGaleVolts }},
	{"limit reached at", quantity.RPM, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.LimitRPM }},
	{"metal wound in", quantity.Kilograms, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.CopperKg }},
	{"volts over the old's", quantity.None, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.Against.Volts }},
	{"ohms over the old's", quantity.None, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.Against.Ohms }},
	{"metal over the old's", quantity.None, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.Against.Copper }},
	{"cut-in over the old's", quantity.None, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.Against.CutIn }},
}

// moreFigures sets them side by side too.
func (w *writer) moreFigures() {
	w.section("MORE FIGURES, SIDE BY SIDE")
	w.ifNoTrials()
	if len(w.o.Trials) > 0 {
		w.names("")
		w.gap()
		for i := range moreList {
			w.moreRow(&moreList[i])
		}
	}
	w.flush()
}

func (w *writer) moreRow(m *more) {
	u := w.opt.Units.For(m.dim)
	cells := make([]string, len(w.o.Trials))
	some := false
	var no absent
	for i := range w.o.Trials {
		f := m.get(&w.o.Trials[i])
		cells[i] = "-"
		if f.Known() {
			f.PlusMinus, some = 0, true
			cells[i] = bare(f, u, m.digits)
		} else {
			no.add(w.o.Trials[i].Name, f.Why)
		}
	}
	if some {
		w.row(w.withUnit(m.label, u.Name), cells)
	}
	w.note(m.label, no)
}

// rowHelp says what the rows of the comparison mean.
func (w *writer) rowHelp() {
	if len(w.o.Comparison) == 0 {
		return
	}
	w.section("WHAT THE ROWS MEAN")
	for _, r := range w.o.Comparison {
		w.pair(r.Label, r.Help)
	}
	w.gap()
}
