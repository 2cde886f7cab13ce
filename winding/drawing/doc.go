// Package drawing draws a trial on paper, as pages of SVG: the winding unrolled, the stator's face, the
// slot with its wires to scale, and the amps of all trials over speed. It computes nothing: every
// figure, coil and wire is taken from the bench and its outcome.
//
// # What a page promises
//
// Black on white, one file a page, in millimetres of the paper it was asked for. Phases, trials and
// conditions are distinguished by line pattern, weight, mark and letter, never by colour, so that a
// copy of a copy is still readable. No script, no style sheet, no reference to anything outside the
// file. The same job gives the same bytes.
//
// Everything is made of five primitives (canvas.go), each of which knows its bounding box. So tests can
// check on any page that nothing leaves the paper and no two texts overlap, without a browser. A text's
// box assumes the widest of the common sans-serif faces (measure.go): whichever the viewer has, the
// words fit.
//
// The XML is made by encoding/xml from small types of our own (svg.go). A drawing library would save
// little here, where boxes are kept beside the elements anyway, and would have to be trusted to escape
// names that people type; encoding/xml cannot write an unclosed element or an unescaped letter.
package drawing
