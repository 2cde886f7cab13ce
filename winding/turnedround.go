package winding

import (
	"fmt"
	"math"
	"math/bits"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/ratio"
)

// # A drive the wrong way round
//
// Chains and gears are written driver : driven by some and as a ratio of speeds by others, 48:14 for
// 14:48, and a pulley goes into the wrong field. Then the alternator turns so slowly that no winding of
// the job ever charges, while the same numbers the other way round give a speed at which one does. Both
// are computed, so the program can ask.

// turnedRound is about a ratio, or two wheels, that are probably the wrong way round.
type turnedRound struct {
	given  *job.DriveSpec
	target *job.Target
	speeds *speeds
	begins cutIns // of the job's windings
}

// reversal is a drive the other way round.
type reversal struct {
	path    string        // where it was typed
	said    string        // what was typed, in words: "6 mm driving 40 mm,"; "" for a ratio
	look    string        // what to look at
	swapped string        // "With the pulleys swapped"
	ratio   string        // the ratio to type instead; "" for wheels
	times   float64       // how many times as fast the alternator would turn
	drive   job.DriveSpec // the drive reversed
}

// fastFor is the highest plausible ratio of usual speed to cut-in; a road vehicle's alternator begins
// at about 1000 rpm and is rated at 6000. Common practice, no source.
const fastFor = 10.0

// callOut asks, at the field that was filled in.
func (a turnedRound) callOut(d *doubts) {
	if a.given.Ratio.Given() && a.given.RatioAs.Sides && ratio.By(a.given) == "drive.ratio" {
		a.sides(d)
		return
	}
	way, ok := a.way()
	r, top := a.speeds.ratio, a.speeds.top
	if ok && a.begins.first == 0 && way.times >= leastTimes && a.slowDrive() {
		d.add(Finding{Severity: Doubt, Path: way.path, Fix: fmt.Sprintf("reversed? %s it would be %.3g", way.swapped, r.Value*way.times), Source: turnsSource},
			"%.3g turns of the alternator for one of the drive: it would turn slower than the drive", r.Value)
		return
	}
	if !ok || !a.nothingCharges() || !a.charges(way.times) {
		return
	}
	d.add(Finding{Severity: Doubt, Path: way.path, Fix: fmt.Sprintf("reversed? %s it would be %.3g, and %.0f rpm at the top", way.swapped, r.Value*way.times, top.Value*way.times), Source: turnsSource},
		"%.3g turns of the alternator for one of the drive make %.3g alternator rpm at the top, and nothing charges under %.0f", r.Value, top.Value, a.begins.first)
}

// nothingCharges reports whether no winding begins to charge at the top speed.
func (a turnedRound) nothingCharges() bool {
	return a.begins.first > 0 && a.speeds.top.Known() && a.speeds.top.Value < a.begins.first
}

// way is the drive the other way round, of several stages those that are probably reversed; ok is false
// where that would not be faster, and where the speeds do not come from wheels or a ratio.
func (a turnedRound) way() (w reversal, ok bool) {
	g, r := a.given, a.speeds.ratio
	w.path, w.swapped = a.field()
	if w.path == "" || !r.Known() || r.Value <= 0 {
		return w, false
	}
	w.drive, w.times = *g, 1/sq(r.Value)
	switch w.path {
	case "drive.driver":
		w.look = "look which pulley is on the drive's shaft"
		w.said = fmt.Sprintf("%s mm driving %s mm,", asTyped(g.DriverMM.Value), asTyped(g.DrivenMM.Value))
		w.drive.DriverMM, w.drive.DrivenMM = g.DrivenMM, g.DriverMM
		w.times = sq(g.DrivenMM.Value / g.DriverMM.Value)
	case "drive.driver_teeth":
		w.look = "look which wheel is on the drive's shaft"
		w.said = fmt.Sprintf("%s teeth driving %s,", asTyped(g.DriverTeeth.Value), asTyped(g.DrivenTeeth.Value))
		w.drive.DriverTeeth, w.drive.DrivenTeeth = g.DrivenTeeth, g.DriverTeeth
		w.times = sq(g.DrivenTeeth.Value / g.DriverTeeth.Value)
	default:
		w.look = "look which shaft turns faster, the drive's or the alternator's"
		stages := g.Stages()
		set := uint(1)
		if len(stages) > 1 {
			if set = a.wrong(stages); set == 0 {
				set = slowing(stages)
			}
			w.times = faster(stages, set)
			w.swapped = saidSwapped(stages, set, w.swapped)
		}
		w.ratio = otherRatio(stages, set, g.Ratio.Value)
		w.drive.Ratio.Value *= w.times
		if len(stages) < 2 {
			w.drive.Ratio.Value = 1 / g.Ratio.Value
			w.times = 1 / sq(g.Ratio.Value)
		}
	}
	return w, w.times > 1
}

