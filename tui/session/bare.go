package session

import (
	"fmt"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// BareWire says, for a bare number given for a wire, which gauge it is taken for. Where sizes other
// than AWG are in use it asks; said is "" for anything else.
func (s *Session) BareWire(path, text string) (said string, asks bool) {
	n := strings.TrimSpace(text)
	if in, ok := job.InputAt(path); !ok || in.Kind != job.Wire || n == "" || strings.Trim(n, "0123456789") != "" {
		return "", false
	}
	if s.sizesBefore(path) != wiretable.AWG {
		return fmt.Sprintf("%s of which sizes? Write %s AWG, %s SWG, %s mm (bare) or %s mm over (the enamel)", n, n, n, n, n), true
	}
	g, err := wiretable.Parse(n)
	if err != nil {
		return err.Error(), false
	}
	mm := quantity.Of(g.BareMM(wiretable.Heavy))
	return n + " = " + g.String() + ", bare " + s.Text(mm, quantity.Millimetres, 3), false
}

// sizesBefore is the system in use for a wire, whatever is being typed into its own field now.
func (s *Session) sizesBefore(path string) wiretable.System {
	if s.BeingTyped() != path {
		return s.Sizes()
	}
	return s.sizesIn(s.doc.Set(path, s.SaidBefore(), quantity.Choice{}).Job())
}
