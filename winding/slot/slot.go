package slot

import (
	"fmt"
	"strings"
)

// Shape is the form of a slot's body.
type Shape int

// The shapes. The neck (mouth width and height) is separate from the body in all of them.
const (
	AreaOnly    Shape = iota // only the area is known; an equivalent parallel slot is assumed
	Parallel                 // parallel-sided: TopMM wide all the way down
	Tapered                  // trapezoid: TopMM at the mouth side, BottomMM at the yoke side, either may be wider
	RoundBottom              // trapezoid that ends in a semicircle of diameter BottomMM at the yoke side
	Pear                     // round at both ends: RoundBottom, closed by a round of diameter TopMM at the mouth side
)

var shapeNames = [...]string{"area", "parallel", "tapered", "round", "pear"}

// String gives the name that ParseShape reads, "shape(9)" for an invalid value.
func (s Shape) String() string {
	if s < 0 || int(s) >= len(shapeNames) {
		return fmt.Sprintf("shape(%d)", int(s))
	}
	return shapeNames[s]
}

// ShapeNames lists the names that ParseShape reads, in the order of the constants.
func ShapeNames() []string { return append([]string(nil), shapeNames[:]...) }

// squash removes the separators that a name may be written with or without.
var squash = strings.NewReplacer(" ", "", "-", "", "_", "")

// ParseShape reads a shape name; capitals and the separators space, - and _ do not matter.
func ParseShape(text string) (Shape, error) {
	key := squash.Replace(strings.ToLower(text))
	if key == "round" { // as a job file has it
		return RoundBottom, nil
	}
	for i, name := range shapeNames {
		if key == squash.Replace(name) {
			return Shape(i), nil
		}
	}
	return 0, fmt.Errorf("slot shape %q: expected one of %s", text, strings.Join(shapeNames[:], ", "))
}

// Slot is the bare slot in the iron, in millimetres. Which fields count depends on Shape; the others
// are ignored.
type Slot struct {
	Shape Shape
	// AreaMM2 is the area of the body, without the neck. AreaOnly only; (0, 1e5].
	AreaMM2 float64
	// TopMM is the body's width at the mouth side, just below the neck; for Pear the width
	// where the round at the mouth begins, which is its diameter. All but AreaOnly.
	TopMM float64
	// BottomMM is the width at the yoke end (Tapered), or where the round begins, which is
	// the round's diameter (RoundBottom, Pear).
	BottomMM float64
	// DepthMM runs from the lower end of the neck to the deepest point of the slot, rounds included,
	// neck excluded. All but AreaOnly.
	DepthMM float64
	// MouthMM is the opening to the bore; 0 means not known. Equal to TopMM: an open slot.
	MouthMM float64
	// MouthHeightMM is the height of the neck, from the bore to the body; 0 or more.
	MouthHeightMM float64
	// DepthPerWidth is the depth of the equivalent parallel slot over its width, AreaOnly
	// only; 0 means DefaultDepthPerWidth, otherwise [0.1, 20].
	DepthPerWidth float64
}

// DefaultDepthPerWidth is the depth of a slot over its width where only the area is known
// (common practice, no source).
const DefaultDepthPerWidth = 2.0

// Insulation is what goes into the slot besides the wire. Zero thicknesses mean none.
type Insulation struct {
	// LinerMM is the thickness of the liner along the whole wall, all but the mouth.
	LinerMM float64
	// WedgeMM is the thickness (radial height) of the wedge or closing strip at the mouth side.
	WedgeMM float64
	// SeparatorMM is the thickness of the sheet between the two coil sides; counts only when Layers is 2.
	SeparatorMM float64
	// Layers is the number of coil sides in one slot, 1 or 2; 0 is taken as 1.
	Layers int
	// Beside says that two coil sides lie side by side, each against its own tooth, as coils round one
	// tooth do, and not one over the other. The separator is then upright on the centre line. It counts
	// only when Layers is 2.
	Beside bool
}

