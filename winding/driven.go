package winding

// Driven is how the trial and its drive come to terms.
type Driven struct {
	// YearKWh is into the battery in a year of the stated wind.
	YearKWh Figure `json:"year_kwh"`
	// Suits is one plain sentence on how the trial suits the drive.
	Suits string `json:"suits,omitempty"`
}

// doubt is what the drive calls out.
func (dr *Driven) doubt(*doubts, func(string) string, Trial) {}

// driveRatio is alternator turns for one turn of the drive: from two tachometer
// readings, else as given, else from pulleys or teeth.
func (b *Bench) driveRatio() Figure {
	d := b.job.Drive
	switch {
	case d.TachDriveRPM.Given() && d.TachAltRPM.Given():
		return derived(d.TachAltRPM.Value / d.TachDriveRPM.Value).because("two tachometer readings")
	case d.Ratio.Given():
		return d.Ratio.figure("")
	}
	switch d.Transmission {
	case "belt":
		if !d.DriverMM.Given() || !d.DrivenMM.Given() {
			return missing("needs both pulleys")
		}
		return derived(d.DriverMM.Value / d.DrivenMM.Value * (1 - d.Slip.Or(0.02))).because("pulleys, less slip")
	case "chain", "gear":
		if !d.DriverTeeth.Given() || !d.DrivenTeeth.Given() {
			return missing("needs the teeth of both wheels")
		}
		return derived(d.DriverTeeth.Value / d.DrivenTeeth.Value).because("teeth")
	}
	return derived(1).because("direct")
}

func (b *Bench) windSpeeds(s speeds) speeds { return s }

func (b *Bench) drive(o *Outcome, _ []*runner) {
	for i := range o.Trials {
		o.Trials[i].YearKWh = missing("needs a wind rotor")
	}
}
