package winding

import "encoding/json"

// What was not worked out is null in JSON, even where the screen draws something in its place: the
// air's temperature for a winding whose own is unknown, full field where that does not hold the
// voltage.

// MarshalJSON writes winding_c as null when it is not known or rises without end.
func (p RunPoint) MarshalJSON() ([]byte, error) {
	type plain RunPoint
	return json.Marshal(struct {
		plain
		WindingC *float64 `json:"winding_c"`
	}{plain(p), known(p.WindingC, p.followed && !p.TooHot)})
}

// MarshalJSON writes the point's own values beside the drive's.
func (o Operating) MarshalJSON() ([]byte, error) {
	type plain RunPoint
	return json.Marshal(struct {
		Meeting
		plain
		WindingC *float64 `json:"winding_c"`
	}{o.Meeting, plain(o.RunPoint), known(o.WindingC, o.followed && !o.TooHot)})
}

// MarshalJSON writes winding_c as null when it is not known or rises without end.
func (p DrivePoint) MarshalJSON() ([]byte, error) {
	type plain DrivePoint
	return json.Marshal(struct {
		plain
		WindingC *float64 `json:"winding_c"`
	}{plain(p), known(p.WindingC, p.followed && !p.TooHot)})
}

// MarshalJSON writes hold_field_a as null when full field does not hold the voltage.
func (p FieldPoint) MarshalJSON() ([]byte, error) {
	type plain FieldPoint
	return json.Marshal(struct {
		plain
		HoldAmps *float64 `json:"hold_field_a"`
	}{plain(p), known(p.HoldAmps, p.Enough)})
}

func known(v float64, ok bool) *float64 {
	if !ok {
		return nil
	}
	return &v
}
