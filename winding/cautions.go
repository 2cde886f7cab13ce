package winding

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// Caution is a hazard to a person that this job makes possible.
type Caution struct {
	Topic string `json:"topic"`
	Text  string `json:"text"`
	// Trial is the one it is about, "" for all.
	Trial string `json:"trial,omitempty"`
}

// cautions are those that apply to a job, the most pressing first: by what turns the machine, whether
// it has magnets, and what the battery asks for.
func cautions(o *Outcome, kind string, magnets bool, battery []string) []Caution {
	list := voltageCautions(o)
	add := func(topic, format string, args ...any) {
		list = append(list, Caution{Topic: topic, Text: fmt.Sprintf(format, args...)})
	}
	if magnets {
		add("magnets", "Magnets cannot be switched off: it gives voltage whenever it turns, most of all with nothing connected. Strong magnets crush fingers; keep them from pacemakers.")
	}
	switch kind {
	case job.DriveWind:
		add("rotor", "Stand out of the plane of a turning rotor. Stop it and tie it before you touch the alternator; never open the circuit while it turns in wind.")
	case "":
	default:
		add("guards", "Guard belts, chains and couplings before turning it. No sleeves, no gloves, hair tied.")
	}
	list = append(list, stopCautions(o, kind, magnets)...)
	list = append(list, fuseCautions(o, kind, magnets)...)
	for _, text := range battery {
		add("battery", "%s%s.", strings.ToUpper(text[:1]), text[1:])
	}
	add("testing", "Insulation and high-voltage tests only with the proper tester and by someone trained. A first run may throw a loose wire: stand aside.")
	add("fumes", "Stripping, burning enamel and baking varnish give off harmful fumes: outdoors or under extraction. Wear eye protection when cutting wire.")
	add("estimate", "Figures are design estimates, not a rating. Local codes and licensed practice decide what may be connected.")
	return list
}

// voltageCautions is one for each trial whose highest voltage is worth a word.
func voltageCautions(o *Outcome) []Caution {
	var list []Caution
	for i := range o.Trials {
		t := &o.Trials[i]
		v := t.MostVolts
		if !v.Known() {
			continue
		}
		text := ""
		switch {
		case v.Value > drive.TouchDC || v.Value/math.Sqrt2 > drive.TouchAC:
			text = fmt.Sprintf("Trial %s stands at up to %.0f V DC (%s). Above 60 V DC or 50 V AC treat it as hazardous: cover every terminal, work with it stopped and its leads joined.", t.Name, v.Value, v.Why)
		case v.Value > drive.TouchDC/2 && t.PeakDCPerRPM.Value > 0:
			text = fmt.Sprintf("Trial %s stands at up to %.0f V DC (%s). Unloaded it rises with speed: 60 V DC, from where it is hazardous, comes at %.0f alternator rpm.", t.Name, v.Value, v.Why, drive.TouchDC/t.PeakDCPerRPM.Value)
		}
		if text != "" {
			list = append(list, Caution{"voltage", text, t.Name})
		}
	}
	return list
}

// stopCautions says what shorting the leads can and cannot do.
func stopCautions(o *Outcome, kind string, magnets bool) []Caution {
	var list []Caution
	for i := range o.Trials {
		t := &o.Trials[i]
		cold, hot := t.StopsCold, t.StopsHot
		if kind != job.DriveWind || !cold.Known() || !hot.Known() {
			continue
		}
		text := fmt.Sprintf("Joining the leads of trial %s stops a turning rotor in up to %.3g m/s with a cold winding, %.3g m/s with a hot one. In more wind turn it out or furl it first: joined, it goes on turning and heats.", t.Name, cold.Value, hot.Value)
		if magnets {
			text += " Hot magnets can lose strength by it."
		}
		list = append(list, Caution{"stopping", text, t.Name})
	}
	return list
}

// fuseCautions is the fuse: one for all trials where they need the same, else one each.
func fuseCautions(o *Outcome, kind string, magnets bool) []Caution {
	say := func(fuse quantity.Figure, trial string) []Caution {
		if !fuse.Known() {
			return nil
		}
		text := fmt.Sprintf("Fuse %.3g A at the battery's post, as close to it as it goes, and a disconnect at the bridge.", fuse.Value)
		if trial != "" {
			text = fmt.Sprintf("Trial %s: fuse %.3g A at the battery's post, as close to it as it goes, and a disconnect at the bridge.", trial, fuse.Value)
		}
		if magnets {
			text += " When it blows, nothing holds the machine any more: " + loose(kind) + ". Stop the drive before you look for the fault."
		}
		return []Caution{{"fuse", text, trial}}
	}
	alike, list := true, []Caution(nil)
	for i := range o.Trials {
		t := &o.Trials[i]
		if !t.MostAmps.Known() && o.runs() {
			continue // not yet a winding
		}
		alike = alike && t.FuseAmps.Known() && t.FuseAmps.Value == o.Machine.FuseAmps.Value
		list = append(list, say(t.FuseAmps, t.Name)...)
	}
	if alike {
		return say(o.Machine.FuseAmps, "")
	}
	return list
}

// runs reports whether the output of any trial is known.
func (o *Outcome) runs() bool {
	return slices.ContainsFunc(o.Trials, func(t TrialOutcome) bool { return t.MostAmps.Known() })
}

// loose says what a machine with magnets does when its load comes off.
func loose(kind string) string {
	if kind == job.DriveWind {
		return "the rotor runs away and the voltage rises with it"
	}
	return "its voltage rises to what it gives unloaded"
}
