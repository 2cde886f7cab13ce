package job

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"slotwright/winding/quantity"
)

// What a person may have meant by a value that cannot be used: the other unit, the whole numbers beside
// a fractional one, a throw for a span, Hz for rpm.

// meant says what to do about a number out of range: the unit in which it would be in range, else to
// check the figure.
func (f *Input) meant(value float64, u quantity.Unit) string {
	if f.Allowed != nil {
		return f.How
	}
	var may []string
	for _, other := range f.Dim {
		if v := other.Base(value); other.Suffix != u.Suffix && v >= f.Min && v <= f.Max && f.speaksOf(other) {
			may = append(may, strconv.FormatFloat(value, 'g', 6, 64)+" "+other.Name)
		}
	}
	if len(may) > 0 {
		return strings.Join(may, ", or ") + "? Write the unit behind it"
	}
	if u.Name == "" {
		return "check the figure"
	}
	return "check the figure and its unit"
}

// speaksOf reports whether people give such a field in a unit without naming it: nobody uses cm, except
// for a rotor, and thousandths of an inch are for gaps and paper, whose fields allow no more than an
// inch.
func (f *Input) speaksOf(u quantity.Unit) bool {
	return (u.Suffix != "cm" || f.Dim[0].Suffix == "m") && (u.Suffix != "mil" || f.Max <= 1000*u.Base(1))
}

// example shows how a number of the field is written.
func (f *Input) example(u quantity.Unit) string {
	if f.Path() == "battery.cable_area" {
		return "write it like 16 " + u.Name + ", 6 AWG, or two side by side like 2 x 16 " + u.Name
	}
	return strings.TrimSpace("write it like 12, ~12 for a guess, or 12 ±1 " + u.Name)
}

// wholesBeside are the whole numbers next to a fractional one.
func wholesBeside(v float64) string {
	down, up := math.Floor(v), math.Ceil(v)
	if down < 1 {
		return "write " + strconv.FormatFloat(max(up, 1), 'f', -1, 64)
	}
	return fmt.Sprintf("write %.0f or %.0f", down, up)
}

// spanOf is a span from a throw, "1 to 4" or "1-4": the slots from side to side. Anything else stays as
// it is.
func spanOf(typed string) string {
	words := strings.NewReplacer("to", " ", "-", " ", "–", " ").Replace(strings.ToLower(typed))
	parts := strings.Fields(words)
	if len(parts) != 2 || !strings.ContainsAny(strings.TrimLeft(typed, " -"), "t-–") {
		return typed
	}
	from, errFrom := strconv.Atoi(parts[0])
	to, errTo := strconv.Atoi(parts[1])
	if errFrom != nil || errTo != nil || from < 1 || to <= from {
		return typed
	}
	return strconv.Itoa(to - from)
}

// ofShaft are the tables whose speeds are of the alternator's shaft, where the volts' frequency gives
// it.
var ofShaft = map[string]bool{"spin": true, "short": true, "amps": true, "coil": true, "wound": true, "old": true}

// fromHertz is a speed in rpm from the frequency of the volts: Hz × 120 / poles. Without poles, and for
// anything else, it stays as it is.
func (f *Input) fromHertz(typed string, j *Job) string {
	if !ofShaft[f.Table] || f.Kind != Number || f.Dim[0].Suffix != "rpm" || !j.Machine.Poles.Given() || !strings.HasSuffix(strings.ToLower(typed), "hz") {
		return typed
	}
	q, err := parseQuantity(typed)
	if err != nil || !strings.EqualFold(q.unit, "hz") {
		return typed
	}
	perHertz := 120 / j.Machine.Poles.Value
	text := strconv.FormatFloat(q.value*perHertz, 'g', 6, 64)
	if q.guessed {
		text = "~" + text
	}
	if q.plusMinus > 0 {
		text += " ±" + strconv.FormatFloat(q.plusMinus*perHertz, 'g', 3, 64)
	}
	return text
}
