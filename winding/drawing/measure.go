package drawing

import (
	"strings"
	"unicode"

	"slotwright/winding/text"
)

// # How wide words are
//
// A page names no face but sans-serif, since only the viewer's own is sure to exist. The tables have,
// for each letter from the space to ~, the widest advance of the faces behind that name on most
// systems, in thousandths of the size: DejaVu Sans 2.37 and Liberation Sans 2.1 (the metrics of Arial
// and Helvetica), measured in a browser. Height: the tallest ascent and descent of the two are 0.928
// and 0.236.

var upright = [95]int{
	318, 401, 460, 838, 637, 951, 780, 275, 391, 391, 500, 838, 318, 361, 318, 337, 637, 637, 637, 637, 637, 637, 637, 637,
	637, 637, 337, 337, 838, 838, 838, 557, 1016, 685, 687, 723, 771, 667, 611, 778, 752, 295, 500, 667, 558, 863, 749, 788,
	667, 788, 723, 667, 611, 732, 685, 989, 686, 667, 686, 391, 337, 391, 838, 557, 500, 613, 635, 550, 635, 616, 353, 635,
	634, 278, 278, 580, 278, 975, 634, 612, 635, 635, 412, 521, 393, 634, 592, 818, 592, 592, 525, 637, 337, 637, 838,
}

var heavy = [95]int{
	349, 457, 521, 838, 696, 1002, 873, 307, 458, 458, 523, 838, 380, 416, 380, 366, 696, 696, 696, 696, 696, 696, 696, 696,
	696, 696, 400, 400, 838, 838, 838, 611, 1000, 774, 763, 734, 831, 684, 684, 821, 837, 373, 557, 775, 638, 996, 837, 851,
	733, 851, 771, 721, 683, 813, 774, 1104, 771, 725, 726, 458, 366, 458, 838, 557, 500, 675, 716, 593, 716, 679, 436, 716,
	712, 343, 343, 666, 343, 1042, 712, 688, 716, 716, 494, 596, 479, 712, 652, 924, 646, 652, 583, 712, 366, 712, 838,
}

const (
	// halfLine is half the height of a line of text, over its size; baseline is how far below its
	// middle the baseline is.
	halfLine = 0.6
	baseline = 0.35
	// other is the width of a letter that is not in the tables: Latin, Greek and Cyrillic ones are all
	// narrower.
	other = 1.1
	// lastMeasured is the last letter for which that is known; a text with one beyond is fitted to its
	// width by the viewer, see textElement.
	lastMeasured = 0x052f
	// marksOnALetter is how many accents may be stacked on one letter: more would reach the line above,
	// and no language needs them.
	marksOnALetter = 2
)

// textWidth is the width of s in mm in letters of the given size, and whether the viewer has to be told
// it.
func textWidth(s string, size float64, bold bool) (width float64, told bool) {
	table := &upright
	if bold {
		table = &heavy
	}
	em := 0.0
	for _, r := range s {
		switch {
		case r >= ' ' && r <= '~':
			em += float64(table[r-' ']) / 1000
		case unicode.Is(unicode.Mn, r):
		default:
			em += other
			told = told || r > lastMeasured
		}
	}
	return em * size, told
}

// cleaned is a person's text made fit for a page: nothing that steers a terminal or the writing
// direction, no stacks of accents.
func cleaned(s string, ascii bool) string {
	s = text.Clean(s)
	if ascii {
		return text.ASCII(s)
	}
	stacked := 0
	s = strings.Map(func(r rune) rune {
		if !unicode.Is(unicode.Mn, r) {
			stacked = 0
			return r
		}
		if stacked++; stacked > marksOnALetter {
			return -1
		}
		return r
	}, s)
	return strings.Join(strings.Fields(s), " ")
}

// cutTo is s, shortened with three dots where it is wider than a number of mm.
func cutTo(s string, size float64, bold bool, width float64) string {
	if w, _ := textWidth(s, size, bold); w <= width {
		return s
	}
	runes := []rune(s)
	for n := len(runes) - 1; n >= 0; n-- {
		short := strings.TrimRight(string(runes[:n]), " ") + "..."
		if w, _ := textWidth(short, size, bold); w <= width {
			return short
		}
	}
	return ""
}

// wrapTo breaks s into lines of at most so many mm; a word that is wider is cut.
func wrapTo(s string, size, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		longer := strings.TrimLeft(line+" "+word, " ")
		if w, _ := textWidth(longer, size, false); w <= width {
			line = longer
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		line = cutTo(word, size, false, width)
	}
	return append(lines, line)
}
