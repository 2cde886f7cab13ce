package layout

// Option is one span that works, with what it gives and costs.
type Option struct {
	Spec Spec
	Span int // slots
	// PitchFraction is the span over the pole pitch.
	PitchFraction float64
	// Factor, Third, Fifth and Seventh are the winding factors of those
	// harmonics.
	Factor, Third, Fifth, Seventh float64
	// EndTurn is the part of the bore circle that a coil's end crosses, 0 to 0.5:
	// what its overhang length goes by.
	EndTurn float64
	// Circuits is every number of parallel circuits allowed.
	Circuits []int
}

// Options is every span up to half the slots (longer ones are the same coils from
// the other side) with which the slots, poles, phases and layers make a layout,
// going up. Empty when there is none; [New] says why.
func Options(slots, poles, phases, layers int) []Option {
	var out []Option
	for span := 1; 2*span <= slots && slots <= MaxSlots; span++ {
		spec := Spec{Slots: slots, Poles: poles, Phases: phases, Layers: layers, Span: span}
		l, err := New(spec)
		if err != nil {
			continue
		}
		out = append(out, Option{
			Spec: l.spec, Span: span,
			PitchFraction: float64(span*poles) / float64(slots),
			Factor:        l.Factor(1), Third: l.Factor(3), Fifth: l.Factor(5), Seventh: l.Factor(7),
			EndTurn:  float64(span) / float64(slots),
			Circuits: l.CircuitChoices(),
		})
	}
	return out
}
