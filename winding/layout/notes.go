package layout

import (
	"fmt"
	"math/cmplx"
)

// Note is a remark that the slot and pole numbers, or the coil list, call for.
type Note struct {
	Topic   string `json:"topic"` // "cogging", "pull", "subharmonics", "third harmonic", "factor", "balance", "one phase"
	Text    string `json:"text"`
	Source  string `json:"source"`  // where it comes from; "from memory" when not looked up
	Caution bool   `json:"caution"` // true when it should affect the choice
}

// The topics that depend on the rotor and on the connection.
const (
	Cogging       = "cogging"
	ThirdHarmonic = "third harmonic"
)

const (
	sourceCogging = "Zhu and Howe, Influence of design parameters on cogging torque in permanent magnet machines, IEEE Trans. Energy Conversion 15(4), 2000, 407-412, from memory"
	sourcePull    = "Zhu, Ishak, Howe and Chen, Unbalanced magnetic forces in permanent-magnet brushless machines with diametrically asymmetric phase windings, IEEE Trans. Ind. Appl. 43(6), 2007, 1544-1553, from memory"
	sourceMMF     = "El-Refaie, Fractional-slot concentrated-windings synchronous permanent magnet machines, IEEE Trans. Ind. Electron. 57(1), 2010, 107-121, from memory"
	sourceList    = "computed from the coil list"
)

// Limits above which a note is given; common practice, no source.
const (
	subharmonicShare = 0.05 // of the working wave
	thirdInDelta     = 0.05 // kw3
	weakFactor       = 0.80 // kw1
)

// Notes is what to know of this layout before winding it: cogging, magnetic pull,
// field waves longer than the pole pitch, triple harmonics in delta, a weak winding
// factor, phases out of balance. Each says where it is from.
func (l *Layout) Notes() []Note {
	notes := []Note{l.coggingNote()}
	for _, note := range [...]func() (Note, bool){
		l.pullNote, l.subharmonicNote, l.thirdNote, l.factorNote, l.onePhaseNote, l.balanceNote,
	} {
		if n, ok := note(); ok {
			notes = append(notes, n)
		}
	}
	return notes
}

// CoggingPerTurn is the number of cogging pulses per revolution: lcm(Q, 2p). Source: Zhu and Howe, IEEE
// Trans. Energy Conversion 15(4), 2000, 407-412, from memory.
func (l *Layout) CoggingPerTurn() int { return lcm(l.spec.Slots, l.spec.Poles) }

// CoggingIndex is 2p·Q/lcm(Q, 2p) = gcd(Q, 2p), from 1: the higher, the rougher the shaft turns past
// its magnets. Source as for [Layout.CoggingPerTurn].
func (l *Layout) CoggingIndex() int { return gcd(l.spec.Slots, l.spec.Poles) }

// coggingNote grades by whether all poles (or all slots) pull together.
func (l *Layout) coggingNote() Note {
	q, poles := l.spec.Slots, l.spec.Poles
	n := Note{Topic: Cogging, Source: sourceCogging}
	n.Text = fmt.Sprintf("with magnets: %d cogging pulses a turn, %s of a pole and a slot at once; one is smoothest",
		l.CoggingPerTurn(), pairs(l.CoggingIndex()))
	if l.CoggingIndex() == min(q, poles) {
		n.Caution = true
		n.Text += "; all poles pull at once, so it starts hard in a light wind unless the slots or magnets are skewed"
	}
	return n
}

// pairs counts them: "one pair", "12 pairs".
func pairs(n int) string {
	if n == 1 {
		return "one pair"
	}
	return fmt.Sprintf("%d pairs", n)
}

// pullNote is for windings and cores without rotational symmetry.
func (l *Layout) pullNote() (Note, bool) {
	if l.Symmetry() > 1 {
		return Note{}, false
	}
	n := Note{Topic: "pull", Source: sourcePull, Caution: true,
		Text: "under load the winding pulls the rotor to one side, turning with it: its coils do not repeat round the machine; it loads the bearings and hums"}
	if l.CoggingIndex() == 1 {
		n.Text += "; with magnets some of the pull is there unloaded too, for no two poles stand alike to the slots"
	}
	return n, true
}

// Symmetry is how many times the winding repeats in one revolution round the machine, from 1; a repeat
// with every current reversed counts, since it pulls on iron the same way. 1 means the magnetic pull of
// the loaded winding need not cancel.
func (l *Layout) Symmetry() int {
	g := gcd(l.spec.Slots, l.spec.Poles)
	sense := make(map[Coil]int, len(l.coils))
	for _, c := range l.coils {
		sense[alike(c)] = c.Sense
	}
	for r := g; r > 1; r-- {
		if g%r == 0 && l.repeats(l.spec.Slots/r, sense) {
			return r
		}
	}
	return 1
}

