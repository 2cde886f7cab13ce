package winding

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// # The same coils joined otherwise
//
// What a person at a bench tries first costs no wire: the coils as they are, in delta in place of star or
// back, or their groups in more or fewer parallel circuits. Volts between leads go with 1 or √3 over the
// circuits, ohms and inductance with the square, so such a winding is that of a slot as full with other
// turns; it is worked out like those (fullslot.go) and has to stand all that they have to. The joinings
// next to a trial's own, on the side of more volts and on that of fewer, are tried, unless the first on a
// side brings less than the trial and less than is asked; only those of more where it begins too late. What
// brings the most is told before any new winding, which then has to bring more than it.
//
// Cost: up to four windings run in the usual condition, only for a trial that is to be mended.

// Joints are how the coils of a phase and the phases are joined.
type Joints struct {
	Connection layout.Connection `json:"connection"`
	// Circuits is how many of them are in parallel in a phase.
	Circuits int `json:"circuits"`
}

// rejoinedEach is how many joinings are tried on a side.
const rejoinedEach = 2

// rejoined is the joining of a trial's own coils that does better; nil where none that was tried does.
func (of offers) rejoined(t job.Trial, o *TrialOutcome, least float64, late bool) (best *fullSlot) {
	if o.CannotBeWound() != "" {
		return nil
	}
	for _, side := range of.joinings(&t, o, late) {
		before := of.present(o)
		for _, j := range side {
			again := t
			again.Connection, again.Circuits = j.Connection, quantity.Known(float64(j.Circuits))
			f := new(fullSlot)
			f.filled.Do(func() { of.wind(f, again) })
			brings := of.brings(f)
			if brings > least && f.net > 0 && of.holds(f) {
				best, least = f, brings
			}
			if brings < before && brings <= least { // further the same way it is less yet
				break
			}
			before = brings
		}
	}
	return best
}

// joinings are those that may be tried, of more volts and of fewer, the nearest first.
func (of offers) joinings(t *job.Trial, o *TrialOutcome, late bool) (sides [2][]Joints) {
	m, coils := of.machine, of.layouts.coils(*t)
	ways := []layout.Connection{t.Connection}
	if m.phases == 3 && !of.dc.starDiodes { // diodes at the star point need one
		ways = []layout.Connection{layout.Star, layout.Delta}
	}
	type tried struct {
		Joints
		up float64 // the log of how many times the volts
	}
	var more, fewer []tried
	for _, c := range ways {
		for _, a := range coils.choices {
			up := math.Log(m.linePerPhase(c) / m.linePerPhase(t.Connection) * float64(coils.circuits) / float64(a))
			switch j := (tried{Joints{c, a}, up}); {
			case up > 1e-9:
				more = append(more, j)
			case up < -1e-9 && !late:
				fewer = append(fewer, j)
			}
		}
	}
	for i, side := range [...][]tried{more, fewer} {
		slices.SortFunc(side, func(a, b tried) int { return cmp.Compare(math.Abs(a.up), math.Abs(b.up)) })
		for _, j := range side[:min(len(side), rejoinedEach)] {
			sides[i] = append(sides[i], j.Joints)
		}
	}
	return sides
}

// joints are those of a winding.
func (f *fullSlot) joints() *Joints { return &Joints{f.trial.Connection, f.circuits()} }

// joinedSaid is the same coils joined otherwise, in words: what is other than in the trial.
func joinedSaid(f *fullSlot, t *job.Trial, circuits int) string {
	text := "the same coils"
	if f.trial.Connection != t.Connection {
		text += " in " + f.trial.Connection.String()
	}
	switch a := f.circuits(); {
	case a == circuits:
	case a == 1:
		text += ", all of a phase in series"
	default:
		text += fmt.Sprintf(", in %d parallel circuits", a)
	}
	return text
}
