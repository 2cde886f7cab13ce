package card

import (
	"fmt"
	"slices"
	"strings"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/text"
	"slotwright/winding/wound"
)

// proof is what the finished winding should read, with room for what it does read.
func (w *writer) proof(t *winding.TrialOutcome, plan *layout.Layout) {
	m := &w.o.Machine
	pairs := w.pairs(plan)
	alike := ""
	if len(pairs) > 1 {
		alike = fmt.Sprintf(", pairs within %.0f %% of mean (EASA AR100)", 100*wound.BalanceLimit)
	}
	at := func(f quantity.Figure, celsius quantity.Figure) string {
		return w.expected(f, quantity.Ohms) + " at " + w.amount(celsius, quantity.Celsius, asGiven)
	}
	cold := at(t.LeadOhms20, degrees(20))
	if m.TestC.Value != 20 {
		cold += ", " + at(t.LeadOhmsT, m.TestC)
	}
	w.entry("OHMS", "before varnish: "+cold+w.within(t.LeadOhmsT, quantity.Ohms)+alike)
	w.readings(pairs, w.opt.Units.For(quantity.Ohms).Name, "at ______ "+w.opt.Units.For(quantity.Celsius).Name)
	w.entry("VOLTS", "AC open, alternator "+w.orBlank(m.TestRPM, quantity.RPM, 3)+w.fed()+": "+w.expected(t.LineAtTest, quantity.Volts)+w.within(t.LineAtTest, quantity.Volts))
	w.readings(pairs, quantity.Volts[0].Name, "at ______ rpm")
	if w.flat() {
		return // there is no iron
	}
	w.entry("TO IRON", fmt.Sprintf("%.0f V DC, 1 min: ________ %s, at least %s at %s, %s at %s", wound.InsulationVolts, quantity.Megohms[0].Name,
		quantity.Number(wound.InsulationMegohms(40), asGiven), w.amount(degrees(40), quantity.Celsius, asGiven),
		quantity.Number(wound.InsulationMegohms(20), asGiven), w.amount(degrees(20), quantity.Celsius, asGiven)))
}

// fed is the current of a wound rotor meanwhile.
func (w *writer) fed() string {
	if w.job.Field.Kind != job.FieldWound {
		return ""
	}
	amps := w.o.Machine.FieldAmps
	amps.PlusMinus = 0
	return ", rotor with " + w.orBlank(amps, quantity.Amps, 3)
}

func degrees(c float64) quantity.Figure { return quantity.Figure{Value: c, Origin: quantity.Derived} }

// expected is a figure to prove by, or a blank for it.
func (w *writer) expected(f quantity.Figure, dim quantity.Dimension) string {
	return w.expectedAs(f, dim, 3)
}

// within is the limits that a reading must lie in.
func (w *writer) within(f quantity.Figure, dim quantity.Dimension) string {
	if !f.Known() {
		return " (" + f.Why + ")"
	}
	low, high, part, ok := wound.Between(f)
	if !ok {
		return ""
	}
	u := w.opt.Units.For(dim)
	end := func(v float64) string { return quantity.File.Value(u.From(v), u, 3) }
	return fmt.Sprintf("; must read %s to %s (±%.0f %%)", end(low), end(high), 100*part)
}

// readings is a blank for each pair of leads, as many side by side as there is room for.
func (w *writer) readings(pairs []string, unit, behind string) {
	for len(pairs) > 0 {
		n := min(3, (w.wide-labelled-15)/16, len(pairs)) // the unit stands behind the last
		line := strings.Repeat(" ", labelled)
		for _, p := range pairs[:n] {
			line += p + " ________  "
		}
		if pairs = pairs[n:]; len(pairs) == 0 {
			line += unit + " " + behind
		}
		w.raw(line)
	}
}

// pairs is the leads to measure between: three pairs in each set of three phases, the two ends of each
// phase where there are fewer.
func (w *writer) pairs(plan *layout.Layout) (pairs []string) {
	if plan == nil {
		if w.job.Machine.Phases.Whole() == 1 {
			return []string{"U1-U2"}
		}
		return []string{"U1-V1", "V1-W1", "W1-U1"}
	}
	if n := plan.Spec().Phases; n < 3 {
		for phase := range n {
			name := plan.PhaseName(0, phase)
			pairs = append(pairs, name+"1-"+name+"2")
		}
		return pairs
	}
	for set := range plan.Spec().Sets {
		for phase := range 3 {
			pairs = append(pairs, fmt.Sprintf("%s1-%s1", plan.PhaseName(set, phase), plan.PhaseName(set, (phase+1)%3)))
		}
	}
	return pairs
}

