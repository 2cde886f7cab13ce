package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strconv"

	"slotwright/winding"
	"slotwright/winding/job"
)

// jsonFormat counts the shapes that answers in JSON have had: a key that goes, or comes to
// mean something else, raises it; a new key does not. The shapes are in testdata/schema.
const jsonFormat = 1

const (
	// jsonDigits is the significant figures written: more than any input has.
	jsonDigits = 6
	// dust is what rounding leaves where nothing should be; no unit in use makes a real
	// value so small.
	dust = 1e-12
)

// printJSON is the one way in which answers leave as JSON. The value is a struct; its
// format is put first, and every number rounded. A number that is not finite is an error:
// the parts that work figures out turn it into a missing one with a reason.
func printJSON(w io.Writer, v any) error {
	var plain bytes.Buffer
	e := json.NewEncoder(&plain)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return fmt.Errorf("the answer could not be written as JSON: %w", err)
	}
	body := append(fmt.Appendf(nil, `{"format":%d,`, jsonFormat), rounded(plain.Bytes())[1:]...)
	var out bytes.Buffer
	out.Grow(2 * len(body))
	if err := json.Indent(&out, body, "", "  "); err != nil {
		return fmt.Errorf("the answer could not be written as JSON: %w", err)
	}
	// JSON's own rule escapes what steers a terminal only in ASCII.
	text := escaped(out.String(), steersInJSON)
	if isASCII(w) {
		text = escaped(text, beyondASCII)
	}
	_, err := io.WriteString(w, text)
	return err
}

// rounded is JSON with every number in it rounded; what stands in strings is left alone.
func rounded(b []byte) []byte {
	out := make([]byte, 0, len(b))
	for i := 0; i < len(b); {
		n := 1
		switch c := b[i]; {
		case c == '"':
			n = stringLength(b[i:])
			out = append(out, b[i:i+n]...)
		case c == '-' || c >= '0' && c <= '9':
			n = numberLength(b[i:])
			out = appendNumber(out, b[i:i+n])
		default:
			out = append(out, c)
		}
		i += n
	}
	return out
}

// stringLength is how long the string at the start is, with its quotes.
func stringLength(b []byte) int {
	for i := 1; i < len(b); i++ {
		switch b[i] {
		case '\\':
			i++
		case '"':
			return i + 1
		}
	}
	return len(b)
}

// numberLength is how long the number at the start is.
func numberLength(b []byte) int {
	n := 0
	for n < len(b) && bytes.IndexByte([]byte("+-.eE0123456789"), b[n]) >= 0 {
		n++
	}
	return n
}

// appendNumber appends a number rounded to [jsonDigits]; dust and a negative zero become 0. A
// report has thousands of them.
func appendNumber(out, number []byte) []byte {
	v, err := strconv.ParseFloat(string(number), 64)
	if err != nil {
		return append(out, number...)
	}
	var room [32]byte
	v, _ = strconv.ParseFloat(string(strconv.AppendFloat(room[:0], v, 'e', jsonDigits-1, 64)), 64)
	switch size := math.Abs(v); {
	case size < dust:
		return append(out, '0')
	case size >= 1e-6 && size < 1e21: // between these JSON has no exponent
		return strconv.AppendFloat(out, v, 'f', -1, 64)
	}
	b, _ := json.Marshal(v)
	return append(out, b...)
}

// reported is an outcome as report answers it.
type reported struct {
	winding.Outcome
	// Reference is left out where there is no trial to be it.
	Reference *int              `json:"reference,omitempty"`
	Findings  []winding.Finding `json:"findings"`
	Cautions  []winding.Caution `json:"cautions"`
}

// asReported is the outcome with lists for what is none.
func asReported(o *winding.Outcome) reported {
	r := reported{*o, &o.Reference, append([]winding.Finding{}, o.Findings...), append([]winding.Caution{}, o.Cautions...)}
	if len(o.Trials) == 0 {
		r.Reference = nil
	}
	return r
}

// carded is what card answers: one trial, and the card itself as text.
type carded struct {
	Trial    winding.TrialOutcome   `json:"trial"`
	Machine  winding.MachineOutcome `json:"machine"`
	Cautions []winding.Caution      `json:"cautions"`
	Card     string                 `json:"card"`
}

// failed is the answer of a verb that could not do what it was asked.
type failed struct {
	File     string      `json:"file,omitempty"`
	Problems []complaint `json:"problems"`
}

// complaint is one sentence and, for something in the job file, its parts and its place.
type complaint struct {
	*job.Problem
	Said string `json:"text"`
}

// asFailed puts an error in that shape.
func asFailed(err error, p jobProblem) failed {
	f := failed{File: p.file}
	for i := range p.problems {
		f.Problems = append(f.Problems, complaint{&p.problems[i], p.problems[i].Text()})
	}
	if len(f.Problems) == 0 {
		f.Problems = []complaint{{Said: err.Error()}}
	}
	return f
}
