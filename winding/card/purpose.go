package card

import (
	"fmt"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/ratio"
)

// iron says which stator the sheet is for, so that it is not hung over another one.
func (w *writer) iron() {
	m := &w.job.Machine
	counted := func(r quantity.Reading) string {
		if !r.Given() {
			return blank
		}
		return fmt.Sprint(r.Whole())
	}
	size := func(r quantity.Reading) string {
		return w.orBlank(asFigure(r), quantity.Millimetres, asGiven)
	}
	switch {
	case w.flat():
		w.entry("STATOR", fmt.Sprintf("%s flat coils in a ring, no iron, between magnets of %s poles; circle through their middles %s, their length %s",
			counted(m.Slots), counted(m.Poles), size(m.BoreMM), size(m.StackMM)))
	case m.Rotor == job.RotorOutside:
		w.entry("STATOR", fmt.Sprintf("%s slots, %s poles, rotor outside; %s across at the mouths, stack %s", counted(m.Slots), counted(m.Poles), size(m.BoreMM), size(m.StackMM)))
	default:
		w.entry("STATOR", fmt.Sprintf("%s slots, %s poles; bore %s, stack %s", counted(m.Slots), counted(m.Poles), size(m.BoreMM), size(m.StackMM)))
	}
}

// purpose is what the winding is for: what it charges, and what turns it.
func (w *writer) purpose() {
	through := map[string]string{job.RectifierHalfWave: ", half wave", job.RectifierDoubler: ", doubler"}[w.job.Battery.Rectifier]
	if through == "" {
		through = ", bridge"
	}
	w.entry("FOR", w.o.Machine.Feeds+through+w.held()+w.excited()+"; turned by "+w.turnedBy())
}

// excited is the chosen field current, or the rotor's separate supply: the battery alone drives another
// current, and the winding then does not perform as planned. "" if the battery feeds the rotor.
func (w *writer) excited() string {
	f := &w.job.Field
	switch {
	case f.Kind != job.FieldWound:
	case f.Amps.Given() && w.held() != "":
		return "; ROTOR at most " + w.amount(asFigure(f.Amps), quantity.Amps, asGiven)
	case f.Amps.Given():
		return "; ROTOR set to " + w.amount(asFigure(f.Amps), quantity.Amps, asGiven)
	case f.Volts.Given():
		return "; ROTOR fed from " + w.amount(asFigure(f.Volts), quantity.Volts, asGiven) + " of its own"
	}
	return ""
}

// held is the regulator's limit into the battery.
func (w *writer) held() string {
	most := w.job.Battery.MostAmps
	if !most.Given() || orWord(w.job.Battery.Load, "battery") != "battery" {
		return ""
	}
	return ", held to " + w.amount(asFigure(most), quantity.Amps, asGiven) + " by a regulator"
}

// driveNames are the kinds of drive as named on the sheet.
var driveNames = map[string]string{job.DriveWind: "wind rotor", job.DrivePedals: "pedals", job.DriveWater: "water wheel", job.DriveEngine: "engine", job.DriveFixed: "something at a fixed speed"}

// turnedBy is the drive, and how it is geared to the alternator.
func (w *writer) turnedBy() string {
	d := &w.job.Drive
	name := driveNames[d.Kind]
	if name == "" {
		return blank
	}
	parts := []string{name}
	if d.Kind == job.DriveWind && d.RotorM.Given() {
		parts[0] += " " + w.amount(asFigure(d.RotorM), quantity.Metres, asGiven)
	}
	how, wheels := d.Transmission, ""
	switch ratio.By(d) { // wheels that the ratio does not come from are not mentioned
	case "drive.driver":
		wheels = fmt.Sprintf(" %s driving %s", w.amount(asFigure(d.DriverMM), quantity.Millimetres, asGiven), w.amount(asFigure(d.DrivenMM), quantity.Millimetres, asGiven))
	case "drive.driver_teeth":
		wheels = fmt.Sprintf(" %d teeth driving %d", d.DriverTeeth.Whole(), d.DrivenTeeth.Whole())
	}
	ratio := w.o.Machine.Ratio
	ratio.PlusMinus = 0
	switch {
	case ratio.Known() && ratio.Value == 1 && wheels == "" && (how == "" || how == "direct"):
		return strings.Join(append(parts, "direct"), ", ")
	case ratio.Known():
		parts = append(parts, fmt.Sprintf("%s%s: alternator %s turns to 1", orWord(how, "geared"), wheels, ratio.Text(quantity.None[0], 3)))
	default:
		parts = append(parts, orWord(how, "geared")+" 1 : "+blank)
	}
	return strings.Join(parts, ", ")
}

func orWord(word, other string) string {
	if word == "" {
		return other
	}
	return word
}
