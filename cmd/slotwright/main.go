// Command slotwright is the workbench: without a verb it opens the screen, with one it
// answers on standard output. See the README.
package main

import (
	"context"
	"errors"
	"fmt"
	"os"

	"slotwright/winding/job"
)

func main() {
	os.Exit(run(context.Background(), os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr}))
}

// run is the whole command; it returns the exit code: 0 fine, 1 a problem in the job,
// 2 bad usage.
func run(ctx context.Context, args []string, io streams) int {
	root := newRoot(ctx, io)
	root.SetArgs(args)
	root.SetIn(io.in)
	root.SetOut(io.out)
	root.SetErr(io.err)
	verb, err := root.ExecuteC()
	ascii, _ := root.PersistentFlags().GetBool("ascii")
	io.err = folding{io.err, &ascii}
	var problem jobProblem
	isProblem := errors.As(err, &problem)
	if asJSON, _ := verb.Flags().GetBool("json"); asJSON && err != nil && !problem.answered {
		_ = printJSON(folding{io.out, &ascii}, asFailed(err, problem))
	}
	switch {
	case err == nil:
		return 0
	case isProblem:
		if problem.text != "" {
			fmt.Fprintln(io.err, "slotwright: "+problem.text)
		}
		return 1
	default:
		fmt.Fprintln(io.err, "slotwright: "+err.Error())
		fmt.Fprintln(io.err, "Try: slotwright help")
		return 2
	}
}

// jobProblem is something wrong with the job or its file, not with how the command was
// used. An empty text has been said already.
type jobProblem struct {
	text string
	// file and problems are what is wrong in it, for an answer in JSON; answered is set
	// when that has been given.
	file     string
	problems []job.Problem
	answered bool
}

// Error is the text, without the program's name.
func (p jobProblem) Error() string { return p.text }
