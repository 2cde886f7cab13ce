package quantity

import (
	"encoding/json"
	"math"
)

// written is a figure as JSON carries it.
type written struct {
	Value     *float64 `json:"value"`
	PlusMinus float64  `json:"plus_minus,omitempty"`
	From      string   `json:"from,omitempty"`
	Why       string   `json:"why,omitempty"`
}

// MarshalJSON writes an object: the value, how far it may be off where that is known, where
// it is from, and why where there is a note of it. A missing figure has the value null and
// says why; it comes from nowhere.
func (f Figure) MarshalJSON() ([]byte, error) {
	if !f.Known() {
		return json.Marshal(written{Why: f.Why})
	}
	if math.IsNaN(f.Value) || math.IsInf(f.Value, 0) {
		return json.Marshal(written{Why: outOfRange})
	}
	w := written{Value: &f.Value, PlusMinus: f.PlusMinus, From: f.Origin.String(), Why: f.Why}
	if math.IsNaN(w.PlusMinus) || math.IsInf(w.PlusMinus, 0) {
		w.PlusMinus = 0
	}
	return json.Marshal(w)
}
