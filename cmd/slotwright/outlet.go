package main

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"strings"
	"unicode/utf8"

	"slotwright/winding/text"

	"github.com/mattn/go-isatty"
)

// outlet is where a verb's answer goes. It is collected and written at the end in one piece: so a full
// disk is noticed, and nothing that was read from a file, a name or a flag can steer the terminal.
type outlet struct {
	to   io.Writer
	text bytes.Buffer
}

// A closed standard output (>&-) cannot be detected: before any of our code runs, Go opens /dev/null
// for reading and writing in its place, and that is just what many callers pass to a program whose
// answer they do not want. Failing for the one would be failing for the other.

// Write collects.
func (o *outlet) Write(p []byte) (int, error) { return o.text.Write(p) }

// flush writes what was collected.
func (o *outlet) flush() error {
	defer o.text.Reset()
	if o.text.Len() == 0 {
		return nil
	}
	_, err := io.WriteString(o.to, harmless(o.text.String()))
	var p *fs.PathError
	if errors.As(err, &p) {
		err = p.Err
	}
	return err
}

// harmless is text whose characters all show, except tabs, line ends and a form feed where a line
// begins, which a sheet was asked to end with.
func harmless(answer string) string {
	if utf8.ValidString(answer) && !strings.ContainsFunc(answer, steersBetween) {
		return answer
	}
	lines := strings.Split(answer, "\n")
	for i, l := range lines {
		l, feed := strings.CutPrefix(l, "\f")
		parts := strings.Split(l, "\t")
		for k, p := range parts {
			parts[k] = text.Visible(p)
		}
		if lines[i] = strings.Join(parts, "\t"); feed {
			lines[i] = "\f" + lines[i]
		}
	}
	return strings.Join(lines, "\n")
}

// steersBetween leaves the ends of lines and tabs alone.
func steersBetween(r rune) bool { return r != '\n' && r != '\t' && text.Steers(r) }

// isTerminal reports whether a stream is one.
func isTerminal(w any) bool {
	if o, ok := w.(*outlet); ok {
		w = o.to
	}
	f, ok := w.(*os.File)
	return ok && (isatty.IsTerminal(f.Fd()) || isatty.IsCygwinTerminal(f.Fd()))
}
