package wound

import (
	"fmt"
	"math"
	"strings"

	"slotwright/winding/layout"
)

// # What readings that are off point to
//
// All of this is common practice, no source. The same words are on the card, before anything is read,
// and beside a reading, where the phase is known.
//
// Ohms go with the turns of a phase and with its joints, volts with its turns alone. So if both are low
// in one phase, turns are missing, or shorted, and then carry a current of their own as soon as it
// turns; if the ohms are high and the volts right it is a joint, a strand or thinner wire; if the volts
// are low and the ohms right it is a coil that opposes the others.

// The faults of a phase, in words.
const (
	badJoint  = "a cold joint, a strand broken or left out, or thinner wire"
	lostTurns = "turns missing in a coil, or shorted, wire on wire (turned with nothing connected a shorted coil gets warm)"
	turnsOver = "a coil with more turns than counted"
	wireOver  = "thicker wire or a strand more than said"
	coilWrong = "a coil joined the wrong way round, which takes off twice its volts, or laid in a wrong place"
)

// fewVolts is the least share of its volts that a phase with a reversed coil lacks: one coil of twenty
// in series (common practice, no source).
const fewVolts = 0.1

// what is the words for a phase whose ohms and volts are off, relative; known says which were read.
func what(ohms, volts float64, ohmsKnown, voltsKnown bool) string {
	switch {
	case ohmsKnown && voltsKnown:
		return whatOfBoth(ohms, volts)
	case ohmsKnown && ohms > 0:
		return badJoint + " where its volts are like the others'"
	case ohmsKnown:
		return lostTurns + "; its volts are low then too"
	case volts > 0:
		return turnsOver + "; its ohms are high then too"
	}
	return coilWrong + "; where its ohms are low too, turns missing or shorted"
}

func whatOfBoth(ohms, volts float64) string {
	switch {
	case ohms < 0 && volts < 0:
		return lostTurns
	case ohms > 0 && volts > 0:
		return turnsOver
	case ohms < 0:
		return wireOver + ", for its volts are not low"
	case volts < 0 && ohms == 0 && volts > -fewVolts:
		return "the speed was another at its pairs, or a coil of it lies in a wrong place, for its ohms are like the others'"
	case volts < 0 && ohms == 0:
		return coilWrong + ", for its ohms are like the others'"
	case volts < 0:
		return coilWrong + "; and its ohms are high by themselves: " + badJoint
	case ohms > 0:
		return badJoint + ", for its volts are not high"
	}
	return "its ohms do not bear that out: the speed was another at that pair"
}

// speaksOfPhases explains pairs that differ: which phase, how, and why; "" where they do not tell.
func (r *Record) speaksOfPhases(field string) string {
	own := r.LeadOhms20
	if field == "line" {
		own = r.LineVolts
	}
	var words []string
	for _, s := range own.unlike() {
		ohms, ohmsKnown := r.LeadOhms20.of(s.phase)
		volts, voltsKnown := r.LineVolts.of(s.phase)
		words = append(words, r.where(s)+r.lost(ohms, volts)+": "+what(ohms, volts, ohmsKnown, voltsKnown))
	}
	return strings.Join(words, "; ")
}

// where is a phase and its deviation: "phase V, in U-V and V-W, is 8.4 % low".
func (r *Record) where(s side) string {
	word, in := highOrLow(s.part), "in "+r.leads.pair(s.phase/3*3+(s.phase+2)%3)+" and "+r.leads.pair(s.phase)
	if r.delta {
		in = "across " + r.leads.pair(s.phase)
	}
	by := fmt.Sprintf("%.2g %% %s", 100*math.Abs(s.part), word)
	if math.Abs(s.part) > 1 {
		by = "many times as " + word
	}
	return fmt.Sprintf("phase %s, %s, is %s", r.leads.phase(s.phase), in, by)
}

// lost is how many turns a phase lacks by its ohms, where its volts are low too: ", by its ohms about
// 19 turns of 228".
func (r *Record) lost(ohms, volts float64) string {
	if ohms >= 0 || volts >= 0 || r.series <= 0 {
		return ""
	}
	return fmt.Sprintf(", by its ohms about %.0f turns of %.0f", max(1, -ohms*r.series), r.series)
}

// Signs is where to look when readings are off, in the order of the bench, for a winding of 1, 2 or 3
// phases.
func Signs(phases int, joined layout.Connection, magnets bool) []string {
	list := []string{"No reading between two leads: an open joint, or enamel left on a wire end."}
	switch {
	case phases != 3:
		list = append(list, "Ohms high: "+badJoint+". Low: "+lostTurns+".")
	case joined == layout.Delta:
		list = append(list, "One phase off moves the pair across it four times as far as the other two. Its ohms high: "+badJoint+". Ohms and volts low: "+lostTurns+".",
			fmt.Sprintf("Volts of a pair over %.1f %% off the mean, ohms alike: ", 100*VoltsBalance)+coilWrong+"; open the delta and read each phase.")
	default:
		list = append(list, "Ohms of two pairs high: in the phase that is in both "+badJoint+". Two low, volts too: in that phase "+lostTurns+".",
			"Volts of two pairs 58 % of the third: the phase in both is turned round: change its two ends. "+fmt.Sprintf("A pair over %.1f %% off the mean, ohms alike: ", 100*VoltsBalance)+coilWrong+".")
	}
	return append(list,
		"All ohms off by one part: another wire, other turns or another mean turn than the plan's: weigh what is left on the spool.",
		"All volts low, ohms right: "+weaker(magnets)+"; then the turns of a coil.")
}

// weaker is what lowers all volts.
func weaker(magnets bool) string {
	if magnets {
		return "speed, weak magnets or gap"
	}
	return "speed, field current or gap"
}

// stronger is what raises all volts.
func stronger(magnets bool) string {
	if magnets {
		return "speed more than said, or stronger magnets"
	}
	return "speed or field current more than said"
}
