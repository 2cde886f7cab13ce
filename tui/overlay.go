package tui

import (
	"slices"
	"strconv"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/machine"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/wants"

	tea "github.com/charmbracelet/bubbletea"
)

// pick gives a key to the picker.
func (m *Model) pick(msg tea.KeyMsg) tea.Cmd {
	next, a := m.list.Key(msg)
	m.list = next
	if !a.Done {
		return nil
	}
	picked := m.picked
	m.picked = nil
	if a.ID == "" {
		return nil
	}
	return picked(a.ID)
}

// doing is a command by name.
type doing struct {
	name, keys string
	do         func() tea.Cmd
	short      string   // its search text, before all that begin with it
	lead, also string   // a prefix of the name, and other text to find it by
	names      []string // its other names
	far        bool     // another screen has it
}

// openCommands lists all commands: those of this screen, those of every screen, the screens,
// what only another screen has, and the fields.
func (m *Model) openCommands() {
	list := append(m.commands(), m.fields()...)
	options := make([]kit.Option, len(list))
	for i, d := range list {
		options[i] = kit.Option{ID: strconv.Itoa(i), Label: shortName(d.name, d.keys), Note: d.keys, Short: d.short, Names: d.names, Far: d.far, Lead: d.lead, Also: strings.Join([]string{d.name, d.also, otherWords(d.name)}, " ")}
	}
	m.list = kit.Choice{Title: "Commands", Options: options, Closest: true, Foot: "type a part of the name, enter does it, esc leaves"}
	m.picked = func(id string) tea.Cmd {
		i, _ := strconv.Atoi(id)
		return list[i].do()
	}
}

// namedWide and leastNamed are the cells that a command's name and its keys may take together at 80
// columns, and the length below which a name is not cut.
const (
	namedWide  = 70
	leastNamed = 10
)

// shortName is a name cut to fit beside its keys, a long one at its last colon or comma that fits.
func shortName(name, keys string) string {
	for kit.Width(name)+kit.Width(keys) > namedWide {
		at := strings.LastIndexAny(name, ",:")
		if at < leastNamed { // nothing but the name of its screen would be left
			break
		}
		name = name[:at]
	}
	return name
}

// commands are all of them, made from the bindings.
func (m *Model) commands() []doing {
	list := m.commandsOf(m.active, "")
	list = append(list, m.named(m.everywhere(), "", func() {})...)
	for i, v := range m.views {
		list = append(list, doing{name: "Go to " + v.Name(), keys: "screen", do: func() tea.Cmd { m.show(i); return nil }, short: v.Name()})
	}
	list = append(list, doing{name: "Open the built-in example", do: m.example})
	for i, v := range m.views {
		if i != m.active {
			there := m.commandsOf(i, v.Name()+": ")
			for k := range there {
				there[k].far = true
			}
			list = append(list, there...)
		}
	}
	return list
}

// fields are the applicable fields of the job, by name, for someone who does not know which screen has
// one; Trials shows its own. Readings and records: the existing ones, and whatever is among the first
// things.
func (m *Model) fields() []doing {
	var list []doing
	j := m.s.Job()
	listed := map[string]bool{}
	for _, table := range job.Tables {
		entries := 1
		if table.Many() {
			entries = m.s.Document().Count(table.Name)
		}
		if table.Name == "trial" {
			continue
		}
		for i := range entries {
			for _, in := range job.InputsOf(table.Name) {
				if path := in.PathAt(i); in.Name != "format" && machine.Applies(in, &j) {
					list, listed[path] = append(list, m.field(in, path)), true
				}
			}
		}
	}
	for _, w := range wants.Of(&j) {
		if in, ok := job.InputAt(w.Path); ok && !listed[w.Path] {
			list = append(list, m.field(in, w.Path))
		}
	}
	return list
}

// field is a field as a command that goes to it, found by its name and by its names on the screens: its
// label among the first things, and its heading with its label.
func (m *Model) field(in *job.Input, path string) doing {
	t, _ := job.TableOf(in.Table)
	names := []string{machine.Label(path), t.Title + " " + in.WholeLabel(), t.Title + " " + in.Label, in.WholeLabel(), in.Label}
	return doing{name: m.s.FieldName(path), lead: "Field: ", also: strings.Join(names, " "), names: names, do: func() tea.Cmd { m.goTo(path); return nil }}
}

// commandsOf are a screen's commands; the screen comes up first.
func (m *Model) commandsOf(i int, before string) []doing {
	list := m.views[i].Bindings(m.s)
	if c, ok := m.views[i].(session.Commander); ok {
		list = c.Commands(m.s)
	}
	return m.named(list, before, func() { m.show(i) })
}

