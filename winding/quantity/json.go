package quantity

import (
	"encoding/json"
	"math"
	"strconv"
)

// MarshalJSON writes an object: the value, its ± where that is known, its origin, and why where there
// is a note of it. A missing figure has the value null and says why; it has no origin. The object is
// built here and not by tags, since a report has a thousand of them.
func (f Figure) MarshalJSON() ([]byte, error) {
	room := make([]byte, 0, 96)
	switch {
	case !f.Known():
		return withWhy(append(room, `{"value":null`...), f.Why)
	case math.IsNaN(f.Value) || math.IsInf(f.Value, 0):
		return withWhy(append(room, `{"value":null`...), outOfRange)
	}
	b := strconv.AppendFloat(append(room, `{"value":`...), f.Value, 'g', -1, 64)
	if off := f.PlusMinus; off != 0 && !math.IsNaN(off) && !math.IsInf(off, 0) {
		b = strconv.AppendFloat(append(b, `,"plus_minus":`...), off, 'g', -1, 64)
	}
	if from := f.Origin.String(); from != "" {
		b = append(append(append(b, `,"from":"`...), from...), '"')
	}
	return withWhy(b, f.Why)
}

// withWhy ends the object, with a note of why where there is one.
func withWhy(b []byte, why string) ([]byte, error) {
	if why != "" {
		text, err := json.Marshal(why)
		if err != nil {
			return nil, err
		}
		b = append(append(b, `,"why":`...), text...)
	}
	return append(b, '}'), nil
}
