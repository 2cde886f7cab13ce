package winding

import "slotwright/winding/quantity"

// bed is what a winding runs in: into the battery (charger.go, curves.go), against its drive
// (meeting.go, wind.go, shaft.go), and at the worst (fieldcost.go, safety.go).
type bed struct {
	machine *machine
	layouts *layouts
	henries *inductances
	dc      *dcSide
	rotor   *excitation
	drag    *drag
	drive   *driveSide
	speeds  *speeds
	air     *thermal
	flux    *flux
	wanted  quantity.Reading // amps
	holder  *regulator       // nil where nothing holds the amps
}
