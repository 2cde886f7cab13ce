package ratio

import (
	"fmt"
	"math"
	"strings"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// Transmission is that of a job, its defaults filled in.
func Transmission(d *job.DriveSpec) drive.Transmission {
	t := drive.Transmission{
		Kind: kinds[d.Transmission], Ratio: d.Ratio.Value, Stages: d.RatioAs.Stages,
		DriverMM: d.DriverMM.Value, DrivenMM: d.DrivenMM.Value, DriverTeeth: d.DriverTeeth.Value, DrivenTeeth: d.DrivenTeeth.Value,
	}
	if t.Kind == drive.Belt {
		t.Slip = d.Slip.Or(defaultSlip)
	}
	t.Efficiency = d.Efficiency.Or(math.Pow(passesOf[t.Kind], float64(max(t.Stages, 1))))
	return t
}

var kinds = map[string]drive.Kind{drive.Belt.String(): drive.Belt, drive.Chain.String(): drive.Chain, drive.Gear.String(): drive.Gear}

// Transmission losses; V-belts 0.92 to 0.95 (US DOE tip sheet and field literature),
// chains and gears common practice, no source.
const (
	defaultBeltEfficiency  = 0.95
	defaultChainEfficiency = 0.97
)

// passesOf is the efficiency of one stage of a kind.
var passesOf = map[drive.Kind]float64{drive.Direct: 1, drive.Belt: defaultBeltEfficiency, drive.Chain: defaultChainEfficiency, drive.Gear: defaultChainEfficiency}

// defaultSlip is a belt's, where it was not measured.
var defaultSlip = job.DefaultOf("drive.slip")

// Of is alternator turns per turn of the drive: from two tachometer readings, else as given, else from
// pulleys or teeth; it says by which of them.
func Of(d *job.DriveSpec) quantity.Figure {
	t := Transmission(d)
	if said := tachSays(d); said.turns > 0 {
		why := "two tachometer readings"
		if whole := nominal(t); whole > 0 {
			why += fmt.Sprintf(", which mean %.1f %% of slip", 100*(1-said.turns/whole))
		}
		return quantity.Of(said.turns).Because(why)
	}
	turns, err := t.Turns()
	switch {
	case err != nil:
		return quantity.Missing("needs the ratio, both pulleys or the teeth of both wheels")
	case d.Ratio.Given():
		given := d.Ratio.Figure("")
		if turns != given.Value { // less the slip
			given = given.Times(turns / given.Value)
		}
		return given.Because(stagesOf(t) + losses(t))
	}
	return quantity.Of(turns, d.DriverMM.Origin, d.DrivenMM.Origin).Because(wheelsOf[t.Kind] + losses(t))
}

// wheelsOf is what turns the alternator, where no ratio was given.
var wheelsOf = map[drive.Kind]string{drive.Direct: "direct", drive.Belt: "the pulleys", drive.Chain: "the teeth", drive.Gear: "the teeth"}

// stagesOf says how a ratio was given.
func stagesOf(t drive.Transmission) string {
	switch t.Stages {
	case 0:
		return "as given"
	case 1:
		return "one stage"
	}
	return fmt.Sprintf("%d stages", t.Stages)
}

// losses says what is assumed for belt, chain or gears: slip, where it is not in the ratio already, and
// the part of the power lost.
func losses(t drive.Transmission) string {
	var parts []string
	if s := t.SlipOfAll(); s > 0 {
		parts = append(parts, "slip "+percent(s))
	}
	if t.Efficiency < 1 {
		parts = append(parts, "loss "+percent(1-t.Efficiency))
	}
	switch {
	case len(parts) == 0:
		return ""
	case t.Kind == drive.Direct:
		return ", " + strings.Join(parts, ", ")
	}
	return ", " + t.Kind.String() + ": " + strings.Join(parts, ", ")
}

// percent is a fraction in per cent, to two figures.
func percent(part float64) string {
	return quantity.File.Number(100*part, quantity.AtMost(2)) + " %"
}

// nominal is the ratio without slip, 0 when it is not known.
func nominal(t drive.Transmission) float64 {
	if t.Slip = 0; t.Stages == 0 { // a measured ratio already includes it
		t.Ratio = 0
	}
	if t.Kind == drive.Direct {
		return 0
	}
	turns, err := t.Turns()
	if err != nil {
		return 0
	}
	return turns
}

// Wanted is what would take the drive's usual speed to the one wanted of the alternator.
type Wanted struct {
	// Turns of the alternator for one of the drive.
	Turns quantity.Figure
	// DrivenMM is the alternator's pulley with the drive's as it is, DriverMM the drive's with the
	// alternator's, DrivenTeeth the alternator's wheel with the drive's.
	DrivenMM, DriverMM, DrivenTeeth quantity.Figure
}

// For answers the reverse question: which pulley takes the drive's usual speed to the usual speed wanted,
// rpm. Where there is one whose ratio is known, the new one is to it as the ratios are to each other: slip
// that was measured, and other stages, stay in it. Else slip is what is said or usual.
func For(d *job.DriveSpec, usual quantity.Reading) Wanted {
	no := quantity.Missing("needs the drive's usual speed and the usual speed wanted")
	w := Wanted{no, no, no, no}
	if !d.UsualRPM.Given() || !usual.Given() {
		return w
	}
	w.Turns = quantity.Of(usual.Value/d.UsualRPM.Value, d.UsualRPM.Origin)
	t, now := Transmission(d), Of(d)
	pulley := func(end drive.End, own, other quantity.Reading, slip float64) quantity.Figure {
		change := w.Turns.Over(now)
		switch {
		case own.Given() && change.Known() && end == drive.DriveEnd:
			return change.Times(own.Value)
		case own.Given() && change.Known():
			return now.Over(w.Turns).Times(own.Value)
		case !other.Given():
			return quantity.Missing("needs the other pulley")
		}
		size, err := drive.PulleyFor(end, w.Turns.Value, other.Value, slip)
		return quantity.OrError(size, err, other.Origin)
	}
	switch t.Kind {
	case drive.Belt:
		w.DrivenMM, w.DriverMM = pulley(drive.AlternatorEnd, d.DrivenMM, d.DriverMM, t.Slip), pulley(drive.DriveEnd, d.DriverMM, d.DrivenMM, t.Slip)
	case drive.Chain, drive.Gear:
		w.DrivenTeeth = pulley(drive.AlternatorEnd, d.DrivenTeeth, d.DriverTeeth, 0)
	}
	return w
}
