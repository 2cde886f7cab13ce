package job

import (
	"fmt"
	"strings"
)

const templateHead = `# A Slotwright job: one machine, one file. Change what you like with any editor,
# or open it with: slotwright THIS-FILE
#
# Every key has its unit at its end; where there are several (bore_mm, bore_in, bore_cm,
# bore_mil: thousandths of an inch) use one.
# Take the # off a line and write the value to say something; leave it to say nothing.
# 80.5          measured
# "~38"         guessed
# "38 ±0.5"     measured, give or take a half
`

// Template is the text of a new job file: every key there is, with what it means and how to find it,
// ready to be filled in.
func Template(name string) string {
	var b strings.Builder
	b.WriteString(templateHead)
	for i := range Tables {
		t := &Tables[i]
		switch {
		case t.Name == "":
		case t.Name == "trial":
			writeTrials(&b, t)
			continue
		case t.Many():
			b.WriteString("\n")
			writeNote(&b, t.Help+" As many as you have; take the # off the line in brackets too.")
			fmt.Fprintf(&b, "# [[%s]]\n", t.Name)
		default:
			fmt.Fprintf(&b, "\n# %s\n[%s]\n", t.Help, t.Name)
		}
		for _, f := range InputsOf(t.Name) {
			switch f.Name {
			case "format":
				b.WriteString("format = 1\n")
			case "name":
				b.WriteString("name = " + basicString(name) + "\n")
			default:
				writeField(&b, f)
			}
		}
	}
	return b.String()
}

func writeField(b *strings.Builder, f *Input) {
	text := f.Label + ". " + f.Help
	if f.How != "" {
		text += " " + f.How
	}
	if empty := f.Empty(f.Dim[0]); empty != "" {
		text += " Empty: " + empty
		if f.Default != nil {
			text += ", " + f.Default.Source
		}
		text += "."
	}
	b.WriteString("\n")
	writeNote(b, text)
	b.WriteString("# " + f.Keys()[0] + " =\n")
}

func writeNote(b *strings.Builder, text string) {
	for _, line := range wrap(text, 88) {
		b.WriteString("# " + line + "\n")
	}
}

// writeTrials writes a trial to start from, explaining its fields. Others are copied from one that is
// filled in: an empty one beside it compares nothing.
func writeTrials(b *strings.Builder, t *Table) {
	fmt.Fprintf(b, "\n# %s\n[[trial]]\nname = \"A\"\n", t.Help)
	for _, f := range InputsOf("trial")[1:] {
		writeField(b, f)
	}
}

// wrap breaks text into lines of at most width characters.
func wrap(text string, width int) []string {
	var lines []string
	line := ""
	for _, w := range strings.Fields(text) {
		switch {
		case line == "":
			line = w
		case len([]rune(line))+1+len([]rune(w)) <= width:
			line += " " + w
		default:
			lines = append(lines, line)
			line = w
		}
	}
	return append(lines, line)
}