// slowing is the set of stages that slow the alternator down.
func slowing(stages []job.Stage) (set uint) {
	for i, stage := range stages[:min(len(stages), mostStages)] {
		if stage.Turns < 1 {
			set |= 1 << i
		}
	}
	return set
}

// otherRatio is what to type for a ratio with a set of its stages reversed; turns is the ratio where it
// has none.
func otherRatio(stages []job.Stage, set uint, turns float64) string {
	if len(stages) == 0 {
		return fmt.Sprintf("%.4g", 1/turns)
	}
	list := make([]string, len(stages))
	for i, stage := range stages {
		if list[i] = stage.Said; set>>i&1 == 1 {
			list[i] = swappedSides(stage)
		}
	}
	return strings.Join(list, " x ")
}

// sides is about a ratio with both its sides, which some write the other way: where it slows an
// alternator that is too slow already it asks, whatever charges, and with several stages where nothing
// charges and some reversed stages would change that. For a fraction it says how it is read.
func (a turnedRound) sides(d *doubts) {
	r := a.speeds.ratio.Value
	if !a.speeds.ratio.Known() {
		return
	}
	other, swapped, lame := r/sq(a.given.Ratio.Value), sidesSwapped, false // slip is unchanged
	if stages := a.given.Stages(); len(stages) > 1 {
		if set := a.wrong(stages); set != 0 {
			other, swapped = r*faster(stages, set), saidSwapped(stages, set, swapped)
			lame = a.speeds.top.Value < a.begins.first
		}
	}
	switch slashed := a.given.RatioAs.Slash; {
	case r >= 1 && lame:
		d.add(Finding{Severity: Doubt, Path: "drive.ratio", Fix: fmt.Sprintf("reversed? %s it would be %.3g%s", swapped, other, a.topAt(other/r)), Source: turnsSource},
			"the ratio is read as %.3g turns of the alternator for one of the drive, at which nothing charges", r)
	case r < 1 && (needsSpeed[a.given.Kind] || slashed):
		d.add(Finding{Severity: Doubt, Path: "drive.ratio", Fix: fmt.Sprintf("reversed? %s it would be %.3g%s", swapped, other, a.topAt(other/r)), Source: turnsSource},
			"the ratio is read as %.3g turns of the alternator for one of the drive: it would turn slower than the drive", r)
	case slashed:
		slips := ""
		if said := a.given.Ratio.Value; math.Abs(r/said-1) > 1e-3 {
			slips = fmt.Sprintf(" (%.3g with the slip of its stages)", r)
		}
		d.add(Finding{Severity: Note, Path: "drive.ratio", Fix: "with a : the alternator's teeth come first", Source: turnsSource},
			"the ratio is read as %.3g turns of the alternator for one of the drive%s: a / is a fraction, of teeth the drive's over the alternator's", a.given.Ratio.Value, slips)
	}
}

// needsSpeed are the drives that are slower than any alternator should be.
var needsSpeed = map[string]bool{job.DriveWind: true, job.DrivePedals: true, job.DriveWater: true}

