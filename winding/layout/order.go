package layout

import (
	"fmt"
	"strings"
)

// Step is one coil to wind, in the order of winding.
type Step struct {
	Number     int // from 1
	Coil       int
	Set, Phase int
	Name       string // phase, as in leads: U or 1U
	Group      int
	Circuit    int // from 1
	// Circuits is how many the phase has: a sentence names the circuit when
	// there is more than one.
	Circuits int
	// From and To are the slots in which the wire goes in and comes back, in the direction of the
	// phase's current.
	From, To int
	// Clockwise, as seen from the connection end, is the direction from From to To, the short way
	// round.
	Clockwise bool
	Turns     int
	// Wave says that the turns are laid one at a time, each going on round the machine through the
	// coils of Round, rather than all in one place.
	Wave  bool
	Round int
	// Lead is the name of the lead that begins here (U1), "" when none does.
	Lead string
	// Leave is the end at which the phase comes out of the coil. Next is the end it is joined to; when
	// EndLead is not "" it is that lead (U2) instead.
	Leave, Next EndRef
	EndLead     string
}

// WindingOrder is every coil in the order of winding: set by set, phase by phase,
// circuit by circuit along the wire. It is the same for star and delta; for the
// joints of the leads see [Layout.Wiring].
func (l *Layout) WindingOrder() []Step {
	steps := make([]Step, 0, len(l.coils))
	l.eachPath(func(set, phase, circuit int, coils []Coil) {
		name := l.PhaseName(set, phase)
		for n, c := range coils {
			enter, leave := c.ends()
			ahead := wrap(leave.Slot-enter.Slot, l.spec.Slots)
			step := Step{
				Number: len(steps) + 1, Coil: c.Number, Set: set, Phase: phase, Name: name,
				Group: c.Group, Circuit: circuit, Circuits: l.circuits,
				From: enter.Slot, To: leave.Slot, Clockwise: 2*ahead <= l.spec.Slots,
				Turns: c.Turns, Leave: leave,
			}
			if l.spec.Kind == Wave {
				step.Wave, step.Round = true, l.roundLength(coils, n)
			}
			if n == 0 {
				step.Lead = name + "1"
			}
			if n == len(coils)-1 {
				step.EndLead = name + "2"
			} else {
				step.Next, _ = coils[n+1].ends()
			}
			steps = append(steps, step)
		}
	})
	return steps
}

// roundLength is the number of coils of a wave in the round that holds coil n: a round ends where the
// next coil does not lie further on.
func (l *Layout) roundLength(coils []Coil, n int) int {
	first, last := n, n
	for first > 0 && coils[first-1].Start < coils[first].Start {
		first--
	}
	for last+1 < len(coils) && coils[last+1].Start > coils[last].Start {
		last++
	}
	return last - first + 1
}

// String is the step as a sentence, without a full stop: "U1 begins: coil 1, from
// slot 1 up to slot 4, clockwise, 11 turns, join its finish to the start of coil 7
// (slot 7)".
func (s Step) String() string {
	var b strings.Builder
	if s.Lead != "" {
		fmt.Fprintf(&b, "%s begins", s.Lead)
		if s.Circuits > 1 {
			fmt.Fprintf(&b, " (circuit %d of %d)", s.Circuit, s.Circuits)
		}
		b.WriteString(": ")
	}
	fmt.Fprintf(&b, "coil %d, from slot %d %s slot %d, ", s.Coil, s.From, s.way(), s.To)
	if s.Clockwise {
		b.WriteString("clockwise, ")
	} else {
		b.WriteString("anticlockwise, ")
	}
	switch {
	case s.Wave && s.Round > 1 && s.Turns > 1:
		fmt.Fprintf(&b, "1 turn each time round the %d coils of this round, %d times, ", s.Round, s.Turns)
	case s.Turns == 1:
		b.WriteString("1 turn, ")
	default:
		fmt.Fprintf(&b, "%d turns, ", s.Turns)
	}
	switch {
	case s.EndLead != "":
		fmt.Fprintf(&b, "its %s is %s", s.Leave.End, s.EndLead)
	case s.Wave:
		fmt.Fprintf(&b, "run on to the %s", s.Next)
	default:
		fmt.Fprintf(&b, "join its %s to the %s", s.Leave.End, s.Next)
	}
	return b.String()
}

// way says how to go from slot to slot, also where the numbers wrap.
func (s Step) way() string {
	switch {
	case s.Clockwise && s.To > s.From:
		return "up to"
	case s.Clockwise:
		return "up past the last slot to"
	case s.To < s.From:
		return "down to"
	default:
		return "down past slot 1 to"
	}
}
