package winding

import (
	"strings"

	"slotwright/winding/job"
)

// Want is one of the few things that matter first: a field, and in words what waits for it.
type Want struct {
	// Path is the field: "machine.slots", "spin[0].line".
	Path string
	// Unlocks is what can be told once it is there.
	Unlocks string
}

// Wants are the few things of a job that the figures wait for, in the order in which they
// are counted and measured at a bench: iron, slot, what came out, what it gave while it
// still turned, the winding to try, and what will turn it. Fields that have no meaning in
// the job are left out. The order is common practice, no source.
func Wants(j *job.Job) []Want {
	const stripped, unread = "volts, where nothing of the old winding is left to read", "volts, where nothing was read of it turning"
	const layout, turn = "which coil lies where", "the mean turn: ohms, metres and kilos of wire"
	list := []Want{
		{"name", "a name on the card"},
		{"machine.stator", "which sizes are asked for"},
		{"machine.slots", layout}, {"machine.poles", layout}, {"machine.phases", layout}, {"machine.span", layout}, {"machine.layers", layout},
		{"machine.rotor", "the mean turn, and the gap's place"}, {"machine.bore", turn}, {"machine.stack", turn},
		{"machine.hole", turn}, {"machine.side", "the room for wire"}, {"machine.thick", "the room for wire"},
		{"slot.area", "wire fill and the turns that fit"},
		{"slot.top", "the slot's area"}, {"slot.bottom", "the slot's area"}, {"slot.depth", "the slot's area"},
		{"old.turns", "volts, from what the old winding gave"}, {"old.gauge", "what the old ohms bear out"},
		{"old.lead", "a mean turn that was measured"},
		{"field.kind", "what the rotor costs, and what happens at the top speed"},
		{"spin[0].speed", "volts, and where charging begins"}, {"spin[0].line", "volts, and where charging begins"},
		{"spin[0].field", "volts at another field"},
		{"coil[0].turns", stripped}, {"coil[0].speed", stripped}, {"coil[0].voltage", stripped}, {"coil[0].field", "volts at another field"},
		{"field.remanence", unread}, {"field.magnet", unread}, {"field.coil", "what the rotor takes off the amps"},
		{"trial[0].turns", "the first trial's volts, fill, ohms and weight"}, {"trial[0].gauge", "the first trial's fill, ohms, weight and limit"},
		{"machine.air_gap", "amps: the winding's inductance"},
		{"drive.kind", "the amps that arrive"}, {"drive.rotor", "the amps that arrive"}, {"drive.through", "the speed of the alternator"},
		{"drive.driver", "the speed of the alternator"}, {"drive.driven", "the speed of the alternator"},
		{"drive.driver_teeth", "the speed of the alternator"}, {"drive.driven_teeth", "the speed of the alternator"},
		{"drive.slow", "amps when it turns slowly"}, {"drive.usual", "amps most of the time"}, {"drive.top", "the highest volts"},
		{"drive.power", "the amps that arrive"},
		{"battery.rectifier", "where charging begins"}, {"battery.chemistry", "where charging begins"}, {"battery.cells", "where charging begins"},
	}
	kept := list[:0]
	for _, f := range list {
		if in, ok := job.InputAt(f.Path); ok && in.Applies(j) && !spared(j, f.Path) {
			kept = append(kept, f)
		}
	}
	return kept
}

