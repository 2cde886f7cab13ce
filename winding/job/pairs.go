package job

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"slotwright/winding/quantity"
)

// pairs are the readings of one quantity between each two leads, typed one after another, "12.1 12.0
// 12.3 V": their mean is used, and each is kept.
type pairs struct {
	list string // as typed, with single blanks, without its unit
	unit string
	mean string // their mean as a number is written, with mark, ± and unit
	each []float64
}

// stepOf is the last digit that a number, or the finest of several, was written to, in its own unit:
// 0.01 for "3.11 3.1 3.24", 1 for "48"; 0 where nothing is a number.
func stepOf(typed string) float64 {
	step := 0.0
	for _, word := range digits().FindAllString(typed, -1) {
		_, behind, _ := strings.Cut(strings.ReplaceAll(word, ",", "."), ".")
		if own := math.Pow(10, -float64(len(behind))); step == 0 || own < step {
			step = own
		}
	}
	return step
}

// digits is a number without its sign.
var digits = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`[0-9]+(?:[.,][0-9]+)?`) })

// mostPairs is three in each of two sets.
const mostPairs = 6

// several matches several numbers: blanks, commas with blanks behind, or ; between them, the unit
// behind the last, then a ± for each.
var several = sync.OnceValue(func() *regexp.Regexp {
	const number = `[0-9.]+(?:,[0-9]+)?`
	return regexp.MustCompile(`^\s*(~?)\s*(` + number + `(?:(?:\s*[;,]\s+|\s+)` + number + `)+)\s*((?:[^-0-9\s±+~/][^±+~]*?)?)\s*(?:(?:±|\+/-|\+-)\s*([0-9.,]+)\s*((?:[^-0-9\s±+~][^±+~]*?)?))?\s*$`)
})

// pairsOf reads several readings where a field takes them; ok is false for anything else, including one
// number.
func (f *Input) pairsOf(typed string) (p pairs, ok bool) {
	if f.pairs == nil {
		return p, false
	}
	m := several().FindStringSubmatch(typed)
	if m == nil {
		return p, false
	}
	words := strings.FieldsFunc(m[2], func(r rune) bool { return r == ' ' || r == ';' || r == '\t' })
	sum := 0.0
	for i, word := range words {
		words[i] = strings.TrimSuffix(word, ",")
		v, err := parseNumber(words[i])
		if err != nil {
			return p, false
		}
		p.each, sum = append(p.each, v), sum+v
	}
	p.list, p.unit = m[1]+strings.Join(words, " "), strings.TrimSpace(m[3])
	spread := ""
	if m[4] != "" {
		after := strings.TrimSpace(m[5])
		if spread = " ±" + m[4]; after == "%" {
			spread += after
		} else if p.unit == "" {
			p.unit = after
		}
	}
	p.list += spread
	p.mean = fmt.Sprintf("%s%s %s%s", m[1], strconv.FormatFloat(sum/float64(len(words)), 'g', 10, 64), p.unit, spread)
	return p, len(words) <= mostPairs
}

// storePairs keeps each of several readings, in the base unit (none where one was typed), and the last
// digit they were read to.
func (f *Input) storePairs(j *Job, i int, typed string, u quantity.Unit) *trouble {
	if f.pairs == nil {
		return nil
	}
	read, _, _ := strings.Cut(strings.NewReplacer("+/-", "±", "+-", "±").Replace(typed), "±")
	*f.step(j, i) = u.BaseSpan(stepOf(read))
	p, ok := f.pairsOf(typed)
	if !ok {
		return nil
	}
	each := make([]float64, len(p.each))
	for k, v := range p.each {
		if each[k] = u.Base(v); each[k] < f.Min || each[k] > f.Max {
			return &trouble{quote(typed), "each " + f.Range(u), f.meant(v, u)}
		}
	}
	*f.pairs(j, i) = each
	return nil
}
