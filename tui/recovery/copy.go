package recovery

import (
	"encoding/hex"
	"encoding/json"
	"errors"
	"strings"
	"time"

	"slotwright/winding/job"
	"slotwright/winding/job/running"
)

// Copy is unsaved work on a job, and all that is known about it.
type Copy struct {
	// File is where the copy is kept, Job the path of the job, "" for the example.
	File, Job string
	// By is the program that wrote it.
	By running.Program
	// Kept is when it was written.
	Kept time.Time
	// Base is the mark of the job's file that the work began from.
	Base job.Mark
	Text string
	// Typing is the field that was still being typed, "" for none; Before its previous value.
	Typing, Before string
	// ended is set when the session that wrote it later ended normally.
	ended bool
}

// head is the first line of a copy: a comment to anyone who opens it as a job file.
type head struct {
	Job   string          `json:"job"`
	By    running.Program `json:"by"`
	Ended bool            `json:"ended,omitempty"`
	Kept  time.Time       `json:"kept"`
	Base  string          `json:"base"`
	// Typing and Before are those of the Copy.
	Typing string `json:"typing,omitempty"`
	Before string `json:"before,omitempty"`
	Sum    string `json:"sum"` // job.SumOf what follows this line
}

const headMark = "# slotwright kept this: "

// maxCopy is the largest copy: a job and its first line.
const maxCopy = job.MaxBytes + 1<<16

// encode is the copy as a file.
func (c Copy) encode() string {
	line, err := json.Marshal(head{c.Job, c.By, c.ended, c.Kept.Truncate(time.Second), c.Base.String(), c.Typing, c.Before, sumOf(c.Text)})
	if err != nil {
		panic("recovery: a head that is no JSON: " + err.Error()) // there is nothing in it that could not be
	}
	return headMark + string(line) + "\n" + c.Text
}

// Reasons why a file is no copy that can be offered.
var (
	errHead   = errors.New("it does not begin as a copy does")
	errSum    = errors.New("its text is not the one that was written")
	errNoText = errors.New("it is empty")
)

// decode reads what encode wrote, and nothing else: work is only given back when every letter of it is
// as it was written, and could be opened as a job.
func decode(data string) (Copy, error) {
	line, text, ok := strings.Cut(data, "\n")
	said, isHead := strings.CutPrefix(line, headMark)
	var h head
	if !ok || !isHead || json.Unmarshal([]byte(said), &h) != nil {
		return Copy{}, errHead
	}
	base, ok := job.ParseMark(h.Base)
	if !ok {
		return Copy{}, errHead
	}
	if sumOf(text) != h.Sum {
		return Copy{}, errSum
	}
	if err := job.CheckText(text); err != nil {
		return Copy{}, err
	}
	return Copy{Job: h.Job, By: h.By, Kept: h.Kept, Base: base, Text: text, Typing: h.Typing, Before: h.Before, ended: h.Ended}, nil
}

func sumOf(text string) string {
	sum := job.SumOf(text)
	return hex.EncodeToString(sum[:])
}

// State says whether the session that wrote the copy still runs.
func (c Copy) State() running.State {
	if c.ended {
		return running.Ended
	}
	return c.By.State()
}
