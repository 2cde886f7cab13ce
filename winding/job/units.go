package job

import "slotwright/winding/quantity"

// Units are those in which most of the job's lengths and temperatures are typed: where there is a tie,
// millimetres and °C; where none are typed, those of unsaid.
func (d Document) Units(unsaid quantity.Choice) quantity.Choice {
	var inches, degrees tally
	for path, e := range d.entries {
		in, ok := InputAt(path)
		if !ok || in.Kind != Number || len(in.Dim) < 2 {
			continue
		}
		second := e.unit.Suffix == in.Dim[1].Suffix || e.unit.Suffix == "mil" // a thousandth of an inch
		switch in.Dim[0].Suffix {
		case "mm", "mm2":
			inches.count(second)
		case "c":
			degrees.count(second)
		}
	}
	return quantity.Choice{Inch: inches.second(unsaid.Inch), Fahrenheit: degrees.second(unsaid.Fahrenheit)}
}

// tally counts values typed in the first unit of their dimension and in the second.
type tally [2]int

func (t *tally) count(second bool) {
	if second {
		t[1]++
	} else {
		t[0]++
	}
}

// second reports whether most are in the second unit; unsaid where none were typed.
func (t tally) second(unsaid bool) bool {
	if t == (tally{}) {
		return unsaid
	}
	return t[1] > t[0]
}
