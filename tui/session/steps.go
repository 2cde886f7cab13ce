package session

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/wiretable"
)

// trialPath is a field of a trial.
func trialPath(i int, field string) string { return job.PathOf("trial", i, field) }

// Choose makes a trial the chosen one, or the nearest there is.
func (s *Session) Choose(i int) { s.Trial = max(0, min(i, len(s.outcome.Trials)-1)) }

// StepTurns adds turns to every coil of the chosen trial.
func (s *Session) StepTurns(by int) {
	t, ok := s.trial()
	if !ok {
		return
	}
	if len(t.CoilTurns) > 0 {
		list := make([]string, len(t.CoilTurns))
		for i, n := range t.CoilTurns {
			list[i] = strconv.Itoa(max(1, n+by))
		}
		s.Edit(s.doc.Set(trialPath(s.Trial, "coil_turns"), strings.Join(list, ", "), s.Units))
		return
	}
	s.set("turns", strconv.Itoa(max(1, t.Turns.Whole()+by)))
}

// StepStrands adds strands in hand.
func (s *Session) StepStrands(by int) {
	t, ok := s.trial()
	switch n := strconv.Itoa(max(1, int(t.Strands.Or(1))+by)); {
	case !ok:
	case s.Full && !t.Gauge.IsZero():
		s.wind(func(t job.Trial) (wiretable.Gauge, int) { return t.Gauge, max(1, int(t.Strands.Or(1))+by) })
	default:
		s.set("strands", n)
	}
}

// Sizes is the gauge system of wire steps and the ladder: the one chosen, else that of the trial's own
// wire, or of the old one where the trial has none yet; millimetres use the sizes of IEC 60317.
func (s *Session) Sizes() wiretable.System { return s.sizesIn(s.Job()) }

func (s *Session) sizesIn(j job.Job) wiretable.System {
	if s.Wires != 0 {
		return s.Wires
	}
	g := j.Old.Gauge
	if s.Trial < len(j.Trials) && !j.Trials[s.Trial].Gauge.IsZero() {
		g = j.Trials[s.Trial].Gauge
	}
	switch g.System() {
	case wiretable.MetricDiameter, wiretable.IEC:
		return wiretable.IEC
	case wiretable.SWG:
		return wiretable.SWG
	}
	return wiretable.AWG
}

// StepWire takes the next wire of the chosen system: thicker for by > 0.
func (s *Session) StepWire(by int) {
	t, ok := s.trial()
	if !ok {
		return
	}
	g := t.Gauge
	if g.IsZero() {
		g, _ = wiretable.Parse("18 AWG")
		g = g.NearestIn(s.Sizes(), t.Build)
		s.set("gauge", g.String())
		return
	}
	if sizes := s.Sizes(); g.System() != sizes {
		if near := g.NearestIn(sizes, t.Build); !near.IsZero() {
			if near.BareMM(t.Build) != g.BareMM(t.Build) {
				s.setGauge(near)
				return
			}
			g = near
		}
	}
	step, more := g.ThickerIn, "thicker"
	if by < 0 {
		step, more = g.ThinnerIn, "thinner"
	}
	next, ok := step(t.Build)
	if !ok {
		s.Say("there is no " + more + " wire in this table")
		return
	}
	s.setGauge(next)
}

// FlipConnection turns star into delta and back.
func (s *Session) FlipConnection() {
	if t, ok := s.trial(); ok {
		next := layout.Delta
		if t.Connection == layout.Delta {
			next = layout.Star
		}
		s.set("connection", next.String())
	}
}

// StepCircuits takes the next number of parallel circuits that the layout allows.
func (s *Session) StepCircuits() {
	t, ok := s.trial()
	if !ok {
		return
	}
	choices := s.outcome.Trials[s.Trial].CircuitChoices
	if len(choices) == 0 {
		s.set("circuits", strconv.Itoa(int(t.Circuits.Or(1))%4+1))
		return
	}
	if len(choices) == 1 {
		s.Say("this layout allows one circuit only")
		return
	}
	next := choices[0]
	for _, c := range choices {
		if c > int(t.Circuits.Or(1)) {
			next = c
			break
		}
	}
	s.set("circuits", strconv.Itoa(next))
}