// others are words of people for things that have another name here, with a word of the command's name.
var others = map[string]string{
	"quit exit close end bye":              "leave",
	"export print text":                    "card",
	"revert":                               "undo",
	"redo repeat":                          "undone",
	"rename":                               "another name",
	"copy clone":                           "duplicate",
	"load":                                 "open",
	"blank start":                          "empty job",
	"color theme dark light contrast":      "colours",
	"metric imperial units inch":           "inches",
	"celsius fahrenheit temperature":       "°F",
	"fields input":                         "machine",
	"explain formula reason source":        "why",
	"delete drop":                          "out",
	"gauge bigger heavier":                 "thicker",
	"finer smaller":                        "thinner",
	"wye delta":                            "star",
	"parallel paths":                       "circuits",
	"chart graph plot":                     "amps against speed",
	"compare baseline":                     "compare",
	"table list all gauges sizes":          "every gauge",
	"warnings errors problems messages":    "called out",
	"keys shortcuts manual":                "help",
	"refresh redraw repaint":               "anew",
	"power output current":                 "curves",
	"wind wheel pedals engine battery":     "drive",
	"coils slots diagram drawing unrolled": "layout",
	"draw picture diagram export svg pdf":  "drawing",
}

// otherWords are other words by which the command of a name is found.
func otherWords(name string) string {
	var list []string
	for words, ours := range others {
		if strings.Contains(strings.ToLower(name), strings.ToLower(ours)) {
			list = append(list, words)
		}
	}
	slices.Sort(list)
	return strings.Join(list, " ")
}

// named are the bindings that can be used by name: not those that move, take or type.
func (m *Model) named(bindings []kit.Binding, before string, first func()) []doing {
	var list []doing
	for _, b := range bindings {
		keys := b.Keys()
		if b.Do == nil || !b.Enabled() && len(keys) > 0 || slices.ContainsFunc(keys, moves) {
			continue
		}
		name, _, _ := strings.Cut(b.Help().Desc, ". ")
		name, _, _ = strings.Cut(strings.TrimSuffix(name, "."), ";")
		shown := make([]string, len(keys))
		for i, k := range keys {
			shown[i] = kit.KeyName(m.s.Theme, k)
		}
		list = append(list, doing{name: before + name, keys: strings.Join(shown, ", "), do: func() tea.Cmd {
			first()
			return b.Do(tea.KeyMsg{})
		}})
	}
	return list
}

// moves reports whether a key moves about, takes a value or begins one.
func moves(key string) bool {
	switch key {
	case "up", "down", "left", "right", "home", "end", "pgup", "pgdown", "enter", "esc", "backspace", "0", "ctrl+p", ":":
		return true
	}
	return false
}

// openFindings lists the findings, the most serious first.
func (m *Model) openFindings() {
	var options []kit.Option
	for _, p := range m.s.Document().Problems() {
		options = append(options, kit.Option{ID: p.Path, Mark: kit.Broken, Label: m.s.ProblemText(p)})
	}
	found := slices.Clone(m.s.Outcome().Findings)
	for i := range found {
		found[i].Text, found[i].Fix = m.s.Units.Words(found[i].Text), m.s.Units.Words(found[i].Fix)
	}
	slices.SortStableFunc(found, func(a, b winding.Finding) int { return int(b.Severity) - int(a.Severity) })
	for _, f := range found {
		options = append(options, m.finding(f))
	}
	if len(options) == 0 {
		m.s.Say("nothing is called out")
		return
	}
	for i := range options {
		options[i].ID = strconv.Itoa(i) + " " + options[i].ID
	}
	m.list = kit.Choice{Title: "What is called out", Options: options, Tall: true, Foot: "enter goes to the field, esc leaves"}
	m.picked = func(id string) tea.Cmd {
		_, path, _ := strings.Cut(id, " ")
		if path == "" {
			m.s.Say("this is about no single field")
			return nil
		}
		m.goTo(path)
		return nil
	}
}

// finding is a finding as an option, in full.
func (m *Model) finding(f winding.Finding) kit.Option {
	o := kit.Option{ID: f.Path, Label: f.Text}
	switch f.Severity {
	case winding.Broken:
		o.Mark = kit.Broken
	case winding.Doubt:
		o.Mark = kit.Warning
	}
	if f.Trial != "" {
		o.Label = "trial " + f.Trial + ": " + f.Text
	}
	if f.Fix != "" {
		o.Note = "→ " + f.Fix
	}
	return o
}
