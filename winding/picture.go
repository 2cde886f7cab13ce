package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/slot"
)

// Job is the job that was prepared.
func (b *Bench) Job() job.Job { return b.job }

// Picture is the slot with a trial's wires in it, to scale; why says why there is none.
func (b *Bench) Picture(trial int) (picture slot.Packing, why string) {
	if trial < 0 || trial >= len(b.job.Trials) {
		return picture, "there is no such trial"
	}
	t := b.job.Trials[trial]
	layers := b.keyOf(t).layers
	switch c := b.coils(t); {
	case b.roomWhy[layers-1] != "":
		return picture, b.roomWhy[layers-1]
	case t.Bundle().IsZero():
		return picture, "needs the wire"
	default:
		return slot.Pack(b.rooms[layers-1], slotWires(t.Wound), int(c.slotTurns), layers), ""
	}
}

// Plan is a trial's layout with its turns and circuits, for drawing and winding; why
// says why there is none.
func (b *Bench) Plan(trial int) (plan *layout.Layout, why string) {
	if trial < 0 || trial >= len(b.job.Trials) {
		return nil, "there is no such trial"
	}
	return b.wired(b.job.Trials[trial])
}
