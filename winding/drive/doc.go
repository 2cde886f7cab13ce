// Package drive is about what turns the shaft: belts and gears, the wind and a rotor in it, pedals,
// water and engines, where a drive and its load balance, and the worst cases: leads shorted, leads
// open.
//
// The alternator comes in as functions of its speed; the package knows no winding, no battery and no
// file. Speeds are rpm, torques N·m, powers W. It has no words for a screen: verdicts and remedies are
// data.
//
// Checked against worked examples of textbooks (testdata/drive, each row with its source), ISO 2533,
// Betz's bound and gonum's own Weibull distribution.
package drive
