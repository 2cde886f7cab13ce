package main

import (
	"context"
	"io"

	"slotwright/tui/kit"

	"github.com/spf13/cobra"
)

// streams is where the command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// newRoot is the command with its verbs.
func newRoot(ctx context.Context, s streams) *cobra.Command {
	var look appearance
	terminal := s
	root := &cobra.Command{
		Use:   "slotwright [JOB]",
		Short: "Rewind small alternator stators for slow drives",
		Long: `Slotwright is a workbench for rewinding small alternator stators so that a slow drive
reaches charging voltage. Without a verb it opens the screen: on JOB, else on the job that
was open last, else on the built-in example. The verbs answer in text, and with --json in
JSON, for scripts and for paper.

A job is a text file in which every value says its unit and how to measure it. The screen
and an editor change the same file; comments survive.

On the screen ? lists the keys, ctrl+p all commands by name, and ! what is called out.

Figures are design estimates, not a rating. Volts above 60 V DC or 50 V AC, turning rotors,
magnets and batteries can hurt or kill: local codes and licensed practice decide.

It ends with 0 when all went well, with 1 when something is wrong with the job, with a file or
on the answer's way out, and with 2 when the command was typed wrongly.`,
		Example: `  slotwright                      the last job, or the example
  slotwright new hub.toml         a file to fill in; then: slotwright hub.toml
  slotwright check hub.toml       what is wrong or doubtful in it
  slotwright card hub.toml --trial B > card.txt
  slotwright wire 0.75 mm over    which wire a caliper has found
  slotwright layout --slots 12 --poles 10 --span 1`,
		Version:       version(),
		SilenceErrors: true,
		SilenceUsage:  true,
		RunE: func(_ *cobra.Command, args []string) error {
			return openScreen(ctx, terminal, args, look)
		},
	}
	root.PersistentFlags().BoolVar(&look.ascii, "ascii", false, "nothing beyond plain ASCII characters")
	root.Flags().BoolVar(&look.inch, "inch", false, "inches, feet and pounds (not given: as chosen on the screen for that job, else as most of it is typed)")
	root.Flags().BoolVar(&look.fahrenheit, "fahrenheit", false, "temperatures in °F (not given: as --inch)")
	look.flagged = root.Flags().Changed
	root.Flags().BoolVar(&look.example, "example", false, "open the built-in example")
	root.Flags().StringVar(&look.theme, "theme", "", "colours of the screen: any, dark, light, contrast or none (default: by COLORFGBG, else any)")
	root.Flags().BoolVar(&look.mouse, "mouse", false, "let the mouse point and scroll; the terminal then marks text with shift held")
	_ = root.RegisterFlagCompletionFunc("theme", cobra.FixedCompletions(kit.LookNames(), cobra.ShellCompDirectiveNoFileComp))
	root.CompletionOptions.DisableDefaultCmd = true
	s.out = folding{s.out, &look.ascii}
	root.AddCommand(newNew(s), newCheck(s), newReport(s), newCard(s), newDraw(s), newWire(s), newLayout(s), newShelf(s), newCompletion(s), newMan(s))
	completeJobs(root)
	plainUsage(root)
	return root
}
