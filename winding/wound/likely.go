package wound

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
)

// Explain fills in what would explain the readings that are off.
func (r *Record) Explain() { r.Likely = r.likely() }

// likely is the faults that fit all readings, the closest first; where none fits and the ohms are off,
// those that fit the ohms. It is empty where nothing is off.
func (r *Record) likely() []Likely {
	if r.asksUnit() || !r.LeadOhms20.Outside() && !r.LineVolts.Outside() && !r.CutInRPM.Outside() {
		return nil
	}
	if fit := r.fitting(true); len(fit) > 0 || !r.LeadOhms20.Outside() {
		return fit
	}
	fit := r.fitting(false)
	for i := range fit {
		fit[i].ByOhms = true
	}
	return fit
}

// held is a reading and the factor that a fault puts on its plan, and on each pair of leads.
type held struct {
	proof Proof
	times float64
	each  [3]float64
	// around are the patterns that count as each (onePhase).
	around [][3]float64
}

// readings are those that a fault is compared with: all, or the ohms alone.
func (r *Record) readings(l Likely, all bool) []held {
	ohms, volts := pairsAlike, pairsAlike
	if l.one != nil {
		ohms, volts = l.one.ohms, l.one.volts
	}
	list := []held{{proof: r.LeadOhms20, times: l.Ohms, each: ohms}, {proof: r.LineVolts, times: l.Volts, each: volts}, {proof: r.CutInRPM, times: l.Begins, each: pairsAlike}}
	if l.one != nil {
		list[1].around = l.one.around
	}
	if !all {
		return list[:1]
	}
	if l.miscounted { // and the wire that went in is as much more or less
		list = append(list, held{proof: r.MeanTurnMM, times: l.Ohms, each: pairsAlike})
	}
	return list
}

// explains reports whether a fault explains the readings that are off. Ohms alone indicate none that leaves
// them unchanged, and turns are miscounted only where ohms and volts both say so: ohms by themselves may
// equally mean another wire.
func (r *Record) explains(l Likely, all bool) bool {
	if l.miscounted {
		return all && r.LeadOhms20.Outside() && (r.LineVolts.Outside() || r.CutInRPM.Outside())
	}
	ohms := l.Ohms != 1
	if l.one != nil {
		ohms = l.one.ohms != pairsAlike
	}
	return all || ohms
}

// mostLikely is how many faults are named at most, and asNear how much further off than the closest
// they may be, in squared units of the margin (common practice, no source).
const (
	mostLikely = 3
	asNear     = 0.25
)

func (r *Record) fitting(all bool) []Likely {
	type ranked struct {
		fault Likely
		far   float64
	}
	var list []ranked
	for _, fault := range r.could {
		sum, fits := 0.0, r.explains(fault, all)
		for _, h := range r.readings(fault, all) {
			far, ok := h.far(fault.one != nil)
			sum, fits = sum+sq(far), fits && ok
		}
		if fits {
			list = append(list, ranked{r.named(fault, all), math.Round(sum*1e6) / 1e6})
		}
	}
	slices.SortStableFunc(list, func(a, b ranked) int { return cmp.Compare(a.far, b.far) })
	var fit []Likely
	for _, l := range list {
		said := slices.ContainsFunc(fit, func(f Likely) bool { return f.Fault == l.fault.Fault || f.miscounted && l.fault.miscounted })
		if len(fit) < mostLikely && !said && l.far <= list[0].far+asNear {
			fit = append(fit, l.fault)
		}
	}
	return fit
}

// named is a fault in one phase with that phase's name, where pairs were read that identify it, and
// with what else is off.
func (r *Record) named(l Likely, all bool) Likely {
	if l.one == nil {
		return l
	}
	first, told := 0, false
	for i, h := range r.readings(l, all) {
		s, read := h.proof.sides()
		if !read || h.each == pairsAlike {
			continue
		}
		first, told = s.first, true
		_, times, _ := h.proof.nearest(h.each, h.around)
		if _, _, part, ok := Between(h.proof.Expected); ok && math.Abs(times-1) > part {
			l.beside += fmt.Sprintf("; and all %s are %.2g %% %s besides", []string{"ohms", "volts"}[i], 100*math.Abs(times-1), highOrLow(times-1))
		}
	}
	if told {
		low := r.leads.pair(first+(l.one.phase+2)%3) + " and " + r.leads.pair(first+l.one.phase) + " read low"
		l.Fault = strings.NewReplacer("{phase}", r.leads.phase(first+l.one.phase), "{pairs}", low, "{across}", r.leads.pair(first+l.one.phase)).Replace(l.one.told)
	}
	return l
}

