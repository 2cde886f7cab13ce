package trials

import (
	"slices"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// calledOut is what the file and the job report about the chosen trial in at most h lines, a sentence
// whole or left out, with a word about those left out; then a caution, and the meaning of the sign of
// held amps. What is wrong in the marked row is shown there, and a message at the foot of the screen is
// not repeated.
func (v *View) calledOut(s *session.Session, w, h int) []string {
	lines, _ := v.callOut(s, w, h)
	return lines
}

// callOut is calledOut, and how many were left out.
func (v *View) callOut(s *session.Session, w, h int) (lines []string, left int) {
	t := s.Theme
	sign := heldLine(s)
	if sign != "" {
		h--
	}
	var said []string
	for _, m := range s.Messages() { // they are at the foot
		said = append(said, m.Text)
	}
	if p, bad := s.Document().ProblemAt(v.inputPath(s)); bad { // the marked row has it
		said = append(said, s.ProblemText(p))
	}
	for _, c := range called(s) {
		if slices.Contains(said, c.text) {
			continue
		}
		more := t.WrapPaint(c.role, t.Mark(c.role)+" "+c.text, w)
		if len(lines)+len(more) > h {
			left++
			continue
		}
		lines = append(lines, more...)
	}
	switch more := furtherCalled(left, w-kit.Width(sign)-2); {
	case left > 0 && sign != "" && h >= 0:
		return append(lines, t.Paint(kit.Hint, sign+"; "+more)), left
	case left > 0 && len(lines) < h:
		return append(lines, t.Paint(kit.Hint, more)), left
	}
	lines = append(lines, caution(s, w, h-len(lines))...)
	if sign != "" && h >= 0 {
		lines = append(lines, t.Paint(kit.Hint, sign+"."))
	}
	return lines, left
}

// furtherCalled says, in w cells, that y shows what did not fit.
func furtherCalled(left, w int) string {
	n, are := "one", "is"
	if left > 1 {
		n, are = quantity.Screen.Number(float64(left), 0), "are"
	}
	if text := "y shows " + n + " more that " + are + " called out"; kit.Width(text) <= w {
		return text
	}
	return "y shows " + n + " more"
}

// call is a finding or a fault of the file.
type call struct {
	role kit.Role
	text string
}

// called is what the file cannot be read for, then the findings, the worst first.
func called(s *session.Session) []call {
	var list, doubts []call
	for _, text := range s.Problems() {
		list = append(list, call{kit.Broken, text})
	}
	for _, f := range findingsOf(s) {
		text := f.Trial + ": " + s.Units.Words(f.Text)
		if f.Fix != "" {
			text += " → " + s.Units.Words(f.Fix)
		}
		if f.First { // whole it is where there is more room: f3, Drive, Machine
			text = s.ReversedShort()
		}
		if f.Severity == winding.Broken {
			list = append(list, call{kit.Broken, text})
		} else {
			doubts = append(doubts, call{kit.Warning, text})
		}
	}
	return append(list, doubts...)
}

// caution is the first that is about the chosen trial or about all, and that fits whole.
func caution(s *session.Session, w, h int) []string {
	for _, c := range s.Outcome().Cautions {
		if len(s.Outcome().Trials) == 0 || c.Trial != "" && c.Trial != s.Outcome().Trials[s.Trial].Name {
			continue
		}
		if lines := s.Theme.WrapPaint(kit.Dim, "Caution: "+s.Units.WordsOfRule(c.Text), w); len(lines) <= h {
			return lines
		}
	}
	return nil
}

// findingsOf are what has to be settled first, then the findings of the chosen trial and those of the job.
func findingsOf(s *session.Session) []winding.Finding {
	if len(s.Outcome().Trials) == 0 {
		return nil
	}
	name := s.Outcome().Trials[s.Trial].Name
	var first, own, rest []winding.Finding
	for _, f := range s.Outcome().Findings {
		switch {
		case f.Severity < winding.Doubt:
		case f.First:
			f.Trial = "job"
			first = append(first, f)
		case f.Trial == name:
			own = append(own, f)
		case f.Trial == "":
			f.Trial = "job"
			rest = append(rest, f)
		}
	}
	return append(append(first, own...), rest...)
}
