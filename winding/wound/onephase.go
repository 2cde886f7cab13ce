package wound

import (
	"fmt"
	"math"
	"math/cmplx"
	"slices"
	"strings"

	"slotwright/winding/layout"
)

// # A fault in one phase
//
// A phase with k times the others' ohms gives, relative to a sound winding: in a star, two pairs of (1
// + k)/2 and one of 1; in a delta, one pair of 3k/(2 + k) and two of 3(1 + k)/(2(2 + k)); in a delta
// with the phase open, one of 3 and two of 1.5, and its volts unchanged.
//
// Volts of a star between two leads are the difference of two phases' phasors, each the sum of its
// coils' (package layout). A reversed coil subtracts its own phasor twice, one shorted or left out
// once:
//
//	E' = E − 2·e    E' = E − e
//
// Where all n coils of a phase are in step, m reversed coils leave k = 1 − 2m/n of it, and the two
// pairs that contain it have √(1 + k + k²)/√3 of the third: one of 6 0.839, two of 6 0.694, a whole
// phase 1/√3. Where a phase is spread over several slots per pole its coils are not in step, and the
// two pairs differ by which side of the middle the coil lies on: this tells which coil it is, up to
// those in equal positions.
//
// One coil of n shorted or left out in a delta leaves k = 1 − 1/n of the phase. A current then
// circulates; with ohms and reactance of the phase taken to go by its turns, the pair across it has
// 3k/(2 + k), the others √(1 + x + x²) where x = (k − 1)/(2 + k). A reversed coil in a delta or in one
// of several parallel circuits is in loops.go.
//
// Pairs are compared by their pattern, that is by their ratios, on which speed, field and magnets have
// no effect. Their common deviation is reported separately, up to [offTogether].

// onePhase is the factor that a fault puts on the planned ohms and volts of each pair, U-V, V-W and
// W-U, where it is in this phase.
type onePhase struct {
	phase       int
	ohms, volts [3]float64
	// around are the patterns of volts that count as this one, where their exact shape is not known; none
	// otherwise.
	around [][3]float64
	// told is the fault, with {phase} for the phase's name, {pairs} for its pairs' readings and {across} for the pair
	// across it in a delta.
	told string
}

// pairsAlike is the pattern of a fault that leaves the pairs equal.
var pairsAlike = [3]float64{1, 1, 1}

// onePhase: a strand, a circuit or everything open in one phase.
func (f *faultsOf) onePhase() {
	if f.Phases != 3 {
		return
	}
	open := func(what string, n int) {
		if n > 1 {
			of := fmt.Sprintf("1 %s of %d open in ", what, n)
			f.inOnePhase(func(phase int) onePhase {
				return onePhase{phase: phase, ohms: f.eachOhms(float64(n)/float64(n-1), phase), volts: pairsAlike, told: of + "phase {phase}"}
			}, of+"one phase: the pairs are unlike")
		}
	}
	open("strand", f.Trial.Bundle().Count())
	open("circuit", f.Circuits)
	if f.Trial.Connection == layout.Delta {
		f.inOnePhase(func(phase int) onePhase {
			return onePhase{phase: phase, ohms: f.eachOhms(math.Inf(1), phase), volts: pairsAlike, told: "phase {phase} of the delta open: the pair across it reads twice the others"}
		}, "one phase of the delta open: one pair reads twice the others")
	}
}

// inOnePhase adds a fault for each of the three phases that it may be in; generic is its name where
// only the mean of the pairs is known. Charging begins by the pair with the most volts.
func (f *faultsOf) inOnePhase(of func(phase int) onePhase, generic string) {
	for phase := range 3 {
		one := of(phase)
		mean := func(each [3]float64) float64 { return (each[0] + each[1] + each[2]) / 3 }
		f.beginning(mean(one.ohms), mean(one.volts), 1/slices.Max(one.volts[:]), "%s", generic)
		f.list[len(f.list)-1].one = &one
	}
}

// eachOhms is the pairs where one phase has k times the ohms of the others, relative to equal phases.
func (f *faultsOf) eachOhms(k float64, phase int) [3]float64 {
	switch {
	case f.Trial.Connection != layout.Delta:
		return turnedTo(phase, (1+k)/2, 1, (1+k)/2)
	case math.IsInf(k, 1):
		return turnedTo(phase, 3, 1.5, 1.5)
	}
	two := 3 * (1 + k) / (2 * (2 + k))
	return turnedTo(phase, 3*k/(2+k), two, two)
}

// turnedTo rotates three pairs given for phase U (U-V, V-W and W-U) to another phase.
func turnedTo(phase int, uv, vw, wu float64) (each [3]float64) {
	for i, v := range [3]float64{uv, vw, wu} {
		each[(i+phase)%3] = v
	}
	return each
}

// oneCoil: a coil of one phase shorted or left out.
func (f *faultsOf) oneCoil() {
	n := f.perCircuit()
	if f.Phases != 3 || f.Circuits != 1 || n < 2 || len(f.Trial.CoilTurns) > 0 {
		return
	}
	k := 1 - 1/float64(n)
	told := fmt.Sprintf("one coil of %d of phase {phase} shorted or left out", n)
	generic := fmt.Sprintf("one coil of %d shorted or left out in one phase", n)
	if f.Trial.Connection == layout.Delta {
		x := (k - 1) / (2 + k)
		two := math.Sqrt(1 + x + x*x)
		f.inOnePhase(func(phase int) onePhase {
			return onePhase{phase: phase, ohms: f.eachOhms(k, phase), volts: turnedTo(phase, 3*k/(2+k), two, two), told: told}
		}, generic)
		return
	}
	for _, class := range f.classes(0) {
		f.inOnePhase(func(phase int) onePhase {
			return onePhase{phase: phase, ohms: f.eachOhms(k, phase), volts: f.eachVolts(phase, class.part), told: told + f.slots(phase, class)}
		}, generic)
	}
}

