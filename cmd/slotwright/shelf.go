package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"slotwright/winding/quantity"
	"slotwright/winding/shelf"
	"slotwright/winding/text"

	"github.com/spf13/cobra"
)

// shelved is the JSON answer of shelf.
type shelved struct {
	Folder string        `json:"folder"`
	Jobs   []shelf.Entry `json:"jobs"`
	Bench  shelf.Bench   `json:"bench"`
}

// newShelf is the verb that lists a folder of jobs.
func newShelf(s streams) *cobra.Command {
	var asJSON, reverse bool
	var by, find string
	c := &cobra.Command{
		Use:   "shelf DIR",
		Short: "A folder of jobs: what each is, how far it has come, what the bench learns",
		RunE: func(_ *cobra.Command, args []string) error {
			if !slices.Contains(shelf.Orders(), by) {
				return fmt.Errorf("--sort: read %q, expected one of %s", by, strings.Join(shelf.Orders(), ", "))
			}
			all, err := shelf.Read(args[0])
			if err != nil {
				return jobProblem{text: err.Error(), file: args[0]}
			}
			list := shelf.Sort(shelf.Find(all, find), by)
			if reverse {
				slices.Reverse(list)
			}
			answer := shelved{args[0], append([]shelf.Entry{}, list...), shelf.Learn(all)}
			if asJSON {
				return printJSON(s.out, answer)
			}
			answer.print(s.out, len(all))
			return nil
		},
	}
	c.Flags().StringVar(&by, "sort", "file", "by "+strings.Join(shelf.Orders(), ", "))
	c.Flags().StringVar(&find, "find", "", "only jobs that have this in name, notes, wire, date or state, or as 36/12")
	c.Flags().BoolVar(&reverse, "reverse", false, "the last first")
	c.Flags().BoolVar(&asJSON, "json", false, "answer in JSON")
	return c
}

// shelfWidths are the columns of the list; the file comes after them and is never cut, for
// it is what one types next.
var shelfWidths = []int{15, 6, 5, 10, 5, 6, 10, 7}

// shelfLine sets the cells of a job.
func shelfLine(w io.Writer, cells ...string) {
	line := ""
	for i, c := range cells {
		if isASCII(w) {
			c = text.ASCII(c)
		}
		if c = text.Clean(c); i < len(shelfWidths) {
			c = text.Fit(c, shelfWidths[i], "") + " "
		}
		line += c
	}
	fmt.Fprintln(w, strings.TrimRight(line, " "))
}

// print writes a line for each job, and what the bench learns.
func (a shelved) print(w io.Writer, all int) {
	if len(a.Jobs) > 0 {
		shelfLine(w, "machine", "s/p", "throw", "wire", "turns", "begins", "date", "state", "file")
	}
	for _, e := range a.Jobs {
		if e.Problem != "" {
			fmt.Fprintf(w, "%s  cannot be used: %s\n", e.File, e.Problem)
			continue
		}
		throw := ""
		if e.Span > 0 {
			throw = fmt.Sprintf("1-%d", e.Span+1)
		}
		shelfLine(w, e.Job, pairOf(e.Slots, e.Poles), throw, e.Wire,
			orDash(e.Turns, quantity.None, 0), orDash(e.CutInRPM, quantity.RPM, 3), e.Date, e.State, e.File)
	}
	fmt.Fprintf(w, "%d of %d jobs\n", len(a.Jobs), all)
	printBench(w, &a.Bench)
}

func pairOf(slots, poles int) string {
	if slots == 0 || poles == 0 {
		return "-"
	}
	return fmt.Sprintf("%d/%d", slots, poles)
}

func orDash(f quantity.Figure, dim quantity.Dimension, digits int) string {
	if f.PlusMinus = 0; !f.Known() {
		return "-"
	}
	return f.Text(dim[0], digits)
}

// printBench offers what the records say; nothing of it is in any job.
func printBench(w io.Writer, b *shelf.Bench) {
	if len(b.Fills) == 0 && !b.MeanTurnOff.Known() {
		return
	}
	fmt.Fprintln(w, "\nThis bench, by what was recorded as wound (in no job until you type it there):")
	for _, l := range b.Fills {
		fmt.Fprintf(w, "  slots full, wire of %g to %g mm bare: fill %s (%s)\n", l.FromMM, l.ToMM, l.Fill.Text(quantity.None[0], 2), l.Fill.Why)
	}
	if f := b.MeanTurnOff; f.Known() {
		sign := ""
		if f.Value > 0 {
			sign = "+"
		}
		fmt.Fprintf(w, "  mean turn, by the wire used over the one reckoned with: %s%s %% (%s)\n", sign, f.Text(quantity.None[0], 2), f.Why)
	}
}
