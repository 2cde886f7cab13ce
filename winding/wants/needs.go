package wants

import (
	"strconv"
	"strings"

	"slotwright/winding/job"
)

// wayToVolts stands for the next field of the job's own way to volts.
const wayToVolts = "volts"

// fieldsOf are the reasons why figures are missing that a field removes, and the fields, the first to
// be filled in first; "[]" is the trial's number. Where one of several would do, it is the one that is
// easiest at a bench. A test holds the list against the reasons in the source.
var fieldsOf = map[string][]string{
	"needs the number of slots and poles":                                    {"machine.slots", "machine.poles"},
	"needs the number of slots and poles: the bridge was on one phase alone": {"machine.slots", "machine.poles"},
	"needs the poles":                                                       {"machine.poles"},
	"needs the bore":                                                        {"machine.bore"},
	"needs the circle":                                                      {"machine.bore"},
	"needs the bore and the poles":                                          {"machine.bore", "machine.poles"},
	"needs the bore and the stack":                                          {"machine.bore", "machine.stack"},
	"needs the bore, the stack and the poles":                               {"machine.bore", "machine.stack", "machine.poles"},
	"needs the gap, the bore, the stack and the poles":                      {"machine.air_gap", "machine.bore", "machine.stack", "machine.poles"},
	"needs the bore, the slots and the span":                                {"machine.bore", "machine.slots", "machine.poles"},
	"needs the stack":                                                       {"machine.stack"},
	"needs the stack, or a measured mean turn":                              {"machine.stack"},
	"needs the bore, or a measured mean turn":                               {"machine.bore"},
	"needs the slots, or a measured mean turn":                              {"machine.slots"},
	"needs the slots and the span, or a measured mean turn":                 {"machine.slots", "machine.poles", "machine.span"},
	"needs the diameter at the gap, the tooth or a measured mean turn":      {"machine.bore"},
	"another span than the machine's: needs the bore to find its mean turn": {"machine.bore"},
	"needs the mean turn, and an end run that is not given":                 {"machine.end_run"},
	"needs the magnets' length":                                             {"machine.stack"},
	"needs the hole and the sides of a coil":                                {"machine.hole", "machine.side"},
	"needs the side of a coil":                                              {"machine.side"},
	"needs its thickness":                                                   {"machine.thick"},
	"needs the drag loss, or bore, stack, poles and flux to guess it":       {"machine.drag"},
	"needs the rise per watt, or the bore and the stack to guess it":        {"machine.bore", "machine.stack"},
	"needs the rise per watt, or the circle of the magnets, their length and the coils' sides to guess it": {"machine.bore", "machine.stack", "machine.side"},

	"needs the outside diameter, the slot's depth and the bore": {"machine.outside", "slot.depth", "machine.bore"},
	"needs the slot's area, or its shape and widths":            {"slot.area"},
	"needs the slot's width and depth":                          {"slot.top", "slot.depth"},
	"needs the slot's width and depth, the slots and the bore":  {"slot.top", "slot.depth", "machine.slots", "machine.bore"},
	"needs the slot's width at the bottom":                      {"slot.bottom"},
	"needs the mouth's width":                                   {"slot.mouth"},
	"needs the width of the slot's mouth":                       {"slot.mouth"},

	"needs the old winding's turns":                                             {"old.turns"},
	"needs the old winding's turns and wire":                                    {"old.turns", "old.gauge"},
	"needs the old winding's ohms":                                              {"old.lead"},
	"needs the old winding's ohms, turns and wire":                              {"old.lead", "old.turns", "old.gauge"},
	"needs turns and wire, old and new":                                         {"old.turns", "old.gauge", "trial[].turns", "trial[].gauge"},
	"needs the plate's amps":                                                    {"old.plate_current"},
	"needs the plate's amps and speed":                                          {"old.plate_current", "old.plate_speed"},
	"needs the plate's amps and speed, and the old ohms":                        {"old.plate_current", "old.plate_speed", "old.lead"},
	"needs the plate's volts: the load holds none":                              {"old.plate_voltage"},
	"needs a bridge reading":                                                    {"old.inductance"},
	"needs a short-circuit reading":                                             {"short[0].speed", "short[0].line"},
	"needs a short-circuit or bridge reading, or the air gap":                   {"machine.air_gap"},
	"needs a short-circuit reading, a bridge reading, the plate or the air gap": {"machine.air_gap"},

	"needs a spin-up reading of the old winding or the speed at which it began to charge (with its turns), or a trial coil, or a gap flux density, or the magnets": {wayToVolts},
	"needs the flux and the poles":                                              {"machine.poles", wayToVolts},
	"needs the volts and a top speed":                                           {"drive.top", wayToVolts},
	"needs spin-up readings at two field currents":                              {"spin[0].speed", "spin[0].line", "spin[0].field", "spin[1].speed", "spin[1].line", "spin[1].field"},
	"needs the field current that the old winding's volts were read at":         {"spin[0].field"},
	"needs the field current, or the rotor coil's ohms":                         {"field.coil"},
	"needs the field current, or the field's supply: the load holds no voltage": {"field.current"},
	"needs the magnets": {"field.remanence", "field.magnet"},
	"needs the magnets' remanence and thickness, the gap, the bore and the stack": {"field.remanence", "field.magnet", "machine.air_gap", "machine.bore", "machine.stack"},

	"needs a trial":                             {"trial[].turns"},
	"needs the turns":                           {"trial[].turns"},
	"needs the wire":                            {"trial[].gauge"},
	"needs turns and wire":                      {"trial[].turns", "trial[].gauge"},
	"needs the wire, or the plate and the ohms": {"trial[].gauge"},

	"needs what turns it":     {"drive.kind"},
	"needs the speeds":        {"drive.usual"},
	"needs the slow speed":    {"drive.slow"},
	"needs the usual speed":   {"drive.usual"},
	"needs the top speed":     {"drive.top"},
	"needs a test speed":      {"target.test"},
	"needs the drive's power": {"drive.power"},
	"needs the drive's usual speed and power, or two points of its power curve": {"drive.usual", "drive.power"},
	"needs the drive's usual speed and the usual speed wanted":                  {"drive.usual", "target.usual"},
	"needs the ratio, both pulleys or the teeth of both wheels":                 {"drive.driver", "drive.driven", "drive.driver_teeth", "drive.driven_teeth", "drive.ratio"},
	"needs the other pulley":               {"drive.driver", "drive.driven"},
	"needs the diameter of the wind rotor": {"drive.rotor"},

	"needs the amps wanted":                              {"target.current"},
	"needs the diodes' rating":                           {"battery.diode_reverse"},
	"needs the resistor's ohms":                          {"battery.resistor"},
	"needs a rectifier that takes the phases":            {"battery.rectifier"},
	"needs the voltage that the converter's input holds": {"battery.bus"},
}

