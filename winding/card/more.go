package card

import (
	"slotwright/winding"
	"slotwright/winding/unit"
)

// more is a figure that the comparison leaves out.
type more struct {
	label  string
	dim    unit.Dimension
	digits int
	get    func(*winding.TrialOutcome) winding.Figure
}

// moreList is every other figure of a trial.
var moreList = []more{
	{"bare diameter", unit.Millimetres, 4, func(t *winding.TrialOutcome) winding.Figure { return t.BareMM }},
	{"over the enamel", unit.Millimetres, 4, func(t *winding.TrialOutcome) winding.Figure { return t.OverallMM }},
	{"conductor area", unit.SquareMM, 4, func(t *winding.TrialOutcome) winding.Figure { return t.ConductorAreaMM2 }},
	{"conductor area", unit.Only("cmil"), 4, func(t *winding.TrialOutcome) winding.Figure { return t.ConductorAreaCmil }},
	{"wires in a slot", unit.None, 0, func(t *winding.TrialOutcome) winding.Figure { return t.Conductors }},
	{"most wires that pack", unit.None, 0, func(t *winding.TrialOutcome) winding.Figure { return t.MostThatPack }},
	{"fill of round wires", unit.None, 2, func(t *winding.TrialOutcome) winding.Figure { return t.RoundFill }},
	{"fill limit", unit.None, 2, func(t *winding.TrialOutcome) winding.Figure { return t.FillLimit }},
	{"coils in a phase", unit.None, 0, func(t *winding.TrialOutcome) winding.Figure { return t.CoilsPerPhase }},
	{"factor kw3", unit.None, 4, func(t *winding.TrialOutcome) winding.Figure { return t.Kw3 }},
	{"factor kw5", unit.None, 4, func(t *winding.TrialOutcome) winding.Figure { return t.Kw5 }},
	{"factor kw7", unit.None, 4, func(t *winding.TrialOutcome) winding.Figure { return t.Kw7 }},
	{"factor kw11", unit.None, 4, func(t *winding.TrialOutcome) winding.Figure { return t.Kw11 }},
	{"factor kw13", unit.None, 4, func(t *winding.TrialOutcome) winding.Figure { return t.Kw13 }},
	{"a phase, 20 °C", unit.Ohms, 3, func(t *winding.TrialOutcome) winding.Figure { return t.PhaseOhms20 }},
	{"a phase, at the test", unit.Ohms, 3, func(t *winding.TrialOutcome) winding.Figure { return t.PhaseOhmsT }},
	{"leads, at the test", unit.Ohms, 3, func(t *winding.TrialOutcome) winding.Figure { return t.LeadOhmsT }},
	{"phase rms per 1 rpm", unit.Volts, 3, func(t *winding.TrialOutcome) winding.Figure { return t.PhasePerRPM }},
	{"line rms per 1 rpm", unit.Volts, 3, func(t *winding.TrialOutcome) winding.Figure { return t.LinePerRPM }},
	{"DC peak per 1 rpm", unit.Volts, 3, func(t *winding.TrialOutcome) winding.Figure { return t.PeakDCPerRPM }},
	{"line rms, at the test", unit.Volts, 3, func(t *winding.TrialOutcome) winding.Figure { return t.LineAtTest }},
	{"DC open in a gale", unit.Volts, 3, func(t *winding.TrialOutcome) winding.Figure { return t.OpenAtGaleVolts }},
	{"limit reached at", unit.RPM, 3, func(t *winding.TrialOutcome) winding.Figure { return t.LimitRPM }},
	{"metal wound in", unit.Kilograms, 3, func(t *winding.TrialOutcome) winding.Figure { return t.CopperKg }},
	{"volts over the old's", unit.None, 3, func(t *winding.TrialOutcome) winding.Figure { return t.Against.Volts }},
	{"ohms over the old's", unit.None, 3, func(t *winding.TrialOutcome) winding.Figure { return t.Against.Ohms }},
	{"metal over the old's", unit.None, 3, func(t *winding.TrialOutcome) winding.Figure { return t.Against.Copper }},
	{"cut-in over the old's", unit.None, 3, func(t *winding.TrialOutcome) winding.Figure { return t.Against.CutIn }},
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