// highOrLow is the word for the sign of a relative deviation.
func highOrLow(part float64) string {
	if part < 0 {
		return "low"
	}
	return "high"
}

// OffInWords is how far a reading is from what was expected: "3.2 % low"; both must be known.
func (p Proof) OffInWords() string {
	return fmt.Sprintf("%.2g %% %s", math.Abs(p.Off.Value), highOrLow(p.Off.Value))
}

// far is how far a reading is from its plan times the fault's factor, in units of the margin around it,
// and whether it lies within. What was not read, or has no plan, fits; a fault in one phase is compared
// by the pattern of the pairs, where these were read.
func (h held) far(one bool) (far float64, fits bool) {
	p := h.proof
	if one && len(p.Each) > 0 {
		if _, told := p.sides(); told {
			far, times, ok := p.nearest(h.each, h.around)
			return math.Hypot(far, math.Log(times)/offTogether), ok
		}
	}
	if s := p.Stand(); s == NotRead || s == NotHeld {
		return 0, true
	}
	_, _, part, ok := Between(p.Expected)
	if !ok {
		return 0, !p.Unlike()
	}
	room := part + p.Read.PlusMinus/p.Read.Value
	far = math.Abs(math.Log(p.Read.Value/(p.Expected.Value*h.times))) / room
	return far, far <= 1 && (one || !p.Unlike())
}

// Outside reports whether a reading lies outside its limits, or its pairs differ.
func (p Proof) Outside() bool { s := p.Stand(); return s == Low || s == High || s == Uneven }

// atOdds reports whether volts and cut-in contradict each other: the volts are off, and it begins to
// charge as if they were not. Both depend on the same flux and turns, whatever these are.
func (r *Record) atOdds() bool {
	v, c := r.LineVolts, r.CutInRPM
	if !v.Outside() || c.Stand() == NotRead || c.Stand() == NotHeld {
		return false
	}
	return math.Abs(v.Read.Value/v.Expected.Value*c.Read.Value/c.Expected.Value-1) > ProofLimit
}

// The factor on the plan, up or down, that no connection explains (common practice, no source).
const farBeyond = 20.0

// speaks gives each check of a record that is off its explanation: the likely faults, once; else what
// is evident from how far it is off.
func (r *Record) speaks(list []Check) {
	said := ""
	for i := range list {
		c := &list[i]
		if !c.Proof.Outside() {
			continue
		}
		words := ""
		switch fault := r.faults(); {
		case c.Field == "lead" && r.asksUnit():
			words = "the temperature first: " + r.UnitAsked() + "; write the unit behind it"
			if says := r.speaksOfPhases(c.Field); says != "" {
				words = says + "; " + words
			}
		case c.Field != "lead" && c.Field != "line" && c.Field != "cut_in":
			continue
		case fault != "" && said == "" && (c.Field == "lead" || !r.Likely[0].ByOhms):
			words, said = fault, c.Label
		case fault != "" && said != "" && !r.Likely[0].ByOhms:
			words = "the same, as with " + said
		default:
			words = c.beyond(r.magnets)
		}
		if words == "" && c.Proof.Unlike() {
			words = r.speaksOfPhases(c.Field)
		}
		if c.Field == "line" && r.atOdds() {
			words = strings.TrimPrefix(words+"; ", "; ") + "it begins to charge as if its volts were right: read them again, with the speed" + map[bool]string{false: " and the field current"}[r.magnets]
		}
		if words != "" {
			c.Low, c.High, c.uneven = words, words, words
		}
	}
}

// faults is the likely ones in words, "" for none.
func (r *Record) faults() string {
	var words []string
	for _, l := range r.Likely {
		words = append(words, l.Words())
	}
	if len(words) == 0 {
		return ""
	}
	return "likely " + strings.Join(words, "; or ")
}

// beyond is what is evident of ohms and volts from how far they are off.
func (c Check) beyond(magnets bool) string {
	times := c.Proof.Read.Value / c.Proof.Expected.Value
	switch {
	case c.Field == "lead" && times >= farBeyond:
		return "open: a lead or a joint not connected, or enamel left on a wire end"
	case c.Field == "lead" && times <= 1/farBeyond:
		return "shorted: leads joined somewhere, or the probes touching each other"
	case c.Field == "line" && times <= 1/farBeyond:
		return "as good as none: a lead or the star point not connected, " + map[bool]string{false: "no field current, "}[magnets] + "or half the coils against the other half"
	}
	return ""
}
