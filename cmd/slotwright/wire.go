package main

import (
	"fmt"
	"io"
	"sort"
	"strings"

	"slotwright/winding/text"
	"slotwright/wiretable"

	"github.com/spf13/cobra"
)

// newWire is the verb that describes one wire.
func newWire(s streams) *cobra.Command {
	var asJSON bool
	var build, metal, equals string
	var temp float64
	c := &cobra.Command{
		Use:   "wire GAUGE...",
		Short: "One wire: bare, overall, area, ohms, mass, neighbours, stand-ins",
		Long: "One wire: bare, overall, area, ohms, mass, neighbours, stand-ins. GAUGE is a number with its system\n" +
			"(18 awg, 19 swg), a bare diameter (0.71 mm, 0.028 in), or with \"over\" behind it what a caliper\n" +
			"finds over the enamel.",
		Example: "  slotwright wire 18awg\n  slotwright wire 0.75 mm over --build grade1\n" +
			"  slotwright wire 19 swg --temp 120 --json",
		RunE: func(_ *cobra.Command, args []string) error {
			g, err := wiretable.Parse(strings.Join(args, " "))
			if err != nil {
				return err
			}
			b, err := wiretable.ParseBuild(build)
			if err != nil {
				return fmt.Errorf("--build: %w", err)
			}
			m, err := wiretable.ParseMetal(metal)
			if err != nil {
				return fmt.Errorf("--metal: %w", err)
			}
			sys, err := systemOf(equals, g)
			if err != nil {
				return err
			}
			if !(temp >= -60 && temp <= 300) {
				return fmt.Errorf("--temp: read %g, expected -60 to 300 °C", temp)
			}
			d := wiretable.Describe(g, b, m, temp, sys)
			if asJSON {
				return printJSON(s.out, d)
			}
			printWire(s.out, d)
			return nil
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "answer in JSON")
	c.Flags().StringVar(&build, "build", "heavy", "enamel: single, heavy, triple, grade1, grade2, grade3, bare")
	c.Flags().StringVar(&metal, "metal", "copper", "copper or aluminium")
	c.Flags().StringVar(&equals, "equals", "", "system of the stand-ins: awg, swg or iec; the wire's own when not given")
	c.Flags().Float64Var(&temp, "temp", 20, "a temperature for the ohms, °C")
	return c
}

// systemOf is the gauge system of the substitutes.
func systemOf(word string, g wiretable.Gauge) (wiretable.System, error) {
	switch strings.ToLower(word) {
	case "awg":
		return wiretable.AWG, nil
	case "swg":
		return wiretable.SWG, nil
	case "iec":
		return wiretable.IEC, nil
	case "":
		switch g.System() {
		case wiretable.SWG, wiretable.AWG:
			return g.System(), nil
		case wiretable.InchDiameter:
			return wiretable.AWG, nil
		}
		return wiretable.IEC, nil
	}
	return 0, fmt.Errorf("--equals: read %q, expected awg, swg or iec", word)
}

func printWire(w io.Writer, d wiretable.Description) {
	line := func(label, format string, args ...any) {
		if isASCII(w) {
			label = text.ASCII(label)
		}
		fmt.Fprintf(w, "%s"+format+"\n", append([]any{text.Pad(label, 18)}, args...)...)
	}
	fmt.Fprintf(w, "%s, %s, %s enamel\n\n", d.Gauge, d.Metal, d.Build)
	line("bare", "%.4g mm   %.4f in", d.BareMM, d.BareInch)
	line("", "%s", d.Basis)
	line("over enamel", "%.4g mm   %.4f in   at most %.4g mm", d.OverallMM, d.OverallInch, d.OverallMaxMM)
	line("", "%s", d.OverallBasis)
	line("area", "%.4g mm²   %.5g circular mils", d.AreaMM2, d.AreaCmil)
	line("ohms at 20 °C", "%.4g Ω/km   %.4g Ω/1000 ft", d.OhmsPerKm20, d.OhmsPer1000Ft20)
	if d.TempC != 20 {
		line(fmt.Sprintf("ohms at %g °C", d.TempC), "%.4g Ω/km", d.OhmsPerKmTemp)
	}
	line("mass", "%.4g kg/km   %.4g lb/1000 ft   %.4g m/kg", d.KgPerKm, d.LbPer1000Ft, d.MetresPerKg)
	if d.Thicker != "" {
		line("thicker", "%s", d.Thicker)
	}
	if d.Thinner != "" {
		line("thinner", "%s", d.Thinner)
	}
	systems := make([]string, 0, len(d.Nearest))
	for s := range d.Nearest {
		systems = append(systems, s)
	}
	sort.Strings(systems)
	for _, s := range systems {
		line("nearest "+strings.ToUpper(s), "%s", d.Nearest[s])
	}
	if len(d.Equal) == 0 {
		return
	}
	fmt.Fprintf(w, "\n%-32s %10s %8s %14s\n", "same metal from", "mm²", "metal", "room in slot")
	for _, e := range d.Equal {
		fmt.Fprintf(w, "%-32s %10.4g %+7.1f%% %+13.1f%%\n", e.Bundle, e.AreaMM2, e.Percent, e.RoomPercent)
	}
}
