package winding

import (
	"fmt"
	"math"
)

// # The limit by temperature where a fan helps
//
// A winding may dissipate the watts that leave it at the rise allowed, less what iron and field leave
// in the stator. With a fan on the shaft that grows with speed (thermal.go), and the amps with its
// square root. What the plate proves, its heat and its density, it proves at its own speed only: below
// that, the temperature limit accounts for the fan blowing less.

// fanned is how much heat leaves at a speed.
type fanned struct {
	air   *thermal
	drag  *drag
	rotor *excitation
	// usual is the speed, rpm, at which limits are given; rise is what the class allows, K.
	usual, rise float64
}

// newFanned is the law of a machine with a fan; nil for others, and where no speed is known.
func newFanned(b *bounds) *fanned {
	if b.air.fanGain == 0 || !b.usual.Known() {
		return nil
	}
	return &fanned{air: b.air, drag: b.drag, rotor: b.rotor, usual: b.usual.Value, rise: b.air.meanC - b.air.ambientC}
}

// copperWatts is the heat that copper may make for a rise, K, at a speed, iron and field deducted;
// never below 0.
func (s *thermal) copperWatts(rise, rpm float64, d *drag, e *excitation) float64 {
	return max(0, rise/s.perWatt(rpm)-ironThroughStator*d.at(rpm)-fieldThroughStator*e.takes())
}

// said is what the fan has to do with a limit, in words.
func (f *fanned) said(plate float64) string {
	switch {
	case f == nil:
		return ""
	case plate > f.usual:
		return fmt.Sprintf(", at %.0f rpm: the fan carries off %.0f %% of what it does at the plate's %.0f rpm", f.usual, 100*f.air.perWatt(plate)/f.air.perWatt(f.usual), plate)
	}
	return fmt.Sprintf(", with what the fan does at %.0f rpm", f.usual)
}

// words says why the rise per watt differs at each speed; "" where it does not.
func (f *fanned) words() string {
	if f == nil {
		return ""
	}
	return ": its fan carries off more the faster it turns, as the power 0.8 of the speed, and the rise per watt is that of this speed"
}

// grows is the factor on a limit where a trial runs, relative to the usual speed.
func (f *fanned) grows(name string, p *RunPoint) float64 {
	if f == nil || name != limitTemperature {
		return 1
	}
	at := f.air.copperWatts(f.rise, f.usual, f.drag, f.rotor)
	if at == 0 {
		return 1
	}
	now := f.air.copperWatts(f.rise, p.RPM, f.drag, f.rotor)
	if p.HeldFieldAmps > 0 || p.Spent {
		now = max(0, f.rise/f.air.perWatt(p.RPM)-ironThroughStator*p.IronWatts-fieldThroughStator*p.FieldWatts)
	}
	return math.Sqrt(now / at)
}

// LimitAt is the most amps DC that it withstands at a speed of the alternator, rpm: LimitAmps at the
// usual speed, and what fan and iron make of that at others where a fan cools it. 0 where no limit is
// known.
func (l *Limits) LimitAt(rpm float64) float64 {
	amps, _ := l.governs(&RunPoint{RPM: rpm})
	return amps
}

// LimitIn is LimitAt where a trial runs: a field lowered by the regulator, and with it the iron loss,
// leave the copper more.
func (l *Limits) LimitIn(p *RunPoint) float64 {
	amps, _ := l.governs(p)
	return amps
}

// PassedIn is Passed where a trial runs.
func (l *Limits) PassedIn(p *RunPoint) bool {
	return l.LimitAmps.Known() && p.AmpsDC > l.LimitIn(p)*limitSlack
}

// governs is the lowest limit where a trial runs; nil where none is known.
func (l *Limits) governs(p *RunPoint) (amps float64, by *Limit) {
	for i := range l.Each {
		if at := l.Each[i].AmpsDC.Value * l.fanned.grows(l.Each[i].Name, p); i == 0 || at < amps {
			amps, by = at, &l.Each[i]
		}
	}
	return amps, by
}

// Passed reports whether a sustained current, A DC, is past the limit at a speed, rpm.
func (l *Limits) Passed(ampsDC, rpm float64) bool {
	return l.LimitAmps.Known() && ampsDC > l.LimitAt(rpm)*limitSlack
}
