package winding

import (
	"fmt"
	"strings"

	"slotwright/winding/battery"
	"slotwright/winding/drive"
)

// Caution is something that can hurt a person, where this job makes it possible.
type Caution struct {
	Topic string `json:"topic"`
	Text  string `json:"text"`
}

// cautions is what applies to the job, the most pressing first.
func (b *Bench) cautions(o *Outcome) []Caution {
	var list []Caution
	add := func(topic, format string, args ...any) {
		list = append(list, Caution{topic, fmt.Sprintf(format, args...)})
	}
	if t, volts := highestOpen(o); volts > 0 {
		switch {
		case volts > drive.TouchDC || volts/1.4142 > drive.TouchAC:
			add("voltage", "Trial %s gives %.0f V DC peak unloaded at %.0f rpm. Above 60 V DC or 50 V AC treat it as hazardous: cover every terminal, work with it stopped and its leads joined.",
				t, volts, b.speeds.top.Value)
		case volts > drive.TouchDC/2:
			add("voltage", "Trial %s gives %.0f V DC peak unloaded at %.0f rpm. It rises with speed: 60 V DC, from where it is hazardous, comes at %.0f rpm.",
				t, volts, b.speeds.top.Value, drive.TouchDC/volts*b.speeds.top.Value)
		}
	}
	if b.job.Field.Kind == "magnets" {
		add("magnets", "Magnets cannot be switched off: it gives voltage whenever it turns, most of all with nothing connected. Strong magnets crush fingers; keep them from pacemakers.")
	}
	switch b.job.Drive.Kind {
	case "wind":
		add("rotor", "Stand out of the plane of a turning rotor. Stop it and tie it before you touch the alternator; never open the circuit while it turns in wind.")
	case "":
	default:
		add("guards", "Guard belts, chains and couplings before turning it. No sleeves, no gloves, hair tied.")
	}
	for _, text := range battery.Cautions(b.dc.spec) {
		add("battery", "%s%s.", strings.ToUpper(text[:1]), text[1:])
	}
	add("testing", "Insulation and high-voltage tests only with the proper tester and by someone trained. A first run may throw a loose wire: stand aside.")
	add("fumes", "Stripping, burning enamel and baking varnish give off harmful fumes: outdoors or under extraction. Wear eye protection when cutting wire.")
	add("estimate", "Figures are design estimates, not a rating. Local codes and licensed practice decide what may be connected.")
	return list
}

// highestOpen is the trial with the highest open voltage at the top speed.
func highestOpen(o *Outcome) (name string, volts float64) {
	for i := range o.Trials {
		if v := o.Trials[i].OpenAtTopVolts; v.Known() && v.Value > volts {
			name, volts = o.Trials[i].Name, v.Value
		}
	}
	return name, volts
}