// stops is the current limit, and the highest voltage that may appear.
func (w *writer) stops(t *winding.TrialOutcome) {
	by := ""
	if t.LimitAmps.Known() {
		by = " (" + t.LimitBy + ")"
	}
	w.entry("LIMITS", "NOT MORE THAN "+w.orBlank(t.LimitAmps, quantity.Amps, 3)+" DC from "+w.rectifier()+by+w.limitsElsewhere(t)+"; "+w.fuse(t))
	if w.fuseFarOver(t) {
		w.more("The fuse guards the cable, not the winding: " + w.holdsBack() + ".")
	}
	if amps, guards := t.Unguarded(); guards {
		w.more("REGULATOR: it is what protects this winding; without it " + w.amount(quantity.Of(amps), quantity.Amps, 3) + " would flow. Prove it before the winding runs at full speed.")
	}
	if drags := t.Drags(w.job.Drive.Kind); drags != "" {
		w.more("SPEED: this winding " + drags + ".")
	}
	w.more("OPEN, nothing connected: " + w.expected(t.OpenAtTopVolts, quantity.Volts) + " DC peak at top speed" + w.highest(t))
}

// limitsElsewhere is the limit in the drive's other conditions, where a fan makes it differ: what a
// reading at their speeds must not pass.
func (w *writer) limitsElsewhere(t *winding.TrialOutcome) string {
	if !t.LimitAmps.Known() {
		return ""
	}
	words := ""
	for _, p := range w.ownConditions(t) {
		limit := quantity.Figure{Value: t.LimitIn(&p.RunPoint), Origin: t.LimitAmps.Origin}
		if text := w.amount(limit, quantity.Amps, 3); p.AmpsDC > 0 && text != w.amount(t.LimitAmps, quantity.Amps, 3) {
			words += ", " + text + " at " + w.condition(p).Label
		}
	}
	return words
}

// fuseFarOver reports whether a fuse carries far more than the winding may: the next common size above
// a current within the limit is at most twice that.
func (w *writer) fuseFarOver(t *winding.TrialOutcome) bool {
	return t.FuseAmps.Known() && t.LimitAmps.Known() && t.FuseAmps.Value > 2*t.LimitAmps.Value
}

// holdsBack is what has to keep the winding within its amps, since the fuse does not.
func (w *writer) holdsBack() string {
	if w.job.Drive.Kind == job.DriveWind {
		return "furl below those amps"
	}
	return "hold its amps back"
}

// rectifier is what turns AC into DC.
func (w *writer) rectifier() string {
	if words := map[string]string{job.RectifierHalfWave: "the diode", job.RectifierDoubler: "the doubler"}[w.job.Battery.Rectifier]; words != "" {
		return words
	}
	return "the bridge"
}

// fuse is the battery's, or what replaces it where there is none.
func (w *writer) fuse(t *winding.TrialOutcome) string {
	switch w.job.Battery.Load {
	case job.LoadResistor:
		return "FUSE none: a lamp or heater takes no more than its ohms let it; one that opens lets the volts rise"
	case job.LoadBus:
		return "FUSE as the converter's sheet asks: " + blank + " A"
	}
	if t.FuseAmps.Known() {
		return "FUSE " + w.expectedAs(t.FuseAmps, quantity.Amps, asGiven)
	}
	return "FUSE " + blank + " A"
}

// expectedAs is expected to so many figures.
func (w *writer) expectedAs(f quantity.Figure, dim quantity.Dimension, figures int) string {
	f.PlusMinus = 0
	return w.orBlank(f, dim, figures)
}

// highest is the most volts anywhere, where that is more.
func (w *writer) highest(t *winding.TrialOutcome) string {
	if !t.MostVolts.Known() || t.OpenAtTopVolts.Known() && t.MostVolts.Value <= t.OpenAtTopVolts.Value {
		return ""
	}
	return ", at most " + w.expected(t.MostVolts, quantity.Volts)
}

// cautionsOf is those that apply to a trial; that figures are estimates is said at the foot of the
// sheet in any case.
func (w *writer) cautionsOf(trial string) []winding.Caution {
	var list []winding.Caution
	for _, c := range w.o.Cautions {
		if c.Topic != "estimate" && (c.Trial == "" || c.Trial == trial) {
			list = append(list, c)
		}
	}
	return list
}

// withCautions fills a sheet with cautions, the most pressing first; over is those that do not fit.
func (w *writer) withCautions(sheet []string, list []winding.Caution) (filled []string, over []winding.Caution) {
	rule := strings.Repeat("-", w.wide)
	room := w.sheetLines() - len(sheet) - 4 // head, rule, the rest, foot
	filled = append(sheet, rule)
	for i, c := range list {
		lines := w.block(func() { w.caution(c) })
		if len(lines) > room {
			over = list[i:]
			break
		}
		room -= len(lines)
		filled = append(filled, lines...)
	}
	if len(over) > 0 {
		var topics []string
		for _, c := range over {
			if t := strings.ToUpper(w.clean(c.Topic)); !slices.Contains(topics, t) {
				topics = append(topics, t)
			}
		}
		filled = append(filled, w.block(func() { w.raw(text.Cut("More cautions overleaf: "+strings.Join(topics, ", "), w.wide, "")) })...)
	}
	return append(filled, w.block(func() { w.raw(foot) })...), over
}

// foot is the last line of sheet one.
const foot = "Design estimates, not a rating: local codes and licensed practice decide."

// caution is one, its topic run in.
func (w *writer) caution(c winding.Caution) {
	w.hang("! ", strings.ToUpper(w.clean(c.Topic))+". "+verbatim(w.opt.Units.WordsOfRule(c.Text)))
}
