package job

import (
	"regexp"
	"strconv"
	"strings"
	"sync"
)

// # A ratio as people write it
//
// Turns of the alternator per turn of the drive, 6, or a fraction of that, 48/14; both sides, the
// drive's first, 1:6, or for the two wheels of a stage, whose speeds are inverse to their sizes, the
// alternator's first, 14:48; stage by stage, 3 x 1:2.5.

// RatioForm is how a ratio was written.
type RatioForm struct {
	// Stages is the number of stages it was made up of, each with its own slip and loss; 0 where turns
	// were counted, so that it is the actual ratio.
	Stages int
	// Sides says that a stage had both its sides, Slash that / was between those of one, as in a
	// fraction.
	Sides, Slash bool
}

// ratioOf is a ratio as a number is written, with its mark and ±, and the form it had. Anything else
// stays as it is.
func ratioOf(typed string) (number string, form RatioForm) {
	rest, guessed := strings.CutPrefix(strings.TrimSpace(typed), "~")
	rest, spread := withoutSpread(rest)
	product, sizes := 1.0, false
	list := strings.Split(timesSign.Replace(rest), "x")
	for _, words := range list {
		s, ok := stageOf(words)
		if !ok {
			return typed, RatioForm{}
		}
		product *= s.turns
		form.Sides, form.Slash, sizes = form.Sides || s.sides, form.Slash || s.slash, sizes || s.sizes
	}
	if len(list) > 1 || sizes {
		form.Stages = len(list)
	}
	if form == (RatioForm{}) {
		return typed, form
	}
	number = strconv.FormatFloat(product, 'g', -1, 64) + spread
	if guessed {
		number = "~" + number
	}
	return number, form
}

// timesSign maps every sign between stages to one.
var timesSign = strings.NewReplacer("×", "x", "*", "x", "X", "x")

// withoutSpread splits what was typed into the part in front of its ±, and that.
func withoutSpread(typed string) (front, spread string) {
	for _, sign := range []string{"±", "+/-", "+-"} {
		if at := strings.Index(typed, sign); at >= 0 {
			return typed[:at], " " + typed[at:]
		}
	}
	return typed, ""
}

// stage is one stage of a ratio: turns out per turn in, whether it had both its sides with : or /
// between them, and whether these are sizes of two wheels.
type stage struct {
	turns               float64
	sides, slash, sizes bool
}

// leastWheel is the size of the smallest wheel that a side of a ratio may stand for, in teeth or mm; a
// smaller number is turns that were counted. No pinion has fewer teeth, no pulley is as small: common
// practice, no source.
const leastWheel = 5

// stageOf reads one stage: 3, 1:3, 14:48, 48/14.
func stageOf(words string) (s stage, ok bool) {
	words = strings.TrimSpace(words)
	for _, sign := range []string{":", "/"} {
		in, out, both := strings.Cut(words, sign)
		if !both || sign == "/" && strings.Contains(out, sign) {
			continue
		}
		from, errFrom := parseNumber(strings.TrimSpace(in))
		to, errTo := parseNumber(strings.TrimSpace(out))
		if errFrom == nil && errTo == nil {
			if sign == "/" {
				from, to = to, from
			}
			return stage{to / from, true, sign == "/", from >= leastWheel && to >= leastWheel}, from > 0 && to > 0
		}
	}
	turns, err := parseNumber(words) // 3 1/2 too
	return stage{turns: turns}, err == nil && turns > 0
}

// written matches a ratio with both its sides, guessed or not: 1:1.5.
var written = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^\s*(~?)\s*([0-9.,]+)\s*:\s*([0-9.,]+)\s*$`)
})

// isRatio reports whether a ratio was written where the size or the teeth of one wheel belong.
func (f *Input) isRatio(typed string) bool {
	return f.Table == "drive" && strings.HasPrefix(f.Name, "driv") && written().MatchString(typed)
}

// storeRatio keeps the form of a ratio with it.
func (f *Input) storeRatio(j *Job, typed string) {
	if f.Path() == "drive.ratio" {
		_, j.Drive.RatioAs = ratioOf(typed)
	}
}

// Stage is one of the stages of a transmission: as it was written, 14:48 or 3, and the turns out per
// turn in, > 0.
type Stage struct {
	Said  string
	Turns float64
}

// Stages are those of a drive's ratio, from the drive to the alternator, where it was given with both
// its sides or stage by stage; nil where it is only a number, or not given.
func (d *DriveSpec) Stages() []Stage {
	if _, form := ratioOf(d.RatioTyped); form == (RatioForm{}) {
		return nil
	}
	rest, _ := withoutSpread(strings.TrimPrefix(strings.TrimSpace(d.RatioTyped), "~"))
	var list []Stage
	for _, words := range strings.Split(timesSign.Replace(rest), "x") {
		if s, ok := stageOf(words); ok {
			list = append(list, Stage{strings.TrimSpace(words), s.turns})
		}
	}
	return list
}
