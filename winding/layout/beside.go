package layout

import "math"

// Beside reports whether the two coil sides of a slot lie side by side, each against its own tooth: two
// layers, and every coil round one tooth. Otherwise one lies over the other, or has the slot to itself.
func (l *Layout) Beside() bool {
	if l.spec.Layers != 2 {
		return false
	}
	for i := range l.coils {
		span := wrap(l.coils[i].Finish-l.coils[i].Start, l.spec.Slots)
		if span != 1 && span != l.spec.Slots-1 {
			return false
		}
	}
	return true
}

// SidesText explains the words for the sides of a slot, as a sentence.
func (l *Layout) SidesText() string {
	if l.Beside() {
		return "Two coils lie side by side in a slot, each against its own tooth: the clockwise half against the tooth clockwise of the slot, the anticlockwise half against the other."
	}
	return "Bottom is laid first, top lies at the mouth."
}

// phaseLag is the electrical angle, in radians, by which a phase's current lags that of
// phase U of set 1 when the rotor turns clockwise.
func (s Spec) phaseLag(set, phase int) float64 {
	return (s.phaseStepDeg()*float64(phase) + 30*float64(set)) * math.Pi / 180
}

// LagRad is the electrical angle, in radians, by which the current of a coil's phase lags
// that of phase U of set 1 when the rotor turns clockwise.
func (l *Layout) LagRad(c Coil) float64 { return l.spec.phaseLag(c.Set, c.Phase) }

// phaseStepDeg is the electrical angle from a phase to the next.
func (s Spec) phaseStepDeg() float64 {
	if s.Phases == 2 {
		return 90
	}
	return 120
}

// Together is the mean, over the slots that hold two coil sides, of the cosine between their currents
// at balanced load: 1 where both always belong to one phase in the same direction, as in a full-pitch
// winding, less where they belong to two phases. The leakage flux that one side links with the other
// scales with it. 1 where no slot holds two. For three-phase windings with 60 degree belts it is 1 -
// 3ε/2 with the pitch short by the fraction ε of a pole (Pyrhönen et al., Design of Rotating Electrical
// Machines, ch. 4, from memory).
func (l *Layout) Together() float64 {
	sum, n := 0.0, 0
	lying := make([][]Side, l.spec.Slots)
	for i := range l.coils {
		if c := &l.coils[i]; c.Turns > 0 {
			lying[c.Start-1] = append(lying[c.Start-1], Side{Set: c.Set, Phase: c.Phase, Sign: c.Sense})
			lying[c.Finish-1] = append(lying[c.Finish-1], Side{Set: c.Set, Phase: c.Phase, Sign: -c.Sense})
		}
	}
	for _, sides := range lying {
		if len(sides) == 2 {
			a, b := sides[0], sides[1]
			sum += float64(a.Sign*b.Sign) * math.Cos(l.spec.phaseLag(a.Set, a.Phase)-l.spec.phaseLag(b.Set, b.Phase))
			n++
		}
	}
	if n == 0 {
		return 1
	}
	return sum / float64(n)
}
