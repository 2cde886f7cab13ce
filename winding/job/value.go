package job

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// trouble is what is wrong with a value, before its place is known.
type trouble struct{ read, expected, fix string }

// typedNumber is a number as a person writes it: "38", "~38 mm ±0.5", "1,2", "12 ±2%".
type typedNumber struct {
	value, plusMinus float64
	guessed          bool
	unit             string
}

// A unit begins with no digit, sign or mark but may contain a digit, as mm2 does.
var quantityForm = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^\s*(~?)\s*((?:[0-9]+[ -])?[0-9]+/[0-9]+|[-+]?[0-9.,]+(?:[eE][-+]?[0-9]+)?)\s*((?:[^-0-9\s±+~/][^±+~]*?)?)\s*(?:(?:±|\+/-|\+-)\s*([0-9.,]+(?:[eE][-+]?[0-9]+)?)\s*((?:[^-0-9\s±+~][^±+~]*?)?))?\s*$`)
})

// superscripts and other ways to type a unit that no suffix has.
var plainUnit = strings.NewReplacer("²", "2", "Ω", "ohm", "Ω", "ohm", "°", "deg")

func parseQuantity(text string) (typedNumber, error) {
	if strings.Trim(text, "0123456789.") == "" && text != "" { // as nearly all are; the pattern is not needed
		v, err := parseNumber(text)
		return typedNumber{value: v}, err
	}
	m := quantityForm().FindStringSubmatch(plainUnit.Replace(text))
	if m == nil {
		return typedNumber{}, errors.New("a number")
	}
	q := typedNumber{guessed: m[1] == "~", unit: strings.TrimSpace(m[3])}
	var err error
	if q.value, err = parseNumber(m[2]); err != nil {
		return typedNumber{}, err
	}
	if m[4] == "" {
		return q, nil
	}
	if q.plusMinus, err = parseNumber(m[4]); err != nil {
		return typedNumber{}, err
	}
	switch after := strings.TrimSpace(m[5]); {
	case after == "%":
		q.plusMinus *= math.Abs(q.value) / 100
	case q.unit == "":
		q.unit = after
	case after != "" && after != q.unit:
		return typedNumber{}, fmt.Errorf("the same unit for the number and its ±")
	}
	return q, nil
}

// parseNumber reads a number with a decimal point or comma. A comma before exactly three digits is
// ambiguous, so it is refused rather than read wrong by a factor of a thousand; after a 0 it can only
// be decimal. 7/16 and 1 3/16 are fractions, as of an inch.
func parseNumber(s string) (float64, error) {
	if whole, part, ok := cutFraction(s); ok {
		return whole + part, nil
	}
	if at := strings.IndexByte(s, ','); at >= 0 {
		if strings.Count(s, ",") > 1 || strings.Contains(s, ".") || len(s)-at-1 == 3 && strings.Trim(s[:at], "+-0") != "" {
			return 0, fmt.Errorf("a number without a comma for thousands: %s or %s",
				strings.ReplaceAll(s, ",", ""), strings.Replace(s, ",", ".", 1))
		}
		s = strings.Replace(s, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, errors.New("a number")
	}
	return v, nil
}

// cutFraction reads "7/16" and "1 3/16".
func cutFraction(s string) (whole, part float64, ok bool) {
	over, under, ok := strings.Cut(s, "/")
	if !ok {
		return 0, 0, false
	}
	if at := strings.IndexAny(over, " -"); at >= 0 {
		w, err := strconv.ParseUint(over[:at], 10, 32)
		if err != nil {
			return 0, 0, false
		}
		whole, over = float64(w), over[at+1:]
	}
	n, err := strconv.ParseUint(over, 10, 32)
	d, errUnder := strconv.ParseUint(under, 10, 32)
	if err != nil || errUnder != nil || d == 0 {
		return 0, 0, false
	}
	return whole, float64(n) / float64(d), true
}

// store puts a value, as typed, into the job. The unit is that of the key; a unit written with the
// number must agree with it.
func (f *Input) store(j *Job, i int, typed string, u quantity.Unit) *trouble {
	switch at := f.at(j, i).(type) {
	case *quantity.Reading:
		r, bad := f.reading(typed, u)
		if bad == nil {
			bad = f.storePairs(j, i, typed, u)
		}
		if bad == nil {
			f.storeRatio(j, typed)
			*at = r
			f.storeSides(j, typed, u)
		}
		if bad == nil && f.typed != nil {
			*f.typed(j) = typed
		}
		return bad
	case *string:
		word, bad := f.word(typed)
		if bad == nil {
			*at = word
		}
		return bad
	case *wiretable.Gauge:
		return storeGauge(at, typed)
	case *wiretable.Build:
		return storeText(typed, f.Words, func(s string) (err error) { *at, err = wiretable.ParseBuild(s); return })
	case *wiretable.Metal:
		return storeText(typed, f.Words, func(s string) (err error) { *at, err = wiretable.ParseMetal(s); return })
	case *layout.Connection:
		word, bad := f.word(typed)
		if bad == nil && word == layout.Delta.String() {
			*at = layout.Delta
		}
		return bad
	case *[]int:
		list, bad := f.list(typed)
		if bad == nil {
			*at = list
		}
		return bad
	default:
		panic(fmt.Sprintf("job: field %s has a value of type %T", f.Path(), at))
	}
}

// reading reads a number of the field.
func (f *Input) reading(typed string, u quantity.Unit) (quantity.Reading, *trouble) {
	if f.Name == "span" {
		typed = spanOf(typed)
	}
	number := typed
	if f.Name == "ratio" {
		number, _ = ratioOf(typed)
	}
	if f.isRatio(typed) {
		return quantity.Reading{}, &trouble{quote(typed), "a size or number of one wheel", "a ratio goes into the field Ratio instead: drive : alternator, or turns of the alternator for one of the drive"}
	}
	if s, two := f.sidesOf(typed); two {
		number = s.area()
	}
	if c, cable := f.cablesOf(typed); cable {
		number = c.area(u)
	}
	if p, many := f.pairsOf(typed); many {
		number = p.mean
	}
	q, err := parseQuantity(number)
	if err != nil {
		return quantity.Reading{}, &trouble{quote(typed), err.Error(), f.example(u)}
	}
	if q.unit == "%" && f.fraction() {
		q.value, q.plusMinus, q.unit = q.value/100, q.plusMinus/100, ""
	}
	if q.unit != "" {
		said, ok := f.Dim.Typed(q.unit)
		if !ok || (said.Suffix != u.Suffix) {
			return quantity.Reading{}, f.otherUnit(typed, u)
		}
	}
	v := u.Base(q.value)
	pm := u.BaseSpan(q.plusMinus)
	switch {
	case q.value == 0 && math.Signbit(q.value): // it would be shown as typed
		return quantity.Reading{}, &trouble{quote(typed), f.Range(u), "write 0, without a sign"}
	case f.Kind == Whole && v != math.Trunc(v):
		return quantity.Reading{}, &trouble{quote(typed), "a whole number", wholesBeside(q.value)}
	case f.Kind == Whole && q.plusMinus != 0 && f.Name != "turns": // the count of an old coil's turns may be uncertain
		return quantity.Reading{}, &trouble{quote(typed), "a count, which has no ±", fmt.Sprintf("count again and write %.0f alone, or ~%.0f where it is a guess", v, v)}
	case v < f.Min || v > f.Max || (f.Allowed != nil && !slices.Contains(f.Allowed, v)):
		return quantity.Reading{}, &trouble{quote(typed), f.Range(u), f.meant(q.value, u)}
	case pm > f.Max-f.Min || math.IsInf(pm, 0) || (q.plusMinus > math.Abs(q.value) && f.sizes(q.value, typed)):
		return quantity.Reading{}, &trouble{quote(typed), "a ± that is no more than the number itself, nor than all there may be (" + f.Range(u) + ")", "write what the reading may be off by"}
	}
	origin := quantity.Measured
	if q.guessed {
		origin = quantity.Guessed
	}
	return quantity.Reading{Value: v, PlusMinus: pm, Origin: origin}, nil
}

// sizes reports whether a ± is compared with the number before it: where negative values exist (a
// temperature), or where nothing was read, only a ± in per cent is.
func (f *Input) sizes(value float64, typed string) bool {
	return (f.Min >= 0 && value != 0) || strings.HasSuffix(strings.TrimSpace(typed), "%")
}

// fraction reports whether a field is a fraction of something, so that per cent may be typed.
func (f *Input) fraction() bool { return f.Kind == Number && f.Dim[0].Name == "" && f.Max <= 1 }

// otherUnit is what is wrong with a unit that the field does not take.
func (f *Input) otherUnit(typed string, u quantity.Unit) *trouble {
	if u.Name == "" {
		fix := "write the number alone"
		switch f.Name {
		case "cells":
			fix = "write the number of cells: 12 V is 6 of lead or 4 of lfp, 24 V is 12 or 8, 48 V is 24 or 16"
		case "span":
			fix = "write the slots that it spans: a throw of 1 to 4 is 3"
		}
		return &trouble{quote(typed), "a number without a unit", fix}
	}
	if q, err := parseQuantity(typed); err == nil && u.Suffix == "rpm" && strings.EqualFold(q.unit, "hz") {
		return &trouble{quote(typed), "a number of rpm", "give the poles first: rpm = Hz × 120 / poles"}
	}
	return &trouble{quote(typed), "a number of " + u.Name, "the unit stands in the key: write " + strings.Join(f.Keys(), " or ")}
}

// Range says in words what the field takes, in a unit.
func (f *Input) Range(u quantity.Unit) string {
	switch {
	case f.Kind == Word:
		return "one of " + strings.Join(f.Words, ", ")
	case f.Kind == Wire:
		return "a wire: 18 AWG, 19 SWG, 0.71 mm, 0.75 mm over"
	case f.Kind == Text:
		return "text in quotes"
	case f.Kind == List:
		return "whole numbers: 12, 10, 8"
	case f.Allowed != nil:
		words := make([]string, len(f.Allowed))
		for i, v := range f.Allowed {
			words[i] = limit(v, u)
		}
		return strings.Join(words, " or ")
	}
	s := limit(f.Min, u) + " to " + limit(f.Max, u)
	if u.Name != "" {
		s += " " + u.Name
	}
	return s
}

// limit is an end of a range, for a message.
func limit(v float64, u quantity.Unit) string {
	return quantity.File.Value(u.From(v), u, quantity.AtMost(4))
}

// word reads a text, or one of the words, ignoring case.
func (f *Input) word(typed string) (string, *trouble) {
	if f.Kind == Text {
		return typed, nil
	}
	for _, w := range f.Words {
		if strings.EqualFold(strings.TrimSpace(typed), w) {
			return w, nil
		}
	}
	fix := f.How
	if near, ok := nearest(strings.ToLower(typed), f.Words); ok {
		fix = fmt.Sprintf("did you mean %s?", near)
	}
	return "", &trouble{quote(typed), f.Range(f.Dim[0]), fix}
}

func storeGauge(at *wiretable.Gauge, typed string) *trouble {
	g, err := wiretable.Parse(typed)
	if err == nil {
		*at = g
		return nil
	}
	var bad *wiretable.ParseError
	if errors.As(err, &bad) {
		return &trouble{quote(bad.Read), bad.Expected, bad.Fix}
	}
	return &trouble{quote(typed), "a wire", err.Error()}
}

func storeText(typed string, words []string, parse func(string) error) *trouble {
	if err := parse(typed); err != nil {
		return &trouble{quote(typed), "one of " + strings.Join(words, ", "), ""}
	}
	return nil
}

// list reads whole numbers with commas or blanks between them, in brackets or not.
func (f *Input) list(typed string) ([]int, *trouble) {
	parts := strings.FieldsFunc(strings.Trim(strings.TrimSpace(typed), "[]"), func(r rune) bool { return r == ',' || r == ' ' || r == '\n' || r == '\t' || r == '\r' })
	list := make([]int, 0, len(parts))
	for _, p := range parts {
		n, err := strconv.Atoi(p)
		if err != nil || float64(n) < f.Min || float64(n) > f.Max {
			return nil, &trouble{quote(p), fmt.Sprintf("whole numbers from %s to %s: 12, 10, 8", limit(f.Min, f.Dim[0]), limit(f.Max, f.Dim[0])), f.How}
		}
		list = append(list, n)
	}
	if len(list) == 0 || len(list) > 60 {
		return nil, &trouble{quote(typed), "1 to 60 whole numbers: 12, 10, 8", f.How}
	}
	return list, nil
}

func buildWords() []string {
	words := []string{}
	for _, b := range wiretable.Builds() {
		words = append(words, b.String())
	}
	return words
}
