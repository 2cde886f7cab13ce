package winding

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// likely is the faults that fit all that was read, the nearest first; where none fits and the ohms are
// off, those that fit the ohms. It is empty where nothing is off.
func (r *WoundOutcome) likely() []Likely {
	if !r.LeadOhms20.off() && !r.LineVolts.off() && !r.CutInRPM.off() {
		return nil
	}
	if fit := r.fitting(func(l Likely) []held {
		return []held{{r.LeadOhms20, l.Ohms, l.ohmsEach}, {r.LineVolts, l.Volts, l.voltsEach}, {r.CutInRPM, l.Begins, nil}}
	}); len(fit) > 0 || !r.LeadOhms20.off() {
		return fit
	}
	fit := r.fitting(func(l Likely) []held { return []held{{r.LeadOhms20, l.Ohms, l.ohmsEach}} })
	for i := range fit {
		fit[i].ByOhms = true
	}
	return fit
}

// held is a reading and how many times its plan a fault makes.
type held struct {
	proof Proof
	times float64
	// each is what it makes of each pair of a set, from the least to the most; nil where all are alike.
	each []float64
}

// mostLikely is how many faults are named at most, and asNear how much further off than the nearest
// they may be, in squares of the room (common practice, no source).
const (
	mostLikely = 3
	asNear     = 0.25
)

func (r *WoundOutcome) fitting(by func(Likely) []held) []Likely {
	type ranked struct {
		fault Likely
		far   float64
	}
	var list []ranked
	for _, fault := range r.could {
		sum, fits := 0.0, true
		for _, h := range by(fault) {
			far, ok := h.far()
			sum, fits = sum+sq(far), fits && ok
		}
		if fits {
			list = append(list, ranked{fault, math.Round(sum*1e6) / 1e6})
		}
	}
	slices.SortStableFunc(list, func(a, b ranked) int { return cmp.Compare(a.far, b.far) })
	var fit []Likely
	for _, l := range list[:min(len(list), mostLikely)] {
		if l.far <= list[0].far+asNear {
			fit = append(fit, l.fault)
		}
	}
	return fit
}

// far is how far a reading is from what a fault makes of its plan, in parts of the room there is
// round it, and whether it lies within. What was not read, or is held against nothing, fits.
func (h held) far() (far float64, fits bool) {
	p := h.proof
	if s := p.Stand(); s == NotRead || s == NotHeld {
		return 0, true
	}
	_, _, part, _ := Between(p.Expected)
	room := part + p.Read.PlusMinus/p.Read.Value
	far = math.Abs(math.Log(p.Read.Value/(p.Expected.Value*h.times))) / room
	return far, far <= 1 && h.shaped()
}

// shaped reports whether the pairs that were read stand to each other as the fault makes them, each as
// near as those of a sound winding are to their mean. Where only a mean was read, or two sets, it fits.
func (h held) shaped() bool {
	p := h.proof
	if len(p.Each) == 0 || len(p.Each) != 3 && h.each != nil {
		return true
	}
	if h.each == nil {
		return p.Apart() <= p.even
	}
	read := slices.Clone(p.Each)
	slices.Sort(read)
	for i, v := range read {
		if math.Abs(v/p.Read.Value/(h.each[i]/h.times)-1) > p.even {
			return false
		}
	}
	return true
}

// off reports whether a reading lies outside its limits, or its pairs are unlike.
func (p Proof) off() bool { s := p.Stand(); return s == Low || s == High || s == Uneven }

// atOdds reports whether volts and beginning speak against each other: the volts are off, and it begins
// to charge as if they were not. Both go by the same flux and turns, whatever these are.
func (r *WoundOutcome) atOdds() bool {
	v, c := r.LineVolts, r.CutInRPM
	if !v.off() || c.Stand() == NotRead || c.Stand() == NotHeld {
		return false
	}
	return math.Abs(v.Read.Value/v.Expected.Value*c.Read.Value/c.Expected.Value-1) > ProofLimit
}

// Where a reading is so many times the plan that no join makes it, up or down (common practice, no
// source).
const farBeyond = 20.0

// speaks gives each check of a record that is off the words for what makes it so: the likely faults,
// once; else what is plain from how far it is.
func (r *WoundOutcome) speaks(list []Check) {
	said := ""
	for i := range list {
		c := &list[i]
		if !c.Proof.off() {
			continue
		}
		words := ""
		switch fault := r.faults(); {
		case c.Field != "lead" && c.Field != "line" && c.Field != "cut_in":
			continue
		case fault != "" && said == "" && (c.Field == "lead" || !r.Likely[0].ByOhms):
			words, said = fault, c.Label
		case fault != "" && said != "" && !r.Likely[0].ByOhms:
			words = "the same, as with " + said
		default:
			words = c.beyond()
		}
		if c.Field == "line" && r.atOdds() {
			words = strings.TrimPrefix(words+"; ", "; ") + "it begins to charge as if its volts were right: read them again, with the speed and the field current"
		}
		if words != "" {
			c.Low, c.High, c.uneven = words, words, words
		}
	}
}

// faults is the likely ones in words, "" for none.
func (r *WoundOutcome) faults() string {
	var words []string
	for _, l := range r.Likely {
		words = append(words, l.Words())
	}
	if len(words) == 0 {
		return ""
	}
	return "likely " + strings.Join(words, "; or ")
}

// beyond is what is plain of ohms and volts from how far they are off.
func (c Check) beyond() string {
	times := c.Proof.Read.Value / c.Proof.Expected.Value
	switch {
	case c.Field == "lead" && times >= farBeyond:
		return "open: a lead or a joint not connected, or enamel left on a wire end"
	case c.Field == "lead" && times <= 1/farBeyond:
		return "shorted: leads joined somewhere, or the probes touching each other"
	case c.Field == "line" && times <= 1/farBeyond:
		return "as good as none: a lead or the star point not connected, no field current, or half the coils against the other half"
	}
	return ""
}
