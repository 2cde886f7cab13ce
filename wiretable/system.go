package wiretable

// System is the way a wire size is named.
type System uint8

// The systems. The zero System names nothing: it belongs to the zero Gauge.
const (
	// AWG is the American wire gauge of ASTM B258, 0000 to 50.
	AWG System = iota + 1
	// SWG is the imperial standard wire gauge (Order in Council of
	// 23 August 1883, later BS 3737), 7/0 to 50.
	SWG
	// IEC is a preferred bare diameter of IEC 60317-0-1, in millimetres.
	IEC
	// MetricDiameter is any diameter measured in millimetres.
	MetricDiameter
	// InchDiameter is any diameter measured in inches or mils.
	InchDiameter
)

// String is the short name for the screen and the file; "none" for zero.
func (s System) String() string {
	switch s {
	case AWG:
		return "AWG"
	case SWG:
		return "SWG"
	case IEC:
		return "IEC"
	case MetricDiameter:
		return "mm"
	case InchDiameter:
		return "in"
	}
	return "none"
}

// Systems lists them in the order in which they are offered.
func Systems() []System { return []System{AWG, SWG, IEC, MetricDiameter, InchDiameter} }
