package wound

import (
	"fmt"
	"math"
	"strings"

	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/text"
)

// # What a reading that is off by a known factor points to
//
// A finished winding that is connected other than planned does not read slightly off: it reads a
// multiple of the plan that follows from the connection alone. Ohms go with the turns in series over
// the paths in parallel, volts with the turns in series:
//
//	delta, not star         ohms × 1/3, volts × 1/√3      (lead to lead 2·R and 2/3·R, √3·E and E)
//	b circuits, not a       ohms × (a/b)², volts × a/b
//	k of s strands missing  ohms × s/(s − k)
//	s strands in series     ohms × s², volts × s
//	half the coils          ohms × 1/2, volts × 1/2
//	n turns, not N          ohms × n/N, volts × n/N, and as much wire
//	at the star point       ohms × 1/2, volts × 1/√3, for a reading that was taken there
//
// A fault in one phase alone makes the pairs of leads unequal (onephase.go). Where a record has each
// pair, their ratios must be those of the fault, and all equal for a fault of every phase; where it has
// only the mean of the pairs, that is tested.
//
// Each fault that this winding's phases, connection, circuits and strands allow is compared with all
// readings: ohms, volts and cut-in must each lie within the limits around what the fault predicts. Of
// those that fit the closest is named first. The ratios are plain arithmetic; which faults occur at a
// bench, and their order where two predict the same, are common practice, no source. It fails where two
// faults occur at once, and where the plan itself is off by more than its ±.

// Likely is a fault that explains what was read from what was planned.
type Likely struct {
	// Fault is what would be the case: "joined in delta, not star".
	Fault string `json:"fault"`
	// Ohms, Volts and Begins are the factors on the planned ohms, volts and beginning of charging.
	Ohms   float64 `json:"ohms_times"`
	Volts  float64 `json:"volts_times"`
	Begins float64 `json:"begins_times"`
	// ByOhms says that only the ohms were compared, since the volts fit nothing.
	ByOhms bool `json:"by_ohms_alone,omitempty"`
	// one is its effect on each pair where it is in one phase alone; nil where all pairs are alike.
	one *onePhase
	// miscounted says that every coil has other turns than said: one of many numbers, of which the
	// nearest is named.
	miscounted bool
	// beside is what else is off, in words.
	beside string
}

// Words is the fault with its effect.
func (l Likely) Words() string {
	var makes []string
	which := ""
	if l.one != nil { // the pairs themselves are off by other parts
		which = "mean "
	}
	for _, of := range []struct {
		what  string
		times float64
	}{{"ohms", l.Ohms}, {"volts", l.Volts}} {
		if math.Abs(of.times-1) > 1e-9 {
			makes = append(makes, which+of.what+" ×"+quantity.Number(of.times, 2))
		}
	}
	words := l.Fault
	if len(makes) > 0 {
		words += " (" + strings.Join(makes, ", ") + ")"
	}
	if l.ByOhms {
		words += ", which the volts do not confirm"
	}
	return words + l.beside
}

// faultsOf is the faults that a winding allows.
type faultsOf struct {
	Winding
	list []Likely
}

// couldBe is every fault that a winding may have, the most common first.
func couldBe(w Winding) []Likely {
	f := faultsOf{Winding: w}
	f.connections()
	f.circuits()
	f.strands()
	f.turns()
	f.onePhase()
	f.oneCoil()
	f.turned()
	f.wholePhaseTurned()
	f.turnedInALoop()
	f.misread()
	return f.list
}

// add adds a fault of the winding itself: the beginning of charging goes inversely with the volts.
func (f *faultsOf) add(ohms, volts float64, format string, args ...any) {
	f.list = append(f.list, Likely{Fault: fmt.Sprintf(format, args...), Ohms: ohms, Volts: volts, Begins: 1 / volts})
}

// beginning adds a fault with an effect of its own on the beginning of charging.
func (f *faultsOf) beginning(ohms, volts, begins float64, format string, args ...any) {
	f.add(ohms, volts, format, args...)
	f.list[len(f.list)-1].Begins = begins
}

// connections: star and delta taken for each other.
func (f *faultsOf) connections() {
	is := f.Trial.Connection
	if f.Phases != 3 {
		return
	}
	other := layout.Delta
	if is == layout.Delta {
		other = layout.Star
	}
	f.add(other.LeadPerPhase(3)/is.LeadPerPhase(3), other.LinePerPhase(3)/is.LinePerPhase(3), "joined in %s, not %s", other, is)
}

// circuits: more or fewer in parallel, or half the coils left out.
func (f *faultsOf) circuits() {
	planned := f.Circuits
	for _, made := range f.choices() {
		if made != planned {
			k := float64(planned) / float64(made)
			f.add(k*k, k, "its coils joined in %s, not %d", text.Count(made, "circuit"), planned)
		}
	}
	if n := f.perCircuit(); n >= 2 && n%2 == 0 {
		f.add(0.5, 0.5, "half the coils%s not in circuit", f.each(" of each phase"))
	}
}

// choices are the circuits that the layout allows.
func (f *faultsOf) choices() []int {
	if f.Layout == nil {
		return nil
	}
	return f.Layout.CircuitChoices()
}

// each is words that apply to a winding of several phases only.
func (f *faultsOf) each(words string) string {
	if f.Phases*f.Sets == 1 {
		return ""
	}
	return words
}

// perCircuit is the coils in series in a phase.
func (f *faultsOf) perCircuit() int {
	if f.Layout == nil || f.Circuits == 0 {
		return 0
	}
	return f.Layout.CoilsPerPhase() / f.Circuits
}

// strands: some missing, one more, or all in series. Of two sizes nothing is said.
func (f *faultsOf) strands() {
	bundle := f.Trial.Bundle()
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

// mostMiscounted is by what part of its turns a coil is miscounted at the most (common practice, no source).
const mostMiscounted = 0.3

// turns: more or fewer in every coil. Of a group whose coils differ nothing is said.
func (f *faultsOf) turns() {
	if !f.Trial.Turns.Given() || len(f.Trial.CoilTurns) > 0 {
		return
	}
	planned := f.Trial.Turns.Whole()
	most := int(mostMiscounted * float64(planned))
	for n := planned - most; n <= planned+most; n++ {
		if k := float64(n) / float64(planned); n != planned {
			f.add(k, k, "%s in each coil, not %d", text.Count(n, "turn"), planned)
			f.list[len(f.list)-1].miscounted = true
		}
	}
}

// misread: the winding may be right and the reading taken in another way than assumed.
func (f *faultsOf) misread() {
	if f.Phases == 3 && f.Trial.Connection == layout.Star {
		const point = "read between a lead and the star point, not between two leads"
		f.beginning(0.5, 1/math.Sqrt(3), 1, point)
		f.beginning(0.5, 1, 1, "the ohms "+point)
		f.beginning(1, 1/math.Sqrt(3), 1, "the volts "+point)
	}
	if r := f.Ratio; r.Known() && r.Value > 0 && math.Abs(math.Log(r.Value)) > ProofLimit {
		f.add(1, r.Value, "the speed of the drive given for that of the alternator")
		f.beginning(1, r.Value, 1, "the volts at the speed of the drive, not of the alternator")
	}
	f.add(1, 2, "the tachometer showing half the speed")
	f.add(1, 0.5, "the tachometer showing twice the speed")
}
