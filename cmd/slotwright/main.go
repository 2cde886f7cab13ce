// Command slotwright is the workbench: without a verb it opens the screen, with one it
// answers on standard output. See the README.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"slotwright/winding/job"
)

func main() {
	os.Exit(run(context.Background(), os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr}))
}

// run is the whole command; it returns the exit code: 0 fine, 1 a problem in the job or on the way, 2
// bad usage.
func run(ctx context.Context, args []string, s streams) int {
	out, errs := &outlet{to: s.out}, &outlet{to: s.err}
	root := newRoot(ctx, streams{s.in, out, errs})
	root.SetArgs(args)
	root.SetIn(s.in)
	root.SetOut(out)
	root.SetErr(errs)
	verb, err := root.ExecuteC()
	ascii, _ := root.PersistentFlags().GetBool("ascii")
	var problem jobProblem
	errors.As(err, &problem)
	if asJSON, _ := verb.Flags().GetBool("json"); asJSON && err != nil && !problem.answered {
		_ = printJSON(folding{out, &ascii}, asFailed(err, problem))
	}
	if failed := out.flush(); failed != nil {
		err = unwritten(failed, err)
	}
	code := say(folding{errs, &ascii}, verb.CommandPath(), err)
	_ = errs.flush() // there is nowhere left to say that it failed
	return code
}

// unwritten is the error of an answer that could not be written, besides an earlier one.
func unwritten(failed, before error) error {
	text := "the answer could not be written: " + failed.Error()
	if before != nil && before.Error() != "" {
		text = before.Error() + "; " + text
	}
	return jobProblem{text: text}
}

// say says what went wrong in a verb and gives the exit code.
func say(to io.Writer, verb string, err error) int {
	var problem jobProblem
	switch {
	case err == nil:
		return 0
	case errors.As(err, &problem):
		if problem.text != "" {
			fmt.Fprintln(to, "slotwright: "+oneLine(problem.text))
		}
		return 1
	default:
		fmt.Fprintln(to, "slotwright: "+oneLine(err.Error()))
		fmt.Fprintln(to, "Try: "+verb+" --help")
		return 2
	}
}

// oneLine keeps a name with a line break in it from looking like two messages.
func oneLine(text string) string { return strings.ReplaceAll(text, "\n", `\n`) }

// jobProblem is something wrong with the job or its file, not with how the command was used. An empty
// text means that it was reported already.
type jobProblem struct {
	text string
	// file and problems are what is wrong in it, for an answer in JSON; answered is set when that has
	// been given.
	file     string
	problems []job.Problem
	answered bool
}

// Error is the text, without the program's name.
func (p jobProblem) Error() string { return p.text }
