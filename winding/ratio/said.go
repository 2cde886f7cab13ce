package ratio

import (
	"fmt"
	"math"
	"slices"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # A ratio given more than once
//
// Tachometers, a ratio, pulleys and teeth each give the alternator's speed. One of them is used, in
// that order; where another disagrees, both are named, as either may be wrong. What is not used is
// never printed as if it were.

// said is one way in which a job gives its ratio.
type said struct {
	path  string  // its field
	name  string  // its name
	words string  // its value, up to the turns
	turns float64 // of the alternator per turn of the drive, slip deducted; 0: not given
}

// allSaid is every way that is filled in, the one used first.
func allSaid(d *job.DriveSpec) []said {
	list := []said{tachSays(d), ratioSays(d)}
	wheels := []said{pulleysSay(d), teethSay(d)}
	if d.Transmission == "chain" || d.Transmission == "gear" {
		wheels[0], wheels[1] = wheels[1], wheels[0]
	}
	return slices.DeleteFunc(append(list, wheels...), func(s said) bool { return !(s.turns > 0) })
}

// tachSays is the ratio by two tachometer readings.
func tachSays(d *job.DriveSpec) said {
	s := said{path: "drive.tach_drive", name: "the tachometer readings"}
	if d.TachDriveRPM.Given() && d.TachAltRPM.Given() {
		s.turns, _, _ = drive.RealRatio(d.TachDriveRPM.Value, d.TachAltRPM.Value, 0)
	}
	return s
}

func ratioSays(d *job.DriveSpec) said {
	s := said{path: "drive.ratio", name: "the ratio", words: "the ratio is"}
	if d.Ratio.Given() {
		s.turns, _ = Transmission(d).Turns()
	}
	return s
}

func pulleysSay(d *job.DriveSpec) said {
	s := said{path: "drive.driver", name: "the pulleys", words: fmt.Sprintf("pulleys of %s mm driving %s mm are", asTyped(d.DriverMM.Value), asTyped(d.DrivenMM.Value))}
	t := drive.Transmission{Kind: drive.Belt, DriverMM: d.DriverMM.Value, DrivenMM: d.DrivenMM.Value, Slip: d.Slip.Or(defaultSlip)}
	s.turns, _ = t.Turns()
	return s
}

func teethSay(d *job.DriveSpec) said {
	s := said{path: "drive.driver_teeth", name: "the teeth", words: fmt.Sprintf("wheels of %s teeth driving %s are", asTyped(d.DriverTeeth.Value), asTyped(d.DrivenTeeth.Value))}
	s.turns, _ = drive.Transmission{Kind: drive.Chain, DriverTeeth: d.DriverTeeth.Value, DrivenTeeth: d.DrivenTeeth.Value}.Turns()
	return s
}

// By is the field that the drive's ratio comes from: drive.tach_drive, drive.ratio, drive.driver
// or drive.driver_teeth; "" where the shaft is the drive's own, or its speed is not known.
func By(d *job.DriveSpec) string {
	own := map[string]string{"belt": "drive.driver", "chain": "drive.driver_teeth", "gear": "drive.driver_teeth"}[d.Transmission]
	for _, s := range allSaid(d) {
		if s.path == "drive.tach_drive" || s.path == "drive.ratio" || s.path == own {
			return s.path
		}
	}
	return ""
}

// Idle says why a field of the drive that is filled in has no effect, "" where it has.
func Idle(d *job.DriveSpec, path string) string {
	by := By(d)
	switch path {
	case "drive.ratio":
		if by == "drive.tach_drive" {
			return "the tachometer readings are used"
		}
	case "drive.driver", "drive.driven":
		return idleWheels(by, "drive.driver")
	case "drive.driver_teeth", "drive.driven_teeth":
		return idleWheels(by, "drive.driver_teeth")
	case "drive.slip":
		return idleSlip(d, by)
	}
	return ""
}

// idleWheels is why wheels have no effect, where the ratio comes from something else. Tachometers give
// the slip by them.
func idleWheels(by, own string) string {
	switch by {
	case own, "", "drive.tach_drive":
		return ""
	case "drive.ratio":
		return "the ratio is used"
	}
	return "the other wheels are used"
}

func idleSlip(d *job.DriveSpec, by string) string {
	switch {
	case d.Transmission != "belt":
		return "no belt is said to lie between"
	case by == "drive.tach_drive":
		return "the tachometer readings have it in them"
	case by == "drive.ratio" && d.RatioAs.Stages == 0:
		return "the ratio is turns as counted, which have it in them"
	}
	return ""
}

// How far two ways to give a ratio may differ, relative, before one of them is wrong: a pulley is
// measured to a twentieth at worst; under load, as tachometers see it, a belt may slip a tenth. Common
// practice, no source.
const (
	saidApart = 0.05
	readApart = 0.10
)

// Contradiction is a way of giving the ratio that disagrees with the one that is used.
type Contradiction struct {
	// Path is its field, Words what both say.
	Path, Words string
}

// Contradictions are the ways of giving the ratio that disagree with the one used; none where none of
// them is.
func Contradictions(d *job.DriveSpec) (apart []Contradiction) {
	list := allSaid(d)
	if len(list) == 0 || By(d) != list[0].path {
		return nil
	}
	used, most := list[0], saidApart
	if used.path == "drive.tach_drive" {
		most = readApart
	}
	for _, other := range list[1:] {
		if math.Abs(math.Log(other.turns/used.turns)) > most {
			apart = append(apart, Contradiction{other.path, fmt.Sprintf("%s %s turns of the alternator for one of the drive, not the %s of %s, by which it goes",
				other.words, times(other.turns), times(used.turns), used.name)})
		}
	}
	return apart
}

// times is a number of turns to three figures.
func times(turns float64) string { return quantity.File.Number(turns, quantity.AtMost(3)) }

// asTyped is a number that a person typed, to four figures.
func asTyped(v float64) string { return quantity.Number(v, quantity.AtMost(4)) }
