package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"unicode"

	"slotwright/winding/job"
	"slotwright/winding/shelf"
	"slotwright/winding/text"

	"github.com/spf13/cobra"
)

// written is the JSON answer of new.
type written struct {
	Path string `json:"written"`
	From string `json:"from,omitempty"`
	// Offers is what the records of the jobs beside it have for what it leaves empty.
	Offers []shelf.Hint `json:"offers,omitempty"`
}

// newNew is the verb that writes a job file to fill in.
func newNew(s streams) *cobra.Command {
	var asJSON bool
	var from string
	c := &cobra.Command{
		Use:   "new FILE",
		Short: "Write a commented job file to fill in, empty or from another job",
		Long: "Write a commented job file to fill in, empty or from another job. A file that is there already\n" +
			"is left as it is. What the records of the jobs in the same folder have for the new one is listed,\n" +
			"not written.",
		Example: "  slotwright new hub.toml\n  slotwright new jobs/hub2.toml --from jobs/hub.toml",
		RunE: func(_ *cobra.Command, args []string) error {
			path := args[0]
			name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
			content, err := begun(name, from)
			if err != nil {
				return err
			}
			// The zero mark says that the file must not exist yet.
			if _, err := job.Save(path, content, job.Mark{}, 0); err != nil {
				if errors.Is(err, job.ErrChanged) {
					return jobProblem{file: path, text: "there is such a file already; it was left as it is: " + path}
				}
				return jobProblem{text: err.Error(), file: path}
			}
			bench := benchOf(path)
			offers := bench.Offers(job.Parse(content).Job())
			if asJSON {
				return printJSON(s.out, written{path, from, offers})
			}
			fmt.Fprintf(s.out, "Wrote %s. Fill it in with any editor or on the screen: slotwright %s\n", text.Visible(path), text.Visible(shellWord(path)))
			printOffers(s.out, &bench, offers)
			return nil
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "answer in JSON")
	c.Flags().StringVar(&from, "from", "", "a job to take the machine, drive, battery and trials from; what was read on that piece is left empty")
	return c
}

// benchOf is what the records of the jobs beside a file say; nothing where they cannot be read.
func benchOf(path string) shelf.Bench {
	list, _, _ := shelf.Read(filepath.Dir(path))
	return shelf.Learn(list)
}

// printOffers says what the bench has for a new job, or for any.
func printOffers(w io.Writer, b *shelf.Bench, offers []shelf.Hint) {
	if len(offers) == 0 {
		printBench(w, b)
		return
	}
	fmt.Fprintln(w, "\nThis bench has for it (left empty; type in what you want of it):")
	for _, o := range offers {
		fmt.Fprintln(w, "  "+o.String())
	}
}

// begun is the text of a new job.
func begun(name, from string) (string, error) {
	if from == "" {
		return job.Template(name), nil
	}
	old, _, err := readJob(from)
	if err != nil {
		return "", err
	}
	if old = old.From(name); old.Refused() != "" {
		return "", jobProblem{text: old.Refused(), file: from}
	}
	return old.Text(), nil
}

// plainWord reports whether a shell takes a word unquoted.
func plainWord(word string) bool {
	return word != "" && !strings.ContainsFunc(word, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsNumber(r) && !strings.ContainsRune("_./@%+=:,-", r)
	})
}

// shellWord is a path as it can be typed behind the command: one that begins like a flag with ./ before
// it, one with blanks and the like in quotes, and one with invisible characters (a line end) as bash
// and zsh read them.
func shellWord(path string) string {
	if strings.HasPrefix(path, "-") {
		path = "./" + path
	}
	if plainWord(path) {
		return path
	}
	if strings.ContainsFunc(path, text.Steers) {
		return "$'" + text.Visible(strings.NewReplacer(`\`, `\\`, `'`, `\'`).Replace(path)) + "'"
	}
	return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
}
