package session

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"
)

// Work that takes longer than a key may wait for: a view asks for it with [Session.Later] and draws
// that it is being worked out; the program does it in the background, by [Session.Working], and returns
// the answer with [Session.Take]. It is identified by a name and by its subject, such as the job's
// text: an answer to what is no longer asked is dropped.

// work is something asked for.
type work struct {
	name, about string
	do          func() any
}

// answer is what is known under a name: its subject, whether it is done, and the result.
type answer struct {
	about string
	done  bool
	value any
	wrong string
}

// Done is an answer on its way back, a message of the program's.
type Done struct {
	name, about string
	value       any
	wrong       string
}

// Later asks for work under a name, unless the same is asked for or done already. do runs concurrently
// with everything else: it must touch nothing that changes.
func (s *Session) Later(name, about string, do func() any) {
	if a, ok := s.answers[name]; ok && a.about == about {
		return
	}
	if s.answers == nil {
		s.answers = map[string]answer{}
	}
	s.answers[name] = answer{about: about}
	s.asked = append(s.asked, work{name, about, do})
}

// Answer is the result of the work of that name on that subject; done says that it is there, wrong in
// words that it failed.
func (s *Session) Answer(name, about string) (value any, done bool, wrong string) {
	a := s.answers[name]
	if a.about != about {
		return nil, false, ""
	}
	return a.value, a.done, a.wrong
}

// Working is the work asked for since it was last called, as one command; nil when there is none. A
// failure becomes an answer that says so.
func (s *Session) Working() tea.Cmd {
	var list []tea.Cmd
	for _, w := range s.asked {
		list = append(list, func() (msg tea.Msg) {
			defer func() {
				if r := recover(); r != nil {
					msg = Done{name: w.name, about: w.about, wrong: fmt.Sprintf("this could not be worked out, a fault of the program: %v", r)}
				}
			}()
			return Done{name: w.name, about: w.about, value: w.do()}
		})
	}
	s.asked = nil
	if len(list) == 0 {
		return nil
	}
	return tea.Batch(list...)
}

// Take keeps an answer, if it is still to what is asked.
func (s *Session) Take(d Done) {
	if a, ok := s.answers[d.name]; ok && a.about == d.about {
		s.answers[d.name] = answer{d.about, true, d.value, d.wrong}
	}
}
