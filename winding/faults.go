package winding

import (
	"fmt"
	"math"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/text"
)

// # What a reading that is off by a known part speaks of
//
// A finished winding that is joined otherwise than planned does not read a little off: it reads
// a part of the plan that follows from the join alone. Ohms go with the turns in series and
// against the paths side by side, volts with the turns in series:
//
//	delta, not star         ohms × 1/3, volts × 1/√3      (lead to lead 2·R and 2/3·R, √3·E and E)
//	b circuits, not a       ohms × (a/b)², volts × a/b
//	k of s strands missing  ohms × s/(s − k)
//	s strands in series     ohms × s², volts × s
//	half the coils          ohms × 1/2, volts × 1/2
//	at the star point       ohms × 1/2, volts × 1/√3, for a reading that was taken there
//
// A fault in one phase alone makes two pairs of leads unlike the third. Where a record has each pair they
// must stand to each other as the fault makes them, and all alike where it is in every phase: two pairs of
// (1 + k)/2 beside one of 1 in star, one of 3k/(2 + k) beside two of 3(1 + k)/(2(2 + k)) in delta. Where it has
// only the mean of the pairs that is what they are held by. With one phase of k times the others' ohms that is, in star and in delta,
//
//	(2 + k)/3   and   (1 + 2k)/(2 + k)
//
// times the plan, 2 for a delta with one phase open, which still gives its volts. With one phase of
// k times the others' volts, k below 0 where it is turned round, two pairs of a star have
// √(1 + k + k²) of the phase, and the mean is (√3 + 2·√(1 + k + k²))/(3·√3); it begins to charge by
// the third pair. One coil of n turned round leaves k = 1 − 2/n, its fellows taken to be in
// step with it. Where charging begins goes against the volts.
//
// Each fault that this winding's phases, join, circuits and strands allow is held against all
// that was read: ohms, volts and beginning must each lie within the limits round what the fault would
// make of them. Of those that fit the nearest is named first. All of this is
// plain arithmetic; which faults are met at a bench, and their order where two
// make the same, are common practice, no source. It ends where two faults are there at once, and where the
// plan itself is off by more than its ±.

// Likely is a fault that makes what was read of what was planned.
type Likely struct {
	// Fault is what would be so: "joined in delta, not star".
	Fault string `json:"fault"`
	// Ohms, Volts and Begins are how many times the planned ohms, volts and beginning of
	// charging it makes.
	Ohms   float64 `json:"ohms_times"`
	Volts  float64 `json:"volts_times"`
	Begins float64 `json:"begins_times"`
	// ByOhms says that only the ohms were held against it, for the volts fit nothing.
	ByOhms bool `json:"by_ohms_alone,omitempty"`
	// ohmsEach and voltsEach are how many times the planned ohms and volts of a pair it makes in each pair of
	// leads, from the least to the most; nil where all pairs are alike.
	ohmsEach, voltsEach []float64
}

// Words is the fault with what it makes.
func (l Likely) Words() string {
	var makes []string
	for _, of := range []struct {
		what  string
		times float64
	}{{"ohms", l.Ohms}, {"volts", l.Volts}} {
		if math.Abs(of.times-1) > 1e-9 {
			makes = append(makes, of.what+" ×"+quantity.Number(of.times, 2))
		}
	}
	words := l.Fault
	if len(makes) > 0 {
		words += " (" + strings.Join(makes, ", ") + ")"
	}
	if l.ByOhms {
		words += ", which the volts do not bear out"
	}
	return words
}

// faultsOf is the faults that a winding allows.
type faultsOf struct {
	machine *machine
	trial   job.Trial
	coils   coilSet
	ratio   quantity.Figure
	list    []Likely
}

// couldBe is all that may be wrong with a winding, what is met most often first.
func couldBe(m *machine, w *candidate, ratio quantity.Figure) []Likely {
	f := faultsOf{machine: m, trial: w.trial, coils: w.coils, ratio: ratio}
	f.connections()
	f.circuits()
	f.strands()
	f.onePhase()
	f.turned()
	f.misread()
	return f.list
}

// add adds a fault of the winding itself, whose beginning goes against its volts.
func (f *faultsOf) add(ohms, volts float64, format string, args ...any) {
	f.list = append(f.list, Likely{Fault: fmt.Sprintf(format, args...), Ohms: ohms, Volts: volts, Begins: 1 / volts})
}

// beginning adds a fault that says itself what becomes of the beginning.
func (f *faultsOf) beginning(ohms, volts, begins float64, format string, args ...any) {
	f.add(ohms, volts, format, args...)
	f.list[len(f.list)-1].Begins = begins
}

// connections: star and delta taken for each other.
func (f *faultsOf) connections() {
	m, is := f.machine, f.trial.Connection
	if m.phases != 3 {
		return
	}
	other := layout.Delta
	if is == layout.Delta {
		other = layout.Star
	}
	f.add(m.leadPerPhase(other)/m.leadPerPhase(is), m.linePerPhase(other)/m.linePerPhase(is), "joined in %s, not %s", other, is)
}

// circuits: more or fewer side by side, or half the coils left out.
func (f *faultsOf) circuits() {
	planned := f.coils.circuits
	for _, made := range f.coils.choices {
		if made != planned {
			k := float64(planned) / float64(made)
			f.add(k*k, k, "its coils joined in %s, not %d", text.Count(made, "circuit"), planned)
		}
	}
	if n := f.perCircuit(); n >= 2 && n%2 == 0 {
		f.add(0.5, 0.5, "half the coils%s not in circuit", f.each(" of each phase"))
	}
}

