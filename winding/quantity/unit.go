// Package quantity is the foundation: a [Reading] as a person gave it, a [Figure] as it was worked out,
// where a number came from, and the units it may be given or shown in.
//
// Units are for the edges only, where text comes in and figures go out. Inside, every value is in its
// dimension's first unit and its name says so.
package quantity

import "strings"

// Unit is one unit of a dimension.
type Unit struct {
	// Suffix is how a key of the job file ends: "mm", "in". Empty: no unit.
	Suffix string
	// Name is how it is written behind a number: "mm", "°C", "m/s".
	Name string
	// Also are other ways to type it.
	Also []string
	// A value v of this unit is v·scale + offset in the base unit.
	scale, offset float64
}

// Base turns a value of this unit into the dimension's base unit.
func (u Unit) Base(v float64) float64 { return v*u.scale + u.offset }

// From turns a value in the base unit into this unit.
func (u Unit) From(base float64) float64 { return (base - u.offset) / u.scale }

// BaseSpan turns a difference of values, such as a tolerance, into the base unit.
func (u Unit) BaseSpan(v float64) float64 { return v * u.scale }

// FromSpan turns a difference in the base unit into this unit.
func (u Unit) FromSpan(base float64) float64 { return base / u.scale }

// Dimension is the units one kind of number may have, the base unit first.
type Dimension []Unit

func plain(suffix, name string, also ...string) Unit { return Unit{suffix, name, also, 1, 0} }

// The dimensions of a job. Exact factors: inch 25.4 mm, mil
// (thou) a thousandth of it, foot 0.3048 m, pound
// 0.45359237 kg, mile 1609.344 m (international yard and pound agreement, 1959); horsepower
// 550 ft·lbf/s, standard gravity 9.80665 m/s² (NIST SP 811, B.8).
var (
	None        = Dimension{plain("", "")}
	Millimetres = Dimension{plain("mm", "mm"), {"in", "in", []string{"inch", "inches", `"`, "″"}, 25.4, 0}, {"cm", "cm", nil, 10, 0}, {"mil", "mil", []string{"mils", "thou"}, 0.0254, 0}}
	SquareMM    = Dimension{plain("mm2", "mm²"), {"in2", "in²", []string{"sqin"}, 645.16, 0}}
	Metres      = Dimension{plain("m", "m"), {"ft", "ft", []string{"feet"}, 0.3048, 0}}
	Across      = append(Metres[:2:2], Unit{"in", "in", Millimetres[1].Also, 0.0254, 0}, Unit{"cm", "cm", nil, 0.01, 0}, Unit{"mm", "mm", nil, 0.001, 0}) // for a wind rotor
	Celsius     = Dimension{plain("c", "°C", "degc"), {"f", "°F", []string{"degf"}, 1 / 1.8, -32 / 1.8}}
	RPM         = Dimension{plain("rpm", "rpm", "1/min", "min-1")}
	Volts       = Dimension{plain("v", "V", "volt", "volts"), {"mv", "mV", nil, 1e-3, 0}}
	VoltsAC     = Dimension{plain("v", "V AC")} // rms, as a meter on AC shows
	VoltsDC     = Dimension{plain("v", "V DC")} // with nothing connected the peak of the wave
	Amps        = Dimension{plain("a", "A", "amp", "amps")}
	AmpHours    = Dimension{plain("ah", "Ah")}
	Ohms        = Dimension{plain("ohm", "Ω", "ohms"), {"mohm", "mΩ", []string{"milliohm"}, 1e-3, 0}}
	Millihenry  = Dimension{plain("mh", "mH"), {"uh", "µH", nil, 1e-3, 0}}
	Watts       = Dimension{plain("w", "W", "watt", "watts"), {"kw", "kW", nil, 1000, 0}, {"hp", "hp", nil, 745.69987158227022, 0}}
	Tesla       = Dimension{plain("t", "T", "tesla")}
	WindSpeed   = Dimension{plain("ms", "m/s"), {"kmh", "km/h", nil, 1 / 3.6, 0}, {"mph", "mph", nil, 0.44704, 0}}
	Torque      = Dimension{plain("nm", "N·m", "n.m")}
	Kilograms   = Dimension{plain("kg", "kg"), {"lb", "lb", []string{"lbs"}, 0.45359237, 0}}
	Hertz       = Dimension{plain("hz", "Hz", "hertz")}
	KelvinPerW  = Dimension{plain("k_per_w", "K/W"), {"f_per_w", "°F/W", []string{"f/w"}, 1 / 1.8, 0}}
	Percent     = Dimension{{Name: "%", scale: 0.01}}
	Megohms     = Dimension{plain("mohm_insulation", "MΩ")}
)

// Only is a dimension of one unit that no key uses, for showing.
func Only(name string) Dimension { return Dimension{{Name: name, scale: 1}} }

// Typed finds the unit a person wrote behind a number: by its suffix, its name or one of the other
// ways, ignoring case, except where only case distinguishes two (mΩ and MΩ are in different
// dimensions). An empty string is the first unit.
func (d Dimension) Typed(s string) (Unit, bool) {
	s = strings.ToLower(strings.TrimSpace(s))
	if s == "" {
		return d[0], true
	}
	for _, u := range d {
		if s == u.Suffix || s == strings.ToLower(u.Name) {
			return u, true
		}
		for _, also := range u.Also {
			if s == also {
				return u, true
			}
		}
	}
	return Unit{}, false
}

// Suffixed finds the unit by the ending of a key.
func (d Dimension) Suffixed(s string) (Unit, bool) {
	for _, u := range d {
		if s == u.Suffix {
			return u, true
		}
	}
	return Unit{}, false
}

// Names lists the ways to write the units, for a message: "mm or in".
func (d Dimension) Names() string {
	names := make([]string, len(d))
	for i, u := range d {
		names[i] = u.Name
	}
	return strings.Join(names, " or ")
}

// Choice is the units a person prefers.
type Choice struct {
	Inch       bool // inches, feet, pounds, and miles an hour of wind
	Fahrenheit bool
}

// For is the unit of a dimension to show, and to take a bare number in.
func (c Choice) For(d Dimension) Unit {
	switch d[0].Suffix {
	case "mm", "mm2", "m", "kg":
		if c.Inch {
			return d[1]
		}
	case "ms":
		if c.Inch {
			return d[2]
		}
	case "c", "k_per_w":
		if c.Fahrenheit {
			return d[1]
		}
	}
	return d[0]
}
