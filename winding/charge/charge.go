package charge

// Source is the alternator as the bridge sees it: a sine EMF behind resistance and inductance in each
// phase, as connected.
type Source struct {
	// EMFPeak is the peak of the open-circuit voltage of one phase, V, [0, 1e9]. In delta
	// a phase lies between two lines.
	EMFPeak float64
	// Hertz is the electrical frequency, Hz, [0, 1e9].
	Hertz float64
	// Ohms is the resistance of one phase (of one delta side in delta), Ω, [0, 1e9].
	Ohms float64
	// Henries is the synchronous inductance of one phase (of one delta side), H, [0, 1e9].
	Henries float64
	// Phases is 3, or 1 for a single winding on a bridge of four diodes, or 2 for two such a quarter of
	// a cycle apart, each with a rectifier of its own and both on one load.
	Phases int
	// Delta is true for three phases in delta. It is ignored for one or two phases.
	Delta bool
}

// Load is what the rectifier feeds, with the diodes: Volts behind Ohms on the
// direct-current side.
type Load struct {
	// Volts is the voltage the load holds at no current, V, [0, 1e9]: the rest voltage of a
	// battery, the set voltage of a converter, 0 for a plain resistor.
	Volts float64
	// Ohms is everything in series on the direct-current side, Ω, [0, 1e9]: cable and battery,
	// or the resistor. 0 is a load that holds Volts whatever the current.
	Ohms float64
	// DiodeVolts is the constant part of one diode's drop, V, [0, 1e9]; in a bridge two conduct
	// in series.
	DiodeVolts float64
	// DiodeOhms is the slope of one diode, Ω, [0, 1e9]: drop = DiodeVolts + DiodeOhms·i.
	DiodeOhms float64
	// Rectifier is how the diodes are connected; the zero value is a bridge. Half wave and doubler take
	// a single phase, or each of two.
	Rectifier Rectifier
}

// Mode says how the current flows.
type Mode string

const (
	// Off: the peak EMF between lines (twice it in a doubler) does not exceed the load plus the one or
	// two diodes in its path.
	Off Mode = "off"
	// Pulses: separate pulses of direct current with nothing between them.
	Pulses Mode = "pulses"
	// Mixed: the pulses run together, but each phase rests for part of the cycle. Two and three phases
	// only. Direct current never stops, except with two phases at half wave.
	Mixed Mode = "mixed"
	// Continuous: every phase conducts all the time, one diode or the other.
	Continuous Mode = "continuous"
)

// Point is the steady state. Every figure is finite. Watts are means over a cycle, and
// InputWatts = Watts + CopperWatts + DiodeWatts.
type Point struct {
	// DCAmps is the mean current into the load, A.
	DCAmps float64
	// DCAmpsRMS is the rms of the current into the load, ripple included, A.
	DCAmpsRMS float64
	// PhaseAmpsRMS is the rms current in a winding phase, A. In delta it is LineAmpsRMS/√3: exact
	// unless a third harmonic of EMF drives a circulating current.
	PhaseAmpsRMS float64
	// LineAmpsRMS is the rms current in a lead to the bridge, A.
	LineAmpsRMS float64
	// StarAmpsRMS is the rms current of the star point's diodes, A; 0 where there are none.
	StarAmpsRMS float64
	// DCVolts is the mean voltage at the bridge's output, V: Volts + Ohms·DCAmps.
	DCVolts float64
	// Watts is the power out of the bridge, W: the mean of voltage times current there, Volts·DCAmps +
	// Ohms·DCAmpsRMS². It includes the heat of the cable.
	Watts float64
	// BatteryWatts is the power into the held voltage, W: Volts·DCAmps. 0 for a resistor.
	BatteryWatts float64
	// CopperWatts is the heat in the winding, W: all phases, at Source.Ohms.
	CopperWatts float64
	// DiodeWatts is the heat in the bridge, W: all diodes, drop and slope.
	DiodeWatts float64
	// InputWatts is the power from the EMF, W: the mean of EMF times current over all phases. It is
	// integrated separately, not summed from the others.
	InputWatts float64
	// Mode says how the current flows.
	Mode Mode
	// Kappa is the peak EMF between lines (twice it in a doubler) over the voltage of the load and the
	// diodes in its path; current starts at 1. It is 0 where these hold no voltage and the ratio is
	// undefined.
	Kappa float64
}
