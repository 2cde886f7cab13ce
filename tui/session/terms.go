package session

import (
	"slices"
	"strings"
)

// term is a word of the trade and what it means, in a line.
type term struct{ word, means string }

// terms are the words that a person may meet here for the first time where no field explains them. What
// a part is for is common practice, no source; the limit of Cp is that of Betz (Das Maximum der
// theoretisch möglichen Ausnützung des Windes durch Windmotoren, 1920).
var terms = []term{
	{"throw", "the slots that the two sides of a coil lie in, the first counted 1"},
	{"former", "the block that a coil is wound on before it goes into its slots"},
	{"mouth", "the opening of a slot: wires go in through it one at a time"},
	{"mean turn", "the length of one turn, once round the coil, on average"},
	{"wire fill", "how much of the room in a slot the wires take, each in a square"},
	{"winding factor", "how much of the volts is left when coils are spread"},
	{"strands in hand", "wires laid in together as if they were one thicker wire"},
	{"star point", "the joint where one end of every phase meets"},
	{"third harmonic", "volts at three times the frequency, alike in all phases"},
	{"bridge", "the diodes that make DC of what the winding gives"},
	{"net amps", "what reaches the battery, less what the rotor's coil takes of it"},
	{"remanence", "what is left of the iron's magnetism without current in the rotor"},
	{"absorption", "the volts at which a battery that is nearly full is held"},
	{"dump load", "a resistor that takes what a full battery does not"},
	{"brake", "all leads joined: current in the winding then holds the shaft"},
	{"full power", "the drive at all it gives, at the speed that comes of it"},
	{"full effort", "the legs at all they give, at the speed that comes of it"},
	{"full water", "the wheel at all the water gives, at the speed that comes of it"},
	{"loads the rotor", "takes what the wind gives, so that the blades run well"},
	{"Cp", "the part of the wind's power that blades take, 16/27 at the very most"},
	{"tip-speed ratio", "how much faster the tip of a blade is than the wind"},
	{"furls", "turns out of the wind by itself, so as not to be overloaded"},
	{"gale", "wind in which a battery might come off while nothing furls"},
}

// find is where a term occurs in a text as a word of its own, with or without an ending; -1 where it
// does not. Both are in lower case, with one space between words: a regular expression for each would
// take longer than drawing the screen.
func find(text, word string) int {
	for from := 0; ; {
		at := strings.Index(text[from:], word)
		if at < 0 {
			return -1
		}
		at += from
		after := strings.TrimPrefix(text[at+len(word):], "s")
		if (at == 0 || !letter(text[at-1])) && (after == "" || !letter(after[0])) {
			return at
		}
		from = at + len(word)
	}
}

func letter(c byte) bool { return c == '_' || c >= '0' && c <= '9' || c >= 'a' && c <= 'z' }

// Explained are the terms in a text, each with its meaning, in the order in which they occur.
func Explained(text string) []string {
	type found struct {
		at   int
		says string
	}
	var list []found
	text = strings.Join(strings.Fields(strings.ToLower(text)), " ")
	for _, t := range terms {
		if at := find(text, strings.ToLower(t.word)); at >= 0 {
			list = append(list, found{at, t.word + ": " + t.means + "."})
		}
	}
	slices.SortStableFunc(list, func(a, b found) int { return a.at - b.at })
	says := make([]string, len(list))
	for i, f := range list {
		says[i] = f.says
	}
	return says
}
