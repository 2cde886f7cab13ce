package job

import (
	"slotwright/winding/quantity"
)

func fieldKind(kind string) func(*Job) bool {
	return func(j *Job) bool { return j.Field.Kind == kind }
}

// magnetsMatter: with magnets, and with a wound rotor that they may replace.
func magnetsMatter(j *Job) bool { return j.Field.Kind != "" }

// ofMagnets is fields that describe the magnets.
func ofMagnets(fields []Input) []Input {
	for i := range fields {
		fields[i].when, fields[i].magnets = magnetsMatter, true
	}
	return fields
}

var fieldFields = append([]Input{
	{Table: "field", Name: "kind", Label: "Rotor", Kind: Word, Words: []string{FieldWound, FieldMagnets}, Ghost: "not said",
		Help: "wound: a coil fed through brushes. magnets: permanent.", How: "Does it pull a screwdriver with no current?",
		at: func(j *Job, _ int) any { return &j.Field.Kind }},
	{Table: "field", Name: "gap_flux", Label: "Gap flux density", Dim: quantity.Tesla, Min: 0.01, Max: 2,
		Help: "Peak of the fundamental flux density in the air gap; used when there is no spin-up reading.", How: "From a gauss meter or a design; small claw rotors 0.4 to 0.7 T. Better: spin the old winding up.",
		at: func(j *Job, _ int) any { return &j.Field.GapTesla }},
	{Table: "field", Name: "coil", Label: "Rotor coil", Dim: quantity.Ohms, Min: 0.05, Max: 500, when: fieldKind(FieldWound),
		Help: "Resistance of the rotor coil, ring to ring, cold.", How: "Ohm meter on the slip rings.",
		at: func(j *Job, _ int) any { return &j.Field.Ohms }},
	{Table: "field", Name: "coil_at", Label: "… at work", Dim: quantity.Celsius, Min: -50, Max: 250, Default: amount(80, Practice), when: fieldKind(FieldWound),
		Help: "Temperature of the rotor coil when it works: its current and watts go by it.", How: "Its ohms right after a run: 0.39 % more a kelvin.",
		at: func(j *Job, _ int) any { return &j.Field.CoilC }},
	{Table: "field", Name: "supply", Label: "Field supply", Dim: quantity.Volts, Min: 0.5, Max: 500, Ghost: "the battery's", when: fieldKind(FieldWound),
		Help: "Voltage that feeds the rotor coil. Left out it is that of the battery, and follows it: less at rest, more nearly full. A resistor in series takes its share of it as heat, which no figure counts.", How: "Usually the battery, through the regulator.",
		at: func(j *Job, _ int) any { return &j.Field.Volts }},
	{Table: "field", Name: "current", Label: "Field current", Dim: quantity.Amps, Min: 0.01, Max: 100, Ghost: "what the supply drives", when: fieldKind(FieldWound),
		Help: "Current in the rotor coil when charging. Where it is less than the supply drives its watts are the coil's own, as a regulator that chops takes them; a plain rheostat takes supply volts × amps.", How: "Ammeter in the lead to the brushes.",
		at: func(j *Job, _ int) any { return &j.Field.Amps }},
	{Table: "field", Name: "brush", Label: "Brush drop", Dim: quantity.Volts, Min: 0, Max: 5, Default: amount(1, Practice), when: fieldKind(FieldWound),
		Help: "Volts lost in both brushes together.", How: "Rarely measured; carbon on copper about 1 V (common practice, no source).",
		at: func(j *Job, _ int) any { return &j.Field.Brush }},
}, ofMagnets([]Input{
	{Table: "field", Name: "remanence", Label: "Remanence", Dim: quantity.Tesla, Min: 0.1, Max: 1.6,
		Help: "Br of the magnet at 20 °C: how strong its material is.", How: "The seller's sheet, or its grade: N42 about 1.3 T, hard ferrite about 0.4 T.",
		at: func(j *Job, _ int) any { return &j.Field.RemanenceTesla }},
	{Table: "field", Name: "magnets", Label: "Number of magnets", Kind: Whole, Min: 1, Max: 240, Ghost: "one to a pole",
		Help: "How many magnets the rotor has: half of its poles where bare iron stands between them.", How: "Count; one in pieces side by side is one. A compass turns round at every pole, magnet or iron.",
		at: func(j *Job, _ int) any { return &j.Field.Magnets }},
	{Table: "field", Name: "magnet", Label: "Magnet thickness", Dim: quantity.Millimetres, Min: 0.5, Max: 100,
		Help: "Thickness of one magnet from the pole it has towards the stator to the one behind, without glue or back iron.", How: "Calipers; of a glued one its step over the rotor.",
		at: func(j *Job, _ int) any { return &j.Field.MagnetMM }},
	{Table: "field", Name: "cover", Label: "Magnet cover", Min: 0.1, Max: 1, Default: amount(0.80, Practice),
		Help: "Arc of a magnet over the pole pitch, 0 to 1.", How: "Width of a magnet × poles / (π × rotor diameter).",
		at: func(j *Job, _ int) any { return &j.Field.MagnetCover }},
	{Table: "field", Name: "magnet_gap", Label: "Gap at magnets", Dim: quantity.Millimetres, Min: 0.05, Max: 50, Ghost: "the air gap",
		Help: "Clear gap from magnet to teeth, sleeve and glue counted as gap.", How: "Half of bore less diameter over the magnets.",
		at: func(j *Job, _ int) any { return &j.Field.MagnetGapMM }},
	{Table: "field", Name: "leakage", Label: "Magnet leakage", Min: 1, Max: 3, Default: amount(1.10, Practice),
		Help: "Flux of the magnet over flux that reaches the stator.", How: "Not measured; surface magnets 1.05 to 1.2.",
		at: func(j *Job, _ int) any { return &j.Field.LeakageFactor }},
	{Table: "field", Name: "magnet_at", Label: "Magnet temperature", Dim: quantity.Celsius, Min: -50, Max: 200, Default: amount(40, Practice),
		Help: "Temperature of the magnets when running: hot magnets are weaker.", How: "A guess near that of the iron.",
		at: func(j *Job, _ int) any { return &j.Field.MagnetC }},
})...)

