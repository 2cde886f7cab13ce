package tui

import (
	"strings"
	"time"

	"slotwright/tui/kit"
	"slotwright/tui/session"
)

// Messages are at the foot of the screen, each in full. They replace as many of the keys named there as
// do not fit beside them, and cover nothing: for several lines the screen makes room. The message of a
// key goes with the next key. A notice is one that nobody asked for, such as that another window has
// the job: it comes after the others and stays long enough to be read whatever is typed meanwhile;
// while there is no room for it, it waits.

// noticeStays is how long a notice stays at least.
const noticeStays = 8 * time.Second

// notice is a notice and when it became visible, zero while it waits.
type notice struct {
	session.Message
	since time.Time
}

// now is the time; tests have their own.
var now = time.Now

// notify gives a notice, unless it is there already.
func (m *Model) notify(bad bool, text string) {
	for _, n := range m.notices {
		if n.Text == text {
			return
		}
	}
	m.notices = append(m.notices, notice{Message: session.Message{Text: text, Bad: bad}})
}

// readNotices removes the notices that were visible long enough.
func (m *Model) readNotices() {
	var left []notice
	for _, n := range m.notices {
		if n.since.IsZero() || now().Sub(n.since) < noticeStays {
			left = append(left, n)
		}
	}
	m.notices = left
}

// seeNotices records when the notices that fit became visible.
func (m *Model) seeNotices() {
	_, seen := m.saying()
	for i := range m.notices[:seen] {
		if m.notices[i].since.IsZero() {
			m.notices[i].since = now()
		}
	}
}

// said is the lines of all messages.
func (m *Model) said() []string {
	lines, _ := m.saying()
	return lines
}

// saying is those lines, and how many of the notices are among them: as many as fit, the oldest first.
func (m *Model) saying() (lines []string, notices int) {
	most := m.h / 3 // every screen can be drawn in what is left of the least terminal
	for _, msg := range m.s.Messages() {
		lines = append(lines, m.sentence(msg)...)
	}
	lines = lines[:min(len(lines), most)]
	for i, n := range m.notices {
		more := m.sentence(n.Message)
		if len(lines) > 0 && len(lines)+len(more) > most {
			break
		}
		lines, notices = append(lines, more[:min(len(more), most)]...), i+1
	}
	return lines, notices
}

// footLines are the messages and, right of their last line, the keys.
func (m *Model) footLines(said []string) []string {
	t := m.s.Theme
	if len(said) == 0 {
		return []string{kit.StatusLine(t, m.w, "", m.statusBindings())}
	}
	lines, last := said[:len(said)-1], said[len(said)-1]
	return append(lines, kit.Bar(t, m.w, last, kit.StatusKeys(t, m.w-kit.Width(last)-keysApart, m.statusBindings())))
}

// keysApart is the minimum distance of the keys from the messages.
const keysApart = 4

// sentence is a message in lines, those after the first indented.
func (m *Model) sentence(msg session.Message) []string {
	t := m.s.Theme
	role, mark := kit.Value, t.Glyphs().Bullet
	if msg.Bad {
		role, mark = kit.Broken, t.Mark(kit.Broken)
	}
	lines := t.WrapPaint(role, kit.Clean(msg.Text), m.w-2)
	for i := range lines {
		lines[i] = kit.Either(i == 0, t.Style(role).Render(mark), strings.Repeat(" ", kit.Width(mark))) + " " + lines[i]
	}
	return lines
}
