package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"regexp"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/text"

	"github.com/spf13/cobra"
)

// written is the JSON answer of new.
type written struct {
	Path string `json:"written"`
}

// newNew is the verb that writes a job file to fill in.
func newNew(s streams) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "new FILE",
		Short: "Write a commented job file to fill in",
		RunE: func(_ *cobra.Command, args []string) error {
			path := args[0]
			name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
			// The zero mark says that there must be no such file yet.
			if _, err := job.Save(path, job.Template(name), job.Mark{}, 0); err != nil {
				if errors.Is(err, job.ErrChanged) {
					return jobProblem{file: path, text: "there is such a file already; it was left as it is: " + path}
				}
				return jobProblem{text: err.Error(), file: path}
			}
			if asJSON {
				return printJSON(s.out, written{path})
			}
			fmt.Fprintf(s.out, "Wrote %s. Fill it in with any editor or on the screen: slotwright %s\n", text.Visible(path), text.Visible(shellWord(path)))
			return nil
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "answer in JSON")
	return c
}

// plainWord is a word that a shell takes as it stands.
var plainWord = regexp.MustCompile(`^[\pL\pN_./@%+=:,-]+$`)

// shellWord is a path as it can be typed behind the command: one that begins like a flag
// with ./ before it, and one with blanks and the like in quotes.
func shellWord(path string) string {
	if strings.HasPrefix(path, "-") {
		path = "./" + path
	}
	if plainWord.MatchString(path) {
		return path
	}
	return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
}