func driveKind(kinds ...string) func(*Job) bool {
	return func(j *Job) bool {
		for _, k := range kinds {
			if j.Drive.Kind == k {
				return true
			}
		}
		return false
	}
}

func through(ways ...string) func(*Job) bool {
	return func(j *Job) bool {
		for _, w := range ways {
			if j.Drive.Transmission == w {
				return true
			}
		}
		return false
	}
}

var driveFields = []Input{
	{Table: "drive", Name: "kind", Label: "Drive", Kind: Word, Words: []string{DriveWind, DrivePedals, DriveWater, DriveEngine, DriveFixed}, Ghost: "not said",
		Help: "What turns it. wind: blades, by the wind. pedals, water: legs or a wheel push as hard as they can and find their own speed. engine: holds its speed as far as its power goes. fixed: a speed that does not give way.", How: "",
		at: func(j *Job, _ int) any { return &j.Drive.Kind }},
	{Table: "drive", Name: "through", Label: "Through", Kind: Word, Words: []string{"direct", "belt", "chain", "gear"}, Default: word("direct", Practice),
		Help: "What lies between the drive's shaft and the alternator's: nothing (direct: one shaft, or a coupling), a belt, a chain, or gears.", How: "",
		at: func(j *Job, _ int) any { return &j.Drive.Transmission }},
	{Table: "drive", Name: "driver", Label: "Pulley on drive", Dim: quantity.Millimetres, Min: 5, Max: 5000, when: through("belt"),
		Help: "Diameter of the pulley on the drive's shaft.", How: "Where the belt runs, not over the rim.",
		at: func(j *Job, _ int) any { return &j.Drive.DriverMM }},
	{Table: "drive", Name: "driven", Label: "Pulley on alternator", Dim: quantity.Millimetres, Min: 5, Max: 5000, when: through("belt"),
		Help: "Diameter of the pulley on the alternator's shaft.", How: "Where the belt runs, not over the rim.",
		at: func(j *Job, _ int) any { return &j.Drive.DrivenMM }},
	{Table: "drive", Name: "driver_teeth", Label: "Teeth on drive", Kind: Whole, Min: 4, Max: 1000, when: through("chain", "gear"),
		Help: "Teeth of the wheel on the drive's shaft.", How: "Count.",
		at: func(j *Job, _ int) any { return &j.Drive.DriverTeeth }},
	{Table: "drive", Name: "driven_teeth", Label: "Teeth on alternator", Kind: Whole, Min: 4, Max: 1000, when: through("chain", "gear"),
		Help: "Teeth of the wheel on the alternator's shaft.", How: "Count.",
		at: func(j *Job, _ int) any { return &j.Drive.DrivenTeeth }},
	{Table: "drive", Name: "ratio", Label: "Ratio", Min: 0.01, Max: 200, Ghost: "by pulleys or teeth",
		Help: "Turns of the alternator for one turn of the drive, as counted, slip and all; in place of pulleys or teeth. Two sides are drive : alternator, 1:1.5 is 1.5. Of teeth or diameters the alternator's come first, 14:48, or below in a fraction, 48/14. Stages are multiplied, 3 x 14:48, and each of them slips and loses.", How: "Chalk both, turn the drive once, count.",
		at: func(j *Job, _ int) any { return &j.Drive.Ratio }, typed: func(j *Job) *string { return &j.Drive.RatioTyped }},
	{Table: "drive", Name: "slip", Label: "Belt slip", Min: 0, Max: 0.3, Default: amount(0.02, Practice), when: through("belt"),
		Help: "Part of the speed a belt loses, 0.02 is 2 %; of each, where the ratio is given stage by stage. Turns that were counted have it in them.", How: "Two tachometer readings under load (below) show it.",
		at: func(j *Job, _ int) any { return &j.Drive.Slip }},
	{Table: "drive", Name: "efficiency", Label: "Efficiency", Min: 0.3, Max: 1, Ghost: "0.95 or 0.97",
		Help: "Part of the drive's power that reaches the alternator; empty: 0.95 through each belt, 0.97 through each chain or pair of gears.", How: "Not measured at a bench; V-belts 0.9 to 0.96.",
		at: func(j *Job, _ int) any { return &j.Drive.Efficiency }},
	{Table: "drive", Name: "tach_drive", Label: "Tachometer, drive", Dim: quantity.RPM, Min: 1, Max: 50000,
		Help: "Drive speed under load; with the next one gives the real ratio.", How: "Tachometer, both within the same minute.",
		at: func(j *Job, _ int) any { return &j.Drive.TachDriveRPM }},
	{Table: "drive", Name: "tach_alternator", Label: "Tachometer, alternator", Dim: quantity.RPM, Min: 1, Max: 50000,
		Help: "Alternator speed at the same time.", How: "Tachometer.",
		at: func(j *Job, _ int) any { return &j.Drive.TachAltRPM }},

	{Table: "drive", Name: "rotor", Label: "Rotor diameter", Dim: quantity.Across, Min: 0.2, Max: 30, when: driveKind(DriveWind),
		Help: "Diameter the blade tips sweep.", How: "Tape.",
		at: func(j *Job, _ int) any { return &j.Drive.RotorM }},
	{Table: "drive", Name: "curve", Label: "Blade curve", Kind: Word, Words: []string{"heier", "slootweg"}, Default: word("heier", Practice), when: driveKind(DriveWind),
		Help: "Published shape of power coefficient against tip-speed ratio, scaled to the two figures below.", How: "",
		at: func(j *Job, _ int) any { return &j.Drive.Curve }},
	{Table: "drive", Name: "peak_cp", Label: "Best Cp", Min: 0.02, Max: 16.0 / 27, Default: amount(0.35, Practice), when: driveKind(DriveWind),
		Help: "Part of the wind's power the blades take at their best. Never over 0.593 (Betz).", How: "Carved wooden blades 0.30 to 0.38.",
		at: func(j *Job, _ int) any { return &j.Drive.PeakCp }},
	{Table: "drive", Name: "peak_tsr", Label: "Best tip-speed ratio", Min: 0.5, Max: 15, Default: amount(6, Practice), when: driveKind(DriveWind),
		Help: "Blade tip speed over wind speed where the blades are best.", How: "The blade design says; three slim blades 5 to 7, many wide ones 1 to 3.",
		at: func(j *Job, _ int) any { return &j.Drive.PeakLambda }},
	{Table: "drive", Name: "mean_wind", Label: "Mean wind", Dim: quantity.WindSpeed, Min: 0.5, Max: 25, Default: amount(5, Practice), when: driveKind(DriveWind),
		Help: "Year's mean wind at the height of the rotor.", How: "A year's log on the site; a map errs by 1 m/s and more.",
		at: func(j *Job, _ int) any { return &j.Drive.MeanWindMS }},
	{Table: "drive", Name: "weibull_k", Label: "Weibull k", Min: 1, Max: 5, Default: amount(2, "Rayleigh, as the wind classes of IEC 61400-1, from memory"), when: driveKind(DriveWind),
		Help: "How steady the wind is; 2 is the usual (Rayleigh).", How: "From a year's log.",
		at: func(j *Job, _ int) any { return &j.Drive.WeibullK }},
	{Table: "drive", Name: "furl", Label: "Furls at", Dim: quantity.WindSpeed, Min: 3, Max: 40, Default: amount(14, Practice), when: driveKind(DriveWind),
		Help: "Wind at which it turns out of the wind or is stopped.", How: "Watch the tail.",
		at: func(j *Job, _ int) any { return &j.Drive.CutOutMS }},
	{Table: "drive", Name: "gale", Label: "Gale to check", Dim: quantity.WindSpeed, Min: 3, Max: 70, Default: amount(20, Practice), when: driveKind(DriveWind),
		Help: "Wind in which the battery might come off while it is not furled.", How: "",
		at: func(j *Job, _ int) any { return &j.Drive.GaleMS }},
	{Table: "drive", Name: "altitude", Label: "Altitude", Dim: quantity.Metres, Min: -400, Max: 6000, Default: amount(0, standardAir), when: driveKind(DriveWind),
		Help: "Height above the sea: thinner air gives less, and cools less above 1000 m.", How: "A map.",
		at: func(j *Job, _ int) any { return &j.Drive.AltitudeM }},
	{Table: "drive", Name: "air", Label: "Air temperature", Dim: quantity.Celsius, Min: -50, Max: 60, Default: amount(15, standardAir), when: driveKind(DriveWind),
		Help: "Temperature of the wind.", How: "",
		at: func(j *Job, _ int) any { return &j.Drive.AirC }},
	{Table: "drive", Name: "start_torque", Label: "Starting torque", Dim: quantity.Torque, Min: 0, Max: 1000, Default: amount(0, leftOut), when: driveKind(DriveWind),
		Help: "Torque on the ALTERNATOR shaft that just gets it turning: seals and cogging.", How: "Luggage scale on a lever of known length.",
		at: func(j *Job, _ int) any { return &j.Drive.StartTorque }},

	{Table: "drive", Name: "slow", Label: "Slow", Dim: quantity.RPM, Min: 0.5, Max: 50000, when: driveKind(DrivePedals, DriveWater, DriveEngine, DriveFixed),
		Help: "Slowest speed of the DRIVE's shaft at which it should charge.", How: "Tachometer, or count turns in a minute.",
		at: func(j *Job, _ int) any { return &j.Drive.SlowRPM }},
	{Table: "drive", Name: "usual", Label: "Usual", Dim: quantity.RPM, Min: 0.5, Max: 50000, when: driveKind(DrivePedals, DriveWater, DriveEngine, DriveFixed),
		Help: "Speed of the drive's shaft most of the time. The drive's power, below, is what it gives at this speed.", How: "Tachometer, or count turns in a minute.",
		at: func(j *Job, _ int) any { return &j.Drive.UsualRPM }},
	{Table: "drive", Name: "top", Label: "Top", Dim: quantity.RPM, Min: 0.5, Max: 50000, when: driveKind(DrivePedals, DriveWater, DriveEngine, DriveFixed),
		Help: "Highest speed of the drive's shaft, load off.", How: "Tachometer; for water, the wheel running free.",
		at: func(j *Job, _ int) any { return &j.Drive.TopRPM }},
	{Table: "drive", Name: "power", Label: "Power at Usual", Dim: quantity.Watts, Min: 1, Max: 200000, when: driveKind(DrivePedals, DriveWater, DriveEngine),
		Help: "What the drive can give at its usual speed. When Usual is changed these watts stay, at the new speed: give both again.", How: "A fit person 75 to 150 W for an hour. Water: 5 × litres per second × metres of fall. An engine: what it gives at the usual speed above; its plate says more, at full speed.",
		at: func(j *Job, _ int) any { return &j.Drive.Watts }},
	{Table: "drive_point", Name: "speed", Label: "Speed", Dim: quantity.RPM, Min: 0, Max: 50000,
		Help: "Speed of the drive's shaft.", How: "Tachometer.",
		at: func(j *Job, i int) any { return &j.Drive.Points[i].RPM }},
	{Table: "drive_point", Name: "power", Label: "Power", Dim: quantity.Watts, Min: 0, Max: 200000,
		Help: "The most the drive gives at that speed.", How: "Brake it with a known load.",
		at: func(j *Job, i int) any { return &j.Drive.Points[i].Watts }},
}
