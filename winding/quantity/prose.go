package quantity

import (
	"regexp"
	"strconv"
	"strings"
	"sync"
)

// # Units in sentences
//
// A sentence of the program has its numbers in the first unit of their dimension: "passes the mouth
// with 1.64 mm to spare". For a person who prefers inches or °F the sentence is converted on its way
// out, so that nobody takes the 0 of "below 0 °C" for 0 °F. A wire size is a name, as "IEC 0.75 mm",
// "1.8 mm over" and "0.71 mm bare", and stays.

// measure matches a number of a sentence, or two with "to" or "x" between them, and its unit.
var measure = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(IEC )?(-?\d+(?:\.\d+)?)( to | and | x )?(-?\d+(?:\.\d+)?)? (mm²|mm|°C|kg|K/W|m/s|m)(?: over\b| bare\b)?`)
})

// spoken are the dimensions that occur in sentences, by the name of their first unit.
var spoken = map[string]Dimension{"mm²": SquareMM, "mm": Millimetres, "°C": Celsius, "kg": Kilograms, "K/W": KelvinPerW, "m/s": WindSpeed, "m": Metres}

// inMetres is a rule of thumb with the unit in its factor, inFeet the same for feet: 5 W × 0.3048.
const inMetres, inFeet = "5 × litres per second × metres of fall", "1.5 × litres per second × feet of fall"

// spokenFigures is the number of figures of a converted number, where it had no more.
const spokenFigures = 3

// Words is a sentence of the program with its numbers in the chosen units.
func (c Choice) Words(sentence string) string { return c.turn(sentence, false) }

// WordsOfRule is [Choice.Words] for what a maker or a standard has laid down: its own number follows in
// brackets.
func (c Choice) WordsOfRule(sentence string) string {
	if c.Fahrenheit {
		sentence = strings.Replace(sentence, "for each kelvin", "for each kelvin (1.8 °F)", 1)
	}
	return c.turn(sentence, true)
}

func (c Choice) turn(sentence string, both bool) string {
	if !c.Inch && !c.Fahrenheit || !strings.ContainsAny(sentence, "0123456789") { // most have none: it spares them the pattern
		return sentence
	}
	if c.Inch {
		sentence = strings.Replace(sentence, inMetres, inFeet, 1)
	}
	var b strings.Builder
	done := 0
	for _, at := range measure().FindAllStringSubmatchIndex(sentence, -1) {
		whole := sentence[at[0]:at[1]]
		part := func(i int) string {
			if at[2*i] < 0 {
				return ""
			}
			return sentence[at[2*i]:at[2*i+1]]
		}
		dim, known := spoken[part(5)]
		name := part(1) != "" || strings.HasSuffix(whole, " over") || strings.HasSuffix(whole, " bare")
		if !known || name || goesOn(sentence[at[1]:]) || c.For(dim).Suffix == dim[0].Suffix {
			continue
		}
		b.WriteString(sentence[done:at[0]])
		b.WriteString(c.spoken(dim, part(2), part(3), part(4)))
		if both {
			b.WriteString(" (" + whole + ")")
		}
		done = at[1]
	}
	return b.String() + sentence[done:]
}

// goesOn reports whether what looked like a unit continues, as in "3 m/min" and "12 mm²/m".
func goesOn(rest string) bool {
	for _, r := range rest {
		return r == '/' || r == '²' || r == '·' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
	}
	return false
}

// spoken is one number or two of a dimension in the chosen unit.
func (c Choice) spoken(dim Dimension, first, between, second string) string {
	u := c.For(dim)
	words := inUnit(dim, u, first)
	if second != "" {
		words += between + inUnit(dim, u, second)
	}
	return words + " " + u.Name
}

// inUnit converts a number of the first unit to another one, keeping its precision. Whole degrees stay
// whole.
func inUnit(dim Dimension, u Unit, number string) string {
	v, _ := strconv.ParseFloat(number, 64)
	if dim[0].Suffix == Celsius[0].Suffix && !strings.Contains(number, ".") {
		return Number(u.From(v), 0)
	}
	figures := len(strings.TrimLeft(strings.NewReplacer(".", "", "-", "").Replace(number), "0"))
	return File.Value(u.From(v), u, min(max(figures, spokenFigures), convertedFigures))
}
