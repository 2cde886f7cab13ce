package job

// The words allowed in a field of few words, where code asks for them. The schema lists them for the
// file and the forms; an empty field holds none of them.

// Words of DriveSpec.Kind: what turns the shaft.
const (
	DriveWind   = "wind"
	DrivePedals = "pedals"
	DriveWater  = "water"
	DriveEngine = "engine"
	DriveFixed  = "fixed" // something holds it at its speed, whatever the load
)

// Words of FieldSpec.Kind: what makes the flux.
const (
	FieldWound   = "wound"
	FieldMagnets = "magnets"
)

// Words of Machine.Stator and of Machine.Rotor.
const (
	StatorSlots  = "slots"
	StatorFlat   = "flat"
	RotorInside  = "inside"
	RotorOutside = "outside"
)

// Words of BatterySpec.Load, Rectifier and HeldBy.
const (
	LoadBattery       = "battery"
	LoadResistor      = "resistor"
	LoadBus           = "bus"
	RectifierBridge   = "bridge"
	RectifierHalfWave = "half-wave"
	RectifierDoubler  = "doubler"
	HeldBySeries      = "series"
	HeldByShunt       = "shunt"
)

// Words of OldWinding.State.
const (
	StateThere = "there"
	StateGone  = "gone"
)

// Words of SpinReading.Across and Meter, of ShortReading.Leads and of OldWinding.BridgeLeads and
// OtherSet.
const (
	BridgeTwo, BridgeOneTwo, BridgeStar                    = "two leads", "one against two", "star point"
	OtherOpen, OtherJoined                                 = "open", "joined"
	AcrossLeads, AcrossStar, AcrossBridge, AcrossCapacitor = "leads", "star point", "bridge", "bridge and capacitor"
	MeterRMS, MeterAverage, MeterPeak                      = "rms", "average", "peak"
	LeadsAll, LeadsTwo                                     = "all", "two"
)