// Point is a place in the drawing plane, in mm; see the package comment.
type Point struct{ X, Y float64 }

// Line is a straight stroke of the drawing.
type Line struct{ From, To Point }

// Room is a measured slot and what is left of it for the wire. It comes from Measure.
type Room struct {
	// GrossMM2 is the area of the body in the iron, the neck not counted.
	GrossMM2 float64
	// LinerMM2, WedgeMM2 and SeparatorMM2 are the insulation's parts of it.
	LinerMM2, WedgeMM2, SeparatorMM2 float64
	// NetMM2 is GrossMM2 less those three, the area that fills refer to. Always > 0.
	NetMM2 float64
	// PerimeterMM is the length of wall that the liner covers: the body's outline less the mouth.
	PerimeterMM float64
	// WidthMidMM is the body's width at half its depth; DepthMM its depth (see Slot.DepthMM).
	WidthMidMM, DepthMM float64
	// Outline is the body in the iron, Inner what the liner and the wedge leave of it,
	// both counter-clockwise from the bottom left (or deepest) point, not repeated.
	Outline, Inner []Point
	// Neck is the two sides of the neck; empty when the mouth is not known.
	Neck []Line
	// Wedge is the wedge's outline inside the liner; empty without a wedge.
	Wedge []Point
	// Separator is the sheet between the coil sides, as its outline; empty in a single layer.
	Separator []Point
	// MouthMM and MouthHeightMM are the neck as given; MouthNetMM is MouthMM less the liner
	// on both sides (may be negative: the liner closes it). MouthKnown is false when
	// no mouth was given, and MouthNetMM is then 0.
	MouthMM, MouthHeightMM, MouthNetMM float64
	MouthKnown                         bool
	// Layers is the number of coil sides in the slot, 1 or 2.
	Layers int
	// Beside says that two sides lie side by side, see Insulation.
	Beside bool
	// Assumed says that the shape was not measured; Note then says what was assumed.
	Assumed bool
	Note    string

	wall wall
}

// Wire is one size of wire among those that make up a turn.
type Wire struct {
	// OverallMM is the diameter over the enamel, BareMM the metal's.
	OverallMM float64
	// Count is how many strands of this size are in hand; 0 means this size is not used.
	Count  int
	BareMM float64
}

// Fills are the three fill factors in use, as fractions. They differ by a factor of two
// for the same slot: name which one.
type Fills struct {
	Wire   float64 // sum of overall diameters squared / net area
	Round  float64 // sum of overall circle areas / net area
	Copper float64 // sum of bare metal areas / gross area
}

// Mouth says whether a wire can be fed in through the slot opening.
type Mouth struct {
	Passes  bool    // the wire is thinner than the lined opening; true when it is not known
	Known   bool    // false: no mouth was given, nothing was checked
	ClearMM float64 // opening less the liner on both sides
	WireMM  float64 // the wire's overall diameter
	SpareMM float64 // ClearMM - WireMM
	Text    string  // one sentence for the person at the bench
}

// Circle is one wire of a packing.
type Circle struct {
	X, Y, R float64 // mm
	Layer   int     // 0 the bottom layer, 1 the one at the mouth side; side by side 0 left (X < 0), 1 right
	Size    int     // index into the wires given
}

// Packing is wires laid to scale in a slot.
type Packing struct {
	Circles        []Circle
	Placed, Wanted int
	// Outline, Inner, Neck, Wedge and Separator are the Room's own, for the drawing.
	Outline, Inner, Wedge, Separator []Point
	Neck                             []Line
	// Beside says that the two coil sides lie side by side. Seen from the connection end the
	// left half is the clockwise one where the gap lies within the stator, the anticlockwise one
	// where it lies round it: the picture has the gap above.
	Beside bool
	// Mixed says that two sizes were laid, which is done approximately: see Pack.
	Mixed bool
}
