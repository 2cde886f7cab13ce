package layout

// Layer is where in its slot a coil side lies.
type Layer string

const (
	// Whole is a side that has its slot to itself.
	Whole Layer = "whole slot"
	// Bottom is away from the bore, laid first: the start side of a lap coil.
	Bottom Layer = "bottom"
	// Top is at the mouth: the finish side.
	Top Layer = "top"
	// ClockwiseHalf and AnticlockwiseHalf are side by side, for coils round one
	// tooth: the start side lies against the tooth clockwise of its slot.
	ClockwiseHalf     Layer = "clockwise half"
	AnticlockwiseHalf Layer = "anticlockwise half"
)

// Side is one coil side in a slot.
type Side struct {
	Coil       int // number
	Set, Phase int
	Turns      int
	// Sign is +1 where the phase's current goes away from the connection end, -1
	// where it comes back.
	Sign  int
	End   End
	Layer Layer
}

// Slot is what lies in slot n (1 to Q), bottom first; nothing for other n.
func (l *Layout) Slot(n int) []Side {
	var sides []Side
	for i := range l.coils {
		c := &l.coils[i]
		if c.Start == n {
			sides = append(sides, Side{c.Number, c.Set, c.Phase, c.Turns, c.Sense, Start, l.layer(c, Start)})
		}
	}
	for i := range l.coils {
		c := &l.coils[i]
		if c.Finish == n {
			sides = append(sides, Side{c.Number, c.Set, c.Phase, c.Turns, -c.Sense, Finish, l.layer(c, Finish)})
		}
	}
	return sides
}

// layer is where a coil's side lies by the usual way of winding.
func (l *Layout) layer(c *Coil, end End) Layer {
	span := wrap(c.Finish-c.Start, l.spec.Slots)
	switch {
	case l.spec.Layers == 1:
		return Whole
	case span == 1 && end == Start, span == l.spec.Slots-1 && end == Finish:
		return ClockwiseHalf
	case span == 1, span == l.spec.Slots-1:
		return AnticlockwiseHalf
	case end == Start:
		return Bottom
	default:
		return Top
	}
}
