package job

import (
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
	"slotwright/wiretable"
)

// Job is one machine on one bench: everything a person gave, and nothing that was computed. Values are
// already within their ranges (the reader of the job file sees to that); what is missing is Absent and
// Evaluate says what it needs.
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
	Shorts []ShortReading
	// Amps are readings of the old winding charging a battery.
	Amps []AmpsReading
	// Coils are trial coils, laid into the iron to read its flux.
	Coils   []CoilReading
	Field   FieldSpec
	Drive   DriveSpec
	Battery BatterySpec
	Target  Target
	Trials  []Trial
	// BareGauges are the paths of wires given as a whole number without a gauge system.
	BareGauges []string
	// LoneMillimetres are the paths of lengths in mm that are alone among inches.
	LoneMillimetres []string
	// WarmAtRest are the paths of temperatures of a winding at rest, given in °C in a job whose lengths
	// are in inches, that would be those of a room in °F: 50 to 110.
	WarmAtRest []string
	// AsWound is what was really put in, each time.
	AsWound []AsWound
}

// Machine is the iron and its surroundings.
type Machine struct {
	Phases quantity.Reading // 1, 2 (90 electrical degrees apart) or 3
	Slots  quantity.Reading // whole, 3 and up
	Poles  quantity.Reading // whole, even
	Layers quantity.Reading // 1 or 2
	Span   quantity.Reading // coil span in slots, 1 and up
	// DeadSlots hold no coil side; BareTeeth no coil, where coils lie round one tooth: tooth n
	// is between slots n and n + 1.
	DeadSlots, BareTeeth []int
	// Kind of winding as found: "lap", "concentric" or "wave".
	Kind string
	// Sets is 1, or 2 for dual three-phase sets 30 electrical degrees apart.
	Sets quantity.Reading

	// Rotor is where the rotor turns: "inside" the stator, or "outside", round it.
	Rotor string
	// Stator is "slots", or "flat" for coils laid flat and cast, without iron, between magnets on both
	// sides; HoleMM, SideMM and ThickMM are those of one such coil.
	Stator                  string
	HoleMM, SideMM, ThickMM quantity.Reading
	BoreMM                  quantity.Reading // diameter of the stator at the air gap
	StackMM                 quantity.Reading
	OutsideMM               quantity.Reading // diameter of the iron on the side away from the gap
	AirGapMM                quantity.Reading
	MeanTurnMM              quantity.Reading // measured on an old coil or a trial coil
	EndRunMM                quantity.Reading // straight run of a coil out of the core, each side
	Cooling                 string           // "closed", "open" or "fan"
	ThermalClass            string           // "A", "E", "B", "F", "H" (IEC 60085)
	AmbientC                quantity.Reading
	// KelvinPerWatt is the rise of the winding per watt lost in it.
	KelvinPerWatt quantity.Reading
	// IronWatts at IronRPM: drag loss (iron and friction) measured unloaded.
	IronWatts quantity.Reading
	IronRPM   quantity.Reading
}

// SlotSpec is the slot as measured, and what lines it.
type SlotSpec struct {
	// Shape is "area", "parallel", "tapered", "round" or "pear" (package slot).
	Shape         string
	AreaMM2       quantity.Reading
	TopMM         quantity.Reading
	BottomMM      quantity.Reading
	DepthMM       quantity.Reading
	MouthMM       quantity.Reading
	MouthHeightMM quantity.Reading
	DepthPerWidth quantity.Reading // for shape "area": the stated proportion
	ToothMM       quantity.Reading // width of the tooth that a coil lies round
	LinerMM       quantity.Reading
	WedgeMM       quantity.Reading
	SeparatorMM   quantity.Reading
	// FillLimit is the wire fill that must not be passed: z·s·do²/net area.
	FillLimit quantity.Reading
	// SideMM is width and depth where the area was written as the two, "4.2 x 11"; AreaMM2 is then
	// their product. BySides marks a slot whose shape, width and depth were given that way. See
	// AsMeasured.
	SideMM  [2]quantity.Reading
	BySides bool
}

// AsMeasured is the slot as its area implies where that was written as width × depth and no other shape
// was given: a parallel slot of these two, which is what typing them on the screen makes of them
// ([Document.Shaped]). A file that has them is read the same way and stays as it is.
func (s SlotSpec) AsMeasured() SlotSpec {
	if !s.SideMM[0].Given() || s.Shape != "" && s.Shape != slot.AreaOnly.String() {
		return s
	}
	s.Shape, s.TopMM, s.DepthMM = slot.Parallel.String(), s.SideMM[0], s.SideMM[1]
	s.AreaMM2, s.DepthPerWidth, s.SideMM, s.BySides = quantity.Reading{}, quantity.Reading{}, [2]quantity.Reading{}, true
	return s
}