// turned: coils or a phase of a star reversed.
func (f *faultsOf) turned() {
	n := f.perCircuit()
	if all := n * f.Circuits; f.Phases == 1 && len(f.Trial.CoilTurns) == 0 && all > 2 { // of circuits in parallel too (loops.go)
		f.add(1, 1-2/float64(all), "one coil of %d turned round", all)
	}
	if f.Phases != 3 || f.Trial.Connection == layout.Delta || f.Circuits != 1 || len(f.Trial.CoilTurns) > 0 || n < 2 {
		return
	}
	turn := func(part complex128, what string, slots func(phase int) string) {
		f.inOnePhase(func(phase int) onePhase {
			return onePhase{phase: phase, ohms: pairsAlike, volts: f.eachVolts(phase, 2*part), told: what + " of phase {phase} turned round" + slots(phase) + ": {pairs}"}
		}, what+" turned round in one phase: two pairs read low")
	}
	list := f.classes(0)
	for i, a := range list {
		if n > 2 {
			turn(a.part, fmt.Sprintf("one coil of %d", n), func(phase int) string { return f.slots(phase, a) })
		}
		for k, b := range list[:i+1] {
			if n > 4 && (i != k || len(a.starts) > 1) {
				turn(a.part+b.part, fmt.Sprintf("two coils of %d", n), func(int) string { return "" })
			}
		}
	}
}

// wholePhaseTurned: the two ends of a phase of a star taken for each other, which leaves its circuits
// as they are.
func (f *faultsOf) wholePhaseTurned() {
	if f.Trial.Connection == layout.Delta || f.Phases != 3 || f.Layout == nil {
		return
	}
	f.inOnePhase(func(phase int) onePhase {
		return onePhase{phase: phase, ohms: pairsAlike, volts: f.eachVolts(phase, 2), told: "phase {phase} turned round: {pairs}, at 58 % of the third"}
	}, "one phase turned round: two pairs read 58 % of the third")
}

// class is the coils of a phase with equal phasors: all of them where they are in step.
type class struct {
	part   complex128
	starts []int // the slots that they start in
}

// classes groups the coils of a phase by their share of its volts.
func (f *faultsOf) classes(phase int) (list []class) {
	all := f.Layout.CircuitPhasor(0, phase, 1, 1)
	for _, c := range f.Layout.Coils() {
		if c.Set != 0 || c.Phase != phase || all == 0 {
			continue
		}
		part := f.Layout.CoilPhasor(c, 1) / all
		i := slices.IndexFunc(list, func(l class) bool { return cmplx.Abs(l.part-part) < 1e-6 })
		if i < 0 {
			i, list = len(list), append(list, class{part: part})
		}
		list[i].starts = append(list[i].starts, c.Start)
	}
	return list
}

// mostSlots is how many slots of equivalent coils are named at most.
const mostSlots = 4

// slots names the slots in which the coils of a class start, in a phase: ", from slot 2, 8 or 14"; ""
// where all its coils are equivalent, or too many are.
func (f *faultsOf) slots(phase int, of class) string {
	list := f.classes(phase)
	i := slices.IndexFunc(list, func(l class) bool { return cmplx.Abs(l.part-of.part) < 1e-6 })
	if len(list) < 2 || i < 0 || len(list[i].starts) > mostSlots || f.Sets > 1 {
		return ""
	}
	words := make([]string, len(list[i].starts))
	for k, n := range list[i].starts {
		words[k] = fmt.Sprint(n)
	}
	text := words[len(words)-1]
	if len(words) > 1 {
		text = strings.Join(words[:len(words)-1], ", ") + " or " + text
	}
	return ", that from slot " + text
}

// eachVolts is the pairs of a star where a phase lacks a part of its phasor, relative to a sound one.
func (f *faultsOf) eachVolts(phase int, lacks complex128) (each [3]float64) {
	var volts [3]complex128
	for i := range volts {
		volts[i] = f.Layout.CircuitPhasor(0, i, 1, 1)
	}
	was := volts
	volts[phase] *= 1 - lacks
	for i := range each {
		each[i] = cmplx.Abs(volts[i]-volts[(i+1)%3]) / cmplx.Abs(was[i]-was[(i+1)%3])
	}
	return each
}

// offTogether is the common deviation allowed of all pairs of a known pattern, relative (common
// practice, no source): a speed misread, weak magnets, cold joints at the leads.
const offTogether = 0.25

// nearest is [Proof.shape] for the nearest of several patterns.
func (p Proof) nearest(makes [3]float64, around [][3]float64) (far, times float64, ok bool) {
	far, times, ok = p.shape(makes)
	for _, other := range around {
		if f, t, fits := p.shape(other); fits && (!ok || f < far) {
			far, times, ok = f, t, fits
		}
	}
	return far, times, ok
}

// shape is how far the pairs of a reading are from the pattern of a fault in one phase, in units of a
// pair's margin, and their common factor; ok is false where they are outside the margin. Without pairs
// it fits.
func (p Proof) shape(makes [3]float64) (far, times float64, ok bool) {
	s, told := p.sides()
	if !told {
		return 0, 1, true
	}
	mean := (makes[0] + makes[1] + makes[2]) / 3
	for i, v := range s.each {
		far = max(far, math.Abs(v/s.mean()/(makes[i]/mean)-1)/p.Even())
	}
	if _, _, held := p.Limits(); held {
		times = s.mean() / (p.Expected.Value * mean)
	} else {
		times = 1
	}
	return far, times, far <= 1 && math.Abs(math.Log(times)) < offTogether
}