// StepArea makes the slot larger or smaller, one step of about a hundredth: its area where that was
// measured, else its depth, from which the area follows; with flat coils, which have no slot, the width
// of a coil's side. A tolerance typed with the value stays with it.
func (s *Session) StepArea(by float64) {
	doc := s.doc
	if shaped, _, _, ok := doc.Shaped(); ok { // a file's width × depth, of which only the depth is to grow
		doc = shaped
	}
	j := doc.Job()
	path, now := "slot.area", j.Slot.AreaMM2
	if j.Machine.Stator == job.StatorFlat {
		path, now = "machine.side", j.Machine.SideMM
	} else if j.Slot.Shape != "" && j.Slot.Shape != "area" {
		path, now = "slot.depth", j.Slot.DepthMM
		if !now.Given() {
			s.Say("the slot's area follows from its widths and depth; give the depth on the Machine screen first")
			return
		}
	}
	f, _ := job.InputAt(path)
	text, u, _ := doc.Typed(path)
	if text == "" {
		u = s.Units.For(f.Dim)
	}
	v := u.From(now.Or(50))
	step := math.Pow(10, math.Floor(math.Log10(v))-1) / 2
	s.Edit(doc.Set(path, guessMark(text)+round(v+by*step, step)+spreadOf(text), s.Units))
	if path == "slot.depth" {
		s.Say("the slot's depth, from which its area follows")
	}
}

// spreadOf is the tolerance typed with a value, as typed.
func spreadOf(text string) string {
	for _, sign := range []string{"±", "+/-", "+-"} {
		if _, after, ok := strings.Cut(text, sign); ok {
			return " ±" + strings.TrimSpace(after)
		}
	}
	return ""
}

// StepFill moves the fill limit by hundredths.
func (s *Session) StepFill(by int) {
	v := s.FillLimit() + float64(by)*0.01
	v = math.Round(max(0.10, min(1, v))*100) / 100
	text, _, _ := s.doc.Typed("slot.fill_limit")
	s.Edit(s.doc.Set("slot.fill_limit", guessMark(text)+strconv.FormatFloat(v, 'f', 2, 64)+spreadOf(text), s.Units))
}

// FillLimit is the wire fill that must not be passed: the job's, else its default.
func (s *Session) FillLimit() float64 {
	j := s.Job()
	return j.Slot.FillLimit.Or(job.DefaultOf("slot.fill_limit"))
}

// sayFull says that there is no room for another trial.
func (s *Session) sayFull() {
	s.Say(fmt.Sprintf("there are %d trials already, as many as fit side by side; remove one first", job.MaxTrials))
}

// AddTrial copies the chosen trial under the next free letter.
func (s *Session) AddTrial() {
	n := len(s.outcome.Trials)
	doc := s.doc.Add("trial", s.Trial)
	if n == 0 {
		doc = s.doc.Add("trial", -1)
	}
	if doc.Refused() == "" && doc.Text() == s.doc.Text() {
		s.sayFull()
		return
	}
	if doc.Refused() == "" {
		doc = doc.Set(trialPath(n, "name"), s.freeName(), s.Units)
	}
	if s.Edit(doc); doc.Refused() == "" {
		s.Trial = n
	}
}

// freeName is the first letter that no trial has.
func (s *Session) freeName() string {
	for _, name := range []string{"A", "B", "C", "D", "E"} {
		free := true
		for _, t := range s.outcome.Trials {
			free = free && t.Name != name
		}
		if free {
			return name
		}
	}
	return "F"
}

// RemoveTrial takes the chosen trial out; undo brings it back.
func (s *Session) RemoveTrial() {
	if len(s.outcome.Trials) == 0 {
		return
	}
	name := s.outcome.Trials[s.Trial].Name
	doc := s.doc.Remove("trial", s.Trial)
	if s.Edit(doc); doc.Refused() == "" {
		s.Say("trial " + name + " taken out; undo brings it back")
	}
}

// MakeReference compares the others with the chosen trial.
func (s *Session) MakeReference() {
	if len(s.outcome.Trials) > 0 {
		s.Edit(s.doc.Set("target.reference", s.outcome.Trials[s.Trial].Name, s.Units))
	}
}

func (s *Session) set(field, text string) {
	s.Edit(s.doc.Set(trialPath(s.Trial, field), text, s.Units))
}

func (s *Session) trial() (job.Trial, bool) {
	trials := s.doc.Job().Trials
	if s.Trial >= len(trials) {
		return job.Trial{}, false
	}
	return trials[s.Trial], true
}

// guessMark keeps the mark of a guess through a step.
func guessMark(text string) string {
	if strings.HasPrefix(strings.TrimSpace(text), "~") {
		return "~"
	}
	return ""
}

// round writes a value on the grid of a step.
func round(v, step float64) string {
	decimals := max(0, int(math.Ceil(-math.Log10(step))))
	return strconv.FormatFloat(math.Round(v/step)*step, 'f', decimals, 64)
}
