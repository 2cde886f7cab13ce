// Package wiretable knows round winding wire: what a size name means in bare metal, how thick it is
// over its enamel, the resistance and mass of a metre, which size lies next to it, and which bundles of
// other sizes have the same area.
//
// # Names
//
// A size is a Gauge: American (ASTM B258, 0000 to 50 with half sizes), imperial standard, metric of IEC
// 60317-0-1, or any diameter measured in millimetres or inches, bare or over the enamel. Parse reads it
// as a person types it and String writes it so that Parse reads it back. Basis says where the figures
// come from, in words fit for a screen.
//
// # Two families of American tables
//
// Published tables of the American gauge come in two kinds. One keeps the formula's four figures: No.
// 40 is 3.145 mil and 9.888 circular mils. The other, ASTM B258 and the one wire is sold by, rounds the
// diameter to 0.1 mil (0.01 mil from No. 45) and derives area and resistance from that: No. 40 is 3.1
// mil and 9.61 circular mils, 2.9 % less. This package uses the second, and the formula for half sizes
// only.
//
// # Enamel
//
// A Build is the thickness of enamel. Overall diameters come from the rows of ANSI/NEMA MW 1000
// (single, heavy, triple) or IEC 60317-0-1 (grades 1 to 3), linear in the bare diameter between rows;
// beyond the rows Overall's Basis says "extrapolated". Rows of which no published copy was at hand are
// from memory or by a rule, and Basis says that too.
//
// # Resistance
//
// Copper is the annealed copper standard, 100 % IACS (IEC 60028). Note that the nominal resistances
// that IEC 60317-0-1 prints are 0.85 % lower than this for the same diameter: it uses 58.5 m/(Ω·mm²). A
// real wire may differ by some per cent from its nominal: the standards allow it.
//
// # What it is not
//
// No rectangular wire, no bunched or litz wire beyond a few strands in hand, no tinned or clad metal,
// no current rating, and nothing on insulation class or voltage: those are the wire maker's data. What
// fits a slot is computed elsewhere, from the diameters given here.
package wiretable
