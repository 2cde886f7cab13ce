package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"slotwright/winding/drawing"
	"slotwright/winding/job"
	"slotwright/winding/text"

	"github.com/spf13/cobra"
)

// drawn is the JSON answer of draw.
type drawn struct {
	Trial string      `json:"trial,omitempty"`
	Paper string      `json:"paper"`
	Pages []drawnPage `json:"sheets"`
}

// drawnPage is one file written.
type drawnPage struct {
	Sheet    string `json:"sheet"`
	Page     int    `json:"page"`
	Of       int    `json:"pages"`
	Path     string `json:"written"`
	NotDrawn string `json:"not_drawn,omitempty"`
}

// drawWish is what draw is asked for.
type drawWish struct {
	paper
	trial, sheet, size, out string
}

// newDraw is the verb that draws a trial as SVG, a file a page.
func newDraw(s streams) *cobra.Command {
	var w drawWish
	c := &cobra.Command{
		Use:   "draw JOB",
		Short: "Draw a trial to wind by, as SVG: unrolled, face, slot, amps over speed",
		Long: "Draw a trial to wind by, as SVG, a file a page: unrolled, face, slot, amps over speed. The files\n" +
			"stand in the folder one is in, or where --out says. An older drawing is replaced; any other file\n" +
			"is left as it is, and nothing is drawn.",
		Example: "  slotwright draw stator.toml --trial B\n  slotwright draw stator.toml --sheet unrolled --paper letter --out wall.svg",
		RunE: func(_ *cobra.Command, args []string) error {
			answer, err := w.draw(s, args[0])
			if err != nil {
				return err
			}
			if w.json {
				return printJSON(s.out, answer)
			}
			for _, p := range answer.Pages {
				fmt.Fprintln(s.out, p.says())
			}
			return nil
		},
	}
	c.Flags().StringVar(&w.trial, "trial", "", "name of the trial; when not given the one wound, else the reference")
	c.Flags().StringVar(&w.sheet, "sheet", "all", "unrolled, face, slot, amps or all")
	c.Flags().StringVar(&w.size, "paper", "", "a4 or letter; when not given letter where figures are in inches, else a4")
	c.Flags().StringVar(&w.out, "out", "", "file to write; with more than one page, what their names begin with; named after the job when not given")
	w.flags(c)
	return c
}

// draw reads the job, draws it and writes the pages.
func (w *drawWish) draw(s streams, path string) (drawn, error) {
	size, err := drawing.ParsePaper(w.size)
	if w.size != "" && err != nil {
		return drawn{}, fmt.Errorf("--paper: %w", err)
	}
	sheets, err := drawing.ParseSheets(w.sheet)
	if err != nil {
		return drawn{}, fmt.Errorf("--sheet: %w", err)
	}
	d, b, err := prepared(path)
	if err != nil {
		return drawn{}, err
	}
	o := b.WithoutOffers().Outcome()
	i, err := theTrial(s, b, &o, w.trial)
	if err != nil {
		return drawn{}, err
	}
	if w.size == "" {
		size = drawing.PaperFor(w.units(&d))
	}
	answer := drawn{Trial: o.Trials[i].Name, Paper: size.Name}
	pages := drawing.Pages(b, &o, i, sheets, drawing.Options{Paper: size, Units: w.units(&d), ASCII: isASCII(s.out)})
	files, err := drawing.Files(pages, w.name(path, pages))
	if err == nil {
		err = drawing.Save(files)
	}
	if err != nil {
		return drawn{}, asProblem(err)
	}
	for _, f := range files {
		answer.Pages = append(answer.Pages, drawnPage{Sheet: string(f.Sheet), Page: f.Number, Of: f.Of, Path: f.Path, NotDrawn: f.NotDrawn})
	}
	return answer, nil
}

// name is --out, or else derived from the job.
func (w *drawWish) name(path string, pages []*drawing.Page) string {
	if w.out != "" {
		return w.out
	}
	base := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	if len(pages) == 1 {
		return base + "-" + string(pages[0].Sheet) + ".svg"
	}
	return base
}

// asProblem is a file's error in this command's words.
func asProblem(err error) error {
	if of := new(job.FileError); errors.As(err, &of) {
		return jobProblem{text: err.Error(), file: of.Path}
	}
	return err
}

// says is what was written, and what could not be drawn on it.
func (p drawnPage) says() string {
	if p.NotDrawn != "" {
		return fmt.Sprintf("Wrote %s, without a drawing: %s", text.Visible(p.Path), p.NotDrawn)
	}
	return "Wrote " + text.Visible(p.Path)
}
