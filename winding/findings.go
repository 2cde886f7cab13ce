package winding

import (
	"fmt"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # Findings
//
// Each subject has a file and a type of its own, with only what it examines: the iron and the
// slot (findings_machine.go), the old winding and its readings (oldchecks.go, findings_readings.go),
// the rotor and the battery (findings_supply.go), the drive (findings_drive.go), a trial at rest
// (findings_trial.go) and where it runs (findings_running.go), what was really wound
// (findings_wound.go). Here is only their order: the job first, then trial by trial.

// doubts collects the job's findings.
type doubts struct{ list []Finding }

// add adds a finding, its text written by the format.
func (d *doubts) add(f Finding, format string, args ...any) {
	f.Text = fmt.Sprintf(format, args...)
	d.list = append(d.list, f)
}

// findings is everything doubtful or broken, the job first, then trial by trial.
func findings(b *Bench, o *Outcome) []Finding {
	d := &doubts{}
	j, m := b.job, &b.machine
	iron := aboutMachine{machine: m, slot: &j.Slot, field: &j.Field, room: &b.room, layouts: &b.layouts, speeds: &b.speeds, iron: &b.iron}
	read := aboutReadings{
		machine: m, field: &j.Field, spins: b.spins, shorts: b.shorts, amps: j.Amps, trialCoils: j.Coils, meanTurn: j.Machine.MeanTurnMM,
		flux: &b.flux, turn: &b.turn, henries: &b.henries, fit: b.fit,
	}
	iron.measured(d)
	read.single(d)
	doubtWires(d, j)
	doubtLone(d, j)
	doubtFrequency(d, j.Spins, m.Poles)
	read.routes(d)
	read.gapAlone(d, firstHenries(o))
	read.carried(d)
	read.coils(d)
	read.together(d)
	iron.magnets(d)
	iron.flat(d)
	aboutOld{machine: m, slot: &j.Slot, room: &b.room, layouts: &b.layouts, turn: &b.turn, flux: &b.flux, old: &b.old, henries: &b.henries}.callOut(d, o.Old)
	if !read.beyondIron(d) { // else the teeth are not what is wrong
		iron.teeth(d, o.Machine.ToothTesla)
	}
	aboutField{rotor: &b.rotor, given: &j.Field, plate: j.Old.RatedVolts}.callOut(d)
	supply := aboutBattery{given: &j.Battery, spec: b.dc.spec, other: b.dc.notBattery != "", wound: b.rotor.wound}
	supply.callOut(d)
	supply.unused(d)
	aboutDrive{&j.Drive, &j.Target, b.speeds.ratio}.callOut(d)
	if o.Reversed == nil {
		turnedRound{&j.Drive, &j.Target, &b.speeds, cutInsOf(o.Trials, o.Old)}.callOut(d)
	}
	doubtFuse(d, o.Machine.FuseAmps, j.Battery.CableMM2)
	doubtRest(d, j, o.Wound)
	doubtRecords(d, j, o.Wound, o.magnets)
	doubtReference(d, j.Target.Reference, j.Trials)
	trial := aboutTrial{slots: j.Machine.Slots, field: &j.Field, layouts: &b.layouts}
	star := aboutStar{fitted: j.Battery.StarDiodes == "yes", field: &j.Field, dc: &b.dc, speeds: &b.speeds}
	running := aboutRunning{drive: &b.drive, speeds: &b.speeds, air: &b.air, drag: &b.drag, dc: &b.dc, reverse: j.Battery.DiodeReverseVolts, wanted: j.Target.Amps, holder: b.bed.holder, curveRead: b.flux.curve != nil}
	doubtCooling(d, o, &b.air)
	for i := range o.Trials {
		t, at := j.Trials[i], pathsOf(i)
		trial.callOut(d, at, t, &o.Trials[i])
		running.callOut(d, at, t, &o.Trials[i])
		star.callOut(d, at, t, &o.Trials[i])
	}
	return o.Reversed.before(d.list)
}

// firstHenries is the inductance of the first trial that has one.
func firstHenries(o *Outcome) quantity.Figure {
	for i := range o.Trials {
		if f := o.Trials[i].PhaseMilliHenries; f.Known() {
			return f
		}
	}
	return quantity.Missing("needs a trial")
}

// pathsOf gives the paths of a trial's fields.
func pathsOf(i int) func(field string) string {
	return func(field string) string { return job.PathOf("trial", i, field) }
}

// doubtReference is about the trial the others are compared with.
func doubtReference(d *doubts, name string, trials []job.Trial) {
	if name == "" || len(trials) == 0 {
		return
	}
	names := make([]string, len(trials))
	for i, t := range trials {
		if t.Name == name {
			return
		}
		names[i] = t.Name
	}
	d.add(Finding{Severity: Doubt, Path: "target.reference", Fix: "write one of " + strings.Join(names, ", ")},
		"there is no trial %q to compare with; the first, %s, is taken", name, names[0])
}