// each is words that belong to more phases than one.
func (f *faultsOf) each(words string) string {
	if f.machine.windings() == 1 {
		return ""
	}
	return words
}

// perCircuit is the coils in series in a phase.
func (f *faultsOf) perCircuit() int {
	if f.coils.plan == nil || f.coils.circuits == 0 {
		return 0
	}
	return int(f.coils.perPhase) / f.coils.circuits
}

// strands: some missing, one more, or one behind the other. Of two sizes nothing is said.
func (f *faultsOf) strands() {
	bundle := f.trial.Bundle()
	if len(bundle.Parts()) != 1 {
		return
	}
	n := bundle.Count()
	of := float64(n)
	for missing := 1; missing < n; missing++ {
		f.add(of/(of-float64(missing)), 1, "%s of %d not joined%s", text.Count(missing, "strand"), n, f.each(", in every phase"))
	}
	f.add(of/(of+1), 1, "%d strands in hand, not %d", n+1, n)
	if n > 1 {
		f.add(of*of, of, "its %d strands joined in series, not side by side", n)
	}
}

// onePhase: a strand, a circuit or all of it open in one phase.
func (f *faultsOf) onePhase() {
	if f.machine.phases != 3 {
		return
	}
	open := func(what string, n int) {
		if n > 1 {
			f.unlike(float64(n)/float64(n-1), "1 %s of %d open in one phase: the pairs are unlike", what, n)
		}
	}
	open("strand", f.trial.Bundle().Count())
	open("circuit", f.coils.circuits)
	if f.trial.Connection == layout.Delta {
		f.unlike(math.Inf(1), "one phase of the delta open: one pair reads twice the others")
	}
}

// unlike adds a fault by which one phase has k times the ohms of the others.
func (f *faultsOf) unlike(k float64, format string, args ...any) {
	f.add(f.meanOhms(k), 1, format, args...)
	f.list[len(f.list)-1].ohmsEach = f.eachOhms(k)
}

// eachOhms is the pairs where one phase has k times the ohms of the others, over those where all are
// alike, from the least to the most.
func (f *faultsOf) eachOhms(k float64) []float64 {
	switch {
	case f.trial.Connection != layout.Delta:
		return []float64{1, (1 + k) / 2, (1 + k) / 2}
	case math.IsInf(k, 1):
		return []float64{1.5, 1.5, 3}
	}
	two := 3 * (1 + k) / (2 * (2 + k))
	return []float64{two, two, 3 * k / (2 + k)}
}

// meanOhms is the mean of the pairs where one phase has k times the ohms of the others, over
// that where all are alike.
func (f *faultsOf) meanOhms(k float64) float64 {
	switch {
	case f.trial.Connection != layout.Delta:
		return (2 + k) / 3
	case math.IsInf(k, 1):
		return 2
	}
	return (1 + 2*k) / (2 + k)
}

// turned: a coil or a phase the wrong way round. In a delta, and in one of several circuits, a
// current then runs round and the volts follow no such law.
func (f *faultsOf) turned() {
	n := f.perCircuit()
	if f.trial.Connection == layout.Delta || f.coils.circuits != 1 || len(f.trial.CoilTurns) > 0 || n < 2 {
		return
	}
	left := 1 - 2/float64(n)
	switch {
	case f.machine.phases == 1 && left > 0:
		f.add(1, left, "one coil of %d turned round", n)
	case f.machine.phases == 3:
		f.lowVolts(left, "one coil of %d turned round in one phase: two pairs read low", n)
		f.lowVolts(-1, "one phase turned round: two pairs read 58 %% of the third")
	}
}

// lowVolts adds a fault by which one phase of a star has k times the volts of the others; it begins to
// charge by the third pair.
func (f *faultsOf) lowVolts(k float64, format string, args ...any) {
	f.beginning(1, meanVolts(k), 1, format, args...)
	two := math.Sqrt(1+k+k*k) / math.Sqrt(3)
	f.list[len(f.list)-1].voltsEach = []float64{two, two, 1}
}

// meanVolts is the mean of a star's pairs where one phase has k times the volts of the others,
// over that where all are alike.
func meanVolts(k float64) float64 {
	return (math.Sqrt(3) + 2*math.Sqrt(1+k+k*k)) / (3 * math.Sqrt(3))
}

// misread: the winding may be right and the reading taken otherwise than it is held for.
func (f *faultsOf) misread() {
	if f.machine.phases == 3 && f.trial.Connection == layout.Star {
		const point = "read between a lead and the star point, not between two leads"
		f.beginning(0.5, 1/math.Sqrt(3), 1, point)
		f.beginning(0.5, 1, 1, "the ohms "+point)
		f.beginning(1, 1/math.Sqrt(3), 1, "the volts "+point)
	}
	if r := f.ratio; r.Known() && r.Value > 0 && math.Abs(math.Log(r.Value)) > ProofLimit {
		f.add(1, r.Value, "the speed of the drive given for that of the alternator")
		f.beginning(1, r.Value, 1, "the volts at the speed of the drive, not of the alternator")
	}
	f.add(1, 2, "the tachometer showing half the speed")
	f.add(1, 0.5, "the tachometer showing twice the speed")
}
