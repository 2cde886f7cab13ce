package slot

import "fmt"

// EasyMouthSpareMM is the clearance below which feeding wires in goes slowly (common
// practice, no source: 0.3 to 0.5 mm to spare is comfortable).
const EasyMouthSpareMM = 0.3

// CheckMouth says whether a wire of the given overall diameter (mm) passes the slot opening less the
// liner on both sides. If it does not, the winding cannot be fed in, however low the fill. With no
// mouth given nothing is checked: Known is false and Passes true.
func CheckMouth(room Room, overallMM float64) Mouth {
	m := Mouth{Known: room.MouthKnown, ClearMM: room.MouthNetMM, WireMM: overallMM}
	if !m.Known {
		m.Passes, m.Text = true, "the mouth is not given: measure the opening to check that the wire passes it"
		return m
	}
	m.SpareMM = m.ClearMM - overallMM
	m.Passes = m.SpareMM > 0 && finite(overallMM)
	switch {
	case m.ClearMM <= 0:
		m.Text = fmt.Sprintf("the liner closes the mouth: %.2f mm less the liner on both sides leaves nothing", room.MouthMM)
	case !m.Passes:
		m.Text = fmt.Sprintf("a wire of %.3f mm does not pass the mouth, %.2f mm inside the liner: %.3f mm too thick; use thinner strands",
			overallMM, m.ClearMM, -m.SpareMM)
	case m.SpareMM < EasyMouthSpareMM:
		m.Text = fmt.Sprintf("passes the mouth with %.2f mm to spare: tight, one wire at a time", m.SpareMM)
	default:
		m.Text = fmt.Sprintf("passes the mouth with %.2f mm to spare", m.SpareMM)
	}
	return m
}
