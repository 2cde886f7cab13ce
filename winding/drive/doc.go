// Package drive says what turns the shaft: belts and gears, the wind and a rotor in it,
// pedals, water and engines, and where a drive and what it drives come to terms.
//
// The alternator comes in as functions of its speed; the package knows no winding, no
// battery and no file. Speeds are rpm, torques N·m, powers W.
package drive
