package job

import "slotwright/winding/quantity"

// Units are those that most of the job's lengths and temperatures are typed in; where as many are
// typed in either, or none, millimetres and °C.
func (d Document) Units() quantity.Choice {
	inches, degrees := 0, 0
	for path, e := range d.entries {
		in, ok := InputAt(path)
		if !ok || in.Kind != Number || len(in.Dim) < 2 {
			continue
		}
		second := -1
		if e.unit.Suffix == in.Dim[1].Suffix {
			second = 1
		}
		switch in.Dim[0].Suffix {
		case "mm", "mm2":
			inches += second
		case "c":
			degrees += second
		}
	}
	return quantity.Choice{Inch: inches > 0, Fahrenheit: degrees > 0}
}
