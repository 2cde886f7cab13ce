package winding

import "slotwright/wiretable"

// Job is one machine on one bench: everything a person gave, and nothing that
// was computed. Values are already within their ranges (the reader of the job
// file sees to that); what is missing is Absent and Evaluate says what it needs.
type Job struct {
	Name  string
	Notes string
	// Invented is set on the built-in example only: no such machine exists.
	Invented bool

	Machine Machine
	Slot    SlotSpec
	Old     OldWinding
	// Spins are spin-up readings of the old winding, open circuit.
	Spins []SpinReading
	// Shorts are short-circuit readings of the old winding.
	Shorts  []ShortReading
	Field   FieldSpec
	Drive   DriveSpec
	Battery BatterySpec
	Target  Target
	Trials  []Trial
}

// Machine is the iron and its surroundings.
type Machine struct {
	Phases Reading // 1 or 3
	Slots  Reading // whole, 3 and up
	Poles  Reading // whole, even
	Layers Reading // 1 or 2
	Span   Reading // coil span in slots, 1 and up
	// Kind of winding as found: "lap", "concentric" or "wave".
	Kind string
	// Sets is 1, or 2 for dual three-phase sets 30 electrical degrees apart.
	Sets Reading

	BoreMM       Reading
	StackMM      Reading
	AirGapMM     Reading
	MeanTurnMM   Reading // measured on an old coil or a trial coil
	EndRunMM     Reading // straight run of a coil out of the core, each side
	Cooling      string  // "closed", "open" or "fan"
	ThermalClass string  // "A", "E", "B", "F", "H" (IEC 60085)
	AmbientC     Reading
	// KelvinPerWatt is the rise of the winding per watt lost in it.
	KelvinPerWatt Reading
	// IronWatts at IronRPM: drag loss (iron and friction) measured unloaded.
	IronWatts Reading
	IronRPM   Reading
}

// SlotSpec is the slot as measured, and what lines it.
type SlotSpec struct {
	// Shape is "area", "parallel", "tapered" or "round".
	Shape         string
	AreaMM2       Reading
	TopMM         Reading
	BottomMM      Reading
	DepthMM       Reading
	MouthMM       Reading
	MouthHeightMM Reading
	DepthPerWidth Reading // for shape "area": the stated proportion
	LinerMM       Reading
	WedgeMM       Reading
	SeparatorMM   Reading
	// FillLimit is the wire fill not to be passed: z·s·do²/net area.
	FillLimit Reading
}

// Wound is turns of wire in a coil: what a person counts and measures.
type Wound struct {
	Turns Reading // turns per coil
	// CoilTurns are the turns coil by coil within a group, outermost first, when
	// they are unequal; then Turns is not used.
	CoilTurns []int
	// Gauge is the wire, Strands how many are wound side by side as one.
	Gauge   wiretable.Gauge
	Strands Reading
	// AlsoGauge and AlsoStrands are a second size wound along with the first.
	AlsoGauge   wiretable.Gauge
	AlsoStrands Reading
	Build       wiretable.Build
	Metal       wiretable.Metal
}

// Bundle is what is wound in hand: one strand of the gauge when no number is given.
func (w Wound) Bundle() wiretable.Bundle {
	if w.Gauge.IsZero() {
		return wiretable.Bundle{}
	}
	first := int(w.Strands.Or(1))
	if w.AlsoGauge.IsZero() {
		return wiretable.Of(first, w.Gauge)
	}
	return wiretable.OfTwo(first, w.Gauge, int(w.AlsoStrands.Or(1)), w.AlsoGauge)
}

// OldWinding is what came out of the slots, and what its plate said.
type OldWinding struct {
	Wound
	Circuits   Reading
	Connection Connection
	LeadOhms   Reading // between two leads, meter leads taken off
	LeadOhmsC  Reading // winding temperature at that reading
	// CutInRPM is the speed at which the old winding began to charge.
	CutInRPM Reading
	// LeadMilliHenries between two leads, from a bridge (LCR meter).
	LeadMilliHenries Reading
	RatedAmps        Reading // plate, DC
	RatedVolts       Reading // plate, DC
	RatedRPM         Reading // plate, alternator shaft
}

// SpinReading is an open-circuit voltage of the old winding at a speed.
type SpinReading struct {
	RPM       Reading
	LineVolts Reading // V rms between leads
	FieldAmps Reading // wound rotor only
}

// ShortReading is a current of the old winding with its leads joined.
type ShortReading struct {
	RPM       Reading
	LineAmps  Reading // A rms in one lead
	FieldAmps Reading // wound rotor only
}

