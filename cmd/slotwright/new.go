package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"slotwright/winding/job"

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
			if _, err := job.Save(path, job.Template(name), job.Mark{}, true); err != nil {
				if strings.Contains(err.Error(), job.ErrChanged.Error()) {
					return jobProblem{file: path, text: path + ": there is such a file already; it was left as it is"}
				}
				return jobProblem{text: err.Error(), file: path}
			}
			if asJSON {
				return printJSON(s.out, written{path})
			}
			fmt.Fprintf(s.out, "Wrote %s. Fill it in with any editor or on the screen: slotwright %s\n", path, path)
			return nil
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "answer in JSON")
	return c
}
