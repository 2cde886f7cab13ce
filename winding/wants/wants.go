package wants

import (
	"fmt"
	"slices"
	"strings"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// Want is one of the few things that matter first: a field, and in words what waits for it.
type Want struct {
	// Path is the field: "machine.slots", "spin[0].line".
	Path string
	// Unlocks is what can be said once it is there.
	Unlocks string
	// Part is its heading.
	Part string
	// Way is the way to volts that it belongs to, "" for everything else: see [WaysToVolts].
	Way string
	// Instead is set while another way to volts is begun or complete, and where something replaces it:
	// nothing waits for this one.
	Instead bool
}

// The parts of the first things, in the order of the bench.
const (
	partIron  = "First things, in the order of the bench"
	partVolts = "Volts: one of these ways is enough, the best first"
	partTrial = "The first trial"
	partAmps  = "Amps: the air gap, and with a wound rotor the plate"
	partDrive = "What turns it, and what it charges"
)

// Of is the few things of a job that the figures wait for, in the order in which they are counted
// and measured at a bench: iron, slot, what came out, what it gave while it still turned, the winding
// to try, and what will turn it. Fields that have no meaning in the job are left out. The order is
// common practice, no source.
func Of(j *job.Job) []Want {
	list := allWants(j)
	kept := list[:0]
	for _, f := range list {
		if in, ok := job.InputAt(f.Path); ok && in.Applies(j) && !spared(j, f.Path) {
			kept = append(kept, f)
		}
	}
	return kept
}

// allWants is the first things, including those that have no meaning in the job.
func allWants(j *job.Job) []Want {
	const layout, turn = "the layout: which coil lies where", "the mean turn: ohms, length and weight of wire"
	const plate = "amps: with a wound rotor the air gap alone tells little of them"
	list := under(partIron, []Want{
		{Path: "name", Unlocks: "a name on the card"},
		{Path: "machine.stator", Unlocks: "which sizes are asked for"},
		{Path: "machine.slots", Unlocks: layout}, {Path: "machine.poles", Unlocks: layout}, {Path: "machine.phases", Unlocks: layout},
		{Path: "machine.span", Unlocks: layout}, {Path: "machine.layers", Unlocks: layout},
		{Path: "machine.rotor", Unlocks: "the mean turn, and the gap's place"}, {Path: "machine.bore", Unlocks: turn}, {Path: "machine.stack", Unlocks: turn},
		{Path: "machine.hole", Unlocks: turn}, {Path: "machine.side", Unlocks: "the room for wire"}, {Path: "machine.thick", Unlocks: "the room for wire"},
		{Path: "slot.area", Unlocks: "wire fill and the turns that fit"},
		{Path: "slot.top", Unlocks: "the slot's area"}, {Path: "slot.bottom", Unlocks: "the slot's area"}, {Path: "slot.depth", Unlocks: "the slot's area"},
		{Path: "old.state", Unlocks: "what is asked of it below"}, {Path: "old.turns", Unlocks: "volts, from what the old winding gave"}, {Path: "old.gauge", Unlocks: "a check of the old ohms"}, {Path: "old.strands", Unlocks: "a check of the old ohms, when it is more than one"},
		{Path: "old.connection", Unlocks: "the old ohms and volts: a delta's leads show a third of a star's ohms"},
		{Path: "old.lead", Unlocks: "the mean turn, as the old ohms measure it"},
		{Path: "field.kind", Unlocks: "what the rotor takes, and the volts at the top speed"},
		{Path: "field.coil", Unlocks: "what the rotor takes off the amps"},
	})
	ways := wantsOfWays(j)
	list = append(list, ways...)
	list = append(list, under(partTrial, []Want{
		{Path: "trial[0].turns", Unlocks: "the first trial's volts, fill, ohms and weight"}, {Path: "trial[0].gauge", Unlocks: "the first trial's fill, ohms, weight and limit"},
	})...)
	list = append(list, under(partAmps, append([]Want{{Path: "machine.air_gap", Unlocks: "amps: the winding's inductance"}}, thickness(j, ways)...))...)
	list = append(list, under(partAmps, []Want{
		{Path: "old.plate_voltage", Unlocks: plate}, {Path: "old.plate_current", Unlocks: plate}, {Path: "old.plate_speed", Unlocks: plate},
	})...)
	list = append(list, under(partDrive, []Want{
		{Path: "drive.kind", Unlocks: "the amps that arrive"}, {Path: "drive.rotor", Unlocks: "the amps that arrive"}, {Path: "drive.through", Unlocks: "the speed of the alternator"},
		{Path: "drive.driver", Unlocks: "the speed of the alternator"}, {Path: "drive.driven", Unlocks: "the speed of the alternator"},
		{Path: "drive.driver_teeth", Unlocks: "the speed of the alternator"}, {Path: "drive.driven_teeth", Unlocks: "the speed of the alternator"},
		{Path: "drive.ratio", Unlocks: "the speed of the alternator, in place of pulleys or teeth"},
		{Path: "drive.slow", Unlocks: "amps when it turns slowly"}, {Path: "drive.usual", Unlocks: "amps most of the time"}, {Path: "drive.top", Unlocks: "the highest volts"},
		{Path: "drive.power", Unlocks: "the amps that arrive"},
		{Path: "battery.rectifier", Unlocks: "where charging begins"}, {Path: "battery.chemistry", Unlocks: "where charging begins"}, {Path: "battery.cells", Unlocks: "where charging begins"},
	})...)
	return list
}

// thickness asks for the magnets' thickness for the inductance, where no way to volts asks for it
// already: a magnet counts as gap for the winding's field, and is most of it. Their remanence is asked
// for by the way to volts only, since it has no effect where another way is complete.
func thickness(j *job.Job, ways []Want) []Want {
	if j.Field.Kind != job.FieldMagnets || slices.ContainsFunc(ways, func(w Want) bool { return w.Path == magnetThickness }) {
		return nil
	}
	return []Want{{Path: magnetThickness, Unlocks: fmt.Sprintf("amps: a magnet is gap to the winding's field, and most of it; taken as %.0f mm", field.UsualMagnetMM), Instead: true}}
}

// magnetThickness is a field with two uses.
const magnetThickness = "field.magnet"

// Paths are those of the fields that are among the first things of some job.
func Paths() []string {
	some := job.Job{Field: job.FieldSpec{Kind: job.FieldMagnets}, Old: job.OldWinding{CutInRPM: quantity.Known(1)}}
	var paths []string
	for _, w := range append(allWants(&some), allWants(&job.Job{})...) {
		paths = append(paths, w.Path)
	}
	return paths
}

// under are wants with the part that they belong to.
func under(part string, list []Want) []Want {
	for i := range list {
		list[i].Part = part
	}
	return list
}

// spared reports whether something else that was given makes a field unnecessary.
func spared(j *job.Job, path string) bool {
	switch path {
	case "drive.driver", "drive.driven", "drive.driver_teeth", "drive.driven_teeth":
		return j.Drive.Ratio.Given()
	case "drive.ratio":
		d := &j.Drive
		whole := d.DriverMM.Given() && d.DrivenMM.Given() || d.DriverTeeth.Given() && d.DrivenTeeth.Given()
		return !d.Ratio.Given() && (d.Transmission == "" || d.Transmission == "direct" || whole)
	case "old.plate_voltage", "old.plate_current", "old.plate_speed":
		return j.Field.Kind != job.FieldWound || !j.Old.Turns.Given() || len(j.Shorts) > 0 || len(j.Amps) > 0 || j.Old.LeadMilliHenries.Given()
	case "old.strands": // typed with the wire where there are several
		return !j.Old.Strands.Given()
	case magnetThickness: // inductance and volts were both read
		read := j.Old.Turns.Given() && (len(j.Shorts) > 0 || len(j.Amps) > 0 || j.Old.LeadMilliHenries.Given())
		return read && slices.ContainsFunc(WaysToVolts(j), func(w Way) bool { return w.Whole }) && !j.Field.MagnetMM.Given()
	case "old.lead":
		if j.Machine.MeanTurnMM.Given() && !j.Old.LeadOhms.Given() {
			return true
		}
	}
	return strings.HasPrefix(path, "old.") && j.Old.State == "" && !oldIsTold(j) && (len(j.Coils) > 0 || magnetsAreTold(j))
}

// oldIsTold reports whether anything of the old winding was given: it is there to be read.
func oldIsTold(j *job.Job) bool {
	return j.Old.Turns.Given() || !j.Old.Gauge.IsZero() || j.Old.LeadOhms.Given() || j.Old.CutInRPM.Given() || len(j.Spins) > 0
}

// magnetsAreTold reports whether the flux follows from the magnets alone.
func magnetsAreTold(j *job.Job) bool {
	return j.Field.Kind == job.FieldMagnets && j.Field.RemanenceTesla.Given() && j.Field.MagnetMM.Given()
}
