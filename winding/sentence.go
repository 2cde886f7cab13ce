package winding

import (
	"fmt"
	"strings"

	"slotwright/winding/quantity"
)

// # Numbers and parts of a sentence
//
// The helpers that verdicts, findings and reasons are written with. Units are in the sentence.

// amps is a current as grid, screens and card write it.
func amps(v float64) string {
	return strings.Replace(quantity.File.Value(v, quantity.Amps[0], 3), "-", "−", 1) // a hyphen could be parted from its number at a line's end
}

// whole is a figure without decimals; it must be known.
func whole(f quantity.Figure) string { return quantity.Number(f.Value, 0) }

// figures is a number to three significant figures, whole digits always in full.
func figures(v float64) string { return quantity.Number(v, quantity.AtMost(3)) }

// asTyped is a number that a person typed, to four figures.
func asTyped(v float64) string { return quantity.Number(v, quantity.AtMost(4)) }

// listOf writes "1, 2 or 4".
func listOf(list []int) string {
	s := ""
	for i, v := range list {
		switch {
		case i == 0:
		case i == len(list)-1:
			s += " or "
		default:
			s += ", "
		}
		s += fmt.Sprint(v)
	}
	return s
}

// joined joins the parts that are not empty.
func joined(by string, parts ...string) string {
	text := ""
	for _, p := range parts {
		switch {
		case p == "":
		case text == "":
			text = p
		default:
			text += by + p
		}
	}
	return text
}
