package curves

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// The sentences: each is made from the outcome's figures alone, "" when they have
// nothing to say.

// beginnings says where each charges from, the battery at rest.
func beginnings(s *session.Session) string {
	known, missing := gather(s, func(t *winding.TrialOutcome) quantity.Figure { return t.CutInRPM })
	text := strings.Replace(list(known, " from "), " from ", " charges from ", 1)
	for _, n := range missing {
		text = join(text, "; ", n.name+": "+n.figure.Why)
	}
	if len(known) > 0 {
		text = "battery at rest: " + text
	}
	return text
}

// gains says from where the battery gets more than the rotor takes; "" with magnets.
func gains(s *session.Session) string {
	known, _ := gather(s, func(t *winding.TrialOutcome) quantity.Figure { return t.BreakEvenRPM })
	if len(known) == 0 {
		return ""
	}
	return "the rotor paid, taking charge: " + strings.Replace(list(known, " from "), " from ", " gains from ", 1)
}

// pair is which of two gives more, above a speed or at every speed (0).
type pair struct {
	more, less string
	above      float64
}

// pairs compares each trial with the reference.
func pairs(s *session.Session) []pair {
	o := s.Outcome()
	if o.Reference >= len(o.Trials) || !hasCurve(&o.Trials[o.Reference]) {
		return nil
	}
	names := letters(s)
	var out []pair
	for i := range o.Trials {
		t := &o.Trials[i]
		if i == o.Reference || !hasCurve(t) {
			continue
		}
		switch above, side := o.Beats(i); side {
		case 1:
			out = append(out, pair{names[i], names[o.Reference], above})
		case -1:
			out = append(out, pair{names[o.Reference], names[i], above})
		}
	}
	slices.SortStableFunc(out, func(a, b pair) int {
		return cmp.Or(strings.Compare(a.more, b.more), cmp.Compare(a.above, b.above))
	})
	return out
}

// crossings says which gives more above the speed at which two cross, or which does throughout.
func crossings(s *session.Session) string {
	text, more := "", ""
	var above, below []string // those that beat the reference throughout, or are beaten
	ref := letters(s)[s.Outcome().Reference]
	for _, p := range pairs(s) {
		switch {
		case p.above == 0 && p.less == ref:
			above = append(above, p.more)
		case p.above == 0:
			below = append(below, p.less)
		case p.more == more:
			text += ", than " + p.less + " above " + rpmText(p.above)
		default:
			more = p.more
			text = join(text, "; ", p.more+" gives more than "+p.less+" above "+rpmText(p.above)+" "+ofAlternator)
		}
	}
	if len(above) > 0 {
		text = join(text, "; ", strings.Join(above, " and ")+verb(above)+ref+" all the way")
	}
	if len(below) > 0 {
		text = join(text, "; ", ref+" gives more than "+strings.Join(below, " and ")+" all the way")
	}
	return text
}

// verb agrees with how many there are.
func verb(names []string) string {
	if len(names) == 1 {
		return " gives more than "
	}
	return " give more than "
}

// limits says from where, and up to where if that ends, each carries more than its current limit, which
// also explains the mark in the table.
func limits(s *session.Session) string {
	known, _ := gather(s, func(t *winding.TrialOutcome) quantity.Figure { return t.LimitRPM })
	if len(known) == 0 {
		return ""
	}
	for i := range known {
		known[i].to = trialOf(s, known[i].name).LimitToRPM
	}
	first := limitName(trialOf(s, known[0].name))
	same := !slices.ContainsFunc(known, func(n named) bool { return limitName(trialOf(s, n.name)) != first })
	if same && first != "" {
		return sentence("over its " + first + " limit: " + list(known, " from "))
	}
	text := ""
	for _, n := range known {
		text = join(text, ", ", fmt.Sprintf("%s by %s", list([]named{n}, " from "), limitName(trialOf(s, n.name))))
	}
	return sentence("over its current limit: " + text)
}

// limitName is the name of a trial's limit without its figures.
func limitName(t *winding.TrialOutcome) string {
	name, _, _ := strings.Cut(t.LimitBy, ",")
	return name
}

