package session

import "strings"

// SwapKey is the key that does it, on every screen.
const SwapKey = "f5"

// Reversed is the question whether the drive is the wrong way round, in words, with the key that turns
// it; "" where nothing asks it.
func (s *Session) Reversed() string {
	q := s.outcome.Reversed
	if q == nil {
		return ""
	}
	return s.Units.Words(q.Text + ". " + strings.ToUpper(q.Check[:1]) + q.Check[1:] + ". " + strings.ToUpper(SwapKey[:1]) + SwapKey[1:] + " swaps it. " + strings.ToUpper(q.Settle[:1]) + q.Settle[1:] + ".")
}

// ReversedShort is the same in a line.
func (s *Session) ReversedShort() string {
	if s.outcome.Reversed == nil {
		return ""
	}
	return "the drive is probably the wrong way round: " + SwapKey + " swaps it, f3 says why"
}

// SwapDrive turns the drive the other way round, where the outcome asks for it: the sizes or the teeth
// of two wheels change places, or the ratio is typed anew. Undo takes it back.
func (s *Session) SwapDrive() {
	q := s.outcome.Reversed
	if q == nil {
		s.Say("nothing asks for the drive to be turned round")
		return
	}
	if q.Ratio != "" {
		text, _, _ := s.doc.Typed(q.Path)
		if s.Edit(s.doc.Set(q.Path, guessMark(text)+q.Ratio, s.Units)); s.doc.Refused() == "" {
			s.Say("the ratio is now " + q.Ratio + "; ctrl+z takes it back")
		}
		return
	}
	other := map[string]string{"drive.driver": "drive.driven", "drive.driver_teeth": "drive.driven_teeth"}[q.Path]
	on, onUnit, _ := s.doc.Typed(q.Path)
	to, toUnit, _ := s.doc.Typed(other)
	doc := s.doc.Set(q.Path, withUnit(to, toUnit.Name), s.Units)
	if doc.Refused() == "" {
		doc = doc.Set(other, withUnit(on, onUnit.Name), s.Units)
	}
	if s.Edit(doc); doc.Refused() == "" {
		s.Say("the drive has " + withUnit(to, toUnit.Name) + ", the alternator " + withUnit(on, onUnit.Name) + "; ctrl+z takes it back")
	}
}

// withUnit is a value as typed with its unit behind it; teeth have none.
func withUnit(text, unit string) string {
	if unit == "" {
		return text
	}
	return text + " " + unit
}