// alike is a coil reduced to what a repeat of it must keep.
func alike(c Coil) Coil {
	return Coil{Start: c.Start, Finish: c.Finish, Turns: c.Turns, Phase: c.Phase, Set: c.Set}
}

// repeats reports whether every coil has a counterpart steps slots on, all with the same sense or all
// with the opposite one.
func (l *Layout) repeats(steps int, sense map[Coil]int) bool {
	flip := 0
	for _, c := range l.coils {
		c.Start = (c.Start+steps-1)%l.spec.Slots + 1
		c.Finish = (c.Finish+steps-1)%l.spec.Slots + 1
		there, ok := sense[alike(c)]
		if !ok || (flip != 0 && there*c.Sense != flip) {
			return false
		}
		flip = there * c.Sense
	}
	return true
}

// subharmonicNote looks for waves of the armature field longer than a pole pair.
func (l *Layout) subharmonicNote() (Note, bool) {
	p := l.spec.pairs()
	work := l.wave(p)
	if work == 0 || p == 1 {
		return Note{}, false
	}
	worst, at := 0.0, 0
	for h := 1; h < p; h++ {
		if w := l.wave(h) / work; w > worst+1e-9 {
			worst, at = w, h
		}
	}
	if worst < subharmonicShare {
		return Note{}, false
	}
	return Note{Topic: "subharmonics", Source: sourceMMF, Caution: worst > 0.5,
		Text: fmt.Sprintf("the loaded winding also makes field waves longer than a pole pair, the largest of %d pole pairs at %.0f %% of the working wave of %d: more inductance, and heat in solid rotor iron and magnets", at, 100*worst, p)}, true
}

// wave is the amplitude of the gap field wave with h pole pairs round the machine for balanced
// currents, the larger of its forward and backward parts, on a common scale.
func (l *Layout) wave(h int) float64 {
	var forward, backward complex128
	for i := range l.coils {
		c := &l.coils[i]
		sides := unit(h*(c.Start-1), l.spec.Slots) - unit(h*(c.Finish-1), l.spec.Slots)
		sides *= complex(float64(c.Turns*c.Sense), 0)
		lag := cmplx.Rect(1, l.spec.phaseLag(c.Set, c.Phase))
		forward += sides * cmplx.Conj(lag)
		backward += sides * lag
	}
	return max(cmplx.Abs(forward), cmplx.Abs(backward)) / float64(h)
}

// thirdNote warns of circulating currents in a delta.
func (l *Layout) thirdNote() (Note, bool) {
	k3 := l.Factor(3)
	if l.spec.Phases != 3 || k3 < thirdInDelta {
		return Note{}, false
	}
	return Note{Topic: ThirdHarmonic, Source: sourceList, Caution: k3 > l.Factor(1)/2,
		Text: fmt.Sprintf("factor %.4f: in delta the third harmonic of the field drives a current round the three phases even unloaded; star has no path for it. In star with the star point left alone it does no harm", k3)}, true
}

// factorNote is for spans that waste turns.
func (l *Layout) factorNote() (Note, bool) {
	k := l.Factor(1)
	if k >= weakFactor {
		return Note{}, false
	}
	return Note{Topic: "factor", Source: sourceList, Caution: true,
		Text: fmt.Sprintf("winding factor %.4f: %.0f %% of every turn's wire makes no voltage; the pole pitch is %.4g slots, the span %d", k, 100*(1-k), float64(l.spec.Slots)/float64(l.spec.Poles), l.spec.Span)}, true
}

// onePhaseNote compares all slots wound with two thirds of them.
func (l *Layout) onePhaseNote() (Note, bool) {
	if l.spec.Phases != 1 || l.spec.TwoThirds || l.found {
		return Note{}, false
	}
	spec := l.spec
	spec.TwoThirds = true
	less, err := New(spec)
	if err != nil {
		return Note{}, false
	}
	volts := less.Factor(1) * float64(len(less.coils)) / (l.Factor(1) * float64(len(l.coils)))
	return Note{Topic: "one phase", Source: sourceList,
		Text: fmt.Sprintf("wound in two thirds of the coils the phase would give %.0f %% of the voltage with 67 %% of the wire, and no third harmonic", 100*volts)}, true
}

// balanceNote is for lists that do not balance.
func (l *Layout) balanceNote() (Note, bool) {
	b := l.Balance()
	if b.Equal {
		return Note{}, false
	}
	return Note{Topic: "balance", Source: sourceList, Caution: true,
		Text: fmt.Sprintf("phases differ by up to %.2g %% in voltage and %.2g degrees in angle, circuits of a phase by %.2g %%", b.WorstSizePercent, b.WorstAngleDeg, b.WorstCircuitPercent)}, true
}
