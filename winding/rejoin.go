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

// # The same coils in another connection
//
// What a person at a bench tries first costs no wire: the coils as they are, in delta instead of star
// or back, or their groups in more or fewer parallel circuits. Volts between leads change by √3 and by
// the circuits, ohms and inductance by the square, so such a winding equals an equally full slot with
// other turns; it is computed like those (fullslot.go) and has to pass the same tests. The connections
// next to the trial's own are tried, both with more and with fewer volts, except that a side ends when
// its first brings less than the trial and less than is asked; a trial that begins too late tries only
// more volts. The best is offered before any new winding, which then has to beat it.
//
// Cost: up to four windings run in the usual condition, only for a trial that needs a mend.

// Joints are how the coils of a phase and the phases are connected.
type Joints struct {
	Connection layout.Connection `json:"connection"`
	// Circuits is the number of parallel circuits of a phase.
	Circuits int `json:"circuits"`
}

// rejoinedEach is how many connections are tried on a side.
const rejoinedEach = 2

// rejoined is the better connection of a trial's own coils; nil where none tried is better.
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
			if brings < before && brings <= least { // it only gets less further on
				break
			}
			before = brings
		}
	}
	return best
}

// joinings are the connections that may be tried, with more volts and with fewer, the nearest first.
func (of offers) joinings(t *job.Trial, o *TrialOutcome, late bool) (sides [2][]Joints) {
	m, coils := of.machine, of.layouts.coils(*t)
	ways := []layout.Connection{t.Connection}
	if m.phases == 3 && !of.dc.starDiodes { // diodes at the star point need a star
		ways = []layout.Connection{layout.Star, layout.Delta}
	}
	type tried struct {
		Joints
		up float64 // log of the ratio of volts
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

// joints are a winding's connections.
func (f *fullSlot) joints() *Joints { return &Joints{f.trial.Connection, f.circuits()} }

// joinedSaid describes the same coils connected differently: what differs from the trial.
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
