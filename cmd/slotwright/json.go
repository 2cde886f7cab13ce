package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/text"
)

// jsonFormat counts the shapes that answers in JSON have had: removing a key, or changing its meaning,
// raises it; a new key does not. The shapes are in testdata/schema.
const jsonFormat = 1

// printJSON is the only way in which answers leave as JSON. The value is a struct; its format is put
// first, and every number rounded. A number that is not finite is an error: the packages that compute
// figures turn it into a missing one with a reason.
func printJSON(w io.Writer, v any) error {
	var plain bytes.Buffer
	e := json.NewEncoder(&plain)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return fmt.Errorf("the answer could not be written as JSON: %w", err)
	}
	body := append(fmt.Appendf(nil, `{"format":%d,`, jsonFormat), bytes.TrimSpace(plain.Bytes())[1:]...)
	which := text.Steers // JSON's own rule escapes what steers a terminal only in ASCII
	if isASCII(w) {
		which = beyondASCII
	}
	_, err := w.Write(append(indented(body, which), '\n'))
	return err
}

// reported is an outcome as report answers it.
type reported struct {
	winding.Outcome
	// Reference is omitted where there is no such trial.
	Reference *int              `json:"reference,omitempty"`
	Findings  []winding.Finding `json:"findings"`
	Cautions  []winding.Caution `json:"cautions"`
}

// asReported is the outcome with empty lists in place of nil.
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

// asFailed converts an error to that shape.
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
