package main

import (
	"fmt"

	"slotwright/winding/job"
)

// readJob reads a job that must be free of problems to be evaluated. "" is the built-in example.
func readJob(path string) (job.Document, job.Job, error) {
	if path == "" {
		d := job.Example()
		j := d.Job()
		j.Invented = true
		return d, j, nil
	}
	d, _, err := job.Load(path)
	if err != nil {
		return d, job.Job{}, jobProblem{text: err.Error(), file: path}
	}
	if problems := d.Problems(); len(problems) > 0 {
		more := ""
		if n := len(problems) - 1 + d.More(); n > 0 {
			more = fmt.Sprintf(" (and %d more: slotwright check %s)", n, shellWord(path))
		}
		return d, job.Job{}, jobProblem{text: path + ":" + problems[0].Error() + more, file: path, problems: problems}
	}
	return d, d.Job(), nil
}

// argument is the first of the arguments, "" when there is none.
func argument(args []string) string {
	if len(args) > 0 {
		return args[0]
	}
	return ""
}
