package main

import (
	"errors"
	"fmt"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// plainUsage makes every verb hold to its usage line, with errors in our own words.
func plainUsage(root *cobra.Command) {
	root.SetFlagErrorFunc(optionError)
	root.SuggestionsMinimumDistance = 2
	root.Args = func(c *cobra.Command, args []string) error {
		if len(args) < 2 {
			return nil
		}
		if like := c.SuggestionsFor(args[0]); len(like) > 0 {
			return fmt.Errorf("read %q, expected a verb or one job: did you mean %s?", args[0], strings.Join(like, " or "))
		}
		return fmt.Errorf("read %q after %q, expected one job at most, or a verb first: %s", args[1], args[0], verbs(c))
	}
	for _, c := range root.Commands() {
		c.Args = operands(c.Use)
	}
}

// verbs lists a command's verbs.
func verbs(c *cobra.Command) string {
	var names []string
	for _, v := range c.Commands() {
		if v.IsAvailableCommand() {
			names = append(names, v.Name())
		}
	}
	return strings.Join(names, ", ")
}

// operands checks what follows a verb, by its usage line: NAME must be given, [NAME] may be, NAME...
// may be more than one word. Options are not operands.
func operands(use string) cobra.PositionalArgs {
	words := strings.Fields(use)
	usage := "usage: slotwright " + use
	least, most := 0, 0
	for _, w := range words[1:] {
		if strings.HasPrefix(w, "-") {
			break
		}
		if most++; !strings.HasPrefix(w, "[") {
			least++
		}
		if strings.HasSuffix(w, "...") {
			most = 1000
		}
	}
	return func(_ *cobra.Command, args []string) error {
		switch {
		case len(args) < least:
			return fmt.Errorf("%s: nothing given, expected %s; %s", words[0], strings.TrimSuffix(words[1], "..."), usage)
		case len(args) > most && most == 0:
			return fmt.Errorf("%s: read %q, expected options only; %s", words[0], args[0], usage)
		case len(args) > most:
			return fmt.Errorf("%s: read %q after %q, expected nothing more; %s", words[0], args[most], args[most-1], usage)
		}
		return nil
	}
}

// optionError says what is wrong with an option: which, what was read, what was expected.
func optionError(c *cobra.Command, err error) error {
	var none *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	var bad *pflag.InvalidValueError
	var odd *pflag.InvalidSyntaxError
	switch {
	case errors.As(err, &bad):
		return fmt.Errorf("--%s: read %q, expected %s", bad.GetFlag().Name, bad.GetValue(), kindOf(bad.GetFlag()))
	case errors.As(err, &bare):
		return fmt.Errorf("--%s: nothing behind it, expected %s: %s", bare.GetFlag().Name, kindOf(bare.GetFlag()), bare.GetFlag().Usage)
	case errors.As(err, &none):
		return fmt.Errorf("read the option %s, expected one of %s", dashed(none.GetSpecifiedName()), options(c))
	case errors.As(err, &odd):
		return fmt.Errorf("read the option %s, expected one of %s", odd.GetSpecifiedFlag(), options(c))
	}
	return err
}

// kindOf is what an option takes.
func kindOf(f *pflag.Flag) string {
	switch f.Value.Type() {
	case "int":
		return "a whole number"
	case "float64":
		return "a number"
	case "bool":
		return "true or false, or nothing"
	}
	return "a word"
}

func dashed(name string) string {
	if len(name) == 1 {
		return "-" + name
	}
	return "--" + name
}

// options lists the options of a verb.
func options(c *cobra.Command) string {
	var names []string
	c.Flags().VisitAll(func(f *pflag.Flag) {
		if !f.Hidden {
			names = append(names, "--"+f.Name)
		}
	})
	return strings.Join(names, " ")
}

// version is the module's version with the compiler's, as stamped when it was built.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "of an unknown build"
	}
	if info.Main.Version == "" || info.Main.Version == "(devel)" {
		return "built from source, " + info.GoVersion
	}
	return info.Main.Version + ", " + info.GoVersion
}
