// Command hushed links bubbletea behind package quiet, as the real program does, and prints what
// TERM is in main. The tests of package quiet build it.
package main

import (
	"fmt"
	"os"

	"slotwright/tui/quiet"

	_ "github.com/charmbracelet/bubbletea"
)

func main() {
	quiet.Restore()
	quiet.Restore()
	term, set := os.LookupEnv("TERM")
	fmt.Printf("ready TERM=%q set=%v\n", term, set)
}
