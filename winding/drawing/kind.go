package drawing

import (
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// kind is the stator's position relative to its rotor, and so from where its winding is viewed.
type kind int

const (
	// within: the rotor turns in the bore, where the slots open.
	within kind = iota
	// outside: the rotor turns round the stator, whose slots open outwards.
	outside
	// flat: ironless coils in a ring, between magnets on both sides.
	flat
)

// kind is that of the job's stator.
func (a *artist) kind() kind {
	m := a.b.Job().Machine
	switch {
	case m.Stator == job.StatorFlat:
		return flat
	case m.Rotor == job.RotorOutside:
		return outside
	}
	return within
}

// place is what the numbers count: slots, or the gaps between flat coils.
func (k kind) place() string {
	if k == flat {
		return "gap"
	}
	return "slot"
}

// places is all of them, in words.
func (k kind) places() string {
	if k == flat {
		return "gaps between coils"
	}
	return "slots"
}

// some is a number of slots or gaps.
func (k kind) some(n string) string {
	if n == "1" {
		return "1 " + k.place()
	}
	return n + " " + k.place() + "s"
}

// seen says from where the unrolled winding is viewed.
func (k kind) seen() string {
	switch k {
	case outside:
		return "Seen from outside, where the rotor turns, connection end at the top: numbers rise to the left."
	case flat:
		return "The ring seen on its face, cut open, its rim with the leads at the top."
	}
	return "Seen from the bore, connection end at the top."
}

// slotReadings are the readings of the slot, or of the gap between the holes of flat coils, which is
// two sides wide.
func (a *artist) slotReadings() (depth, top, bottom, mouth, mouthHigh quantity.Reading) {
	j := a.b.Job()
	if s, m := &j.Slot, &j.Machine; a.kind() != flat {
		return s.DepthMM, s.TopMM, s.BottomMM, s.MouthMM, s.MouthHeightMM
	} else if top = m.SideMM; top.Given() {
		top.Value, top.PlusMinus = 2*top.Value, 2*top.PlusMinus
	}
	return j.Machine.ThickMM, top, quantity.Reading{}, quantity.Reading{}, quantity.Reading{}
}