// FieldSpec is what makes the flux.
type FieldSpec struct {
	// Kind is "wound" or "magnets"; empty when not said.
	Kind string
	// GapTesla is the peak of the fundamental gap flux density, typed.
	GapTesla Reading

	// Wound rotor.
	Ohms  Reading // at 20 °C, slip ring to slip ring
	Volts Reading // what feeds it
	Amps  Reading // what it takes when charging
	Brush Reading // brush drop, both, V

	// Magnets.
	RemanenceTesla Reading // Br at 20 °C
	MagnetMM       Reading // thickness along the flux
	MagnetCover    Reading // arc over pole pitch, 0..1
	MagnetGapMM    Reading // mechanical gap in the magnet machine
	LeakageFactor  Reading // sigma, 1 and up
	MagnetC        Reading // magnet temperature
}

// DriveSpec is what turns the shaft.
type DriveSpec struct {
	// Kind is "wind", "pedals", "water", "engine" or "fixed"; empty when not said.
	Kind string

	// Transmission: "direct", "belt", "chain" or "gear".
	Transmission string
	DriverMM     Reading // pulley on the drive
	DrivenMM     Reading // pulley on the alternator
	DriverTeeth  Reading
	DrivenTeeth  Reading
	Ratio        Reading // alternator turns per drive turn, when known outright
	Slip         Reading // fraction
	Efficiency   Reading // of the transmission, fraction
	TachDriveRPM Reading // two tachometer readings under load: the real ratio
	TachAltRPM   Reading

	// Wind rotor.
	RotorM      Reading // diameter
	Curve       string  // name of the published Cp curve
	PeakCp      Reading
	PeakLambda  Reading
	MeanWindMS  Reading
	WeibullK    Reading // 2 is Rayleigh
	CutOutMS    Reading // wind at which it is furled or stopped
	GaleMS      Reading // wind to check runaway at
	AltitudeM   Reading
	AirC        Reading
	StartTorque Reading // N·m the standing rotor must overcome (cogging, friction)

	// Pedals, water wheel, engine, fixed: speeds at the drive's own shaft.
	SlowRPM  Reading
	UsualRPM Reading
	TopRPM   Reading
	Watts    Reading // what the drive can give at its usual speed
	// Points are drive power against drive rpm, typed by the person.
	Points []PowerPoint
}

// PowerPoint is one point of a drive's power curve.
type PowerPoint struct {
	RPM   Reading // drive shaft
	Watts Reading
}

// BatterySpec is what is charged, and what lies between.
type BatterySpec struct {
	// Chemistry is "flooded", "agm", "gel", "lfp" or "custom".
	Chemistry       string
	Cells           Reading
	CapacityAh      Reading
	RestVolts       Reading
	AbsorptionVolts Reading
	FloatVolts      Reading
	MaxChargeAmps   Reading
	Ohms            Reading // internal
	CableM          Reading // one way
	CableMM2        Reading // copper
	// Diode is "silicon" or "schottky".
	Diode             string
	DiodeVolts        Reading // per diode, constant part
	DiodeOhms         Reading // per diode, slope
	DiodeReverseVolts Reading // repetitive peak reverse rating
}

// Target is what the rewind is for.
type Target struct {
	Amps Reading // DC amps wanted
	// SlowRPM, UsualRPM and TopRPM are alternator speeds; when absent they
	// follow from the drive.
	SlowRPM  Reading
	UsualRPM Reading
	TopRPM   Reading
	// TestRPM and TestC are where the finished winding will be proved.
	TestRPM Reading
	TestC   Reading
	// Reference is the name of the trial the others are compared with.
	Reference string
	// Allowance is the part added to the wire to buy, for leads and joints.
	Allowance Reading
	// SpoolKg is the copper on one spool as sold.
	SpoolKg Reading
}

// Trial is one candidate winding.
type Trial struct {
	Name string // "A" to "D"
	Note string
	Wound
	Connection Connection
	Circuits   Reading
	// Span, Layers and Kind override the machine's when given.
	Span   Reading
	Layers Reading
	Kind   string
}

// Connection is how the phases are joined.
type Connection int

const (
	// Star joins the three finishes in one point.
	Star Connection = iota
	// Delta joins each finish to the next start.
	Delta
)

// String is the word for the file and the screen.
func (c Connection) String() string {
	if c == Delta {
		return "delta"
	}
	return "star"
}

// MarshalText makes JSON carry the word.
func (c Connection) MarshalText() ([]byte, error) { return []byte(c.String()), nil }
