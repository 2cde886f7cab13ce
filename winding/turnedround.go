package winding

import (
	"fmt"
	"math"
	"math/bits"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
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
	begins float64 // the lowest cut-in of the job's windings, rpm; 0: not known
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
	path, swapped := a.field()
	r, top := a.speeds.ratio, a.speeds.top
	if path == "" || a.begins == 0 || !r.Known() || !top.Known() || r.Value <= 0 || top.Value >= a.begins {
		return
	}
	times := 1 / (r.Value * r.Value)
	if stages := a.given.Stages(); path == "drive.ratio" && len(stages) > 1 {
		wrong := a.wrong(stages)
		times = faster(stages, wrong)
		swapped = saidSwapped(stages, wrong, swapped)
	}
	if times <= 1 || !a.charges(times) {
		return
	}
	d.add(Finding{Severity: Doubt, Path: path, Fix: fmt.Sprintf("reversed? %s it would be %.3g, and %.0f rpm at the top", swapped, r.Value*times, top.Value*times), Source: turnsSource},
		"%.3g turns of the alternator for one of the drive make %.3g alternator rpm at the top, and nothing charges under %.0f", r.Value, top.Value, a.begins)
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
			lame = a.speeds.top.Value < a.begins
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
	return a.speeds.top.Value*times >= a.begins && a.speeds.usual.Value*times <= fastFor*a.begins
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
	case a.target.TopRPM.Given(), g.TachDriveRPM.Given() && g.TachAltRPM.Given():
		return "", ""
	case g.Ratio.Given():
		return "drive.ratio", sidesSwapped
	case g.DriverTeeth.Given() && g.DrivenTeeth.Given():
		return "drive.driver_teeth", "With the wheels swapped"
	case g.DriverMM.Given() && g.DrivenMM.Given():
		return "drive.driver", "With the pulleys swapped"
	}
	return "", ""
}

// earliest is the lowest cut-in of a trial, or else of the old winding, rpm; 0 where none is known.
func earliest(o *Outcome) (rpm float64) {
	least := func(f quantity.Figure) {
		if f.Known() && (rpm == 0 || f.Value < rpm) {
			rpm = f.Value
		}
	}
	for i := range o.Trials {
		least(o.Trials[i].CutInRPM)
	}
	if rpm == 0 && o.Old != nil {
		least(o.Old.CutInRPM)
	}
	return rpm
}
