package winding

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/readings"
)

// # The readings of the old winding, solved together
//
// Where amps into a battery were read, or the plate gives them together with the speed at which
// charging began or instead of a short circuit, and the old ohms, turns and poles are known, then volts
// per rpm, inductance and its fall with current are fitted to all readings jointly (package readings).
// They are then the flux and the inductance of every winding, and precede the routes that use one
// reading each. Two sets are solved as one set with half of the amps. So are two phases, which is
// exact: readings are at the volts read, and on a load without ohms neither phase sees the other
// (charge/pair.go).
//
// The result is the old winding's; it depends on its readings alone, so it is found once and handed on
// to every bench with the same readings (Bench.With), and to those moved by an error of another input.
// The errors of the readings themselves are in the fit's covariance, and are propagated by moving the
// result.

// told is a reading with the job field that it is in.
type told struct {
	readings.Reading
	path string
}

// fitted is the joint fit of the readings.
type fitted struct {
	machine readings.Machine
	told    []told
	fit     readings.Fit
	// ok says that they determine volts and inductance and precede the single routes; why says what is
	// missing.
	ok  bool
	why string
	// apart says that a reading lies further off than it may.
	apart  bool
	advice func() string
}

// same reports whether the same readings would be fitted.
func (f *fitted) same(m readings.Machine, list []told) bool {
	return f != nil && f.machine == m && slices.Equal(f.told, list)
}

// newFitted solves the readings of a book, or reuses another bench's fit to the same ones; top is the
// top speed.
func newFitted(b *book, top quantity.Figure, before *fitted) *fitted {
	m, list, why := b.tellable()
	if before.same(m, list) {
		return before
	}
	f := &fitted{machine: m, told: list, why: why, advice: func() string { return "" }}
	if why != "" {
		return f
	}
	if !worthSolving(list) {
		return f
	}
	plain := make([]readings.Reading, len(list))
	for i, r := range list {
		plain[i] = r.Reading
	}
	fit, err := readings.Solve(m, plain)
	if err != nil {
		f.why = strings.TrimPrefix(err.Error(), readings.ErrReadings.Error()+": ")
		return f
	}
	f.fit, f.ok = fit, true
	f.apart = slices.ContainsFunc(fit.Readings(), func(c readings.Checked) bool { return c.Aside == "" && c.Off > 1 })
	volts := b.dc.charging.Value
	f.advice = sync.OnceValue(func() string { return adviceOf(fit, volts, top.Value) })
	return f
}

// worthSolving reports whether there are amps behind the bridge that determine the inductance.
func worthSolving(list []told) bool {
	has := func(k readings.Kind) bool {
		return slices.ContainsFunc(list, func(r told) bool { return r.Kind == k })
	}
	return has(readings.Loaded) || has(readings.Plate) && (has(readings.Began) || !has(readings.Short))
}

// adviceOf is the reading that would narrow the predicted amps most, in a sentence.
func adviceOf(fit readings.Fit, volts, top float64) string {
	if volts <= 0 {
		return ""
	}
	a, ok := fit.Next(volts, top)
	if !ok {
		return "no further reading would narrow the predicted amps by much"
	}
	what := string(a.Kind)
	if a.Kind == readings.Short {
		what = "a short circuit"
	}
	return fmt.Sprintf("%s of the old winding at about %.0f rpm (%.3g times the speed at which it begins to charge) would narrow the predicted amps most: from ±%.0f %% to ±%.0f %%",
		what, round2(a.RPM), a.CutIns, a.Now*100, a.Then*100)
}

// withOhms is the fit with other ohms of the old winding, which are not among the readings solved and
// so move it from outside.
func (f *fitted) withOhms(ohms quantity.Figure) *fitted {
	if !f.ok || !ohms.Known() || ohms.Value <= 0 || ohms.Value == f.machine.Ohms {
		return f
	}
	other := *f
	other.fit = f.fit.WithOhms(ohms.Value)
	return &other
}

// round2 is a number to two figures, for a sentence.
func round2(v float64) float64 {
	if v <= 0 {
		return 0
	}
	unit := math.Pow(10, math.Floor(math.Log10(v))-1)
	return math.Round(v/unit) * unit
}

// flux is the flux of the joint fit, where there is one.
func (f *fitted) flux(single flux, old *oldWinding, rotor *job.FieldSpec) flux {
	if !f.ok {
		return single
	}
	k := f.fit.VoltsPerRPM()
	found := flux{
		perTurn: quantity.Of(k.Value/old.coils.effective, f.origin(old, single, k.Why)), relative: old.coils.relative, fromOld: true,
		from: f.from(k.Why), fieldAmps: rotor.Amps.Figure("no field current given"), spread: single.spread, extrapolated: single.extrapolated, curve: single.curve, readAt: single.readAt,
	}
	if f.carriedIn(single, k.Why) && single.perTurn.Value > 0 {
		found.reach = single.reach / single.perTurn.Value * found.perTurn.Value
	}
	found.perTurn.PlusMinus = math.Hypot(k.PlusMinus/old.coils.effective, found.reach)
	if amps := f.fit.FieldAmps(); amps > 0 {
		found.fieldAmps = quantity.Of(amps)
	}
	if at := single.at; at != nil {
		by := found.perTurn.Value / at(f.fit.FieldAmps())
		found.at = func(amps float64) float64 { return by * at(amps) }
	}
	return found
}

// origin is Guessed where a guess is decisive, or where the readings contradict each other: everything
// that follows is then marked too. It is also Guessed where volts at another field current, converted
// to this one by a guess, decide, and no reading has the current in service.
func (f *fitted) origin(old *oldWinding, single flux, decided string) quantity.Origin {
	if f.apart || f.carriedIn(single, decided) {
		return quantity.Guessed
	}
	return guessedIf(old.Turns)
}

// carriedIn reports whether the deciding reading is volts at another field current.
func (f *fitted) carriedIn(single flux, decided string) bool {
	inService := []string{string(readings.Began), string(readings.Loaded), string(readings.Plate)}
	return (single.extrapolated || single.readAt > 0) && !slices.Contains(inService, decided)
}

// from says what was solved, and which reading decided.
func (f *fitted) from(decided string) string {
	var kinds []string
	for _, c := range f.fit.Readings() {
		if c.Aside == "" && !slices.Contains(kinds, string(c.Kind)) {
			kinds = append(kinds, string(c.Kind))
		}
	}
	last := len(kinds) - 1
	all := kinds[last]
	if last > 0 {
		all = strings.Join(kinds[:last], ", ") + " and " + kinds[last]
	}
	return fmt.Sprintf("%s of the old winding, solved together; decided by %s", all, decided)
}

// moved is the fit, moved by its own ± along three independent errors.
func (f *fitted) moved() []*fitted {
	var all []*fitted
	for _, fit := range f.fit.Moved() {
		one := *f
		one.fit = fit
		all = append(all, &one)
	}
	return all
}