// spared reports whether something else that was said does in place of a field.
func spared(j *job.Job, path string) bool {
	switch path {
	case "machine.rotor":
		return j.Machine.Rotor == "" && !roundOneTooth(j)
	case "spin[0].field", "coil[0].field":
		if j.Field.Kind == "magnets" {
			return true
		}
	case "field.remanence", "field.magnet":
		return j.Field.Kind != "magnets" || oldIsTold(j) || len(j.Coils) > 0 || j.Field.GapTesla.Given()
	case "drive.driver", "drive.driven", "drive.driver_teeth", "drive.driven_teeth":
		return j.Drive.Ratio.Given()
	}
	switch table, name, _ := strings.Cut(path, "."); table {
	case "old":
		return !oldIsTold(j) && (len(j.Coils) > 0 || magnetsAreTold(j)) || name == "lead" && j.Machine.MeanTurnMM.Given() && !j.Old.LeadOhms.Given()
	case "spin[0]":
		return len(j.Spins) == 0 && (len(j.Coils) > 0 || magnetsAreTold(j) && !oldIsTold(j) || j.Field.GapTesla.Given() || j.Old.CutInRPM.Given())
	case "coil[0]":
		return len(j.Coils) == 0 && (oldIsTold(j) || magnetsAreTold(j) || j.Field.GapTesla.Given())
	}
	return false
}

// oldIsTold reports whether anything of the old winding was said: it is there to be read.
func oldIsTold(j *job.Job) bool {
	return j.Old.Turns.Given() || !j.Old.Gauge.IsZero() || j.Old.LeadOhms.Given() || j.Old.CutInRPM.Given() || len(j.Spins) > 0
}

// magnetsAreTold reports whether the flux can be told from the magnets alone.
func magnetsAreTold(j *job.Job) bool {
	return j.Field.Kind == "magnets" && j.Field.RemanenceTesla.Given() && j.Field.MagnetMM.Given()
}

// roundOneTooth reports whether the coils lie round one tooth each.
func roundOneTooth(j *job.Job) bool {
	in, _ := job.InputAt("slot.tooth")
	return in.Applies(j)
}

// reasons are words of the reasons why a figure is missing, and the field that mends each.
// The first that is in a reason holds.
var reasons = []struct{ words, path string }{
	{"number of slots", "machine.slots"},
	{"spin-up reading", "spin[0].line"},
	{"the old winding's turns and wire", "old.turns"}, {"turns and wire, old", "old.turns"},
	{"bridge reading", "old.inductance"}, {"short-circuit", "short[0].line"},
	{"plate", "old.plate_current"},
	{"slot's area", "slot.area"}, {"slot's width at the bottom", "slot.bottom"}, {"mouth", "slot.mouth"},
	{"slot's width and depth", "slot.top"}, {"outside diameter", "machine.outside"},
	{"drag loss", "machine.drag"},
	{"magnets", "field.remanence"},
	{"rotor coil's ohms", "field.coil"}, {"field current", "field.current"},
	{"amps wanted", "target.current"}, {"diodes' rating", "battery.diode_reverse"},
	{"what turns it", "drive.kind"}, {"drive's power", "drive.power"}, {"usual speed and power", "drive.power"},
	{"top speed", "drive.top"}, {"the speeds", "drive.usual"},
	{"air gap", "machine.air_gap"},
	{"bore", "machine.bore"}, {"stack", "machine.stack"}, {"poles", "machine.poles"},
	{"wire", "trial[].gauge"}, {"turns", "trial[].turns"},
}

// FieldFor is the field that a missing figure of a trial (counted from 0) waits for, by the
// reason it gives; ok is false for a reason that no field mends.
func FieldFor(j *job.Job, why string, trial int) (path string, ok bool) {
	if !strings.Contains(why, "needs") {
		return "", false
	}
	for _, r := range reasons {
		if strings.Contains(why, r.words) {
			return applying(j, strings.Replace(r.path, "[]", "["+string(rune('0'+trial))+"]", 1)), true
		}
	}
	return "", false
}

// applying is the path, or where it has no meaning in the job the one that takes its place:
// a wind's speeds come from its rotor, nobody's from a drive that is not said.
func applying(j *job.Job, path string) string {
	if in, ok := job.InputAt(path); ok && in.Applies(j) {
		return path
	}
	switch {
	case strings.HasPrefix(path, "drive.") && j.Drive.Kind == "wind":
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
