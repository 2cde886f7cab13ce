package slot_test

import (
	"fmt"

	"slotwright/winding/slot"
)

// A tapered slot in two layers: the remaining room, the number of turns of 0.79 mm (over the enamel)
// that fit at a wire fill of 0.70, the other two fill measures, and the ceilings.
func Example() {
	room, err := slot.Measure(
		slot.Slot{Shape: slot.Tapered, TopMM: 8, BottomMM: 6, DepthMM: 16, MouthMM: 3, MouthHeightMM: 1},
		slot.Insulation{LinerMM: 0.25, WedgeMM: 1, SeparatorMM: 0.25, Layers: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	wires := [2]slot.Wire{{OverallMM: 0.79, BareMM: 0.71, Count: 1}}
	turns := slot.TurnsThatFit(room.NetMM2, slot.SquarePerTurnMM2(wires), room.Layers, 0.70)
	fills := slot.Fill(room, wires, turns*room.Layers)
	fmt.Printf("net %.1f of %.1f mm²\n", room.NetMM2, room.GrossMM2)
	fmt.Printf("%d turns: wire fill %.3f, round %.3f, copper %.3f\n", turns, fills.Wire, fills.Round, fills.Copper)
	fmt.Printf("%d wires of %d that pack neatly; nothing beats %d\n", turns*room.Layers, slot.MostThatPack(room, 0.79), slot.PackBound(room, 0.79))
	fmt.Println(slot.CheckMouth(room, 0.79).Text)
	// Output:
	// net 92.2 of 112.0 mm²
	// 51 turns: wire fill 0.690, round 0.542, copper 0.361
	// 102 wires of 140 that pack neatly; nothing beats 164
	// passes the mouth with 1.71 mm to spare
}