// slowDrive reports whether it is one of these, as far as its own speed is known: a turbine may be fast.
func (a turnedRound) slowDrive() bool {
	u := a.speeds.usual
	return needsSpeed[a.given.Kind] && !(u.Known() && u.Value/a.speeds.ratio.Value > slowDrive)
}

// slowDrive is the speed, rpm, up to which a drive is slower than any alternator should be; common
// practice, no source.
const slowDrive = 500.0

// topAt is the top speed at a multiple of the ratio, in words; "" where it is not known, or was given.
func (a turnedRound) topAt(times float64) string {
	if top := a.speeds.top; top.Known() && !a.target.TopRPM.Given() {
		return fmt.Sprintf(", and %.0f rpm at the top", top.Value*times)
	}
	return ""
}

const (
	turnsSource  = "n2 = i·n1; common practice, no source"
	sidesSwapped = "With the sides swapped, of teeth the alternator's first,"
)

// charges reports whether a drive a number of times as fast reaches cut-in, and is no faster than
// plausible.
func (a turnedRound) charges(times float64) bool {
	return a.speeds.top.Value*times >= a.begins.first && a.speeds.usual.Value*times <= fastFor*a.begins.last
}

// wrong is the smallest set of stages, as bits, with which reversed it charges; of equally small ones
// those that slow it most. Stages that speed it up are the right way round. 0 where none do.
func (a turnedRound) wrong(stages []job.Stage) (best uint) {
	for set := uint(1); set < 1<<min(len(stages), mostStages); set++ {
		switch times := faster(stages, set); {
		case times == 0 || !a.charges(times):
		case best == 0, bits.OnesCount(set) < bits.OnesCount(best):
			best = set
		case bits.OnesCount(set) == bits.OnesCount(best) && times > faster(stages, best):
			best = set
		}
	}
	return best
}

// mostStages is how many stages are examined; a drive has two or three.
const mostStages = 6

// faster is the factor on the alternator's speed with a set of stages reversed; 0 where one of them
// speeds it up as it is, or does not exist.
func faster(stages []job.Stage, set uint) float64 {
	times := min(float64(set), 1)
	for i, stage := range stages {
		switch {
		case set>>i&1 == 0:
		case stage.Turns >= 1:
			return 0
		default:
			times /= stage.Turns * stage.Turns
		}
	}
	return times
}

// saidSwapped names the stages of a set, each reversed; all of them are worded as one ratio.
func saidSwapped(stages []job.Stage, set uint, whole string) string {
	if bits.OnesCount(set) == len(stages) {
		return whole
	}
	var list []string
	for i, stage := range stages {
		if set>>i&1 == 1 {
			list = append(list, fmt.Sprintf("stage %d as %s in place of %s", i+1, swappedSides(stage), stage.Said))
		}
	}
	return "With " + strings.Join(list, " and ")
}

// swappedSides is a stage reversed: 14:48 for 48:14.
func swappedSides(stage job.Stage) string {
	for _, sign := range []string{":", "/"} {
		if in, out, both := strings.Cut(stage.Said, sign); both {
			return strings.TrimSpace(out) + sign + strings.TrimSpace(in)
		}
	}
	return fmt.Sprintf("%.3g", 1/stage.Turns)
}

// field is where the ratio was typed, and its reverse; "" where the speeds do not come from it or were
// measured.
func (a turnedRound) field() (path, swapped string) {
	g := a.given
	switch {
	case a.target.TopRPM.Given():
		return "", ""
	case ratio.By(g) == "drive.ratio" && !g.RatioAs.Sides && len(g.Stages()) < 2:
		return "drive.ratio", "The other way round"
	case ratio.By(g) == "drive.ratio":
		return "drive.ratio", sidesSwapped
	case ratio.By(g) == "drive.driver_teeth":
		return "drive.driver_teeth", "With the wheels swapped"
	case ratio.By(g) == "drive.driver":
		return "drive.driver", "With the pulleys swapped"
	}
	return "", ""
}
