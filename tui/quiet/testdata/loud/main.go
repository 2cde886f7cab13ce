// Command loud links bubbletea without package quiet. It is the other half of quiet's
// tests: it must show the query, or they would prove nothing.
package main

import (
	"fmt"

	_ "github.com/charmbracelet/bubbletea"
)

func main() {
	fmt.Println("ready")
}