// Wound is the turns and wire of a coil: what a person counts and measures.
type Wound struct {
	Turns quantity.Reading // turns per coil
	// CoilTurns are the turns coil by coil within a group, outermost first, when they are unequal; then
	// Turns is not used.
	CoilTurns []int
	// Gauge is the wire, Strands how many are wound side by side as one.
	Gauge   wiretable.Gauge
	Strands quantity.Reading
	// AlsoGauge and AlsoStrands are a second size wound along with the first.
	AlsoGauge   wiretable.Gauge
	AlsoStrands quantity.Reading
	Build       wiretable.Build
	Metal       wiretable.Metal
}

// Bundle is the wires wound in hand: one strand of the gauge when no number is given.
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

// OldWinding is what came out of the slots, and its plate.
type OldWinding struct {
	// State is "gone" where nothing of it is left; empty means that it is there.
	State string
	Wound
	Circuits   quantity.Reading
	Connection layout.Connection
	LeadOhms   quantity.Reading // between two leads, meter leads taken off
	LeadOhmsC  quantity.Reading // winding temperature at that reading
	// CutInRPM is the speed at which the old winding began to charge.
	CutInRPM quantity.Reading
	// BeganAmps is the current seen at that speed, A DC.
	BeganAmps quantity.Reading
	// LeadMilliHenries between two leads, from a bridge (LCR meter).
	LeadMilliHenries quantity.Reading
	// BridgeLeads is what it was on: "two leads", "one against two" or "star point"; OtherSet the state
	// of the other set's leads meanwhile: "open" or "joined".
	BridgeLeads, OtherSet string
	RatedAmps             quantity.Reading // plate, DC
	RatedVolts            quantity.Reading // plate, DC
	RatedRPM              quantity.Reading // plate, alternator shaft
}

// Gone reports whether nothing is left of the old winding to be counted or measured.
func (o *OldWinding) Gone() bool { return o.State == StateGone }

// FieldSpec is what makes the flux.
type FieldSpec struct {
	// Kind is "wound" or "magnets"; empty when not said.
	Kind string
	// GapTesla is the peak of the fundamental gap flux density, typed.
	GapTesla quantity.Reading

	// Wound rotor.
	Ohms  quantity.Reading // at 20 °C, slip ring to slip ring
	CoilC quantity.Reading // temperature of the coil at work, °C
	Volts quantity.Reading // what feeds it
	Amps  quantity.Reading // what it takes when charging
	Brush quantity.Reading // brush drop, both, V

	// Magnets.
	RemanenceTesla quantity.Reading // Br at 20 °C
	Magnets        quantity.Reading // how many; half the poles where bare iron poles stand between
	MagnetMM       quantity.Reading // thickness along the flux
	MagnetCover    quantity.Reading // arc over pole pitch, 0..1
	MagnetGapMM    quantity.Reading // mechanical gap in the magnet machine
	LeakageFactor  quantity.Reading // sigma, 1 and up
	MagnetC        quantity.Reading // magnet temperature
}

// DriveSpec is what turns the shaft.
type DriveSpec struct {
	// Kind is "wind", "pedals", "water", "engine" or "fixed"; empty when not said.
	Kind string

	// Transmission: "direct", "belt", "chain" or "gear".
	Transmission string
	DriverMM     quantity.Reading // pulley on the drive
	DrivenMM     quantity.Reading // pulley on the alternator
	DriverTeeth  quantity.Reading
	DrivenTeeth  quantity.Reading
	Ratio        quantity.Reading // alternator turns per drive turn: as counted, or of all stages before their slip
	RatioAs      RatioForm        // how Ratio was written
	RatioTyped   string           // Ratio as it was given, which has its stages, see Stages
	Slip         quantity.Reading // fraction
	Efficiency   quantity.Reading // of the transmission, fraction
	TachDriveRPM quantity.Reading // two tachometer readings under load: the real ratio
	TachAltRPM   quantity.Reading

	// Wind rotor.
	RotorM      quantity.Reading // diameter
	Curve       string           // name of the published Cp curve
	PeakCp      quantity.Reading
	PeakLambda  quantity.Reading
	MeanWindMS  quantity.Reading
	WeibullK    quantity.Reading // 2 is Rayleigh
	CutOutMS    quantity.Reading // wind at which it is furled or stopped
	GaleMS      quantity.Reading // wind to check runaway at
	AltitudeM   quantity.Reading
	AirC        quantity.Reading
	StartTorque quantity.Reading // N·m the standing rotor must overcome (cogging, friction)

	// Pedals, water wheel, engine, fixed: speeds at the drive's own shaft.
	SlowRPM  quantity.Reading
	UsualRPM quantity.Reading
	TopRPM   quantity.Reading
	Watts    quantity.Reading // what the drive can give at its usual speed
	// Points are drive power against drive rpm, typed by the person.
	Points []PowerPoint
}

