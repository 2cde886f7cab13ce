package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// oldWinding is what came out of the slots, in the form of a trial with its coils.
type oldWinding struct {
	job.OldWinding
	candidate
}

// newOld lays the old winding out.
func newOld(o job.OldWinding, l *layouts) oldWinding {
	t := job.Trial{Name: "old", Wound: o.Wound, Connection: o.Connection, Circuits: o.Circuits}
	return oldWinding{o, l.candidate(t)}
}

// known reports whether enough is given to work it out like a trial.
func (o *oldWinding) known() bool {
	return !o.OldWinding.Bundle().IsZero() || o.OldWinding.Turns.Given()
}

// likeCoils reports whether a candidate's turns can be compared with the old ones: both laid out, or
// both known only as ratios.
func (o *oldWinding) likeCoils(c *coilSet) bool { return c.relative == o.coils.relative }

// relativeOhms is a winding's ohms over the old one's where neither is known, from N/(a·s·A) at the
// same mean turn and metal.
func (o *oldWinding) relativeOhms(w *candidate) quantity.Figure {
	t, c := &w.trial, &w.coils
	wire, old := t.Bundle(), o.OldWinding.Bundle()
	if wire.IsZero() || old.IsZero() || c.series <= 0 || o.coils.series <= 0 || !o.likeCoils(c) {
		return quantity.Missing("needs turns and wire, old and new")
	}
	n := c.series / (float64(c.circuits) * wire.AreaMM2(t.Build)) * t.Metal.Resistivity(20)
	p := o.coils.series / (float64(o.coils.circuits) * old.AreaMM2(o.Build)) * o.Metal.Resistivity(20)
	return quantity.Of(n/p, t.Turns.Origin, o.Turns.Origin)
}