// FieldFor is the field that a missing figure of a trial (counted from 0) waits for, by the reason it
// gives: the first that has no value; ok is false for a reason that no field removes.
func FieldFor(j *job.Job, why string, trial int) (path string, ok bool) {
	for i, field := range fieldsOf[why] {
		next := applying(j, strings.Replace(field, "[]", "["+strconv.Itoa(trial)+"]", 1))
		if field == wayToVolts {
			next = toVolts(j)
		}
		if !j.GivenAt(next) {
			return next, true
		}
		if i == 0 {
			path, ok = next, true
		}
	}
	return path, ok
}

// applying is the path, or the one that replaces it where it has no meaning in the job: a wind's speeds
// come from its rotor, those of a drive not described from no drive.
func applying(j *job.Job, path string) string {
	if in, ok := job.InputAt(path); ok && in.Applies(j) {
		return path
	}
	switch {
	case strings.HasPrefix(path, "drive.") && j.Drive.Kind == job.DriveWind:
		return "drive.rotor"
	case strings.HasPrefix(path, "drive."):
		return "drive.kind"
	case strings.HasPrefix(path, "field."):
		return "field.kind"
	case path == "slot.area":
		return "slot.top"
	case strings.HasPrefix(path, "slot."):
		return "slot.shape"
	}
	return path
}