// PowerPoint is one point of a drive's power curve.
type PowerPoint struct {
	RPM   quantity.Reading // drive shaft
	Watts quantity.Reading
}

// BatterySpec is what is charged, and what lies between.
type BatterySpec struct {
	// Chemistry is "flooded", "agm", "gel", "lfp" or "custom".
	Chemistry       string
	Cells           quantity.Reading
	CapacityAh      quantity.Reading
	RestVolts       quantity.Reading
	AbsorptionVolts quantity.Reading
	ChargingVolts   quantity.Reading // while it takes charge
	FloatVolts      quantity.Reading
	MaxChargeAmps   quantity.Reading
	MostAmps        quantity.Reading // net, the regulator's limit
	HeldBy          string           // with magnets: "series" or "shunt"
	Ohms            quantity.Reading // internal
	CableM          quantity.Reading // one way
	CableMM2        quantity.Reading // copper
	// Load is what is fed: "battery", "resistor" or "bus".
	Load         string
	ResistorOhms quantity.Reading // when hot
	BusVolts     quantity.Reading // held whatever the current
	// Rectifier is "bridge", "half-wave" or "doubler".
	Rectifier string
	// StarDiodes is "yes" where there are two more diodes at the star point.
	StarDiodes string
	// Diode is "silicon" or "schottky".
	Diode             string
	DiodeVolts        quantity.Reading // per diode, constant part
	DiodeOhms         quantity.Reading // per diode, slope
	DiodeReverseVolts quantity.Reading // repetitive peak reverse rating
}

// Target is what the rewind is for.
type Target struct {
	Amps quantity.Reading // DC amps wanted
	// SlowRPM, UsualRPM and TopRPM are alternator speeds; when absent they
	// follow from the drive.
	SlowRPM  quantity.Reading
	UsualRPM quantity.Reading
	TopRPM   quantity.Reading
	// TestRPM and TestC are where the finished winding will be proved.
	TestRPM quantity.Reading
	TestC   quantity.Reading
	// Reference is the name of the trial the others are compared with.
	Reference string
	// Allowance is the fraction added to the wire to buy, for leads and joints.
	Allowance quantity.Reading
	// SpoolKg is the copper on one spool as sold.
	SpoolKg quantity.Reading
}

// Trial is one candidate winding.
type Trial struct {
	Name string // "A" to "D"
	Note string
	Wound
	Connection layout.Connection
	Circuits   quantity.Reading
	// Span, Layers and Kind override the machine's when given.
	Span   quantity.Reading
	Layers quantity.Reading
	Kind   string
}

// AsWound is a winding as it was really put in, beside the plan: turns, wire and connection, where it
// does not give them, are the trial's.
type AsWound struct {
	// Trial is the name of the trial that was wound, Date when, as typed.
	Trial, Date string
	Wound
	// Connection is "star" or "delta", Kind "lap", "concentric" or "wave"; they, Circuits, Span and Layers
	// are the trial's where not given.
	Connection, Kind       string
	Circuits, Span, Layers quantity.Reading
	// Filled is "room", "full" or "forced"; empty when not said.
	Filled string
	// Metres and Kg are the wire used, all strands together.
	Metres    quantity.Reading
	Kg        quantity.Reading
	LeadOhms  quantity.Reading // between two leads, mean of the pairs
	LeadPairs []float64        // ohms of each pair where more than their mean was given, U-V, V-W, W-U
	LeadStep  float64          // ohms: the last digit written; 0 where that is not known
	LeadOhmsC quantity.Reading // winding temperature at that reading
	LineVolts quantity.Reading // V rms between two leads, open, at RPM, mean of the pairs
	LinePairs []float64        // V rms of each pair where more than their mean was given, U-V, V-W, W-U
	LineStep  float64          // V: the last digit written; 0 where that is not known
	RPM       quantity.Reading
	FieldAmps quantity.Reading // of a wound rotor, at the reading of LineVolts
	CutInRPM  quantity.Reading
	// WarmC, or the ohms WarmLeadOhms between two leads, gives the winding's temperature after an hour
	// with WarmAmps DC out of the bridge, at WarmRPM in air of WarmAirC.
	WarmC        quantity.Reading
	WarmLeadOhms quantity.Reading
	WarmAmps     quantity.Reading
	WarmRPM      quantity.Reading
	WarmAirC     quantity.Reading
	Note         string
}