// overClass says from where each winding's mean is warmer than its class allows, as far as the curve's
// points show.
func overClass(s *session.Session) string {
	m := &s.Outcome().Machine
	known, _ := gather(s, func(t *winding.TrialOutcome) quantity.Figure {
		over, ok := t.OverClass(m)
		if !ok || !followed(t) {
			return quantity.Figure{}
		}
		return quantity.Of(over.From)
	})
	if len(known) == 0 {
		return ""
	}
	for i := range known {
		over, _ := trialOf(s, known[i].name).OverClass(m)
		known[i].to = over.To
	}
	return sentence("over class " + m.ThermalClass + ", a mean of " + s.Text(m.MeanLimitC, quantity.Celsius, 3) + ": " + list(known, " from about "))
}

// trialOf is the trial with a letter.
func trialOf(s *session.Session, letter string) *winding.TrialOutcome {
	i := slices.Index(letters(s), letter)
	return &s.Outcome().Trials[i]
}

// wanted says where each gives the amps wanted.
func wanted(s *session.Session) string {
	amps := s.Job().Target.Amps
	if !amps.Given() {
		return ""
	}
	known, missing := gather(s, func(t *winding.TrialOutcome) quantity.Figure { return t.TargetRPM })
	text := list(known, " at ")
	for _, n := range missing {
		text = join(text, ", ", n.name+" not in this range")
	}
	if text == "" {
		return ""
	}
	return "The " + quantity.Screen.Number(amps.Value, 2) + " A wanted: " + sentence(text)
}

// best says where each trial's efficiency is highest, as far as the curve's points show.
func best(s *session.Session) string {
	text := ""
	for i := range s.Outcome().Trials {
		t := &s.Outcome().Trials[i]
		if !hasCurve(t) {
			continue
		}
		if top, ok := t.MostEfficient(); ok {
			q := quantities[ofEfficiency]
			text = join(text, ", ", fmt.Sprintf("%s %s %% near %s alternator rpm", letters(s)[i], quantity.Screen.Number(q.value(s, top), 2), quantity.Screen.Number(top.RPM, 2)))
		}
	}
	if text == "" {
		return ""
	}
	return sentence("best efficiency: " + text)
}

// warmth says how warm each gets when held at the top speed, and what its class allows.
func warmth(s *session.Session) string {
	m := &s.Outcome().Machine
	if !m.TopRPM.Known() {
		return ""
	}
	text, why := "", ""
	for i, name := range letters(s) {
		t := &s.Outcome().Trials[i]
		p, ok := pointAt(s, i, m.TopRPM.Value)
		switch {
		case !ok:
		case !followed(t):
			why = t.HotTopC.Why
		case p.TooHot:
			text = join(text, ", ", name+" without end")
		default:
			text = join(text, ", ", name+" "+s.Text(quantity.Figure{Value: p.WindingC, Origin: quantity.Derived}, quantity.Celsius, 3))
		}
	}
	switch {
	case text == "" && why != "":
		return sentence("winding temperature: " + why)
	case text == "":
		return ""
	}
	return fmt.Sprintf("Winding held at the top speed: %s; class %s allows a mean of %s.", text, m.ThermalClass, s.Text(m.MeanLimitC, quantity.Celsius, 3))
}

// runs says where drive and alternator balance in the usual condition.
func runs(s *session.Session) string {
	condition := s.Outcome().Machine.Condition(winding.UsualCondition)
	if s.Job().Drive.Kind == "" || condition == nil {
		return ""
	}
	known, _ := gather(s, func(t *winding.TrialOutcome) quantity.Figure { return t.RunsUsual })
	if len(known) == 0 {
		return ""
	}
	return "Where each really runs, " + s.Units.Words(condition.Label) + ": " + sentence(list(known, " at "))
}

// runaway names the trials that find no steady temperature, and from where.
func runaway(s *session.Session) string {
	text := ""
	for i := range s.Outcome().Trials {
		t := &s.Outcome().Trials[i]
		if r, ok := t.NeverSteady(); ok {
			text = join(text, ", ", list([]named{{letters(s)[i], quantity.Of(r.From), r.To}}, " from about "))
		}
	}
	if text == "" {
		return ""
	}
	return sentence(strings.TrimPrefix(s.Units.Words(winding.Burnt), "it ") + ": " + text)
}
