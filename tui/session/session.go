// Package session is what all views share: the job that is open, its outcome, what was undone, where it
// is saved, and the person's display choices. It evaluates the job again at every edit, so that no view
// can show an old figure.
//
// It has no keys and draws nothing.
package session

import (
	"fmt"
	"slices"

	"slotwright/tui/kit"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// Session is one open job. It is not safe for use by several goroutines.
type Session struct {
	Theme kit.Theme
	Units quantity.Choice
	// Wires is the gauge system of wire steps, once somebody chose one; see Sizes.
	Wires wiretable.System
	// Trial is the index of the chosen trial.
	Trial int
	// Full keeps the slot full when the wire is stepped.
	Full bool

	// Path is the file, "" when it has none yet.
	Path string
	mark job.Mark
	// saved is the text as it is in the file, or as the example was opened.
	saved string
	// written is set once the job was saved to its file in this session.
	written bool
	// Invented is set while the built-in example is open.
	Invented bool

	doc     job.Document
	bench   *winding.Bench
	outcome winding.Outcome
	// undo and redo are texts, which are small, hold no references and are parsed again when wanted:
	// the collector has nothing to trace in five hundred of them.
	undo, redo []step
	// merging is the path of the last typed edit: letters typed one after another
	// into one field are one step of undo.
	merging string
	// aside is what could be redone before that edit.
	aside []step
	// messages are what was said since the last key, each once.
	messages []Message
	// going is the field that a view asked to go to.
	going string
	// asked and answers are the work that takes longer than a key may, see [Session.Later].
	asked   []work
	answers map[string]answer
}

// Message is what is said at the foot, and whether it is bad news.
type Message struct {
	Text string
	Bad  bool
}

// New opens a document. path is "" for one without a file.
func New(doc job.Document, path string, mark job.Mark) *Session {
	s := &Session{Path: path, mark: mark, saved: doc.Text()}
	s.put(doc)
	return s
}

// NewExample opens the built-in example.
func NewExample() *Session {
	s := &Session{saved: job.Example().Text(), Invented: true}
	s.put(job.Example())
	return s
}

// NewCopy opens a copy of a document, which is in no file yet and so unsaved.
func NewCopy(doc job.Document) *Session {
	s := New(doc, "", job.Mark{})
	s.saved = ""
	return s
}

// Duplicate is a session on a copy of the job, which is in no file yet. Earlier changes can be undone
// there too, because unsaved work is nowhere else; the records of what was wound belong to one machine
// and are left out, as a change of its own. without reports that there were some.
func (s *Session) Duplicate() (dup *Session, without bool) {
	dup = NewCopy(s.doc)
	dup.undo, dup.redo = slices.Clone(s.undo), slices.Clone(s.redo)
	dup.Choose(s.Trial)
	dup.Full = s.Full
	doc := s.doc
	for i := doc.Count("wound") - 1; i >= 0; i-- { // one winding is not two
		if next := doc.Remove("wound", i); next.Refused() == "" {
			doc, without = next, true
		}
	}
	dup.Edit(doc)
	return dup, without
}

// put makes a document the current one.
func (s *Session) put(doc job.Document) {
	s.doc = doc
	j := doc.Job()
	j.Invented = s.Invented
	if s.bench == nil {
		s.bench = winding.Prepare(j)
	} else {
		s.bench = s.bench.With(j)
	}
	s.outcome = s.bench.Outcome()
	s.Choose(s.Trial)
}

// ChooseForemost chooses the trial that the job is currently about, and says why where that is not the
// first.
func (s *Session) ChooseForemost() {
	if i, why := s.outcome.Foremost(s.Job().Target.Reference); i > 0 {
		s.Choose(i)
		s.Say("trial " + s.outcome.Trials[i].Name + " is chosen: " + why)
	}
}

// Document is the job's text and what it says.
func (s *Session) Document() job.Document { return s.doc }

// Job is the job as read.
func (s *Session) Job() job.Job { return s.doc.Job() }

// Outcome is everything worked out.
func (s *Session) Outcome() *winding.Outcome { return &s.outcome }

// Bench is the prepared job, for pictures and layouts.
func (s *Session) Bench() *winding.Bench { return s.bench }

// Problems is what in the job cannot be used, a sentence each: what is wrong in a field's value is also
// shown at the field, the rest only here, with its line in the file.
func (s *Session) Problems() []string {
	var list []string
	for _, p := range s.doc.Problems() {
		list = append(list, s.ProblemText(p))
	}
	return list
}

// Dirty reports whether there is work that is in no file.
func (s *Session) Dirty() bool { return s.doc.Text() != s.saved }

// Saved reports whether the job was saved to its file while it was open here.
func (s *Session) Saved() bool { return s.written }

// Say adds a message at the foot of the screen; Warn adds bad news.
func (s *Session) Say(text string) { s.tell(Message{Text: text}) }

// Warn says what went wrong.
func (s *Session) Warn(text string) { s.tell(Message{text, true}) }

func (s *Session) tell(m Message) {
	if !slices.Contains(s.messages, m) {
		s.messages = append(s.messages, m)
	}
}

// Messages are the present messages, in their order.
func (s *Session) Messages() []Message { return s.messages }

// Message is the last of them, without a text when there is none.
func (s *Session) Message() Message {
	if len(s.messages) == 0 {
		return Message{}
	}
	return s.messages[len(s.messages)-1]
}

// ClearMessage removes the messages.
func (s *Session) ClearMessage() { s.messages = nil }

// Mark is what the job's file was when it was opened or saved last.
func (s *Session) Mark() job.Mark { return s.mark }

// Save writes the job to its file, or to another path when one is given. A file that is not the one
// that was opened is not overwritten, nor anything else done that the person has not agreed to; the
// error says so.
func (s *Session) Save(path string, agreed job.Consent) error {
	mark := s.mark
	if path != "" && path != s.Path {
		mark = job.Mark{}
	}
	if path == "" {
		path = s.Path
	}
	done, err := job.Save(path, s.doc.Text(), mark, agreed)
	if err != nil {
		return err
	}
	s.Path, s.mark, s.saved, s.Invented, s.written = path, done.Mark, s.doc.Text(), false, true
	s.put(s.doc)
	if done.Lost != "" {
		s.Warn("saved, but " + done.Lost + ": " + path)
		return nil
	}
	s.Say("saved to " + path)
	return nil
}

// HalfTyped is a field that was still being typed when its text was kept, and its previous value.
type HalfTyped struct{ Path, Before string }

// Restore opens a recovered text as unsaved work on the file. from is the mark of the file that the
// work was done on: if the file has changed, saving finds that out. A half-typed value is not taken,
// and a message says so.
func (s *Session) Restore(text string, from job.Mark, typing HalfTyped) {
	doc := job.Parse(text)
	if s.Path == "" {
		s.Invented = s.Invented && doc.Job().Name == s.Job().Name // else it is a job without a file yet
	}
	s.Edit(doc)
	s.mark = from
	if typing != (HalfTyped{}) {
		half, _, _ := doc.Typed(typing.Path)
		s.Edit(doc.Set(typing.Path, typing.Before, s.Units))
		before := typing.Before
		if before == "" {
			before = "nothing"
		}
		s.Warn(fmt.Sprintf("%s: %q was still being typed and was not taken; it says %s as before", s.FieldName(typing.Path), half, before))
		return
	}
	if s.Path == "" {
		s.Say("your unsaved work is back")
		return
	}
	s.Say("your unsaved work is back; undo shows the file as it was saved")
}
