// Package slot is the hole in the iron that a coil side lies in: its shape and area, what
// liner, wedge and separator leave of it, how full given wires make it, how many turns go
// in, whether the wire passes the mouth, where the wires can lie (a packing to scale), the
// slot's leakage permeance and the extra AC resistance of wires stacked in it.
//
// It knows nothing of gauges, coils, phases or temperatures: wires come as diameters in
// millimetres, resistivity as a number.
//
// # Where things are
//
// All drawing coordinates are millimetres in the plane of the lamination: X across the
// slot, 0 on its centre line; Y from 0 at the bottom (the yoke end) up to DepthMM at the
// mouth side, and on through the neck to DepthMM + MouthHeightMM at the bore.
//
//	     |  |          neck: MouthMM wide, MouthHeightMM high
//	-----+  +-----     Y = DepthMM, TopMM wide
//	 \           /
//	  \         /      the body: the area that is counted
//	   +-------+       Y = 0, BottomMM wide
package slot
